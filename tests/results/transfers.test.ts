/** Transfers, and objects lit through ground glass: light that nobody has metered, pairs of points, ways by the rim. Expected values by closed forms and sums of this file's own. */
import { readFileSync } from 'node:fs';
import * as cephes from 'cephes';
import { beforeAll, describe, expect, test } from 'vitest';
import { imageSpread } from '../../server/optics/beams/image.ts';
import { interval } from '../../server/results/sampling.ts';
import { expectNear, read, serious, setup, type Read } from './read.ts';

beforeAll(async () => { await cephes.compiled; });

const fixture = (name: string): Read => read(readFileSync(`tests/fixtures/published/${name}.plate`, 'utf8'));
const LAMBDA = 632.8e-9;
const MILLI = 1e-3;
const ASLANT = Math.SQRT1_2;

/** Radius a distance behind a diverging lens of −f that a waist w₀ stands before: 1/q′ = 1/q + 1/f (Kogelnik & Li 1966), by hand with complex numbers. */
function radiusBehind(w0: number, before: number, f: number, z: number): number {
  const zr = (Math.PI * w0 * w0) / LAMBDA;
  const inverse = { re: before / (before ** 2 + zr ** 2) + 1 / f, im: -zr / (before ** 2 + zr ** 2) };
  const size = inverse.re ** 2 + inverse.im ** 2;
  const q = { re: inverse.re / size + z, im: -inverse.im / size };
  return Math.sqrt((-LAMBDA / Math.PI) / (-q.im / (q.re ** 2 + q.im ** 2)));
}
/**
 * Share of the beam 800 mm behind the lens that falls on a face at 45°, width aslant: rays keep their place in radii, so that ∫ √(2/π) e^(−2X²) dX · erf(√2 half height / w), X = u cos 45° / w, w where the
 * face is. The error function by an npm library.
 */
function caughtAslant(width: number, height: number): number {
  const at = (u: number): number => radiusBehind(0.4e-3, 2e-3, 10e-3, 0.8 + u * ASLANT);
  const place = (u: number): number => (u * ASLANT) / at(u);
  const n = 2000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const [a, b] = [width * (i / n - 0.5), width * ((i + 1) / n - 0.5)];
    const m = (a + b) / 2;
    sum += Math.sqrt(2 / Math.PI) * Math.exp(-2 * place(m) ** 2) * (place(b) - place(a)) * cephes.erf((Math.SQRT2 * height) / 2 / at(m));
  }
  return sum;
}

interface Given { readonly hologram?: readonly string[]; readonly slit?: readonly string[]; readonly plate?: readonly string[]; readonly gap?: string; readonly reflects?: string; readonly lines?: readonly string[] }
const H1 = ['size: 60 x 50 mm', 'image: real', 'image distance: 250 mm', 'image size: 60 x 40 mm', 'efficiency: 12%', 'image light: 1'];
/** 2 mW, half of it into each arm, no losses: a spreading lens, 800 mm on the first hologram, of which nothing says how it faces: 45°. */
const transfer = ({ hologram = H1, slit, plate = [], gap = '250 mm', reflects = '50%', lines = [] }: Given = {}): Read => read(setup(
  'laser red {', '  wavelength: 632.8 nm', '  coherence length: 5 m', '  power: 2 mW', '  beam diameter: 0.8 mm', '  beam quality: 1', '}', 'splitter S1 {', `  reflects: ${reflects}`, '  loss: 0%', '}',
  ...['R1', 'R2'].flatMap(r => [`spreader ${r} {`, '  focal length: -10 mm', '  loss: 0%', '}']), ...(slit ? ['slit mask {', ...slit.map(l => `  ${l}`), '}'] : []),
  'hologram H1 {', ...hologram.map(l => `  ${l}`), '}', 'plate P2 {', ...['size: 63 x 63 mm', 'sensitivity: 40 µJ/cm²', 'reference angle: 0°', 'object angle: 0°', ...plate].map(l => `  ${l}`), '}',
  'beam raw from red', '-> S1: 1 mm', 'beam reference from S1 through', '-> R1: 1 mm', '-> P2: 800 mm', 'beam master from S1 reflected', '-> R2: 1 mm', ...(slit ? ['-> mask: 800 mm', '-> H1: 0.001 mm'] : ['-> H1: 800 mm']),
  'beam image from H1 diffracted', `-> P2: ${gap}`, ...lines,
));
const objectLight = (g?: Given): number => transfer(g).value('P2.object.light');

