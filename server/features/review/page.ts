/** What a change does, as plain data in words: text, Markdown, HTML and the panel show the same page. Nothing is computed here. */
import type { Finding } from '../../checks/check.ts';
import type { Change, Words } from '../../review/changes.ts';
import type { FindingsChange } from '../../review/findings.ts';
import { isUnchanged, type ResultChange, type Review, type SetupReview } from '../../review/review.ts';
import { placeIn, type Place } from '../../model/place.ts';
import type { Cell } from '../../results/graph.ts';
import { shortName } from '../../results/names.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { changeBy, fromTo, many, rank, shiftWords } from './words.ts';

/** Where something stands, on which of the two pages; its line counts from 0. */
export interface Where { readonly side: 'before' | 'after'; readonly uri: string; readonly line: number; readonly start: number; readonly end: number }

export interface ChangeLine {
  readonly kind: Change['kind'];
  /** `M3 was moved` */
  readonly words: string;
  /** as written */
  readonly before?: string;
  readonly after?: string;
  /** `42 mm further away` */
  readonly by?: string;
  readonly at?: Where;
}

export interface ResultLine {
  readonly name: string;
  readonly label: string;
  readonly before: string;
  readonly after: string;
  readonly by?: string;
  /** false: so unsure are both that it may as well be as it was */
  readonly sure: boolean;
  /** by how much of itself it changed; undefined where there is no such number */
  readonly share?: number;
  /** what it is a result of */
  readonly at: Where;
}

/** An expectation or an aim whose outcome is another one. */
export interface GoalLine {
  readonly text: string;
  readonly before: string;
  readonly after: string;
  readonly at: Where;
}

export interface FindingLine {
  readonly severity: Finding['severity'];
  readonly code: string;
  readonly message: string;
  readonly at: Where;
}

export interface FindingPage {
  readonly cured: readonly FindingLine[];
  readonly added: readonly FindingLine[];
  readonly accepted: readonly FindingLine[];
  readonly still: readonly FindingLine[];
}

export interface SetupPage {
  readonly name: string;
  readonly formerly?: string;
  readonly variants?: string;
  /** `object beam +79 mm, darkest brightness 31 → 96 %; 1 finding cured, 1 new` */
  readonly headline: string;
  readonly unchanged: boolean;
  readonly changes: readonly ChangeLine[];
  /** `R2 follows, 40 mm nearer`: nothing was written about it */
  readonly along: readonly string[];
  readonly results: readonly ResultLine[];
  /** how many results are the same, and how many differ by less than their figures show */
  readonly same: number;
  readonly less: number;
  /** expectations and aims whose outcome is another one */
  readonly goals: readonly GoalLine[];
  readonly findings: FindingPage;
}

export interface ReviewPage {
  readonly setups: readonly SetupPage[];
  readonly inventories: readonly { readonly name: string; readonly changes: readonly ChangeLine[] }[];
  readonly rest: { readonly changes: readonly ChangeLine[]; readonly findings: FindingPage };
}

export function reviewPage(review: Review): ReviewPage {
  return {
    setups: review.setups.map(setupPage),
    inventories: review.inventories.filter(i => i.changes.length > 0).map(i => ({ name: i.name, changes: i.changes.map(changeLine) })),
    rest: { changes: review.rest.changes.map(changeLine), findings: findingPage(review.rest.findings) },
  };
}

export function setupPage(s: SetupReview): SetupPage {
  const lines = resultLines(s);
  const shown = lines.filter(l => l.before !== l.after);
  const variant = (r: SetupReview['before']): string => (r?.setup.variant === undefined ? 'as written' : `variant “${r.setup.variant}”`);
  const base = {
    name: s.name, ...(s.formerly === undefined ? {} : { formerly: s.formerly }), ...(s.before?.setup.variant === s.after?.setup.variant ? {} : { variants: `${variant(s.before)} → ${variant(s.after)}` }),
    unchanged: isUnchanged(s), changes: s.changes.map(changeLine), along: s.along.map(m => `${m.thing} follows, ${shiftWords(m.by)}`),
    results: shown, same: s.same, less: lines.length - shown.length,
    goals: goalLines(s),
    findings: findingPage(s.findings),
  };
  return { ...base, headline: headlineOf(s) };
}

