/**
 * Nodes that an edit has not touched are kept: those whose lines, and the notes above them, are what they were. Kept are whole statements of the file and
 * closed ones directly in them. Where a kept node stands now is all that changes of it, so that what was made of it can be kept with it.
 */
import type { Mend } from './mend.ts';
import type { LineTree, NestingIssue, Node } from './tree.ts';

/** How far ahead an unchanged statement is looked for behind one that is gone. */
const AHEAD = 32;

/** What a nesting leaves to the next one of the same file. */
export interface Nesting<N extends Node = Node> {
  readonly lines: readonly LineTree[];
  readonly nodes: readonly N[];
  readonly issues: readonly NestingIssue[];
  readonly mend: Mend | undefined;
}

/** Takes nodes of an earlier nesting, in the order of the text; each is taken at most once. */
export class KeptNodes<N extends Node> {
  private next = 0;

  constructor(private readonly before: Nesting<N>, private readonly lines: readonly LineTree[], private readonly mend: Mend | undefined, private readonly among: readonly N[] = before.nodes) {}

  /** The node of the statement in a line, if nothing of it has changed. */
  take(at: number, doc: string | undefined): N | undefined {
    const { text } = this.lines[at]!;
    const most = Math.min(this.among.length, this.next + AHEAD);
    for (let k = this.next; k < most; k++) {
      const node = this.among[k]!;
      if (node.line.text !== text || node.doc !== doc || !this.same(node, at)) continue;
      this.next = k + 1;
      return node;
    }
    return undefined;
  }

  /** What stood in the statement that began with the same line as one that has changed. */
  within(at: number): KeptNodes<N> | undefined {
    const { text } = this.lines[at]!;
    const most = Math.min(this.among.length, this.next + AHEAD);
    for (let k = this.next; k < most; k++) {
      const node = this.among[k]!;
      if (node.line.text !== text) continue;
      this.next = k + 1;
      return new KeptNodes(this.before, this.lines, this.mend, node.children as readonly N[]);
    }
    return undefined;
  }

  private same(node: Node, at: number): boolean {
    const { before, lines } = this;
    const from = node.at;
    const count = node.end - from;
    // A statement without a block may yet get legs; its node is kept where it has none, then and now.
    if (count === 0 ? node.line.opens || this.legFollows(at) : before.lines[from + count]!.kind !== 'close') return false;
    if (node.legs.length > 0 || at + count >= lines.length) return false;
    for (let i = 1; i <= count; i++) {
      const [a, b] = [lines[at + i]!, before.lines[from + i]!];
      if (a !== b && a.text !== b.text) return false;
    }
    return !mended(before.mend, from, from + count) && !mended(this.mend, at, at + count) && !before.issues.some(i => i.at >= from && i.at <= from + count);
  }

  /** Whether the statement in a line has legs. They find it behind lines that cannot be read, and behind braces that close nothing. */
  private legFollows(at: number): boolean {
    const { lines, mend } = this;
    for (let i = at + 1; i < lines.length; i++) {
      const { kind, opens } = lines[i]!;
      if (mend?.closes.has(i)) return false;
      if (kind === 'leg') return true;
      // Behind the block that such a line opens its legs may go on; it is made anew then.
      if (kind === 'unreadable' && mend?.opens.has(i)) return true;
      if (!mend?.ignored.has(i) && (kind === 'statement' || kind === 'close' || opens)) return false;
    }
    return false;
  }
}

/** Whether some of these lines are read otherwise than they are written. */
function mended(mend: Mend | undefined, from: number, to: number): boolean {
  if (!mend) return false;
  for (const at of mend.closes.keys()) if (at > from && at <= to) return true;
  for (const at of mend.opens) if (at >= from && at <= to) return true;
  for (const at of mend.shut) if (at >= from && at <= to) return true;
  for (const at of mend.ignored) if (at >= from && at <= to) return true;
  return false;
}
