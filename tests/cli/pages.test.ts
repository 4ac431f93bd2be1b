// The pages that people read, pinned as they are: `npx vitest run tests/cli -u` writes them afresh. Say in the commit why they changed.
import { describe, expect, it } from 'vitest';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const PAGES: readonly [string, readonly string[]][] = [
  ['check', ['check', 'whelk.plate', 'whelk-too-long.plate']],
  ['report-too-long', ['report', 'whelk-too-long.plate']],
  ['report-too-long-markdown', ['report', '--format', 'markdown', 'whelk-too-long.plate']],
  ['report-matched', ['report', 'whelk.plate']],
  ['explain-mismatch', ['explain', 'whelk-too-long.plate', 'mismatch']],
  ['explain-brightness', ['explain', 'whelk-too-long.plate', 'darkest.brightness']],
  ['explain-brightness-markdown', ['explain', '--format', 'markdown', 'whelk-too-long.plate', 'brightness']],
  ['explain-code', ['explain', 'arms-mismatched']],
  ['help', ['--help']],
];
it.each(PAGES)('%s', async (name, args) => {
  await expect((await inside(args)).out).toMatchFileSnapshot(`./${name}.txt`);
});
it.each(['whelk-too-long', 'whelk-on-the-table', 'key-and-fill', 'single-beam-oyster'])('the report of examples/%s', async name => {
  await expect((await inside(['report', `examples/${name}.plate`], { cwd: process.cwd() })).out).toMatchFileSnapshot(`./example-${name}.txt`);
});

describe('the report', () => {
  const page = async (text: string, ...more: string[]): Promise<string> => (await inside(['report', 'a.plate', ...more], { cwd: folder({ 'a.plate': text }) })).out.replace(/\s+/g, ' ');
  it('says how far the paths differ, in plain words', async () => {
    // 2u = 2 · √(4 · 4/3 + 2 · 9/3) mm = 6.7 mm, shown as 7 mm
    expect((await inside(['report', 'whelk-too-long.plate'])).out).toContain('The object beam is 84 ± 7 mm longer than the reference.');
    expect(await page(matched())).toContain('The object beam and the reference are equally long.');
    expect(await page(matched().replace('1471 mm', '1470 mm ± 3 mm'))).toContain('The object beam is 1 ± 3 mm longer than the reference: as far as the lengths are known, both match.');
    expect(await page(matched().replace('1471 mm', '1491 mm ± 1 mm std'))).toContain('The object beam is 20.0 ± 2.0 mm shorter than the reference.');
    expect(await page(matched().replaceAll('beam object', 'beam key'))).toContain('The beam “key” and the reference are equally long.');
  });
  it('shows a written leg as it was written, and what follows from it with twice the standard uncertainty', async () => {
    // a half-width of 3 mm: 2 · 3/√3 = 3.5 mm
    expect(await page(matched().replace('1471 mm', '1471 mm ± 3 mm'))).toContain('S1 → P1 1471 ± 3 mm in all 1471 ± 3 mm');
    expect(await page(matched().replace('1471 mm', '1471 mm ± 0.4%'))).toMatch(/S1 → P1 1471 ± 5\.88\d* mm in all 1471 ± 7 mm/);
    expect(await page(matched().replace('1471 mm', '57.91 in ± 0.1 in'))).toContain('S1 → P1 57.91 ± 0.1 in');
  });
  it('says what the coherence is known from', async () => {
    expect(await page(matched())).toContain('The coherence of red is known from its coherence length, 5 m at 50% of the fringe contrast: a linewidth of');
    // half contrast of a gaussian line at δ = (2 ln 2/π) · c/Δν = 0.44127 · 299.792 mm = 132.3 mm for 1 GHz
    expect(await page(matched().replace(/coherence length[^}]*\}/, 'linewidth: 1 GHz\n  }'))).toContain('half of the fringe contrast is left where the paths differ by 132.29 mm');
    expect(await page(matched().replace(/coherence length[^}]*\}/, '}'))).toContain('How brightly red records cannot be told: nothing is written about the coherence of red.');
    // c/2L = 299.792 mm·GHz / 700 mm = 428.27 MHz
    expect(await page(matched().replace(/coherence length[^}]*\}/, 'tube length: 350 mm\n    modes: 3\n  }'))).toContain('its modes are 428.27 MHz apart, and fringes come back where the paths differ by 700 mm, or a multiple of it. Modes that run: 3.');
  });
  it('says which expectations are met', async () => {
    const goals = await page(matched('  expect mismatch < 10 mm // tonight\n  expect mismatch > 20 mm\n  expect beam ratio from 3:1 to 6:1\n  aim beam ratio: 4:1\n').replace('1471 mm', '1461 mm ± 5 mm'));
    expect(goals).toContain('expect mismatch < 10 mm undecided: 10 ± 6 mm');
    expect(goals).toContain('expect mismatch > 20 mm not met: 10 ± 6 mm');
    expect(goals).toContain('expect beam ratio from 3:1 to 6:1 cannot be told');
    expect(goals).toContain('aim beam ratio: 4:1 cannot be told');
  });
  it('has one line of guesses, whose command opens them', async () => {
    const [, summary, file, name] = /(brightness rests on 2 guesses: modes of red, lit at of whelk); `platewright explain (\S+) (\S+)` opens them/.exec((await inside(['report', 'whelk.plate'])).out.replace(/\s+/g, ' '))!;
    expect(summary).toBeDefined();
    const { code, out } = await inside(['explain', file!, name!]);
    expect(code).toBe(0);
    expect(out).toContain('It rests on 2 guesses');
    expect(await page(matched())).not.toContain('guess');
  });
  it('says what is unknown, and why, and shows no brightness then', async () => {
    const gap = await page(matched().replace('-> P1: 1471 mm', '-> P1'));
    expect(gap).toContain('How the object beam and the reference compare cannot be told: leg S1 → P1 has no length.');
    expect(gap).not.toContain('share of full brightness');
  });
  it('shows one setup of several, or all', async () => {
    const two = matched('', 'Cockle') + matched('', 'Whelk');
    expect(await page(two)).toMatch(/Cockle.*Whelk/);
    expect(await page(two, '--setup', 'Whelk')).not.toContain('Cockle');
  });
  it('of a file without a setup says so', async () => { expect(await page('inventory lab {\n}\n')).toContain('There is no setup in this file.'); });
  it('keeps accepted findings, with their reason', async () => {
    expect(await page(matched('  expect mismatch > 20 mm\n  accept expectation-failed "next plate"\n'))).toContain('accepted line 17: expectation-failed of mismatch, accepted: “next plate”');
  });
  it('of a long text keeps within its width, but for what is to be copied', async () => {
    const { out } = await inside(['report', 'examples/key-and-fill.plate'], { cwd: process.cwd() });
    for (const line of out.split('\n')) if (!line.includes('`')) expect([...line].length, line).toBeLessThanOrEqual(80);
  });
});

