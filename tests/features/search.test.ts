import fc from 'fast-check';
import { expect, it } from 'vitest';
import { declaredIn, matching } from '../../server/features/search.ts';
import { EXAMPLES } from '../examples/library.ts';
import { FILE } from './source.ts';

const names = (text: string): string[] => declaredIn(FILE, text).map(d => `${d.kind} ${d.name}${d.inside === undefined ? '' : ` in ${d.inside}`} ${d.at.line + 1}:${d.at.start}–${d.at.end}`);

it('a page declares setups and inventories, and what is in them', () => {
  expect(names('use "no.plate"\ninventory lab {\n  mirror flat\n}\nsetup "a" {\n  mirror M1 = lab.flat\n  beam raw from M1\n    -> M1\n  variant "closer" {\n  }\n  shot 7 on 2026-02-11 {\n  }\n}\n')).toEqual([
    'inventory lab 2:10–13', 'thing flat in lab 3:9–13', 'setup a 5:6–9', 'thing M1 in a 6:9–11', 'beam raw in a 7:7–10', 'variant closer in a 9:10–18', 'shot shot 7 on 2026-02-11 in a 11:7–8',
  ]);
});

it('names are found by their first letters, by letters inside, and by letters in their order', () => {
  const all = ['Tide pool', 'whelk', 'elk', 'wheel k', 'M1'].map(name => ({ name }));
  const found = (query: string): string[] => matching(all, query).map(m => m.name);
  expect(found('ELK')).toEqual(['elk', 'whelk', 'wheel k']);
  expect(found('tide p')).toEqual(['Tide pool']);
  expect(found('')).toHaveLength(5);
  expect(found('1m')).toEqual([]);
});

it('of any text names are told that stand there', () => {
  const pieces = fc.constantFrom('setup "a" {', 'inventory lab {', 'variant "v" {', '}', 'laser', 'laser red', 'beam', 'beam b', 'shot', 'shot 7 {', '"', '😀', '-> P1', 'mirror M = lab.x');
  fc.assert(fc.property(fc.array(pieces, { maxLength: 30 }), fc.constantFrom('\n', '\r\n', ' '), (lines, end) => {
    for (const { at } of declaredIn(FILE, lines.join(end))) expect(at.end).toBeGreaterThan(at.start);
  }), { numRuns: 200 });
  for (const { text, uri } of EXAMPLES) for (let end = 0; end < text.length; end += Math.ceil(text.length / 17)) declaredIn(uri, `\ufeff${text.slice(0, end)}`);
});
