/** Answers to `?`: what was solved is put back; a value that is blanked is found again, or others are shown to do as well. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { answerOf, type Answer } from '../../server/features/solve/answer.ts';
import { answersMarkdown } from '../../server/features/solve/markdown.ts';
import { answerPage } from '../../server/features/solve/page.ts';
import { answersText } from '../../server/features/solve/text.ts';
import { applyEdits } from '../../server/model/edits.ts';
import { toleranceOf } from '../../server/results/goals.ts';
import { resultNamed } from '../../server/results/names.ts';
import type { Results } from '../../server/results/plan.ts';

const folder = new URL('../../examples/', import.meta.url);
const library: Library = { resolve: path => path, text: uri => { try { return readFileSync(new URL(uri, folder), 'utf8'); } catch { return undefined; } } };
const snapshotOf = (text: string): Snapshot => analyse('page.plate', text, library);
const answers = (text: string): { readonly snapshot: Snapshot; readonly answer: Answer } => { const snapshot = snapshotOf(text); return { snapshot, answer: answerOf(snapshot, snapshot.results[0]!, { library }) }; };

/** The results that a value is asked for by, the first that changes with it. */
const ASKED = ['mismatch', 'object length', 'reference length', 'reference angle', 'object angle', 'lighting angle', 'corner light', 'beam ratio'];

interface Blank { readonly file: string; readonly line: number; readonly was: string; readonly text: string; readonly aim: string; readonly value: number; readonly name: string }

/** The input of a graph that stands at a place of the text. */
function inputAt(r: Results, line: number, start: number): string | undefined {
  return r.graph.cells.find(c => !c.rule && !c.missing && c.at?.line === line && c.at.start <= start && c.at.end > start && c.at.uri === 'page.plate')?.name;
}

