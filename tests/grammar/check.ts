/** What the tests of the language share: a compact way to write a tree, and places marked under the source. */
import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { parseLine } from '../../grammar/parse-line.ts';
import type { Expr, LineTree, Node, Tree } from '../../grammar/tree.ts';
import { misplaced } from './misplaced.ts';

/** Parses one line and compares its tree with the notation of {@link show}. */
export function check(source: string, expected: string): void {
  const line = parseLine(source);
  expectPlaces(line);
  expect(show(line)).toBe(expected);
}

/**
 * Parses lines of which some have marks below them, and expects exactly these issues:
 *
 *     beam height:
 *                ~ value-expected a value
 *
 * The marks span the issue in UTF-16 units; then come its code and, where it says so, what was wanted.
 */
export function checkIssues(marked: string): void {
  const sources = marked.replace(/^\n|\n\s*$/g, '').split('\n').filter(line => !MARKS.test(line));
  expect(sources.map(withMarks).join('\n')).toBe(marked.replace(/^\n|\n\s*$/g, ''));
}

const MARKS = /^ *~+ [a-z]+(?:-[a-z]+)+/;

function withMarks(source: string): string {
  const line = parseLine(source);
  expectPlaces(line);
  if (!line.issue) return source;
  const { start, end, code, wanted } = line.issue;
  return `${source}\n${' '.repeat(start)}${'~'.repeat(end - start)} ${code}${wanted === undefined ? '' : ` ${wanted}`}`;
}

/** Parses a text and compares how it nests with the notation of {@link showTree}. */
export function checkTree(source: string, expected: string): Tree {
  const tree = parse(source);
  expect(showTree(tree)).toBe(expected.replace(/^\n|\n\s*$/g, ''));
  return tree;
}

/** `laser red | at (60, 100)[mm] | {`: first word and subject, then the parts in the order of the text. */
export function show(line: LineTree): string {
  const parts: { at: number; text: string }[] = line.clauses.map(c => ({ at: c.start, text: `${c.word.text}${c.value ? ` ${showExpr(c.value)}` : ''}` }));
  if (line.equals) parts.push({ at: line.equals.start, text: `= ${showExpr(line.equals)}` });
  if (line.compare) parts.push({ at: line.compare.start, text: `${line.compare.op}${line.compare.value ? ` ${showExpr(line.compare.value)}` : ''}` });
  if (line.colon !== undefined) parts.push({ at: line.colon, text: `:${line.value ? ` ${showExpr(line.value)}` : ''}` });
  const first = [line.kind === 'statement' ? line.head!.text : line.kind, ...(line.subject ? [showExpr(line.subject)] : [])].join(' ');
  const rest = parts.sort((a, b) => a.at - b.at).map(p => p.text);
  return [first, ...rest, ...(line.opens ? ['{'] : []), ...(line.comment && line.kind === 'statement' ? ['//'] : [])].join(' | ') + (line.issue ? ` ! ${line.issue.code}` : '');
}

/** Phrases in quotes, units in square brackets, what belongs together in braces. */
export function showExpr(e: Expr): string {
  const unit = 'unit' in e && e.unit ? `[${e.unit.text}]` : '';
  switch (e.kind) {
    case 'number': return `${e.value}${unit}`;
    case 'unknown': return `?${unit}`;
    case 'ratio': return `${e.left}:${e.right}`;
    case 'date': return e.text;
    case 'string': return JSON.stringify(e.value);
    case 'phrase': return `'${e.words.map(w => w.text).join(' ')}'`;
    case 'call': return `${e.name.text}(${e.args.map(showExpr).join(', ')})${unit}`;
    case 'group': return `(${e.items.map(showExpr).join(', ')})${unit}`;
    case 'unary': return `{${e.op}${showExpr(e.arg)}}`;
    case 'binary': return `{${showExpr(e.left)} ${e.op} ${showExpr(e.right)}}`;
    case 'sizes': return `{${e.parts.map(showExpr).join(' x ')}}`;
    case 'tolerance': return `{${showExpr(e.value)} ${e.op} ${showExpr(e.by)}${e.std ? ' std' : ''}}`;
    case 'path': return `{${e.items.map(showExpr).join(' -> ')}}`;
    case 'row': return `{${e.items.map(showExpr).join(' ')}}`;
    case 'list': return `{${e.items.map(showExpr).join(', ')}}`;
  }
}

/** One node a line, indented by its depth; legs two steps in; notes behind `///`; then the issues with their line. */
export function showTree(tree: Tree): string {
  const out: string[] = [];
  const walk = (node: Node, depth: number): void => {
    const text = node.line.text.slice(0, node.line.comment?.start).trim();
    out.push(`${'  '.repeat(depth)}${text}${node.end > node.at ? ` (to ${node.end})` : ''}${node.doc === undefined ? '' : ` /// ${JSON.stringify(node.doc)}`}`);
    for (const leg of node.legs) walk(leg, depth + 2);
    for (const child of node.children) walk(child, depth + 1);
  };
  for (const node of tree.nodes) walk(node, 0);
  return [...out, ...tree.issues.map(i => `! ${i.code} in ${i.at}`)].join('\n');
}

/** Whatever was read: places lie inside the line, inside their parent, and in order; tokens leave out only blanks. */
export function expectPlaces(line: LineTree): void {
  expect(misplaced(line), JSON.stringify(line.text)).toEqual([]);
}

/** The sample setups of the Saltmarsh workshop. */
export const SAMPLES = ['whelk-by-string.plate', 'whelk-on-the-table.plate'];
export const sample = (name: string): string => readFileSync(new URL(`fixtures/${name}`, import.meta.url), 'utf8');
