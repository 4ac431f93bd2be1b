/**
 * Half-typed text is the normal case: each example, cut at every end of a token, is analysed without harm.
 * `EVERY_CHARACTER=1 npx vitest run tests/examples/prefixes.test.ts` cuts it behind every character.
 */
import { expect, test } from 'vitest';
import { LineCache, parse } from '../../grammar/parse.ts';
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
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

/** The files that a page uses stay as they are while it is typed, and are kept as an editor’s server keeps them. */
function library(): Library {
  const kept = new Map<string, { text: string | undefined; lines: LineCache }>();
  const at = (uri: string): { text: string | undefined; lines: LineCache } => {
    const file = kept.get(uri) ?? { text: disk.text(uri), lines: new LineCache() };
    kept.set(uri, file);
    return file;
  };
  return { ...disk, text: uri => at(uri).text, lines: uri => at(uri).lines };
}

function holds(s: Snapshot): void {
  expect(s.findings.filter(f => Object.values(f.data).some(v => typeof v === 'number' && !Number.isFinite(v)))).toEqual([]);
  for (const r of s.results) expect(r.published.filter(c => !Number.isFinite(r.graph.value(c) ?? 0)).map(c => c.name)).toEqual([]);
  // What is typed so far is one slip at its end, besides the open braces and names that are only declared below.
  const errors = s.findings.filter(f => f.severity === 'error' && f.code !== 'brace-not-closed' && f.code !== 'unknown-name');
  const last = s.tree.lines.length - 1;
  const here = errors.filter(f => f.at.line === last && s.tree.lines[last]!.issue);
  expect(here.length, `${s.tree.lines[last]!.text}\n${here.map(f => f.code).join(', ')}`).toBeLessThanOrEqual(1);
}

test.each(EXAMPLES.map(p => [p.name, p] as const))('%s', (_, page) => {
  const cache = new LineCache();
  const files = library();
  for (const end of cuts(page)) holds(analyse(page.uri, page.text.slice(0, end), files, cache));
}, 600_000);
