/** A finished hologram as it hangs, in plain numbers, m: seen from the side, the viewer to the right, what is on the lamp's side of the normal up where the lamp hangs above. */
import type { Place } from '../../model/place.ts';
import { show } from '../../model/show.ts';
import { LENGTH, parseUnit } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import type { Shown } from '../../results/replay/shown.ts';

/** Where something is: right of the plate, on the side of the viewer, and up. */
export type Spot = readonly [number, number];

export interface Hung {
  readonly title: string;
  readonly plate: { readonly name: string; readonly sides: Spot; readonly written: Place };
  readonly lamp: { readonly name: string; readonly at: Spot; readonly angle: number; readonly distance: number; readonly words: string; readonly written: Place };
  readonly viewer?: { readonly name: string; readonly at: Spot; readonly distance: number; readonly words: string; readonly written: Place };
  /** middles of the near end, the middle and the far end, and how high and wide it is */
  readonly image?: { readonly near: Spot; readonly middle: Spot; readonly far: Spot; readonly width: number; readonly height: number; readonly place: number; readonly words: string };
  /** of a transfer: middle and height of the opening of its master */
  readonly opening?: { readonly at: Spot; readonly height: number };
  /** above the floor, where the wall says it */
  readonly middleHeight?: number;
  /** it lies on its side: the picture is from above */
  readonly fromAbove: boolean;
  readonly notes: readonly string[];
}

const MM = parseUnit('mm')!;
/** What nothing tells: a plate of the usual size, an object of a hand's breadth, an arm's length. */
const [PLATE, OBJECT, ARM]: readonly [Spot, Spot, number] = [[0.102, 0.127], [0.05, 0.05], 0.5];
const mm = (v: number): string => show(Math.round(v * 1000) / 1000, LENGTH, 0, MM);

export function hungOf(s: Shown, title: string, r: Results): Hung {
  const { graph, values } = r;
  const value = (c: Cell | undefined): number | undefined => c && graph.value(c);
  const aside = s.hung.up === 'left' || s.hung.up === 'right';
  const sizes = (thing: typeof s.plate, usual: Spot, fact = 'size'): Spot => { const f = r.values.sizes(thing, fact)?.value; const [w, h] = f?.kind === 'sizes' ? [f.parts[0]!.value, f.parts[1]!.value] : usual; return aside ? [h, w] : [w, h]; };
  const from = s.light.from ?? s.hung.from;
  const up = from === 'below' || from === 'the right' ? -1 : 1;
  const off = (distance: number, angle: number, side: 1 | -1): Spot => [side * distance * Math.cos(angle), up * distance * Math.sin(angle)];
  const angle = value(s.light.angle) ?? 0;
  const distance = value(s.light.distance) ?? 1;
  const lamp = off(distance, angle, s.way === 'reflection' ? 1 : -1);
  const image = imageOf(s, off, sizes(s.pair.pair.arm.object ?? s.plate, OBJECT, s.pair.pair.arm.object?.kind.light === 'diffracts' ? 'image size' : 'size'), r);
  const eye = value(s.view.distance) ?? ARM;
  const looks = value(s.view.angle) ?? -(value(s.image?.angle) ?? 0);
  const wall = [...r.setup.things.values()].find(t => t.kind.word === 'wall' && t.facts.has('height'));
  const middle = wall && value(values.fact(wall, 'height'));
  const open = value(s.view.opening?.place);
  const fromAbove = from === 'the left' || from === 'the right';
  const [viewer, plate] = [s.view.viewer, s.plate];
  const high = (v: number): string => (middle === undefined || fromAbove ? '' : `, ${mm(middle + v)} above the floor`);
  return {
    title: `${title}: ${plate.id} as it hangs`, fromAbove, ...(middle === undefined || fromAbove ? {} : { middleHeight: middle }),
    plate: { name: plate.id, sides: sizes(plate, PLATE), written: plate.at },
    lamp: { name: s.lamp.id, at: lamp, angle, distance, words: `${s.lamp.id}, ${mm(distance)} from the plate${high(lamp[1])}`, written: s.lamp.at },
    ...(viewer ? { viewer: { name: viewer.id, at: off(eye, looks, 1), distance: eye, words: `${viewer.id}, eyes ${mm(eye)} from the plate${high(off(eye, looks, 1)[1])}`, written: viewer.at } } : {}),
    ...(image ? { image } : {}), ...(open === undefined ? {} : { opening: { at: off(-open, -(value(s.image?.angle) ?? 0), 1), height: value(s.view.opening?.height) ?? 0.02 } }),
    notes: notesOf(s, lamp, fromAbove),
  };
}

function imageOf(s: Shown, off: (distance: number, angle: number, side: 1 | -1) => Spot, object: Spot, { graph }: Results): Hung['image'] {
  const place = (part: string): number | undefined => { const p = s.image?.parts.find(x => x.part === part)?.place; return p && graph.value(p); };
  const [middle, size, angle] = [place('middle'), s.image && graph.value(s.image.size), s.image && graph.value(s.image.angle)];
  if (middle === undefined || size === undefined || angle === undefined) return undefined;
  // Behind the plate it lies where its light seems to come from, before it where that light goes to.
  const spot = (v: number): Spot => { const [x, y] = off(v, angle, -1); return [x, y]; };
  const side = Math.abs(middle) < 5e-4 ? 'in the plate' : `${mm(Math.abs(middle))} ${middle > 0 ? 'behind' : 'before'} the plate`;
  return {
    near: spot(place('near') ?? middle), middle: spot(middle), far: spot(place('far') ?? middle), width: object[0] * Math.abs(size), height: object[1] * Math.abs(size), place: middle,
    words: `image, ${side}${s.hung.depth === 'pseudoscopic' ? ', inside out' : ''}`,
  };
}

/** For whoever hangs it and knows nothing of optics. */
function notesOf({ plate, lamp, hung, way, light, trouble }: Shown, [x, y]: Spot, fromAbove: boolean): string[] {
  const layer = hung.layerFront === undefined ? '' : ` Its coated side looks ${hung.layerFront ? 'at you' : 'away from you'}.`;
  const aside = Math.abs(y) < 5e-4 ? '' : ` and ${mm(Math.abs(y))} ${fromAbove ? `to ${light.from ?? hung.from ?? 'one side'}` : y > 0 ? 'higher' : 'lower'}`;
  return [
    `Hang ${plate.id} with the mark for its top up.${layer}`,
    light.beam === 'parallel' ? `Let ${lamp.id} light it from ${way === 'reflection' ? 'your side' : 'behind'}, with parallel light, at ${Math.round((Math.atan2(Math.abs(y), Math.abs(x)) * 180) / Math.PI)}° from straight on.`
      : `Fix ${lamp.id} ${mm(Math.abs(x))} ${x > 0 ? 'before' : 'behind'} the middle of the plate${aside}.`,
    ...(light.from || hung.from ? [] : [`Nothing says from which side ${lamp.id} lights it: here it is drawn above.`]), ...(trouble ? [`As it is, it shows no image: see the findings.`] : []),
  ];
}
