/** Light that nobody has metered, of whole setups. Expected values by closed forms and by integrals of this file's own. */
import { describe, expect, test } from 'vitest';
import { interval } from '../../server/results/sampling.ts';
import { evaluateHeld } from '../../server/results/readings/offsets.ts';
import { METER, MICRO } from './light-library.ts';
import { expectNear, read, serious, setup, type Read } from './read.ts';

const LAMBDA = 632.8e-9;

interface Given { readonly reflects?: string; readonly loss?: string; readonly laser?: readonly string[]; readonly reference?: string; readonly far?: string; readonly focal?: string; readonly toObject?: string; readonly objectFocal?: string; readonly object?: readonly string[]; readonly plate?: readonly string[]; readonly distance?: string; readonly lines?: readonly string[] }

/** 2 mW, 0.8 mm wide where it leaves, exact, no losses but those written; a spreader on either arm. */
const text = (g: Given = {}): string => setup(
  'laser red {', ...['wavelength: 632.8 nm', 'coherence length: 5 m', 'power: 2 mW', 'beam diameter: 0.8 mm', 'beam quality: 1', ...(g.laser ?? [])].map(l => `  ${l}`), '}',
  'splitter S1 {', `  reflects: ${g.reflects ?? '50%'}`, `  loss: ${g.loss ?? '0%'}`, '}',
  'spreader R1 {', `  focal length: ${g.focal ?? '-10 mm'}`, '  loss: 0%', '}', 'spreader R2 {', `  focal length: ${g.objectFocal ?? '-10 mm'}`, '  loss: 0%', '}',
  'object whelk {', ...(g.object ?? ['size: 60 x 60 x 0.001 mm', 'tone: 50%', 'gloss: 0%', 'lit at: 0°']).map(l => `  ${l}`), '}',
  'plate P1 {', ...['size: 63 x 63 mm', 'sensitivity: 40 µJ/cm²', `reference angle: ${g.reference ?? '0°'}`, 'object angle: 0°', ...(g.plate ?? [])].map(l => `  ${l}`), '}', ...METER,
  'beam raw from red', '-> S1: 1 mm', 'beam reference from S1 through', '-> R1: 1 mm', `-> P1: ${g.far ?? '800 mm'}`, 'beam object from S1 reflected', '-> R2: 1 mm', `-> whelk: ${g.toObject ?? '3000 mm'}`, `-> P1: ${g.distance ?? '200 mm'}`, ...(g.lines ?? []),
);
const given = (g?: Given): Read => read(text(g));
const light = (r: Read, name = 'P1.reference.light'): number => r.value(name);

/** Radius a distance behind a diverging lens of −f that a waist w₀ stands close before: 1/q′ = 1/q + 1/f, by hand with complex numbers. */
function radiusBehind(w0: number, before: number, f: number, z: number): number {
  const zr = (Math.PI * w0 * w0) / LAMBDA;
  const inverse = { re: before / (before ** 2 + zr ** 2) + 1 / f, im: -zr / (before ** 2 + zr ** 2) };
  const size = inverse.re ** 2 + inverse.im ** 2;
  const q = { re: inverse.re / size + z, im: -inverse.im / size };
  return Math.sqrt((-LAMBDA / Math.PI) / (-q.im / (q.re ** 2 + q.im ** 2)));
}

