// What only a process of its own shows: the code that it ends with, its standard input, another user, packages beside it.
import { chmodSync, existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { changed, platewright } from './command.ts';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';
import { made } from './git/made.ts';

const untidy = 'setup   "Razor"{\nmirror   M1\n      beam raw from red\n->M1:350mm\n}\n\n\n';
const tidy = 'setup "Razor" {\n  mirror M1\n  beam raw from red\n    -> M1: 350 mm\n}\n';
const asked = (more = ''): string => matched(`  aim mismatch: 0 mm\n${more}`).replace('1171 mm', '? mm');
const hung = (distance: string): string => `setup "Limpet" {\n  hologram: reflection\n  laser red {\n    wavelength: 632.8 nm\n  }\n  plate P1 {\n    image behind: 80 mm\n  }\n  lamp spot {\n    distance: ${distance}\n    angle: 45°\n  }\n  viewer visitor {\n    distance: 500 mm\n  }\n}\n`;
const bare = matched().replaceAll(/(->.*): \d+ mm\n/g, '$1\n').replace('setup "Cockle" {', 'setup "Cockle" {\n  table: 1200 x 900 mm').replace('  splitter S1\n', '  splitter S1\n  mirror M1\n  mirror M2\n').replace('    -> P1', '    -> M1\n    -> P1').replace('    -> cockle', '    -> M2\n    -> cockle');
const placed = 'setup "Cockle" {\n  table: 1200 x 900 mm\n  laser red at (60, 100) mm heading 0°\n  mirror M1 at (1000, 100) mm\n  beam raw from red\n    -> M1\n}\n';
const here = made({
  'fine.plate': matched(), 'long.plate': matched().replace('1171 mm', '1221 mm'), 'unmet.plate': matched('  expect mismatch > 20 mm\n'), 'asked.plate': asked(), 'never.plate': asked().replace('? mm', '? mm from 100 mm to 200 mm'),
  'hung.plate': hung('1.5 m'), 'near.plate': hung('70 mm'), 'bare.plate': bare, 'placed.plate': placed, 'torn.plate': placed.replace(/\}\n$/, '  what is this ((\n}\n'), 'untidy.plate': untidy, 'empty.plate': '',
});
here.commit('one');

/** Each command with arguments for each way in which it can end: 0, 1, 2 and 3. */
const RANGE = 'object.1.length from 1161 mm to 1181 mm by 10 mm';
const ENDS: readonly (readonly [string, Readonly<Partial<Record<0 | 1 | 2 | 3, readonly string[]>>>])[] = [
  ['check', { 0: ['fine.plate'], 1: ['unmet.plate'], 2: ['--format', 'yaml', 'fine.plate'], 3: ['none.plate'] }],
  ['report', { 0: ['fine.plate'], 1: ['unmet.plate'], 2: ['fine.plate', '--setup', 'Cokle'], 3: ['none.plate'] }],
  ['explain', { 0: ['arms-mismatched'], 2: ['arms-mismached'], 3: ['fine.plate', 'coverage'] }],
  ['why', { 0: ['fine.plate'], 2: ['fine.plate', 'purple elephants'], 3: ['none.plate'] }],
  ['solve', { 0: ['asked.plate'], 1: ['never.plate'], 2: ['asked.plate', '--choice', 'best'], 3: ['empty.plate'] }],
  ['hang', { 0: ['hung.plate'], 1: ['near.plate'], 2: ['hung.plate', '--setup', 'Limpit'], 3: ['empty.plate'] }],
  ['sweep', { 0: ['fine.plate', '--over', RANGE], 2: ['fine.plate'], 3: ['none.plate', '--over', RANGE] }],
  ['layout', { 0: ['bare.plate'], 1: ['placed.plate'], 2: ['bare.plate', '--choice', '0'], 3: ['none.plate'] }],
  ['draw', { 0: ['placed.plate'], 1: ['torn.plate'], 2: ['placed.plate', '--view', 'objct'], 3: ['empty.plate'] }],
  ['card', { 0: ['fine.plate'], 1: ['torn.plate'], 2: ['fine.plate', '--paper', 'a5'], 3: ['empty.plate'] }],
  ['diff', { 0: ['--git', 'HEAD', 'fine.plate'], 1: ['fine.plate', 'long.plate'], 2: ['fine.plate'], 3: ['fine.plate', 'none.plate'] }],
  ['log', { 0: ['fine.plate'], 2: ['fine.plate', '--max', '0'], 3: ['none.plate'] }],
  ['learn', { 0: ['fine.plate'], 2: [], 3: ['none.plate'] }],
  ['history', { 0: ['fine.plate'], 2: ['fine.plate', '--dark'], 3: ['none.plate'] }],
  ['format', { 0: ['--check', 'empty.plate'], 1: ['--check', 'untidy.plate'], 2: ['-', 'fine.plate'], 3: ['none.plate'] }],
  ['lsp', { 2: [] }],
];

