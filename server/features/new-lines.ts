/** New lines in a page, in its indents and with its line ends. */
import type { Node, Tree } from '../../grammar/tree.ts';
import type { Edit } from '../model/edits.ts';

/** A line, or several, behind a statement of a setup, in its indent and with the line ends of the page. `blank`: with an empty line between. */
export function linesBehind(tree: Tree, uri: string, text: string, after: number, lines: readonly string[], blank = false): Edit {
  const end = eolOf(text);
  const at = tree.lines[after]!.text.length;
  return { at: { uri, line: after, start: at, end: at }, newText: [...(blank ? [''] : []), ...lines].map(l => end + l).join('') };
}
/** The first that there is. */
const eolOf = (text: string): string => /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';

export const indentOf = ({ line }: Node): string => /^\s*/.exec(line.text)![0];

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