describe('light of a transfer', () => {
  const caught = (): number => caughtAslant(0.06, 0.05);
  test('in its image is what the first hologram catches, times its efficiency, over the area of the image', () => {
    expectNear(objectLight() / ((1e-3 * caught() * 0.12) / (0.06 * 0.04)), 1, 1e-6);
  });
  test('before the image is spread over whichever is wider, the image or the hologram, as seen from the other', () => {
    // 200 of 250 mm: 60·0.2 = 12 beside 60·0.8 = 48; 50·0.2 = 10 beside 40·0.8 = 32. 50 of 250 mm: 48 beside 12, 40 beside 8.
    expectNear(objectLight({ gap: '200 mm' }) / ((1e-3 * caught() * 0.12) / (0.048 * 0.032)), 1, 1e-6);
    expectNear(objectLight({ gap: '50 mm' }) / ((1e-3 * caught() * 0.12) / (0.048 * 0.04)), 1, 1e-6);
  });
  test('of an image behind the hologram spreads all the way', () => {
    // 250 mm behind, 250 mm before: 60·2 = 120 beside 60; 50·2 = 100 beside 40.
    expectNear(objectLight({ hologram: H1.map(l => l.replace('real', 'virtual')) }) / ((1e-3 * caught() * 0.12) / (0.12 * 0.1)), 1, 1e-6);
  });
  test('through a slit is what the slit lets pass', () => {
    const [level, upright] = [caughtAslant(0.06, 0.004), caughtAslant(0.004, 0.05)];
    const light = (share: number): number => (1e-3 * share * 0.12) / (0.06 * 0.04);
    expectNear(objectLight({ slit: ['width: 4 mm', 'direction: horizontal'] }) / light(level), 1, 1e-4);
    expectNear(objectLight({ slit: ['width: 4 mm', 'direction: vertical'] }) / light(upright), 1, 1e-4);
    // Of a plate that hangs with its left side up, a level slit stands upright on the table.
    expectNear(objectLight({ slit: ['width: 4 mm'], plate: ['up: left'] }) / light(upright), 1, 1e-4);
    expectNear(transfer({ slit: ['width: 4 mm'] }).results.graph.value(transfer({ slit: ['width: 4 mm'] }).results.ask('P2.image.power')!)! / (1e-3 * level), 1, 1e-4);
  });
  test('is a band, by the efficiency and by how evenly the image fills its size', () => {
    const r = transfer({ hologram: H1.slice(0, 4) });
    const { low, high } = interval(r.results.graph, r.cell('P2.object.light'));
    const middle = r.value('P2.object.light');
    // Factors of 4 and 2, evenly over the logarithm: u² = (ln²4 + ln²2)/3; 95 % lie within 1.8 to 1.96 of it.
    const u = Math.sqrt((Math.log(4) ** 2 + Math.log(2) ** 2) / 3);
    expect(Math.log(high / middle) / u).toBeGreaterThan(1.6);
    expect(Math.log(middle / low) / u).toBeLessThan(2.1);
    expect(r.results.graph.ranking(r.cell('P2.object.light')).slice(0, 2).map(x => x.input.words)).toEqual(['efficiency of H1', 'image light of H1']);
  });
  test('gives ratio, exposure and split as for a master', () => {
    const even = transfer();
    expectNear(even.value('beam ratio'), even.value('P2.reference.light') / even.value('P2.object.light'), 1e-9);
    expectNear(even.value('exposure'), 0.4 / even.value('P2.light'), 1e-9);
    const aimed = transfer({ reflects: '?', lines: ['aim beam ratio: 2:1'] });
    const [a, b] = [even.value('P2.reference.light'), even.value('P2.object.light')];
    // ρ = A_r / (A_r + K A_o): conservation of energy. The object beam is reflected.
    expectNear(aimed.results.graph.value(aimed.results.ask('S1.split for ratio')!)!, a / (a + 2 * b), 1e-9);
    expect(aimed.results.losses.ladders[0]!.rungs.find(x => x.cause === 'ratio')!.loss).toBeDefined();
  });
  test('is missing with what to write where sizes are not written', () => {
    expect(transfer({ hologram: H1.filter(l => !l.startsWith('image size')) }).cell('P2.object.light').missing?.why).toContain('give H1 an “image size”');
    expect(transfer({ hologram: H1.filter(l => !l.startsWith('size')) }).cell('P2.object.light').missing?.why).toContain('how large H1 is');
    const left = transfer({ reflects: '?', lines: ['aim beam ratio: 2:1'], hologram: H1.slice(0, 3) });
    expect(left.cell('beam ratio').missing?.why).toContain('image size');
  });
  test('of an image that stands nowhere is taken as about at the plate, and says so', () => {
    const r = transfer({ hologram: H1.filter(l => !l.startsWith('image distance')) });
    expectNear(r.value('P2.object.light') / objectLight(), 1, 1e-6);
    expect([...r.results.graph.gradient(r.cell('P2.object.light')).keys()].map(c => c.words)).toContain('where the image of H1 is, as a share of the way to P2');
  });
});

