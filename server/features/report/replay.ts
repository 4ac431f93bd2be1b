/** What the finished hologram shows under each lamp: where its image stands, how large, deep, sharp, in which colour, and from where it is seen. Every figure is a cell of the results. */
import { colourWord } from '../../checks/shown-words.ts';
import { plain } from '../../model/show.ts';
import type { Cell } from '../../results/graph.ts';
import type { Apart, Part, Shown, Trouble } from '../../results/replay/shown.ts';
import type { Results } from '../../results/plan.ts';
import { figure } from '../../results/shown.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';

/** A page for each lamp; none where none is written. */
export function replayPages(r: Results): LightPage[] {
  return r.replay.all.map(s => ({ title: `${s.plate.id} under ${s.lamp.id}${ofLaser(s)}`, rows: [...hangRows(s), ...(s.trouble ? [{ label: 'image', text: 'none', remark: NONE[s.trouble] }] : imageRows(s, r))] }));
}

const ofLaser = ({ laser }: Shown): string => (laser ? `, recorded in ${laser.id}` : '');

const NONE: Readonly<Record<Trouble, string>> = {
  'no angle': 'from where the lamp lights it is not known: write its “angle”, or its “height” and “distance” and the “height” of a “wall”', 'too steep': 'the lamp cannot be that much higher or lower and still so near', 'edge-on': 'the light runs along the plate',
  'lamp behind': 'a reflection hologram is dark from behind', 'other side': 'the lamp stands on another side than the reference came from', 'no image': 'its light does not leave the plate', 'no colour': 'no colour of the lamp meets the fringes, or comes to the viewer',
};

function hangRows({ hung, pair, way }: Shown): LightRow[] {
  const lit = hung.from ? `, from ${hung.from}` : '';
  const layer = hung.layerFront === undefined ? '' : `; the layer looks ${hung.layerFront ? 'at' : 'away from'} who looks at it`;
  const up = hung.up === undefined || hung.up === 'up' ? '' : `; what was ${hung.up === 'down' ? 'down' : `on the ${hung.up}`} in the holder is up`;
  return [{ label: 'hangs', text: hung.order === 1 ? 'as recorded' : 'flipped', remark: `${way === 'reflection' ? 'lit from the front' : 'lit from behind'}${lit}${layer}${up}${hung.written || hung.order === 1 ? '' : `, as a transfer of ${pair.pair.arm.object!.id}`}` }];
}

function imageRows(s: Shown, r: Results): LightRow[] {
  const { graph } = r;
  const image = s.image!;
  const row = (label: string, cell: Cell | undefined, remark = ''): LightRow[] => {
    if (!cell) return [];
    const shown = showCell(graph, cell);
    return [{ label, text: shown.text, remark: shown.missing ?? remark }];
  };
  const many = (cell: Cell): LightRow => { const v = graph.value(cell); return { label: '', text: v === undefined ? 'unknown' : `${plain(Math.abs(v), 3)} times`, remark: cell.missing?.why ?? '' }; };
  const places = image.parts.map(p => placeRow(p, s, r));
  // Without a place nothing else is known of it but its angle and colour.
  const size = image.size.missing ? [] : [
    { ...many(image.size), label: 'as wide as the object', remark: '' },
    { ...many(image.depth), label: 'as deep', remark: s.hung.depth === 'orthoscopic' ? 'right side out (orthoscopic)' : 'inside out (pseudoscopic)' },
    ...(differ(image.other, image.parts.find(p => p.part === 'middle')!.place, r) ? [{ label: 'lines across the lamp', text: away(image.other, r), remark: 'are sharp there' }] : []),
  ];
  const colour = graph.value(image.colour);
  return [
    ...places, ...size, seenFrom(image.angle, r),
    ...row('colour', image.colour, `${colour === undefined ? '' : `${colourWord(colour) ?? 'not seen'}, `}${BY[image.colourBy]}`), ...row('brightness', image.brightness, 'of its full brightness: how well its light meets the fringes'),
    ...image.parts.filter(p => p.blur).flatMap(p => row(`blur${p.part === 'middle' ? '' : `, ${p.part} end`}`, p.blur, blurWords(p, s, r))),
    ...(s.apart ? [registerRow(s.apart, r)] : []),
    ...row('parallax', s.view.parallax, 'from side to side, round the middle of the image'), ...row('viewing zone', s.view.zone, `wide${s.view.viewer ? `, where ${s.view.viewer.id} stands` : ''}: from there all of the image is seen`),
    ...(s.view.opening && !s.view.opening.place.missing ? [{ label: 'opening of the master', text: away(s.view.opening.place, r), remark: openingWords(s, r) }] : []),
  ];
}

