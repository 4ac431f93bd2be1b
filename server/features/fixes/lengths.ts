/** Legs whose written lengths could take up a mismatch: closed form. */
import type { Expr } from '../../../grammar/tree.ts';
import type { Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { within } from '../../model/place.ts';
import type { Leg } from '../../model/model.ts';
import { legStart, legWords } from '../../results/legs/legs.ts';
import type { Pair } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import type { Candidate } from './candidate.ts';

/** Shorter than this no two things stand apart on a table. */
const SHORTEST = 0.02;

/** Legs that could take up the mismatch: of the longer arm by shortening, of the shorter by lengthening. */
export function lengthFixes(snapshot: Snapshot, finding: Finding): Candidate[] {
  if (finding.code !== 'arms-mismatched' && finding.code !== 'expectation-failed') return [];
  const results = snapshot.results.find(r => r.setup.name === finding.setup);
  const pair = results && pairOf(results, finding);
  const mismatch = pair && results.graph.value(pair.mismatch);
  if (!pair || mismatch === undefined || mismatch === 0) return [];
  const shared = new Set(pair.arm.path.filter(l => pair.reference.path.includes(l)));
  const fixes: { fix: Candidate; shorten: boolean; view: boolean; after: number }[] = [];
  for (const [arm, sign] of [[pair.arm, -1], [pair.reference, 1]] as const) {
    for (const leg of arm.path) {
      if (shared.has(leg)) continue;
      const change = sign * mismatch;
      const row = legFix(leg, change, results);
      if (row) fixes.push({ ...row, shorten: change < 0, view: legStart(leg)?.kind.light === 'scatters' });
    }
  }
  // Shortening first. The leg from the object to the plate comes last: changing it changes the view. Of the others the one
  // that keeps most of its length, since there a mirror has most room to move.
  return fixes.sort((a, b) => Number(b.shorten) - Number(a.shorten) || Number(a.view) - Number(b.view) || b.after - a.after).map(f => f.fix);
}

function pairOf(results: Results, finding: Finding): Pair | undefined {
  const pairs = results.plates.flatMap(p => p.pairs.map(pair => ({ pair, id: `${p.plate.id}.${pair.arm.name}` })));
  if (finding.code === 'arms-mismatched') return pairs.find(p => p.id === finding.subject)?.pair;
  const goal = results.goals.find(g => g.goal.result === finding.subject && g.cell?.name.endsWith('.mismatch'));
  return goal && pairs.find(p => p.pair.mismatch === goal.cell)?.pair;
}

function legFix(leg: Leg, change: number, results: Results): { fix: Candidate; after: number } | undefined {
  if (leg.length?.kind !== 'quantity' || !leg.lengthAt) return undefined;
  const value = leg.node.line.value!;
  const number = numberIn(value);
  const { unit } = leg.length.quantity;
  if (!number || !unit) return undefined;
  const before = leg.length.quantity.value;
  const after = before + change;
  if (after < SHORTEST) return undefined;
  const [written] = /^[\d.]*/.exec(leg.node.line.text.slice(number.start, number.end))!;
  const newText = (after / unit.factor).toFixed(Math.max(written.split('.')[1]?.length ?? 0, Math.ceil(Math.log10(unit.factor / 0.001) - 1e-9)));
  const end = number.start + written.length;
  const object = results.plates.flatMap(p => p.pairs).find(p => p.arm.path.includes(leg)) !== undefined;
  return {
    after,
    fix: {
      // What turns the light at one of its ends is moved for it.
      things: [leg.target, legStart(leg)].flatMap(t => (t?.kind.light === 'turns' ? [t.id] : [])),
      title: () => `${change < 0 ? 'Shorten' : 'Lengthen'} the leg ${legWords(leg)} from ${written} to ${newText} ${unit.text}: the ${object ? 'object' : 'reference'} path then matches`,
      edits: [{ at: within(leg.lengthAt, { start: number.start, end }), newText }],
    },
  };
}

/** The plain number at the start of a written length: `468` in `468 mm ± 3 mm`. */
function numberIn(e: Expr): Expr & { kind: 'number' } | undefined {
  return e.kind === 'tolerance' ? numberIn(e.value) : e.kind === 'number' ? e : undefined;
}
