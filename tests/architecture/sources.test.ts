/** What holds for the text of every source. */
import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { expect, test } from 'vitest';

const ROOT = new URL('../../', import.meta.url);
const sources = ['client', 'grammar', 'server'].flatMap(folder => readdirSync(new URL(folder, ROOT), { recursive: true, encoding: 'utf8' })
  .filter(name => /\.(?:[cm]?ts|mjs)$/.test(name)).map(name => `${folder}/${name.replaceAll('\\', '/')}`));
const read = (file: string): string => readFileSync(new URL(file, ROOT), 'utf8');

const LONGEST = 400;
test('files stay small', () => {
  const long = sources.map(file => ({ file, lines: read(file).split('\n').length - 1 })).filter(f => f.lines >= LONGEST);
  expect(long).toEqual([]);
});

/** No clock, no files, no chance without a seed, nothing of a host: the same text gives the same page everywhere. */
const IMPURE = new Set(['Date', 'performance', 'process', 'console', 'require', 'globalThis', 'window', 'document', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'fetch', 'crypto', 'navigator', 'Intl', 'eval']);
test('the core is pure', () => {
  const found: string[] = [];
  for (const file of sources.filter(f => /^(?:grammar|server\/(?:optics|model|results|checks|review|features|drawing)|server\/analysis)/.test(f) && f.endsWith('.ts'))) {
    const source = ts.createSourceFile(file, read(file), ts.ScriptTarget.ES2022, true);
    const visit = (node: ts.Node): void => {
      const random = ts.isPropertyAccessExpression(node) && node.getText() === 'Math.random';
      // A name in its own scope, such as a parameter called `document`, is followed by its declaration; a property is none of these.
      const free = ts.isIdentifier(node) && IMPURE.has(node.text) && !(ts.isPropertyAccessExpression(node.parent) && node.parent.name === node) && !ts.isPropertyAssignment(node.parent) && !ts.isPropertySignature(node.parent);
      if (random || free) found.push(`${file}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${node.getText()}`);
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  expect(found).toEqual([]);
});

test('imports name their files', () => {
  const found: string[] = [];
  for (const file of sources.filter(f => f.endsWith('.ts'))) {
    for (const { fileName } of ts.preProcessFile(read(file), true, true).importedFiles) if (fileName.startsWith('.') && !/\.(?:ts|json)$/.test(fileName)) found.push(`${file} imports ${fileName}`);
  }
  expect(found).toEqual([]);
});

/** What is written beside its place and renamed stays whole. */
test('one file of the server writes files', () => {
  const found: string[] = [];
  for (const file of sources.filter(f => f.startsWith('server/') && f.endsWith('.ts') && f !== 'server/cli/writing.ts')) {
    for (const m of read(file).matchAll(/\b(?:writeFile|appendFile|createWriteStream|copyFile|rename|truncate|symlink|mkdir|rm|unlink|openSync|writeSync)(?:Sync)?\b(?=[^\n]*\bnode:fs\b)|\bfs\.(?:write|append|copy|rename|open|mk|rm|unlink)\w*/g)) found.push(`${file}: ${m[0]}`);
  }
  expect(found).toEqual([]);
});
