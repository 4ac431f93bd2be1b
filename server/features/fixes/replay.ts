/** What a lamp or a viewer would have to be otherwise so that a finding about the finished hologram goes. Limits are those of the checks. */
import { text } from '../../checks/check.ts';
import type { Finding } from '../../checks/check.ts';
import { SOFT } from '../../checks/replay/image-blurred.ts';
import { NEAREST } from '../../checks/replay/viewer-outside.ts';
import { ONE_DEGREE } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import type { Shown } from '../../results/replay/shown.ts';
import { conditionOn, type Condition } from '../../results/solve/wishes.ts';

/** As `Wanted`, of one condition. */
interface Lamps { readonly conditions: readonly Condition[]; readonly only: readonly string[] }

/** Nearer to a limit than that nobody sets anything, as a share of it. */
const CLEAR = 0.02;

export const shownOf = (f: Finding, { replay }: Results): Shown | undefined => replay.all.find(s => f.subject === `${s.plate.id}.${s.lamp.id}` && f.data['laser'] === s.laser?.id);

const set = (cell: Cell | undefined, sort: Condition['sort'], value: number, { graph }: Results, tolerance: number | undefined, ...only: string[]): readonly Lamps[] =>
  (!cell || cell.missing ? [] : [{ conditions: [{ ...conditionOn(cell, sort, value, graph), ...(tolerance === undefined ? {} : { tolerance }) }], only }]);

/** As wide as its object: to a hundredth. */
export const lampDistance = (f: Finding, r: Results): readonly Lamps[] => { const s = shownOf(f, r); return set(s?.image?.size, 'equal', 1, r, 0.01, `${s?.lamp.id ?? ''}.distance`); };

/** A lamp whose height tells its angle. */
export const lampHeight = (f: Finding, r: Results): readonly Lamps[] => { const s = shownOf(f, r); return s && f.data['reference'] !== undefined ? set(s.light.angle, 'equal', Number(f.data['reference']), r, ONE_DEGREE, `${s.lamp.id}.height`) : []; };

export function lampSize(f: Finding, r: Results): readonly Lamps[] {
  const s = shownOf(f, r);
  const part = s?.image?.parts.find(p => p.part === f.data['part']);
  const unseen = part?.unseen && r.graph.value(part.unseen);
  return s && unseen !== undefined ? set(part?.blur, 'at most', SOFT * unseen * (1 - CLEAR), r, undefined, `${s.lamp.id}.size`) : [];
}

/** Back from an image before the plate; or higher or lower, until the line to it crosses the plate. */
export function viewerPlace(f: Finding, r: Results): readonly Lamps[] {
  const view = shownOf(f, r)?.view;
  const viewer = text(f.data, 'viewer');
  if (f.data['why'] === 'behind the eyes') return set(view?.distance, 'at least', Math.abs(Number(f.data['place'])) + NEAREST, r, undefined, `${viewer}.distance`);
  const at = view?.meets && r.graph.value(view.meets.at);
  return view?.meets && at !== undefined ? set(view.meets.at, at > 0 ? 'at most' : 'at least', Math.sign(at) * view.meets.half * (1 - CLEAR), r, undefined, `${viewer}.angle`, `${viewer}.height`) : [];
}

export function viewerAtSlit(f: Finding, r: Results): readonly Lamps[] {
  const view = shownOf(f, r)?.view;
  const slit = view?.opening && r.graph.value(view.opening.place);
  return slit === undefined ? [] : set(view?.distance, 'equal', Math.abs(slit), r, 0.005, `${text(f.data, 'viewer')}.distance`);
}
