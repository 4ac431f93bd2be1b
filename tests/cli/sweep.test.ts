// `platewright sweep`: results while a number of a page takes other values. What comes out is held against arithmetic.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { folder } from './folder.ts';
import { inside, type Ended } from './inside.ts';
import { bySchema } from './schema.ts';

/** The object's legs add up to 1094 mm without the one from M2, the reference to 1471 mm: the mismatch is x − 377 mm. */
const page = (...lines: string[]): string => `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
    power: 10 mW
  }
  splitter S1 {
    reflects: 30%
    loss: 0%
  }
  mirror M2 {
    loss: 0%
  }
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> M2: 794 mm
    -> whelk: 377 mm
    -> P1: 300 mm
${lines.map(l => `  ${l}\n`).join('')}}
`;

interface Swept {
  over: { name: string; unit: string };
  second: { name: string } | null;
  at: number[];
  results: { name: string; unit: string | null }[];
  curves: { variant: string | null; second: number | null; rows: { value: number | null; band: { low: number; high: number } | null; missing: string | null }[][]; findings: { code: string; subject: string; stretches: { from: number; to: number }[] }[] }[];
}

const sweep = (text: string, ...args: string[]): Promise<Ended> => inside(['sweep', 'a.plate', ...args], { cwd: folder({ 'a.plate': text }) });
/** The same without a process of its own. */
const here = (text: string, ...args: string[]): Promise<Ended> => inside(['sweep', join(folder({ 'a.plate': text }), 'a.plate'), ...args]);
async function swept(text: string, ...args: string[]): Promise<Swept> {
  const { out, err, code } = await here(text, ...args, '--format', 'json');
  expect([code, err]).toEqual([0, '']);
  return bySchema(out) as Swept;
}
const column = (s: Swept, i = 0, curve = 0): (number | null)[] => s.curves[curve]!.rows.map(r => r[i]!.value);
const near = (a: readonly (number | null)[], b: readonly number[]): void => { expect(a.length).toBe(b.length); b.forEach((v, i) => { expect(a[i]).toBeCloseTo(v, 9); }); };

