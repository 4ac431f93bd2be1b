/** `why`: suspects by the figures of a setup. The figures themselves are tested in tests/results. */
import { describe, expect, it, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { MISTAKES } from '../../server/features/why/mistakes.ts';
import { OUTCOME_NAMES, OUTCOMES, understand } from '../../server/features/why/outcomes.ts';
import { whyMarkdown, whyText } from '../../server/features/why/pages.ts';
import { whyOf, type Why } from '../../server/features/why.ts';
import { EXAMPLES, disk } from '../examples/library.ts';
import { but, FILE, whelk } from './source.ts';

const ask = (text: string, seen?: string): Why => {
  const snapshot = analyse(FILE, text);
  return whyOf(snapshot, snapshot.results[0]!, seen);
};
const names = (list: Why['suspects']): string[] => list.map(s => s.name);

/** Paths that match, a laser of one mode, equal beams, an exposure as needed: nothing holds this back. */
const BRIGHT = `setup "Cockle" {
  exposure: 20 s
  laser red {
    wavelength: 632.8 nm
    coherence length: 50 m
  }
  splitter S1
  object cockle {
    depth: 30 mm
  }
  plate P1 {
    sensitivity: 40 µJ/cm²
  }
  meter m {
    head size: 10 x 10 mm
    calibration: 1
    dark: 0 nW
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> cockle: 1200 mm
    -> P1: 300 mm
  measured reference at P1: 1 µW/cm² by m
  measured object at P1: 1 µW/cm² by m
}
`;

describe('a bright setup', () => {
  it('has no suspect above a tenth of a stop', () => {
    const { suspects } = ask(BRIGHT);
    expect(suspects.filter(s => (s.stops ?? 0) > 0.1)).toEqual([]);
  });
  it('speaks against paths, depth, ratio and exposure when it is dull for all that', () => {
    const w = ask(BRIGHT, 'dull everywhere');
    expect(names(w.cleared)).toEqual(expect.arrayContaining(['paths not matched', 'ratio off']));
    expect(names(w.untold)).toContain('moved by half a wave');
  });
});

describe('a spoilt setup names its cause first', () => {
  // 84 mm of mismatch with a 350 mm tube
  it('paths that do not match', () => { expect(names(ask(whelk, 'dull at the back').suspects)[0]).toBe('paths not matched'); });
  // 20:1 leaves 18 % (0.425918², 2.5 stops)
  it('a ratio of 20:1', () => {
    const w = ask(BRIGHT.replace('  exposure: 20 s\n', '').replace('reference at P1: 1 µ', 'reference at P1: 20 µ'), 'dull');
    expect(names(w.suspects)[0]).toBe('ratio off');
    expect(w.suspects[0]!.stops).toBeCloseTo(-2 * Math.log2(0.425918), 2);
  });
  it('an exposure four times too short is thin, not dense', () => {
    const short = BRIGHT.replace('exposure: 20 s', 'exposure: 5 s');
    expect(names(ask(short, 'too thin').suspects)).toContain('exposure of another table');
    expect(names(ask(short, 'too dense').suspects)).not.toContain('exposure of another table');
  });
  it('a depth beyond the coherence', () => { expect(names(ask(BRIGHT.replace('50 m', '40 mm'), 'dark at the back').suspects)[0]).toBe('depth beyond the coherence'); });
  it('object light stronger than half the reference, where a halo was seen', () => {
    expect(names(ask(BRIGHT, 'noisy halo').suspects)).toContain('object light too strong');
    expect(names(ask(BRIGHT.replace('reference at P1: 1 µ', 'reference at P1: 5 µ'), 'noisy halo').suspects)).not.toContain('object light too strong');
  });
  it('a safelight that the plate sees', () => {
    const room = but('  beam raw', '  room {\n    safelight: red\n  }\n  beam raw', but('  plate P1 {', '  plate P1 {\n    sensitive to: red', BRIGHT));
    expect(names(ask(room, 'fogged').suspects)).toContain('fogged by the room');
    expect(names(ask(room.replace('safelight: red', 'safelight: green'), 'fogged').cleared)).toContain('fogged by the room');
  });
  it('the strongest first', () => {
    const { suspects } = ask(whelk);
    expect(suspects.length).toBeGreaterThan(0);
    const stops = suspects.map(s => Math.max(s.stops ?? 0, s.codes.length > 0 ? 1 : 0));
    expect(stops).toEqual([...stops].sort((a, b) => b - a));
  });
});

describe('words of the trade', () => {
  it.each(OUTCOME_NAMES)('“%s” means itself, and leads to a suspect with a test', name => {
    expect(understand(name).outcomes).toContain(name);
    const w = ask(whelk, name);
    const all = [...w.suspects, ...w.untold, ...w.cleared];
    expect(all.length).toBeGreaterThan(0);
    for (const s of all) expect(s.test).toMatch(/^\p{Lu}.{15,}\.$/u);
  });
  it.each(OUTCOME_NAMES.flatMap(name => OUTCOMES[name].map(p => [p, name] as const)))('“%s” is understood as %s', (phrase, name) => { expect(understand(phrase).outcomes).toContain(name); });
  it.each([
    ['bright, but a dark band across the handle', 'dark bars'], ['third strip best, fifth nearly black', 'too dense'], ['dull at the back', 'dark at the back'], ['Tree-rings all over', 'wood grain'], ['no image', 'nothing at all'], ['FOGGED', 'fogged'], ['a noisy halo round the shell', 'noisy halo'],
  ] as const)('“%s” is %s', (said, name) => { expect(understand(said).outcomes).toContain(name); });
  it.each(['this is the one', 'bright', 'best so far'])('“%s” is no complaint', said => { expect(understand(said)).toMatchObject({ well: true, outcomes: [] }); });
  it('what is denied was not seen', () => { expect(understand('bright, no wood grain').outcomes).toEqual([]); expect(understand('not dull').outcomes).toEqual([]); });
  it('a misspelt one is suggested', () => {
    expect(understand('dul at the bakc')).toMatchObject({ outcomes: [], well: false });
    expect(understand('dul at the bakc').nearest).toContain('dark at the back');
    expect(understand('haylo').nearest).toEqual(['noisy halo']);
    expect(understand('purple elephants')).toEqual({ outcomes: [], well: false, nearest: [] });
  });
  it.each(['', ' ', '?', '“', 'no', 'not', '🐚', 'x'.repeat(5000)])('strange ones (%j) throw nothing', said => { expect(understand(said).outcomes).toEqual([]); });
});

describe('the page', () => {
  it('is no wider than a page, and says what was asked', () => {
    const text = whyText([ask(whelk, 'dull at the back')], 'whelk.plate');
    expect(text).toContain('“dull at the back”, understood as “dark at the back”.');
    for (const line of text.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(80);
  });
  it('keeps what was typed from becoming markup', () => { expect(whyMarkdown([ask(whelk, 'dull at the *back* <b>')], 'whelk.plate')).toContain('dull at the \\*back\\* \\<b\\>'); });
  it.each(EXAMPLES.map(e => [e.name, e] as const))('can be written for %s', (_, page) => {
    const snapshot = analyse(page.uri, page.text, disk);
    for (const r of snapshot.results) for (const seen of [undefined, 'dull', 'nothing at all']) {
      const text = whyText([whyOf(snapshot, r, seen)], page.name) + whyMarkdown([whyOf(snapshot, r, seen)], page.name);
      expect(text).not.toMatch(/undefined|NaN|Infinity|\[object/);
    }
  });
});

test('no text of the table says that anything is safe', () => {
  for (const m of MISTAKES) expect(JSON.stringify(m)).not.toMatch(/\bsafe(?!ty|light)/);
});
