/**
 * Quick fixes. Each is an edit of the text that was tried on a copy before it is offered: parsed and evaluated like any
 * other text. It is offered only if the finding is gone and nothing worse than before has come.
 */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { checkOf } from '../../checks/registry.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { Results } from '../../results/plan.ts';
import { addedFixes } from './added.ts';
import { isAsked, measuredAnew } from './anew.ts';
import type { Candidate } from './candidate.ts';
import { settingsFor, type Setting } from './computed.ts';
import { lengthFixes } from './lengths.ts';
import { MOVED, movesFor, type Move } from './moves.ts';
import { slipFixes } from './slips.ts';
import { splitFixes } from './split.ts';
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

/**
 * The fixes of a finding, the best first.
 * @param now the clock of whoever asks, to the minute, as a page dates it: without it nothing is offered that has to be dated
 */
export function fixesFor(snapshot: Snapshot, finding: Finding, library: Library, now?: string): readonly Fix[] {
  const steps = fixing(snapshot, finding, library, now);
  for (;;) { const step = steps.next(); if (step.done) return step.value; }
}

/** The same in steps: one for each edit that is tried, of which there are a few dozen at the most. */
export function* fixing(snapshot: Snapshot, finding: Finding, library: Library, now?: string): Generator<void, readonly Fix[]> {
  const found: Fix[] = [];
  const written = new Set<string>();
  let looked = 0;
  for (const candidate of candidates(snapshot, finding, library, now)) {
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

function* candidates(snapshot: Snapshot, finding: Finding, library: Library, now: string | undefined): Generator<Candidate> {
  yield* wordFixes(finding);
  // Of a variant the setup that it changes is right.
  const r = finding.variant === undefined ? snapshot.results.find(x => x.setup.name === finding.setup) : undefined;
  yield* slipFixes(finding, r, snapshot);
  if (!r) return;
  yield* valuesFor(finding, r, snapshot);
  yield* addedFixes(finding, r, snapshot);
  const set: Candidate[] = [];
  for (const c of lengthFixes(snapshot, finding)) { set.push(c); yield c; }
  for (const setting of settingsFor(finding, r, snapshot)) { const c = computed(setting, r); set.push(c); yield c; }
  for (const c of splitFixes(finding, r, snapshot)) { set.push(c); yield c; }
  const again = now === undefined ? undefined : measuredAnew(snapshot, r, library, now);
  if (again) for (const c of set) for (const thing of c.things ?? []) { const both = again(c, thing); if (both) yield both; }
  for (const move of movesFor(finding, r, snapshot)) {
    const c = moved(move, finding, r);
    yield again?.(c, move.thing.id) ?? c;
  }
}

function moved({ thing, x, y, numbers: [inX, inY] }: Move, { code }: Finding, r: Results): Candidate {
  const edits = [inX.edit(x[1], DECIMALS), inY.edit(y[1], DECIMALS)].filter((_, i) => (i === 0 ? x[0] !== x[1] : y[0] !== y[1]));
  return { moves: true, things: [thing.id], edits, title: () => `${movedWords(thing, [x, y], r)}: ${MOVED[code]!}` };
}
/** To a tenth of a millimetre, in whatever unit. */
const DECIMALS = 4;

function computed(setting: Setting, r: Results): Candidate {
  const { thing } = setting.knob;
  return {
    ...(thing ? { things: [thing.id] } : {}),
    edits: setting.knob.numbers.map(({ written }, i) => written.edit(setting.values[i]!.value, setting.values[i]!.decimals)),
    title: after => `${settingWords(setting, r)}${effectWords(setting, r, after.results.find(x => x.setup.name === r.setup.name))}`,
  };
}

const idOf = (f: Finding): string => `${f.setup ?? ''}\n${f.code}\n${f.subject}`;
const WEIGHT = { error: 1000, warning: 100, note: 10, hint: 0 } as const;
/** How many findings of each kind there are, and how much they weigh: two slips in one block have one subject. */
function bad(s: Snapshot, asked?: string): Map<string, { count: number; weight: number }> {
  const all = new Map<string, { count: number; weight: number }>();
  for (const f of s.findings) {
    if (f.accepted !== undefined || f.severity === 'hint' || isAsked(f, asked)) continue;
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
function tryOut(before: Snapshot, finding: Finding, { edits, moves, anew: asked }: Candidate, library: Library): Snapshot | undefined {
  if (edits.some(e => e.at.uri !== before.uri)) return undefined;
  const after = analyse(before.uri, applyEdits(before.text, edits), library);
  if (moves && !isGone(finding, after.results.find(x => x.setup.name === finding.setup))) return undefined;
  const [had, left] = [bad(before), bad(after, asked)];
  if ((left.get(idOf(finding))?.count ?? 0) >= (had.get(idOf(finding))?.count ?? 1)) return undefined;
  return [...left].every(([id, now]) => now.count <= (had.get(id)?.count ?? 0) && now.weight <= (had.get(id)?.weight ?? 0)) ? after : undefined;
}
