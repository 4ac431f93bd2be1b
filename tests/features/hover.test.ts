import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../server/features/hover/hover.ts';
import { but, marked } from './source.ts';

/** What is shown at the cursor holds all of these, after its first line has held the first. */
function check(source: string, first: string | RegExp, ...more: (string | RegExp)[]): string {
  const { snapshot, line, character } = marked(source);
  const shown = hoverAt(snapshot, line, character)?.markdown;
  expect(shown).toBeDefined();
  const expects = (text: string, wanted: string | RegExp): void => { if (typeof wanted === 'string') expect(text).toContain(wanted); else expect(text).toMatch(wanted); };
  expects(shown!.split('\n')[0]!, first);
  for (const wanted of more) expects(shown!, wanted);
  return shown!;
}

const nothing = (source: string): void => {
  const { snapshot, line, character } = marked(source);
  expect(hoverAt(snapshot, line, character)).toBeUndefined();
};

describe('a hover over a leg', () => {
  // ± 2 mm, all values equally likely: standard uncertainty 2 / √3 = 1.15 mm (JCGM 100:2008, 4.3.7).
  it('gives its length, how sure it is, and its arm', () =>
    check(but('-> M1: 750', '-> M1: 7|50'), '**750 ± 2 mm**: leg S1 → M1', 'standard uncertainty of 1.2 mm', 'Written as 750 ± 2 mm', /reference at P1, 1471 ± \d/));
  it('says where a leg is shared by both arms', () => check(but('-> S1: 350', '|-> S1: 350'), '350 mm', 'share it'));
  it('says why a leg has no length', () => check(but('-> M1: 750 mm ± 2 mm', '|-> M1'), 'unknown', 'leg S1 → M1 has no length'));
  it('shows the places that a length is computed from', () =>
    // (0, 300) and (400, 0): 500 mm apart, a 3-4-5 triangle
    check(`setup "a" {
  laser red at (0, 300) mm
  mirror M1 at (400, 0) mm
  beam raw from red
    |-> M1
}`, '**500 mm**: leg red → M1', 'Δx²', 'x of M1: 400 mm'));
});

describe('a hover over a beam', () => {
  it('gives the length of its arm, leg by leg, and the mismatch', () =>
    check(but('beam object', 'beam ob|ject'), /\*\*1555 ± \d mm\*\*: object at P1, from S1/, '84 ± 7 mm longer', 'M3 → whelk: 468 ± 3 mm'));
  it('says what a common beam feeds', () => check(but('beam raw', 'beam r|aw'), 'feeds reference at P1, object at P1', 'red → S1: 350 mm'));
});

describe('a hover over a thing', () => {
  it('tells what it is, wherever its name stands', () => {
    const declared = check(but('mirror M1', 'mirror M|1'), '**M1**: a mirror');
    expect(check(but('-> M1: 750', '-> M|1: 750'), '**M1**: a mirror')).toBe(declared);
  });
  it('tells how a plate records, from the nearest part to the farthest', () =>
    check(but('plate P1', 'plate |P1'), '**P1**: a plate', '84 ± 7 mm longer', /nearest part of whelk: \d+ to \d+ %/, /middle of whelk: \d+ to \d+ %/, /farthest part of whelk: \d+ to \d+ %/, /darkest/));
  // c / (2 · 350 mm) = 299 792 458 / 0.7 = 428.27 MHz; it comes back each 2 · 350 = 700 mm.
  it('tells the coherence of a laser', () => check(but('laser red', 'laser r|ed'), '**red**: a laser', '428.27 MHz', '700 mm', 'wavelength: 632.8 nm'));
  it('tells what is assumed of it, with the reason', () => check(but('object whelk {', 'object wh|elk {'), '**whelk**: an object', 'depth: 35 mm', /lit at: .* is assumed: most objects/));
  it('shows its note', () => check(but('  mirror M1', '  /// from the old bench\n  mirror |M1'), '**M1**', '*from the old bench*'));
  it('tells an inventory item where it is used', () =>
    check('inventory lab {\n  mirror big {\n    diameter: 75 mm\n  }\n}\nsetup "a" {\n  mirror M1 = lab.b|ig\n}', '**big**: a mirror', 'diameter: 75 mm'));
  it('keeps marks in a note from becoming markup', () => {
    const shown = check(but('  mirror M1', '  /// **loud** <b>bold</b> [go](command:x) ![i](http://x/y.png) $(flame)\n  mirror |M1'), '**M1**');
    expect(shown).toContain('*\\*\\*loud\\*\\* \\<b\\>bold\\</b\\> \\[go\\](command:x)');
  });
});

