/**
 * Nesting: pairs braces, attaches legs to the statement above them and notes to the one below. Works on line trees only, so that it
 * costs a fraction of a microsecond a line and runs afresh on each edit.
 */
import { mendByIndents, type Mend } from './mend.ts';
import type { LineTree, NestingIssue, Node } from './tree.ts';

export const MAX_DEPTH = 8;

interface Nested { readonly nodes: Node[]; readonly issues: NestingIssue[] }

export function nest(lines: readonly LineTree[]): Nested {
  const written = pair(lines);
  const braces = written.issues.filter(isBrace).length;
  if (braces === 0 || written.issues.some(i => i.code === 'nested-too-deep')) return written;
  const mend = mendByIndents(lines);
  if (mend.issues.length > braces) return written;
  const { nodes, issues } = pair(lines, mend);
  return { nodes, issues: [...issues.filter(i => !isBrace(i)), ...mend.issues] };
}

// Most nodes have neither children nor legs; they share the empty list.
const NONE: readonly Node[] = [];
class NodeOf implements Node {
  children: readonly Node[] = NONE;
  legs: readonly Node[] = NONE;
  end: number;
  constructor(readonly line: LineTree, readonly at: number, readonly parent: Node | undefined, readonly doc: string | undefined) { this.end = at; }
  addChild(node: Node): void { if (this.children === NONE) this.children = [node]; else (this.children as Node[]).push(node); }
  addLeg(node: Node): void { if (this.legs === NONE) this.legs = [node]; else (this.legs as Node[]).push(node); }
}

const isBrace = (i: NestingIssue): boolean => i.code === 'brace-not-closed' || i.code === 'brace-not-opened';

function pair(lines: readonly LineTree[], mend?: Mend): Nested {
  const nodes: Node[] = [];
  const issues: NestingIssue[] = [];
  const open: { node: NodeOf; beam: NodeOf | undefined }[] = [];
  let beam: NodeOf | undefined;
  let doc: string[] = [];
  let tooDeep = 0;
  let stray = -2;

  for (let at = 0; at < lines.length; at++) {
    const line = lines[at]!;
    for (let n = mend?.closes.get(at) ?? 0; n > 0; n--) {
      const closed = open.pop();
      if (closed) closed.node.end = at - 1;
      beam = undefined;
    }
    if (mend?.ignored.has(at)) continue;
    switch (line.kind) {
      case 'blank':
        doc = [];
        continue;
      case 'comment':
        continue;
      case 'doc':
        doc.push(line.text.slice(line.comment!.start + 3).trim());
        continue;
      case 'close':
        beam = undefined;
        doc = [];
        if (tooDeep > 0) tooDeep--;
        else {
          const closed = open.pop();
          if (closed) closed.node.end = at;
          else issues.push({ code: 'brace-not-opened', at });
          // A leg takes no block; where one was opened by mistake, the legs behind it still find their beam.
          beam = closed?.beam;
          if (beam) beam.end = at;
        }
        continue;
      case 'leg':
      case 'statement':
      case 'unreadable':
    }
    const parent = open[open.length - 1]?.node;
    const node = new NodeOf(line, at, parent, doc.length > 0 ? doc.join('\n') : undefined);
    if (doc.length > 0) doc = [];
    if (line.kind === 'leg') {
      if (beam) {
        beam.addLeg(node);
        beam.end = at;
      } else {
        if (stray !== at - 1) issues.push({ code: 'leg-without-beam', at });
        stray = at;
      }
    } else {
      if (tooDeep === 0) {
        if (parent) parent.addChild(node);
        else nodes.push(node);
      }
      if (line.kind === 'statement' || line.opens) beam = line.opens ? undefined : node;
    }
    if (!line.opens && !mend?.opens.has(at)) continue;
    if (open.length >= MAX_DEPTH) {
      if (tooDeep++ === 0) issues.push({ code: 'nested-too-deep', at });
    } else open.push({ node, beam });
  }
  for (const { node } of open) {
    node.end = lines.length - 1;
    issues.push({ code: 'brace-not-closed', at: node.at });
  }
  return { nodes, issues };
}