describe('what comes out', () => {
  test('a path grows with its leg', async () => {
    const s = await swept(page(), '--over', 'object.2.length from 357 mm to 397 mm by 10 mm', '--show', 'mismatch, object length');
    expect(s.at).toEqual([0.357, 0.367, 0.377, 0.387, 0.397]);
    near(column(s), [-0.02, -0.01, 0, 0.01, 0.02]);
    // 794 + x + 300 mm
    near(column(s, 1), [1.451, 1.461, 1.471, 1.481, 1.491]);
  });
  test('a splitter shares its light: r of it one way, 1 − r the other', async () => {
    const s = await swept(page(), '--over', 'S1.reflects from 10 to 90% by 20%', '--show', 'P1.reference.power, P1.object.power');
    near(column(s), [0.9, 0.7, 0.5, 0.3, 0.1].map(t => t * 0.01));
    near(column(s, 1), [0.1, 0.3, 0.5, 0.7, 0.9].map(r => r * 0.01));
  });
  test('the beam ratio goes with (1 − r)/r, whatever the object throws back', async () => {
    const at = folder({ 'a.plate': readFileSync('examples/whelk-on-the-table.plate', 'utf8'), 'saltmarsh-lab.plate': readFileSync('examples/saltmarsh-lab.plate', 'utf8') });
    const s = bySchema((await inside(['sweep', 'a.plate', '--over', 'S1.reflects from 80% to 98% by 9%', '--show', 'beam ratio', '--format', 'json'], { cwd: at })).out) as Swept;
    const [a, b, c] = column(s) as [number, number, number];
    // 0.2/0.8 = 0.25; 0.11/0.89; 0.02/0.98
    expect(a / b).toBeCloseTo(0.25 / (0.11 / 0.89), 6);
    expect(a / c).toBeCloseTo(0.25 / (0.02 / 0.98), 6);
  });
  test('the band goes along', async () => {
    const s = await swept(page().replace('377 mm', '377 mm ± 3 mm'), '--over', 'object.2.length from 367 mm to 387 mm by 10 mm', '--show', 'mismatch');
    // Anywhere within ± 3 mm: standard uncertainty 3/√3 mm, and twice that either way.
    for (const [i, [p]] of s.curves[0]!.rows.entries()) {
      expect(p!.band!.low).toBeCloseTo(-0.01 + i * 0.01 - 0.006 / Math.sqrt(3), 9);
      expect(p!.band!.high).toBeCloseTo(-0.01 + i * 0.01 + 0.006 / Math.sqrt(3), 9);
    }
  });
  test('a second number is a curve for each of its values', async () => {
    const s = await swept(page(), '--over', 'object.2.length from 367 mm to 387 mm by 10 mm', '--over', 'reference.1.length from 1461 mm to 1471 mm by 10 mm', '--show', 'mismatch');
    expect(s.curves.map(c => c.second)).toEqual([1.461, 1.471]);
    near(column(s, 0, 0), [0, 0.01, 0.02]);
    near(column(s, 0, 1), [-0.01, 0, 0.01]);
  });
  test('variants stand side by side', async () => {
    const text = page('variant "near" {', '  object.3: 250 mm', '}', 'variant "short" {', '  object.2: 300 mm', '}');
    const s = await swept(text, '--over', 'object.2.length from 377 mm to 387 mm by 10 mm', '--show', 'mismatch', '--variants');
    expect(s.curves.map(c => c.variant)).toEqual([null, 'near', 'short']);
    near(column(s, 0, 0), [0, 0.01]);
    near(column(s, 0, 1), [-0.05, -0.04]);
    // What it changes is what is tried.
    near(column(s, 0, 2), [0, 0.01]);
    expect((await swept(text, '--over', 'reference.1.length from 1471 mm to 1481 mm by 10 mm', '--show', 'mismatch', '--variant', 'near')).curves.map(c => c.variant)).toEqual(['near']);
  });
  test('a number that is written ? is tried as any other', async () => {
    near(column(await swept(page().replace('377 mm', '? mm'), '--over', 'object.2.length from 377 mm to 387 mm by 10 mm', '--show', 'mismatch')), [0, 0.01]);
  });
  test('a let is tried, and where it makes no number, that is said', async () => {
    // 30000 mm² / gap
    const text = page('let gap = 50 mm').replace('-> P1: 300 mm', '-> P1: (300 mm * 100 mm / gap)');
    const s = await swept(text, '--over', 'gap from 0 mm to 100 mm by 50 mm', '--show', 'object length');
    near(column(s).slice(1), [0.794 + 0.377 + 0.6, 0.794 + 0.377 + 0.3]);
    expect(s.curves[0]!.rows[0]![0]).toMatchObject({ value: null, band: null });
    expect((await sweep(text, '--over', 'gap from 0 mm to 100 mm by 50 mm', '--show', 'object length')).out).toMatch(/at 0 mm: object length is unknown: /);
  });
  test('a leg that was read is moved, and what the reading adds stays; a reading itself counts for what it says', async () => {
    const text = page('measured S1 -> P1: 1473 mm ± 2 mm by string');
    // 1473 − 1471 = 2 mm more than planned
    near(column(await swept(text, '--over', 'reference.1.length from 1471 mm to 1481 mm by 10 mm', '--show', 'reference length')), [1.473, 1.483]);
    near(column(await swept(text, '--over', 'reference.1.length.reading from 1473 mm to 1483 mm by 10 mm', '--show', 'reference length')), [1.473, 1.483]);
  });
  test('what holds on one curve throughout, and not on all, is told', async () => {
    const s = await swept(page('expect mismatch < 10 mm', 'variant "near" {', '  object.3: 250 mm', '}'), '--over', 'object.2.length from 377 mm to 381 mm by 2 mm', '--show', 'mismatch', '--variants');
    // 0 to 4 mm; −50 to −46 mm
    expect(s.curves.map(c => c.findings.filter(f => f.code === 'expectation-failed').map(f => f.stretches))).toEqual([[], [[{ from: 0, to: 2 }]]]);
  });
  test('where a finding begins and ends is told', async () => {
    const s = await swept(page('expect mismatch < 10 mm'), '--over', 'object.2.length from 361 mm to 393 mm by 8 mm', '--show', 'mismatch');
    // −16, −8, 0, 8, 16 mm
    expect(s.curves[0]!.findings.filter(f => f.code === 'expectation-failed')).toEqual([expect.objectContaining({ subject: 'mismatch', stretches: [{ from: 0, to: 0 }, { from: 4, to: 4 }] })]);
    const { out } = await sweep(page('expect mismatch < 10 mm'), '--over', 'object.2.length from 377 mm to 397 mm by 5 mm');
    // 0, 5, 10, 15, 20 mm
    expect(out).toContain('  from 387 mm on: warning: Not met: mismatch is 10 mm, expected below 10 mm.');
  });
});

