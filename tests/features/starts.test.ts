/** Pages to begin with: whole, without a finding, matched, and as the formatter writes them. */
import { describe, expect, test } from 'vitest';
import { format } from '../../grammar/format.ts';
import { analyse, type Library } from '../../server/analysis.ts';
import { STARTS, startOf } from '../../server/features/starts/starts.ts';
import { fixesFor } from '../../server/features/fixes/fixes.ts';
import { applyEdits } from '../../server/model/edits.ts';

/** A page that was never saved lies beside nothing. */
const nothing: Library = { resolve: () => null, text: () => undefined };
const read = (text: string): ReturnType<typeof analyse> => analyse('untitled:Untitled-1', text, nothing);
const layouts = STARTS.filter(s => s.name !== 'practice' && s.name !== 'empty').map(s => [s.name, s] as const);

test('names are typed and become names of files', () => {
  expect(STARTS.every(s => /^[a-z]+(-[a-z]+)*$/.test(s.name))).toBe(true);
  expect(new Set(STARTS.map(s => s.name)).size).toBe(STARTS.length);
  expect(new Set(STARTS.map(s => s.title)).size).toBe(STARTS.length);
  expect(startOf('transmission')?.title).toBe('Transmission, two beams');
  expect(startOf('toString')).toBeUndefined();
});

/** The usual layouts of a table, and the one that needs no table. */
test('the list has the usual layouts, a page to practise on and an empty one', () => {
  expect(STARTS.map(s => s.name)).toEqual(['by-string', 'transmission', 'single-beam', 'split-reflection', 'key-and-fill', 'back-lit', 'parallel-reference', 'reflection-transfer', 'rainbow-transfer', 'practice', 'empty']);
});

describe.each(layouts)('%s', (name, { text }) => {
  const s = read(text);
  test('has one setup and nothing to say against it', () => {
    expect(s.model.setups).toHaveLength(1);
    expect(s.findings).toEqual([]);
  });
  test('has arms that match within 10 mm, or one beam', () => {
    const goals = text.split('\n').filter(l => l.includes('expect '));
    expect(goals).toEqual(name === 'single-beam' ? [] : name === 'key-and-fill' ? ['  expect P1.key.mismatch < 10 mm', '  expect P1.fill.mismatch < 10 mm'] : ['  expect mismatch < 10 mm']);
    const mismatches = s.results.flatMap(r => r.published.filter(c => c.name.endsWith('mismatch')).map(c => r.graph.value(c)));
    expect(mismatches.length).toBeGreaterThan(0);
    // Of one beam the object is the detour: 12 mm from the middle of the plate, there and back along the normal at 56.6° from the light, 12 mm · (1 + cos 56.6°) = 18.6 mm.
    for (const m of mismatches) expect(Math.abs(m!)).toBeLessThan(name === 'single-beam' ? 0.019 : 0.01);
  });
  test('begins with what to change first, uses no other file, is short and tidy', () => {
    expect(text).toMatch(/^setup \"[^\"]+\" \{\n  \/\/ Change first: /);
    for (const line of text.split('\n')) expect(line.length).toBeLessThan(95);
    expect(text).not.toMatch(/^use /m);
    expect(text.split('\n').length).toBeLessThan(70);
    expect(format(text).text).toBe(text);
  });
});

test('the page to practise on has one finding, and its first fix puts it right', () => {
  const { text } = startOf('practice')!;
  const s = read(text);
  expect(s.findings.map(f => f.code)).toEqual(['arms-mismatched']);
  const [fix] = fixesFor(s, s.findings[0]!, nothing);
  expect(read(applyEdits(text, fix!.edits)).findings).toEqual([]);
});

test('the empty page holds no setup and no finding', () => {
  const s = read(startOf('empty')!.text);
  expect([s.model.setups, s.findings]).toEqual([[], []]);
});
