/** Reads values as they are written in a setup. */
import { expect } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { parseLine } from '../../grammar/parse-line.ts';
import { readQuantity } from '../../server/model/literal.ts';
import type { Quantity } from '../../server/model/quantity.ts';

/** A literal with its unit and tolerance. */
export function quantity(text: string): Quantity {
  const line = parseLine(`value: ${text}`);
  expect(line.issue, text).toBeUndefined();
  const read = readQuantity(line.value!);
  if ('problem' in read) throw new Error(`${text}: ${read.problem.code}`);
  return read.ok;
}

/** The lowest and the highest value that a tolerance leaves. */
export function ends(text: string): [number, number] {
  const { value, spread } = quantity(text);
  if (spread?.kind === 'within') return [value - spread.amount, value + spread.amount];
  if (spread?.kind === 'factor') return [value / spread.amount, value * spread.amount];
  throw new Error(`${text} has no ends`);
}

/** The sizes of an object, in mm. */
export function sizes(text: string): number[] {
  const { model, findings } = analyse('file:///saltmarsh/whelk.plate', `setup "Whelk shell" {\nobject whelk {\nsize: ${text}\n}\n}\n`);
  expect(findings.map(f => f.message)).toEqual([]);
  const value = model.setups[0]!.things.get('whelk')!.facts.get('size')!.value;
  if (value.kind !== 'sizes') throw new Error(`${text} are no sizes`);
  return value.parts.map(p => Number((p.value * 1000).toFixed(9)));
}

/** Errors and warnings of lines inside a setup, each as its code and what it marks: `missing-unit 120`. */
export function found(...lines: string[]): string[] {
  const text = `setup "Whelk shell" {\n${lines.join('\n')}\n}\n`;
  return analyse('file:///saltmarsh/whelk.plate', text).findings.filter(f => f.severity === 'error' || f.severity === 'warning')
    .map(f => `${f.code} ${text.split('\n')[f.at.line]!.slice(f.at.start, f.at.end)}`);
}

/** What the findings of a code say besides their words. */
export function dataOf(code: string, ...lines: string[]): Readonly<Record<string, unknown>> {
  const finding = analyse('file:///saltmarsh/whelk.plate', `setup "Whelk shell" {\n${lines.join('\n')}\n}\n`).findings.find(f => f.code === code);
  if (!finding) throw new Error(`no ${code}`);
  return finding.data;
}

/** Value and standard uncertainty of the `let` called `it`, SI. */
export function letValue(...lines: string[]): { value: number; u: number } {
  const { results, findings } = analyse('file:///saltmarsh/whelk.plate', `setup "Whelk shell" {\n${lines.join('\n')}\n}\n`);
  expect(findings.map(f => f.message)).toEqual([]);
  const { graph } = results[0]!;
  const cell = graph.find('it')!;
  return { value: graph.value(cell)!, u: graph.uncertainty(cell) };
}
