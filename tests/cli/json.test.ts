// What `--format json` prints, against its schema, and figures worked out by hand.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';
import { bySchema, closed, published } from './schema.ts';

interface Figure { name: string; value: number | null; unit: string; u: number | null; band: { low: number; high: number } | null; origin: string; status: string; shown: string; needs: { code: string; why: string }[]; assumes: string[]; place: unknown; share: number | null }
interface Report {
  schemaVersion: string; file: string; uses: string[]; summary: Record<string, number>;
  findings: { code: string; severity: string; setup: string | null; subject: string; place: unknown; data: Record<string, unknown>; accepted: string | null }[];
  setups: { name: string; results: Figure[]; guesses: { name: string; reason: string | null }[]; aliases: Record<string, string[]>; goals: Record<string, unknown>[] }[];
}

/** Runs it, holds it against the schema, and gives what it says. */
async function json(args: readonly string[], cwd?: string): Promise<Report> {
  const { out } = await inside([...args, '--format', 'json'], cwd === undefined ? {} : { cwd });
  return bySchema(out) as Report;
}
const figure = (r: Report, name: string): Figure => {
  const found = r.setups[0]!.results.find(x => x.name === name);
  expect(found, name).toBeDefined();
  return found!;
};

it('the schema bites: a wrong type, a figure without a value that is called computed, an unknown member', async () => {
  const { out } = await inside(['report', 'whelk-too-long.plate', '--format', 'json']);
  const broken = (change: (r: Report) => void): Report => {
    const r = JSON.parse(out) as Report;
    change(r);
    return r;
  };
  expect(published(broken(r => { r.setups[0]!.results[0]!.unit = ''; }))).toBe(false);
  expect(published(broken(r => { r.setups[0]!.results[0]!.value = null; }))).toBe(false);
  const more = broken(r => { Object.assign(r.setups[0]!.results[0]!, { colour: 'red' }); });
  expect(published(more)).toBe(true);
  expect(closed(more)).toBe(false);
});

it('tells how mirrors and splitters are set', async () => {
  // A worked layout of common practice, its incidences in another program's figures: S 25.7°, M1 28.2°, M2 43.5°, M3 52.8°.
  const { setups } = await json(['report', 'whelk-on-the-table.plate'], 'examples') as unknown as { setups: { angles: { thing: string; incidence: Figure; fold: Figure; heading: Figure | null; tilt: Figure }[] }[] };
  expect(setups[0]!.angles.map(a => `${a.thing} ${((a.incidence.value! * 180) / Math.PI).toFixed(1)} ${a.heading!.unit}`)).toEqual(['S1 25.7 rad', 'M1 28.2 rad', 'M2 43.5 rad', 'M3 52.8 rad']);
  expect(await json(['report', 'whelk-too-long.plate'])).toMatchObject({ setups: [{ angles: [] }] });
});
it('tells of the second spot of a splitter', async () => {
  const { setups } = await json(['report', 'key-and-fill.plate'], 'examples') as unknown as { setups: { angles: { thing: string; secondSpot: { offset: Figure; angle: Figure | null; share: Figure | null } | null }[] }[] };
  const [S1, S2, MR1] = setups[0]!.angles;
  // The wheel has 3 mm of glass and no wedge; half and half is 5 mm of crown, n 1.515, at 20.06°, where √(n² − sin²θ) is 1.4757: 2 · 5 · 0.3430 · 0.9393 / 1.4757 = 2.183 mm, 1° · 1.4757 / 0.9393 = 1.571°.
  expect(S1!.secondSpot).toMatchObject({ offset: { unit: 'm' }, angle: null });
  expect(S2!.secondSpot!.offset.value).toBeCloseTo(0.002183, 4);
  expect(S2!.secondSpot!.angle!.value! * 180 / Math.PI).toBeCloseTo(1.571, 2);
  expect(MR1!.secondSpot).toBeNull();
});

