/** What was learnt, as a line of an inventory. */
import type { Edit } from '../../model/edits.ts';
import type { Thing } from '../../model/model.ts';
import { factText } from '../../model/overrides.ts';
import { plain } from '../../model/show.ts';
import { factIndex, factsOf } from '../../model/things/index.ts';
import type { Unit } from '../../model/units.ts';

export interface Line {
  /** `sensitivity: 41 µJ/cm² ×÷ 1.4` */
  readonly text: string;
  readonly uri: string;
  /** of the item, counted from 0 */
  readonly at: number;
  /** what stands there now */
  readonly was: string | undefined;
  /** undefined where there is no line to write it into or behind */
  readonly edit: Edit | undefined;
}

interface Found { readonly value: number; readonly unit: Unit | undefined; readonly factor?: number; readonly give?: number }

/** The line of an item; of one that has no such fact it stands before its first one. None where no such thing could have the value. */
export function lineFor(thing: Thing, phrase: string, found: Found): Line | undefined {
  const type = factIndex(factsOf(thing.kind)).get(phrase)?.type;
  const within = type?.type === 'quantity' ? type.within : undefined;
  if (within && (found.value < within.from || found.value > within.to)) return undefined;
  const value = valueText(found);
  const own = [...thing.facts.values()].filter(f => f.at.uri === thing.at.uri && f.node.parent === thing.node);
  const has = own.find(f => f.fact.phrase === phrase);
  const [first] = own.sort((a, b) => a.at.line - b.at.line);
  const before = first && /^\s*/.exec(first.node.line.text)![0];
  const edit = has ? { at: has.at, newText: value } : first ? { at: { uri: first.at.uri, line: first.at.line, start: 0, end: 0 }, newText: `${before}${phrase}: ${value}\n` } : undefined;
  return { text: `${phrase}: ${value}`, uri: thing.at.uri, at: has?.at.line ?? thing.at.line, was: has && factText(has), edit };
}

/** With the digits that its band bears. */
function valueText({ value, unit, factor, give }: Found): string {
  const v = (value - (unit?.offset ?? 0)) / (unit?.factor ?? 1);
  const head = `${number(factor === undefined ? v : Number(v.toPrecision(2)), give === undefined ? undefined : give / (unit?.factor ?? 1))}${unit ? `${/^[%°]$/.test(unit.text) ? '' : ' '}${unit.text}` : ''}`;
  if (factor !== undefined) return `${head} ×÷ ${plain(Math.max(1.05, Math.ceil(factor * 20) / 20), 3)}`;
  const g = give! / (unit?.factor ?? 1);
  return `${head} ± ${plain(up(g), 2)}${unit?.percent ? ' points' : unit ? ` ${unit.text}` : ''}`;
}

/** Rounded up, so that a band is never narrower than what was found. */
const up = (g: number): number => { const decade = 10 ** Math.floor(Math.log10(g)); const step = g < 2 * decade ? decade / 2 : decade; return Math.ceil(g / step - 1e-9) * step; };
const number = (v: number, give: number | undefined): string => (give === undefined ? ascii(plain(v, 3)) : ascii(plain(Number(v.toFixed(Math.max(0, Math.min(6, -Math.floor(Math.log10(give))))))  , 6)));
const ascii = (s: string): string => s.replace('−', '-');