describe('light of the reference', () => {
  test('is twice the power by the area within 1/e², times the cosine of its angle', () => {
    const w = radiusBehind(0.4e-3, 2e-3, 10e-3, 0.8);
    expectNear(light(given()) / ((2 * 1e-3) / (Math.PI * w * w)), 1, 1e-6);
    expectNear(light(given({ reference: '60°' })) / light(given()), 0.5, 1e-9);
    expectNear(light(given({ loss: '10%' })) / light(given()), 0.9, 1e-12);
  });
  test('of 1 mW in a beam of 50 mm radius is 25.46 µW/cm² (Siegman, Lasers, ch. 17: 2P / πw²)', () => {
    let [low, high] = [0.1, 5];
    for (let i = 0; i < 60; i++) { const m = (low + high) / 2; if (radiusBehind(0.4e-3, 2e-3, 10e-3, m) < 0.05) low = m; else high = m; }
    expectNear(light(given({ far: `${(low * 1000).toFixed(6)} mm` })) / MICRO, 25.4648, 1e-3);
  });
  test('all of it, over a large plate, is the power in the arm', () => {
    // Squarely the light depends on the distance from the middle only: corners of square plates of growing size tell it.
    const centre = light(given());
    const share = (r: number): number => (r === 0 ? 1 : read(text().replace('63 x 63 mm', `${2 * r * 1000 / Math.SQRT2} x ${2 * r * 1000 / Math.SQRT2} mm`)).value('P1.reference.corner light'));
    const [n, end] = [40, 0.11];
    let sum = 0;
    for (let i = 0; i <= n; i++) { const r = (end * i) / n; sum += (i === 0 || i === n ? 1 : i % 2 ? 4 : 2) * centre * share(r) * 2 * Math.PI * r; }
    expectNear((sum * end) / n / 3 / 1e-3, 1, 2e-3);
  });
  test('in the corners is exp(−2 r²/w²) of that in the middle of a plate that it meets squarely', () => {
    const w = radiusBehind(0.4e-3, 2e-3, 10e-3, 0.8);
    // Rays slope outwards by r/R at the corner, where the plate gets 1/cos β of less: below 1e-3 here.
    expectNear(given().value('P1.reference.corner light'), Math.exp((-2 * 2 * 0.0315 ** 2) / w ** 2), 2e-3);
  });
  test('is assumed to come in at 45° where nothing tells, and says so', () => {
    const r = read(text().replace('    reference angle: 0°\n', ''));
    expectNear(light(r) / light(given()), Math.SQRT1_2, 1e-6);
    expect([...r.results.graph.gradient(r.cell('P1.reference.light')).keys()].filter(c => c.origin === 'assumed').map(c => c.words)).toContain('angle of reference at P1');
    expect(r.u('P1.reference.light')).toBeGreaterThan(0);
  });
});

