/** Parser and formatter: the tree holds the whole text, places lie within their lines, edits give what a fresh reading gives, and formatting changes blanks only. */
import { format } from '../../../grammar/format.ts';
import { LineCache, parse, splitLines } from '../../../grammar/parse.ts';
import type { Node, Tree } from '../../../grammar/tree.ts';
import { meaning, tokens, written } from '../../grammar/kept.ts';
import { misplaced } from '../../grammar/misplaced.ts';
import { hash, none, same, type Target } from '../target.ts';
import { anyText, DICTIONARY } from '../texts.ts';

export const grammar: Target = {
  name: 'grammar', share: 400, few: 150, inputs: anyText, words: DICTIONARY,
  run: text => {
    const tree = parse(text);
    const read = splitLines(text);
    if (!tree.issues.some(i => i.code === 'file-too-large')) same('lines', tree.lines.map(l => l.text), read);
    none('misplaced', tree.lines.flatMap(misplaced));
    none('a node is not where its line is', nodesOf(tree).filter(n => tree.lines[n.at] !== n.line || n.end < n.at || n.end >= tree.lines.length).map(n => n.at));
    none('an issue is outside', tree.issues.filter(i => i.at < 0 || i.at >= tree.lines.length));
    // As it stood before a line was typed.
    const cache = new LineCache();
    parse(read.toSpliced(hash(text) % read.length, 1).join('\n'), cache);
    same('after an edit', shape(parse(text, cache)), shape(tree));
    formatted(text, tree);
  },
};

function formatted(text: string, before: Tree): void {
  const made = format(text);
  same('formatted twice', format(made.text).text, made.text);
  const said = (t: Tree): unknown[] => t.lines.filter(written).map(l => (l.issue ? l.text : tokens(l)));
  same('tokens', said(parse(made.text)), said(before));
  same('meaning', meaning(made.text), meaning(text));
}

const nodesOf = (tree: Tree): Node[] => {
  const all = (nodes: readonly Node[]): Node[] => nodes.flatMap(n => [n, ...all(n.legs), ...all(n.children)]);
  return all(tree.nodes);
};
function shape(tree: Tree): unknown {
  const of = (n: Node): unknown => [n.at, n.end, n.doc, n.legs.map(of), n.children.map(of)];
  return [tree.nodes.map(of), tree.issues, tree.lines.map(l => [l.kind, l.issue?.code, l.tokens.length])];
}
