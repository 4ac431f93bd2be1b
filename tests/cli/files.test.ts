// What `use` may reach, and how files are named.
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const lab = 'inventory lab {\n  laser red-12 {\n    wavelength: 632.8 nm\n    coherence length: 5 m\n    coherence contrast: 50%\n  }\n}\n';
const uses = (path: string): string => `use "${path}"\n${matched().replace(/laser red \{[^}]*\}/, 'laser red = lab.red-12')}`;
/** The codes of what is found, without hints. */
async function codes(args: readonly string[], cwd: string): Promise<string[]> {
  const { out } = await inside(['check', '--format', 'json', ...args], { cwd });
  return (JSON.parse(out) as { files: { findings: { code: string; severity: string }[] }[] }).files.flatMap(f => f.findings).filter(f => f.severity !== 'hint').map(f => f.code);
}

describe('use', () => {
  const at = folder({
    'shop/lab.plate': lab, 'shop/here.plate': uses('lab.plate'), 'shop/2026/whelk.plate': uses('../lab.plate'), 'shop/none.plate': uses('nowhere.plate'), 'shop/absolute.plate': uses('/etc/hostname'),
    'shop/folder.plate': uses('2026'), 'shop/binary.plate': uses('blob.plate'), 'shop/blob.plate': Buffer.from([0, 1]), 'secret/lab.plate': lab, 'shop/out.plate': uses('../secret/lab.plate'), 'shop/by-link.plate': uses('linked.plate'),
    'shop/into.plate': uses('secrets/lab.plate'), 'shop/ring-a.plate': 'use "ring-b.plate"\n', 'shop/ring-b.plate': 'use "ring-a.plate"\n', 'shop/self-link.plate': uses('loop.plate'),
    'shopping/lab.plate': lab, 'shop/neighbour.plate': uses('../shopping/lab.plate'),
  });
  symlinkSync('../secret/lab.plate', join(at, 'shop/linked.plate'));
  symlinkSync('../secret', join(at, 'shop/secrets'));
  symlinkSync('loop.plate', join(at, 'shop/loop.plate'));
  const shop = join(at, 'shop');

  it('reaches files beside it and in the working folder', async () => {
    expect(await codes(['here.plate'], shop)).toEqual([]);
    expect(await codes(['2026/whelk.plate'], shop)).toEqual([]);
  });
  it('of a file outside the working folder, reaches its own folder only, unless --folder says more', async () => {
    expect(await codes([join(shop, 'here.plate')], join(at, 'secret'))).toEqual([]);
    expect(await codes(['../shop/2026/whelk.plate'], join(at, 'secret'))).toContain('import-outside');
    expect(await codes(['--folder', '../shop', '../shop/2026/whelk.plate'], join(at, 'secret'))).toEqual([]);
    // a folder that is named holds all that is in it
    expect(await codes(['../shop/2026'], join(at, 'secret'))).toContain('import-outside');
  });
  it('does not reach outside: by dots, by an absolute path, by a link to a file or to a folder, nor a folder whose name begins alike', async () => {
    for (const f of ['out.plate', 'absolute.plate', 'by-link.plate', 'into.plate', 'neighbour.plate']) expect(await codes([f], shop), f).toContain('import-outside');
    expect(await codes(['--folder', '.', 'shop/out.plate'], at)).toEqual([]);
    expect(await codes(['--folder', 'shop', 'shop/by-link.plate'], at)).toContain('import-outside');
  });
  it('says so where a file is missing, a folder, binary, or a link that leads in a circle', async () => {
    for (const f of ['none.plate', 'folder.plate', 'binary.plate']) expect(await codes([f], shop), f).toContain('import-unreadable');
    expect((await codes(['self-link.plate'], shop)).some(c => c.startsWith('import-'))).toBe(true);
  });
  it('names a ring of files', async () => { expect(await codes(['ring-a.plate'], shop)).toEqual(['import-ring']); });
});

describe('a folder as an argument', () => {
  const at = folder({ 'b.plate': matched(), 'a.plate': matched(), 'sub/c.plate': matched(), 'node_modules/x/d.plate': matched(), '.git/e.plate': matched(), 'f.plate.bak': matched() });
  const other = folder({ 'secret.plate': matched() });
  symlinkSync(join(other, 'secret.plate'), join(at, 'out.plate'));
  symlinkSync('b.plate', join(at, 'inside.plate'));
  symlinkSync('..', join(at, 'sub/up'));
  const named = async (...args: string[]): Promise<string[]> => (JSON.parse((await inside(['check', '--format', 'json', ...args], { cwd: at })).out) as { files: { file: string }[] }).files.map(f => f.file);
  it('stands for every .plate file in it, by name, each once', async () => {
    expect(await named('.')).toEqual(['a.plate', 'b.plate', 'sub/c.plate']);
    expect(await named('sub', 'a.plate', '.', 'a.plate')).toEqual(['sub/c.plate', 'a.plate', 'b.plate']);
  });
});

describe('names', () => {
  it('that hold quotes, blanks, letters of any kind and marks of a terminal', async () => {
    const at = folder();
    mkdirSync(join(at, 'müschel lab'));
    writeFileSync(join(at, 'müschel lab/wellhorn 50%.plate'), matched());
    writeFileSync(join(at, 'red\u001b[31m.plate'), matched('  expect mismatch > 1 mm\n'));
    expect((await inside(['report', 'müschel lab/wellhorn 50%.plate'], { cwd: at })).out).toContain('müschel lab/wellhorn 50%.plate, line 1');
    const { out } = await inside(['check', 'red\u001b[31m.plate'], { cwd: at });
    expect(out).toContain('red␛[31m.plate:17');
    expect(out).not.toContain('\u001b');
  });
});
