/** What the extension tells of itself where nobody trusts a folder, or where it lies on no disk: true as long as its sources are so. */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { MANIFEST, read } from './manifest.ts';

const { untrustedWorkspaces, virtualWorkspaces } = MANIFEST.capabilities;
const settings = MANIFEST.contributes.configuration.flatMap(g => Object.entries(g.properties));
const sources = ['client', 'server/lsp', 'server/features', 'server/pdf'].flatMap(folder => readdirSync(new URL(`../../${folder}`, import.meta.url), { recursive: true, encoding: 'utf8' }).filter(f => /(?<!\/view\/.*)\.ts$/.test(f)).map(f => [`${folder}/${f}`, read(`${folder}/${f}`)] as const));
const having = (words: RegExp): string[] => sources.filter(([, text]) => words.test(text)).map(([file]) => file);

test('both say what is limited, and why', () => {
  expect([untrustedWorkspaces.supported, virtualWorkspaces.supported]).toEqual(['limited', 'limited']);
  expect(untrustedWorkspaces.description).toMatch(/git/);
  expect(virtualWorkspaces.description).toMatch(/disk/);
});
test('no program is started; git is that of the editor’s own extension, which is off in a folder that nobody trusts', () => {
  expect(having(/child_process|ShellExecution|ProcessExecution|createTerminal|(?<![.\w])(?:spawn|exec|execFile|fork)(?:Sync)?\(/)).toEqual([]);
  expect(having(/'vscode\.git'/)).toEqual(['client/review/git.ts']);
});
test('no setting of an opened folder leads outside of it', () => {
  expect(untrustedWorkspaces.restrictedConfigurations).toEqual([]);
  for (const [name, { type, scope }] of settings) if (type !== 'boolean' && name !== 'platewright.trace.server') expect(scope, name).toBe('machine');
});
test('one file is written, where somebody says so: the bench card; what Node.js keeps of other versions is removed', () => {
  expect(having(/workspace\.fs\b(?!\.(?:readFile|stat)\b)/)).toEqual(['client/card.ts', 'client/extension.ts']);
  expect(having(/\b(?:writeFile|appendFile|unlink|createWriteStream)\w*\(/)).toEqual(['client/put-file.ts']);
  expect(having(/\bputFile\(/)).toEqual(['client/card.ts', 'client/put-file.ts']);
});
test('revisions are read of files on a disk only', () => { expect(read('client/review/git.ts')).toContain("if (uri.scheme !== 'file') return"); });