const TELLS: Readonly<Record<Change['kind'], string>> = { added: 'is new', removed: 'is gone', renamed: 'has another name', moved: 'was moved', turned: 'was turned', led: 'goes another way', set: '' };
const OF: Partial<Record<Change['what'], string>> = { expectation: 'expect ', aim: 'aim ', acceptance: 'accept ', reading: 'measured ', let: 'let ', use: 'use ', setup: 'setup ', inventory: 'inventory ', path: 'beam ' };
const ON: Partial<Record<Change['what'], string>> = { place: 'the place of ', direction: 'the direction of ', item: 'the inventory item of ' };

function changeLine(c: Change): ChangeLine {
  const { before, after, kind, what, by } = c;
  const subject = kind === 'renamed' ? `${OF[what] ?? (what === 'thing' ? '' : `${what} `)}${before?.text ?? ''}` : `${(before && after ? '' : ON[what]) ?? ''}${OF[what] ?? ''}${c.name}`;
  const tells = kind === 'renamed' ? `is now called ${after?.text ?? c.name}` : TELLS[kind];
  const written = (w: Words | undefined): string | undefined => (kind === 'renamed' || !w || w.text === '' || w.text === c.name ? undefined : w.text);
  const [old, now] = [written(before), written(after)];
  return {
    kind, words: subject === '' ? `a line ${tells === '' ? 'is another one' : tells}` : `${subject}${tells === '' ? '' : ` ${tells}`}`,
    ...(old === undefined ? {} : { before: old }), ...(now === undefined ? {} : { after: now }), ...(by ? { by: shiftWords(by) } : {}),
    ...(after ? { at: { side: 'after', ...after.at } } : before ? { at: { side: 'before', ...before.at } } : {}),
  };
}

type Values = readonly [before: number | undefined, after: number | undefined];
const valuesOf = ({ before, after }: SetupReview, r: ResultChange): Values => [r.before && before!.graph.value(r.before), r.after && after!.graph.value(r.after)];
const byOf = (r: ResultChange, [before, after]: Values): string | undefined => (before === undefined || after === undefined ? undefined : changeBy((r.after ?? r.before)!, before, after));

function resultLine(s: SetupReview, r: ResultChange): ResultLine {
  const { before, after } = s;
  const values = valuesOf(s, r);
  const [by, share] = [byOf(r, values), shareOf(values)];
  return {
    name: r.name, label: labelOf(r, before, after), before: r.before ? showCell(before!.graph, r.before).text : NONE, after: r.after ? showCell(after!.graph, r.after).text : NONE,
    ...(by === undefined ? {} : { by }), ...(share === undefined ? {} : { share }), at: r.after ? aboutWhat('after', r.after, after!) : aboutWhat('before', r.before!, before!), get sure() { return r.sure; },
  };
}
const NONE = 'none';

function labelOf(r: ResultChange, before: Results | undefined, after: Results | undefined): string {
  const cell = (r.after ?? r.before)!;
  return cell.origin === 'solved' ? cell.name.replace('.', ' ') : shortName(cell, (r.after ? after : before)!);
}

function resultLines(s: SetupReview): ResultLine[] {
  return s.results.map(r => resultLine(s, r)).map((l, i) => ({ l, i, rank: rank(l.label) })).sort((a, b) => a.rank - b.rank || a.i - b.i).map(x => x.l);
}

/** Where a result is written, or else the last thing or beam that its name names; else the setup. */
function aboutWhat(side: Where['side'], { at, name }: Cell, { setup }: Results): Where {
  const parts = name.split('.');
  return where(side, at ?? parts.map(part => (setup.beams.get(part) ?? setup.things.get(part))?.at).findLast(Boolean) ?? placeIn(setup.uri, setup.node, setup.node.line.subject ?? setup.node.line.head!));
}
const where = (side: Where['side'], { uri, line, start, end }: Place): Where => ({ side, uri, line, start, end });

function shareOf([before, after]: Values): number | undefined {
  if (before === undefined || after === undefined) return undefined;
  const most = Math.max(Math.abs(before), Math.abs(after));
  return most > 0 ? Math.abs(after - before) / most : undefined;
}