function blanks(file: string): Blank[] {
  // A reading holds what it measured: without it the plan counts. Other goals, and a share that is open itself, may go against what is asked for.
  const source = readFileSync(new URL(file, folder), 'utf8').split('\n').filter(l => !/^\s*(?:measured|expect|aim)\b/.test(l)).join('\n').replace(/reflects: \?.*/g, 'reflects: 95%');
  const r = snapshotOf(source).results[0];
  if (!r || snapshotOf(source).findings.some(f => f.severity === 'error')) return [];
  const lines = source.split('\n');
  return lines.flatMap((line, n): Blank[] => {
    if (n < r.setup.node.at || n > r.setup.node.end || /^\s*(?:\/\/|aim|expect|variant|measured|shot|process)/.test(line)) return [];
    const found = /(?<=->[^:]*: *|\bby |\bheading |focal length: )(\d+(?:\.\d+)?)( ?(?:mm|°))(?! *±)/.exec(line) ?? /(?<=\bat \()(\d+(?:\.\d+)?)(?=,)/.exec(line);
    if (!found) return [];
    const [was, number, unit = ''] = found;
    const name = inputAt(r, n, found.index);
    if (name === undefined) return [];
    for (const result of ASKED) {
      const cell = resultNamed(r.graph, r.aliases, result);
      if (!cell || cell.missing || !r.graph.ancestors(cell).some(c => c.name === name)) continue;
      // A mismatch counts by its size.
      const value = result === 'mismatch' ? Math.abs(r.graph.value(cell)!) : r.graph.value(cell)!;
      const aim = `${result}: ${result === 'beam ratio' ? `${value.toPrecision(12)}:1` : result === 'corner light' ? `${(value * 100).toPrecision(12)}%` : result.endsWith('angle') ? `${((value * 180) / Math.PI).toPrecision(12)}°` : `${(value * 1e3).toPrecision(12)} mm`}`;
      const changed = lines.with(n, `${line.slice(0, found.index)}?${unit}${line.slice(found.index + was.length)}`);
      const text = changed.toSpliced(r.setup.node.at + 1, 0, `  aim ${aim}`).join('\n');
      return [{ file, line: n + 1, was: `${number!}${unit}`, text, aim, value, name }];
    }
    return [];
  });
}

const files = readdirSync(folder).filter(f => f.endsWith('.plate'));
const all = files.flatMap(blanks);

describe('a value of an example that is blanked', () => {
  test('there are enough of them', () => { expect(all.length).toBeGreaterThan(40); });
  test.each(all.map(b => [`${b.file} ${b.line}: ${b.was} by ${b.aim}`, b] as const))('%s', (_, b) => {
    const { snapshot, answer } = answers(b.text);
    expect(snapshot.findings.filter(f => f.severity === 'error')).toEqual([]);
    expect(answer.idle).toBeUndefined();
    // What stood there can be built, or something is in its way already: then the nearest attempt meets the aim.
    const best = answer.choices[0] ?? answer.nearest!;
    expect(best.missed).toEqual([]);
    const goal = best.results.goals.find(g => g.goal.kind === 'aim' && b.aim.startsWith(`${g.goal.result}:`))!;
    const now = best.results.graph.value(goal.cell!)!;
    const near = Math.max(toleranceOf(goal.cell!, best.results.graph), 1e-3 * Math.abs(b.value), 1e-9);
    expect(Math.abs(Math.abs(now) - Math.abs(b.value))).toBeLessThanOrEqual(near);
    // Put back, the page says the same.
    if (answer.choices.length > 0) {
      const after = snapshotOf(applyEdits(snapshot.text, answer.choices[0]!.edits));
      const cell = resultNamed(after.results[0]!.graph, after.results[0]!.aliases, goal.goal.result)!;
      expect(after.results[0]!.graph.value(cell)).toBeCloseTo(now, 9);
      expect(after.results[0]!.graph.opens).toEqual([]);
      // Nothing else of the page has changed.
      const [was, is] = [snapshot.text.split('\n'), applyEdits(snapshot.text, answer.choices[0]!.edits).split('\n')];
      expect(is.length).toBe(was.length);
      expect(is.filter((l, i) => l !== was[i] && !/reflects: [\d.]+%/.test(l))).toHaveLength(1);
    }
  });
});

describe('words', () => {
  const page = (text: string): string => answersText([answerPage(answers(text).answer)], 'a.plate').replace(/ {3,}/g, '   ').replace(/\n(?=\S)/g, ' ');
  const whelk = (leg: string, ...lines: string[]): string => `setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 200 mm
  }
  splitter S1
  mirror M3
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> M3: 787 mm
    -> whelk: ${leg}
    -> P1: 300 mm
${lines.map(l => `  ${l}\n`).join('')}}
`;
  test('what was found, with what it does', () => {
    const out = page(whelk('? mm', 'aim mismatch: 0 mm'));
    expect(out).toContain('leg M3 → whelk   384 mm');
    expect(out).toMatch(/aim mismatch: 0 mm {3}0 mm {3}met/);
  });
  test('goals that do not go together are named with what each misses', () => {
    const out = page(whelk('? mm', 'aim mismatch: 0 mm', 'aim object length: 1600 mm'));
    expect(out).toContain('No values meet “mismatch: 0 mm” and “object length: 1600 mm” together');
    expect(out).toMatch(/missed by 65 mm/);
  });
  test('limits that are too near', () => {
    expect(page(whelk('? mm from 100 mm to 200 mm', 'aim mismatch: 0 mm'))).toMatch(/meets\s+“mismatch: 0\s+mm”/);
  });
  test('nothing says what it is for', () => {
    expect(page(whelk('? mm'))).toMatch(/Nothing says what the leg M3 → whelk is for/);
  });
  test('no line is longer than a screen, and Markdown tells the same', () => {
    const { answer } = answers(whelk('? mm', 'aim mismatch: 0 mm'));
    for (const l of answersText([answerPage(answer)], 'a.plate').split('\n')) expect([...l].length).toBeLessThanOrEqual(80);
    expect(answersMarkdown([answerPage(answer)], 'a.plate')).toContain('| leg M3 → whelk | 384 mm |');
  });
});

describe('writing', () => {
  const written = (line: string, ...more: string[]): string => {
    const { snapshot, answer } = answers(`setup "Jug" {\n  table: 1200 x 900 mm\n  laser red at (100, 100) mm heading 0° {\n    coherence length: 1 m\n  }\n  ${line}\n  plate P1 at (400, 500) mm\n  beam raw from red\n    -> M1\n    -> P1\n${more.map(l => `  ${l}\n`).join('')}}\n`);
    expect(answer.choices.length + (answer.nearest ? 1 : 0)).toBeGreaterThan(0);
    return applyEdits(snapshot.text, (answer.choices[0] ?? answer.nearest!).edits).split('\n')[5]!;
  };
  // M1 stands 300 mm to the right of the laser: at x = 400 mm.
  test.each([
    ['mirror M1 at (?, 100) mm // by hand', '  mirror M1 at (400, 100) mm // by hand'],
    ['mirror M1 at (?, 10) cm', '  mirror M1 at (40, 10) cm'],
    ['mirror M1 at (? mm, 100 mm)', '  mirror M1 at (400 mm, 100 mm)'],
    ['mirror M1 beyond red by ?', '  mirror M1 beyond red by 300 mm'],
    ['mirror M1 beyond red by ? cm', '  mirror M1 beyond red by 30 cm'],
    ['mirror M1 beyond red by ? from 20 cm to 80 cm by 5 cm', '  mirror M1 beyond red by 30 cm'],
    ['mirror   M1  beyond red by ?   // ?', '  mirror   M1  beyond red by 300 mm   // ?'],
  ])('%s', (line, expected) => { expect(written(line, 'aim raw.1.length: 300 mm')).toBe(expected); });
  test('a place as a whole', () => {
    expect(written('mirror M1 at ? from (350, 50) mm to (450, 150) mm', 'aim raw.1.length: 300 mm', 'aim raw.2.length: 400 mm')).toMatch(/^ {2}mirror M1 at \(400, 100\) mm$/);
  });
});
