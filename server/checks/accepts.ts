/** `accept` lines held against what was found: codes that do not exist, names that nothing has, errors, and what is accepted and does not occur. */
import type { Accept, Place, Problem, Setup } from '../model/model.ts';
import { MAX_SUGGESTED, nearest } from '../model/scope.ts';
import type { Results } from '../results/plan.ts';
import { CHECKS, findCheck, LATER_CODES, RETIRED } from './registry.ts';

/** The `accept` lines of a setup, by what they accept. */
export class Accepts {
  private readonly lines = new Map<string, Accept>();

  constructor({ accepts }: Setup) {
    for (const a of accepts) if (!this.lines.has(keyOf(a.code, a.subject))) this.lines.set(keyOf(a.code, a.subject), a);
  }
  /** The line that is about a finding: all findings of that code, those of that name, or those of which the name is a part. */
  about({ code, subject }: Pick<Problem, 'code' | 'subject'>): Accept | undefined {
    return [undefined, subject, ...subject.split('.')].map(s => this.lines.get(keyOf(code, s))).find(a => a !== undefined);
  }
}
const keyOf = (code: string, subject: string | undefined): string => (subject === undefined ? code : `${code} ${subject}`);

/** The setup that a problem belongs to, among some in the order of the text. Its place tells it, since two setups may have one name; what shows in another file is told by the name. */
export function setupOf(p: Problem, setups: readonly Setup[]): Setup | undefined {
  if (p.setup === undefined || setups.length === 0) return undefined;
  if (p.at.uri !== setups[0]!.uri) return setups.find(s => s.name === p.setup);
  const { line } = p.at;
  let [low, high] = [0, setups.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (setups[middle]!.node.at <= line) low = middle;
    else high = middle - 1;
  }
  const found = setups[low]!;
  return line >= found.node.at && line <= found.node.end ? found : undefined;
}

/** What is wrong with the `accept` lines of the setups of a file, where `found` is all that was found. */
export function acceptProblems(results: readonly Results[], found: readonly Problem[], isError: (p: Problem) => boolean): Problem[] {
  const accepting = results.filter(r => r.setup.accepts.length > 0);
  if (accepting.length === 0) return [];
  const setups = accepting.map(r => r.setup);
  const own = new Map<Setup, Problem[]>(setups.map(s => [s, []]));
  for (const p of found) { const s = setupOf(p, setups); if (s) own.get(s)!.push(p); }
  return accepting.flatMap(r => acceptProblemsOf(r, own.get(r.setup)!, isError));
}

function acceptProblemsOf(r: Results, own: readonly Problem[], isError: (p: Problem) => boolean): Problem[] {
  const { setup } = r;
  const broken = own.some(isError);
  const occur = new Set(own.flatMap(p => [undefined, p.subject, ...p.subject.split('.')].map(s => keyOf(p.code, s))));
  let names: Set<string> | undefined;
  let suggested = 0;
  const report = (code: string, at: Place, subject: string, data: Problem['data']): Problem => ({ code, at, subject, setup: setup.name, data });
  return setup.accepts.flatMap((a): Problem[] => {
    const check = findCheck(a.code);
    if (!check) {
      if (LATER_CODES.includes(a.code)) return [];
      const suggestion = nearest(a.code, CHECKS.map(c => c.code));
      return [report('unknown-code', a.at, a.code, { finding: a.code, retired: RETIRED.includes(a.code), ...(suggestion !== undefined ? { suggestion } : {}) })];
    }
    if (check.severity === 'error') return [report('error-accepted', a.at, a.code, { finding: a.code })];
    if (a.subject !== undefined && !(names ??= subjectsOf(r, own)).has(a.subject)) {
      const suggestion = suggested++ < MAX_SUGGESTED ? nearest(a.subject, names) : undefined;
      return [report('unknown-name', a.subjectAt!, a.subject, { name: a.subject, wanted: 'what a finding may be about, such as a thing or a beam,', ...(suggestion !== undefined ? { suggestion } : {}) })];
    }
    // As long as something cannot be understood, what would be found otherwise is not known.
    if (broken || occur.has(keyOf(a.code, a.subject))) return [];
    return [report('nothing-to-accept', a.at, a.subject === undefined ? a.code : `${a.code} ${a.subject}`, { finding: a.code, ...(a.subject !== undefined ? { of: a.subject } : {}) })];
  });
}

/** Names that a finding may be about: of things, beams, values and results, and their parts. */
function subjectsOf({ setup, published, aliases }: Results, own: readonly Problem[]): Set<string> {
  const names = [setup.name, ...setup.things.keys(), ...setup.beams.keys(), ...setup.lets.keys(), ...published.map(c => c.name), ...aliases.keys(), ...setup.goals.map(g => g.result), ...own.map(p => p.subject)];
  const legs = [...setup.beams.values()].flatMap(b => b.legs.map(l => l.id));
  return new Set([...names, ...legs, ...names.flatMap(n => n.split('.'))]);
}
