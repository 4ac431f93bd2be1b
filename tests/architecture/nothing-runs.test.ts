/** Nothing runs from what a file holds: no text is ever taken for a program, and programs, threads and parts of the program are started by fixed names in the places named here. */
import { readdirSync, readFileSync } from 'node:fs';
import { Linter } from 'eslint';
import regexp from 'eslint-plugin-regexp';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const ROOT = new URL('../../', import.meta.url);
const read = (file: string): string => readFileSync(new URL(file, ROOT), 'utf8');
const sources = ['client', 'grammar', 'server'].flatMap(folder => readdirSync(new URL(folder, ROOT), { recursive: true, encoding: 'utf8' })
  .filter(name => name.endsWith('.ts')).map(name => `${folder}/${name.replaceAll('\\', '/')}`));

/** All nodes that may run something, with their files: calls, and names behind a dot or a `new`. */
const nodes: (readonly [string, ts.Node])[] = [];
for (const file of sources) {
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) || ts.isNewExpression(node) || ts.isPropertyAccessExpression(node) || ts.isPropertyAssignment(node)) nodes.push([file, node]);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, read(file), ts.ScriptTarget.ES2022, true));
}
/** Those for which something holds, as `file: text`. */
const where = (holds: (node: ts.Node) => boolean): string[] => nodes.filter(([, node]) => holds(node)).map(([file, node]) => `${file}: ${node.getText().slice(0, 60)}`);
const isText = (node: ts.Node | undefined): boolean => node !== undefined && (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node));
const importing = (module: RegExp): string[] => sources.filter(file => ts.preProcessFile(read(file), true, true).importedFiles.some(i => module.test(i.fileName)));

test('no text is run as a program', () => {
  expect(where(n => (ts.isCallExpression(n) || ts.isNewExpression(n)) && /^(?:globalThis\.)?(?:eval|Function)$/.test(n.expression.getText()))).toEqual([]);
  expect(where(n => ts.isCallExpression(n) && /^(?:\w+\.)?set(?:Timeout|Interval|Immediate)$/.test(n.expression.getText()) && !(n.arguments[0] && (ts.isArrowFunction(n.arguments[0]) || ts.isIdentifier(n.arguments[0]))))).toEqual([]);
});
test('git is the only program that is started, and never by a shell', () => {
  expect(importing(/^(?:node:)?child_process$/).filter(f => !/^import type[^;]*child_process/m.test(read(f)))).toEqual(['server/cli/git/run.ts']);
  expect(where(n => ts.isCallExpression(n) && ts.isIdentifier(n.expression) && n.expression.text === 'spawn').map(f => f.split(', ')[0])).toEqual(["server/cli/git/run.ts: spawn('git'"]);
  expect(where(n => ts.isPropertyAssignment(n) && n.name.getText() === 'shell')).toEqual([]);
});
/** Each starts a part of the program itself, by a fixed name. */
const WORKERS = ['client/extension.web.ts', 'client/site/view/program.ts', 'server/cli/threads.ts'];
test('modules are loaded by fixed names, and threads are of the program itself', () => {
  expect(where(n => ts.isCallExpression(n) && n.expression.kind === ts.SyntaxKind.ImportKeyword && !isText(n.arguments[0]))).toEqual([]);
  expect(where(n => ts.isCallExpression(n) && n.expression.getText() === 'require' && !isText(n.arguments[0]))).toEqual([]);
  expect(importing(/^(?:node:)?worker_threads$/)).toEqual(['server/cli/main.ts', 'server/cli/threads.ts']);
  expect(importing(/^(?:node:)?(?:vm|cluster|inspector|repl|wasi)$/)).toEqual([]);
  expect([...new Set(where(n => ts.isNewExpression(n) && n.expression.getText() === 'Worker').map(f => f.split(':')[0]))].sort()).toEqual(WORKERS);
});
test('the pages of the panels make elements one by one, never from markup', () => {
  expect(where(n => ts.isPropertyAccessExpression(n) && /^(?:innerHTML|outerHTML|insertAdjacentHTML|srcdoc|createContextualFragment|setHTMLUnsafe|parseFromString)$/.test(n.name.text))).toEqual([]);
  expect(where(n => ts.isCallExpression(n) && /^document\.write(?:ln)?$/.test(n.expression.getText()))).toEqual([]);
});

/** Rules that find expressions whose time grows faster than the text. For sources they are among those of ESLint; the patterns for colours are in a page of JSON. */
const RULES: Linter.RulesRecord = { 'regexp/no-super-linear-backtracking': ['error', { report: 'potential' }] };
const slow = (pattern: string): string[] => new Linter().verify(`export const P = /${pattern.replaceAll('/', '\\/')}/u;`, [{ plugins: { regexp }, rules: RULES }]).map(m => m.message);
describe('the patterns for colours take a time that grows with the line', () => {
  const patterns: string[] = [];
  JSON.parse(read('grammar/plate.tmLanguage.json'), (key, value: unknown) => { if (/^(?:match|begin|end|while)$/.test(key)) patterns.push(value as string); return value; });
  test('slow ones would be found', () => {
    expect(slow('(?:a+)+b')).toHaveLength(1);
    expect(slow('^\\s*\\s*x')).toHaveLength(1);
    expect(slow('^[a-z]+x')).toEqual([]);
  });
  test.each([...new Set(patterns)])('%s', pattern => { expect(slow(pattern)).toEqual([]); });
  test('are all read', () => { expect(patterns.length).toBeGreaterThan(20); });
});
