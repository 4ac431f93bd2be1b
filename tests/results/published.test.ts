/** Setups that were published with their figures. Where a source gives whole paths only, they stand in one leg; what it does not give is ours and said so. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { publishedFigures } from '../optics/outside.ts';
import { expectNear, read, serious } from './read.ts';

/** One of the published setups that stand as pages of their own. */
const fixture = (name: string): ReturnType<typeof read> => read(readFileSync(`tests/fixtures/published/${name}.plate`, 'utf8'));

/** A length as printed in millimetres. */
const printed = (mm: number, digits = 1): string => mm.toFixed(digits);

describe('a reflection copy, 60 inches on both sides (a workshop course on a 4 x 8 ft table; the laser and the way to the splitter are ours)', () => {
  const { inputs: { ref_in: [toM1, toP2], obj_in: [toM2, toH1, image] }, expected } = publishedFigures('path-holo') as { inputs: { ref_in: [number, number]; obj_in: [number, number, number] }; expected: { ref: number; obj: number } };
  const copy = read(`setup "Reflection copy" {
  hologram: reflection
  laser red
  splitter S1
  mirror M1
  mirror M2
  hologram H1
  plate P2
  beam raw from red
    -> S1: 1 ft
  beam reference from S1 reflected
    -> M1: ${toM1} in
    -> P2: ${toP2} in
  beam master from S1 through
    -> M2: ${toM2} in
    -> H1: ${toH1} in
  beam image from H1 diffracted
    -> P2: ${image} in
}
`);
  test('is 1524.0 mm on both (1 in = 25.4 mm, international yard and pound agreement, 1959)', () => {
    expectNear(copy.mm('P2.reference.length') / 25.4, expected.ref, 1e-9);
    expectNear(copy.mm('P2.image.length') / 25.4, expected.obj, 1e-9);
    expect(printed(copy.mm('P2.reference.length'))).toBe('1524.0');
    expect(printed(copy.mm('P2.image.length'))).toBe('1524.0');
    expectNear(copy.mm('mismatch'), 0, 1e-9);
  });
  test('has its paths from the splitter, and the hologram as what carries the object light', () => {
    const [plate] = copy.results.plates;
    expect(plate!.arms.map(a => [a.arm.name, a.arm.role, a.partsAt?.id, a.legs.map(l => l.to).join(' ')])).toEqual([
      ['reference', 'reference', 'S1', 'M1 P2'], ['image', 'object', 'S1', 'M2 H1 P2'],
    ]);
    expect(plate!.pairs[0]!.arm.object?.id).toBe('H1');
  });
});

describe('recording logs of a thesis (404001, University of Bergen, 1996; 24 mW, 632.8 nm)', () => {
  const log = (object: string, reference: string, before: string, last: string): ReturnType<typeof read> => read(`setup "Log" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 20 cm
  }
  splitter S1
  ${before}
  plate P1
  beam raw from red
    -> S1
  beam reference from S1 reflected
    -> P1: ${reference}
  beam lit from S1 through
    -> X1: ${object}
${last}
}
`);
  test('12.3, one step from a diffuser 11 cm before the film: 199 cm and 199 cm', () => {
    const one = log('188 cm', '199 cm', 'diffuser X1', '    -> P1: 11 cm');
    expect([printed(one.mm('P1.lit.length')), printed(one.mm('P1.reference.length'))]).toEqual(['1990.0', '1990.0']);
    expectNear(one.mm('mismatch'), 0, 1e-9);
    expect(one.results.plates[0]!.pairs[0]!.arm.object?.id).toBe('X1');
    expect(serious(one.snapshot.findings)).toEqual([]);
  });
  const through = '  beam image from X1 diffracted\n    -> P1: 13 cm';
  test('12.5, two steps, 13 cm from hologram to hologram: 205 cm and 205 cm', () => {
    const two = log('192 cm', '205 cm', 'hologram X1', through);
    expect([printed(two.mm('P1.image.length')), printed(two.mm('P1.reference.length'))]).toEqual(['2050.0', '2050.0']);
    expect(serious(two.snapshot.findings)).toEqual([]);
  });
  test('12.6 or next to it, rainbow: 175 cm and 176 cm, which a laser of 20 cm bears well', () => {
    const rainbow = log('162 cm', '176 cm', 'hologram X1', through);
    expect([printed(rainbow.mm('P1.image.length')), printed(rainbow.mm('P1.reference.length'))]).toEqual(['1750.0', '1760.0']);
    expectNear(rainbow.mm('P1.image.mismatch'), -10, 1e-9);
    // Gaussian line, contrast one half at 200 mm: 2^(−(10/200)²), squared.
    expectNear(rainbow.value('brightness'), 2 ** (-2 * (10 / 200) ** 2), 1e-12);
    expect(serious(rainbow.snapshot.findings)).toEqual([]);
  });
});

