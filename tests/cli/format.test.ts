import { chmodSync, linkSync, lstatSync, readdirSync, readFileSync, realpathSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, platewright } from './command.ts';

const untidy = 'setup   "Razor"{\nmirror   M1\n      beam raw from red\n->M1:350mm\n}\n\n\n';
const tidy = 'setup "Razor" {\n  mirror M1\n  beam raw from red\n    -> M1: 350 mm\n}\n';
const read = (path: string): string => readFileSync(path, 'utf8');

describe('format FILE', () => {
  it('writes the file, says which, and is content the second time', () => {
    const at = folder({ 'a.plate': untidy, 'b.plate': tidy });
    expect(platewright(['format', 'a.plate', 'b.plate'], { cwd: at })).toEqual({ code: 0, out: 'a.plate: formatted\n', err: '' });
    expect(read(join(at, 'a.plate'))).toBe(tidy);
    expect(platewright(['format', 'a.plate', 'b.plate'], { cwd: at })).toEqual({ code: 0, out: '', err: '' });
    expect(readdirSync(at).sort()).toEqual(['a.plate', 'b.plate']);
  });
  it('takes a folder for all files in it', () => {
    const at = folder({ 'x/a.plate': untidy, 'x/deep/b.plate': untidy, 'x/notes.txt': untidy, 'x/.hidden/c.plate': untidy });
    expect(platewright(['format', 'x'], { cwd: at }).out).toBe('x/a.plate: formatted\nx/deep/b.plate: formatted\n');
    expect(read(join(at, 'x/notes.txt'))).toBe(untidy);
    expect(read(join(at, 'x/.hidden/c.plate'))).toBe(untidy);
  });
  it('keeps the mode, a byte order mark, \\r\\n, and a link', () => {
    const at = folder({ 'a.plate': `\ufeff${untidy.replaceAll('\n', '\r\n')}` });
    chmodSync(join(at, 'a.plate'), 0o640);
    symlinkSync('a.plate', join(at, 'link.plate'));
    expect(platewright(['format', 'link.plate'], { cwd: at }).code).toBe(0);
    expect(read(join(at, 'a.plate'))).toBe(`\ufeff${tidy.replaceAll('\n', '\r\n')}`);
    expect(statSync(join(at, 'a.plate')).mode & 0o7777).toBe(0o640);
    expect(lstatSync(join(at, 'link.plate')).isSymbolicLink()).toBe(true);
  });
  it('puts the new text in the place of the old one by renaming: who has the old file open keeps all of it', () => {
    const at = folder({ 'a.plate': untidy });
    linkSync(join(at, 'a.plate'), join(at, 'old.txt'));
    platewright(['format', 'a.plate'], { cwd: at });
    expect(read(join(at, 'old.txt'))).toBe(untidy);
    expect(read(join(at, 'a.plate'))).toBe(tidy);
  });
  it('leaves lines that it could not read as they are, and lists them', () => {
    const at = folder({ 'a.plate': 'setup "Razor"{\n mirror   M1 ((\nmirror   M2\n}\n' });
    const { code, out, err } = platewright(['format', 'a.plate'], { cwd: at });
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(read(join(at, 'a.plate'))).toBe('setup "Razor" {\n mirror   M1 ((\n  mirror M2\n}\n');
    const lines = out.trimEnd().split('\n');
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(/^a\.plate:2:\d+: error: .*; the line stays as it is$/);
    expect(lines[1]).toBe('a.plate: formatted');
  });
});

describe('format --check', () => {
  it('says what would change, ends with 1, and writes nothing', () => {
    const at = folder({ 'a.plate': untidy, 'b.plate': tidy });
    const before = statSync(join(at, 'a.plate'));
    expect(platewright(['format', '--check', 'a.plate', 'b.plate'], { cwd: at })).toEqual({ code: 1, out: 'a.plate: would change\n', err: '' });
    expect(read(join(at, 'a.plate'))).toBe(untidy);
    expect(statSync(join(at, 'a.plate'))).toMatchObject({ ino: before.ino, mtimeMs: before.mtimeMs });
    expect(platewright(['format', '--check', 'b.plate'], { cwd: at }).code).toBe(0);
  });
});

describe('format -', () => {
  it('reads standard input and prints the text alone', () => {
    expect(platewright(['format', '-'], { input: untidy })).toEqual({ code: 0, out: tidy, err: '' });
    expect(platewright(['format', '-'], { input: '' })).toEqual({ code: 0, out: '', err: '' });
  });
  it('lists unreadable lines on standard error', () => {
    const { code, out, err } = platewright(['format', '-'], { input: 'mirror  M1 ((\n' });
    expect({ code, out }).toEqual({ code: 1, out: 'mirror  M1 ((\n' });
    expect(err).toMatch(/^platewright: standard input:1:\d+: error: /);
  });
  it('checks without printing', () => {
    expect(platewright(['format', '--check', '-'], { input: untidy })).toEqual({ code: 1, out: '', err: 'platewright: standard input: would change\n' });
    expect(platewright(['format', '--check', '-'], { input: tidy })).toEqual({ code: 0, out: '', err: '' });
  });
  it('refuses what is not text', () => {
    expect(platewright(['format', '-'], { input: Buffer.from([0xff, 0xc3, 0x28]) })).toEqual({ code: 3, out: '', err: 'platewright: standard input is not UTF-8 text; save it as UTF-8\n' });
  });
});

describe('what cannot be written', () => {
  it('stays as it is', () => {
    const at = folder({ 'shut/a.plate': untidy, 'open/a.plate': untidy });
    chmodSync(join(at, 'open/a.plate'), 0o444);
    for (const [name, reason] of [['shut/a.plate', 'permission is missing'], ['open/a.plate', 'permission is missing']] as const) {
      expect(platewright(['format', name], { cwd: at, ordinary: true })).toEqual({ code: 3, out: '', err: `platewright: ${name} cannot be written: ${reason}\n` });
      expect(read(join(at, name))).toBe(untidy);
    }
    expect(readdirSync(realpathSync(join(at, 'shut')))).toEqual(['a.plate']);
  });
});
