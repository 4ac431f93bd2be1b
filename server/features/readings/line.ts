/** How a reading is written down: one line more, behind those that are there. Nothing that stands on the page is changed by it. */
import { parse } from '../../../grammar/parse.ts';
import type { LineTree, Node, Tree } from '../../../grammar/tree.ts';
import type { Edit } from '../../model/edits.ts';
import type { Setup } from '../../model/model.ts';
import { parseUnit } from '../../model/units.ts';
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

/** A line, or several, behind a statement of a setup, in its indent and with the line ends of the page. `blank`: with an empty line between. */
export function linesBehind(tree: Tree, uri: string, text: string, after: number, lines: readonly string[], blank = false): Edit {
  const end = eolOf(text);
  const at = tree.lines[after]!.text.length;
  return { at: { uri, line: after, start: at, end: at }, newText: [...(blank ? [''] : []), ...lines].map(l => end + l).join('') };
}
/** The first that there is. */
const eolOf = (text: string): string => /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';

export const indentOf = ({ line }: Node): string => /^\s*/.exec(line.text)![0];

/** Where a new reading goes: behind the last reading or move of the setup, else behind its last beam, else behind what else it has. */
export function placeForReading({ node }: Setup): { readonly after: number; readonly indent: string; readonly blank: boolean } {
  const of = (...heads: readonly string[]): Node | undefined => node.children.findLast(c => heads.includes(c.line.head?.text ?? ''));
  const read = of('measured', 'moved');
  const before = read ?? of('beam') ?? node.children.at(-1);
  return before ? { after: before.end, indent: indentOf(before), blank: read === undefined } : { after: node.at, indent: `${indentOf(node)}  `, blank: false };
}

/** Lines into the block of a statement, behind what it holds; one that has no block gets one. */
export function intoBlock(node: Node, lines: readonly string[], { tree, uri, text }: { readonly tree: Tree; readonly uri: string; readonly text: string }): Edit[] {
  const indent = indentOf(node);
  const last = node.children.at(-1);
  if (node.line.opens) return [linesBehind(tree, uri, text, last?.end ?? node.at, lines.map(l => `${last ? indentOf(last) : `${indent}  `}${l}`))];
  const { comment } = node.line;
  const end = (comment ? node.line.text.slice(0, comment.start) : node.line.text).trimEnd().length;
  const block = linesBehind(tree, uri, text, node.at, [...lines.map(l => `${indent}  ${l}`), `${indent}}`]);
  // In one place there is one edit: which of two came first would be up to the editor.
  return block.at.start === end ? [{ ...block, newText: ` {${block.newText}` }] : [block, { at: { uri, line: node.at, start: end, end }, newText: ' {' }];
}
