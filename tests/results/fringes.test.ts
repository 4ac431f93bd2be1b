/** The fringes on plates of whole setups, against published figures, closed forms, and another way through the geometry. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between } from '../optics/outside.ts';
import { expectNear, read, type Read } from './read.ts';

const RED = 632.8e-9;
const perMm = (v: number): number => v / 1000;

/** A setup that names distances only; `plate` are facts of the plate. */
const strings = (hologram: string, plate: readonly string[], more: { readonly object?: readonly string[]; readonly things?: readonly string[]; readonly wavelength?: string } = {}): string => `setup "Whelk shell" {
  hologram: ${hologram}
  laser red {
    ${more.wavelength ?? 'wavelength: 632.8 nm'}
    coherence length: 5 m
  }
  splitter S1
${(more.things ?? []).map(l => `  ${l}\n`).join('')}  object whelk${more.object ? ` {\n${more.object.map(l => `    ${l}\n`).join('')}  }` : ''}
  plate P1 {
${plate.map(l => `    ${l}\n`).join('')}  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
}
`;
/** The figure of a name that is worked out when it is asked for. */
function asked({ results }: Read, name: string): number {
  const cell = results.ask(name)!;
  expect(cell.missing, name).toBeUndefined();
  return results.graph.value(cell)!;
}

describe('beams from one side', () => {
  // George & Matthews, Appl. Phys. Lett. 9, 212 (1966): two beams of 632.8 nm, 30° apart, even to the normal, gave 820 lines/mm; 2 sin 15° / λ is 818.0.
  it('George & Matthews’ grating', () => {
    const r = read(strings('transmission', ['reference angle: 15°', 'object angle: -15°']));
    expectNear(perMm(r.value('P1.object.fringes')), 820, 2.5);
    expectNear(perMm(r.value('fringes')), (2 * Math.sin(Math.PI / 12)) / RED / 1000, 1e-6);
    expect(r.snapshot.findings.filter(f => ['fringes-too-fine', 'sides-disagree', 'reference-too-near'].includes(f.code))).toEqual([]);
  });
  // (sin θ − 0) / λ by a pocket calculator.
  it.each([['30°', 790.139], ['45°', 1117.426], ['60°', 1368.561]])('one of them square to the plate, the other at %s', (angle, lines) => {
    expectNear(perMm(read(strings('transmission', [`reference angle: ${angle}`, 'object angle: 0°'])).value('fringes')), lines, 0.01);
  });
  // 2 sin(θ/2) / λ: 275.46, 1580.28, 2234.85 lines/mm for 10°, 60°, 90° between beams even to the normal.
  it.each([['5°', 275.46], ['30°', 1580.28], ['45°', 2234.85]])('even to the normal, %s each', (half, lines) => {
    expectNear(perMm(read(strings('transmission', [`reference angle: ${half}`, `object angle: -${half}`])).value('fringes')), lines, 0.01);
  });
  // OpenStax, University Physics vol. 3, 4.4: 300 lines/mm send 656.3 nm to 11.36°; by the same equation light from there records them.
  it('as the grating of a textbook', () => {
    expectNear(perMm(read(strings('transmission', ['reference angle: 11.36°', 'object angle: 0°'], { wavelength: 'wavelength: 656.3 nm' })).value('fringes')), 300, 0.3);
  });
  // A plate of 120 mm and an object of 80 mm, 300 mm apart, level: (sin 45° + 100 / √(300² + 100²)) / λ at the edge on the far side from the reference.
  it('finest at the edges of plate and object', () => {
    const r = read(strings('transmission', ['reference angle: 45°', 'object angle: 0°', 'size: 120 x 0.01 mm'], { object: ['size: 80 x 0.01 mm'] }));
    expectNear(perMm(r.value('fringes')), (Math.SQRT1_2 + 100 / Math.hypot(300, 100)) / RED / 1000, 0.01);
  });
  it('an object angle that is not written is a guess, and is said to be', () => {
    const r = read(strings('transmission', ['reference angle: 45°']));
    expectNear(perMm(r.value('fringes')), 1117.43, 0.01);
    expect(r.results.graph.ranking(r.cell('fringes')).find(x => x.input.name === 'P1.object angle')!.input.origin).toBe('assumed');
  });
});