test('the width of an image is that of rays through both, counted', () => {
  // Rays from even points of the opening through even points of the image, and how many of them meet the middle fiftieth of what they spread over at most.
  for (const [a, b, d, l] of [[60, 40, 250, 250], [60, 40, 250, 200], [60, 40, 250, 60], [4, 60, 300, 200], [50, 50, -200, 250], [30, 80, 250, 400]] as const) {
    const n = 1200;
    let inside = 0;
    const half = 0.01 * (a * Math.abs(1 - l / d) + b * Math.abs(l / d));
    for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) {
      const [x, y] = [a * ((i + 0.5) / n - 0.5), b * ((k + 0.5) / n - 0.5)];
      if (Math.abs(x + ((y - x) * l) / d) < half) inside++;
    }
    expectNear(imageSpread(a * MILLI, b * MILLI, d * MILLI, l * MILLI) / MILLI, (2 * half * n * n) / inside, 0.02 * Math.max(a, b), `${a} ${b} ${d} ${l}`);
  }
});

describe('pairs of a point of the first hologram and a point of the plate', () => {
  type V = readonly [number, number, number];
  const far = (a: V, b: V): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
  // H1 in the origin faces away in +x, lit side by side at 45° from below left; P2 squarely 250 mm before it; the reference comes to it at 45° from (450, −200).
  const placed = (slit: string): Read => read(`setup "Pairs" {
  hologram: rainbow
  laser red at (-1000, -400) mm facing S1 {
    coherence length: 5 m
  }
  splitter S1 at (-600, -600) mm
  mirror M1 at (-300, -300) mm
  mirror M2 at (50, -200) mm
  hologram H1 at (0, 0) mm facing P2 {
    size: 60 x 50 mm
  }
  ${slit}
  plate P2 at (250, 0) mm facing H1 {
    size: 80 x 60 mm
    up: left
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M2
    -> P2
  beam master from S1 reflected
    -> M1
${slit === '' ? '' : '    -> mask\n'}    -> H1
  beam image from H1 diffracted
    -> P2
}
`);
  const largest = (halfWidth: number): number => {
    const middle = far([-600, -600, 0], [-300, -300, 0]) + far([-300, -300, 0], [0, 0, 0]) + 250 - far([-600, -600, 0], [50, -200, 0]) - far([50, -200, 0], [250, 0, 0]);
    const along = (p: V): number => (p[0] + p[1]) * Math.SQRT1_2;
    let worst = 0;
    for (let i = -8; i <= 8; i++) for (let j = -1; j <= 1; j++) for (let k = -8; k <= 8; k++) for (let m = -1; m <= 1; m++) {
      const [q, p]: [V, V] = [[0, (halfWidth * i) / 8, 25 * j], [250, 5 * k, 30 * m]];
      const d = middle + along(q) + far(q, p) - 250 - along([p[0] - 250, p[1], p[2]]);
      if (Math.abs(d) > Math.abs(worst)) worst = d;
    }
    return worst;
  };
  test('all of the hologram, and the slit only', () => {
    // The map looks at the middles of even parts, so that it stays a little inside of the rim.
    expectNear(placed('').mm('largest mismatch'), largest(30), 6);
    expectNear(placed('slit mask on M1 -> H1 by 420 mm {\n    width: 4 mm\n  }').mm('largest mismatch'), largest(2), 3);
    expect(Math.abs(largest(30) - largest(2))).toBeGreaterThan(15);
  });
  test('there is one reference: the light of the first hologram is the object', () => {
    expect(placed('').results.plates[0]!.arms.map(a => [a.arm.name, a.arm.role])).toEqual([['reference', 'reference'], ['image', 'object']]);
  });
});

