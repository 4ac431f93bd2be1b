/**
 * Nothing that is offered is wrong where it is offered: each item, written at the cursor, raises no error at its own place but those that say
 * that something is still missing. Checked at places all over the examples, in text that ends at the cursor and in text that goes on below it.
 * `EVERY_PLACE=1 npx vitest run tests/features/completion-sound.test.ts` looks at all places and all items.
 */
import { expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { analyse, type Snapshot } from '../../server/analysis.ts';
import type { Finding } from '../../server/checks/check.ts';
import { completionsAt, type Completion } from '../../server/features/completion/completion.ts';
import { disk, EXAMPLES, type Page } from '../examples/library.ts';
import { withoutStops } from './snippets.ts';

/** What is offered may be the beginning of something. */
const UNFINISHED = ['value-missing', 'value-expected', 'name-missing', 'port-missing', 'reason-missing', 'placement-incomplete', 'change-missing', 'brace-not-closed', 'import-unreadable', 'unclosed-text'];

const every = process.env['EVERY_PLACE'] === '1';
const [PLACES, ITEMS] = every ? [Infinity, Infinity] : [14, 7];

/** Some of a list, spread over it; a different choice for each `turn`. */
function some<T>(all: readonly T[], count: number, turn: number): T[] {
  if (all.length <= count) return [...all];
  const step = all.length / count;
  return Array.from({ length: count }, (_, i) => all[Math.floor(i * step + ((turn * 7) % step))]!);
}

interface Place { readonly text: string; readonly line: number; readonly character: number }

/** The page up to the end of each token, and up to the middle of each word; once with what stands below the line, once without it. */
function places({ text }: Page): Place[] {
  const lines = text.split('\n');
  return parse(text).lines.flatMap((tree, line) => tree.tokens.flatMap(t => [t.end, ...(t.type === 'word' && t.end - t.start > 2 ? [t.start + 2] : [])]).flatMap(end => ['', ' '].flatMap(blank => {
    const own = tree.text.slice(0, end) + blank;
    return [[...lines.slice(0, line), own, ...lines.slice(line + 1)], [...lines.slice(0, line), own]].map(l => ({ text: l.join('\n'), line, character: own.length }));
  })));
}

function written(s: Snapshot, item: Completion, text: string): { text: string; end: number; endLine: number } {
  const lines = s.text.split('\n');
  const own = lines[item.at.line]!;
  const indented = text.replaceAll('\n', `\n${/^\s*/.exec(own)![0]}`);
  lines[item.at.line] = own.slice(0, item.at.start) + indented + own.slice(item.at.end);
  const rows = indented.split('\n');
  return { text: lines.join('\n'), endLine: item.at.line + rows.length - 1, end: rows.length === 1 ? item.at.start + indented.length : rows[rows.length - 1]!.length };
}

/** How long a leg is may only be known when its beam is written. */
const tooFar = (f: Finding, item: Completion): boolean => f.code === 'impossible-value' && item.kind === 'unit' && f.message.includes('the leg from');

function wrong(before: Snapshot, item: Completion, text: string): Finding[] {
  const after = written(before, item, text);
  const had = before.findings.filter(f => f.at.line === item.at.line && f.at.end <= item.at.start).map(f => `${f.code} ${f.at.start}`);
  return analyse(before.uri, after.text, disk).findings.filter(f => f.severity === 'error' && !UNFINISHED.includes(f.code) && !tooFar(f, item) && !had.includes(`${f.code} ${f.at.start}`)
    && (f.at.line > item.at.line || (f.at.line === item.at.line && f.at.end > item.at.start)) && (f.at.line < after.endLine || (f.at.line === after.endLine && f.at.start < after.end)));
}

test.each(EXAMPLES.map((p, i) => [p.name, p, i] as const))('%s', (_, page, turn) => {
  const found: string[] = [];
  for (const [n, place] of some(places(page), PLACES, turn).entries()) {
    const s = analyse(page.uri, place.text, disk);
    const items = completionsAt(s, place.line, place.character);
    for (const item of some(items, ITEMS, turn + n)) {
      for (const text of new Set([...(item.stopsOnly ? [] : [item.text]), ...(item.snippet === undefined ? [] : [withoutStops(item.snippet)])])) {
        const own = place.text.split('\n')[place.line]!;
        for (const f of wrong(s, item, text)) found.push(`${place.line + 1} “${own}” + ${item.label} (${JSON.stringify(text)}): ${f.code}: ${f.message}`);
      }
    }
  }
  expect(found).toEqual([]);
}, 600_000);