describe('light of an object', () => {
  // A flat square before a plate that is parallel to it, evenly lit: four times the factor of a rectangle seen from above its corner (Howell, A Catalog of Radiation Heat Transfer Configuration Factors, B-4; from memory).
  const corner = (a: number, b: number, c: number): number => {
    const [A, B] = [a / c, b / c];
    return (1 / (2 * Math.PI)) * ((A / Math.sqrt(1 + A * A)) * Math.atan(B / Math.sqrt(1 + A * A)) + (B / Math.sqrt(1 + B * B)) * Math.atan(A / Math.sqrt(1 + B * B)));
  };
  test('of a flat matt square is tone · light on it · the share of the view that it fills', () => {
    const r = given({ toObject: '12000 mm', object: ['shape: box', 'size: 60 x 60 x 0.001 mm', 'tone: 50%', 'gloss: 0%', 'lit at: 0°'] });
    const w = radiusBehind(0.4e-3, 2e-3, 10e-3, 12);
    const on = (2 * 1e-3) / (Math.PI * w * w);
    expectNear(light(r, 'P1.object.light') / (0.5 * on * 4 * corner(0.03, 0.03, 0.2)), 1, 0.01);
  });
  test('of one lit aslant by a narrow beam is the sum over its front', () => {
    const w = radiusBehind(0.4e-3, 2e-3, 10e-3, 0.6);
    const psi = (51 * Math.PI) / 180;
    let sum = 0;
    const n = 200;
    for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) {
      const [x, z] = [0.04 * ((i + 0.5) / n - 0.5), 0.06 * ((k + 0.5) / n - 0.5)];
      // The front stands in the plane of the middle of the object; the beam crosses it at 51°, so that x counts by its cosine, and the beam widens with the way along it.
      const along = x * Math.sin(psi);
      const wide = radiusBehind(0.4e-3, 2e-3, 10e-3, 0.6 + along);
      const e = (2 / (Math.PI * wide ** 2)) * Math.exp((-2 * ((x * Math.cos(psi)) ** 2 + z * z)) / wide ** 2);
      const r2 = x * x + z * z + 0.3 ** 2;
      sum += (0.35 / Math.PI) * e * Math.cos(psi) * (0.3 ** 2 / r2) / r2 * ((0.04 * 0.06) / n ** 2);
    }
    expect(w).toBeLessThan(0.03);
    const r = given({ toObject: '600 mm', distance: '300 mm', object: ['shape: box', 'size: 40 x 60 x 0.001 mm', 'tone: 35%', 'gloss: 0%', 'lit at: 51°'] });
    // Slope of the rays across the object is left out of the sum: 2 % at its edges.
    expectNear(light(r, 'P1.object.light') / (sum * 1e-3), 1, 0.02);
  });
  test('of a beam far narrower than the object is that of one spot, and goes over into it without a step', () => {
    const wide = (w: string): number => light(given({ objectFocal: '-1 m', toObject: '300 mm', object: ['shape: box', `size: ${w} x 0.001 mm`, 'tone: 50%', 'gloss: 0%', 'lit at: 0°'] }), 'P1.object.light');
    // All of 1 mW on one spot: tone · P / (π r²).
    for (const size of ['8 x 8', '20 x 20', '60 x 60', '400 x 400']) expectNear(wide(size) / ((0.5 * 1e-3) / (Math.PI * 0.04)), 1, 0.02, size);
  });
  // A matt ball far off, evenly lit: (2/3) · tone · E · R²/d² from the front, times (sin ψ + (π − ψ) cos ψ)/π from elsewhere (Lambert's sphere, as of planets: Russell, Astrophys. J. 43, 173 (1916), from memory).
  test.each([0, 30, 60, 90])('of a round thing whose shape is not written is that of a matt ball, lit at %s°', degrees => {
    const psi = (degrees * Math.PI) / 180;
    const w = radiusBehind(0.4e-3, 2e-3, 10e-3, 12);
    const ball = (2 / 3) * 0.5 * ((2 * 1e-3) / (Math.PI * w * w)) * (0.01 / 2) ** 2 * ((Math.sin(psi) + (Math.PI - psi) * Math.cos(psi)) / Math.PI);
    for (const shape of [[], ['shape: rounded'], ['shape: sphere']]) expectNear(light(given({ toObject: '12000 mm', distance: '2000 mm', object: [...shape, 'size: 20 x 20 x 20 mm', 'tone: 50%', 'gloss: 0%', `lit at: ${degrees}°`] }), 'P1.object.light') / ball, 1, 0.03, shape.join());
  });
  test('says that a shape which is not written counts as rounded', () => {
    const said = (...shape: string[]): string | undefined => given({ object: [...shape, 'size: 20 x 20 x 20 mm'] }).results.graph.find('P1.object.light for each watt')!.rule?.formula;
    expect(said()).toMatch(/its shape is not written, so it counts as rounded$/);
    expect(said('shape: rounded')).not.toMatch(/rounded/);
  });
  test('is a guess within a factor of three either way, and never three digits', () => {
    const r = given();
    const { low, high } = interval(r.results.graph, r.cell('P1.object.light'));
    const middle = light(r, 'P1.object.light');
    // Evenly over the logarithm from 1/3 to 3: 95 % of it reach from 3^-0.95 to 3^0.95.
    expectNear(Math.log(low / middle) / Math.log(3), -0.95, 0.03);
    expectNear(Math.log(high / middle) / Math.log(3), 0.95, 0.03);
    expect(r.results.graph.ranking(r.cell('P1.object.light'))[0]!.input.words).toBe('scatter of whelk');
  });
  test('of several beams adds up, and they share what is unsure of the object', () => {
    const two = read(text({ lines: ['splitter S2 {', '  reflects: 50%', '  loss: 0%', '}', 'spreader R3 {', '  focal length: -10 mm', '  loss: 0%', '}'] }).replace('  -> R2: 1 mm\n', '  -> S2: 1 mm\n').replace('beam object', 'beam all').replace(/ {2}-> whelk: 3000 mm\n {2}-> P1: 200 mm\n/, '  beam key from S2 reflected\n  -> R2: 1 mm\n  -> whelk: 2999 mm\n  -> P1: 200 mm\n  beam fill from S2 through\n  -> R3: 1 mm\n  -> whelk: 2999 mm\n  -> P1: 200 mm\n'));
    expectNear(light(two, 'P1.object.light') / light(given(), 'P1.object.light'), 1, 0.01);
    expectNear(light(two, 'P1.key.light') / light(two, 'P1.fill.light'), 1, 1e-9);
    const relative = (n: string): number => two.u(n) / light(two, n);
    expectNear(relative('P1.object.light'), relative('P1.key.light'), 1e-9);
  });
  test('of ground glass goes mostly straight on', () => {
    const screen = (angle: string): Read => read(text().replace('60 x 60 x 0.001 mm', '60 x 60 mm').replace('object whelk {', 'ground glass whelk {').replace('    tone: 50%\n    gloss: 0%\n    lit at: 0°\n', `    loss: 30%\n    scatter angle: ${angle}\n`).replace('-> whelk: 3000 mm', '-> whelk: 300 mm'));
    // Narrow beside its distance: P (1 − loss) (n + 1)/(2π r²), cosⁿ at half where the angle is: n = ln ½ / ln cos 20° = 11.14.
    const n = Math.LN2 / -Math.log(Math.cos((20 * Math.PI) / 180));
    const far = read(text().replace('60 x 60 x 0.001 mm', '60 x 60 mm').replace('object whelk {', 'ground glass whelk {').replace('    tone: 50%\n    gloss: 0%\n    lit at: 0°\n', '    loss: 30%\n    scatter angle: 20°\n').replace('-> whelk: 3000 mm', '-> whelk: 300 mm').replace('-> P1: 200 mm', '-> P1: 1500 mm'));
    expectNear(light(far, 'P1.object.light') / ((1e-3 * 0.7 * (n + 1)) / (2 * Math.PI * 1.5 ** 2)), 1, 0.02);
    expect(light(screen('10°'), 'P1.object.light')).toBeGreaterThan(light(screen('40°'), 'P1.object.light'));
  });
});

