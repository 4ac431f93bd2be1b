// `platewright card`: what it writes, where, and how it ends.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const here = folder({ 'a.plate': matched(), 'two.plate': matched('', 'Cockle') + matched('', 'Whelk'), 'lab.plate': 'inventory lab {\n}\n', 'broken.plate': matched('  what is this ((\n'), 'variant.plate': matched('  variant "longer" {\n    raw.1: 400 mm\n  }\n') });
const run = (...args: string[]): ReturnType<typeof inside> => inside(['card', ...args], { cwd: here });
const read = (name: string): Buffer => readFileSync(join(here, name));

describe('card', () => {
  it('prints a page of HTML', async () => {
    const { code, out, err } = await run('a.plate');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^<!doctype html>[^]*<h1>Cockle<\/h1>[^]*<\/html>\n$/);
  });
  it('writes it into a file, over one that is there', async () => {
    for (const again of ['once', 'again']) expect(await run('a.plate', '-o', 'card.html'), again).toEqual({ code: 0, out: 'card.html: written\n', err: '' });
    expect(read('card.html').toString()).toBe((await run('a.plate')).out);
  });
  it('overwrites no page that somebody wrote, and writes no other kind of file', async () => {
    expect(await run('a.plate', '-o', 'two.plate')).toMatchObject({ code: 2, err: expect.stringContaining('.html or .pdf, not as .plate') as string });
    expect(read('two.plate').toString()).toContain('setup "Whelk"');
    expect(await run('a.plate', '-o', 'card.png')).toMatchObject({ code: 2, out: '', err: expect.stringContaining('Cards are written as .html or .pdf, not as .png') as string });
    expect(existsSync(join(here, 'card.png'))).toBe(false);
  });
  it('of several setups writes a card each, or the one that is asked for', async () => {
    expect((await run('two.plate')).out.match(/<h1>.*<\/h1>/g)).toEqual(['<h1>Cockle</h1>', '<h1>Whelk</h1>']);
    expect((await run('two.plate', '--setup', 'Whelk')).out.match(/<h1>.*<\/h1>/g)).toEqual(['<h1>Whelk</h1>']);
    expect(await run('two.plate', '--setup', 'Welk')).toMatchObject({ code: 2, err: expect.stringContaining('Did you mean “Whelk”?') as string });
  });
  it('of a variant as that makes it', async () => {
    const { out } = await run('variant.plate', '--variant', 'longer');
    expect(out).toContain('<h1>Cockle, variant “longer”</h1>');
    expect(out).toContain('<td>400\u00a0mm</td>');
  });
  it('says where there is nothing to write', async () => { expect(await run('lab.plate')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('There is no setup in lab.plate') as string }); });
  it('writes what can be understood, and ends with 1 where something is an error', async () => {
    const { code, out } = await run('broken.plate');
    expect(code).toBe(1);
    expect(out).toContain('<h2>Not settled yet</h2>');
  });
  it('--paper', async () => {
    expect((await run('a.plate')).out).toContain('size: A4;');
    expect((await run('a.plate', '--paper', 'letter')).out).toContain('size: letter;');
    expect(await run('a.plate', '--paper', 'a5')).toMatchObject({ code: 2, out: '' });
  });
  it('says where it cannot write, and leaves nothing there', async () => { expect(await run('a.plate', '-o', 'nowhere/card.html')).toMatchObject({ code: 3, err: expect.stringContaining('nowhere/card.html') as string }); });
});

describe('a card as .pdf', () => {
  const pdf = async (name: string, ...args: string[]): Promise<string> => {
    expect(await run(...args, '-o', name)).toEqual({ code: 0, out: `${name}: written\n`, err: '' });
    return read(name).toString('latin1');
  };
  // PDF 1.7 (ISO 32000-1), 7.5: header, trailer; 7.7.3: pages and their size, in points of 1/72 inch.
  const pages = (text: string): number => text.match(/\/Type \/Page\b(?!s)/g)!.length;
  const sizes = (text: string): string[] => [...new Set(text.match(/\/MediaBox \[[^\]]*\]/g))];
  it('is of whole pages, with the name of the setup', async () => {
    const text = await pdf('a.pdf', 'a.plate');
    expect(text).toMatch(/^%PDF-1\.\d[^]*%%EOF\s*$/);
    expect(pages(text)).toBe(2);
    expect(text).toContain('(Cockle)');
  });
  // 210 × 297 mm and 8 1/2 × 11 inches
  it.each([['a4', 595.28, 841.89], ['letter', 612, 792]])('of %s', async (paper, w, h) => {
    const [box, ...more] = sizes(await pdf(`${paper}.pdf`, 'a.plate', '--paper', paper));
    expect(more).toEqual([]);
    const [, , width, height] = /\[(\S+) (\S+) (\S+) (\S+)\]/.exec(box!)!.slice(1).map(Number);
    expect(width).toBeCloseTo(w, 1);
    expect(height).toBeCloseTo(h, 1);
  });
  it('of several setups begins each on a page of its own', async () => { expect(pages(await pdf('two.pdf', 'two.plate'))).toBe(2 * pages(await pdf('one.pdf', 'two.plate', '--setup', 'Whelk'))); });
  it('is the same each time', async () => { expect(await pdf('x.pdf', 'a.plate')).toBe(await pdf('y.pdf', 'a.plate')); });
  it('of a very long setup goes on over as many pages as it needs', async () => {
    const legs = Array.from({ length: 150 }, (_, i) => `    -> M${i}: 100 mm\n`).join('');
    const things = Array.from({ length: 150 }, (_, i) => `  mirror M${i}\n`).join('');
    const long = folder({ 'long.plate': matched().replace('  splitter S1\n', `${things}  splitter S1\n`).replace('    -> S1: 350 mm\n', `${legs}    -> S1: 350 mm\n`) });
    expect((await inside(['card', 'long.plate', '-o', 'long.pdf'], { cwd: long })).code).toBe(0);
    // 150 rows of 5 mm and more do not go on four pages of 297 mm with their margins; and no page is left white.
    expect(pages(readFileSync(join(long, 'long.pdf')).toString('latin1'))).toBeGreaterThan(4);
  });
});

it('the card of the placed whelk, as it is pinned', async () => {
  await expect((await inside(['card', 'examples/whelk-on-the-table.plate'], { cwd: process.cwd() })).out).toMatchFileSnapshot('./card-whelk-on-the-table.html');
});