it.each(ENDS)('%s ends with each of its codes, and prints what it says', async (name, ends) => {
  for (const [code, more] of Object.entries(ends)) {
    const args = [name, ...more];
    const ended = platewright(args, { cwd: here.at });
    expect(ended.code, args.join(' ')).toBe(Number(code));
    // Wrong usage, and what cannot be read, is said where nobody takes it for output.
    expect(ended.err === '', args.join(' ')).toBe(code < '2');
    expect(ended, args.join(' ')).toEqual(await inside(args, { cwd: here.at }));
  }
});

it('--help and no command at all', () => {
  expect(platewright(['--help'])).toMatchObject({ code: 0, out: expect.stringMatching(/^Usage: platewright/) as string, err: '' });
  expect(platewright([])).toMatchObject({ code: 2, out: '', err: expect.stringMatching(/^Usage: platewright/) as string });
});

it('a failure inside the program is one line that asks for a report', async () => {
  const failing = await changed(/server[/\\]analysis\.ts$/, 'export const MAX_FILES = 1; export const alone = {}; export const filesOf = () => []; export const analyse = () => { throw new Error("the wick is wet") }');
  const { code, out, err } = platewright(['check', 'fine.plate'], { cwd: here.at, cli: failing });
  expect({ code, out }).toEqual({ code: 3, out: '' });
  expect(err).toBe('platewright: something went wrong inside the program (the wick is wet). Please report this, with the file that caused it.\n');
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

describe('as a user who may not', () => {
  it('read a file', () => {
    const shut = folder({ 'shut.plate': matched() });
    chmodSync(join(shut, 'shut.plate'), 0);
    const { code, err } = platewright(['check', 'shut.plate'], { cwd: shut, ordinary: true });
    expect({ code, err }).toEqual({ code: 3, err: 'platewright: shut.plate cannot be read: permission is missing\n' });
  });
  it('write a file: it stays as it is', () => {
    const at = folder({ 'shut/a.plate': untidy, 'open/a.plate': untidy });
    chmodSync(join(at, 'open/a.plate'), 0o444);
    for (const [name, reason] of [['shut/a.plate', 'permission is missing'], ['open/a.plate', 'permission is missing']] as const) {
      expect(platewright(['format', name], { cwd: at, ordinary: true })).toEqual({ code: 3, out: '', err: `platewright: ${name} cannot be written: ${reason}\n` });
      expect(readFileSync(join(at, name), 'utf8')).toBe(untidy);
    }
    expect(readdirSync(realpathSync(join(at, 'shut')))).toEqual(['a.plate']);
  });
});

describe('packages for pictures and pages', () => {
  const of = (command: string, name: string, NODE_PATH: string): ReturnType<typeof platewright> => platewright([command, 'placed.plate', '-o', name], { cwd: here.at, env: { NODE_PATH } });
  // As they lie beside the command where it is installed.
  it.each([['draw', 'plan.png', 'drawn', '\x89PNG\r\n\x1a\n'], ['draw', 'plan.pdf', 'drawn', '%PDF-1.'], ['card', 'card.pdf', 'written', '%PDF-1.']])('%s finds them for %s, and makes of them what the next process makes', async (command, name, done, begins) => {
    expect(of(command, name, resolve('node_modules'))).toEqual({ code: 0, out: `${name}: ${done}\n`, err: '' });
    const made = readFileSync(here.path(name));
    expect(made.subarray(0, begins.length).toString('latin1')).toBe(begins);
    await inside([command, 'placed.plate', '-o', name], { cwd: here.at });
    expect(readFileSync(here.path(name)).equals(made)).toBe(true);
  });
  it.each([['draw', 'none.png', '.svg'], ['card', 'none.pdf', '.html']])('%s says so where there are none for %s', (command, name, instead) => {
    const { code, err } = of(command, name, '');
    expect(code).toBe(3);
    expect(err).toContain(`install it with npm, or write an ${instead}`);
    expect(existsSync(here.path(name))).toBe(false);
  });
});
