/** The document of `diff --format json`, as `report.schema.json` describes it. */
import { headlineOf } from '../features/review/page.ts';
import type { Change, Words } from '../review/changes.ts';
import type { FindingsChange } from '../review/findings.ts';
import { isUnchanged, type Review, type SetupReview } from '../review/review.ts';
import type { Trouble } from './files.ts';
import { document, figure, finding, number, place, type Members, type Naming } from './json.ts';

/** A page on both sides, by the names under which the reader knows it. */
export interface Compared {
  readonly before: string | undefined;
  readonly after: string | undefined;
  readonly review: Review;
  /** how addresses of each side are called */
  readonly named: { readonly before: Naming; readonly after: Naming };
}

export function diffJson(sides: readonly [string, string], files: readonly Compared[], troubles: readonly Trouble[]): string {
  const setups = files.flatMap(f => f.review.setups.filter(s => !isUnchanged(s)));
  const changes = files.flatMap(f => [...f.review.rest.changes, ...f.review.inventories.flatMap(i => i.changes), ...f.review.setups.flatMap(s => s.changes)]);
  const findings = files.flatMap(f => [f.review.rest.findings, ...f.review.setups.map(s => s.findings)]);
  const sum = (of: (f: FindingsChange) => number): number => findings.reduce((n, f) => n + of(f), 0);
  return document('diff', {
    before: sides[0], after: sides[1], files: files.map(file), unread: troubles.map(t => t.message),
    summary: { files: files.length, setups: setups.length, changes: changes.length, results: setups.reduce((n, s) => n + s.results.length, 0), cured: sum(f => f.cured.length), added: sum(f => f.added.length) },
  });
}

function file(f: Compared): Members {
  const { review, named } = f;
  const differ = review.setups.filter(s => !isUnchanged(s));
  return {
    file: (f.after ?? f.before)!, before: f.before ?? null, after: f.after ?? null, headline: differ.map(s => `${s.name}: ${headlineOf(s)}`),
    setups: differ.map(s => setup(s, named)), inventories: review.inventories.filter(i => i.changes.length > 0).map(i => ({ name: i.name, changes: i.changes.map(c => change(c, named)) })),
    changes: review.rest.changes.map(c => change(c, named)), findings: findingsOf(review.rest.findings, named),
  };
}

function setup(s: SetupReview, named: Compared['named']): Members {
  return {
    name: s.name, formerly: s.formerly ?? null, variantBefore: s.before?.setup.variant ?? null, variantAfter: s.after?.setup.variant ?? null, inBefore: s.before !== undefined, inAfter: s.after !== undefined,
    headline: headlineOf(s), renamed: Object.fromEntries(s.names), changes: s.changes.map(c => change(c, named)), follows: s.along.map(m => ({ thing: m.thing, by: m.by.map(number) })),
    results: s.results.map(r => {
      const [a, b] = [r.before && s.before!.graph.value(r.before), r.after && s.after!.graph.value(r.after)];
      return {
        name: r.name, before: r.before ? figure(s.before!.graph, r.before, named.before) : null, after: r.after ? figure(s.after!.graph, r.after, named.after) : null,
        by: a === undefined || b === undefined ? null : number(b - a), sure: r.sure,
      };
    }),
    same: s.same, goals: s.goals.map(g => ({ kind: (g.after ?? g.before!).goal.kind, text: g.text, before: g.before?.outcome ?? null, after: g.after?.outcome ?? null })), findings: findingsOf(s.findings, named),
  };
}

function change(c: Change, named: Compared['named']): Members {
  const words = (w: Words | undefined, naming: Naming): Members | null => (w ? { text: w.text, place: place(w.at, naming) } : null);
  return { kind: c.kind, what: c.what, name: c.name, before: words(c.before, named.before), after: words(c.after, named.after), by: c.by ? c.by.map(number) : null };
}

const findingsOf = (f: FindingsChange, named: Compared['named']): Members => ({
  cured: f.cured.map(x => finding(x, named.before)), added: f.added.map(x => finding(x, named.after)), accepted: f.accepted.map(x => finding(x, named.after)), still: f.still.map(x => finding(x, named.after)),
});
