/** What a value would have to do so that a finding goes: conditions on results. */
import type { Finding } from '../../checks/check.ts';
import { LEAST } from '../../checks/light/corners-dark.ts';
import { BESIDE } from '../../checks/object/dark-side-lit.ts';
import { LONG, SHORT } from '../../checks/recording/exposure-hard-to-time.ts';
import { HALF } from '../../checks/recording/polarization-crossed.ts';
import { ONE_DEGREE } from '../../model/units.ts';
import { RESOLVING_MARGIN } from '../../results/rules/fringes.ts';
import { isTooSmall, leastOf } from '../../results/table/faces.ts';
import type { Cell } from '../../results/graph.ts';
import { alignmentOf } from '../../results/alignment.ts';
import type { Results } from '../../results/plan.ts';
import { comparisons } from '../../results/discrepancies/disagree.ts';
import { lampDistance, lampHeight, lampSize, viewerAtSlit, viewerPlace } from './replay.ts';
import { conditionOn, conditionsOf, type Condition } from '../../results/solve/wishes.ts';

export interface Wanted {
  /** all of them at once */
  readonly conditions: readonly Condition[];
  /** how the result is told; undefined: by its words and figures */
  readonly told?: 'mismatch';
  /** what is told of it instead of its first condition */
  readonly shown?: Cell;
  /** only these numbers are set for it, by the names of their cells */
  readonly only?: readonly string[];
}

type Of = (f: Finding, r: Results) => readonly Wanted[];

/** Nearer to a limit than that nobody sets anything, as a share of it. */
const CLEAR = 0.02;

const WANTED: Readonly<Record<string, Of>> = {
  'arms-mismatched': (f, r) => r.plates.flatMap(p => p.pairs.filter(x => f.subject === `${p.plate.id}.${x.arm.name}`).map((x): Wanted => ({ conditions: [conditionOn(x.mismatch, 'equal', 0, r.graph)], told: 'mismatch' }))),
  'expectation-failed': (f, r) => goals(f, r, 'not met'),
  'expectation-undecided': (f, r) => goals(f, r, 'undecided'),
  'ratio-unusual': (f, r) => {
    const cell = r.light.plates.find(p => p.name === f.subject)?.ratio;
    return cell ? between(cell, Number(f.data['from']), Number(f.data['to']), r) : [];
  },
  'corners-dark': (f, r) => r.light.plates.flatMap(p => (p.name === f.subject && p.corners ? [least(p.corners, LEAST, r)] : [])),
  'fringes-drift': (f, r) => r.light.drifts.flatMap(d => (d.plate.id === f.subject ? [{ ...most(d.exposure, r.graph.value(d.longest)!, r), shown: d.brightness }] : [])),
  'exposure-hard-to-time': (f, r) => r.light.plates.filter(p => p.plate.id === f.subject).slice(0, 1).flatMap(p => between(p.exposure, SHORT, LONG, r)),
  'beam-clipped': (f, r) => r.table.look.faces.flatMap(c => (f.subject === `${c.leg.id} ${c.thing.id}` && isTooSmall(c, r.graph) ? [least(c.cell, leastOf(c), r)] : [])),
  'fringes-too-fine': (f, r) => r.fringes.pairs.flatMap(x => (f.subject === `${x.plate.id}.${x.pair.arm.name}` && x.share ? [most(x.share, x.way === 'reflection' ? 1 / RESOLVING_MARGIN : 1, r)] : [])),
  'reference-too-near': (f, r) => r.fringes.pairs.flatMap(x => (f.subject === `${x.plate.id}.${x.pair.arm.name}` && x.separation ? [least(x.separation, 1, r)] : [])),
  'polarization-crossed': (f, r) => r.polarization.pairs.flatMap(p => (p.plate.id === f.data['plate'] && p.pair.arm.name === f.data['arm'] ? [least(p.share, HALF, r)] : [])),
  'pinhole-unfit': (f, r) => r.table.look.pinholes.flatMap(p => (p.thing.id === f.subject ? [{ conditions: [{ ...conditionOn(p.fit, 'equal', 1, r.graph), tolerance: 0.1 }], only: [p.pinhole.name] }] : [])),
  'dark-side-lit': (f, r) => r.object.sights.flatMap(s => (f.subject === `${s.plate.id}.${s.object.id}` && s.pair.litAt?.byPlaces ? [most(s.pair.litAt.byPlaces, BESIDE, r)] : [])),
  'light-bends': (f, r) => alignmentOf(r).straight.flatMap(x => (x.thing.id === f.subject ? [{ conditions: [{ ...conditionOn(x.turn, 'equal', 0, r.graph), tolerance: 0.1 * ONE_DEGREE }] }] : [])),
  'heading-off': (f, r) => alignmentOf(r).lasers.flatMap(l => (l.laser.id === f.subject ? [turned(l.off, f.subject, r)] : [])),
  'mirror-turned': (f, r) => alignmentOf(r).mirrors.flatMap(m => (m.mirror.id === f.subject ? [turned(m.off, f.subject, r)] : [])),
  'reading-disagrees': (f, r) => comparisons(r).residuals.flatMap(x => (x.effect && x.taken.reading.words === f.subject && x.subject.plan ? [{ conditions: [conditionOn(x.subject.plan, 'equal', r.graph.value(x.subject.plan)! + x.difference, r.graph)] }] : [])),
  'lamp-distance-off': lampDistance,
  'image-astigmatic': lampDistance,
  'lamp-angle-off': lampHeight,
  'image-blurred': lampSize,
  'viewer-outside': viewerPlace,
  'viewer-off-slit': viewerAtSlit,
  'likeliest-cause': (f, r) => {
    const cell = f.data['kind'] === 'input' ? r.graph.find(String(f.data['name'])) : undefined;
    return cell && !cell.missing ? [{ conditions: [conditionOn(cell, 'equal', r.graph.value(cell)! + Number(f.data['amount']), r.graph)] }] : [];
  },
};