describe('beams from opposite sides', () => {
  const layer = ['index: 1.52', 'layer: 7 µm'];
  // 2n/λ is 4804.05 lines/mm; at 45° the internal angle is asin(sin 45° / 1.52) = 27.723°, and 2n cos(13.861°)/λ is 4664.1; at 56.57° 4602.6.
  it.each([['0°', 4804.05], ['45°', 4664.14], ['56.57°', 4602.6]])('light from the object square to the plate, reference at %s', (angle, lines) => {
    expectNear(perMm(read(strings('reflection', [...layer, `reference angle: ${angle}`, 'object angle: 0°'])).value('fringes')), lines, 0.1);
  });
  // Blanche, Field Guide to Holography (SPIE 2014), p. 23: about 300 to 3000 for transmission, over 4000 in reflection.
  it('as the field guide has it', () => {
    expect(perMm(read(strings('reflection', [...layer, 'reference angle: 50°'])).value('fringes'))).toBeGreaterThan(4000);
    const transmission = perMm(read(strings('transmission', ['reference angle: 50°'])).value('fringes'));
    expect(transmission).toBeGreaterThan(300);
    expect(transmission).toBeLessThan(3000);
  });
  it('the planes halve both angles in the layer', () => {
    expectNear(asked(read(strings('reflection', [...layer, 'reference angle: 45°', 'object angle: 0°'])), 'P1.fringe tilt') * (180 / Math.PI), 13.861, 0.001);
    expectNear(asked(read(strings('transmission', [...layer, 'reference angle: 45°', 'object angle: 0°'])), 'P1.object.fringe tilt') * (180 / Math.PI), 90 - 13.861, 0.001);
  });
});

describe('estimates, on demand only', () => {
  // Kogelnik's closed forms by hand: d 7 µm, n₁ 0.02, 632.8 nm, 9.804° in the layer: ν = 0.70534, sin²ν = 0.42029; square to the plate ν = 0.69504, tanh²ν = 0.36146.
  const layer = ['index: 1.52', 'layer: 7 µm', 'index amplitude: 0.02'];
  it('efficiency', () => {
    expectNear(asked(read(strings('transmission', [...layer, 'reference angle: 15°', 'object angle: -15°'])), 'P1.estimated efficiency'), 0.42029, 2e-5);
    expectNear(asked(read(strings('reflection', [...layer, 'reference angle: 0°', 'object angle: 0°'])), 'P1.estimated efficiency'), 0.36146, 2e-5);
  });
  // Klein & Cook: 2π · 632.8 nm · 7 µm / (1.52 · (1.22248 µm)²) = 12.252
  it('thick or thin', () => expectNear(asked(read(strings('transmission', [...layer, 'reference angle: 15°', 'object angle: -15°'])), 'P1.volume parameter'), 12.252, 0.002));
  // 0.4429 λ² / (n d) = 16.67 nm
  it('bandwidth of a reflection hologram', () => {
    expectNear(asked(read(strings('reflection', [...layer, 'reference angle: 0°', 'object angle: 0°'])), 'P1.bandwidth'), 16.67e-9, 0.01e-9);
    expect(read(strings('transmission', [...layer, 'reference angle: 30°'])).results.ask('P1.bandwidth')!.missing?.why).toMatch(/transmission hologram/);
  });
  it('nothing of it stands on the page before it is asked for', () => {
    const r = read(strings('reflection', [...layer, 'reference angle: 0°']));
    expect(r.results.published.map(c => c.name).filter(n => /tilt|volume|efficiency|bandwidth/.test(n))).toEqual([]);
    expect(r.results.graph.cells.some(c => /tilt|volume|efficiency|bandwidth/.test(c.name))).toBe(false);
  });
  it('without a layer it is said what is missing', () => {
    expect(read(strings('reflection', ['reference angle: 0°'])).results.ask('P1.volume parameter')!.missing?.why).toMatch(/thickness of the layer of P1 is not known/);
  });
});