/** An expectation whose limit was changed is the same one. */
function goalLines({ goals }: SetupReview): SetupPage['goals'] {
  const left = goals.filter(g => g.before && !g.after);
  const lines: GoalLine[] = [];
  for (const g of goals) {
    if (!g.after) continue;
    const { goal } = g.after;
    const i = g.before ? -1 : left.findIndex(x => x.before!.goal.result === goal.result && x.before!.goal.kind === goal.kind);
    const old = i < 0 ? undefined : left.splice(i, 1)[0];
    lines.push({ text: `${goal.kind} ${old ? `${old.text} → ` : ''}${g.text}`, before: (g.before ?? old?.before)?.outcome ?? NOT_ASKED, after: g.after.outcome, at: where('after', goal.at) });
  }
  return [...lines, ...left.map(g => ({ text: `${g.before!.goal.kind} ${g.text}`, before: g.before!.outcome, after: NOT_ASKED, at: where('before', g.before!.goal.at) }))];
}
const NOT_ASKED = 'not asked';

/** That something is not computed is no matter of a change. */
const isTold = (f: Finding): boolean => f.code !== 'not-computed-yet';

function findingPage(f: FindingsChange): FindingPage {
  const line = (side: Where['side']) => ({ severity, code, message, at }: Finding): FindingLine => ({ severity, code, message, at: where(side, at) });
  const told = (list: readonly Finding[]): readonly Finding[] => list.filter(isTold);
  return { cured: told(f.cured).map(line('before')), added: told(f.added).map(line('after')), accepted: f.accepted.map(line('after')), still: told(f.still).map(line('after')) };
}

const MOST = 3;

/**
 * The setup in a line: how the arms changed, how brightly the darkest part records, ratio, exposure; what came and went. Of the results only those are shown that it names: a
 * history tells hundreds of these lines.
 */
export function headlineOf(s: SetupReview): string {
  if (!s.before) return 'a new setup';
  if (!s.after) return 'this setup is gone';
  if (isUnchanged(s)) return 'no change';
  const goals = goalLines(s);
  const went = goals.filter(g => g.after === 'not met').map(g => `${g.text} is not met`);
  const met = goals.filter(g => g.after === 'met' && g.before !== NOT_ASKED).map(g => `${g.text} is met`);
  const [cured, added] = [s.findings.cured, s.findings.added].map(list => list.filter(isTold).length) as [number, number];
  const findings = [cured > 0 ? `${many(cured, 'finding')} cured` : '', added === 0 ? '' : cured > 0 ? `${added} new` : many(added, 'new finding')].filter(Boolean).join(', ');
  const told = [headFigures(s).join(', '), [...went, ...met].join(', '), findings].filter(Boolean);
  if (told.length > 0) return told.join('; ');
  return s.results.length > 0 ? `${many(s.results.length, 'result')} changed${s.results.some(r => r.sure) ? '' : ', none for sure'}` : `${many(s.changes.length + s.along.length, 'change')}, no result is another one`;
}

/** Less than this share of it nobody would see. */
const SEEN = 0.1;
const ARM = /^[^.]+\.([^.]+)\.length$/;
const HEAD = /(?:^|\.)(?:mismatch|darkest\.brightness|beam ratio|exposure(?: time)?)$/;
function headFigures(s: SetupReview): string[] {
  const found: string[] = [];
  for (const r of s.results) {
    const arm = ARM.exec(r.name)?.[1];
    if (arm === undefined || found.length >= MOST || !r.sure) continue;
    const by = byOf(r, valuesOf(s, r));
    if (by !== undefined) found.push(`${arm} beam ${by}`);
  }
  const rest = s.results.map(r => ({ r, label: labelOf(r, s.before, s.after) })).filter(({ label }) => HEAD.test(label) && (found.length === 0 || !label.endsWith('mismatch'))).sort((a, b) => rank(a.label) - rank(b.label));
  for (const { r, label } of rest) {
    if (found.length >= MOST) break;
    if ((shareOf(valuesOf(s, r)) ?? 1) < SEEN) continue;
    const l = resultLine(s, r);
    if (l.before !== l.after && l.sure) found.push(`${label.replaceAll('.', ' ')} ${fromTo(l.before, l.after)}`);
  }
  return found;
}
