/** What formatting must keep of a text. */
import { parse } from '../../grammar/parse.ts';
import type { LineTree, Node } from '../../grammar/tree.ts';

export const written = (line: LineTree): boolean => line.kind !== 'blank';
/** Its tokens, without blanks at the end of a comment. */
export const tokens = (line: LineTree): string[] => line.tokens.map(t => `${t.type} ${t.type === 'comment' || t.type === 'doc' ? line.text.slice(t.start, t.end).trimEnd() : line.text.slice(t.start, t.end)}`);

/** How the lines nest, with lines counted without the empty ones. */
export function meaning(text: string): unknown {
  const tree = parse(text);
  let count = 0;
  const numbers = tree.lines.map(line => (written(line) ? count++ : count));
  const shape = (node: Node): unknown => ({ at: numbers[node.at], doc: node.doc, legs: node.legs.map(shape), children: node.children.map(shape) });
  return { nodes: tree.nodes.map(shape), issues: tree.issues.map(i => `${i.code} ${numbers[i.at]!}`) };
}