interface Placed { readonly hologram?: string; readonly turn?: number; readonly mirrored?: boolean; readonly unit?: 'mm' | 'in'; readonly heading?: number; readonly move?: readonly [number, number] }
/** The same table, turned, mirrored, moved, or written in inches: a reference that spreads from M2, an object with a size, a plate with a size. */
function placed({ hologram = 'transmission', turn = 0, mirrored = false, unit = 'mm', heading = 270, move = [0, 0] }: Placed): string {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const at = (x: number, y: number): string => {
    const v = mirrored ? -y : y;
    return `(${[c * x - s * v + move[0], s * x + c * v + move[1]].map(n => (n / (unit === 'in' ? 25.4 : 1)).toFixed(9)).join(', ')}) ${unit}`;
  };
  const faces = (mirrored ? -heading : heading) + (turn * 180) / Math.PI;
  return `setup "Whelk shell" {
  hologram: ${hologram}
  laser red at ${at(0, 0)} {
    wavelength: 632.8 nm
    coherence length: 5 m
    beam diameter: 0.8 mm
  }
  splitter S1 at ${at(300, 0)}
  mirror M1 at ${at(1000, 0)}
  spreader R1 at ${at(1000, 90)} {
    focal length: 9 mm
  }
  mirror M2 at ${at(1000, 100)}
  mirror M3 at ${at(350, 500)}
  object whelk at ${at(700, 400)} {
    size: 40 x 60 x 35 mm
  }
  plate P1 at ${at(700, 700)} heading ${faces.toFixed(9)}° {
    size: 63 x 80 mm
    index: 1.52
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> R1
    -> M2
    -> P1
  beam object from S1 reflected
    -> M3
    -> whelk
    -> P1
}
`;
}

describe('over plate and object', () => {
  it('no point of either makes finer ones, by another way through the geometry', () => {
    const r = read(placed({}));
    const sine = (ax: number, az: number, bx: number, by: number, bz: number): [number, number] => {
      // along a plate in the plane y = 700
      const d = [ax - bx, 700 - by, az - bz];
      const l = Math.hypot(...d);
      return [d[0]! / l, d[2]! / l];
    };
    // Light of R1 comes from about its focus, 9 mm behind where it stands, folded at M2: as far behind M2 in line with P1 as it is from M2 along the beam.
    const [ux, uy] = [(700 - 1000) / Math.hypot(300, 600), 600 / Math.hypot(300, 600)];
    const source = [1000 - ux * 1, 100 - uy * 1];
    let most = 0;
    for (let i = 0; i <= 12; i++) for (let j = 0; j <= 12; j++) for (let a = 0; a <= 8; a++) for (let b = 0; b <= 8; b++) for (const y of [400 - 17.5, 400, 400 + 17.5]) {
      const [x, z] = [700 - 31.5 + (63 * i) / 12, -40 + (80 * j) / 12];
      const object = sine(x, z, 700 - 20 + (40 * a) / 8, y, -30 + (60 * b) / 8);
      const reference = sine(x, z, source[0]!, source[1]!, 0);
      most = Math.max(most, Math.hypot(object[0] - reference[0], object[1] - reference[1]) / RED);
    }
    expectNear(r.value('P1.object.fringes') / most, 1, 5e-4);
  });
  it('turned, mirrored, moved, written in inches: the same', () => {
    const plain = read(placed({}));
    fc.assert(fc.property(between(-3, 3), fc.boolean(), fc.constantFrom('mm' as const, 'in' as const), between(-500, 500), (turn, mirrored, unit, x) => {
      const other = read(placed({ turn, mirrored, unit, move: [x, 40] }));
      expect(other.value('fringes') / plain.value('fringes')).toBeCloseTo(1, 7);
      expect(other.results.fringes.pairs[0]!.way).toBe('transmission');
    }), { numRuns: 25 });
  });
  it('a plate that shows its other face to the light has the same fringes', () => {
    expect(read(placed({ heading: 90 })).value('fringes') / read(placed({})).value('fringes')).toBeCloseTo(1, 9);
  });
  it('a colour twice as long has fringes half as fine', () => {
    const at = (nm: number): number => read(placed({}).replace('632.8 nm', `${nm} nm`)).value('fringes');
    expect(at(500) / at(1000)).toBeCloseTo(2, 4);
  });
  it('derivatives are those of differences', () => {
    const { results: { graph }, cell } = read(placed({}));
    const fringes = cell('fringes');
    for (const name of ['P1.x', 'P1.y', 'whelk.x', 'M2.x', 'red.wavelength']) {
      const input = graph.find(name)!;
      const x = graph.value(input)!;
      const h = name === 'red.wavelength' ? 1e-11 : 1e-5;
      const slope = (graph.evaluate(fringes, new Map([[input, x + h]])) - graph.evaluate(fringes, new Map([[input, x - h]]))) / (2 * h);
      expect(graph.gradient(fringes).get(input)! / slope, name).toBeCloseTo(1, 4);
    }
  });
});

