/** A sweep: results while one number of a page takes other values, as a table that text, CSV, Markdown, JSON and a plot show. */
import type { Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { READING_CHECKS } from '../../checks/readings/index.ts';
import { check, findingsOf } from '../../checks/run.ts';
import { isShare, readableUnit, show } from '../../model/show.ts';
import { parseUnit, type Dim, type Unit } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import { shortName } from '../../results/names.ts';
import type { Results } from '../../results/plan.ts';
import { interval } from '../../results/sampling.ts';
import { heldFor, sweptTo } from '../../results/sweep.ts';
import { showCell } from '../chain.ts';
import { stretchesOf, type Stretch } from './stretches.ts';

/** A number of the page and the values that it takes, SI. */
export interface Over {
  readonly input: Cell;
  readonly values: readonly number[];
}

/** A setup, or one of its variants, with the cells that take other values there; undefined: it has no such number. */
export interface Swung {
  readonly results: Results;
  /** the variant, where several stand side by side */
  readonly label: string | undefined;
  readonly inputs: readonly (Cell | undefined)[];
}

export interface Column {
  readonly name: string;
  readonly words: string;
  readonly dim: Dim | undefined;
  /** of the numbers; none of plain ones */
  readonly unit: Unit | undefined;
}

/** One result at one value: SI, with the ends of its 95 % band; undefined where it cannot be told. */
export interface Point {
  readonly value: number | undefined;
  readonly u: number | undefined;
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly text: string;
  /** why there is none */
  readonly missing: string | undefined;
}

/** What a second number or a variant makes of it. */
export interface Curve {
  readonly label: string;
  readonly variant: string | undefined;
  /** of the second number, SI */
  readonly second: number | undefined;
  /** by row, then by result; fewer rows where it was ended */
  readonly rows: readonly (readonly Point[])[];
  /** findings that do not hold everywhere on all curves */
  readonly told: readonly ToldAlong[];
}

/** A finding with the stretches of the sweep on which it holds. */
export interface ToldAlong {
  readonly finding: Finding;
  readonly stretches: readonly Stretch[];
}

export interface SweepTable {
  readonly setup: Results['setup'];
  readonly over: Column;
  readonly second: Column | undefined;
  readonly at: readonly { readonly value: number; readonly text: string }[];
  readonly results: readonly Column[];
  readonly curves: readonly Curve[];
  /** it was ended before all was looked at */
  readonly ended: boolean;
}

export function sweepTable(snapshot: Snapshot, swung: readonly Swung[], [over, second]: readonly [Over, Over?], asked: readonly string[], goOn: () => boolean = () => true): SweepTable {
  const first: (Cell | undefined)[] = asked.map(() => undefined);
  const names: string[] = [...asked];
  const curves: Curve[] = [];
  let ended = false;
  for (const one of swung) {
    const { results: base, inputs, label } = one;
    const offsets = heldFor(base, inputs.flatMap(i => i ?? []));
    for (const other of second?.values ?? [undefined]) {
      const rows: Point[][] = [];
      const found: Finding[][] = [];
      for (const at of over.values) {
        if (ended) break;
        const tried = new Map<string, number>();
        if (inputs[0]) tried.set(inputs[0].name, at);
        if (inputs[1] && other !== undefined) tried.set(inputs[1].name, other);
        const { results, cells } = sweptTo(base, tried, asked, offsets);
        cells.forEach((c, i) => { if (c && !c.missing && !first[i]) { first[i] = c; names[i] = shorter(asked[i]!, shortName(c, results)); } });
        rows.push(cells.map(c => pointOf(c, results, inputs.includes(undefined))));
        found.push(findingsAt(snapshot, results));
        results.graph.settle();
        ended = !goOn();
      }
      const words = [label, other === undefined ? undefined : `${nameOf(second!.input)} ${shown(other, second!.input)}`].filter(w => w !== undefined);
      curves.push({ label: words.join(', '), variant: base.setup.variant, second: other, rows, told: toldAlong(found) });
    }
  }
  const count = Math.max(...curves.map(c => c.rows.length));
  const columns = first.map((c, i): Column => ({ name: names[i]!, words: c?.words ?? names[i]!, dim: c?.dim, unit: c && unitFor(c, curves.flatMap(k => k.rows.map(r => r[i]!.value))) }));
  return {
    setup: swung[0]!.results.setup, over: inputColumn(over), second: second && inputColumn(second), at: over.values.slice(0, count).map(v => ({ value: v, text: shown(v, over.input) })),
    results: columns, curves: apart(curves.filter(c => c.rows.length > 0)), ended: curves.some(c => c.rows.length < over.values.length),
  };
}

/** A name that somebody has written in full stays as it is. */
const shorter = (asked: string, short: string): string => (asked.length <= short.length ? asked : short);
/** As its author calls it: a leg that was also read is swept as it was planned. */
export const nameOf = ({ name }: Cell): string => name.replace(/(?:\.plan| as written)$/, '');
const shown = (v: number, { dim, unit }: Cell): string => show(v, dim, 0, unit);
const inputColumn = ({ input, values }: Over): Column => ({ name: nameOf(input), words: input.words, dim: input.dim, unit: readableUnit(Math.max(...values.map(Math.abs)), input.dim, input.unit) });

function pointOf(c: Cell | undefined, { graph }: Results, unmoved: boolean): Point {
  if (unmoved) return { ...NONE, missing: 'this variant has no such number' };
  if (!c || c.missing) return { ...NONE, missing: c?.missing?.why ?? 'there is no such result here' };
  const { low, high } = interval(graph, c);
  const { text, u } = showCell(graph, c);
  return { value: graph.value(c), u, low, high, text, missing: undefined };
}
const NONE: Omit<Point, 'missing'> = { value: undefined, u: undefined, low: undefined, high: undefined, text: 'unknown' };

/** In which a column reads well: by the number in the middle of it. */
function unitFor(c: Cell, values: readonly (number | undefined)[]): Unit | undefined {
  const sizes = values.flatMap(v => (v === undefined ? [] : [Math.abs(v)])).sort((a, b) => a - b);
  return isShare(c.name) ? parseUnit('%') : readableUnit(sizes[Math.floor(sizes.length / 2)] ?? 0, c.dim, c.unit);
}

/** What the page would be told with these values. Hints are about the text, which nobody has changed, and a reading was read of what is written there. */
const findingsAt = ({ tree, model }: Snapshot, results: Results): Finding[] =>
  findingsOf(tree, model, [{ results, problems: check(results) }]).filter(f => f.accepted === undefined && f.severity !== 'hint' && !NOT_TOLD.has(f.code));
const NOT_TOLD: ReadonlySet<string> = new Set(['more-findings', ...READING_CHECKS.map(c => c.code)]);

const keyOf = ({ code, subject }: Finding): string => `${code}\n${subject}`;
const holdsThroughout = ({ rows }: Curve, { stretches }: ToldAlong): boolean => stretches.length === 1 && stretches[0]!.from === 0 && stretches[0]!.to === rows.length - 1;

/** What holds everywhere stands on the page of findings; what begins or ends, or holds on some curves only, is told with where. */
function apart(curves: readonly Curve[]): Curve[] {
  const everywhere = (t: ToldAlong): boolean => curves.every(c => c.told.some(x => keyOf(x.finding) === keyOf(t.finding) && holdsThroughout(c, x)));
  return curves.map(c => ({ ...c, told: c.told.filter(t => !everywhere(t)) }));
}

/** Each finding with where it holds. */
function toldAlong(found: readonly (readonly Finding[])[]): ToldAlong[] {
  const all = new Map<string, { finding: Finding; rows: Set<number> }>();
  found.forEach((findings, row) => {
    for (const f of findings) {
      const key = keyOf(f);
      const one = all.get(key);
      if (one) one.rows.add(row);
      else all.set(key, { finding: f, rows: new Set([row]) });
    }
  });
  return [...all.values()].map(({ finding, rows }) => ({ finding, stretches: stretchesOf(found.length, i => rows.has(i)) }))
    .sort((a, b) => a.stretches[0]!.from - b.stretches[0]!.from);
}
