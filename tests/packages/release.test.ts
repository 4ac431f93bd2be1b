/** What the pages say of building, packing and releasing can be followed as it stands. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { listFiles, PackageManager } from '@vscode/vsce';
import { describe, expect, test } from 'vitest';

const read = (file: string): string => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
interface Manifest { readonly version: string; readonly scripts: Readonly<Record<string, string>>; readonly dependencies: object; readonly bin: Readonly<Record<string, string>> }
const manifest = JSON.parse(read('package.json')) as Manifest;

test.each(['README.md', 'DEVELOPERS.md', '.ci/run'])('each script that %s names is there', file => {
  const named = [...read(file).matchAll(/npm run (?:--silent )?([a-z:]+)/g)].map(m => m[1]!);
  expect(named.length).toBeGreaterThan(0);
  expect(named.filter(name => manifest.scripts[name] === undefined)).toEqual([]);
});

test('there is a place for what is not released, and each version stands once', () => {
  const headings = [...read('CHANGELOG.md').matchAll(/^## (.+)$/gm)].map(m => m[1]!);
  expect(headings[0]).toBe('Unreleased');
  expect(headings.slice(1).filter(heading => !/^\d+\.\d+\.\d+, \d{4}-\d{2}-\d{2}$/.test(heading))).toEqual([]);
  expect(new Set(headings).size).toBe(headings.length);
});

test('npm installs nothing that is bundled already, and each package that it installs is told of', () => {
  const build = read('client/build.mjs');
  // Fonts are found by what asks for them, and are no module.
  for (const name of Object.keys(manifest.dependencies)) expect(build.includes(`'${name}'`) || name === 'dejavu-fonts-ttf', name).toBe(true);
  const told = read('DEVELOPERS.md').split('## Why each runtime dependency is there')[1]!.split('\n## ')[0]!;
  for (const name of Object.keys(manifest.dependencies)) expect(told).toContain(`\`${name}\``);
});

describe('what is packed besides what is built is in its list', () => {
  const cwd = fileURLToPath(new URL('../../', import.meta.url));
  const besides = (files: readonly string[]): string[] => files.filter(file => file !== '' && !file.startsWith('dist/')).sort();
  const pinned = (name: string): string[] => besides(read(`tests/packages/${name}`).split('\n'));
  test('of the command line', () => {
    const [{ files }] = JSON.parse(execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] })) as [{ files: { path: string }[] }];
    expect(besides(files.map(f => f.path))).toEqual(pinned('command-line.txt'));
  });
  test('of the extension', async () => {
    // The packer gives three of them other names.
    const named: Readonly<Record<string, string>> = { 'README.md': 'readme.md', 'CHANGELOG.md': 'changelog.md', LICENSE: 'LICENSE.txt' };
    const files = await listFiles({ cwd, packageManager: PackageManager.None });
    expect(besides(files.map(file => named[file] ?? file))).toEqual(pinned('extension.txt'));
  });
});

test('the lists of packed files name what the manifest names', () => {
  expect(read('tests/packages/command-line.txt').split('\n')).toEqual(expect.arrayContaining([...Object.values(manifest.bin), 'LICENSE', 'dist/NOTICES.txt']));
  const { main, browser, icon, contributes } = JSON.parse(read('package.json')) as { main: string; browser: string; icon: string; contributes: { grammars: { path: string }[]; languages: { configuration: string }[] } };
  const files = [main, browser, icon, ...contributes.grammars.map(g => g.path), ...contributes.languages.map(l => l.configuration)].map(path => path.replace(/^\.\//, ''));
  expect(read('tests/packages/extension.txt').split('\n')).toEqual(expect.arrayContaining([...files, 'LICENSE.txt', 'dist/NOTICES.txt']));
});
