import { describe, expect, it } from 'vitest';
import { analyse, type Library } from '../../server/analysis.ts';
import { highlightsAt, useAt, usesOf } from '../../server/features/references.ts';
import { EXAMPLES, PUBLISHED, disk } from '../examples/library.ts';
import { FILE, marked } from './source.ts';

/** The cursor is `|`. All places of the name at it stand between `«` and `»`, the declaration between `«!` and `»`; or nothing is marked and nothing found. */
function check(source: string, library?: Library): void {
  const { snapshot, line, character } = marked(source.replace(/«!?|»/g, ''), library);
  const wanted: string[] = [];
  source.replace('|', '').split('\n').forEach((text, n) => {
    let taken = 0;
    for (const m of text.matchAll(/«(!?)([^»]*)»/g)) {
      const start = m.index - taken;
      taken += m[0].length - m[2]!.length;
      wanted.push(`${n}:${start}–${start + m[2]!.length}${m[1]}`);
    }
  });
  const found = highlightsAt(snapshot, line, character).map(u => `${u.at.line}:${u.at.start}–${u.at.end}${u.declares ? '!' : ''}`);
  expect(found.sort()).toEqual(wanted.sort());
}

const inSetup = (...lines: string[]): string => `setup "a" {\n  laser red\n  splitter S1\n  plate P1\n  beam raw from red\n    -> S1: 1 m\n${lines.map(l => `  ${l}`).join('\n')}\n}`;
/** A setup in which everything is named everywhere; `what` names it as the marks want. */
const BENCH = `setup "a" {
  let gap = 300 mm
  laser red
  splitter S1 at (0, 0) mm
  mirror M1 at (gap, 0) mm facing P1 {
    focal length: 2 * gap
  }
  mirror M2 on S1 -> M1 by gap
  mirror M3 beyond M1 by R1.focal length turning left
  spreader R1 {
    focal length: 20 mm
  }
  object whelk
  plate P1
  string thread
  beam raw from red
    -> S1: gap
  beam reference from S1 through
    -> M1: 750 mm
    -> P1: raw.1.length
  beam object from S1 reflected
    -> M2: M1.focal length
    -> whelk: 384 mm
    -> P1: 300 mm
  measured S1 -> M1: 752 mm by thread
  measured reference at P1 through polarizer: 0.3
  measured object - reference: -3 mm by thread
  measured raw at S1: 12 mW
  measured S1 wheel: 4.5
  moved M1 on 2026-02-14: "the cat"
  expect P1.object.mismatch < gap / 30
  expect P1.reference.length from gap to 5 * gap
  expect P1.whelk.far.brightness > 40%
  expect whelk.brightness > 40%
  accept arms-mismatched "as ever" for P1.object
  accept unused-thing "as ever" for M3
  variant "b" {
    M1 at (2 * gap, 0) mm facing whelk
    S1.reflects: 90%
    M1 {
      focal length: gap
    }
    S1 -> M1: 760 mm
    raw.1: 310 mm
    let gap = 310 mm
    beam reference from S1 through
      -> P1: 800 mm
  }
}`;
/** The bench with every place of a name marked: those that stand in these pieces of its lines, in which the name is written `§`. The first one declares it. */
function everywhere(name: string, pieces: readonly string[]): void {
  let text = BENCH;
  pieces.forEach((piece, i) => {
    const plain = piece.replaceAll('§', name);
    if (text.split(plain).length !== 2) throw new Error(`“${plain}” does not stand there once`);
    text = text.replace(plain, () => piece.replaceAll('§', i === 0 ? `«!${name}»` : `«${name}»`));
  });
  check(text.replace(`«!${name}»`, `«!|${name}»`));
}

describe('a name is found wherever it is used', () => {
  it('a splitter', () => everywhere('S1', [
    'splitter §', 'on § ->', '-> §: gap', 'reference from § through\n    -> M1', 'object from §', 'measured § -> M1', 'at §: 12', 'measured § wheel', '§.reflects', '    § -> M1: 760', 'from § through\n      ->',
  ]));
  it('a mirror', () => everywhere('M1', [
    'mirror § at', '-> § by gap', 'beyond §', '-> §: 750', '§.focal', 'S1 -> §: 752', 'moved §', '    § at (2', '    § {', 'S1 -> §: 760',
  ]));
  it('a plate, also at the start of a result', () => everywhere('P1', [
    'plate §', 'facing § {', '-> §: raw', '-> §: 300', 'at § through', 'expect §.object', 'expect §.reference', 'expect §.whelk', 'for §.object', '-> §: 800',
  ]));
  it('an object, also inside of a result', () => everywhere('whelk', ['object §', '-> §: 384', 'P1.§.far', 'expect §.brightness', 'facing §']));
  it('a thing whose fact is taken', () => everywhere('R1', ['spreader §', 'by §.focal']));
  it('a thing that a finding is about', () => everywhere('M3', ['mirror §', 'for §']));
  it('an instrument', () => everywhere('thread', ['string §', '752 mm by §', '-3 mm by §']));
  it('a beam', () => everywhere('raw', ['beam § from', ': §.1.length', 'measured § at', '    §.1: 310']));
  it('a beam that is an arm', () => everywhere('reference', ['beam § from S1 through\n    -> M1', 'measured § at', '- §: -3', 'P1.§.length', 'beam § from S1 through\n      -> P1']));
  it('a beam that is the other arm', () => everywhere('object', ['beam § from', 'measured § -', 'P1.§.mismatch', 'for P1.§']));
  it('a value', () => everywhere('gap', [
    'let § = 300', 'at (§, 0)', '2 * §\n', 'M1 by §', 'S1: §', '< § / 30', 'from § to 5', 'to 5 * §', '(2 * §, 0)', 'focal length: §', 'let § = 310',
  ]));
});

