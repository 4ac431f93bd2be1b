// `platewright learn` and `platewright history`: what shots teach, written into the inventory and nothing else; and the plates by date.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { folder } from './folder.ts';
import { inside } from './inside.ts';
import { bySchema } from './schema.ts';

const BOX = '// The lab, kept as it is   \r\ninventory lab {\r\n  plate fine {\r\n    sensitivity:   40 µJ/cm² ×÷ 2 // the usual range\r\n  }\r\n  laser red {\r\n    wavelength: 632.8 nm\r\n  }\r\n}\r\n';
const page = (...lines: string[]): string => `use "box.plate"
setup "Limpet" {
  hologram: reflection
  laser red = lab.red
  splitter S1
  object limpet
  plate P1 = lab.fine
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1200 mm
  beam object from S1 reflected
    -> limpet: 1000 mm
    -> P1: 200 mm
${lines.map(l => `  ${l}\n`).join('')}}
`;
const shot = (name: string, on: string, ...facts: string[]): string[] => [`shot ${name}${on === '' ? '' : ` on ${on}`} {`, ...facts.map(f => `  ${f}`), '}'];
const GOOD = shot('1', '2026-01-10', 'plate: "box 3, number 1"', 'exposure: 20 s', 'dose: 52 µJ/cm²', 'outcome: "bright"');
const at = (text: string): string => folder({ 'limpet.plate': text, 'box.plate': BOX });

