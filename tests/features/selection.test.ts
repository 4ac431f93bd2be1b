import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { selectionsAt } from '../../server/features/selection.ts';
import { FILE, marked } from './source.ts';

/** What is selected step by step at the mark `|`; several lines as the first and the last one, from 1. */
function check(source: string, ...wanted: string[]): void {
  const { snapshot, line, character } = marked(source);
  const lines = snapshot.tree.lines.map(l => l.text);
  expect(selectionsAt(snapshot, line, character).map(({ from, to }) => (from.line === to.line ? lines[from.line]!.slice(from.character, to.character) : `${from.line + 1}:${from.character}–${to.line + 1}:${to.character}`))).toEqual(wanted);
}

describe('what is selected step by step', () => {
  it('from a number to its unit, place, clause, statement, block, setup and page', () => check(
    'setup "a" {\n  mirror M1 at (3|50, 100) mm { // left\n    loss: 3%\n  }\n}\n\n',
    '350', '(350, 100) mm', 'at (350, 100) mm', 'mirror M1 at (350, 100) mm', 'mirror M1 at (350, 100) mm {', 'mirror M1 at (350, 100) mm { // left', '2:2–4:3', '1:0–5:1', '1:0–7:0',
  ));
  it('from a name to the path of a result', () => check('setup "a" {\n  expect P1.refer|ence.length < 2 m\n}', 'reference', 'P1.reference.length', 'expect P1.reference.length < 2 m', '1:0–3:1'));
  it('in a formula', () => check('let a = 2 * min(gap, 3 m|m)', 'mm', '3 mm', 'min(gap, 3 mm)', '2 * min(gap, 3 mm)', 'let a = 2 * min(gap, 3 mm)'));
  it('in a beam with its legs', () => check('setup "a" {\n  beam b from red\n    -> M|1: 1 m\n    -> P1\n  plate P1\n}\n', 'M1', '-> M1: 1 m', '2:2–4:9', '2:2–5:10', '1:0–6:1', '1:0–7:0'));
  it('in a note, and on an empty line', () => {
    // Between the braces stand the lines 2 and 3.
    check('setup "a" {\n  // be| low\n\n}', '// be low', '2:2–3:0', '1:0–4:1');
    check('setup "a" {\n  plate P1\n|\n}', '2:2–3:0', '1:0–4:1');
    check('|');
  });
  it('counts UTF-16 units', () => check('setup "a" {\n  // 😀\n  laser µ|1 // 😀\n}', 'µ1', 'laser µ1', 'laser µ1 // 😀', '2:2–3:16', '1:0–4:1'));
});

it('outside of the text there is nothing', () => {
  for (const [line, character] of [[9, 0], [-1, -1]] as const) expect(selectionsAt(analyse(FILE, 'plate P1'), line, character)).toEqual([]);
  expect(selectionsAt(analyse(FILE, 'plate P1'), 0, 999)[0]).toEqual({ from: { line: 0, character: 6 }, to: { line: 0, character: 8 } });
});