describe('what is no name', () => {
  it('the role of an arm that a beam of another name has', () => check('setup "a" {\n  laser red\n  plate P1\n  beam all from red\n    -> P1 through: 1 m\n    -> P1: 1 m\n  expect P1.|reference.length > 1 m\n}'));
  it('the arm of a beam that meets the plate twice, even if both are called alike', () => check('setup "a" {\n  laser red\n  object shell\n  plate P1\n  beam «!ob|ject» from red\n    -> P1 through: 1 m\n    -> shell: 1 m\n    -> P1: 1 m\n  expect P1.object.mismatch < 1 mm\n}'));
  it('words of the language, units, numbers', () => {
    for (const text of ['lens L|1x: 3', 'bea|m b from red', 'let g = 300 m|m', 'expect mis|match < 1 mm', 'measured dar|k: 1 nW']) check(inSetup(text));
  });
  it('texts and notes', () => {
    check(inSetup('note: "S|1"'));
    check(inSetup('mirror M1 // S|1'));
  });
});

describe('names that are seen in one place only', () => {
  it('of two setups', () => check('setup "a" {\n  mirror «!M|1»\n  plate P1 facing «M1»\n}\nsetup "b" {\n  mirror M1\n  plate P1 facing M1\n}'));
  it('of a thing that a variant adds', () => check(inSetup('variant "b" {', '  mirror «!M|9»', '  P1 facing «M9»', '}', 'variant "c" {', '  mirror M9', '}')));
  it('of a thing and a beam that are called alike', () => {
    check(inSetup('mirror «!ra|w»', 'expect raw.1.length > 1 mm', 'expect «raw».focal length > 1 mm'));
    check(inSetup('mirror raw', 'expect raw.1.length > 1 mm').replace('beam raw', 'beam «!r|aw»').replace('expect raw', 'expect «raw»'));
  });
  it('of a thing that is declared twice, with the second', () => check('setup "a" {\n  mirror «!M|1»\n  mirror «M1»\n}'));
});

describe('inventories', () => {
  const LAB = 'inventory lab {\n  laser red-12 {\n    wavelength: 632.8 nm\n  }\n  laser spare = red-12\n  string tape\n}\n';
  const library: Library = { resolve: path => `file:///saltmarsh/${path}`, text: () => LAB };
  it('and their items are named apart', () => {
    check(`${LAB}setup "a" {\n  laser red = «la|b».red-12\n}`.replace('inventory lab', 'inventory «!lab»'));
    check(`${LAB}setup "a" {\n  laser red = lab.«red-1|2»\n}`.replace('laser red-12', 'laser «!red-12»').replace('= red-12', '= «red-12»'));
  });
  it('have items that an instrument is called after without them', () => check(`${LAB}setup "a" {\n  laser red\n  plate P1\n  beam b from red\n    -> P1: 1 m\n  measured b: 1 m by «ta|pe»\n}`.replace('string tape', 'string «!tape»')));
  it('are found in the pages that use them', () => {
    const lab = analyse('file:///saltmarsh/lab.plate', LAB);
    const page = analyse(FILE, 'use "lab.plate"\nsetup "a" {\n  laser red = lab.red-12\n}\n', library);
    const named = useAt(page, 2, 20)!.named;
    expect(named).toMatchObject({ kind: 'item', name: 'red-12' });
    expect(usesOf(named, [page, lab]).map(u => `${u.at.uri.slice(18)} ${u.at.line}:${u.at.start} ${u.declares}`)).toEqual(['whelk.plate 2:18 false', 'lab.plate 1:8 true', 'lab.plate 4:16 false']);
    expect(usesOf(useAt(lab, 0, 11)!.named, [page]).map(u => u.at.start)).toEqual([14]);
  });
});

it.each([...EXAMPLES, ...PUBLISHED].map(p => [p.name, p] as const))('%s: whatever was looked up while it was read is found', (_, page) => {
  const snapshot = analyse(page.uri, page.text, disk);
  for (const r of snapshot.model.references) {
    // Behind the dot of an item.
    const found = useAt(snapshot, r.at.line, r.at.end);
    expect(`${r.at.line + 1}: ${found?.named.at.uri} ${found?.named.at.line}`).toBe(`${r.at.line + 1}: ${r.target.uri} ${r.target.line}`);
  }
});
