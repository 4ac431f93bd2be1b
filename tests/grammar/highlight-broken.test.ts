/** A line that is torn is coloured as far as it is understood, and never colours what stands below it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EXAMPLES } from '../examples/library.ts';
import { colourBehind, colours, miscoloured } from './coloured.ts';
import { loose, soup } from './sentences.ts';

const GOOD = ['  mirror M1 at (300, 200) mm // old', '    -> P1: 721 mm ± 2 mm', '  /// a note', '}', 'setup "Whelk" {'];
const TORN = [
  '  note: "no end', '  note: "no end \\', '  note: "', 'setup "Whelk {', 'use "lab', '  size: 4" x 5"', '  mirror M1 at (300, 200 mm', '  mirror M1 at (', '  beam', '  beam from', '  ->', '    -> M1:', '  measured', '  measured S1 ->',
  '  expect', '  aim beam ratio', '  accept', '  let', '  let gap =', '{', '{{{', '}}', '/', '/ /', '//', '///', '  wavelength: 632,8 nm', '  focal length:', '  n: ±', '  n: 5 mm ±', '  shot', '  shot 7 on 2026-02-', '\\', '🐚 " // {',
];
/** What stands below a line, as coloured there and as coloured alone. */
function below(torn: string): void {
  const { state } = colourBehind(torn, null);
  for (const line of GOOD) expect(colourBehind(line, state).parts, `${line} below ${torn}`).toEqual(colours(line));
}

describe('what stands below is coloured as if it stood alone', () => {
  test.each(TORN)('%j', below);
  test('below pieces of sentences, and below any signs in any order', () => { fc.assert(fc.property(fc.oneof(loose, soup), below), { numRuns: 500 }); });
  test('below each line of the examples that is cut anywhere', () => {
    const lines = new Set(EXAMPLES.flatMap(p => p.text.split('\n')).map(l => l.trimStart()).filter(l => l !== '' && !l.startsWith('//')).map(l => l.replace(/\d+/g, '7')));
    expect(lines.size).toBeGreaterThan(200);
    for (const line of lines) for (let end = 1; end <= line.length; end += 3) below(line.slice(0, end));
  });
});

test.each(TORN)('what is understood of %j is coloured as the language reads it', torn => {
  expect(miscoloured(torn)).toEqual([]);
});
