/**
 * Quick fixes. Each is an edit of the text that was tried on a copy before it is offered: parsed and evaluated like any
 * other text. It is offered only if the finding is gone and nothing worse than before has come.
 */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { checkOf } from '../../checks/registry.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { Results } from '../../results/plan.ts';
import type { Candidate } from './candidate.ts';
import { settingsFor, type Setting } from './computed.ts';
import { lengthFixes } from './lengths.ts';
import { MOVED, movesFor, type Move } from './moves.ts';
import { effectWords, movedWords, settingWords } from './titles.ts';
import { valuesFor } from './values.ts';
import { wordFixes } from './words.ts';

export interface Fix {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** the one that most people would take */
  readonly preferred: boolean;
  /** to a place that was looked for round about */
  readonly moves: boolean;
}

const MAX_FIXES = 8;
/** Of places to which something could be moved so many are offered, and of all that could be written so much is tried. */
const MAX_MOVES = 2;
const MOST_LOOKED = 64;

/** The fixes of a finding, the best first. */
export function fixesFor(snapshot: Snapshot, finding: Finding, library: Library): readonly Fix[] {
  const steps = fixing(snapshot, finding, library);
  for (;;) { const step = steps.next(); if (step.done) return step.value; }
}

/** The same in steps: one for each edit that is tried, of which there are a few dozen at the most. */
export function* fixing(snapshot: Snapshot, finding: Finding, library: Library): Generator<void, readonly Fix[]> {
  const found: Fix[] = [];
  const written = new Set<string>();
  let looked = 0;
  for (const candidate of candidates(snapshot, finding)) {
    // Where something else will do nothing is moved about.
    if (found.length >= MAX_FIXES || looked++ >= MOST_LOOKED || (candidate.moves === true && found.length > 0 && (!found.at(-1)!.moves || found.length >= MAX_MOVES))) break;
    const key = JSON.stringify(candidate.edits.map(e => [e.at.line, e.at.start, e.newText]));
    if (written.has(key)) continue;
    written.add(key);
    const after = tryOut(snapshot, finding, candidate, library);
    if (after) found.push({ title: candidate.title(after), edits: candidate.edits, preferred: found.length === 0, moves: candidate.moves === true });
    yield;
  }
  return found;
}

function* candidates(snapshot: Snapshot, finding: Finding): Generator<Candidate> {
  yield* wordFixes(finding);
  // Of a variant the setup that it changes is right.
  const r = finding.variant === undefined ? snapshot.results.find(x => x.setup.name === finding.setup) : undefined;
  if (!r) return;
  yield* lengthFixes(snapshot, finding);
  yield* valuesFor(finding, r, snapshot);
  for (const setting of settingsFor(finding, r, snapshot)) yield computed(setting, r);
  for (const move of movesFor(finding, r, snapshot)) yield moved(move, finding, r);
}

function moved({ thing, x, y, numbers: [inX, inY] }: Move, { code }: Finding, r: Results): Candidate {
  const edits = [inX.edit(x[1], DECIMALS), inY.edit(y[1], DECIMALS)].filter((_, i) => (i === 0 ? x[0] !== x[1] : y[0] !== y[1]));
  return { moves: true, edits, title: () => `${movedWords(thing, [x, y], r)}: ${MOVED[code]!}` };
}
/** To a tenth of a millimetre, in whatever unit. */
const DECIMALS = 4;

function computed(setting: Setting, r: Results): Candidate {
  return {
    edits: setting.knob.numbers.map(({ written }, i) => written.edit(setting.values[i]!.value, setting.values[i]!.decimals)),
    title: after => `${settingWords(setting, r)}${effectWords(setting, r, after.results.find(x => x.setup.name === r.setup.name))}`,
  };
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

/** Whether a finding is there no more, by its own check alone: of many places most are told apart so. */
function isGone({ code, subject }: Finding, r: Results | undefined): boolean {
  return r !== undefined && !(checkOf(code).run?.(r) ?? []).some(p => p.subject === subject);
}

/** The page with the edits in it, if that cures the finding and brings nothing else. */
function tryOut(before: Snapshot, finding: Finding, { edits, moves }: Candidate, library: Library): Snapshot | undefined {
  if (edits.some(e => e.at.uri !== before.uri)) return undefined;
  const after = analyse(before.uri, applyEdits(before.text, edits), library);
  if (moves && !isGone(finding, after.results.find(x => x.setup.name === finding.setup))) return undefined;
  const [had, left] = [bad(before), bad(after)];
  if ((left.get(idOf(finding))?.count ?? 0) >= (had.get(idOf(finding))?.count ?? 1)) return undefined;
  return [...left].every(([id, now]) => now.count <= (had.get(id)?.count ?? 0) && now.weight <= (had.get(id)?.weight ?? 0)) ? after : undefined;
}
