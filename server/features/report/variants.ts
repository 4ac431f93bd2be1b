/** What the variants of a setup change: for the report a table of results side by side, for a hover the difference in short. Plain data and words; nothing is computed here. */
import type { Change } from '../../model/model.ts';
import { statementText } from '../../model/written.ts';
import type { Cell } from '../../results/graph.ts';
import { goalText } from '../../results/difference.ts';
import { isOfExposures } from '../../results/goals.ts';
import { shortName } from '../../results/names.ts';
import type { Results } from '../../results/plan.ts';
import { variantsOf, type VariantResults } from '../../results/variants.ts';
import { showCell } from '../chain.ts';
import { blocks, bullets, escaped, note, strong } from '../markdown.ts';
import { fromTo, rank } from '../review/words.ts';

export interface VariantTable {
  readonly variants: readonly { readonly name: string; readonly doc?: string; readonly changes: readonly string[] }[];
  readonly rows: readonly VariantRow[];
}

/** A result that differs in one of the variants, or an expectation: as written, then in each variant. */
export interface VariantRow {
  readonly label: string;
  readonly cells: readonly string[];
}

/** Undefined where the setup has no variants. */
export function variantTable(base: Results): VariantTable | undefined {
  const all = variantsOf(base);
  if (all.length === 0) return undefined;
  return {
    variants: all.map(({ variant: v }) => ({ name: v.name, changes: v.changes.map(changeText), ...(v.doc !== undefined ? { doc: v.doc } : {}) })),
    rows: [...resultRows(base, all), ...goalRows(base, all)],
  };
}

/** Heads of the columns of figures: `as written`, `(1)`, `(2)`. */
export const variantHeads = ({ variants }: VariantTable): string[] => ['as written', ...variants.map((_, i) => variantNumber(i))];
export const variantNumber = (i: number): string => `(${i + 1})`;
/** `closer plate: P1 at (660, 630) mm. More light from the tines.` */
export const variantText = ({ name, doc, changes }: VariantTable['variants'][number]): string =>
  `${name}: ${changes.length > 0 ? changes.join('; ') : 'no change that is understood'}.${doc !== undefined ? ` ${doc.replace(/\n/g, ' ')}` : ''}`;

function resultRows(base: Results, all: readonly VariantResults[]): VariantRow[] {
  // What several exposures come to is told of the page as it is written.
  const exposed = new Set([...base.exposures.plates.flatMap(p => [p.time, ...p.all.flatMap(e => [e.time, e.left])]), ...base.registers.flatMap(g => g.apart ?? [])]);
  const names = new Set([...base.published.filter(c => !exposed.has(c)), ...all.flatMap(v => v.results.published)].map(c => c.name));
  const differ = new Set(all.flatMap(v => v.difference.results.map(d => d.name)));
  const columns = [base, ...all.map(v => v.results)];
  const rows = [...names].filter(n => differ.has(n));
  const cells = columns.map(r => rows.map(name => {
    const cell = published(r, name);
    return cell ? showCell(r.graph, cell).text : 'none';
  }));
  return rows.map((name, i) => {
    const owner = columns.find(r => published(r, name))!;
    const cell = published(owner, name)!;
    // What was worked out for a “?” reads as it is written.
    return { label: cell.origin === 'solved' ? cell.name.replace('.', ' ') : shortName(cell, owner), cells: cells.map(column => column[i]!) };
  });
}

const published = (r: Results, name: string): Cell | undefined => r.published.find(c => c.name === name);

/** A variant has the goals of its setup, in their order, but for those about several exposures; of one that cannot be held against it there is none. */
const goalRows = (base: Results, all: readonly VariantResults[]): VariantRow[] =>
  base.goals.filter(({ goal }) => !isOfExposures(goal, base.setup)).map(g => ({ label: `${g.goal.kind} ${goalText(g)}`, cells: [g.outcome, ...all.map(v => v.results.goals.find(o => o.goal === g.goal)?.outcome ?? 'cannot be told')] }));

/** `P1 at (660, 630) mm`, `spear.tone: 45% ± 10 points`, `beam fill from S2 reflected` */
export function changeText(c: Change): string {
  const written = statementText(c.node.line);
  const shortened = written.length > LONGEST ? `${written.slice(0, LONGEST)}…` : written;
  return c.kind === 'fact' && !written.startsWith(`${c.thing.id}.`) ? `${c.thing.id}.${shortened}` : shortened;
}
const LONGEST = 100;

const MOST = 10;

/** For the name of a variant: what it changes, and what comes of it. */
export function variantWords({ variant, difference }: VariantResults, base: Results, results: Results): string {
  const named = difference.results.map(d => ({ ...d, label: shortName(d.before ?? d.after!, d.before ? base : results) }));
  const shown = named.sort((a, b) => rank(a.label) - rank(b.label)).slice(0, MOST).map(({ before, after, label }) =>
    `${escaped(label)}: ${escaped(fromTo(before ? showCell(base.graph, before).text : 'none', after ? showCell(results.graph, after).text : 'none'))}`);
  const goals = difference.goals.map(g => `${g.before?.goal.kind ?? g.after!.goal.kind} ${escaped(g.text)}: ${g.before?.outcome ?? 'cannot be told'} → ${g.after?.outcome ?? 'cannot be told'}`);
  return blocks(
    `${strong(variant.name)}: a variant of ${escaped(base.setup.name)}`, variant.doc !== undefined ? note(variant.doc) : '',
    bullets(variant.changes.map(c => escaped(changeText(c)))),
    named.length + goals.length === 0 ? 'It changes no result that is computed yet.' : 'What comes of it:',
    bullets([...goals, ...shown, ...(named.length > MOST ? [`and ${named.length - MOST} more`] : [])]),
  );
}
