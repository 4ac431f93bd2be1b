// `platewright draw`: what it writes, where, and how it ends.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, matched, platewright } from './command.ts';

const placed = (name = 'Cockle'): string => `setup "${name}" {\n  table: 1200 x 900 mm\n  laser red at (60, 100) mm heading 0°\n  mirror M1 at (1000, 100) mm\n  beam stop B1 at (1000, 700) mm\n  beam raw from red\n    -> M1\n    -> B1\n}\n`;
const here = folder({ 'a.plate': placed(), 'two.plate': placed('Cockle') + placed('Whelk'), 'string.plate': matched(), 'lab.plate': 'inventory lab {\n}\n', 'broken.plate': placed().replace('}\n', '  what is this ((\n}\n') });
const run = (...args: string[]): ReturnType<typeof platewright> => platewright(['draw', ...args], { cwd: here });

describe('draw', () => {
  it('prints a picture', () => {
    const { code, out, err } = run('a.plate');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^<\?xml[^]*<svg [^]*M1[^]*<\/svg>\n$/);
  });
  it('writes it into a file, over one that is there', () => {
    for (const again of ['once', 'again']) expect(run('a.plate', '-o', 'plan.svg'), again).toEqual({ code: 0, out: 'plan.svg: drawn\n', err: '' });
    expect(readFileSync(join(here, 'plan.svg'), 'utf8')).toBe(run('a.plate').out);
  });
  it('overwrites no page that somebody wrote', () => {
    const { code, err } = run('a.plate', '-o', 'two.plate');
    expect(code).toBe(2);
    expect(err).toContain('choose another name');
    expect(readFileSync(join(here, 'two.plate'), 'utf8')).toBe(placed('Cockle') + placed('Whelk'));
  });
  it('of several setups asks which', () => {
    expect(run('two.plate')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('choose one with --setup: “Cockle”, “Whelk”') as string });
    expect(run('two.plate', '--setup', 'Whelk').out).toContain('>Whelk<');
    expect(run('two.plate', '--setup', 'Welk').err).toContain('Did you mean “Whelk”?');
  });
  it('says where there is nothing to draw', () => {
    expect(run('string.plate')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('Nothing in “Cockle” has a place') as string });
    expect(run('lab.plate')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('There is no setup in lab.plate') as string });
  });
  it('draws what can be understood, and ends with 1 where something is an error', () => {
    const { code, out } = run('broken.plate');
    expect(code).toBe(1);
    expect(out).toContain('</svg>');
  });
  it('says where it cannot write, and leaves nothing there', () => {
    const { code, err } = run('a.plate', '-o', 'nowhere/plan.svg');
    expect(code).toBe(3);
    expect(err).toContain('nowhere/plan.svg');
    expect(existsSync(join(here, 'nowhere'))).toBe(false);
  });
});
