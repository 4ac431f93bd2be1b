/**
 * The formatter. It changes only the blanks between tokens, the indents and the line ends; it never aligns columns, so
 * that renaming one mirror doesn't touch its neighbours. A line that could not be read stays as it is, and so does one that
 * blanks would make too long to be read.
 */
import { MAX_DEPTH } from './nest.ts';
import { MAX_LINE } from './parse-line.ts';
import { parse } from './parse.ts';
import type { LineTree, TokenSpan, Tree } from './tree.ts';

export interface Formatted {
  readonly text: string;
  /** zero-based numbers of the lines that were left as they are, because they could not be read, or not afterwards */
  readonly left: readonly number[];
}

/** Formats a whole text: two blanks an indent, one blank between facts, one empty line at most, `\n` at the end. */
export function format(text: string): Formatted {
  const tree = parse(text);
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  if (tree.issues.some(i => i.code === 'file-too-large')) return { text, left: [0] };
  const { texts, left } = formattedLines(tree);
  const out: string[] = [];
  let blanks = false;
  for (const line of texts) {
    if (line === undefined) { blanks = true; continue; }
    // A byte order mark amid the text must not come to stand at its start, where it means nothing.
    if (blanks && (out.length > 0 || line.startsWith('\ufeff'))) out.push('');
    blanks = false;
    out.push(line);
  }
  return { text: out.length > 0 ? out.join(eol) + eol : '', left };
}

/** How each line is written; undefined for one that holds nothing. A line that needs no change is given as it stands, the very same text. */
export function formattedLines(tree: Tree): { readonly texts: readonly (string | undefined)[]; readonly left: readonly number[] } {
  const { lines } = tree;
  const left: number[] = [];
  // Where braces do not pair, the indents tell how they were meant, so they stay; also where it is the brace of a leg, which has a finding of its own.
  const pairs = bracesPair(lines) && !tree.issues.some(i => i.code === 'brace-not-closed' || i.code === 'brace-not-opened');
  const beforeLeg = linesBeforeLegs(lines);
  let depth = 0;
  const texts = lines.map((line, at) => {
    if (line.kind === 'blank') return undefined;
    if (line.kind === 'close') depth = Math.max(0, depth - 1);
    const steps = Math.min(depth, MAX_DEPTH + 1) + (line.kind === 'leg' || beforeLeg.has(at) ? 1 : 0);
    if (line.opens) depth++;
    const indent = pairs ? INDENTS[steps]! : line.text.slice(0, line.tokens[0]?.start);
    const body = line.issue ? undefined : line.formatted ??= formatLine(line);
    if (body === undefined || indent.length + body.length > MAX_LINE) {
      left.push(at);
      return line.text;
    }
    const same = indent.length + body.length === line.text.length && line.text.startsWith(indent) && line.text.endsWith(body);
    return same ? line.text : indent + body;
  });
  return { texts, left };
}

const INDENTS: readonly string[] = Array.from({ length: MAX_DEPTH + 3 }, (_, steps) => '  '.repeat(steps));

function bracesPair(lines: readonly LineTree[]): boolean {
  let depth = 0;
  for (const line of lines) {
    if (line.opens) depth++;
    else if (line.kind === 'close' && --depth < 0) return false;
  }
  return depth === 0;
}

/** Comments right above a leg are about it. */
function linesBeforeLegs(lines: readonly LineTree[]): Set<number> {
  const found = new Set<number>();
  for (let at = lines.length - 1; at > 0; at--) {
    const above = lines[at - 1]!.kind;
    if ((above === 'comment' || above === 'doc') && (lines[at]!.kind === 'leg' || found.has(at))) found.add(at - 1);
  }
  return found;
}

/** One line without its indent. */
function formatLine(line: LineTree): string {
  let out = '';
  let before: TokenSpan | undefined;
  // Read once: a line does not keep its tokens.
  const { tokens } = line;
  tokens.forEach((token, i) => {
    const text = token.type === 'comment' || token.type === 'doc' ? line.text.slice(token.start, token.end).trimEnd() : line.text.slice(token.start, token.end);
    if (before && blankBetween(line, before, token, tokens[i - 2])) out += ' ';
    out += text;
    before = token;
  });
  return out;
}

const VALUE_END = new Set(['word', 'number', 'unit', 'ratio', 'date', 'string', 'rparen', 'unknown']);

function blankBetween(line: LineTree, a: TokenSpan, b: TokenSpan, beforeA: TokenSpan | undefined): boolean {
  // Right behind a ratio the colon would take it apart.
  if (b.type === 'colon') return a.type === 'ratio';
  if (b.type === 'comma' || b.type === 'rparen') return false;
  if (a.type === 'lparen') return false;
  // A call has its bracket close by, a value in brackets has not: which one it is, the blank decides, so it is kept.
  if (b.type === 'lparen' && a.type === 'word') return a.end !== b.start;
  // A sign stands at its value.
  if ((a.type === 'minus' || a.type === 'plus') && !(beforeA && VALUE_END.has(beforeA.type))) return b.type === 'minus' || b.type === 'plus';
  // °, % and the like stand at their number; a sign of inches that stood away from it would open a text; other units have a blank.
  if (b.type === 'unit') return !/^[°%′″"]/.test(line.text.slice(b.start, b.end)) || line.text.startsWith('°C', b.start);
  return true;
}
