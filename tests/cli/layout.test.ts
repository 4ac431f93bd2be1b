// `platewright layout`: places for a setup without any, shown, and written into the file, the rest byte for byte as it was.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder } from './folder.ts';
import { inside } from './inside.ts';
import { bySchema } from './schema.ts';

const page = 'setup "Cockle" {\r\n  table: 1200 x 900 mm // the board\r\n  hole spacing: 25 mm\r\n  laser red {\r\n    wavelength: 632.8 nm\r\n    coherence length: 200 mm\r\n  }\r\n  splitter S1\r\n  mirror M1\r\n  mirror M2\r\n  object cockle // left half\r\n  plate P1\r\n  beam raw from red\r\n    -> S1\r\n  beam reference from S1 through\r\n    -> M1\r\n    -> P1\r\n  beam object from S1 reflected\r\n    -> M2\r\n    -> cockle\r\n    -> P1\r\n}\r\n';
interface Laid { setups: { name: string; table: number[]; holes: number; why: string | null; layouts: { words: string; places: { thing: string; place: string }[] }[] }[] }

describe('layout', () => {
  const at = folder({ 'a.plate': page, 'placed.plate': page.replace('mirror M1', 'mirror M1 at (500, 500) mm') });
  it('shows up to three and writes nothing', async () => {
    const { out, code } = await inside(['layout', 'a.plate'], { cwd: at });
    expect(code).toBe(0);
    expect(out).toMatch(/^Cockle, laid out on 1200 x 900 mm with holes every 25 mm/);
    expect(out).toMatch(/^1 mismatch /m);
    expect(out).toMatch(/P1 +at \(\d+, \d+\) mm facing cockle/);
    expect(readFileSync(join(at, 'a.plate'), 'utf8')).toBe(page);
  });
  it('as JSON, by the schema, and as Markdown', async () => {
    const { setups: [setup] } = bySchema((await inside(['layout', 'a.plate', '--format', 'json'], { cwd: at })).out) as Laid;
    expect(setup).toMatchObject({ name: 'Cockle', table: [1200, 900], holes: 25, why: null });
    expect(setup!.layouts[0]!.places.map(p => p.thing).sort()).toEqual(['M1', 'M2', 'P1', 'S1', 'cockle', 'red']);
    expect((await inside(['layout', 'a.plate', '--format', 'markdown'], { cwd: at })).out).toMatch(/^# Cockle[^]*\| P1 \| `at \(\d+, \d+\) mm facing cockle` \|/);
  });
  it('writes one in, and nothing else changes', async () => {
    const own = folder({ 'a.plate': page });
    const { setups: [setup] } = bySchema((await inside(['layout', 'a.plate', '--format', 'json'], { cwd: own })).out) as Laid;
    const { code, err } = await inside(['layout', 'a.plate', '--write'], { cwd: own });
    expect([code, err]).toEqual([0, 'platewright: a.plate: places of 6 things written\n']);
    let expected = page;
    for (const { thing, place } of setup!.layouts[0]!.places) expected = expected.replace(new RegExp(`^( {2}(?:laser|splitter|mirror|object|plate) ${thing})`, 'm'), `$1 ${place}`);
    expect(readFileSync(join(own, 'a.plate'), 'utf8')).toBe(expected);
    expect((await inside(['check', '--strict', 'a.plate'], { cwd: own })).code).toBe(0);
  });
  it('says why there is none, and ends with 1; a choice that there is not is a mistake', async () => {
    expect(await inside(['layout', 'placed.plate'], { cwd: at })).toMatchObject({ code: 1, out: expect.stringContaining('M1 has a place already') as string });
    expect(await inside(['layout', 'a.plate', '--write', '--choice', '9'], { cwd: at })).toMatchObject({ code: 2 });
    expect(readFileSync(join(at, 'a.plate'), 'utf8')).toBe(page);
  });
});
