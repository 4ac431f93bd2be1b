/** What the tests of results share: a setup read from its text, and its figures by name. */
import { expect } from 'vitest';
import { analyse, type Snapshot } from '../../server/analysis.ts';
import type { Finding } from '../../server/checks/check.ts';
import type { Cell } from '../../server/results/graph.ts';
import { resultNamed } from '../../server/results/names.ts';
import type { Results } from '../../server/results/plan.ts';

export interface Read {
  readonly snapshot: Snapshot;
  readonly results: Results;
  /** the cell of a canonical or a short name */
  readonly cell: (name: string) => Cell;
  /** value in SI */
  readonly value: (name: string) => number;
  /** value in mm */
  readonly mm: (name: string) => number;
  /** standard uncertainty in SI */
  readonly u: (name: string) => number;
}

/** The first setup of a text. */
export function read(text: string): Read {
  const snapshot = analyse('file:///saltmarsh/setup.plate', text);
  const results = snapshot.results[0]!;
  const { graph, aliases } = results;
  const cell = (name: string): Cell => {
    const found = resultNamed(graph, aliases, name);
    if (!found) throw new Error(`nothing is called ${name}; there are ${results.published.map(c => c.name).join(', ')}`);
    return found;
  };
  const value = (name: string): number => {
    const found = cell(name);
    expect(found.missing, name).toBeUndefined();
    return graph.value(found)!;
  };
  return { snapshot, results, cell, value, mm: name => value(name) * 1000, u: name => graph.uncertainty(cell(name)) };
}

/** Findings that are no hints, as `7 arms-mismatched`, lines counted from 1. */
export const serious = (findings: readonly Finding[]): string[] => findings.filter(f => f.severity !== 'hint').map(f => `${f.at.line + 1} ${f.code}`);

/** A setup around some lines. */
export const setup = (...lines: string[]): string => `setup "Whelk shell" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`;

export function expectNear(result: number, expected: number, allowed: number, label = ''): void {
  expect(Math.abs(result - expected), `${label} ${result} should be ${expected} ± ${allowed}`).toBeLessThanOrEqual(allowed);
}