describe('the whelk that is 84 mm too long', async () => {
  const r = await json(['report', 'whelk-too-long.plate']);
  it('has the lengths that a hand adds up', () => {
    // reference 750 + 721 = 1471 mm; object 410 + 377 + 468 + 300 = 1555 mm; 1555 − 1471 = 84 mm
    expect(figure(r, 'P1.reference.length').value).toBeCloseTo(1.471, 12);
    expect(figure(r, 'P1.object.length').value).toBeCloseTo(1.555, 12);
    expect(figure(r, 'P1.object.mismatch').value).toBeCloseTo(0.084, 12);
    expect(figure(r, 'P1.object.mismatch').unit).toBe('m');
  });
  it('has the uncertainty that a hand adds up', () => {
    // Half-widths a = 2, 2 mm (reference), 2, 2, 3, 3 mm (object), each u² = a²/3 (GUM 4.3.7): u = √(4 · 4/3 + 2 · 9/3) mm = √(34/3) mm
    expect(figure(r, 'P1.object.mismatch').u).toBeCloseTo(Math.sqrt(34 / 3) * 1e-3, 12);
    // The leg to the splitter is common to both arms and is in neither.
    expect(figure(r, 'raw.1.length').u).toBe(0);
    expect(figure(r, 'P1.object.mismatch').shown).toBe('84 ± 7 mm');
  });
  it('has the brightness that a hand works out', () => {
    // Middle: the product of phasors of N modes spaced c/2L, R = 2L = 700 mm, δ = 84 mm: x = π · 84/700 = 0.37699;
    // N = 3: sin 3x / (3 sin x) = 0.90483 / (3 · 0.36812) = 0.81932, squared 0.6713
    expect(figure(r, 'P1.object.brightness').value).toBeCloseTo(0.6713, 3);
    // With N = 4, sin 4x / (4 sin x) = 0.99803 / (4 · 0.36812) = 0.67778, squared 0.4594: the band holds both.
    const { low, high } = figure(r, 'P1.object.brightness').band!;
    expect(low).toBeLessThan(0.4594);
    expect(high).toBeGreaterThan(0.6713);
  });
  it('names its guesses, with reasons', () => {
    expect(figure(r, 'P1.object.far.brightness').assumes.sort()).toEqual(['red.modes', 'whelk.lit at']);
    expect(figure(r, 'P1.object.mismatch').assumes).toEqual([]);
    expect(r.setups[0]!.guesses.map(g => g.name).sort()).toEqual(['red.modes', 'whelk.lit at']);
    for (const g of r.setups[0]!.guesses) expect(g.reason).toBeTruthy();
  });
  it('identifies its finding by setup, code and subject, and places it', () => {
    expect(r.findings).toHaveLength(1);
    expect(r.findings[0]).toMatchObject({
      code: 'arms-mismatched', severity: 'warning', setup: 'Whelk shell', subject: 'P1.object', accepted: null,
      // line 22 is `  beam object from S1 reflected`
      place: { file: 'whelk-too-long.plate', line: 22, column: 8, endColumn: 14 }, data: { plate: 'P1', arm: 'object' },
    });
    expect(r.findings[0]!.data['mismatch']).toBeCloseTo(0.084, 12);
    expect(r.summary).toEqual({ errors: 0, warnings: 1, notes: 0, hints: 0, accepted: 0, unmet: 0 });
  });
  it('knows short names', () => {
    const { aliases, results } = r.setups[0]!;
    expect(aliases['mismatch']).toEqual(['P1.object.mismatch']);
    const names = new Set(results.map(x => x.name));
    for (const meant of Object.values(aliases).flat()) expect(names).toContain(meant);
  });
  it('has each result once, legs in the order of the text', () => {
    const names = r.setups[0]!.results.map(x => x.name);
    expect(new Set(names).size).toBe(names.length);
    expect(names.slice(0, 7)).toEqual(['raw.1.length', 'reference.1.length', 'reference.2.length', 'object.1.length', 'object.2.length', 'object.3.length', 'object.4.length']);
  });
});

describe('the same text gives the same document', () => {
  const there = folder({ 'a/whelk.plate': matched() });
  it('byte for byte, from whatever folder it is asked', async () => {
    const near = (await inside(['report', 'whelk.plate', '--format', 'json'], { cwd: join(there, 'a') })).out;
    expect((await inside(['report', 'a/whelk.plate', '--format', 'json'], { cwd: there })).out).toBe(near);
    expect((await inside(['report', join(there, 'a/whelk.plate'), '--format', 'json'])).out).toBe(near);
    expect(near).not.toContain(there);
  });
  it('check names the files as seen from the working folder', async () => {
    const { out } = await inside(['check', '.', '--format', 'json'], { cwd: there });
    expect((JSON.parse(out) as { files: { file: string }[] }).files.map(f => f.file)).toEqual(['a/whelk.plate']);
  });
});