describe('the split for a ratio', () => {
  const AIM = { reflects: '?', lines: ['aim beam ratio: 4:1'] };
  test('written into the splitter gives that ratio', () => {
    const share = given(AIM).results.ask('S1.split for ratio')!;
    const exact = given(AIM).results.graph.value(given(AIM).results.ask('S1.split for ratio')!)!;
    expect(share.missing).toBeUndefined();
    expectNear(given({ reflects: `${exact * 100}%` }).value('beam ratio'), 4, 1e-9);
    expect(exact).toBeGreaterThan(0.5);
  });
  test('follows (1 − ρ) A_r / (ρ A_o) from what an even split gives', () => {
    const even = given();
    const [r, o] = [light(even), light(even, 'P1.object.light')];
    const a = given(AIM);
    expectNear(a.results.graph.value(a.results.ask('S1.split for ratio')!)!, r / (r + 4 * o), 1e-9);
  });
  test('counts what is lost on either arm behind the splitter: the odds go as what is left of the reference by what is left of the object light', () => {
    const odds = (reference: string, object: string): number => {
      const r = read(text(AIM).replace(/(spreader R1[^]*?loss: )0%/, `$1${reference}`).replace(/(spreader R2[^]*?loss: )0%/, `$1${object}`));
      const share = r.results.graph.value(r.results.ask('S1.split for ratio')!)!;
      return share / (1 - share);
    };
    expectNear(odds('20%', '0%') / odds('0%', '0%'), 0.8, 1e-9);
    expectNear(odds('0%', '10%') / odds('0%', '0%'), 1 / 0.9, 1e-9);
  });
  test('stands for a share that is left open, in two digits, and is held within what is written', () => {
    const r = given(AIM);
    const [solved] = r.results.light.solved;
    expect(solved!.working.origin).toBe('solved');
    expectNear(r.value('beam ratio'), 4, 0.05 * 4);
    const within = given({ reflects: '? from 10% to 60%', lines: ['aim beam ratio: 4:1'] });
    expect(within.results.graph.value(within.results.light.solved[0]!.working)).toBe(0.6);
    expect(within.results.light.solved[0]!.bounded).toBe(true);
  });
  test('is unknown, and no ratio is told, where nothing is aimed at', () => {
    const r = given({ reflects: '?' });
    expect(r.results.light.solved).toEqual([]);
    expect(r.cell('P1.beam ratio').missing?.why).toContain('reflects of S1 is written ?');
    expect(serious(r.snapshot.findings).filter(f => /ratio|exposure|value|unknown/.test(f))).toEqual([]);
  });
});