/** Nothing for what no value cures. */
export const wantedFor = (f: Finding, r: Results): readonly Wanted[] => WANTED[f.code]?.(f, r) ?? [];

const least = (cell: Cell, value: number, { graph }: Results): Wanted => ({ conditions: cell.missing ? [] : [conditionOn(cell, 'at least', value * (1 + CLEAR), graph)] });
const most = (cell: Cell, value: number, { graph }: Results): Wanted => ({ conditions: cell.missing ? [] : [conditionOn(cell, 'at most', value * (1 - CLEAR), graph)] });
const between = (cell: Cell, low: number, high: number, r: Results): readonly Wanted[] => { const now = r.graph.value(cell); return now === undefined ? [] : [now < low ? least(cell, low, r) : most(cell, high, r)]; };
const turned = (off: Cell, thing: string, { graph }: Results): Wanted => ({ conditions: [{ ...conditionOn(off, 'equal', 0, graph), tolerance: 0.05 * ONE_DEGREE }], only: [`${thing}.heading`, `${thing}.tilt`] });

/** Goals of a result with an outcome; of those that are undecided the whole band is to lie within. */
function goals(f: Finding, r: Results, outcome: string): readonly Wanted[] {
  return r.goals.filter(g => g.goal.result === f.subject && g.outcome === outcome && g.goal.at.line === f.at.line && g.cell && !g.cell.missing).map(g => {
    const give = (g.give ?? 0) * (1 + CLEAR);
    // What should be little is best nothing.
    if (g.cell!.name.endsWith('.mismatch') && /^<=?$/.test(g.goal.op ?? '')) return { conditions: [conditionOn(g.cell!, 'equal', 0, r.graph)], told: 'mismatch' as const };
    const conditions = conditionsOf({ ...g, cell: g.cell! }, r.graph);
    // Limits that lie nearer to each other than the band is wide hold for no value.
    if (conditions.length === 2 && Math.abs(conditions[0]!.value - conditions[1]!.value) <= 2 * give) return { conditions: [] };
    return { conditions: conditions.map(c => ({ ...c, value: c.sort === 'at most' ? c.value - give : c.sort === 'at least' ? c.value + give : c.value })) };
  });
}