describe('layouts and logs as whole setups', () => {
  test('reflection copy on a table of 4 x 8 ft: 10 + 50 in and 32 + 20 + 8 in are 60 in each (workshop course)', () => {
    const r = fixture('transfer-sixty-inches');
    expectNear(r.mm('P2.reference.length'), 1524, 1e-9);
    expectNear(r.mm('P2.image.length'), 1524, 1e-9);
    // The image is where the plate is: 8 in.
    expectNear(r.mm('image offset'), 0, 1e-9);
    expect(serious(r.snapshot.findings)).toEqual(['7 coherence-unknown']);
  });
  test('Bergen 12.3: 199 and 199 cm, 1.8 to 0.8 µW are 2.25:1', () => {
    const r = fixture('bergen-one-step');
    expectNear(r.mm('P1.object.length'), 1990, 1e-9);
    expectNear(r.mm('mismatch'), 0, 1e-9);
    expectNear(r.value('beam ratio'), 2.25, 1e-9);
  });
  test('Bergen 12.5: 205 and 205 cm, the image 1 cm before the second plate', () => {
    const r = fixture('bergen-two-step');
    expectNear(r.mm('H2.image.length'), 2050, 1e-9);
    expectNear(r.mm('mismatch'), 0, 1e-9);
    expectNear(r.mm('image offset'), 10, 1e-9);
  });
  test('Bergen 12.6: 175 and 176 cm, 0.38 to 0.14 µW are 2.714:1', () => {
    const r = fixture('bergen-rainbow');
    expectNear(r.mm('mismatch'), -10, 1e-9);
    expectNear(r.value('beam ratio'), 0.38 / 0.14, 1e-9);
    // Readings of light go before all that is predicted, and nothing but them is needed.
    expect(r.results.light.plates[0]!.predicted.ratio).toBe(false);
  });
  test('a rainbow transfer of common practice matches', () => {
    expectNear(fixture('rainbow-transfer').mm('mismatch'), 0, 1e-9);
  });
});