describe('readings win over the plan', () => {
  test('and the plan falls out of what they say', () => {
    const r = given({ lines: ['measured reference at P1: 3 µW/cm² ± 5% by m'] });
    expectNear(light(r) / MICRO, 3, 1e-12);
    expectNear(r.u('P1.reference.light') / light(r), 0.05 / Math.sqrt(3), 1e-9);
    expectNear(r.value('beam ratio'), light(r) / light(given(), 'P1.object.light'), 1e-9);
  });
  test('another split moves the light that was read, as the plan says', () => {
    const r = given({ lines: ['measured reference at P1: 3 µW/cm² by m'] });
    const share = r.results.graph.find('S1.reflects')!;
    expectNear(evaluateHeld(r.results, r.cell('P1.reference.light'), new Map([[share, 0.75]])) / MICRO, 1.5, 1e-9);
    const further = r.results.graph.find('reference.2.length')!;
    const [w1, w2] = [radiusBehind(0.4e-3, 2e-3, 10e-3, 0.8), radiusBehind(0.4e-3, 2e-3, 10e-3, 1)];
    expectNear(evaluateHeld(r.results, r.cell('P1.reference.light'), new Map([[further, 1]])) / MICRO, 3 * (w1 / w2) ** 2, 1e-6);
  });
  test('a ratio that is written tells the object light better than the plan', () => {
    const r = given({ lines: ['beam ratio: 4:1'] });
    expectNear(light(r, 'P1.object.light'), light(given()) / 4, 1e-12);
    expect(r.results.light.plates[0]!.predicted).toEqual({ reference: true, object: false, ratio: false });
  });
  test('the exposure is what the plate needs by all the light', () => {
    const r = given();
    expectNear(r.value('exposure'), 0.4 / (light(r) + light(r, 'P1.object.light')), 1e-9);
  });
});

