/**
 * Half-typed text is the normal case: each example, cut at every end of a token, is analysed without harm.
 * `EVERY_CHARACTER=1 npx vitest run tests/examples/prefixes.test.ts` cuts it behind every character.
 */
import { expect, test } from 'vitest';
import { LineCache, parse } from '../../grammar/parse.ts';
import { analyse, type Snapshot } from '../../server/analysis.ts';
import { EXAMPLES, disk, type Page } from './library.ts';

const everyCharacter = process.env['EVERY_CHARACTER'] === '1';

function cuts({ text }: Page): number[] {
  if (everyCharacter) return Array.from({ length: text.length }, (_, i) => i);
  let start = 0;
  return parse(text).lines.flatMap(line => {
    const here = [start, ...line.tokens.map(t => start + t.end)];
    start += line.text.length + 1;
    return here;
  });
}

function holds(s: Snapshot): void {
  for (const f of s.findings) expect(Object.values(f.data).every(v => typeof v !== 'number' || Number.isFinite(v)), `${f.code}: ${JSON.stringify(f.data)}`).toBe(true);
  for (const r of s.results) for (const c of r.published) expect(Number.isFinite(r.graph.value(c) ?? 0), c.name).toBe(true);
  // What is typed so far is one slip at its end, besides the open braces and names that are only declared below.
  const errors = s.findings.filter(f => f.severity === 'error' && f.code !== 'brace-not-closed' && f.code !== 'unknown-name');
  const last = s.tree.lines.length - 1;
  const here = errors.filter(f => f.at.line === last && s.tree.lines[last]!.issue);
  expect(here.length, `${s.tree.lines[last]!.text}\n${here.map(f => f.code).join(', ')}`).toBeLessThanOrEqual(1);
}

test.each(EXAMPLES.map(p => [p.name, p] as const))('%s', (_, page) => {
  const cache = new LineCache();
  for (const end of cuts(page)) holds(analyse(page.uri, page.text.slice(0, end), disk, cache));
}, 600_000);
