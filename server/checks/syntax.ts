/** What reading the lines found, as problems. */
import type { Tree } from '../../grammar/tree.ts';
import type { Problem } from '../model/model.ts';

export function syntaxProblems(tree: Tree, uri: string): Problem[] {
  const problems: Problem[] = [];
  tree.lines.forEach((line, at) => {
    if (!line.issue) return;
    const { code, found, wanted, start, end } = line.issue;
    problems.push({ code, at: { uri, line: at, start, end: Math.max(end, start + 1) }, subject: line.text.trim().slice(0, 60), data: { found, ...(wanted !== undefined ? { wanted } : {}) } });
  });
  for (const issue of tree.issues) {
    const text = tree.lines[issue.at]?.text ?? '';
    const start = text.length - text.trimStart().length;
    problems.push({ code: issue.code, at: { uri, line: Math.min(issue.at, Math.max(0, tree.lines.length - 1)), start, end: Math.max(text.trimEnd().length, start + 1) }, subject: text.trim().slice(0, 60), data: {} });
  }
  return problems;
}
