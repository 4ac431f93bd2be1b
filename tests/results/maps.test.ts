/** Path difference and brightness over plate × object of whole setups, against closed forms and plain sums over other points. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectNear, read, serious, type Read } from './read.ts';

type V = readonly [number, number, number];
const mm = (v: number): number => v * 1000;
const asked = ({ results }: Read, name: string): number => { const cell = results.ask(name)!; expect(cell.missing, name).toBeUndefined(); return mm(results.graph.value(cell)!); };

/** A transmission master lit from the front: the reference spreads from where M1 stands, the object light from M3. Places in mm; `at` writes one of them. */
interface Master { readonly plate?: string; readonly object?: readonly string[]; readonly laser?: string; readonly at?: (x: number, y: number) => string; readonly unit?: string }
const master = ({ plate = '63.5 x 0.02 mm', object = ['size: 0.02 x 0.02 x 80 mm'], laser = 'coherence length: 5 m', at = (x, y) => `(${x}, ${y}) mm` }: Master = {}): string => `setup "Whelk shell" {
  hologram: transmission
  laser red at ${at(60, 100)} facing S1 {
    wavelength: 632.8 nm
    beam diameter: 0.8 mm
    ${laser}
  }
  splitter S1 at ${at(350, 100)}
  mirror M1 at ${at(1100, 100)}
  spreader R1 on M1 -> P1 by 0.1 mm {
    focal length: 0.75 mm
  }
  mirror M2 at ${at(94, 420)}
  mirror M3 at ${at(400, 640)}
  spreader R2 on M3 -> whelk by 0.1 mm {
    focal length: 0.75 mm
  }
  object whelk at ${at(700, 400)} {
${object.map(l => `    ${l}\n`).join('')}  }
  plate P1 at ${at(700, 700)} facing whelk {
    size: ${plate}
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
}
`;

/** The other way: plain points, plain sums. Source of the reference M1, of the object light M3; offset by the lengths of the legs. */
const far = (a: V, b: V): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const [S1, M1, M2, M3, WHELK, P1]: [V, V, V, V, V, V] = [[350, 100, 0], [1100, 100, 0], [94, 420, 0], [400, 640, 0], [700, 400, 0], [700, 700, 0]];
const difference = (p: V, q: V): number => far(S1, M2) + far(M2, M3) + far(M3, q) + far(q, p) - far(S1, M1) - far(M1, p);
const onPlate = (x: number, z: number): V => [P1[0] + x, P1[1], z];
const onWhelk = (x: number, z: number, toward: number): V => [WHELK[0] + x, WHELK[1] + toward, z];

