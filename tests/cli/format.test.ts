import { chmodSync, linkSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder } from './folder.ts';
import { inside } from './inside.ts';

const untidy = 'setup   "Razor"{\nmirror   M1\n      beam raw from red\n->M1:350mm\n}\n\n\n';
const tidy = 'setup "Razor" {\n  mirror M1\n  beam raw from red\n    -> M1: 350 mm\n}\n';
const read = (path: string): string => readFileSync(path, 'utf8');

describe('format FILE', () => {
  it('writes the file, says which, and is content the second time', async () => {
    const at = folder({ 'a.plate': untidy, 'b.plate': tidy });
    expect(await inside(['format', 'a.plate', 'b.plate'], { cwd: at })).toEqual({ code: 0, out: 'a.plate: formatted\n', err: '' });
    expect(read(join(at, 'a.plate'))).toBe(tidy);
    expect(await inside(['format', 'a.plate', 'b.plate'], { cwd: at })).toEqual({ code: 0, out: '', err: '' });
    expect(readdirSync(at).sort()).toEqual(['a.plate', 'b.plate']);
  });
  it('takes a folder for all files in it', async () => {
    const at = folder({ 'x/a.plate': untidy, 'x/deep/b.plate': untidy, 'x/notes.txt': untidy, 'x/.hidden/c.plate': untidy });
    expect((await inside(['format', 'x'], { cwd: at })).out).toBe('x/a.plate: formatted\nx/deep/b.plate: formatted\n');
    expect(read(join(at, 'x/notes.txt'))).toBe(untidy);
    expect(read(join(at, 'x/.hidden/c.plate'))).toBe(untidy);
  });
  it.each(['\ufeff', '\ufeff\ufeff'])('keeps the mode, byte order marks, \\r\\n, and a link', async marks => {
    const at = folder({ 'a.plate': `${marks}${untidy.replaceAll('\n', '\r\n')}` });
    chmodSync(join(at, 'a.plate'), 0o640);
    symlinkSync('a.plate', join(at, 'link.plate'));
    expect((await inside(['format', 'link.plate'], { cwd: at })).code).toBe(0);
    expect(read(join(at, 'a.plate'))).toBe(`${marks}${tidy.replaceAll('\n', '\r\n')}`);
    expect(statSync(join(at, 'a.plate')).mode & 0o7777).toBe(0o640);
    expect(lstatSync(join(at, 'link.plate')).isSymbolicLink()).toBe(true);
  });
  it('puts the new text in the place of the old one by renaming: who has the old file open keeps all of it', async () => {
    const at = folder({ 'a.plate': untidy });
    linkSync(join(at, 'a.plate'), join(at, 'old.txt'));
    await inside(['format', 'a.plate'], { cwd: at });
    expect(read(join(at, 'old.txt'))).toBe(untidy);
    expect(read(join(at, 'a.plate'))).toBe(tidy);
  });
  it('leaves lines that it could not read as they are, and lists them', async () => {
    const at = folder({ 'a.plate': 'setup "Razor"{\n mirror   M1 ((\nmirror   M2\n}\n' });
    const { code, out, err } = await inside(['format', 'a.plate'], { cwd: at });
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(read(join(at, 'a.plate'))).toBe('setup "Razor" {\n mirror   M1 ((\n  mirror M2\n}\n');
    const lines = out.trimEnd().split('\n');
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(/^a\.plate:2:\d+: error: .*; the line stays as it is$/);
    expect(lines[1]).toBe('a.plate: formatted');
  });
});

describe('format --check', () => {
  it('says what would change, ends with 1, and writes nothing', async () => {
    const at = folder({ 'a.plate': untidy, 'b.plate': tidy });
    const before = statSync(join(at, 'a.plate'));
    expect(await inside(['format', '--check', 'a.plate', 'b.plate'], { cwd: at })).toEqual({ code: 1, out: 'a.plate: would change\n', err: '' });
    expect(read(join(at, 'a.plate'))).toBe(untidy);
    expect(statSync(join(at, 'a.plate'))).toMatchObject({ ino: before.ino, mtimeMs: before.mtimeMs });
    expect((await inside(['format', '--check', 'b.plate'], { cwd: at })).code).toBe(0);
  });
});

