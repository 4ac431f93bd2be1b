/** The object as its plate sees it: which side is lit, how the path walks, which part records worst. Every figure is a cell of the results. */
import type { Cell } from '../../results/graph.ts';
import type { PairMap } from '../../results/maps/maps.ts';
import type { Sight } from '../../results/object/object.ts';
import type { Pair, PlateResults } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { millimetres, percent } from '../../model/show.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';
import { stopWords } from './losses.ts';
import { brightnessWords } from './words.ts';

/** A page for each object arm of which the places tell something, or whose laser comes into step again near its mismatch. */
export function objectPages(r: Results): LightPage[] {
  return r.plates.flatMap(p => p.pairs.map(pair => ({ title: titleOf(p, pair), rows: [...sideRows(r.object.of(pair), r), ...mapRows(r.maps.of(pair), r), ...screenRows(pair, r), ...revivalRows(p, pair, r)] }))).filter(p => p.rows.length > 0);
}

const titleOf = ({ plate, pairs }: PlateResults, { arm }: Pair): string => `${arm.object!.id} as ${plate.id} sees it${pairs.length > 1 ? `, by ${arm.name}` : ''}`;

function sideRows(s: Sight | undefined, r: Results): LightRow[] {
  const [lit, seen, depth] = s ? (['lit side', 'seen side', 'lit depth'] as const).map(w => r.object.look(s, w)) : [];
  if (!s || !lit || !seen || lit.missing || seen.missing) return [];
  const rounded = s.form.assumed && !s.form.points ? '; no shape is written, so it counts as rounded' : '';
  const rows: LightRow[] = [
    { label: 'lit', text: percent(r.graph.value(lit)!), remark: `of what the plate sees is lit, ${fromWords(r.object.from(s))} as it sees it${rounded}` },
    { label: 'seen', text: percent(r.graph.value(seen)!), remark: 'of the lit side is seen by the plate' },
  ];
  if (depth && !depth.missing && !s.form.points) rows.push({ label: 'lit depth', text: millimetres(r.graph.value(depth)!), remark: 'from the nearest to the farthest part that is lit and seen' });
  return rows;
}

/** Components of where the light comes from: `from the front and the left`. */
export function fromWords([right, up, toward]: readonly [number, number, number]): string {
  const ways = [[toward, 'the front', 'behind'], [right, 'the right', 'the left'], [up, 'above', 'below']] as const;
  const named = ways.filter(([v]) => Math.abs(v) > 0.3).map(([v, plus, minus]) => (v > 0 ? plus : minus));
  return `from ${named.length > 2 ? `${named.slice(0, -1).join(', ')} and ${named.at(-1)!}` : named.join(' and ')}`;
}

/** Light of a screen comes by way of all that is lit of it. */
function screenRows(pair: Pair, r: Results): LightRow[] {
  const ways = r.screens.of(pair);
  if (!ways) return [];
  const { screen, rim, brightness } = ways;
  const rows: LightRow[] = [{ label: `by the rim of ${screen.id}`, text: millimetres(r.graph.value(rim)!), remark: `longer than through its middle, as far as ${screen.id} is lit` }];
  if (brightness) rows.push({ label: `over ${screen.id}`, text: showCell(r.graph, brightness).text, remark: `of full brightness is left where its light from all over ${screen.id} is taken together` });
  return rows;
}

function mapRows(m: PairMap | undefined, r: Results): LightRow[] {
  if (!m) return [];
  const { graph } = r;
  // Finer than a tenth of a millimetre no map is, and nobody sets a mirror.
  const show = (cell: Cell): string => (graph.uncertainty(cell) > 5e-5 ? showCell(graph, cell).text : millimetres(graph.value(cell)!));
  const what = m.layout.form === 'hologram' ? `the middle of ${m.pair.arm.object!.id}` : 'the middle of the object';
  const rows: LightRow[] = [{ label: 'path across the plate', text: `${show(m.least)} to ${show(m.greatest)}`, remark: `mismatch of ${what}: it walks by ${show(m.walk)} from one edge to the other` }];
  if (!m.found) return rows;
  const { largestMismatch, largest, darkest, darkestBrightness, sides } = m.found;
  rows.push({ label: 'largest mismatch', text: show(largestMismatch), remark: `${partWords(largest.object, [true, true, true])}, at ${plateWords(largest.plate)} of the plate` });
  if (darkest && darkestBrightness && !darkestBrightness.missing) {
    const { value, band, u } = showCell(graph, darkestBrightness);
    const [low, high] = band ? [Math.max(0, band.low), Math.min(1, band.high)] : [Math.max(0, value! - 2 * (u ?? 0)), Math.min(1, value! + 2 * (u ?? 0))];
    const stops = [high, low].map(v => -Math.log2(Math.max(1e-12, v))) as [number, number];
    rows.push({ label: 'records worst', text: showCell(graph, darkestBrightness).text, remark: `${partWords(darkest, sides ?? [true, true, true])}: ${brightnessWords(low, high)}, ${stopWords(...stops)} lost, averaged over the plate` });
  }
  return rows;
}

/** A share of a size below which a part is not said to lie to a side: the middle third. */
const ASIDE = 1 / 6;
/** Where a part lies as the plate sees it: `the far part at the left and the top`. `sides` says which of its sides mean something. */
export function partWords([right, up, toward]: readonly [number, number, number], sides: readonly [boolean, boolean, boolean]): string {
  const is = (v: number, i: 0 | 1 | 2): boolean => sides[i] && Math.abs(v) > ASIDE;
  const aside = [...(is(right, 0) ? [right > 0 ? 'at the right' : 'at the left'] : []), ...(is(up, 1) ? [up > 0 ? 'at the top' : 'at the bottom'] : [])];
  const near = is(toward, 2) ? (toward > 0 ? 'nearest ' : 'farthest ') : '';
  return near === '' && aside.length === 0 ? 'the middle' : `the ${near}part${aside.length > 0 ? ` ${aside.join(', ')}` : ''}`;
}

/** As seen by who looks at the face of the plate from the object. */
function plateWords([right, up]: readonly [number, number]): string {
  const at = [...(Math.abs(right) > ASIDE ? [right > 0 ? 'right' : 'left'] : []), ...(Math.abs(up) > ASIDE ? [up > 0 ? 'upper' : 'lower'] : [])];
  return at.length === 0 ? 'the middle' : at.length === 2 ? `the ${at[1]!} ${at[0]!} corner` : `the ${at[0]!} edge`;
}

/** The modes of a tube are in step again at multiples of twice its length: said where that is nearer than matched paths. */
function revivalRows({ plate }: PlateResults, pair: Pair, r: Results): LightRow[] {
  const found = r.maps.revival(plate, pair);
  const off = found && r.graph.value(found.off);
  if (!found || off === undefined) return [];
  const text = showCell(r.graph, found.off).text.replace(/^−/, '');
  const distance = showCell(r.graph, pair.coherence!.inputs[0]!).text;
  const times = Math.abs(found.times) === 1 ? 'the revival distance' : `${Math.abs(found.times)} times the revival distance`;
  return [{
    label: 'fringes come back', text, remark: `is what the mismatch is ${(off > 0) === (found.times > 0) ? 'above' : 'below'} ${times} of ${pair.arm.laser.id}, where its modes are in step again: ${off > 0 ? 'a reference longer' : 'an object beam longer'} by that much records as matched paths do, and so does every ${distance} further on`,
  }];
}