describe('how it is written', () => {
  const args = ['--over', 'object.2.length from 367 mm to 387 mm by 10 mm', '--show', 'mismatch'];
  it('as a table', async () => {
    expect(await sweep(page(), ...args)).toEqual({ code: 0, err: '', out: 'Whelk shell: leg M2 → whelk, 367 mm to 387 mm\n\n  object.2.length   mismatch\n  367 mm            −10 mm\n  377 mm            0 mm\n  387 mm            10 mm\n' });
  });
  it('as comma-separated values, with units in the head', async () => {
    expect((await sweep(page(), ...args, '--format', 'csv')).out).toBe('object.2.length (mm),mismatch (mm),mismatch low (mm),mismatch high (mm)\r\n367,-10,-10,-10\r\n377,0,0,0\r\n387,10,10,10\r\n');
    expect((await sweep(page('variant "near, and low" {', '  object.3: 250 mm', '}'), ...args, '--variants', '--format', 'csv')).out.split('\r\n').slice(0, 5)).toEqual([
      'variant,object.2.length (mm),mismatch (mm),mismatch low (mm),mismatch high (mm)', ',367,-10,-10,-10', ',377,0,0,0', ',387,10,10,10', '"near, and low",367,-60,-60,-60',
    ]);
  });
  it('no text in it is taken for a formula', async () => {
    const { out } = await here(page('variant "=SUM(A1)" {', '  object.3: 250 mm', '}'), ...args, '--variants', '--format', 'csv');
    expect(out.split('\r\n')[4]).toBe("'=SUM(A1),367,-60,-60,-60");
  });
  it('as Markdown', async () => {
    expect((await sweep(page(), ...args, '--format', 'markdown')).out).toBe('# Whelk shell: leg M2 → whelk, 367 mm to 387 mm\n\na.plate\n\n| object.2.length | mismatch |\n| --- | --- |\n| 367 mm | −10 mm |\n| 377 mm | 0 mm |\n| 387 mm | 10 mm |\n');
  });
  it('as a plot, and into a file whose name says how', async () => {
    const { out } = await sweep(page(), ...args, '--format', 'svg');
    expect(out).toMatch(/^<\?xml/);
    expect(out).toContain('mismatch, mm');
    expect(out).not.toMatch(/NaN|Infinity|undefined/);
    const at = folder({ 'a.plate': page() });
    for (const [name, start] of [['a.csv', 'object.2'], ['a.json', '{'], ['a.md', '# Whelk'], ['a.txt', 'Whelk'], ['a.svg', '<?xml']] as const) {
      expect(await inside(['sweep', 'a.plate', ...args, '-o', name], { cwd: at })).toEqual({ code: 0, out: `${name}: written\n`, err: '' });
      expect(readFileSync(join(at, name), 'utf8').startsWith(start)).toBe(true);
    }
  });
  it('follows what the setup aims for and expects where nobody says what', async () => {
    expect((await swept(page('expect object length < 2 m'), ...args.slice(0, 2))).results.map(r => r.name)).toEqual(['object length']);
    expect((await swept(page(), ...args.slice(0, 2))).results.map(r => r.name)).toContain('mismatch');
  });
  it('says what does not change', async () => {
    expect((await sweep(page(), '--over', 'raw.1.length from 300 mm to 400 mm by 50 mm', '--show', 'mismatch')).out).toContain('mismatch does not change with raw.1.length.');
  });
});

