// `platewright draw`: what it writes, where, and how it ends.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { VIEWS } from '../../server/drawing/views.ts';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const placed = (name = 'Cockle'): string => `setup "${name}" {\n  table: 1200 x 900 mm\n  laser red at (60, 100) mm heading 0°\n  mirror M1 at (1000, 100) mm\n  beam stop B1 at (1000, 700) mm\n  beam raw from red\n    -> M1\n    -> B1\n}\n`;
const here = folder({ 'a.plate': placed(), 'two.plate': placed('Cockle') + placed('Whelk'), 'string.plate': matched(), 'lab.plate': 'inventory lab {\n}\n', 'broken.plate': placed().replace('}\n', '  what is this ((\n}\n') });
const run = (...args: string[]): ReturnType<typeof inside> => inside(['draw', ...args], { cwd: here });

describe('draw', () => {
  it('prints a picture', async () => {
    const { code, out, err } = await run('a.plate');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^<\?xml[^]*<svg [^]*M1[^]*<\/svg>\n$/);
  });
  it('writes it into a file, over one that is there', async () => {
    for (const again of ['once', 'again']) expect(await run('a.plate', '-o', 'plan.svg'), again).toEqual({ code: 0, out: 'plan.svg: drawn\n', err: '' });
    expect(readFileSync(join(here, 'plan.svg'), 'utf8')).toBe((await run('a.plate')).out);
  });
  it('overwrites no page that somebody wrote', async () => {
    const { code, err } = await run('a.plate', '-o', 'two.plate');
    expect(code).toBe(2);
    expect(err).toContain('choose another name');
    expect(readFileSync(join(here, 'two.plate'), 'utf8')).toBe(placed('Cockle') + placed('Whelk'));
  });
  it('of several setups asks which', async () => {
    expect(await run('two.plate')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('choose one with --setup: “Cockle”, “Whelk”') as string });
    expect((await run('two.plate', '--setup', 'Whelk')).out).toContain('>Whelk<');
    expect((await run('two.plate', '--setup', 'Welk')).err).toContain('Did you mean “Whelk”?');
  });
  it('says where there is nothing to draw', async () => {
    expect(await run('string.plate')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('Nothing in “Cockle” has a place') as string });
    expect(await run('lab.plate')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('There is no setup in lab.plate') as string });
  });
  it('draws what can be understood, and ends with 1 where something is an error', async () => {
    const { code, out } = await run('broken.plate');
    expect(code).toBe(1);
    expect(out).toContain('</svg>');
  });
  it('says where it cannot write, and leaves nothing there', async () => {
    const { code, err } = await run('a.plate', '-o', 'nowhere/plan.svg');
    expect(code).toBe(3);
    expect(err).toContain('nowhere/plan.svg');
    expect(existsSync(join(here, 'nowhere'))).toBe(false);
  });
  describe('--view', () => {
    const whelk = (...args: string[]): ReturnType<typeof inside> => inside(['draw', 'examples/whelk-on-the-table.plate', ...args], { cwd: process.cwd() });
    it('draws what it names, in the words of its picture', async () => {
      const { code, err } = await whelk('--view', 'object');
      expect({ code, err }).toEqual({ code: 0, err: '' });
      for (const [view, words] of [['plan', '>M1<'], ['object', '>whelk as P1 sees it<'], ['pair', '>left eye<'], ['light', '>Light at P1<'], ['ratio', '>Beam ratio at P1<'], ['brightness', '>of what matched paths give']] as const) expect((await whelk('--view', view)).out, view).toContain(words);
    });
    it('lists all that there are in its help', async () => {
      const { out } = await run('--help');
      for (const { name } of VIEWS) expect(out.replace(/\s+/g, ' '), name).toMatch(new RegExp(`--view.*\\b${name}\\b.*--plate`));
    });
    it('of no view says which there are', async () => {
      expect(await run('a.plate', '--view', 'objct')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('Did you mean “object”?') as string });
      expect((await run('a.plate', '--view', 'zz')).err).toContain(`The views are ${VIEWS.map(v => v.name).join(', ')}.`);
    });
    it('says why there is none', async () => {
      expect(await run('a.plate', '--view', 'object')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('No light reaches a plate') as string });
      expect(await run('string.plate', '--view', 'light')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('How large P1 is, is not written') as string });
    });
    it('--plate and --from say of what, and from where', async () => {
      expect((await whelk('--view', 'object', '--from=-0.5,0')).out).toContain('50 % of the way to the left edge');
      expect(await whelk('--view', 'object', '--plate', 'P7')).toMatchObject({ code: 2, err: expect.stringContaining('Its plates: P1.') as string });
      expect(await whelk('--view', 'object', '--from', '3,0')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('two shares from -1 to 1') as string });
    });
  });
});

const made = async (name: string, ...more: string[]): Promise<Buffer> => {
  expect(await inside(['draw', 'a.plate', '-o', name, ...more], { cwd: here })).toEqual({ code: 0, out: `${name}: drawn\n`, err: '' });
  return readFileSync(join(here, name));
};

