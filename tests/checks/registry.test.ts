/** Codes are a contract: unique, never used again, and each one that is reported has its words. */
import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { CHECKS, findCheck, RETIRED } from '../../server/checks/registry.ts';

const ROOT = new URL('../../', import.meta.url);
const KEBAB = /^[a-z]+(?:-[a-z]+)+$/;
const codes = CHECKS.map(c => c.code);

describe('codes', () => {
  it('are unique, in kebab case, and not retired', () => {
    expect(codes.filter((c, i) => codes.indexOf(c) !== i)).toEqual([]);
    expect(codes.filter(c => !KEBAB.test(c))).toEqual([]);
    expect(codes.filter(c => RETIRED.includes(c))).toEqual([]);
  });

  it('name the file that their check stands in', () => {
    const files = sources('server/checks').filter(f => /checks\/[a-z]+\/(?!index)/.test(f));
    expect(files.map(f => /([^/]+)\.ts$/.exec(f)![1]!).sort()).toEqual([...codes].sort());
  });

  it('are registered wherever one is reported', () => {
    const reported = sources('grammar', 'server').flatMap(reportedIn);
    // If this finds next to nothing, it looks for the wrong thing.
    expect(new Set(reported.map(r => r.code)).size).toBeGreaterThan(40);
    expect(reported.filter(r => !findCheck(r.code))).toEqual([]);
  });

  it('are reported somewhere, unless the check itself looks for them', () => {
    const reported = new Set(sources('grammar', 'server').flatMap(reportedIn).map(r => r.code));
    expect(CHECKS.filter(c => !c.run && !reported.has(c.code)).map(c => c.code)).toEqual([]);
  });
});

/** Sources under some folders, from the root of the project. */
function sources(...folders: string[]): string[] {
  return folders.flatMap(folder => readdirSync(new URL(folder, ROOT), { recursive: true, encoding: 'utf8' })
    .map(f => `${folder}/${f.replaceAll('\\', '/')}`).filter(f => f.endsWith('.ts')));
}

/**
 * Codes in `report('…', …)` and `fail('…', …)`, in conditional arguments of them, in `code: '…'` of a value, and in the union types of `code`.
 * A cell's reason to be missing also has a `code`; it is no finding, and stands in a call of `missing` or behind `missing:`.
 */
function reportedIn(file: string): { file: string; code: string }[] {
  if (/^server\/(?:lsp|cli|features)\//.test(file)) return [];
  const source = ts.createSourceFile(file, readFileSync(new URL(file, ROOT), 'utf8'), ts.ScriptTarget.ES2022, true);
  const found: { file: string; code: string }[] = [];
  const add = (node: ts.Node): void => {
    if (ts.isStringLiteral(node)) found.push({ file, code: node.text });
    else if (ts.isConditionalExpression(node)) { add(node.whenTrue); add(node.whenFalse); }
    else if (ts.isUnionTypeNode(node)) node.types.forEach(add);
    else if (ts.isLiteralTypeNode(node)) add(node.literal);
  };
  const visit = (node: ts.Node): void => {
    const called = ts.isCallExpression(node) ? (ts.isPropertyAccessExpression(node.expression) ? node.expression.name.text : node.expression.getText()) : undefined;
    if (called === 'missing' || (ts.isPropertyAssignment(node) && node.name.getText() === 'missing')) return;
    if (ts.isCallExpression(node) && (called === 'report' || called === 'fail') && node.arguments[0]) add(node.arguments[0]);
    if (ts.isPropertyAssignment(node) && node.name.getText() === 'code') add(node.initializer);
    // What a check declares is not what something reports.
    if (ts.isPropertySignature(node) && node.name.getText() === 'code' && node.type) add(node.type);
    ts.forEachChild(node, visit);
  };
  if (!/^server\/checks\/[a-z]+\//.test(file)) visit(source);
  else source.statements.forEach(s => { if (!declaresCheck(s)) visit(s); else ts.forEachChild(s, n => visitRun(n, visit)); });
  return found;
}

const declaresCheck = (s: ts.Statement): boolean => ts.isVariableStatement(s) && s.declarationList.declarations.some(d => d.type?.getText() === 'Check');

/** Of a check only what it runs, and not its own `code`. */
function visitRun(node: ts.Node, visit: (n: ts.Node) => void): void {
  if (ts.isPropertyAssignment(node) && node.name.getText() === 'run') visit(node);
  else ts.forEachChild(node, n => visitRun(n, visit));
}
