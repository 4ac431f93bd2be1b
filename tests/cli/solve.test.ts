// `platewright solve`: what is written ? is found and written in, the rest of the file byte for byte as it was.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder } from './folder.ts';
import { inside } from './inside.ts';
import { bySchema } from './schema.ts';

/** The object's legs add up to 1094 mm without the one that is open, the reference to 1471 mm. */
const page = (leg: string, ...lines: string[]): string => `// Bench notes, kept as they are   \r\nsetup "Whelk shell" {\r\n  laser red {\r\n    coherence length: 200 mm\r\n  }\r\n  splitter S1\r\n  mirror M2\r\n  object whelk\r\n  plate P1\r\n  beam raw from red\r\n    -> S1: 350 mm\r\n  beam reference from S1 through\r\n    -> P1: 1471 mm\r\n  beam object from S1 reflected\r\n    -> M2: 794 mm\r\n    -> whelk: ${leg} // by string\r\n    -> P1: 300 mm\r\n${lines.map(l => `  ${l}\r\n`).join('')}}\r\n`;

interface Solved { setups: { says: string | null; asked: { name: string }[]; choices: { values: { name: string; value: number; unit: string }[]; goals: { text: string; missedBy: number | null }[] }[]; nearest: { goals: { missedBy: number | null }[] } | null; tried: number; ended: boolean }[] }

describe('solve', () => {
  it('shows what it finds and writes nothing', async () => {
    const at = folder({ 'a.plate': page('? mm', 'aim mismatch: 0 mm') });
    const { out, code } = await inside(['solve', 'a.plate'], { cwd: at });
    expect(code).toBe(0);
    expect(out).toMatch(/leg M2 → whelk {3}377 mm/);
    expect(readFileSync(join(at, 'a.plate'), 'utf8')).toContain('-> whelk: ? mm // by string');
  });
  it('writes it in, and nothing else changes', async () => {
    const before = page('? mm from 300 mm to 400 mm', 'aim mismatch: 0 mm');
    const at = folder({ 'a.plate': `\ufeff${before}` });
    const { err, code } = await inside(['solve', 'a.plate', '--write'], { cwd: at });
    expect([code, err]).toEqual([0, 'platewright: a.plate: one value written\n']);
    expect(readFileSync(join(at, 'a.plate'), 'utf8')).toBe(`\ufeff${before.replace('? mm from 300 mm to 400 mm', '377 mm')}`);
  });
  it('says what cannot be met, writes nothing, and ends with 1', async () => {
    const before = page('? mm from 100 mm to 200 mm', 'aim mismatch: 0 mm');
    const at = folder({ 'a.plate': before });
    const { out, code } = await inside(['solve', 'a.plate', '--write'], { cwd: at });
    expect(code).toBe(1);
    // 377 − 200
    expect(out).toMatch(/missed by 177 mm|missed by 180 mm/);
    expect(readFileSync(join(at, 'a.plate'), 'utf8')).toBe(before);
  });
  it('tells in JSON, by the schema, what was asked and found', async () => {
    const at = folder({ 'a.plate': page('? mm', 'aim mismatch: 0 mm'), 'b.plate': page('? mm', 'aim mismatch: 0 mm', 'aim object length: 1600 mm'), 'c.plate': page('377 mm') });
    const of = async (file: string): Promise<Solved['setups'][number]> => (bySchema((await inside(['solve', file, '--format', 'json'], { cwd: at })).out) as Solved).setups[0]!;
    const a = await of('a.plate');
    expect(a.asked.map(x => x.name)).toEqual(['object.2.length']);
    expect(a.choices[0]!.values).toMatchObject([{ name: 'object.2.length', value: 0.377, unit: 'm' }]);
    const b = await of('b.plate');
    expect(b.choices).toEqual([]);
    // Both are missed by half of what lies between them: (1600 − 1471) / 2 mm.
    for (const g of b.nearest!.goals) expect(Math.abs(g.missedBy!)).toBeCloseTo(0.0645, 3);
    expect((await of('c.plate')).says).toMatch(/^Nothing is written “\?”/);
  });
  it('has words for wrong usage', async () => {
    const at = folder({ 'a.plate': page('? mm', 'aim mismatch: 0 mm'), 'empty.plate': '' });
    expect(await inside(['solve', 'a.plate', '--write', '--choice', '2'], { cwd: at })).toMatchObject({ code: 2, err: expect.stringContaining('has one answer only') as string });
    expect((await inside(['solve', 'a.plate', '--choice', 'best'], { cwd: at })).code).toBe(2);
    expect(await inside(['solve', 'empty.plate'], { cwd: at })).toMatchObject({ code: 3, err: expect.stringContaining('There is no setup') as string });
    expect(await inside(['solve', 'a.plate', '--setup', 'Welk shell'], { cwd: at })).toMatchObject({ code: 2, err: expect.stringContaining('Did you mean “Whelk shell”?') as string });
  });
  it('a share that nobody metered is written with a word about it', async () => {
    const at = folder({ 'a.plate': readFileSync('examples/whelk-on-the-table.plate', 'utf8').split('\n').filter(l => !/^\s*measured/.test(l)).join('\n'), 'saltmarsh-lab.plate': readFileSync('examples/saltmarsh-lab.plate', 'utf8') });
    const { err, code } = await inside(['solve', 'a.plate', '--write'], { cwd: at });
    expect(code).toBe(0);
    expect(err).toContain('S1.reflects is a guess until the light is metered');
    expect(readFileSync(join(at, 'a.plate'), 'utf8')).toMatch(/reflects: \d[\d.]*%/);
  });
  it('answers a variant in its own lines', async () => {
    const at = folder({ 'a.plate': page('377 mm', 'aim mismatch: 0 mm', 'variant "near" {', '  object.3: ? mm', '}') });
    const { code } = await inside(['solve', 'a.plate', '--variant', 'near', '--write'], { cwd: at });
    expect(code).toBe(0);
    expect(readFileSync(join(at, 'a.plate'), 'utf8')).toContain('  object.3: 300 mm\r\n');
  });
});
