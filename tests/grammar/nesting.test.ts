/** How lines nest: blocks, legs, notes; and what does not pair. */
import { expect, test } from 'vitest';
import { MAX_DEPTH } from '../../grammar/nest.ts';
import { parse } from '../../grammar/parse.ts';
import { checkTree, sample, SAMPLES } from './check.ts';

test('a block holds what stands between its braces', () => {
  checkTree(`
setup "Whelk" {
  laser red {
    wavelength: 632.8 nm

    // from the label
    power: 12 mW
  }
  plate P1
}
setup "Limpet" {
}
`, `
setup "Whelk" { (to 9)
  laser red { (to 7)
    wavelength: 632.8 nm
    power: 12 mW
  plate P1
setup "Limpet" { (to 11)`);
});

test('legs belong to the beam above, whatever the indents and empty lines between', () => {
  checkTree(`
beam raw from red
-> S1: 350 mm
        -> M1

// by way of the post
  -> P1
  beam object from S1 reflected
-> whelk
`, `
beam raw from red (to 6)
    -> S1: 350 mm
    -> M1
    -> P1
beam object from S1 reflected (to 8)
    -> whelk`);
});

test('a line that cannot be read stands between legs without taking them over', () => {
  checkTree(`
beam raw from red
  -> S1
  ; M1
  -> P1
`, `
beam raw from red (to 4)
    -> S1
    -> P1
; M1`);
});

test('a beam that cannot be read wholly keeps its legs', () => {
  checkTree('beam raw from = red\n  -> S1', 'beam raw from = red (to 1)\n    -> S1');
});

test('legs stay with a misspelt beam', () => {
  checkTree('baem raw from red\n  -> S1\n  -> P1', 'baem raw from red (to 2)\n    -> S1\n    -> P1');
});

test('legs without a statement above are one issue', () => {
  checkTree('-> S1', '! leg-without-beam in 0');
  checkTree('mirror M1 {\n}\n-> S1\n-> P1', 'mirror M1 { (to 1)\n! leg-without-beam in 2');
  checkTree('mirror M1 {\n  -> S1\n  loss: 4%\n}', 'mirror M1 { (to 3)\n  loss: 4%\n! leg-without-beam in 1');
  checkTree('setup "a" {\n  beam raw from red\n}\n-> S1', 'setup "a" { (to 2)\n  beam raw from red\n! leg-without-beam in 3');
});

test('a note belongs to the statement below it', () => {
  checkTree(`
/// Last winter's whelk,
///   from the notebook.
setup "Whelk" {
  /// thick
  // (a comment between does not matter)
  mirror M1
  /// lost: an empty line follows

  mirror M2
  /// lost: the block ends
}
mirror M3
beam raw from red
  /// by way of the post
  -> S1
`, `
setup "Whelk" { (to 11) /// "Last winter's whelk,\\nfrom the notebook."
  mirror M1 /// "thick"
  mirror M2
mirror M3
beam raw from red (to 15)
    -> S1 /// "by way of the post"`);
});

test('a brace too few or too many is an issue at its line; the indents tell what was meant', () => {
  checkTree(`
setup "a" {
  mirror M1 {
    loss: 4%
  mirror M2
}
mirror M3
`, `
setup "a" { (to 5)
  mirror M1 { (to 3)
    loss: 4%
  mirror M2
mirror M3
! brace-not-closed in 2`);
  checkTree(`
setup "a" {
  mirror M1
    loss: 4%
  }
  mirror M2
}
mirror M3
`, `
setup "a" { (to 6)
  mirror M1 (to 4)
    loss: 4%
  mirror M2
mirror M3
! brace-not-opened in 4`);
  checkTree('mirror M1\n}\nmirror M2\n', 'mirror M1\nmirror M2\n! brace-not-opened in 1');
  checkTree('setup "a" {\n', 'setup "a" { (to 1)\n! brace-not-closed in 0');
});

test('where all braces pair, indents mean nothing', () => {
  checkTree('setup "a" {\nmirror M1 {\n      loss: 4%\n   }\n         mirror M2\n  }\n    mirror M3', 'setup "a" { (to 5)\n  mirror M1 { (to 3)\n    loss: 4%\n  mirror M2\nmirror M3');
});

test('blocks nest as deep as the limit; what lies deeper is one issue and does not spill', () => {
  const nest = (depth: number): string => 'a {\n'.repeat(depth) + 'inner\n' + '}\n'.repeat(depth) + 'after\n';
  const within = parse(nest(MAX_DEPTH));
  expect(within.issues).toEqual([]);
  const beyond = parse(nest(MAX_DEPTH + 3));
  expect(beyond.issues).toEqual([{ code: 'nested-too-deep', at: MAX_DEPTH }]);
  expect(beyond.nodes.map(n => n.line.text)).toEqual(['a {', 'after']);
});

test('a beam inside blocks that are too deep does not take legs outside of them', () => {
  const deep = 'a {\n'.repeat(MAX_DEPTH + 1) + 'beam raw from red\n' + '}\n'.repeat(MAX_DEPTH + 1) + '-> S1\n';
  expect(parse(deep).issues.map(i => i.code)).toEqual(['nested-too-deep', 'leg-without-beam']);
});

test.each(SAMPLES)('%s is read wholly', name => {
  const tree = parse(sample(name));
  expect(tree.issues).toEqual([]);
  expect(tree.lines.filter(l => l.issue)).toEqual([]);
  const nodes = tree.nodes.flatMap(function all(n): typeof tree.nodes { return [n, ...[...n.legs, ...n.children].flatMap(all)]; });
  expect(nodes.length).toBe(tree.lines.filter(l => l.kind === 'statement' || l.kind === 'leg').length);
  for (const node of nodes) expect(tree.lines[node.at]).toBe(node.line);
});
