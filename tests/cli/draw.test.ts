// `platewright draw`: what it writes, where, and how it ends.
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { VIEWS } from '../../server/drawing/views.ts';
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
  describe('--view', () => {
    const whelk = (...args: string[]): ReturnType<typeof platewright> => platewright(['draw', 'examples/whelk-on-the-table.plate', ...args], { cwd: process.cwd() });
    it('draws what it names, in the words of its picture', () => {
      const { code, err } = whelk('--view', 'object');
      expect({ code, err }).toEqual({ code: 0, err: '' });
      for (const [view, words] of [['plan', '>M1<'], ['object', '>whelk as P1 sees it<'], ['pair', '>left eye<'], ['light', '>Light at P1<'], ['ratio', '>Beam ratio at P1<'], ['brightness', '>of what matched paths give']] as const) expect(whelk('--view', view).out, view).toContain(words);
    });
    it('lists all that there are in its help', () => {
      const { out } = run('--help');
      for (const { name } of VIEWS) expect(out.replace(/\s+/g, ' '), name).toMatch(new RegExp(`--view.*\\b${name}\\b.*--plate`));
    });
    it('of no view says which there are', () => {
      expect(run('a.plate', '--view', 'objct')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('Did you mean “object”?') as string });
      expect(run('a.plate', '--view', 'zz').err).toContain(`The views are ${VIEWS.map(v => v.name).join(', ')}.`);
    });
    it('says why there is none', () => {
      expect(run('a.plate', '--view', 'object')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('No light reaches a plate') as string });
      expect(run('string.plate', '--view', 'light')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('How large P1 is, is not written') as string });
    });
    it('--plate and --from say of what, and from where', () => {
      expect(whelk('--view', 'object', '--from=-0.5,0').out).toContain('50 % of the way to the left edge');
      expect(whelk('--view', 'object', '--plate', 'P7')).toMatchObject({ code: 2, err: expect.stringContaining('Its plates: P1.') as string });
      expect(whelk('--view', 'object', '--from', '3,0')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('two shares from -1 to 1') as string });
    });
  });
});

/** Where the packages are that the command finds beside it when it is installed. */
const beside = { NODE_PATH: resolve('node_modules') };
const made = (name: string, ...more: string[]): Buffer => {
  expect(platewright(['draw', 'a.plate', '-o', name, ...more], { cwd: here, env: beside })).toEqual({ code: 0, out: `${name}: drawn\n`, err: '' });
  return readFileSync(join(here, name));
};

describe('a picture by the end of its name', () => {
  // PNG (W3C recommendation), 5.2 and 11.2.1: signature, then IHDR with width and height in 4 bytes each.
  const size = (png: Buffer): [number, number] => { expect(png.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n'); return [png.readUInt32BE(16), png.readUInt32BE(20)]; };
  it('.png is dots, in the proportions of the picture', () => {
    const [, w, h] = /viewBox="\S+ \S+ (\S+) (\S+)"/.exec(run('a.plate').out)!.map(Number) as [number, number, number];
    const [across, down] = size(made('plan.png'));
    expect(across).toBe(2400);
    expect(Math.abs(down - (2400 * h) / w)).toBeLessThanOrEqual(1);
  });
  it('.png --dark is darker', () => {
    // On a dark ground nearly all dots are alike and dark; a file of the same marks on white differs.
    expect(made('dark.png', '--dark').equals(made('light.png'))).toBe(false);
    expect(run('a.plate', '--dark').out).toContain('fill="#16181a"');
  });
  // PDF 1.7 (ISO 32000-1), 7.5: header, trailer; 14.3.3: Title.
  it('.pdf is one page of A4 that carries the name of the setup', () => {
    const pdf = made('plan.pdf').toString('latin1');
    expect(pdf).toMatch(/^%PDF-1\.\d/);
    expect(pdf.trimEnd()).toMatch(/%%EOF$/);
    expect(pdf.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(1);
    expect(pdf).toContain('/MediaBox [0 0 841.89 595.28]');
    const [, title] = /\/Title (\d+) 0 R/.exec(pdf)!;
    expect(pdf).toContain(`\n${title!} 0 obj\n(Cockle)\n`);
  });
  it.each(['png', 'pdf'])('.%s is the same each time', end => { expect(made(`a.${end}`).equals(made(`b.${end}`))).toBe(true); });
  it('.svg, in capitals too', () => { expect(made('PLAN.SVG').toString()).toContain('</svg>'); });
  it('of another end is not made', () => {
    expect(run('a.plate', '-o', 'plan.jpg')).toEqual({ code: 2, out: '', err: expect.stringContaining('Pictures are written as .svg, .png or .pdf, not as .jpg') as string });
    expect(existsSync(join(here, 'plan.jpg'))).toBe(false);
  });
  it('says what it needs where that is missing', () => {
    const { code, err } = platewright(['draw', 'a.plate', '-o', 'none.png'], { cwd: here, env: { NODE_PATH: '' } });
    expect(code).toBe(3);
    expect(err).toContain('install it with npm, or write an .svg');
    expect(existsSync(join(here, 'none.png'))).toBe(false);
  });
});