describe('what is not known', () => {
  const there = folder({
    'gap.plate': matched().replace('-> P1: 1471 mm', '-> P1').replace('-> cockle: 1171 mm', '-> cockle: ? mm'),
    'torn.plate': matched().replace('-> P1: 1471 mm', '-> P1: 14 71 mm mm'),
  });
  it('is null, with all its roots', async () => {
    const r = await json(['report', 'gap.plate'], there);
    const m = figure(r, 'P1.object.mismatch');
    expect(m).toMatchObject({ value: null, u: null, band: null, status: 'unknown', shown: 'unknown' });
    expect(m.needs.map(n => n.code).sort()).toEqual(['unknown-asked', 'value-missing']);
    expect(m.needs.map(n => n.why).join()).toContain('S1 → P1');
  });
  it('is failed where something cannot be read', async () => {
    expect(figure(await json(['report', 'torn.plate'], there), 'P1.object.mismatch')).toMatchObject({ value: null, status: 'failed' });
  });
});

describe('the other documents', () => {
  const there = folder({ 'a.plate': matched('  expect mismatch < 10 mm\n  expect mismatch > 20 mm\n  expect beam ratio from 3:1 to 6:1\n'), 'lab.plate': 'inventory lab {\n}\n', 'b.plate': `use "lab.plate"\n${matched()}` });
  it('goals hold what was compared', async () => {
    const goals = (await json(['report', 'a.plate'], there)).setups[0]!.goals;
    expect(goals.map(g => [g['text'], g['outcome'], g['result'], g['limits'], g['unit']])).toEqual([
      ['mismatch < 10 mm', 'met', 'P1.object.mismatch', [0.01], 'm'], ['mismatch > 20 mm', 'not met', 'P1.object.mismatch', [0.02], 'm'], ['beam ratio from 3:1 to 6:1', 'cannot be told', 'P1.beam ratio', [3, 6], '1'],
    ]);
  });
  it('the files that a file uses', async () => { expect((await json(['report', 'b.plate'], there)).uses).toEqual(['lab.plate']); });
  it('check', async () => { expect(await json(['check', 'a.plate', 'b.plate', 'none.plate'], there)).toMatchObject({ document: 'check', summary: { unmet: 1 }, unread: [expect.stringContaining('none.plate')] }); });
  it('the page of a finding', async () => { expect(await json(['explain', 'arms-mismatched'])).toMatchObject({ document: 'page', code: 'arms-mismatched', severity: 'warning' }); });
  it('an explanation, whose shares add up to the whole', async () => {
    const e = await json(['explain', 'whelk-too-long.plate', 'mismatch']) as unknown as { result: Figure; chain: Figure[]; asked: string; method: string };
    expect(e).toMatchObject({ asked: 'mismatch', method: 'first order', result: { name: 'P1.object.mismatch' } });
    // The leg to the whelk has 9/34 of the variance: 3²/(4 · 2² + 2 · 3²).
    expect(e.chain.find(l => l.name === 'object.3.length')!.share).toBeCloseTo(9 / 34, 9);
    expect(e.chain.reduce((sum, l) => sum + (l.share ?? 0), 0)).toBeCloseTo(1, 9);
  });
  it.each(readdirSync('examples').filter(f => f.endsWith('.plate')))('examples/%s', async name => {
    expect((await json(['report', join('examples', name)], process.cwd())).file).toBe(name);
  });
});

it('a reading says what it tells, of light as of lengths, beside its plan', async () => {
  const text = matched('  meter m {\n    calibration: 1.1\n    dark: 0 nW\n  }\n  measured S1 -> P1: 1475 mm\n  measured reference at P1: 2 µW/cm² by m on 2026-02-11\n  measured raw at S1: 9 mW by m\n  measured object at P1 upper left: 3 µW/cm²\n').replace(/(laser red[^{]*\{)/, '$1\n    power: 10 mW');
  const { setups } = await json(['report', 'a.plate'], folder({ 'a.plate': text })) as unknown as { setups: { readings: Record<string, unknown>[] }[] };
  // 2 µW/cm² are 0.02 W/m², 1.1 times as much by the calibration.
  expect(setups[0]!.readings.map(x => [x['words'], x['fate'], x['result'], x['tells'], x['planned']])).toEqual([
    ['S1 -> P1', 'counts', 'reference.1.length', { value: 1.475, unit: 'm' }, 1.471],
    ['reference at P1', 'counts', 'P1.reference.light', { value: 0.022, unit: 'kg·s^-3' }, null], ['raw at S1', 'counts', 'raw.1.power', { value: 0.0099, unit: 'm^2·kg·s^-3' }, 0.01],
    ['object at P1 upper left', 'useless', null, null, null],
  ]);
});
