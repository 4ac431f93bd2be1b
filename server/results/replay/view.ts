/** From where the image of a finished hologram is seen. */
import type { Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, parseUnit } from '../../model/units.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import { openSides } from '../places/mask.ts';
import { weighted } from '../rules/lengths.ts';
import { COLOURS_OVER, MEETS, PARALLAX, placeOf, sizeOf, TIMES, ZONE } from '../rules/replay.ts';
import type { Image, ReplayContext, Shown, View } from './shown.ts';

const [MM, NM, DEGREE] = [parseUnit('mm')!, parseUnit('nm')!, parseUnit('°')!];
/** How far one is behind the other. */
const APART = weighted('distance', 'image − opening', [1, -1]);
const known = (c: Cell | undefined): c is Cell => c !== undefined && !c.missing;

export function viewOf(image: Image, s: Pick<Shown, 'base' | 'plate' | 'pair' | 'hung' | 'light' | 'rainbow'> & { readonly viewer: Thing | undefined; readonly eye: Cell | undefined }, { values, legs }: ReplayContext): View {
  const { graph } = values;
  const { base, plate, viewer, eye, hung: { order } } = s;
  const { arm } = s.pair.pair;
  const distance = viewer && values.fact(viewer, 'distance');
  const middle = image.parts.find(p => p.part === 'middle')!.place;
  // A plate that stood on its side hangs on its other side.
  const aside = hungAside(s.hung.up);
  const sides = sidesOfThing(plate, values);
  const [width, height] = aside ? [sides?.[1], sides?.[0]] : [sides?.[0], sides?.[1]];
  const master = arm.object?.kind.light === 'diffracts' ? arm.object : undefined;
  const opening = master && order === -1 ? openingOf(master, aside) : undefined;
  const through = opening?.width && !opening.width.missing && known(middle) ? [opening.width, graph.derive(`${base}.opening.from the image`, APART, [middle, opening.place], LENGTH, `from the opening to the image of ${plate.id}`, { unit: MM })] : known(width) && known(middle) ? [width, middle] : undefined;
  const parallax = through ? graph.derive(`${base}.parallax`, PARALLAX, through, ANGLE, `angle from side to side through which the image of ${plate.id} is seen`, { unit: DEGREE }) : undefined;
  const parts = !master && arm.object ? sidesOfThing(arm.object, values) : undefined;
  const across = aside ? parts?.[1] : parts?.[0];
  const zone = known(width) && known(middle) && known(across) && known(distance) && known(image.size) && !master
    ? graph.derive(`${base}.viewing zone`, ZONE, [width, middle, across, image.size, distance], LENGTH, `how far aside one may stand and see all of the image of ${plate.id}`, { unit: MM }) : undefined;
  // The lamp stands above or below, else at a side: the plate is as high, or as wide, in the plane of its beams.
  const upright = s.light.from ?? s.hung.from;
  const side = upright === 'the left' || upright === 'the right' ? width : upright ? height : sides && largest(sides.slice(0, 2));
  const meets = known(eye) && known(distance) && known(middle) && known(side) && image.colourBy !== 'viewer'
    ? { at: graph.derive(`${base}.line of sight at the plate`, MEETS, [middle, image.angle, distance, eye], LENGTH, `where ${viewer!.id} looks through ${plate.id} at the middle of the image, from its middle`, { unit: MM }), half: graph.value(side)! / 2 } : undefined;
  const [laser, gap] = [values.fact(arm.laser, 'wavelength'), legs.get(arm.path.at(-1)!)];
  const colours = s.rainbow && s.light.white && opening && known(opening.place) && graph.value(opening.place)! < 0 && known(distance) && known(side) && known(gap) && laser
    ? graph.derive(`${base}.colours over the plate`, COLOURS_OVER, [laser, side, opening.place, graph.find(`${base}.opening.size`)!, distance, gap, image.reference], LENGTH, `colours from edge to edge of ${plate.id} for ${viewer!.id}`, { unit: NM }) : undefined;
  return {
    ...(colours && !colours.missing ? { colours } : {}), ...(viewer ? { viewer } : {}), ...(distance ? { distance } : {}), ...(eye ? { angle: eye } : {}), ...(parallax ? { parallax } : {}), ...(zone ? { zone } : {}), ...(opening ? { opening } : {}), ...(meets && !meets.at.missing ? { meets } : {}),
  };

  function largest(cells: readonly Cell[]): Cell { return cells.reduce((a, b) => ((graph.value(b) ?? 0) > (graph.value(a) ?? 0) ? b : a)); }

  /** The opening of the master, imaged by the transfer: a window before the plate, through which one looks. */
  function openingOf(hologram: Thing, turned: boolean): View['opening'] {
    const gap = legs.get(arm.path.at(-1)!);
    if (!known(gap)) return undefined;
    const inputs = [gap, image.curvature, s.light.curvature, ...(image.ratio ? [image.ratio] : [graph.find(`${base}.same colour`)!])];
    const at = graph.derive(`${base}.opening.place`, placeOf(-1), inputs, LENGTH, `opening of ${hologram.id} behind ${plate.id}`, { unit: MM });
    const wide = graph.derive(`${base}.opening.size`, sizeOf(-1), inputs, image.size.dim, `opening of ${hologram.id} as a multiple of its size`);
    const open = openSides(arm, values);
    const [w, h] = turned ? [open?.[1], open?.[0]] : [open?.[0], open?.[1]];
    const side = (cell: Cell | undefined, what: 'width' | 'height'): Cell | undefined => (cell && graph.derive(`${base}.opening.${what}`, TIMES, [cell, wide], LENGTH, `${what} of the opening of ${hologram.id} where it is seen`, { unit: MM }));
    const [ow, oh] = [side(w, 'width'), side(h, 'height')];
    return { place: at, ...(ow ? { width: ow } : {}), ...(oh ? { height: oh } : {}) };
  }
}

const hungAside = (up: string | undefined): boolean => up === 'left' || up === 'right';
