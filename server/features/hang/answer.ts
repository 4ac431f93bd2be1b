/** What to record, so that a finished hologram is right where it will hang: for each lamp of a setup, with what stands against it, and the lines that say it on the page. Nothing is written unasked. */
import type { Thing } from '../../model/model.ts';
import type { Cell } from '../../results/graph.ts';
import type { Distances, Hanging, Untold } from '../../results/hang/hang.ts';
import { legStart } from '../../results/legs/legs.ts';
import { EDGE_ON } from '../../results/places/angles.ts';
import type { Results } from '../../results/plan.ts';

/** Something that stands in the way of it; in words in `words.ts`. */
export type Hitch =
  | { readonly kind: 'no angle' | 'too steep' | 'no distance' | 'no image' | 'lamp behind' | 'lamp edge-on' | 'too fine' | 'too slanted' | 'no viewer' }
  /** the object's light would have to run together, or its place is beyond any room: with which reference, and how far the lamp has to be, m, where a farther one cures it */
  | { readonly kind: 'no object'; readonly reference: Distances['reference']; readonly farther: number | undefined }
  /** the object, or its nearest part, would stand in the plate or in the master: by how much, m */
  | { readonly kind: 'in the plate' | 'in the master'; readonly by: number }
  /** the image would stand at the viewer's eyes or behind them */
  | { readonly kind: 'behind the viewer' };

/** A line to write. */
export interface Line { readonly to: Thing; readonly phrase: string; readonly text: string }

export interface HangAnswer {
  readonly results: Results;
  readonly hanging: Hanging;
  readonly hitches: readonly Hitch[];
  /** what the page has now, where it tells */
  readonly now: { readonly reference?: Cell; readonly byPlaces: boolean; readonly object?: Cell; readonly master?: Cell; readonly fromMaster?: Cell };
  readonly lines: readonly Line[];
}

export interface HangAnswers { readonly results: Results; readonly answers: readonly HangAnswer[]; readonly untold: readonly Untold[] }

/** Farther than this nothing is set up, m. */
const FARTHEST = 100;
/** With these the angles hold all the same. */
const HARMLESS: ReadonlySet<Hitch['kind']> = new Set(['no object', 'no viewer', 'no distance', 'no image']);
/** An angle that is as good as another, rad. */
const SAME_ANGLE = (0.05 * Math.PI) / 180;

export function hangOf(results: Results): HangAnswers {
  const { hangings, untold } = results.hang.all();
  return { results, untold, answers: hangings.map(h => ({ results, hanging: h, ...about(h, results) })) };
}

function about(h: Hanging, r: Results): Pick<HangAnswer, 'hitches' | 'now' | 'lines'> {
  const now = nowOf(h, r);
  const hitches = hitchesOf(h, r);
  return { hitches, now, lines: linesOf(h, r, hitches, now) };
}

function nowOf({ plate, pair, master }: Hanging, r: Results): HangAnswer['now'] {
  const reference = r.plates.find(p => p.plate === plate)?.arms.find(a => a.arm === pair?.reference)?.angle;
  const last = pair?.arm.path.at(-1);
  const leg = pair && last && legStart(last) === pair.arm.object ? r.legs.get(last) : undefined;
  const fromMaster = master && r.graph.find(`${master.id}.image`);
  return {
    byPlaces: reference?.byPlaces !== undefined && !reference.byPlaces.missing && !reference.written, ...(reference && !reference.cell.missing ? { reference: reference.cell } : {}),
    ...(leg && !leg.missing ? (master ? { master: leg } : { object: leg }) : {}), ...(fromMaster && !fromMaster.missing ? { fromMaster } : {}),
  };
}

