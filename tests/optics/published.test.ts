/** Each published value is held against a function of ours: a value that no test uses tells nothing. */
import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import published from './published-values.json' with { type: 'json' };

/** Values that still wait for their functions, by the beginnings of their ids. This list only shrinks: what is used must not stand in it. */
const WAITING: readonly string[] = [];

const TESTS = new URL('../', import.meta.url);
const ids = published.map(p => p.id);
const isWaiting = (id: string): boolean => WAITING.some(w => id.startsWith(w));

/**
 * Ids that a test asks for: what `publishedIds` begins with, and what `publishedValue` and `publishedFigures` name, be it themselves or, where they are given a
 * variable, a whole id as a text of the same file.
 */
function usedIn(source: ts.SourceFile): string[] {
  const used: string[] = [];
  const texts: string[] = [];
  const named: (string | undefined)[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteral(node)) texts.push(node.text);
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
      const [first] = node.arguments;
      const text = first && ts.isStringLiteral(first) ? first.text : undefined;
      if (node.expression.text === 'publishedIds' && text !== undefined) used.push(...ids.filter(id => id.startsWith(text)));
      if (['publishedValue', 'publishedFigures'].includes(node.expression.text)) named.push(text);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return [...used, ...named.filter(n => n !== undefined), ...(named.includes(undefined) ? ids.filter(id => texts.includes(id)) : [])];
}

const parsed = (name: string, text: string): ts.SourceFile => ts.createSourceFile(name, text, ts.ScriptTarget.ES2022, true);
const files = readdirSync(TESTS, { recursive: true, encoding: 'utf8' }).map(f => f.replaceAll('\\', '/')).filter(f => f.endsWith('.test.ts') && f !== 'optics/published.test.ts');
const used = new Set(files.flatMap(f => usedIn(parsed(f, readFileSync(new URL(f, TESTS), 'utf8')))));

describe('the published values', () => {
  it('have ids of their own', () => expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]));
  it('are each used by a test, unless they wait for their function', () => expect(ids.filter(id => !used.has(id) && !isWaiting(id))).toEqual([]));
  it('wait for their function only as long as no test uses them', () => {
    expect(WAITING.filter(w => !ids.some(id => id.startsWith(w)))).toEqual([]);
    expect(WAITING.filter(w => ids.filter(id => id.startsWith(w)).every(id => used.has(id)))).toEqual([]);
  });
  it('that are asked for exist', () => expect([...used].filter(id => !ids.includes(id))).toEqual([]));
});

it('a use is found however it is written, and a mention is none', () => {
  const found = (text: string): string[] => usedIn(parsed('a.ts', text));
  expect(found("publishedValue('fs-d').check(n)")).toEqual(['fs-d']);
  expect(found("it.each(publishedIds('tape-'))('%s', id => publishedValue(id))")).toEqual(['tape-I', 'tape-II']);
  expect(found("for (const id of ['fs-633', 'fs-d']) publishedValue(id)")).toEqual(['fs-633', 'fs-d']);
  expect(found("publishedFigures('path-holo') as { a: 1 }")).toEqual(['path-holo']);
  expect(found("// publishedValue('fs-d')\nconst id = 'fs-633';")).toEqual([]);
});