describe('what is written against what stands on the table', () => {
  const codes = (text: string): string[] => read(text).snapshot.findings.filter(f => ['fringes-too-fine', 'sides-disagree', 'reference-too-near'].includes(f.code)).map(f => `${f.severity} ${f.code}`);
  it('a reflection hologram with both beams on one side', () => {
    expect(codes(placed({ hologram: 'reflection' }))).toEqual(['warning sides-disagree']);
    expect(read(placed({ hologram: 'reflection' })).results.fringes.pairs[0]!.way).toBe('transmission');
    expect(codes(placed({}))).toEqual([]);
  });
  // 2 · 1.62 · cos(½ asin(sin 45° / 1.62)) / 632.8 nm = 4993 lines/mm against 3000 ± 20 %
  it('a stock for masters in a reflection hologram', () => {
    const r = read(strings('reflection', ['material: fine-grain silver halide', 'reference angle: 45°', 'object angle: 0°']));
    const [f] = r.snapshot.findings.filter(x => x.code === 'fringes-too-fine');
    expect(f!.severity).toBe('warning');
    expect(f!.message).toBe('The stock of P1 resolves about 3,000 lines/mm, this reflection hologram needs 4,990 lines/mm: nothing will record. Choose a finer stock.');
    expectNear(r.value('P1.object.resolving share'), (2 * 1.62 * Math.cos(Math.asin(Math.SQRT1_2 / 1.62) / 2)) / RED / 3e6, 1e-3);
  });
  it('little to spare is a note, much to spare is nothing', () => {
    expect(codes(strings('reflection', ['resolving power: 5400 lines/mm', 'reference angle: 45°', 'object angle: 0°']))).toEqual(['note fringes-too-fine']);
    expect(codes(strings('reflection', ['resolving power: 8000 lines/mm', 'reference angle: 45°', 'object angle: 0°']))).toEqual([]);
    expect(codes(strings('transmission', ['resolving power: 1150 lines/mm', 'reference angle: 45°', 'object angle: 0°']))).toEqual([]);
    expect(codes(strings('transmission', ['resolving power: 900 lines/mm', 'reference angle: 45°', 'object angle: 0°']))).toEqual(['warning fringes-too-fine']);
  });
  // sin 20° = 0.342; three times half of 80 mm at 300 mm: 3 · 40 / √(300² + 40²) = 0.396
  it('a reference near a wide object', () => {
    expect(codes(strings('transmission', ['reference angle: 20°', 'object angle: 0°'], { object: ['size: 80 x 1 mm'] }))).toEqual(['note reference-too-near']);
    expect(codes(strings('transmission', ['reference angle: 25°', 'object angle: 0°'], { object: ['size: 80 x 1 mm'] }))).toEqual([]);
  });
});

describe('what counts of a long object is how far it reaches towards the reference', () => {
  const room = (plate: string[], size: string): number => read(strings('transmission', [...plate, 'object angle: 0°'], { object: [`size: ${size}`] })).value('P1.object.room beside the object');
  // Of 80 mm at 300 mm half is 40/√(300² + 40²) = 0.1322, of 20 mm 10/√(300² + 10²) = 0.03331; sin 20° / (3 · 0.1322) = 0.8627, sin 20° / (3 · 0.03331) = 3.422.
  const [wide, narrow] = [40 / Math.hypot(300, 40), 10 / Math.hypot(300, 10)].map(half => Math.sin(Math.PI / 9) / (3 * half)) as [number, number];
  it('level of a reference from the side, upright of one from above', () => {
    expectNear(room(['reference angle: 20°'], '80 x 20 mm'), wide, 1e-6);
    expectNear(room(['reference angle: 20°'], '20 x 80 mm'), narrow, 1e-6);
    expectNear(room(['reference angle: 20°', 'reference from: above'], '80 x 20 mm'), narrow, 1e-6);
    expectNear(room(['reference angle: 20°', 'reference from: below'], '20 x 80 mm'), wide, 1e-6);
  });
});