describe('a master by two beams', () => {
  const r = read(master());
  // 750.0 + 721.1 = 1471.1 against 409.8 + 376.9 + 384.2 + 300.0 = 1470.9; angles from the same triangle of places.
  it('arms, angles and folds', () => {
    expectNear(r.mm('P1.reference.length'), 1471.1, 0.05);
    expectNear(r.mm('P1.object.length'), 1470.9, 0.05);
    expectNear(r.mm('mismatch'), -0.2, 0.05);
    const degrees = (name: string): number => (r.results.graph.value(r.results.ask(name) ?? r.cell(name))! * 180) / Math.PI;
    for (const [name, value] of [['reference angle', 33.7], ['lighting angle', 51.3], ['S1.incidence', 25.7], ['M2.incidence', 43.5]] as const) expectNear(degrees(name), value, 0.06, name);
    expect(serious(r.snapshot.findings).filter(f => /dark-side-lit|mismatched|too-deep/.test(f))).toEqual([]);
  });
  // ±40 mm · (1 + cos 51.3°) = ±65 mm.
  it('over the depth of the object', () => {
    expectNear(r.mm('P1.object.far.mismatch') - r.mm('mismatch'), 65, 0.1);
    expectNear(r.mm('P1.object.near.mismatch') - r.mm('mismatch'), -65, 0.1);
  });
  // √(368.25² + 600²), √(431.75² + 600²) and √(300² + 31.75²) against the middles: +18.8 and −16.4 mm; ±63.5 mm: +39.8 and −30.4 mm.
  it.each([['63.5 x 0.02 mm', 18.8, -16.4], ['127 x 0.02 mm', 39.8, -30.4]])('across a plate of %s', (plate, most, least) => {
    const edges = read(master({ plate }));
    expectNear(asked(edges, 'P1.object.greatest across the plate') - edges.mm('mismatch'), most, 0.06);
    expectNear(asked(edges, 'P1.object.least across the plate') - edges.mm('mismatch'), least, 0.06);
    expectNear(asked(edges, 'P1.path walk'), most - least, 0.1);
  });
  // Brute force over the corners of plate and box, where a difference that bends one way is largest.
  it('the largest mismatch is that of the worst pair', () => {
    const box = read(master({ plate: '102 x 127 mm', object: ['shape: points', 'size: 60 x 40 x 50 mm'] }));
    let worst = 0;
    for (let i = -10; i <= 10; i++) for (let j = -10; j <= 10; j++) for (let k = -4; k <= 4; k++) for (let l = -4; l <= 4; l++) for (let n = -4; n <= 4; n++) {
      const d = difference(onPlate((i / 20) * 102, (j / 20) * 127), onWhelk((k / 8) * 60, (l / 8) * 40, (n / 8) * 50));
      if (Math.abs(d) > Math.abs(worst)) worst = d;
    }
    expectNear(box.mm('largest mismatch'), worst, 0.3);
  });
  // Mean of the squared contrast over 40 × 40 points of the plate, for the box's corners and the middles of its faces; a gaussian line has contrast exp(−(πδ/L)²/(4 ln 2) · k²), one half at the coherence length.
  it('the darkest part, averaged over the plate', () => {
    const [wide, high] = [102, 127];
    const box = read(master({ plate: `${wide} x ${high} mm`, object: ['shape: points', 'size: 60 x 40 x 50 mm'], laser: 'coherence length: 150 mm\n    coherence contrast: 50%' }));
    const bright = (q: V): number => {
      let sum = 0;
      for (let i = 0; i < 40; i++) for (let j = 0; j < 40; j++) sum += 0.5 ** (2 * (difference(onPlate(((i + 0.5) / 40 - 0.5) * wide, ((j + 0.5) / 40 - 0.5) * high), q) / 150) ** 2);
      return sum / 1600;
    };
    let darkest = 1;
    for (const x of [-30, 0, 30]) for (const z of [-20, 0, 20]) for (const t of [-25, 0, 25]) darkest = Math.min(darkest, bright(onWhelk(x, z, t)));
    expectNear(box.value('darkest point brightness'), darkest, 0.004);
  });
  it('costs nothing where no size is written, or nothing is placed', () => {
    expect(read(master().replace(/ {4}size: 63.5.*\n/, '')).results.maps.maps).toEqual([]);
  });
});

describe('a reflection hologram by two beams', () => {
  // (150, 675.5), (450, 250), the plate at 45° to the reference; (550, 200), (620, 760), the object 80 mm to the right: 1349.7 against 1349.6 mm.
  const r = read(`setup "Shard" {
  hologram: reflection
  laser red at (0, 200) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (150, 200) mm
  mirror Ma at (150, 675.5) mm
  mirror Mr at (450, 250) mm
  mirror Mo1 at (550, 200) mm
  mirror Mo2 at (620, 760) mm
  object shard at (780, 500) mm {
    size: 50 x 40 x 20 mm
  }
  plate P1 at (700, 500) mm facing shard {
    size: 63 x 63 mm
  }
  beam raw from red
    -> S1
  beam reference from S1 reflected
    -> Ma
    -> Mr
    -> P1
  beam object from S1 through
    -> Mo1
    -> Mo2
    -> shard
    -> P1
}
`);
  it('arms, angles and the lit side', () => {
    expectNear(r.mm('P1.reference.length'), 475.5 + 520.6 + 353.6, 0.1);
    expectNear(r.mm('P1.object.length'), 400 + 564.4 + 305.3 + 80, 0.1);
    expectNear(r.mm('mismatch'), 0, 0.1);
    expectNear((r.value('reference angle') * 180) / Math.PI, 45, 0.05);
    expectNear((r.value('lighting angle') * 180) / Math.PI, 58.4, 0.05);
    expect(r.value('lit side')).toBeGreaterThan(0.6);
    expect(serious(r.snapshot.findings).filter(f => f.includes('dark-side-lit'))).toEqual([]);
  });
  // The reference runs side by side at 45° level: its path grows by x sin 45° along the plate; that of the object from |80| to |(80, x)|.
  it('across the plate', () => {
    const x = 31.5;
    const corner = (side: number): number => Math.hypot(80, x, x) - 80 - side * x * Math.SQRT1_2;
    const middle = (side: number): number => Math.hypot(80, x) - 80 - side * x * Math.SQRT1_2;
    expectNear(asked(r, 'P1.object.greatest across the plate') - r.mm('mismatch'), corner(-1), 0.03);
    expectNear(asked(r, 'P1.object.least across the plate') - r.mm('mismatch'), middle(1), 0.03);
  });
});

