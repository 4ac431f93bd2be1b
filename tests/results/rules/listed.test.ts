/** That no rule is missing in `every.ts`. It reads the code, so that it is left out where that is changed to see what tests notice. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { EVERY, OF_A_SETUP } from './every.ts';
import type { Rule } from '../../../server/results/graph.ts';

const FOLDER = new URL('../../../server/results/rules/', import.meta.url);
/** Makes rules of rules, for the others. */
const TOOLS = ['slopes.ts'];
/** As rules are declared here: `export const NAME: Rule = …`, `export const make = (…): Rule => …`, and with what adds slopes or components. */
const DECLARED = /^export (?:const|function) (\w+)[^\n]*?(?:: Rule\b(?!\[)|= smooth\(|= each\(|= straight\()/gm;

test('each rule is in the list, or takes a whole setup and states no slopes by hand', async () => {
  const known = new Set([...EVERY.map(u => u.exported), ...OF_A_SETUP.keys()]);
  const files = readdirSync(FOLDER).filter(f => f.endsWith('.ts') && !TOOLS.includes(f));
  let found = 0;
  for (const file of files) {
    const module = await import(new URL(file, FOLDER).href) as Record<string, unknown>;
    const declared = new Set([...readFileSync(new URL(file, FOLDER), 'utf8').matchAll(DECLARED)].map(m => m[1]!));
    for (const [name, value] of Object.entries(module)) {
      if (!declared.has(name) && !isRule(value)) continue;
      found++;
      expect(known.has(value), `${file}: ${name} has no figure in tests/results/rules/every.ts`).toBe(true);
    }
  }
  expect(found).toBe(known.size);
});
const isRule = (v: unknown): v is Rule => typeof v === 'object' && v !== null && 'compute' in v && 'formula' in v;
