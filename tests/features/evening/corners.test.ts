/** Four corners against the middle of a plate, asked for one after the other: what each should come to, and what is said of it. */
import { describe, expect, it } from 'vitest';
import { type Wanted, wantedOf } from '../../../server/features/readings/wanted.ts';
import { card, rows } from '../card/source.ts';
import { made, ON, page, taken } from './source.ts';

/** A reference of 1 mm, spread by f = 4 mm and 800 mm on: a beam of 200 mm across at a plate of 100 × 100 mm, square on. */
const spread = (readings = ''): string => `setup "Cockle" {
  laser red {
    wavelength: 632.8 nm
    power: 10 mW ± 5%
    beam diameter: 1 mm
  }
  splitter S1 {
    reflects: 50%
  }
  spreader L1 {
    focal length: 4 mm
  }
  object cockle
  plate P1 {
    size: 100 x 100 mm
  }
  meter needle
  beam raw from red
    -> S1: 100 mm
  beam reference from S1 through
    -> L1: 100 mm
    -> P1: 804 mm
  beam object from S1 reflected
    -> cockle: 600 mm
    -> P1: 300 mm
${readings}}
`;
const SPOTS = ['upper left', 'upper right', 'lower left', 'lower right'];
const corners = (text: string): Wanted[] => wantedOf(page(text).results[0]!).filter(w => w.each);
const MIDDLE = '  measured reference at P1: 2 µW/cm² ± 5% by needle on 2026-02-18T21:30\n';

describe('the corners of a plate', () => {
  it('are asked for one by one, behind the middle, by their names as seen from the object', () => {
    const subjects = wantedOf(page(spread()).results[0]!).map(w => w.subject);
    expect(corners(spread()).map(w => w.subject)).toEqual(SPOTS.map(s => `reference at P1 ${s}`));
    const middle = subjects.indexOf('reference at P1');
    expect(middle).toBeGreaterThan(0);
    expect(subjects.indexOf('reference at P1 upper left')).toBeGreaterThan(middle);
    for (const w of corners(spread())) expect(w.how).toContain('as seen from the object');
  });
  it('should come to no less than the plan gives the weakest, in the unit of the middle', () => {
    const [one] = corners(spread(MIDDLE));
    // Half a millimetre of radius, of quality 1.1, has 110 mm behind 800/4 times: exp(−2 (r/110)²) of the middle, in a corner at 50·√2 = 70.7 mm 0.438 square on. What is told is the lower end of the band.
    const value = Number(/^at least ([\d.]+) µW\/cm²$/.exec(one!.expected.text)![1]);
    expect(value).toBeLessThan(2 * 0.438);
    expect(value).toBeGreaterThan(2 * 0.35);
    expect(one!.expected.known).toMatch(/^by the plan the weakest corner has \d+% ± \d+ points of the middle; below 35% the image fades there$/);
    expect(one!.unit).toBe('µW/cm²');
  });
  it('once one is read, should come to 35 % of the middle', () => {
    const [, two] = corners(spread(`${MIDDLE}  measured reference at P1 upper left: 1.2 µW/cm² by needle\n`));
    // 0.35 · 2
    expect(two!.expected).toEqual({ text: 'at least 0.7 µW/cm²', known: '35% of the middle, below which the image fades there' });
  });
  it('are not asked for where nothing spreads the light', () => { expect(corners(spread().replace('    focal length: 4 mm\n', ''))).toEqual([]); });
  it('stand on the card as one', () => { expect(rows(card(spread()), 'measure').filter(r => JSON.stringify(r).includes('corner'))).toHaveLength(1); });
});

describe('a corner that was read', () => {
  it('is written by its name, and held against the middle', () => {
    const e = taken(spread(MIDDLE), 'reference at P1 upper left', '1.2');
    expect(e.line).toBe(`measured reference at P1 upper left: 1.2 µW/cm² by needle on ${ON}`);
    // 1.2/2
    expect(e).toMatchObject({ agrees: true, says: expect.stringContaining('60% of the middle, where by the plan the weakest corner has') as string });
    const after = page(made(page(spread(MIDDLE)), e.edits)).results[0]!;
    expect(after.graph.value(after.graph.find('P1.reference.corner light')!)).toBeCloseTo(0.6, 9);
  });
  it('that has less than the plan gives the weakest is said, and what to look for', () => {
    expect(taken(spread(MIDDLE), 'reference at P1 lower right', '0.2')).toMatchObject({ agrees: false, says: expect.stringMatching(/10% of the middle, .*: that disagrees\. Look first whether the middle of the beam falls on the middle of the plate\.$/) as string });
  });
  it('beside others that were read is judged by what an image needs', () => {
    const read = `${MIDDLE}  measured reference at P1 upper left: 1.2 µW/cm² by needle on 2026-02-18T21:31\n`;
    expect(taken(spread(read), 'reference at P1 upper right', '1.1')).toMatchObject({ agrees: true, says: expect.stringContaining('55% of the middle: enough for an image there.') as string });
    const dark = taken(spread(read), 'reference at P1 lower left', '0.6');
    // 0.6/2 = 30 %, below 35 %; which corner it is, the finding says
    expect(dark).toMatchObject({ agrees: false, says: expect.stringContaining('30% of the middle: that is too little, the image fades there.') as string });
    expect(dark.findings.join('\n')).toMatch(/The weakest corner of P1, lower left, gets 30.% of the reference light at its centre/);
  });
  it('without the middle is kept, and it is said that it tells nothing yet', () => { expect(taken(spread(), 'reference at P1 upper left', '1.2')).not.toHaveProperty('agrees'); });
});