describe('a hover over a word', () => {
  it('of a kind lists its facts, units and what is assumed', () => check(but('  laser red', '  la|ser red'), '**laser**', '`tube length`', 'MHz', '50% is assumed'));
  it('of two words is that of the kind', () => check('setup "a" {\n  half-wave pla|te H1\n}', '**half-wave plate**'));
  it('of a fact gives its meaning and its value here', () => check(but('depth: 35', 'de|pth: 35'), '**depth**', '**35 mm** for whelk', 'mm, cm'));
  it('of a fact of the setup', () => check(but('hologram: transmission', 'holo|gram: transmission'), '**hologram**', 'transmission, reflection'));
  it('of a fact that counts for nothing yet says so', () => check(but('depth: 35 mm', 'warm|th: cold'), '**warmth**', 'no result uses it yet'));
  it('that opens a room is its meaning, not its name', () => check('setup "a" {\n  ro|om {\n    temperature: 20 °C\n  }\n}', '**room**'));
  it('of a setup gives its figures', () => check(but('"Whelk shell"', '"Whelk| shell"'), '**Whelk shell**', '84 ± 7 mm', 'from the notebook'));
  it('of an accepted code says what it is about', () => check(but('  plate P1', '  accept arms-|mismatched "on purpose"\n  plate P1'), 'arms-mismatched'));
});

describe('a hover over a unit', () => {
  // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
  it('gives its dimension and size', () => check(but('721 mm ± 2 mm', '28 i|n ± 2 mm'), '**in**: a length', '25.4 mm'));
  // 1 mW/cm² = 10 W/m² = 1000 µW/cm²
  it('of light at a surface', () => check(but('  plate P1', '  measured reference at P1: 2 mW|/cm²\n  plate P1'), 'light at a surface', '1000 µW/cm²'));
  it('of a share says what it is behind ±', () => check(but('721 mm ± 2 mm', '721 mm ± 2|%'), 'share of the value'));
});

describe('a hover over a goal', () => {
  it('says that it is not met, with the chain of numbers', () =>
    check(but('  plate P1', '  expect |mismatch < 10 mm\n  plate P1'), '**Not met**: mismatch \\< 10 mm', '84 ± 7 mm', 'leg M3 → whelk: 468 ± 3 mm', /Most of it comes from leg/));
  it('says that it is met', () => check(but('  plate P1', '  expect |mismatch < 100 mm\n  plate P1'), '**Met**'));
  it('opens the guesses of a brightness', () => check(but('  plate P1', '  expect |brightness > 90%\n  plate P1'), /Not met|Undecided/, 'Rests on', 'modes of red', 'draws lie in this band'));
});

describe('a hover over a value named by let', () => {
  const text = 'setup "a" {\n  let gap = 300 mm ± 1 mm\n  laser red\n  mirror M1\n  beam raw from red\n    -> M1: gap + 20 mm\n}';
  it('gives the value where it is used', () => check(but('-> M1: gap', '-> M1: g|ap', text), '**300 ± 1 mm**: gap'));
});

describe('no hover', () => {
  it('over a comment', () => nothing(but('plate P1', 'plate P1 // by the w|all')));
  it('over nothing', () => nothing(but('  plate P1\n\n', '  plate P1\n|\n')));
  it('in a line that cannot be read', () => nothing(but('mirror M1', '§§|§ ')));
});