function hitchesOf(h: Hanging, r: Results): Hitch[] {
  const value = (c: Cell | undefined): number | undefined => c && r.graph.value(c);
  const lamp = value(h.lampAngle);
  if (h.wrongSide) return [{ kind: 'lamp behind' }];
  if (lamp !== undefined && lamp > EDGE_ON) return [{ kind: 'lamp edge-on' }];
  const found: Hitch[] = [];
  if (h.lampAngle.missing) found.push({ kind: h.lampAngle.missing.code === 'impossible-value' ? 'too steep' : 'no angle' });
  if (!h.lampDistance || h.lampDistance.missing) found.push({ kind: 'no distance' });
  if (h.image.missing) found.push({ kind: 'no image' });
  if (h.unmade) found.push({ kind: h.unmade });
  const image = value(h.image);
  const deep = depthOf(h, r) / 2;
  const away = value(h.viewerDistance);
  if (h.transfer) {
    if (away === undefined) found.push({ kind: 'no viewer' });
    else if (image !== undefined && -image >= away) return [...found, { kind: 'behind the viewer' }];
  }
  for (const d of h.distances) {
    const [at, from] = [value(d.object), value(d.fromMaster)];
    if (at === undefined || image === undefined) continue;
    // Above zero behind the plate the object's light spreads; of a transfer the sign is the other way round.
    const wrong = h.transfer ? image !== 0 && Math.sign(at) === Math.sign(image) : image > 0 && at < 0;
    if (wrong || Math.abs(at) > FARTHEST) found.push({ kind: 'no object', reference: d.reference, farther: fartherLamp(h, d, r) });
    else if (d.reference === 'lamp' && !h.transfer && deep > at) found.push({ kind: 'in the plate', by: deep - at });
    else if (d.reference === 'lamp' && from !== undefined && deep >= from) found.push({ kind: 'in the master', by: deep - from });
  }
  return found;
}

/** The depth of what is recorded, as written; 0 where it is not. */
function depthOf({ pair, master }: Hanging, r: Results): number {
  const depth = pair?.depth ?? (master && r.values.fact(master, 'depth'));
  return (depth && r.graph.value(depth)) ?? 0;
}

/** How far a lamp has to be at least so that an image behind the plate can be recorded with that reference: 1/R_C < m μ/R_R + 1/R_I. */
function fartherLamp(h: Hanging, { reference }: Distances, r: Results): number | undefined {
  const image = r.graph.value(h.image);
  const curvature = reference === 'lamp' ? undefined : r.graph.value(r.graph.find(`${h.base}.curvature of the reference`)!);
  if (image === undefined || image <= 0 || curvature === undefined) return undefined;
  const least = (h.transfer ? -1 : 1) * ((h.ratio && r.graph.value(h.ratio)) ?? 1) * curvature + 1 / image;
  return least > 0 ? 1 / least : undefined;
}

/** What to write in the plate, where its angles are written and do not follow from places. */
function linesOf(h: Hanging, r: Results, hitches: readonly Hitch[], now: HangAnswer['now']): Line[] {
  if (now.byPlaces || hitches.some(x => !HARMLESS.has(x.kind))) return [];
  const lines: Line[] = [];
  const { plate } = h;
  const angle = (phrase: 'reference angle' | 'object angle', cell: Cell): void => {
    const value = r.graph.value(cell);
    const written = plate.facts.has(phrase) ? r.values.fact(plate, phrase) : undefined;
    const is = written && r.graph.value(written);
    // Squarely is what nobody needs to write.
    if (value === undefined || (is !== undefined && Math.abs(is - value) < SAME_ANGLE) || (is === undefined && phrase === 'object angle' && Math.abs(value) < SAME_ANGLE)) return;
    lines.push({ to: plate, phrase, text: `${phrase}: ${Number(((value * 180) / Math.PI).toFixed(1))}°` });
  };
  angle('reference angle', h.referenceAngle);
  // Run backwards, the light of a lamp above comes from below.
  const from = h.from && ((h.from === 'above') === (h.transfer === undefined) ? 'above' : 'below');
  if (from && !plate.facts.has('reference from')) lines.push({ to: plate, phrase: 'reference from', text: `reference from: ${from}` });
  angle('object angle', h.objectAngle);
  return lines;
}