describe('learn', () => {
  it('shows what it finds, and writes nothing', async () => {
    const lab = at(page(...GOOD));
    expect(await inside(['learn', '.'], { cwd: lab })).toEqual({
      code: 0, err: '',
      out: 'lab.fine, box 3: sensitivity\n  52 µJ/cm², by these shots 40 to 68 µJ/cm²\n    limpet.plate, shot 1 on 2026-01-10: 52 µJ/cm²: “bright”\n  One shot: it does not tell how plates of this stock differ from one another.\n  To write: sensitivity: 52 µJ/cm² ×÷ 1.3 (box.plate, line 4; there stands 40\n    µJ/cm² ×÷ 2)\n',
    });
    expect(readFileSync(join(lab, 'box.plate'), 'utf8')).toBe(BOX);
  });
  it('writes the values in, the rest byte for byte', async () => {
    const lab = folder({ 'limpet.plate': page(...GOOD, ...shot('2', '2026-01-11', 'replay wavelength: 569.52 nm ± 1 nm')), 'box.plate': `\ufeff${BOX}` });
    const { err, code } = await inside(['learn', lab, '--write']);
    expect([code, err.match(/^platewright: .*\n/gm)]).toEqual([0, [expect.any(String), expect.any(String)]]);
    // 1 − 569.52/632.8 = 10 %, ± √(0.8² + (2 · 0.158/√3)²) = 0.82 points, rounded up: 0.8 points by the moisture of the air, 1 nm is 0.158 points. A line of its own stands before the first fact, with the line ends of the file.
    expect(readFileSync(join(lab, 'box.plate'), 'utf8')).toBe(`\ufeff${BOX.replace('40 µJ/cm² ×÷ 2', '52 µJ/cm² ×÷ 1.3').replace('    sensitivity:', '    shrinkage: 10% ± 0.9 points\r\n    sensitivity:')}`);
    expect(readFileSync(join(lab, 'limpet.plate'), 'utf8')).toBe(page(...GOOD, ...shot('2', '2026-01-11', 'replay wavelength: 569.52 nm ± 1 nm')));
  });
  it('tells in JSON, by the schema', async () => {
    const { out } = await inside(['learn', at(page(...GOOD, ...shot('2', '2026-01-11', 'outcome: "wood grain"'))), '--format', 'json']);
    const found = bySchema(out) as { shots: number; lessons: { about: string; value: number; line: { text: string } }[]; idle: { why: string }[] };
    expect(found).toMatchObject({ shots: 2, lessons: [{ about: 'sensitivity', value: 0.52, line: { text: 'sensitivity: 52 µJ/cm² ×÷ 1.3', was: '40 µJ/cm² ×÷ 2', canWrite: true } }], idle: [{ why: 'neither dose nor exposure is written' }] });
  });
  it('and in Markdown', async () => { expect((await inside(['learn', at(page(...GOOD)), '--format', 'markdown'])).out).toMatch(/^## lab\.fine, box 3: sensitivity\n\n52 µJ\/cm²/); });
  it('of no shot and of shots that tell nothing it says what to write', async () => {
    expect((await inside(['learn', at(page())])).out).toContain('There is no shot on these pages.');
    expect((await inside(['learn', at(page(...shot('1', '2026-01-10', 'outcome: "wood grain"')))])).out).toContain('Nothing can be learnt from these shots yet.');
    expect((await inside(['learn', at(page()), '--write'])).err).toBe('platewright: nothing was written\n');
  });
  it('what contradicts itself is said and not written', async () => {
    const lab = at(page(...shot('1', '2026-01-10', 'dose: 90 µJ/cm²', 'outcome: "too thin"'), ...shot('2', '2026-01-10', 'dose: 10 µJ/cm²', 'outcome: "nearly black"')));
    const { out, err } = await inside(['learn', lab, '--write']);
    expect(out).toContain('these shots contradict one another');
    expect(err).toBe('platewright: nothing was written\n');
    expect(readFileSync(join(lab, 'box.plate'), 'utf8')).toBe(BOX);
  });
  it('an outcome outside a shot is a finding of the page, and no lesson', async () => {
    const lab = at(page('outcome: "bright"'));
    expect((await inside(['learn', lab])).out).toContain('There is no shot on these pages.');
    expect((await inside(['check', join(lab, 'limpet.plate')])).out).toContain('outcome');
  });
  it('has words for what is not there', async () => {
    expect(await inside(['learn', join(at(page()), 'none.plate')])).toMatchObject({ code: 3, err: expect.stringContaining('there is no such file') as string });
    expect(await inside(['learn', folder()])).toMatchObject({ code: 3, err: expect.stringContaining('there is no .plate file') as string });
  });
});

describe('history', () => {
  const LATE = shot('2', '2026-01-08', 'plate: "box 4, number 1"', 'exposure: 1 min', 'beam ratio: 4:1');
  const UNDATED = shot('3', '', 'outcome: "dull, and, as it were, grey"');
  const PROCESS = ['process on 2026-01-10 {', '  shots: "1, 2"', '  developer: "the usual"', '}'];
  const lab = (): string => at(page(...GOOD, ...LATE, ...UNDATED, ...PROCESS));
  it('lists the plates by date, what all have in common once, and says what is amiss', async () => {
    expect(await inside(['history', '.'], { cwd: lab() })).toEqual({
      code: 0, err: '',
      out: `page: limpet.plate; setup: Limpet; stock: lab.fine

date         shot   batch   exposure   dose        beam ratio
2026-01-08   2      box 4   1 min                  4:1
    no outcome; it stands behind shot 1, which is of 2026-01-10
2026-01-10   1      box 3   20 s       52 µJ/cm²
    “bright”
             3
    “dull, and, as it were, grey”; no date
`,
    });
  });
  it('as comma-separated values, numbers in the unit of their column', async () => {
    const { out } = await inside(['history', lab(), '--format', 'csv']);
    const lines = out.split('\r\n');
    expect(lines[0]).toBe('date,page,setup,shot,stock,batch,exposure (min),dose (µJ/cm²),beam ratio,developer,outcome,remarks');
    expect(lines[1]).toMatch(/^2026-01-08,.*limpet\.plate,Limpet,2,lab\.fine,box 4,1,,4,the usual,,"no outcome; it stands/);
    // 20 s are a third of a minute
    expect(lines[2]).toMatch(/box 3,0\.3333333333,52,,the usual,bright,$/);
    expect(lines[3]).toContain('"dull, and, as it were, grey"');
  });
  it('in JSON by the schema, and in Markdown', async () => {
    const found = bySchema((await inside(['history', lab(), '--format', 'json'])).out) as { shots: { shot: string; date: string | null; batch: string | null; developer: string | null; numbers: Record<string, { value: number; unit: string }> }[] };
    expect(found.shots.map(s => [s.shot, s.date, s.batch, s.developer])).toEqual([['2', '2026-01-08', 'box 4', 'the usual'], ['1', '2026-01-10', 'box 3', 'the usual'], ['3', null, null, null]]);
    expect(found.shots[1]!.numbers).toMatchObject({ exposure: { value: 20, unit: 's' }, dose: { value: 0.52 } });
    expect((await inside(['history', lab(), '--format', 'markdown'])).out).toMatch(/^\| date \| page \| setup \| shot \|/);
  });
  it('as a plot over time', async () => {
    const { out } = await inside(['history', lab(), '--format', 'svg']);
    expect(out).toContain('2 shots, 2026-01-08 to 2026-01-10');
    expect(out).toContain('lab.fine, box 4');
    expect(out).toContain('1 shot has no date and is not drawn.');
    expect(out).not.toMatch(/NaN|Infinity|undefined/);
  });
  const CASES: readonly (readonly [string, readonly string[], RegExp, number])[] = [
    ['a name that says nothing', ['-o', 'a.xyz'], /choose another name for a\.xyz/, 2], ['a plot by a name for text', ['-o', 'a.csv', '--format', 'svg'], /A plot is written as/, 2],
    ['a dark table', ['--dark'], /--dark is for plots/, 2], ['a page as the target', ['-o', 'a.plate', '--format', 'csv'], /ends in \.plate/, 2],
  ];
  test.each(CASES)('%s', async (_, args, words, code) => {
    const { code: ended, err } = await inside(['history', lab(), ...args]);
    expect(err).toMatch(words);
    expect(ended).toBe(code);
  });
  it('without a shot, and without a date', async () => {
    expect((await inside(['history', at(page())])).out).toContain('There is no shot on these pages.');
    expect(await inside(['history', at(page(...UNDATED)), '--format', 'svg'])).toMatchObject({ code: 3, err: expect.stringContaining('nothing to draw') as string });
  });
});