describe('light through ground glass', () => {
  // 2 mW, half of it on a screen, narrow there beside the ways behind it; P (1 − loss)(n + 1)/(2π r²), cosⁿ at one half at the scatter angle of 20°: n = ln ½ / ln cos 20° (a lobe of unit content).
  const n = Math.LN2 / -Math.log(Math.cos((20 * Math.PI) / 180));
  const lobe = (r: number): number => (1e-3 * 0.7 * (n + 1)) / (2 * Math.PI * r * r);
  const lit = (object: readonly string[], toObject: string, toPlate: string, screen: readonly string[] = []): Read => read(setup(
    'laser red {', '  wavelength: 632.8 nm', '  coherence length: 300 mm', '  power: 2 mW', '  beam diameter: 0.8 mm', '  beam quality: 1', '}', 'splitter S1 {', '  reflects: 50%', '  loss: 0%', '}',
    ...['R1', 'R2'].flatMap(r => [`spreader ${r} {`, '  focal length: -10 mm', '  loss: 0%', '}']), 'ground glass GG1 {', ...['size: 60 x 60 mm', 'loss: 30%', 'scatter angle: 20°', 'scatter: 1', ...screen].map(l => `  ${l}`), '}',
    'object leaf {', ...object.map(l => `  ${l}`), '}', 'plate P1 {', '  size: 63 x 63 mm', '  reference angle: 45°', '  object angle: 0°', '}',
    'beam raw from red', '-> S1: 1 mm', 'beam reference from S1 through', '-> R1: 1 mm', '-> P1: 1 m', 'beam object from S1 reflected', '-> R2: 1 mm', '-> GG1: 200 mm', `-> leaf: ${toObject}`, `-> P1: ${toPlate}`,
  ));
  test('past and through an object before it: that of the screen, as far as it passes', () => {
    const r = lit(['lit at: 180°', 'passes: 40%'], '800 mm', '700 mm');
    expectNear(r.value('P1.object.light') / (0.4 * lobe(1.5)), 1, 0.02);
  });
  test('onto an object from the front: its tone of what a flat square sends on', () => {
    // Factor of a square seen squarely from its middle, 60 x 60 at 200 mm: four times that of a rectangle from above its corner (Howell, A Catalog of Radiation Heat Transfer Configuration Factors, B-4; from memory).
    const [A, B] = [0.03 / 0.2, 0.03 / 0.2];
    const factor = (4 / (2 * Math.PI)) * ((A / Math.sqrt(1 + A * A)) * Math.atan(B / Math.sqrt(1 + A * A)) + (B / Math.sqrt(1 + B * B)) * Math.atan(A / Math.sqrt(1 + B * B)));
    const r = lit(['size: 60 x 60 x 0.001 mm', 'shape: box', 'tone: 50%', 'gloss: 0%', 'scatter: 1', 'lit at: 0°'], '1500 mm', '200 mm');
    expectNear(r.value('P1.object.light') / (0.5 * lobe(1.5) * factor), 1, 0.02);
  });
  test('is a band by three guesses where nothing of it was metered', () => {
    const r = read(setup('laser red {', '  wavelength: 632.8 nm', '  power: 2 mW', '  beam diameter: 0.8 mm', '}', 'splitter S1 {', '  reflects: 50%', '}', 'spreader R1 {', '  focal length: -10 mm', '}', 'ground glass GG1 {', '  size: 60 x 60 mm', '}', 'object leaf {', '  lit at: 180°', '}', 'plate P1', 'beam raw from red', '-> S1: 1 mm', 'beam reference from S1 through', '-> P1: 1 m', 'beam object from S1 reflected', '-> R1: 1 mm', '-> GG1: 200 mm', '-> leaf: 200 mm', '-> P1: 200 mm'));
    const { low, high } = interval(r.results.graph, r.cell('P1.object.light'));
    // Two factors of three, evenly over the logarithm, alone: u = ln 3 √(2/3), of which 95 % lie within 1.6 to 2 either way.
    expect(Math.log(high / low)).toBeGreaterThan(2 * 1.6 * Math.log(3) * Math.sqrt(2 / 3));
    expect(r.results.graph.ranking(r.cell('P1.object.light')).slice(0, 3).map(x => x.input.words).sort()).toEqual(['passes of leaf', 'scatter angle of GG1', 'scatter of GG1']);
  });
  test('something else between screen and object is not guessed', () => {
    const r = read(setup('laser red {', '  power: 2 mW', '  beam diameter: 0.8 mm', '  wavelength: 632.8 nm', '}', 'splitter S1 {', '  reflects: 50%', '}', 'spreader R1 {', '  focal length: -10 mm', '}', 'mirror M1', 'ground glass GG1 {', '  size: 60 x 60 mm', '}', 'object leaf', 'plate P1', 'beam raw from red', '-> S1: 1 mm', 'beam reference from S1 through', '-> P1: 1 m', 'beam object from S1 reflected', '-> R1: 1 mm', '-> GG1: 200 mm', '-> M1: 100 mm', '-> leaf: 200 mm', '-> P1: 200 mm'));
    expect(r.cell('P1.object.light').missing?.why).toContain('GG1');
  });
  test('comes by longer ways from the rim: √(d² + r²) − d, and the bend of the light on it', () => {
    const w = radiusBehind(0.4e-3, 2e-3, 10e-3, 0.2);
    expect(w).toBeLessThan(0.03);
    // Behind the lens the light comes from 10 mm before it, nearly: by hand R = 210 mm.
    const [r, d, bend] = [w, 0.2, 0.21];
    const by = lit(['lit at: 180°'], '200 mm', '200 mm');
    expectNear(by.value('P1.object.longer by the rim') / (Math.hypot(d, r) - d + Math.hypot(bend, r) - bend), 1, 0.02);
  });
  test('and records with the mean over the screen', () => {
    const by = lit(['lit at: 180°'], '50 mm', '200 mm');
    const [w, d, bend] = [radiusBehind(0.4e-3, 2e-3, 10e-3, 0.2), 0.05, 0.21];
    const m0 = by.value('mismatch');
    let [sum, all] = [0, 0];
    for (let i = 0; i < 4000; i++) {
      const r = (w * (i + 0.5)) / 4000;
      const light = (r * Math.exp((-2 * r * r) / (w * w)) * Math.cos(Math.atan(r / bend) + Math.atan(r / d)) ** n) / (d * d + r * r);
      // Contrast one half at 300 mm, a gaussian line: 2^(−(δ/300)²), squared.
      const delta = (m0 + Math.hypot(d, r) - d + Math.hypot(bend, r) - bend) / 0.3;
      sum += light * 2 ** (-2 * delta * delta);
      all += light;
    }
    expectNear(by.value('screen brightness'), sum / all, 2e-3);
  });
  test('a subject before ground glass, by places (common practice): 1500.0 against 1499.8 mm; 200 mm on, the rim of 75 mm is 13.6 mm longer besides the bend', () => {
    const text = readFileSync('tests/fixtures/published/back-lit-transparency.plate', 'utf8')
      .replace('    wavelength: 632.8 nm\n', '    wavelength: 632.8 nm\n    beam diameter: 0.8 mm\n    power: 12 mW\n    coherence length: 300 mm\n')
      .replace('ground glass GG1 at (800, 600) mm', 'spreader R1 on M1 -> GG1 by 60 mm {\n    focal length: 2.9 mm\n  }\n  ground glass GG1 at (800, 600) mm {\n    size: 150 x 150 mm\n  }')
      .replace('    -> GG1\n', '    -> R1\n    -> GG1\n').replace('plate P1 at (1200, 600) mm facing subject', 'plate P1 at (1200, 600) mm facing subject {\n    size: 63 x 63 mm\n  }')
      .replace('splitter S1 at (150, 150) mm', 'splitter S1 at (150, 150) mm {\n    reflects: 90%\n  }');
    const r = read(text);
    expectNear(r.mm('P1.object.length'), 1500, 0.05);
    expectNear(r.mm('P1.reference.length'), 1499.8, 0.05);
    // R = 650 − 60 mm less the focal length: √(200² + 75²) − 200 + √(587² + 75²) − 587.
    expectNear(r.mm('P1.object.longer by the rim'), Math.hypot(200, 75) - 200 + Math.hypot(587, 75) - 587, 0.05);
    expect(r.cell('P1.object.light').missing).toBeUndefined();
    expect(serious(r.snapshot.findings).filter(f => /dark-side|too-deep/.test(f))).toEqual([]);
  });
});
