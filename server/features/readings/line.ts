/** How a reading is written down: one line more, behind those that are there. Nothing that stands on the page is changed by it. */
import { parse } from '../../../grammar/parse.ts';
import type { LineTree, Node } from '../../../grammar/tree.ts';
import type { Setup } from '../../model/model.ts';
import { parseUnit } from '../../model/units.ts';
import { indentOf } from '../new-lines.ts';
import type { Wanted } from './wanted.ts';

/** What somebody typed as what was read, as it is written behind the colon; or why it cannot be. */
export function valueText(typed: string, wanted: Pick<Wanted, 'unit' | 'expected'>, by: string | undefined, on: string): string | { readonly refused: string } {
  const text = typed.trim().replace(/^[−–](?=\s*\d)/, '-');
  if (text === '') return { refused: 'Nothing is written there.' };
  if (/[\r\n{}]|\/\//.test(text)) return { refused: 'One value is wanted, with how sure it is, such as 752 mm ± 2 mm.' };
  const line = lineOf(`measured it: ${text}`);
  const says = (word: string): boolean => line.clauses.some(c => c.word.text === word);
  const value = text.replace(/ (?:by|on) .*$/, '');
  const unit = BARE.test(value) ? unitOf(wanted) : '';
  const whole = unit === '' ? text : `${value}${unit === '%' || unit === '°' ? '' : ' '}${unit}${text.slice(value.length)}`;
  return `${whole}${by === undefined || says('by') ? '' : ` by ${by}`}${says('on') ? '' : ` on ${on}`}`;
}
/** `752`, `752 ± 2`: a number that has no unit yet. */
const BARE = /^[-+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?(?:\s*(?:±|\+\/-)\s*\d+(?:\.\d+)?)?$/i;

const lineOf = (text: string): LineTree => parse(text).lines[0]!;

/** In which unit a bare number is meant: that in which it is shown what it should come to, else the usual one. */
export function unitOf({ unit, expected }: Pick<Wanted, 'unit' | 'expected'>): string {
  const shown = /(?:^|[\s\d])([^\s\d.:,]+)$/.exec(expected.text.replace(/ points$/, '%'))?.[1];
  return shown !== undefined && parseUnit(shown) !== undefined ? shown : unit;
}

/** Where a new reading goes: behind the last reading or move of the setup, else behind its last beam, else behind what else it has. */
export function placeForReading({ node }: Setup): { readonly after: number; readonly indent: string; readonly blank: boolean } {
  const of = (...heads: readonly string[]): Node | undefined => node.children.findLast(c => heads.includes(c.line.head?.text ?? ''));
  const read = of('measured', 'moved');
  const before = read ?? of('beam') ?? node.children.at(-1);
  return before ? { after: before.end, indent: indentOf(before), blank: read === undefined } : { after: node.at, indent: `${indentOf(node)}  `, blank: false };
}