const BY: Readonly<Record<NonNullable<Shown['image']>['colourBy'], string>> = { lamp: 'that of the lamp', layer: 'that which the finished layer sends back of white light', viewer: 'where the viewer looks from; above and below are others', laser: 'in the direction of the recording; white light has others beside it' };

function placeRow({ part, place }: Part, { plate }: Shown, r: Results): LightRow {
  return { label: part === 'middle' ? 'image' : `${part} end`, text: place.missing ? 'unknown' : away(place, r), remark: place.missing?.why ?? (part === 'middle' ? `from ${plate.id}` : '') };
}

/** One looks from opposite to where its light seems to come from. */
function seenFrom(cell: Cell, { graph }: Results): LightRow {
  const value = graph.value(cell)!;
  const squarely = Math.abs(value) < Math.max(5e-4, graph.uncertainty(cell));
  return { label: 'seen from', text: value < 0 || squarely ? figure(cell, squarely ? 0 : -value, graph.uncertainty(cell)) : showCell(graph, cell).text, remark: squarely ? 'squarely' : `off the normal, on the ${value > 0 ? 'far side from' : 'side of'} the lamp` };
}

/** `231 mm behind`: the side in words, not by a sign. */
function away(cell: Cell, { graph }: Results): string {
  const value = graph.value(cell);
  if (value === undefined) return 'unknown';
  const text = value < 0 ? figure(cell, -value, graph.uncertainty(cell)) : showCell(graph, cell).text;
  return Math.abs(value) < 5e-5 ? 'in the plate' : `${text} ${value > 0 ? 'behind' : 'before'}`;
}

/** Lines the other way are sharp elsewhere by more than a twentieth. */
const differ = (a: Cell, b: Cell, { graph }: Results): boolean => { const [x, y] = [graph.value(a), graph.value(b)]; return x !== undefined && y !== undefined && Math.abs(x - y) > 0.05 * Math.abs(y) && Math.abs(y) > 1e-3; };

function blurWords({ lampBlur, colourBlur, blur, unseen }: Part, s: Shown, { graph }: Results): string {
  const [all, sharp] = [blur, unseen].map(c => c && graph.value(c));
  const by = [...(lampBlur ? [`${showCell(graph, lampBlur).text} by the width of ${s.lamp.id}`] : []), ...(colourBlur ? [`${showCell(graph, colourBlur).text} by colours`] : [])].join(', ');
  return `${by}${all === undefined || sharp === undefined ? '' : `; ${all <= sharp ? 'no eye sees it' : `${plain(all / sharp, 2)} times what an eye tells apart`} from ${s.view.distance && !s.view.distance.missing ? showCell(graph, s.view.distance).text : '500 mm'}`}`;
}

/** What no eye sees by far has no figure. */
function registerRow({ first, cell, unseen }: Apart, { graph }: Results): LightRow {
  const [off, sharp] = [cell, unseen].map(c => graph.value(c)!) as [number, number];
  const remark = `from the image of ${first.laser!.id}, where they differ most`;
  return off < sharp / 100 ? { label: 'register', text: 'exact', remark: `the image of ${first.laser!.id} lies in the same place` }
    : { label: 'register', text: `${showCell(graph, cell).text} off`, remark: `${remark}; ${off <= sharp ? 'no eye sees it' : `${plain(off / sharp, 2)} times what an eye tells apart`}` };
}

function openingWords({ view: { opening }, rainbow }: Shown, { graph }: Results): string {
  const sides = [opening!.width, opening!.height].flatMap(c => (c && !c.missing ? [showCell(graph, c).text] : []));
  return `${sides.length === 2 ? `${sides[0]!} wide and ${sides[1]!} high there: ` : ''}one sees ${rainbow ? 'the whole image in one colour' : 'the whole image'} with the eyes in it`;
}

/** One sentence for the hover of a lamp or of its plate. */
export function replayWords(of: string, r: Results): string[] {
  return r.replay.all.filter(s => s.lamp.id === of || s.plate.id === of).flatMap((s): string[] => {
    const place = s.image?.parts.find(p => p.part === 'middle')?.place;
    if (s.trouble) return [`Under ${s.lamp.id} ${s.plate.id}${ofLaser(s)} shows no image: ${NONE[s.trouble]}.`];
    const size = s.image && r.graph.value(s.image.size);
    return place && !place.missing && size !== undefined ? [`Under ${s.lamp.id} the image of ${s.plate.id}${s.laser ? ` in ${s.laser.id}` : ''} stands ${away(place, r)} it, ${plain(Math.abs(size), 3)} times as wide as its object, ${s.hung.depth === 'orthoscopic' ? 'right side out' : 'inside out'}.`.replace('in the plate it', 'in it')] : [];
  });
}