describe('symmetries', () => {
  const base = { plate: '102 x 127 mm', object: ['size: 60 x 40 x 50 mm'], laser: 'coherence length: 300 mm' };
  const names = ['P1.object.largest mismatch', 'P1.object.darkest point brightness', 'P1.object.lit side', 'P1.object.path walk'];
  const figures = (text: string): number[] => { const r = read(text); return names.map(n => r.results.graph.value(r.results.ask(n)!)!); };
  const plain = figures(master(base));
  const same = (other: readonly number[], allowed: number): void => other.forEach((v, i) => expectNear(v, plain[i]!, allowed, names[i]));
  it('the table turned and shifted', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: -900, max: 900 }), (turn, shift) => {
      const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
      const at = (x: number, y: number): string => `(${(c * x - s * y + shift).toFixed(6)}, ${(s * x + c * y).toFixed(6)}) mm`;
      same(figures(master({ ...base, at })), 1e-5);
    }), { numRuns: 12 });
  });
  it('its mirror image', () => same(figures(master({ ...base, at: (x, y) => `(${-x}, ${y}) mm` })), 1e-5));
  it('other units', () => same(figures(master({ plate: '10.2 x 12.7 cm', object: ['size: 0.06 x 0.04 x 0.05 m'], laser: 'coherence length: 30 cm', at: (x, y) => `(${x / 10}, ${y / 10}) cm` })), 1e-9));
});

describe('one beam', () => {
  // Light 56.57° off the normal of the plate, the shell 30 mm behind it: 30 mm · (1 + cos 56.57°) = 46.5 mm, from 100 m away so that it runs side by side.
  const oyster = (angle: number, d: number): string => `setup "Oyster" {
  hologram: reflection
  laser red at (${-100000 * Math.cos(angle)}, ${100000 * Math.sin(angle)}) mm facing P1 {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  plate P1 at (0, 0) mm heading 180°
  object oyster at (${d}, 0) mm
  beam all from red
    -> P1 through
    -> oyster
    -> P1
}
`;
  it.each([[56.57, 46.5], [0, 60], [45, 51.2]])('a shell 30 mm behind the plate, light at %s°', (angle, expected) => {
    expectNear(read(oyster((angle * Math.PI) / 180, 30)).mm('mismatch'), expected, 0.05);
  });
});

describe('a tube whose modes come into step again', () => {
  // 2 · 350 mm = 700 mm; the reference of the master made 1 mm shorter than the object beam by 690 mm is 10 mm short of that.
  const strings = (reference: number, modes = 'modes: 3'): Read => read(`setup "Whelk" {
  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
    ${modes}
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: ${reference} mm
  beam object from S1 reflected
    -> whelk: 1600 mm
    -> P1: 300 mm
}
`);
  it.each([[1210, 690 - 700], [1250, 650 - 700], [500, 1400 - 1400], [2610, -710 + 700]])('a reference of %s mm', (reference, off) => {
    expectNear(asked(strings(reference), 'P1.object.off revival'), off, 1e-6);
  });
  it('is not said where the paths match, nor of one mode', () => {
    expect(strings(1890).results.ask('P1.object.off revival')).toBeUndefined();
    expect(strings(1210, 'modes: 1').results.ask('P1.object.off revival')).toBeUndefined();
  });
});