describe('the slit of a rainbow hologram', () => {
  const found = (plate: string, size = '63 x 3 mm', hologram = 'rainbow'): string[] => read(`setup "Rainbow" {
  hologram: ${hologram}
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  hologram H1 {
    size: ${size}
  }
  plate H2 {
    size: 63 x 63 mm
    reference angle: 30°
    object angle: 0°
${plate}  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> H2: 1600 mm
  beam feed from S1 reflected
    -> H1: 1470 mm
  beam image from H1 diffracted
    -> H2: 130 mm
}
`).snapshot.findings.filter(f => f.code === 'slit-along-reference' || f.code === 'reference-too-near').map(f => `${f.severity} ${f.code}`);
  it('lies level for a reference from above, and upright for one from the side', () => {
    // 63 mm at 130 mm reach 31.5/133.8 = 0.235: sin 30° is less than 3 · 0.235; 3 mm do not come near it.
    expect(found('    reference from: above\n')).toEqual([]);
    expect(found('    reference from: the side\n')).toEqual(['warning slit-along-reference']);
    expect(found('    reference from: the side\n', '3 x 63 mm')).toEqual([]);
    expect(found('    reference from: below\n', '3 x 63 mm')).toEqual(['warning slit-along-reference']);
  });
  it('of which nothing is told is a note, and one slip is one finding', () => { expect(found('')).toEqual(['note slit-along-reference']); });
  it('is no slit where it is about as wide as high, and nothing of another hologram', () => {
    expect(found('', '30 x 20 mm')).toEqual([]);
    expect(found('', '63 x 3 mm', 'transmission')).toEqual(['note reference-too-near']);
  });
});

describe('by name', () => {
  it('an expectation of them is held against the figure', () => {
    const page = (limit: string): string => strings('transmission', ['reference angle: 45°', 'object angle: 0°']).replace(/\}\n$/, `  expect fringes < ${limit}\n  expect P1.bandwidth < 20 nm\n}\n`);
    expect(read(page('1200 lines/mm')).results.goals.map(g => g.outcome)).toEqual(['met', 'cannot be told']);
    expect(read(page('1100 lines/mm')).results.goals.map(g => g.outcome)).toEqual(['not met', 'cannot be told']);
  });
  it('a finding that is accepted keeps its reason', () => {
    const page = strings('reflection', ['material: fine-grain silver halide', 'reference angle: 45°']).replace(/\}\n$/, '  accept fringes-too-fine "only to see it fail"\n}\n');
    expect(read(page).snapshot.findings.find(f => f.code === 'fringes-too-fine')!.accepted).toBe('only to see it fail');
  });
});

describe('nothing without what it needs', () => {
  it.each([
    ['no wavelength', strings('transmission', ['reference angle: 45°'], { wavelength: '' })],
    ['no angle', strings('transmission', ['size: 63 x 63 mm'])],
  ])('%s', (_, text) => {
    const r = read(text);
    expect(r.results.fringes.pairs).toEqual([]);
    expect(r.results.published.some(c => /\.fringes$|resolving/.test(c.name))).toBe(false);
    expect(r.results.graph.cells.some(c => /\.fringes$|resolving/.test(c.name))).toBe(false);
  });
  it('no kind of hologram is taken for granted, but light that goes through the plate comes back from the other side', () => {
    expect(read(strings('transmission', ['reference angle: 45°']).replace('  hologram: transmission\n', '')).results.fringes.pairs).toEqual([]);
    const single = `setup "Oyster" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  object oyster
  plate P1 {
    reference angle: 45°
    index: 1.52
    object angle: 0°
  }
  beam all from red
    -> P1 through: 900 mm
    -> oyster: 10 mm
    -> P1: 10 mm
}
`;
    const r = read(single);
    expect(r.results.fringes.pairs[0]!.way).toBe('reflection');
    expectNear(perMm(r.value('P1.object.fringes')), 4664.14, 0.1);
  });
  it('things at one place have no fringes, and no wrong number', () => {
    const r = read(placed({}).replace(/object whelk at \([^)]*\) mm/, 'object whelk at (700, 700) mm'));
    expect(r.results.fringes.pairs.filter(f => !f.finest.missing)).toEqual([]);
  });
});
