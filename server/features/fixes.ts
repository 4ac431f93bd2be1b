/**
 * Quick fixes. Each is an edit of the text that was tried on a copy before it is offered: parsed and evaluated like any
 * other text. It is offered only if the finding is gone and nothing worse than before has come.
 */
import type { Expr } from '../../grammar/tree.ts';
import { analyse, type Library, type Snapshot } from '../analysis.ts';
import type { Finding } from '../checks/check.ts';
import { applyEdits, type Edit } from '../model/edits.ts';
import type { Leg } from '../model/model.ts';
import { within } from '../model/place.ts';
import { legStart, legWords } from '../results/paths/legs.ts';
import type { Pair } from '../results/paths/pairs.ts';
import type { Results } from '../results/plan.ts';

export interface Fix {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** the one that most people would take */
  readonly preferred: boolean;
}

const MAX_FIXES = 8;
/** Shorter than this no two things stand apart on a table. */
const SHORTEST = 0.02;

/** The fixes of a finding, the best first. */
export function fixesFor(snapshot: Snapshot, finding: Finding, library: Library): Fix[] {
  const candidates = finding.code === 'arms-mismatched' || finding.code === 'expectation-failed' ? lengthFixes(snapshot, finding) : wordFixes(snapshot, finding);
  const tried: Fix[] = [];
  for (const fix of candidates) {
    if (tried.length >= MAX_FIXES) break;
    if (cures(snapshot, finding, fix, library)) tried.push({ ...fix, preferred: tried.length === 0 });
  }
  return tried;
}

const idOf = (f: Finding): string => `${f.setup ?? ''}\n${f.code}\n${f.subject}`;
const WEIGHT = { error: 1000, warning: 100, note: 10, hint: 0 } as const;
/** How many findings of each kind there are, and how much they weigh: two slips in one block have one subject. */
function bad(s: Snapshot): Map<string, { count: number; weight: number }> {
  const all = new Map<string, { count: number; weight: number }>();
  for (const f of s.findings) {
    if (f.accepted !== undefined || f.severity === 'hint') continue;
    const before = all.get(idOf(f));
    all.set(idOf(f), { count: (before?.count ?? 0) + 1, weight: (before?.weight ?? 0) + WEIGHT[f.severity] });
  }
  return all;
}

function cures(before: Snapshot, finding: Finding, fix: Fix, library: Library): boolean {
  if (fix.edits.some(e => e.at.uri !== before.uri)) return false;
  const had = bad(before);
  const left = bad(analyse(before.uri, applyEdits(before.text, fix.edits), library));
  if ((left.get(idOf(finding))?.count ?? 0) >= (had.get(idOf(finding))?.count ?? 1)) return false;
  return [...left].every(([id, now]) => now.count <= (had.get(id)?.count ?? 0) && now.weight <= (had.get(id)?.weight ?? 0));
}

/** Legs that could take up the mismatch: of the longer arm by shortening, of the shorter by lengthening. */
function lengthFixes(snapshot: Snapshot, finding: Finding): Fix[] {
  const results = snapshot.results.find(r => r.setup.name === finding.setup);
  const pair = results && pairOf(results, finding);
  const mismatch = pair && results.graph.value(pair.mismatch);
  if (!pair || mismatch === undefined || mismatch === 0) return [];
  const shared = new Set(pair.arm.path.filter(l => pair.reference.path.includes(l)));
  const fixes: { fix: Fix; shorten: boolean; view: boolean; after: number }[] = [];
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

function legFix(leg: Leg, change: number, results: Results): { fix: Fix; after: number } | undefined {
  if (leg.length?.kind !== 'quantity' || !leg.lengthAt) return undefined;
  const value = leg.node.line.value!;
  const number = numberIn(value);
  const { unit } = leg.length.quantity;
  if (!number || !unit) return undefined;
  const before = leg.length.quantity.value;
  const after = before + change;
  if (after < SHORTEST) return undefined;
  const written = leg.node.line.text.slice(number.start, number.end).replace(/[^\d.].*$/, '');
  const newText = (after / unit.factor).toFixed(Math.max(written.split('.')[1]?.length ?? 0, Math.ceil(Math.log10(unit.factor / 0.001) - 1e-9)));
  const end = number.start + written.length;
  const object = results.plates.flatMap(p => p.pairs).find(p => p.arm.path.includes(leg)) !== undefined;
  return {
    after,
    fix: {
      title: `${change < 0 ? 'Shorten' : 'Lengthen'} the leg ${legWords(leg)} from ${written} to ${newText} ${unit.text}: the ${object ? 'object' : 'reference'} path then matches`,
      edits: [{ at: within(leg.lengthAt, { start: number.start, end }), newText }],
      preferred: false,
    },
  };
}

/** The plain number at the start of a written length: `468` in `468 mm ± 3 mm`. */
function numberIn(e: Expr): Expr & { kind: 'number' } | undefined {
  return e.kind === 'tolerance' ? numberIn(e.value) : e.kind === 'number' ? e : undefined;
}

/** A misspelt word changed to the one suggested, a forgotten unit added. */
function wordFixes(_: Snapshot, finding: Finding): Fix[] {
  const suggestion = finding.data['suggestion'];
  if (typeof suggestion !== 'string') return [];
  if (finding.code === 'missing-unit') {
    const { at } = finding;
    const gap = /^[°%]/.test(suggestion) ? '' : ' ';
    return [{ title: `Add the unit: ${String(finding.data['written'] ?? '')}${gap}${suggestion}`, edits: [{ at: within(at, { start: at.end, end: at.end }), newText: gap + suggestion }], preferred: false }];
  }
  return [{ title: `Change to “${suggestion}”`, edits: [{ at: finding.at, newText: suggestion }], preferred: false }];
}
