/** Runs all checks over a file and puts what they find into words, in the order of the text. */
import type { Tree } from '../../grammar/tree.ts';
import type { Model, Place, Problem } from '../model/model.ts';
import { fixed } from '../model/place.ts';
import type { Results } from '../results/plan.ts';
import { keyOf, placedIn, variantProblems } from '../results/variants.ts';
import { num, type Check, type Finding, type Severity } from './check.ts';
import { acceptProblems, Accepts, setupOf } from './accepts.ts';
import { CHECKS, checkOf } from './registry.ts';
import { MAX_FINDINGS, moreFindings } from './files/more-findings.ts';
import { syntaxProblems } from './syntax.ts';
import { quote } from './words.ts';

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2, hint: 3 };

/** All that is wrong with a computed setup. */
export function check(r: Results): Problem[] {
  const own = ran(r);
  return [
    ...r.problems, ...own, ...inExposures(r, own),
    // A variant is a trial: that it is dull is no finding, that it cannot be understood or computed is.
    ...variantProblems(r).filter(p => severityOf(p) === 'error' || BROKEN.includes(p.code)),
  ];
}

const ran = (r: Results): Problem[] => RUNNING.flatMap(c => c.run!(r));

/** A variant that a plate is exposed in is more than a trial: what is wrong there, and not on the page as it is written, where `own` was found. */
function inExposures(r: Results, own: readonly Problem[]): Problem[] {
  const exposed = new Map(r.exposures.plates.flatMap(p => p.all).flatMap(({ variant, results }) => (variant && results ? [[variant, results] as const] : [])));
  if (exposed.size === 0) return [];
  const told = new Set(own.map(keyOf));
  return [...exposed].flatMap(([variant, results]) => ran(results).filter(p => !told.has(keyOf(p))).map(p => placedIn(variant, p, r.setup)));
}

/** The findings of a file, with what is wrong with each of its computed setups. */
export function findingsOf(tree: Tree, model: Model, figures: readonly { readonly results: Results; readonly problems: readonly Problem[] }[]): Finding[] {
  const problems: Problem[] = [...syntaxProblems(tree, model.uri), ...inVariants(model), ...figures.flatMap(f => f.problems)];
  problems.push(...acceptProblems(figures.map(f => f.results), problems, p => severityOf(p) === 'error'));
  const accepting = model.setups.filter(s => s.accepts.length > 0);
  const lines = new Map(accepting.map(s => [s, new Accepts(s)]));
  const acceptedBy = (p: Problem): string | undefined => { const s = setupOf(p, accepting); return s && lines.get(s)!.about(p)?.reason; };
  const seen = new Set<string>();
  const findings: Finding[] = [];
  for (const p of problems) {
    const at = placeHere(fixed(p.at), p, model);
    // One fact can be met on several ways (a value that two results need); it is one finding.
    const key = `${p.code} ${at.line} ${at.start} ${p.subject}`;
    if (seen.has(key) || isCutOff(p, at, tree, model)) continue;
    seen.add(key);
    const accepted = accepting.length === 0 || checkOf(p.code).severity === 'error' ? undefined : acceptedBy(p);
    findings.push({
      code: p.code, ...worded(p), subject: p.subject, at, data: p.data,
      ...(p.setup !== undefined ? { setup: p.setup } : {}), ...(p.variant !== undefined ? { variant: p.variant } : {}), ...(accepted !== undefined ? { accepted } : {}),
    });
  }
  const told = new Set<string>();
  const first = ({ code }: Finding): boolean => checkOf(code).once !== true || (!told.has(code) && !!told.add(code));
  return capped(findings.sort((a, b) => a.at.line - b.at.line || a.at.start - b.at.start || RANK[a.severity] - RANK[b.severity]).filter(first));
}

/** A unit that seems to be missing may stand behind what could not be read. */
function isCutOff({ code }: Problem, at: Place, { lines }: Tree, { uri }: Model): boolean {
  const line = at.uri === uri && code === 'missing-unit' ? lines[at.line] : undefined;
  return line?.issue !== undefined && line.issue.start >= at.end && /^[\s)]*$/.test(line.text.slice(at.end, line.issue.start));
}

/** What is about an item of another file stands where this file names it: whoever reads the inventory has done nothing wrong. */
function placeHere(at: Place, { setup: name }: Problem, { uri, references, setups }: Model): Place {
  if (at.uri === uri) return at;
  const setup = setups.find(s => s.name === name);
  const named = references.find(r => r.target.uri === at.uri && r.target.line === at.line && r.target.start === at.start && (!setup || (r.at.line >= setup.node.at && r.at.line <= setup.node.end)));
  return named ? fixed(named.at) : setup ? fixed(setup.at) : at;
}

const LIMITS: readonly string[] = ['file-too-large', 'too-many-things', 'too-many-variants', 'too-many-files', 'too-many-arms'];

/** The gravest findings, in the order of the text, and behind them one that says how many more there are. */
function capped(findings: Finding[]): Finding[] {
  if (findings.length <= MAX_FINDINGS) return findings;
  // That something is not read at all explains more than what was found in the rest.
  const rank = (f: Finding): number => (LIMITS.includes(f.code) ? -1 : RANK[f.severity]);
  const byRank = [...findings].sort((a, b) => rank(a) - rank(b));
  const shown = new Set(byRank.slice(0, MAX_FINDINGS));
  const worst = byRank[MAX_FINDINGS]!;
  const data = { count: findings.length - MAX_FINDINGS, worst: worst.severity };
  return [...findings.filter(f => shown.has(f)), { code: 'more-findings', severity: worst.severity, subject: 'findings', at: worst.at, data, message: moreFindings.message(data) }];
}

/** The problems of a model, those in the lines of a variant with its name. */
function inVariants({ problems, setups }: Model): readonly Problem[] {
  const varied = setups.filter(s => s.variants.length > 0);
  if (varied.length === 0) return problems;
  return problems.map(p => {
    const variant = setupOf(p, varied)?.variants.find(v => p.at.line >= v.node.at && p.at.line <= v.node.end);
    return variant ? { ...p, variant: variant.name } : p;
  });
}

/** What keeps a beam or a length from being computed, and is no error in a setup that is being written. */
const BROKEN: readonly string[] = ['value-missing', 'arm-broken', 'arm-ends-early', 'light-stopped'];

type Worded = Pick<Finding, 'severity' | 'message'>;
// Problems of setups that an edit has not touched are the same ones as before.
const known = new WeakMap<Problem, Worded>();
function worded(p: Problem): Worded {
  let words = known.get(p);
  if (!words) known.set(p, words = { severity: severityOf(p), message: messageOf(p) });
  return words;
}

const severityOf = (p: Problem): Severity => { const check = checkOf(p.code); return check.severityOf?.(p.data) ?? check.severity; };

function messageOf({ code, data, variant }: Problem): string {
  const message = checkOf(code).message(data);
  return variant === undefined ? message : `In the variant ${quote(variant)}${data['elsewhere'] === true && data['line'] !== undefined ? `, in line ${num(data, 'line')}` : ''}: ${message}`;
}

const RUNNING: readonly Check[] = CHECKS.filter(c => c.run !== undefined);
