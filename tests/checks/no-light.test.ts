/** A beam that brings no light: told at its place, counted as all of the brightness, and never an exposure. What is left is by definition: without one of two beams there are no fringes. */
import { describe, expect, it } from 'vitest';
import { whyOf } from '../../server/features/why.ts';
import { look } from './library.ts';

interface Facts { readonly splitter?: string; readonly object?: string; readonly mirror?: string; readonly more?: string }
/** A whelk, lit and placed; the laser's power and the lenses make its light. */
const page = ({ splitter = 'reflects: 90%', object = 'tone: 35%', mirror = '', more = '' }: Facts): string => `setup "Whelk" {
  hologram: transmission
  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 5 m
    power: 12 mW
    beam diameter: 0.8 mm
  }
  splitter S1 at (350, 100) mm {
    ${splitter}
  }
  mirror M1 at (1100, 100) mm {
    ${mirror}
  }
  spreader R1 on M1 -> P1 by 60 mm {
    focal length: 2.9 mm
  }
  mirror M2 at (94, 420) mm
  mirror M3 at (400, 640) mm
  spreader R2 on M3 -> whelk by 30 mm {
    focal length: 4.5 mm
  }
  object whelk at (700, 400) mm {
    size: 40 x 60 x 35 mm
    ${object}
  }
  plate P1 at (700, 700) mm heading 270° {
    size: 63 x 63 mm
    material: fine-grain silver halide
  }
  meter needle {
    head: 8 mm
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> R1
    -> P1
  beam object from S1 reflected
    -> M2
    -> M3
    -> R2
    -> whelk
    -> P1
  ${more}
}
`;
const found = (text: string): string[] => look(text).findings.filter(f => f.code === 'no-light').map(f => `${f.at.line + 1} ${f.severity} ${f.subject}: ${f.message}`);
const figure = (text: string, name: string): { value: number | undefined; why: string | undefined } => {
  const r = look(text).results[0]!;
  const cell = (r.ask(name) ?? r.graph.find(name))!;
  return { value: r.graph.value(cell), why: cell.missing?.why };
};

const DARK: [string, Facts, number, string][] = [
  ['a splitter that reflects nothing', { splitter: 'reflects: 0%' }, 10, 'No light reaches P1 by “object”: S1 reflects none of it.'],
  ['a splitter that reflects all', { splitter: 'reflects: 100%' }, 10, 'No light reaches P1 by “reference”: S1 reflects all of it and lets none through.'],
  ['a splitter that loses all, which both arms meet', { splitter: 'loss: 100%' }, 10, 'No light reaches P1 by “reference” and “object”: S1 loses all of it.'],
  ['a mirror that loses all', { mirror: 'loss: 100%' }, 13, 'No light reaches P1 by “reference”: M1 loses all of it.'],
  ['an object that gives nothing back', { object: 'tone: 0%' }, 25, 'No light reaches P1 by “object”: whelk gives back nothing of it.'],
  ['a share that a formula gives', { splitter: 'reflects: 50% - 50%' }, 10, 'No light reaches P1 by “object”: S1 reflects none of it.'],
  ['a reading of nothing', { more: 'measured object at P1: 0 µW/cm² by needle' }, 46, 'No light reaches P1 by “object”: what was read of it there is no more than the meter shows in the dark.'],
];
describe.each(DARK)('%s', (_, facts, line, words) => {
  const text = page(facts);
  it('is one finding, at its place', () => {
    const all = found(text);
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(new RegExp(`^${line} warning `));
    expect(all[0]).toContain(words);
    expect(all[0]).toContain('Nothing records on P1 without it.');
  });
  it('has no ratio and no exposure, for that reason, and nothing is left of the brightness', () => {
    for (const name of ['P1.beam ratio', 'P1.exposure time']) {
      expect(figure(text, name).value).toBeUndefined();
      expect(figure(text, name).why).toMatch(/^no light reaches P1 by /);
    }
    expect(figure(text, 'P1.object.ratio loss').value).toBe(1);
    expect(figure(text, 'P1.object.recorded brightness').value).toBe(0);
  });
  it('comes first where nothing at all was seen', () => {
    const s = look(text);
    expect(whyOf(s, s.results[0]!, 'nothing at all').suspects[0]).toMatchObject({ name: 'no light', codes: ['no-light'] });
  });
});

describe('light that gets through', () => {
  it.each<[string, Facts]>([
    ['as usual', {}], ['a share that is left open', { splitter: 'reflects: ?' }], ['nearly all of it reflected', { splitter: 'reflects: 99.9%' }],
    // A reading goes before what is written.
    ['a reading of the beam that by the splitter is dark', { splitter: 'reflects: 0%', more: 'measured object at P1: 0.3 µW/cm² by needle' }],
    ['a power that was read behind it', { splitter: 'reflects: 0%', more: 'measured object at M3: 5 mW by needle' }],
  ])('%s', (_, facts) => {
    expect(found(page(facts))).toEqual([]);
    expect(figure(page(facts), 'P1.beam ratio').why ?? '').not.toContain('no light');
  });
  it('is no suspect', () => {
    const s = look(page({}));
    expect(whyOf(s, s.results[0]!, 'nothing at all').cleared.map(x => x.name)).toContain('no light');
  });
});

it('is told of a page of string lengths too, and takes all of the brightness there', () => {
  const text = `setup "Whelk" {
  laser red {
    coherence length: 5 m
  }
  splitter S1 {
    reflects: 0%
  }
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
}
`;
  expect(found(text)).toHaveLength(1);
  expect(figure(text, 'P1.object.recorded brightness').value).toBe(0);
  expect(look(text).results[0]!.losses.shown()).toBe(true);
});

it('one of two object beams that brings none leaves the ratio to the other', () => {
  const text = page({ more: 'splitter S2 {\n    reflects: 0%\n  }' }).replace('  beam object from S1 reflected\n    -> M2\n', '  beam rest from S1 reflected\n    -> S2: 300 mm\n  beam fill from S2 reflected\n    -> whelk: 900 mm\n    -> P1\n  beam object from S2 through\n    -> M2\n');
  const all = found(text);
  expect(all).toHaveLength(1);
  expect(all[0]).toContain('“fill”: S2 reflects none of it. What it should light stays dark.');
  expect(figure(text, 'P1.beam ratio').why ?? '').not.toContain('no light');
});