describe('explain', () => {
  it('takes a name of several words, with quotes or without', async () => {
    const quoted = await inside(['explain', 'whelk.plate', 'P1.reference.coherence path']);
    expect(quoted.code).toBe(0);
    expect(await inside(['explain', 'whelk.plate', 'P1.reference.coherence', 'path'])).toEqual(quoted);
  });
  it('takes an input as well as a result', async () => { expect((await inside(['explain', 'whelk.plate', 'red.modes'])).out).toContain('3 or 4'); });
  it('asks back where several setups, or several results, have the name', async () => {
    const at = folder({ 'two.plate': matched('', 'Cockle') + matched('', 'Whelk') });
    const { code, err } = await inside(['explain', 'two.plate', 'mismatch'], { cwd: at });
    expect(code).toBe(2);
    expect(err).toContain('choose one with --setup: “Cockle”, “Whelk”');
    expect((await inside(['explain', 'two.plate', 'mismatch', '--setup', 'Whelk'], { cwd: at })).code).toBe(0);
    const ambiguous = await inside(['explain', 'examples/two-plates.plate', 'mismatch'], { cwd: process.cwd() });
    expect(ambiguous.code).toBe(2);
    expect(ambiguous.err).toContain('P1.left-object.mismatch, P2.right-object.mismatch');
  });
  it('says why a result has no value', async () => {
    const { code, out } = await inside(['explain', 'a.plate', 'mismatch'], { cwd: folder({ 'a.plate': matched().replace('-> P1: 1471 mm', '-> P1') }) });
    expect(code).toBe(0);
    expect(out).toContain('It has no value, because leg S1 → P1 has no length.');
  });
  it('ranks what makes a result unsure: each leg by the square of its half-width', async () => {
    // 9/34 = 26 % for each leg with ± 3 mm, 4/34 = 12 % for each with ± 2 mm
    const { out } = await inside(['explain', 'whelk-too-long.plate', 'mismatch']);
    const ranks = out.match(/^ +\d+ % .*$/gm)!.map(l => l.trim());
    expect(ranks.slice(0, 2).sort()).toEqual(['26 %  leg M3 → whelk', '26 %  leg whelk → P1']);
    expect(ranks.slice(2).sort()).toEqual(['12 %  leg M1 → P1', '12 %  leg M2 → M3', '12 %  leg S1 → M1', '12 %  leg S1 → M2']);
  });
});