describe('a small helium-neon laser with arms 15 cm apart (Georgia State University, HyperPhysics, “Transmission Hologram With Reference Beam”: equal within about 2-3 cm; the dim example was about 15 cm off)', () => {
  /** The legs are ours; 300 mm between the mirrors is usual for a small tube (common practice). */
  const student = (difference: number, modes: string): ReturnType<typeof read> => read(`setup "Die and skull" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    tube length: 300 mm
    modes: ${modes}
  }
  splitter S1
  mirror M1
  object die
  plate P1
  beam raw from red
    -> S1: 200 mm
  beam reference from S1 reflected
    -> M1: 400 mm
    -> P1: 600 mm
  beam lit from S1 through
    -> die: ${800 + difference} mm
    -> P1: 200 mm
}
`);
  // u = ΔL/2L = 150/600: |cos πu| = 0.7071 for two modes, |sin 3πu / (3 sin πu)| = 1/3 for three.
  test.each([['2', 0.5], ['3', 1 / 9]])('15 cm with %s modes records at %f', (modes, brightness) => {
    const { value, snapshot } = student(150, modes);
    expectNear(value('brightness'), brightness, 1e-12);
    expect(serious(snapshot.findings)).toEqual(['17 arms-mismatched']);
  });
  test('15 cm with an unknown number of modes is a warning for its dark end, and the band spans both', () => {
    const { snapshot, results } = student(150, 'unknown');
    const finding = snapshot.findings.find(f => f.code === 'arms-mismatched')!;
    expect(finding.severity).toBe('warning');
    expect(results.plates[0]!.pairs[0]!.coherence!.modes).toEqual([2, 3, 4]);
    // Four modes are at their first zero, a quarter of the revival distance.
    expectNear(finding.data['low'] as number, 0, 1e-12);
    expectNear(finding.data['high'] as number, 0.5, 1e-12);
    expectNear(finding.data['mismatch'] as number, 0.15, 1e-12);
  });
  test.each(['2', '3', 'unknown'])('the advised 3 cm is fine with %s modes', modes => {
    const { value, snapshot } = student(30, modes);
    expect(value('brightness')).toBeGreaterThan(0.9);
    expect(serious(snapshot.findings)).toEqual([]);
  });
});

describe('layouts by places (common practice, worked out by Pythagoras)', () => {
  const hypot = (x: number, y: number): number => Math.sqrt(x * x + y * y);

  test('a transmission master, lit from the front', () => {
    const master = fixture('transmission-master');
    const legs = ['reference.1', 'reference.2', 'object.1', 'object.2', 'object.3', 'object.4'].map(l => master.mm(`${l}.length`));
    [750, hypot(400, 600), hypot(256, 320), hypot(306, 220), hypot(300, 240), 300].forEach((mm, i) => { expectNear(legs[i]!, mm, 1e-9); });
    expect(legs.map(l => printed(l))).toEqual(['750.0', '721.1', '409.8', '376.9', '384.2', '300.0']);
    expect(printed(master.mm('reference length'))).toBe('1471.1');
    expect(printed(master.mm('object length'))).toBe('1470.9');
    expect(printed(master.mm('mismatch'))).toBe('-0.2');
  });
  test('a split-beam reflection hologram', () => {
    const split = fixture('split-beam-reflection');
    const legs = ['reference.1', 'reference.2', 'reference.3', 'object.1', 'object.2', 'object.3', 'object.4'].map(l => printed(split.mm(`${l}.length`)));
    expect(legs).toEqual(['475.5', '520.6', '353.6', '400.0', '564.4', '305.3', '80.0']);
    expect(printed(split.mm('reference length'))).toBe('1349.7');
    expect(printed(split.mm('object length'))).toBe('1349.6');
  });
  test('a subject lit from behind through ground glass', () => {
    const back = fixture('back-lit-transparency');
    expect(['object.1', 'object.2', 'object.3', 'object.4'].map(l => printed(back.mm(`${l}.length`)))).toEqual(['450.0', '650.0', '200.0', '200.0']);
    expect(['reference.1', 'reference.2', 'reference.3'].map(l => printed(back.mm(`${l}.length`)))).toEqual(['836.0', '168.8', '495.0']);
    expect(printed(back.mm('P1.object.length'))).toBe('1500.0');
    expect(printed(back.mm('P1.reference.length'))).toBe('1499.8');
  });
});
