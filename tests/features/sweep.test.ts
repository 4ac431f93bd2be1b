/** A sweep against the other way to the same: what is tried gives what the page gives when it is written there. And every number of the examples can be swept. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { sweepCsv } from '../../server/features/sweep/csv.ts';
import { sweepPage } from '../../server/features/sweep/page.ts';
import { stretchesOf, stretchWords } from '../../server/features/sweep/stretches.ts';
import { sweepTable, type SweepTable } from '../../server/features/sweep/sweep.ts';
import { sweepText } from '../../server/features/sweep/text.ts';
import type { Cell } from '../../server/results/graph.ts';
import type { Results } from '../../server/results/plan.ts';
import { askedOf } from '../../server/results/sweep.ts';

const folder = new URL('../../examples/', import.meta.url);
const library: Library = { resolve: path => path, text: uri => { try { return readFileSync(new URL(uri, folder), 'utf8'); } catch { return undefined; } } };
const snapshotOf = (text: string): Snapshot => analyse('page.plate', text, library);
const swept = (snapshot: Snapshot, results: Results, input: Cell, values: readonly number[], asked: readonly string[]): SweepTable => sweepTable(snapshot, [{ results, label: undefined, inputs: [input] }], [{ input, values }], asked);

const ASKED = ['mismatch', 'object length', 'reference length', 'reference angle', 'object angle', 'lighting angle', 'corner light', 'beam ratio', 'fringes'];

interface Tried { readonly file: string; readonly line: number; readonly was: string; readonly before: string; readonly after: string; readonly name: string; readonly value: number }

/** Numbers of a page that stand alone behind a leg, a placement or a focal length, each with the page in which it is 3 % more. */
function numbersIn(file: string): Tried[] {
  // A reading holds what it measured, and an edit of the text does not.
  const before = readFileSync(new URL(file, folder), 'utf8').split('\n').filter(l => !/^\s*(?:measured|expect|aim)\b/.test(l)).join('\n').replace(/reflects: \?.*/g, 'reflects: 95%');
  const snapshot = snapshotOf(before);
  const r = snapshot.results[0];
  if (!r || snapshot.findings.some(f => f.severity === 'error')) return [];
  const lines = before.split('\n');
  return lines.flatMap((line, n): Tried[] => {
    if (n < r.setup.node.at || n > r.setup.node.end || /^\s*(?:\/\/|variant|shot|process)/.test(line)) return [];
    const found = /(?<=->[^:]*: *|\bby |\bheading |focal length: |diameter: |depth: )(\d+(?:\.\d+)?)( ?(?:mm|°|µm))(?! *[±×])/.exec(line) ?? /(?<=\bat \()(\d+(?:\.\d+)?)(?=,)/.exec(line);
    if (!found) return [];
    const [was, number] = found;
    const cell = r.graph.cells.find(c => !c.rule && !c.missing && c.at?.line === n && c.at.start <= found.index && c.at.end > found.index && c.at.uri === 'page.plate');
    if (!cell) return [];
    const more = (Number(number) * 1.03).toFixed(3);
    return [{ file, line: n + 1, was, before, after: lines.with(n, line.slice(0, found.index) + was.replace(number!, more) + line.slice(found.index + was.length)).join('\n'), name: cell.name, value: r.graph.value(cell)! * (Number(more) / Number(number)) }];
  });
}

const files = readdirSync(folder).filter(f => f.endsWith('.plate')).sort();
const all = files.flatMap(numbersIn);

describe('what is tried gives what the page gives when it is written there', () => {
  test('there are enough of them', () => { expect(all.length).toBeGreaterThan(40); });
  test.each(all.filter((_, i) => i % 3 === 0).map(n => [`${n.file} ${n.line}: ${n.was}`, n] as const))('%s', (_, { before, after, name, value }) => {
    const [snapshot, edited] = [snapshotOf(before), snapshotOf(after)];
    const [r, now] = [snapshot.results[0]!, edited.results[0]!];
    const input = r.graph.find(name)!;
    // A short name may mean the largest of several, which may be another by then.
    const asked = [...new Set(ASKED.flatMap(a => [a, `P1.${a}`, `P2.${a}`]).flatMap(a => askedOf(r, a)?.name ?? []))];
    const [row] = swept(snapshot, r, input, [value], asked).curves[0]!.rows;
    expect(asked.length).toBeGreaterThan(0);
    asked.forEach((a, i) => {
      const [cell, point] = [askedOf(now, a), row![i]!];
      const expected = cell && now.graph.value(cell);
      if (expected === undefined) expect(point.value).toBeUndefined();
      else expect(Math.abs(point.value! - expected), a).toBeLessThanOrEqual(1e-9 * Math.max(1e-3, Math.abs(expected)));
    });
  }, 60_000);
});

describe('every number of the examples can be swept', () => {
  test.each(files.flatMap(f => snapshotOf(readFileSync(new URL(f, folder), 'utf8')).results.length > 0 ? [[f] as const] : []))('%s', file => {
    const snapshot = snapshotOf(readFileSync(new URL(file, folder), 'utf8'));
    const [r] = snapshot.results;
    const inputs = r!.graph.cells.filter(c => !c.rule && !c.missing && c.at !== undefined && !/~|^expect |^limit /.test(c.name)).filter((_, i) => i % 9 === 0);
    for (const input of inputs) {
      const v = r!.graph.value(input)!;
      const t = swept(snapshot, r!, input, [0, v, 2 * v + 1e-3], ['mismatch', 'brightness', 'beam ratio'].filter(n => r!.aliases.get(n)?.length === 1));
      expect(sweepCsv(t) + sweepText(sweepPage(t)), input.name).not.toMatch(/NaN|Infinity|undefined/);
    }
  }, 120_000);
});

test('where something holds, in words', () => {
  const texts = ['10 mm', '20 mm', '30 mm', '40 mm', '50 mm'];
  const words = (...rows: number[]): string => stretchWords(stretchesOf(5, i => rows.includes(i)), texts);
  expect([words(0, 1), words(3, 4), words(1, 2), words(2), words(0, 1, 4), words(0, 1, 2, 3, 4), words()]).toEqual(['up to 20 mm', 'from 40 mm on', 'from 20 mm to 30 mm', 'at 30 mm', 'up to 20 mm and at 50 mm', 'throughout', '']);
});
