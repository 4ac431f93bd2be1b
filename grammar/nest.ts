/**
 * Nesting: pairs braces, attaches legs to the statement above them and notes to the one below. Works on line trees only, so that it
 * costs a fraction of a microsecond a line; nodes that an edit has not touched are taken from the nesting before it.
 */
import { KeptNodes, type Nesting } from './kept-nodes.ts';
import { mendByIndents, type Mend } from './mend.ts';
import type { LineTree, NestingIssue, Node } from './tree.ts';

export const MAX_DEPTH = 8;

export type Nested = Nesting<NodeOf>;

/** `before`: the nesting of an earlier text of the file. Its nodes move to where they stand now; it is of no use afterwards. */
export function nest(lines: readonly LineTree[], before?: Nested): Nested {
  const mend = mendOf(lines);
  const { nodes, issues } = pair(lines, mend, before);
  return { lines, nodes, mend, issues: mend ? [...issues.filter(i => !isBrace(i)), ...mend.issues] : issues };
}

/** How the braces are meant, where they do not pair and the indents tell more. */
function mendOf(lines: readonly LineTree[]): Mend | undefined {
  let depth = 0;
  let unpaired = 0;
  for (const line of lines) {
    if (line.opens) {
      if (depth >= MAX_DEPTH) return undefined;
      depth++;
    } else if (line.kind === 'close') {
      if (depth > 0) depth--;
      else unpaired++;
    }
  }
  unpaired += depth;
  if (unpaired === 0) return undefined;
  const mend = mendByIndents(lines);
  return mend.issues.length > unpaired ? undefined : mend;
}

// Most nodes have neither children nor legs; they share the empty list.
const NONE: readonly Node[] = [];
/** Knows where it stands in its parent only, so that whatever moves takes all that is in it along. */
class NodeOf implements Node {
  children: readonly Node[] = NONE;
  legs: readonly Node[] = NONE;
  memo: unknown = undefined;
  private from: number;
  private reach = 0;
  constructor(readonly line: LineTree, at: number, public parent: NodeOf | undefined, readonly doc: string | undefined) { this.from = parent ? at - parent.at : at; }
  get at(): number { return this.parent ? this.parent.at + this.from : this.from; }
  get end(): number { return this.at + this.reach; }
  moveTo(at: number, parent: NodeOf | undefined): void {
    this.parent = parent;
    this.from = parent ? at - parent.at : at;
  }
  endsAt(at: number): void { this.reach = at - this.at; }
  addChild(node: Node): void { if (this.children === NONE) this.children = [node]; else (this.children as Node[]).push(node); }
  addLeg(node: Node): void { if (this.legs === NONE) this.legs = [node]; else (this.legs as Node[]).push(node); }
}

const isBrace = (i: NestingIssue): boolean => i.code === 'brace-not-closed' || i.code === 'brace-not-opened';

function pair(lines: readonly LineTree[], mend: Mend | undefined, before: Nested | undefined): { nodes: NodeOf[]; issues: NestingIssue[] } {
  const nodes: NodeOf[] = [];
  const issues: NestingIssue[] = [];
  const kept = before && new KeptNodes<NodeOf>(before, lines, mend);
  let within: KeptNodes<NodeOf> | undefined;
  const open: { node: NodeOf; beam: NodeOf | undefined }[] = [];
  let beam: NodeOf | undefined;
  let doc: string[] = [];
  let tooDeep = 0;
  let stray = -2;

  for (let at = 0; at < lines.length; at++) {
    const line = lines[at]!;
    for (let n = mend?.closes.get(at) ?? 0; n > 0; n--) {
      const closed = open.pop();
      if (closed) closed.node.endsAt(at - 1);
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
          if (closed) closed.node.endsAt(at);
          else issues.push({ code: 'brace-not-opened', at });
          // A leg takes no block; where one was opened by mistake, the legs behind it still find their beam.
          beam = closed?.beam;
          beam?.endsAt(at);
        }
        continue;
      case 'leg':
      case 'statement':
      case 'unreadable':
    }
    const parent = open[open.length - 1]?.node;
    const notes = doc.length > 0 ? doc.join('\n') : undefined;
    if (doc.length > 0) doc = [];
    const known = line.kind !== 'statement' || tooDeep > 0 ? undefined : open.length === 0 ? kept?.take(at, notes) : open.length === 1 ? within?.take(at, notes) : undefined;
    if (known) {
      at += known.end - known.at;
      known.moveTo(at - (known.end - known.at), parent);
      if (parent) parent.addChild(known);
      else nodes.push(known);
      beam = line.opens ? undefined : known;
      continue;
    }
    if (open.length === 0) within = line.opens ? kept?.within(at) : undefined;
    const node = new NodeOf(line, at, parent, notes);
    if (line.kind === 'leg') {
      if (beam) {
        beam.addLeg(node);
        beam.endsAt(at);
      } else {
        if (stray !== at - 1) issues.push({ code: 'leg-without-beam', at });
        stray = at;
      }
    } else {
      if (tooDeep === 0) {
        if (parent) parent.addChild(node);
        else nodes.push(node);
      }
      if (line.kind === 'statement' || line.opens) beam = line.opens && !mend?.shut.has(at) ? undefined : node;
    }
    if (line.opens ? mend?.shut.has(at) : !mend?.opens.has(at)) continue;
    if (open.length >= MAX_DEPTH) {
      if (tooDeep++ === 0) issues.push({ code: 'nested-too-deep', at });
    } else open.push({ node, beam });
  }
  for (const { node } of open) {
    node.endsAt(lines.length - 1);
    issues.push({ code: 'brace-not-closed', at: node.at });
  }
  return { nodes, issues };
}
