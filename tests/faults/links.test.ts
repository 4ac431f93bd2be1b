/** Folders whose links lead in circles, files that use each other without end, and clocks that are wrong. */
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, expect, it, vi } from 'vitest';
import { analyse, type Library } from '../../server/analysis.ts';
import { listInside, readInside } from '../../server/lsp/node.ts';
import { replaceText } from '../../server/cli/writing.ts';
import { folder, matched } from '../cli/folder.ts';
import { inside } from '../cli/inside.ts';

afterEach(() => { vi.useRealTimers(); });

it('folders that hold themselves by a link are looked through once, by the server and by the command line', async () => {
  const at = folder({ 'a.plate': matched(), 'deep/b.plate': matched() });
  symlinkSync('..', join(at, 'deep/up'));
  symlinkSync('.', join(at, 'self'));
  symlinkSync('b.plate', join(at, 'deep/ring.plate'));
  expect(await listInside([pathToFileURL(at).href])).toEqual([join(at, 'a.plate'), join(at, 'deep/b.plate')].map(p => pathToFileURL(p).href));
  const { files } = JSON.parse((await inside(['check', '--format', 'json', '.'], { cwd: at })).out) as { files: { file: string }[] };
  expect(files.map(f => f.file)).toEqual(['a.plate', 'deep/b.plate']);
});

it('a file that is a link to itself says so where it is used', async () => {
  const at = folder({ 'a.plate': `use "ring.plate"\n${matched()}` });
  symlinkSync('ring.plate', join(at, 'ring.plate'));
  await expect(readInside(pathToFileURL(join(at, 'ring.plate')).href, [pathToFileURL(at).href])).rejects.toMatchObject({ code: 'ELOOP' });
  const { code, out } = await inside(['check', 'a.plate'], { cwd: at });
  expect({ code, out }).toEqual({ code: 1, out: expect.stringMatching(/^a\.plate:1:\d+: error: .*ring\.plate/) as string });
});

it('folders deeper than anybody makes them are left out', async () => {
  const at = folder({ 'a.plate': matched() });
  const deep = join(at, ...Array.from({ length: 40 }, () => 'd'));
  mkdirSync(deep, { recursive: true });
  writeFileSync(join(deep, 'b.plate'), matched());
  expect(await listInside([pathToFileURL(at).href])).toEqual([pathToFileURL(join(at, 'a.plate')).href]);
});

/** Each file uses the next; the last one of a ring the first. */
const chain = (length: number, ring: boolean): Library => ({
  resolve: path => path,
  text: uri => { const n = Number(uri); return n < length ? `use "${n + 1}"\n` : ring ? 'use "0"\n' : ''; },
});
it.each([[10_000, false, 'too-many-files'], [10_000, true, 'too-many-files'], [50, true, 'import-ring']] as const)('%i files that use each other (in a ring: %s) are one finding at the use', (length, ring, code) => {
  const { findings } = analyse('0', 'use "1"\n', chain(length, ring));
  expect(findings.map(f => [f.code, f.at.line])).toEqual([[code, 0]]);
});

it('what a page says does not depend on the clock, also of readings that are dated in the future', () => {
  const text = matched('  measured reference on 2031-02-18: 1460 mm ± 1 mm by string\n  measured reference on 2026-02-18: 1471 mm ± 1 mm by string\n');
  const said = ['1970-01-01', '2026-02-18', '2099-12-31'].map(day => {
    vi.useFakeTimers({ toFake: ['Date'], now: new Date(day) });
    return JSON.stringify(analyse('a', text).findings);
  });
  expect(said[0]).toContain('"code":');
  expect(new Set(said).size).toBe(1);
});

it('what is written does not depend on the clock, though it stand still', () => {
  vi.useFakeTimers({ toFake: ['Date'], now: 0 });
  const at = folder({ 'a.plate': '0' });
  for (let i = 0; i < 5; i++) replaceText(join(at, 'a.plate'), 'a.plate', String(i), String(i + 1));
  expect(() => { replaceText(join(at, 'a.plate'), 'a.plate', '0', 'x'); }).toThrow('another program has changed it meanwhile');
});