describe('one beam', () => {
  const single = (...object: string[]): Read => read(setup('hologram: reflection', 'laser red {', '  wavelength: 632.8 nm', '  coherence length: 5 m', '  power: 2 mW', '}', 'spreader R1 {', '  focal length: 4.5 mm', '}', 'object shell {', ...object.map(l => `  ${l}`), '}', 'plate P1 {', '  size: 63 x 63 mm', '}', 'beam all from red', '-> R1: 300 mm', '-> P1 through: 800 mm', '-> shell: 15 mm', '-> P1: 15 mm'));
  test('has a ratio by the tone of the object only: 1 / (R T²) where it touches, more where it stands off', () => {
    // 0.85² = 0.7225; 1 / (0.5 · 0.7225) = 2.7682.
    expectNear(single('tone: 50%', 'size: 30 x 30 x 30 mm').value('beam ratio'), 2.7682, 1e-4);
    // Front 5 mm behind the plate, as large as a disc of 30² / π mm²: (286.48 + 25) / 286.48 more.
    expectNear(single('tone: 50%', 'size: 30 x 30 x 20 mm').value('beam ratio'), 2.7682 * (900 / Math.PI + 25) / (900 / Math.PI), 1e-3);
    const touching = single('tone: 50%', 'size: 30 x 30 x 30 mm');
    expectNear(touching.value('P1.object.light'), touching.value('P1.reference.light') / 2.7682, 1e-6);
  });
  test('has no ratio where nothing tells how much of the view its object fills', () => {
    const r = single('tone: 50%');
    for (const name of ['beam ratio', 'P1.object.light', 'P1.light']) expect(r.cell(name).missing?.why, name).toMatch(/how large shell is, is not written: give it a “size”$/);
    expect(r.results.published.some(c => !c.missing && /object.light|beam ratio|exposure/.test(c.name))).toBe(false);
  });
});

describe('symmetries', () => {
  type P = readonly [number, number];
  const placed = (at: (p: P) => P, turn = (h: number): number => h, unit = 'mm', scale = 1): Read => {
    const p = (x: number, y: number): string => { const [a, b] = at([x, y]); return `(${a * scale}, ${b * scale}) ${unit}`; };
    return read(setup('hologram: transmission', `laser red at ${p(60, 100)} heading ${turn(0)}° {`, '  wavelength: 632.8 nm', '  coherence length: 5 m', '  power: 12 mW', '  beam diameter: 0.8 mm', '}',
      `splitter S1 at ${p(350, 100)} {`, '  reflects: 90%', '}', `mirror M1 at ${p(1100, 100)}`, `spreader R1 on M1 -> P1 by ${60 * scale} ${unit} {`, '  focal length: 2.9 mm', '}', `mirror M2 at ${p(94, 420)}`, `mirror M3 at ${p(400, 640)}`,
      `spreader R2 on M3 -> whelk by ${30 * scale} ${unit} {`, '  focal length: 4.5 mm', '}', `object whelk at ${p(700, 400)} {`, '  size: 40 x 60 x 35 mm', '}', `plate P1 at ${p(700, 700)} facing whelk {`, '  size: 63 x 50 mm', '}',
      'beam raw from red', '-> S1', 'beam reference from S1 through', '-> M1', '-> R1', '-> P1', 'beam object from S1 reflected', '-> M2', '-> M3', '-> R2', '-> whelk', '-> P1'));
  };
  const names = ['P1.reference.light', 'P1.object.light', 'beam ratio', 'P1.reference.corner light'];
  const figures = (r: Read): number[] => names.map(n => r.value(n));
  const usual = figures(placed(p => p));
  const same = (other: number[], allowed: number): void => { other.forEach((v, i) => { expectNear(v / usual[i]!, 1, allowed, names[i]); }); };
  test('a mirror image of the table', () => same(figures(placed(([x, y]) => [x, -y], h => -h)), 1e-9));
  test('the whole table turned', () => {
    const a = (37 * Math.PI) / 180;
    same(figures(placed(([x, y]) => [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)], h => h + 37)), 1e-6);
  });
  test('the whole table moved', () => same(figures(placed(([x, y]) => [x + 250, y - 90])), 1e-9));
  test('other units', () => same(figures(placed(p => p, h => h, 'in', 1 / 25.4)), 1e-6));
  test('twice the power is twice the light, and the same ratio', () => {
    const [one, two] = [given(), given({ laser: [] })].map((r, i) => (i === 0 ? r : read(text().replace('power: 2 mW', 'power: 4 mW'))));
    expectNear(light(two!) / light(one!), 2, 1e-12);
    expectNear(two!.value('beam ratio') / one!.value('beam ratio'), 1, 1e-12);
    expectNear(one!.value('exposure') / two!.value('exposure'), 2, 1e-9);
  });
});

