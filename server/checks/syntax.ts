/** What reading the lines found, as problems. */
import type { SyntaxIssue, Tree } from '../../grammar/tree.ts';
import type { Problem } from '../model/model.ts';
import { reservedName } from './reserved.ts';

/** So many lines with characters that no text has make a file that is no text at all: one slip. */
const NO_TEXT = 3;

export function syntaxProblems(tree: Tree, uri: string): Problem[] {
  const problems: Problem[] = [];
  const noText: Problem[] = [];
  tree.lines.forEach((line, at) => {
    if (!line.issue) return;
    const { code, found, wanted, start, end } = line.issue;
    const subject = line.text.trim().slice(0, 60);
    const name = reservedName(line);
    if (name) {
      problems.push({ code: 'reserved-name', at: { uri, line: at, start: name.start, end: name.end }, subject, data: { word: name.word, declared: name.declared } });
      return;
    }
    const where = isNoText(line.issue) ? noText : problems;
    where.push({ code, at: { uri, line: at, start, end: Math.max(end, start + 1) }, subject, data: { found, ...(wanted !== undefined ? { wanted } : {}) } });
  });
  if (noText.length >= NO_TEXT) return [noText[0]!];
  problems.push(...noText);
  tree.issues.forEach((issue, i) => {
    // Braces in a row that close nothing are one slip.
    const before = tree.issues[i - 1];
    if (issue.code === 'brace-not-opened' && before?.code === issue.code && before.at === issue.at - 1) return;
    const text = tree.lines[issue.at]?.text ?? '';
    const start = text.length - text.trimStart().length;
    problems.push({ code: issue.code, at: { uri, line: Math.min(issue.at, Math.max(0, tree.lines.length - 1)), start, end: Math.max(text.trimEnd().length, start + 1) }, subject: text.trim().slice(0, 60), data: {} });
  });
  if (!tree.issues.some(i => BRACES.includes(i.code))) problems.push(...blocksBelowFacts(tree, uri));
  return problems;
}

/** What is wrong with braces already says what is wrong with a block. */
const BRACES: readonly string[] = ['brace-not-closed', 'brace-not-opened', 'nested-too-deep'];

/** A colon makes a line a fact, a reading or a goal: none of them has a block. */
function blocksBelowFacts(tree: Tree, uri: string): Problem[] {
  const problems: Problem[] = [];
  for (const [at, line] of tree.lines.entries()) {
    if (!line.opens || line.colon === undefined || line.kind !== 'statement' || line.issue) continue;
    const start = line.head!.start;
    problems.push({ code: 'block-below-fact', at: { uri, line: at, start, end: line.colon }, subject: line.text.trim().slice(0, 60), data: { phrase: line.text.slice(start, line.colon).trim() } });
  }
  return problems;
}

/** Control characters, and the sign for bytes that are no letter. */
const isNoText = (issue: SyntaxIssue): boolean => issue.code === 'unreadable-character' && /[\p{Cc}\ufffd]/u.test(issue.found);
