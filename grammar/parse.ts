/** A document: its lines, parsed one by one and kept by their text, then nested. */
import { nest, type Nested } from './nest.ts';
import { MAX_LINE, parseLine } from './parse-line.ts';
import type { LineTree, NestingIssue, Tree } from './tree.ts';

export const MAX_LINES = 20_000;
export const MAX_SIZE = 2_000_000;

/**
 * Keeps the trees of the lines of one document as it was last, so that an edit parses only the lines that it touched: lines that are the
 * same from the start and from the end keep their trees, and so do lines between them that were there before. Nodes whose lines are the
 * same are kept as well, and move: a tree that was parsed with the same cache before is of no use any more.
 */
export class LineCache {
  private last: readonly LineTree[] = [];
  /** the nesting of these lines */
  nested: Nested | undefined;
  /** the tree of the text that was parsed last */
  whole: { readonly text: string; readonly tree: Tree } | undefined;
  /** how many lines were parsed so far; an edit of one line adds one */
  parsed = 0;

  /** The trees of all lines. */
  all(texts: readonly string[]): readonly LineTree[] {
    const { last } = this;
    const lines = new Array<LineTree>(texts.length);
    let head = 0;
    const most = Math.min(texts.length, last.length);
    while (head < most && texts[head] === last[head]!.text) lines[head] = last[head++]!;
    let tail = 0;
    while (tail < most - head && texts[texts.length - 1 - tail] === last[last.length - 1 - tail]!.text) lines[texts.length - 1 - tail] = last[last.length - 1 - tail++]!;
    const between = new Map<string, LineTree>();
    for (let i = head; i < last.length - tail; i++) between.set(last[i]!.text, last[i]!);
    for (let i = head; i < texts.length - tail; i++) {
      let tree = between.get(texts[i]!);
      if (!tree) {
        tree = parseLine(ownText(texts[i]!));
        this.parsed++;
        between.set(tree.text, tree);
      }
      lines[i] = tree;
    }
    this.last = lines;
    return lines;
  }

  /** Another one that knows the same lines, and no nodes: for a text that is only tried. */
  copy(): LineCache {
    const copy = new LineCache();
    copy.last = this.last;
    return copy;
  }
}

/** A line cut out of a text holds the whole text in memory, and would hold every version in which one of its lines was typed. A copy does not. */
const ownText = (line: string): string => (line.length > MAX_LINE ? line : line.split('').join(''));

/**
 * How many byte order marks a text begins with. They are dropped, all of them, where it is split; who counts places in the text itself adds them in its first line. A second
 * one comes of joined files, or of a program that writes one before what has one already.
 */
export function marksOf(text: string): number {
  let marks = 0;
  while (text.charCodeAt(marks) === 0xfeff) marks++;
  return marks;
}

/** Splits into lines; `\r\n`, `\n` and a lone `\r` end a line, byte order marks at the start are dropped. */
export function splitLines(text: string): string[] {
  const body = text.slice(marksOf(text));
  return body.includes('\r') ? body.split(/\r\n|\n|\r/) : body.split('\n');
}

/** Parses lines already split. Never throws. */
export function parseLines(texts: readonly string[], cache: LineCache = new LineCache()): Tree {
  const issues: NestingIssue[] = [];
  let count = 0;
  for (let size = 0; count < texts.length; count++) {
    const t = texts[count]!;
    size += t.length + 1;
    const afterLastEnd = t === '' && count === texts.length - 1;
    if ((count >= MAX_LINES || size > MAX_SIZE) && !afterLastEnd) {
      issues.push({ code: 'file-too-large', at: count });
      break;
    }
  }
  const lines = cache.all(count < texts.length ? texts.slice(0, count) : texts);
  const nested = nest(lines, cache.nested);
  cache.nested = nested;
  cache.whole = undefined;
  // What the cut has parted from its end is no slip of its own.
  return { lines, nodes: nested.nodes, issues: issues.length > 0 ? [...issues, ...nested.issues.filter(i => i.code !== 'brace-not-closed')] : nested.issues };
}

/** Parses a whole text. Never throws. */
export function parse(text: string, cache: LineCache = new LineCache()): Tree {
  if (cache.whole?.text === text) return cache.whole.tree;
  const tree = parseLines(splitLines(text), cache);
  cache.whole = { text, tree };
  return tree;
}