describe('a picture by the end of its name', () => {
  // PNG (W3C recommendation), 5.2 and 11.2.1: signature, then IHDR with width and height in 4 bytes each.
  const size = (png: Buffer): [number, number] => { expect(png.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n'); return [png.readUInt32BE(16), png.readUInt32BE(20)]; };
  it('.png is dots, in the proportions of the picture', async () => {
    const [, w, h] = /viewBox="\S+ \S+ (\S+) (\S+)"/.exec((await run('a.plate')).out)!.map(Number) as [number, number, number];
    const [across, down] = size(await made('plan.png'));
    expect(across).toBe(2400);
    expect(Math.abs(down - (2400 * h) / w)).toBeLessThanOrEqual(1);
  });
  it('.png of a table that is long and narrow has as many dots as fit, and none where they show nothing', async () => {
    const long = (y: number): string => `setup "Long" {\n  laser red at (0, 0) mm\n  mirror M1 at (0, ${y}) mm\n  mirror M2 at (10, 0) mm\n  beam raw from red\n    -> M1\n    -> M2\n}\n`;
    writeFileSync(join(here, 'long.plate'), long(6000));
    expect(await inside(['draw', 'long.plate', '-o', 'long.png'], { cwd: here })).toMatchObject({ code: 0 });
    const [across, down] = size(readFileSync(join(here, 'long.png')));
    expect(across * down).toBeLessThanOrEqual(36e6 + across);
    expect(down / across).toBeGreaterThan(10);
    for (const y of [9e7, 9e9]) {
      writeFileSync(join(here, 'long.plate'), long(y));
      expect(await inside(['draw', 'long.plate', '-o', 'none.png'], { cwd: here })).toMatchObject({ code: 3, out: '', err: expect.stringMatching(/^platewright: Long is \d+ times as long as it is wide, which dots do not show: name a \.svg or \.pdf file instead\n$/) as string });
    }
  });
  it('.png --dark is darker', async () => {
    // On a dark ground nearly all dots are alike and dark; a file of the same marks on white differs.
    expect((await made('dark.png', '--dark')).equals(await made('light.png'))).toBe(false);
    expect((await run('a.plate', '--dark')).out).toContain('fill="#16181a"');
  });
  // PDF 1.7 (ISO 32000-1), 7.5: header, trailer; 14.3.3: Title.
  it('.pdf is one page of A4 that carries the name of the setup', async () => {
    const pdf = (await made('plan.pdf')).toString('latin1');
    expect(pdf).toMatch(/^%PDF-1\.\d/);
    expect(pdf.trimEnd()).toMatch(/%%EOF$/);
    expect(pdf.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(1);
    expect(pdf).toContain('/MediaBox [0 0 841.89 595.28]');
    const [, title] = /\/Title (\d+) 0 R/.exec(pdf)!;
    expect(pdf).toContain(`\n${title!} 0 obj\n(Cockle)\n`);
  });
  it.each(['png', 'pdf'])('.%s is the same each time', async end => { expect((await made(`a.${end}`)).equals(await made(`b.${end}`))).toBe(true); });
  it('.svg, in capitals too', async () => { expect((await made('PLAN.SVG')).toString()).toContain('</svg>'); });
  it('of another end is not made', async () => {
    expect(await run('a.plate', '-o', 'plan.jpg')).toEqual({ code: 2, out: '', err: expect.stringContaining('Pictures are written as .svg, .png or .pdf, not as .jpg') as string });
    expect(existsSync(join(here, 'plan.jpg'))).toBe(false);
  });
});

describe('the finished hologram as it hangs', () => {
  const limpet = (...args: string[]): ReturnType<typeof inside> => inside([...args.slice(0, 1), 'examples/limpet-for-the-porch.plate', ...args.slice(1)], { cwd: process.cwd() });
  it('is drawn under the first lamp, or the one that is named', async () => {
    expect((await limpet('draw', '--view', 'hung')).out).toContain('1200 mm from the plate');
    // The bench beam spreads from 1000 mm.
    const { out } = await limpet('draw', '--view', 'hung', '--lamp', 'bench');
    expect(out).toContain('1000 mm from the plate');
    expect(out).not.toContain('1200 mm from the plate');
  });
  it('a lamp that is not there is told with those that are', async () => {
    expect(await limpet('draw', '--view', 'hung', '--lamp', 'spott')).toMatchObject({ code: 2, err: expect.stringContaining('Its lamps: spot, bench.') as string });
  });
  it('hang writes it where a file is named, and tells all lamps where none is', async () => {
    const to = join(here, 'hung.svg');
    expect((await limpet('hang', '-o', to, '--lamp', 'bench')).out).toContain('drawn');
    expect(readFileSync(to, 'utf8')).toContain('1000 mm from the plate');
    expect(await limpet('hang', '--lamp', 'bench')).toMatchObject({ code: 2 });
  });
});