describe('what cannot be done has words', () => {
  const over = (...more: string[]): string[] => ['--over', 'object.2.length from 367 mm to 387 mm by 10 mm', ...more];
  const CASES: readonly (readonly [string, readonly string[], RegExp, 2 | 3])[] = [
    ['no number', [], /Say which number takes which values: --over "/, 2],
    ['no range', ['--over', 'object.2.length'], /does not say between which values/, 2],
    ['half a range', ['--over', 'object.2.length from 3 mm'], /cannot be read/, 2],
    ['a torn range', ['--over', 'object.2.length from 3 mm to'], /cannot be read/, 2],
    ['a range that goes on', ['--over', 'object.2.length from 3 mm to 4 mm by 1 mm turning left'], /cannot be read/, 2],
    ['a step of zero', ['--over', 'object.2.length from 3 mm to 4 mm by 0 mm'], /“by” in .* has to be above zero/, 2],
    ['a step below zero', ['--over', 'object.2.length from 3 mm to 4 mm by -1 mm'], /“by” in .* has to be above zero/, 2],
    ['a range the wrong way round', ['--over', 'object.2.length from 4 mm to 3 mm'], /“to” in .* has to be above “from”/, 2],
    ['too many values', ['--over', 'object.2.length from 1 mm to 1002 mm by 1 mm'], /is 1002 values; 1000 are tried at most/, 2],
    ['more values than can be counted', ['--over', 'object.2.length from 1 mm to 1e30 mm by 1e-30 mm'], /more than a billion values/, 2],
    ['too many in all', ['--over', 'object.2.length from 1 mm to 100 mm by 1 mm', '--over', 'object.1.length from 1 mm to 100 mm by 1 mm'], /10000 sets of values in all/, 2],
    ['a misspelt name', ['--over', 'object.2.lenght from 3 mm to 4 mm'], /has no number “object\.2\.lenght”\. Did you mean “object\.2\.length”\?/, 2],
    ['a name of nothing', ['--over', 'ottoline from 3 mm to 4 mm'], /has no number “ottoline”\. Its numbers: /, 2],
    ['a result', ['--over', 'mismatch from 3 mm to 4 mm'], /mismatch is a result/, 2],
    ['a computed number', ['--over', 'P1.object.length from 3 mm to 4 mm'], /is computed, so that it cannot be given other values\. It rests on object\.1\.length, object\.2\.length/, 2],
    ['an assumed number', ['--over', 'whelk.tone from 1% to 4%', '--show', 'P1.object.power'], /whelk\.tone is not written on the page, but assumed/, 2],
    ['another unit', ['--over', 'object.2.length from 3 s to 4 s'], /“to” in .* cannot be used\. .*a time/, 2],
    ['no unit', ['--over', 'object.2.length from 3 to 4'], /“to” in .* cannot be used/, 2],
    ['a share above all', ['--over', 'S1.reflects from 50% to 150%'], /it is a share, from 0 % to 100 %/, 2],
    ['a leg of no length', ['--over', 'object.2.length from 0 mm to 4 mm'], /it cannot be zero/, 2],
    ['three numbers', [...over(), '--over', 'object.1.length from 1 mm to 2 mm', '--over', 'raw.1.length from 1 mm to 2 mm'], /Two numbers can be tried at a time/, 2],
    ['one number twice', [...over(), ...over()], /Both --over are of object\.2\.length/, 2],
    ['no result', over('--show', ' , '), /Say which results to show/, 2],
    ['a misspelt result', over('--show', 'mismach'), /has no result “mismach”\. Did you mean “mismatch”\?/, 2],
    ['a result of nothing', over('--show', 'sauerkraut'), /has no result “sauerkraut”\. Its results: /, 2],
    ['a result that is not computed yet', over('--show', 'coverage'), /not computed yet/, 3],
    ['no variant', over('--variants'), /There is no variant in “Whelk shell”/, 2],
    ['one variant and all', over('--variants', '--variant', 'near'), /Choose one/, 2],
    ['a variant that is none', over('--variant', 'near'), /has no variant “near”/, 2],
    ['a page as the target', over('-o', 'a.plate', '--format', 'csv'), /ends in \.plate/, 2],
    ['a name that says nothing', over('-o', 'a.xyz'), /choose another name for a\.xyz/, 2],
    ['a plot by a name for text', over('-o', 'a.csv', '--format', 'svg'), /A plot is written as \.svg, \.png or \.pdf/, 2],
    ['a dark table', over('--dark'), /--dark is for plots/, 2],
  ];
  test.each(CASES)('%s', async (_, args, words, code) => {
    const { out, err, code: ended } = await here(page(), ...args);
    expect(err).toMatch(words);
    expect([ended, out]).toEqual([code, '']);
  });
  it('another format', async () => { expect(await sweep(page(), ...over('--format', 'xml'))).toMatchObject({ code: 2, err: expect.stringContaining('Allowed choices are') as string }); });
  it('a page without a setup, and one with several', async () => {
    expect(await here('', ...over())).toMatchObject({ code: 3, err: expect.stringContaining('There is no setup') as string });
    expect(await here(`${page()}${page().replace('Whelk shell', 'Cockle')}`, ...over())).toMatchObject({ code: 2, err: expect.stringContaining('has several setups') as string });
  });
});