describe('what cannot be told has a reason', () => {
  test('a page without power works nothing out', () => {
    const r = read(text().replace('    power: 2 mW\n', ''));
    expect(r.results.light.plates).toEqual([]);
    expect(r.results.graph.cells.filter(c => /light|scatter|off centre/.test(c.name))).toEqual([]);
  });
  test('nothing that spreads the beam; an object without a size; a screen before the object', () => {
    const bare = read(text().replace('  -> R1: 1 mm\n', ''));
    expect(bare.cell('P1.reference.light').missing?.why).toContain('nothing on the way of reference spreads its beam');
    expect(given({ object: ['tone: 50%'] }).cell('P1.object.light').missing?.why).toContain('how large whelk is');
    // Ground glass before the object: how large it is decides how much of its light goes on.
    const through = read(text({ lines: ['ground glass GG1'] }).replace('-> R2: 1 mm\n', '-> R2: 1 mm\n  -> GG1: 100 mm\n'));
    expect(through.cell('P1.object.light').missing?.why).toContain('how large GG1 is');
  });
  test('nothing is left for one of the arms', () => {
    for (const reflects of ['0%', '100%']) {
      const r = given({ reflects });
      expect(r.cell('beam ratio').missing, reflects).toBeDefined();
      expect(Number.isFinite(r.results.graph.value(r.cell('P1.light')) ?? 0)).toBe(true);
    }
  });
  test('things at one place, a beam with no way to go, and an object of no size raise no wrong number', () => {
    for (const g of [{ distance: '0 mm' }, { toObject: '0 mm' }, { far: '0 mm' }, { object: ['size: 0 x 0 x 0 mm', 'tone: 50%'] }, { object: ['size: 60 x 60 x 35 mm', 'tone: 0%'] }, { object: ['size: 60 x 60 x 35 mm', 'lit at: 180°'] }, { reference: '90°' }] satisfies Given[]) {
      const r = given(g);
      for (const c of r.results.graph.cells) { const v = r.results.graph.value(c); expect(v === undefined || Number.isFinite(v), `${JSON.stringify(g)} ${c.name}`).toBe(true); }
    }
    expect(given({ object: ['size: 60 x 60 x 35 mm', 'lit at: 180°'] }).cell('beam ratio').missing).toBeDefined();
  });
  test('the loss at the face of the plate is for those who ask: 4.3 % squarely, as ((n − 1)/(n + 1))² has it', () => {
    const r = given();
    expect(r.results.published.some(c => c.name.includes('face loss'))).toBe(false);
    expectNear(r.results.graph.value(r.results.ask('P1.reference.face loss')!)!, (0.52 / 2.52) ** 2, 1e-9);
  });
});

test('the ratio is judged by the plan only where all of it lies outside, and so are dark corners and exposures', () => {
  const codes = (r: Read): string[] => r.snapshot.findings.filter(f => /ratio-unusual|corners-dark|exposure-hard/.test(f.code)).map(f => f.code);
  expect(codes(given({ reflects: '?', lines: ['aim beam ratio: 4:1'] }))).not.toContain('ratio-unusual');
  // A middle outside of what is usual, but not all of what it may be.
  expect(codes(given({ reflects: '?', lines: ['aim beam ratio: 15:1'] }))).not.toContain('ratio-unusual');
  expect(codes(given({ reflects: '1%' }))).toContain('ratio-unusual');
  expect(codes(given({ far: '250 mm' }))).toContain('corners-dark');
  expect(codes(given({ plate: ['reciprocity: 1'] }))).toEqual(codes(given()));
  expect(codes(read(text().replace('40 µJ/cm²', '900 mJ/cm²')))).toContain('exposure-hard-to-time');
  expect(codes(read(text().replace('40 µJ/cm²', '0.1 µJ/cm²')))).toContain('exposure-hard-to-time');
});
