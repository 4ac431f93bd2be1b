/** How arms form, what they share, and what glass adds. Lengths are sums shown in the comments; glass from published dispersion formulas, worked out here. */
import { describe, expect, test } from 'vitest';
import { expectNear, read, serious, setup } from './read.ts';

/** Things and beams around a red laser of 5 m coherence. */
const table = (...lines: string[]): ReturnType<typeof read> => read(setup('laser red {', '  wavelength: 632.8 nm', '  coherence length: 5 m', '}', ...lines));
/** `reference of P1: S1 M1` for each arm: role, plate, and the things on its legs from where the arms part. */
const arms = (r: ReturnType<typeof read>): string[] => r.results.plates.flatMap(p => p.arms.map(a => `${a.arm.name}, ${a.arm.role} of ${p.plate.id} from ${a.partsAt?.id ?? '?'}: ${a.legs.map(l => l.to).join(' ')}`));

describe('which light is what', () => {
  test('single-beam reflection: one beam is the reference where it first meets the plate, and the object arm when it comes back', () => {
    const r = table('mirror M1', 'plate P1', 'object shell', 'beam all from red', '  -> M1: 400 mm', '  -> P1 through: 900 mm', '  -> shell: 12 mm', '  -> P1: 12 mm');
    expect(arms(r)).toEqual(['reference, reference of P1 from P1: ', 'object, object of P1 from P1: shell P1']);
    expectNear(r.mm('P1.reference.length'), 0, 0);
    expectNear(r.mm('P1.object.length'), 24, 1e-9);
    expectNear(r.mm('mismatch'), 24, 1e-9);
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  test('single-beam: neither the laser nor the way to the plate moves the mismatch', () => {
    const at = (way: string): ReturnType<typeof read> => table('plate P1', 'object shell', 'beam all from red', `  -> P1 through: ${way}`, '  -> shell: 12 mm ± 1 mm', '  -> P1: 12 mm ± 1 mm');
    expect(at('300 mm ± 200 mm').u('mismatch')).toBe(at('900 mm').u('mismatch'));
    expectNear(at('900 mm').u('mismatch') * 1e3, Math.sqrt(2 / 3), 1e-9);
  });
  test('a transfer: light from the port `diffracted` is object light, of the hologram', () => {
    const r = table('splitter S1', 'hologram H1', 'plate P2', 'beam stop B1', 'beam raw from red', '  -> S1: 300 mm', 'beam master from S1 through', '  -> H1: 800 mm', 'beam image from H1 diffracted', '  -> P2: 250 mm', 'beam straight from H1 through', '  -> B1: 200 mm', 'beam reference from S1 reflected', '  -> P2: 1050 mm');
    expect(arms(r)).toEqual(['image, object of P2 from S1: H1 P2', 'reference, reference of P2 from S1: P2']);
    expect(r.results.plates[0]!.pairs[0]!.arm.object?.id).toBe('H1');
    expectNear(r.mm('P2.image.mismatch'), 0, 1e-9);
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  test('light that goes on behind a hologram undiffracted is a reference', () => {
    const r = table('splitter S1', 'hologram H1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1: 300 mm', 'beam a from S1 through', '  -> H1 through: 100 mm', '  -> P1: 200 mm', 'beam b from S1 reflected', '  -> whelk: 100 mm', '  -> P1: 200 mm');
    expect(arms(r)).toEqual(['a, reference of P1 from S1: H1 P1', 'b, object of P1 from S1: whelk P1']);
  });
  test('key and fill: each is held against the one reference', () => {
    const r = table(
      'splitter S1', 'splitter S2', 'object jug {', '  depth: 0 mm', '}', 'plate P1', 'beam raw from red', '  -> S1: 300 mm', 'beam reference from S1 reflected', '  -> P1: 1500 mm', 'beam lights from S1 through', '  -> S2: 280 mm',
      'beam key from S2 through', '  -> jug: 920 mm', '  -> P1: 300 mm', 'beam fill from S2 reflected', '  -> jug: 950 mm', '  -> P1: 300 mm',
    );
    expect(arms(r)).toEqual(['reference, reference of P1 from S1: P1', 'key, object of P1 from S1: S2 jug P1', 'fill, object of P1 from S1: S2 jug P1']);
    // 280 + 920 + 300 − 1500 and 280 + 950 + 300 − 1500
    expectNear(r.mm('P1.key.mismatch'), 0, 1e-9);
    expectNear(r.mm('P1.fill.mismatch'), 30, 1e-9);
    // The short name means the larger of the two.
    expect(r.cell('mismatch')).toBe(r.cell('P1.fill.mismatch'));
    expect(r.results.aliases.get('brightness')!.map(c => c.name)).toEqual(['P1.key.brightness', 'P1.fill.brightness']);
    expect(r.results.aliases.has('object length')).toBe(false);
  });
  test('the way from the second splitter back to the first is shared by key and fill, and by no reference', () => {
    const at = (shared: string): ReturnType<typeof read> => table(
      'splitter S1', 'splitter S2', 'object jug', 'plate P1', 'beam raw from red', '  -> S1: 300 mm ± 90 mm', 'beam reference from S1 reflected', '  -> P1: 1500 mm ± 3 mm', 'beam lights from S1 through', `  -> S2: ${shared}`,
      'beam key from S2 through', '  -> jug: 920 mm ± 4 mm', '  -> P1: 300 mm', 'beam fill from S2 reflected', '  -> jug: 950 mm', '  -> P1: 300 mm',
    );
    expectNear(at('280 mm ± 12 mm').u('P1.key.mismatch') * 1e3, Math.hypot(3, 4, 12) / Math.sqrt(3), 1e-9);
    expectNear(at('280 mm').u('P1.key.mismatch') * 1e3, 5 / Math.sqrt(3), 1e-9);
  });
  test('two plates: each has its own arms, and a short name means neither', () => {
    const r = table(
      'splitter S1', 'splitter S2', 'object razor {', '  depth: 0 mm', '}', 'plate P1', 'plate P2', 'beam raw from red', '  -> S1: 300 mm', 'beam light from S1 reflected', '  -> razor: 900 mm', '  -> P1: 250 mm', 'beam aside from razor', '  -> P2: 260 mm',
      'beam references from S1 through', '  -> S2: 500 mm', 'beam left from S2 reflected', '  -> P1: 650 mm', 'beam right from S2 through', '  -> P2: 640 mm',
    );
    expect(arms(r)).toEqual(['light, object of P1 from S1: razor P1', 'left, reference of P1 from S1: S2 P1', 'aside, object of P2 from S1: razor P2', 'right, reference of P2 from S1: S2 P2']);
    expectNear(r.mm('P1.light.mismatch'), 0, 1e-9);
    expectNear(r.mm('P2.aside.mismatch'), 900 + 260 - 500 - 640, 1e-9);
    expect(r.results.aliases.get('mismatch')).toHaveLength(2);
    expect(r.results.aliases.get('P2.mismatch')).toEqual([r.cell('P2.aside.mismatch')]);
  });
  test('ground glass and diffusers carry object light to the plate, the last of them gives it its name', () => {
    for (const kind of ['ground glass', 'diffuser']) {
      const r = table('splitter S1', `${kind} G1`, 'plate P1', 'beam raw from red', '  -> S1: 300 mm', 'beam a from S1 through', '  -> G1: 500 mm', '  -> P1: 200 mm', 'beam b from S1 reflected', '  -> P1: 700 mm');
      expect(r.results.plates[0]!.pairs.map(p => [p.arm.name, p.arm.object?.id])).toEqual([['a', 'G1']]);
    }
    const both = table('splitter S1', 'ground glass G1', 'object leaf', 'plate P1', 'beam raw from red', '  -> S1: 300 mm', 'beam a from S1 through', '  -> G1: 500 mm', '  -> leaf: 100 mm', '  -> P1: 100 mm', 'beam b from S1 reflected', '  -> P1: 700 mm');
    expect(both.results.plates[0]!.pairs[0]!.arm.object?.id).toBe('leaf');
  });
  test('light of two lasers is not compared', () => {
    const r = table('laser green {', '  coherence length: 5 m', '}', 'object whelk', 'plate P1', 'beam a from red', '  -> whelk: 500 mm', '  -> P1: 200 mm', 'beam b from green', '  -> P1: 700 mm');
    expect(r.results.plates[0]!.pairs).toEqual([]);
    expect(serious(r.snapshot.findings)).toContain('10 arm-missing');
  });
});

describe('where arms part', () => {
  test('is behind the longest beginning that all of them share', () => {
    const r = table(
      'shutter gate', 'splitter S1', 'mirror M0', 'object whelk', 'plate P1', 'beam raw from red', '  -> gate: 70 mm ± 9 mm', '  -> M0: 100 mm ± 9 mm', '  -> S1: 200 mm ± 9 mm',
      'beam a from S1 through', '  -> P1: 1000 mm ± 3 mm', 'beam b from S1 reflected', '  -> whelk: 700 mm ± 4 mm', '  -> P1: 300 mm',
    );
    expect(arms(r)).toEqual(['a, reference of P1 from S1: P1', 'b, object of P1 from S1: whelk P1']);
    expectNear(r.u('mismatch') * 1e3, 5 / Math.sqrt(3), 1e-9);
  });
  test('is the laser, where beams start there', () => {
    const r = table('object whelk', 'plate P1', 'beam a from red', '  -> P1: 1000 mm', 'beam b from red', '  -> whelk: 700 mm', '  -> P1: 300 mm');
    expect(arms(r)[0]).toBe('a, reference of P1 from red: P1');
  });
  test('may lie on a leg that says its port', () => {
    const r = table('splitter S1', 'splitter S2', 'object whelk', 'plate P1', 'beam stop B1', 'beam a from red', '  -> S2 through: 100 mm', '  -> S1 through: 100 mm', '  -> P1: 1000 mm', 'beam b from S1 reflected', '  -> whelk: 700 mm', '  -> P1: 300 mm', 'beam c from S2 reflected', '  -> B1: 50 mm');
    expect(arms(r)).toEqual(['a, reference of P1 from S1: P1', 'b, object of P1 from S1: whelk P1']);
    expectNear(r.mm('mismatch'), 0, 1e-9);
  });
});

describe('legs', () => {
  test('keep their own names, also where their length is the name of another value', () => {
    const r = table('let gap = 300 mm ± 2 mm', 'let twin = gap', 'beam stop B1', 'mirror M1', 'beam raw from red', '  -> M1: gap', '  -> B1: twin * 2');
    expectNear(r.mm('raw.1.length'), 300, 1e-9);
    expectNear(r.mm('raw.2.length'), 600, 1e-9);
    expectNear(r.mm('twin'), 300, 1e-9);
    expect(r.results.graph.gradient(r.cell('raw.2.length')).get(r.cell('gap'))).toBe(2);
    expect(r.cell('raw.1.length').words).toBe('leg red → M1');
  });
  test('between places are straight, the third coordinate is the height', () => {
    const r = read(setup('beam height: 120 mm', 'laser red at (0, 0) mm', 'mirror M1 at (300, 400) mm', 'mirror M2 at (300, 400, 620) mm', 'beam stop B1 at (0.3, 0.4) m', 'beam raw from red', '  -> M1', '  -> M2', '  -> B1'));
    expect(['raw.1', 'raw.2', 'raw.3'].map(l => r.mm(`${l}.length`).toFixed(6))).toEqual(['500.000000', '500.000000', '500.000000']);
  });
  test('to what stands on another leg end where it stands', () => {
    const r = read(setup('laser red at (0, 0) mm', 'mirror M1 at (300, 400) mm', 'spreader R1 on red -> M1 by 60 mm ± 1 mm', 'beam stop B1 at (300, 0) mm', 'beam raw from red', '  -> R1', '  -> M1', '  -> B1'));
    expectNear(r.mm('raw.1.length'), 60, 1e-9);
    expectNear(r.mm('raw.2.length'), 440, 1e-9);
    expectNear(r.mm('R1.x'), 36, 1e-9);
    expectNear(r.mm('R1.y'), 48, 1e-9);
    // What the one leg gains, the other loses.
    expectNear(r.u('raw.1.length') * 1e3, 1 / Math.sqrt(3), 1e-6);
    expectNear(r.u('raw.2.length') * 1e3, 1 / Math.sqrt(3), 1e-6);
  });
  test('with a written length go before places', () => {
    const r = read(setup('laser red at (0, 0) mm', 'beam stop B1 at (300, 400) mm', 'beam raw from red', '  -> B1: 501 mm'));
    expectNear(r.mm('raw.1.length'), 501, 1e-9);
  });
  test('without a length leave no figure, and say why', () => {
    const r = table('splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> S1', 'beam a from S1 through', '  -> P1: 1000 mm', 'beam b from S1 reflected', '  -> whelk', '  -> P1');
    expect(r.cell('P1.b.length').missing).toMatchObject({ code: 'value-missing', why: 'leg S1 → whelk has no length' });
    expect(r.cell('mismatch').missing).toBe(r.cell('b.1.length').missing);
    expectNear(r.mm('P1.a.length'), 1000, 1e-9);
    // The way to the splitter counts for nothing, so that it is not missed.
    expect(serious(r.snapshot.findings)).toEqual(['14 value-missing']);
  });
});

describe('glass on the way', () => {
  /** n² = 1 + Σ Bλ²/(λ² − C), λ in µm; N = n − λ dn/dλ by central differences. */
  const group = (n: (um: number) => number): number => n(0.6328) - 0.6328 * ((n(0.6328 + 1e-4) - n(0.6328 - 1e-4)) / 2e-4);
  const sellmeier = (...terms: [number, number][]) => (um: number): number => Math.sqrt(1 + terms.reduce((s, [b, c]) => s + (b * um ** 2) / (um ** 2 - c), 0));
  /** Maker's data sheet of a borosilicate crown of n 1.5168, V 64.17. */
  const crown = group(sellmeier([1.03961212, 0.00600069867], [0.231792344, 0.0200179144], [1.01046945, 103.560653]));
  /** Malitson, J. Opt. Soc. Am. 55, 1205 (1965). */
  const silica = group(sellmeier([0.6961663, 0.0684043 ** 2], [0.4079426, 0.1162414 ** 2], [0.8974794, 9.896161 ** 2]));
  /** Rubin, Sol. Energy Mater. 12, 275 (1985). */
  const window = group(um => 1.513 - 0.003169 * um ** 2 + 0.003962 * um ** -2);
  /** Sultanova et al., Acta Phys. Pol. A 116, 585 (2009). */
  const acrylic = group(sellmeier([1.1819, 0.011313]));

  const glassy = (splitter: string, ...on: string[]): ReturnType<typeof read> => table(
    `splitter S1 ${splitter}`, ...on, 'object whelk', 'plate P1', 'beam raw from red', '  -> S1: 300 mm', 'beam reference from S1 through', `  ->${on.length > 0 ? ' L1: 400 mm\n    ->' : ''} P1: 600 mm`, 'beam object from S1 reflected', '  -> whelk: 500 mm', '  -> P1: 200 mm',
  );
  const added = (r: ReturnType<typeof read>, arm: string): number => r.mm(`P1.${arm}.coherence path`) - r.mm(`P1.${arm}.length`);

  test('borosilicate crown has the group index 1.5368 at 632.8 nm, so that 3 mm add 1.61 mm', () => {
    expect(crown.toFixed(4)).toBe('1.5368');
    const r = glassy('{\n    thickness: 3 mm\n    glass: crown\n  }');
    expectNear(added(r, 'reference'), (crown - 1) * 3, 1e-6);
    expect(added(r, 'reference').toFixed(2)).toBe('1.61');
    expect(added(r, 'object')).toBe(0);
    expectNear(r.mm('mismatch'), 700 - 600 - (crown - 1) * 3, 1e-6);
  });
  test.each([['fused silica', silica], ['window', window], ['acrylic', acrylic]])('%s', (glass, index) => {
    expectNear(added(glassy(`{\n    thickness: 4 mm\n    glass: ${glass}\n  }`), 'reference'), (index - 1) * 4, 1e-6);
  });
  test('an unnamed splitter or lens is crown, an unnamed ground glass window', () => {
    expectNear(added(glassy('{\n    thickness: 4 mm\n  }'), 'reference'), (crown - 1) * 4, 1e-6);
    expectNear(added(glassy('', 'lens L1 {', '  thickness: 4 mm', '}'), 'reference'), (crown - 1) * 4, 1e-6);
    expectNear(added(glassy('', 'ground glass L1 {', '  thickness: 4 mm', '}'), 'reference'), (window - 1) * 4, 1e-6);
  });
  test.each(['lens', 'collimator', 'spreader', 'attenuator'])('a %s in the beam counts as a plate of its thickness', kind => {
    expectNear(added(glassy('', `${kind} L1 {`, '  thickness: 2 mm', '}'), 'reference'), (crown - 1) * 2, 1e-6);
  });
  test('glass before the arms part counts for nothing', () => {
    const r = table('lens L1 {', '  thickness: 9 mm', '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '  -> L1: 100 mm', '  -> S1: 200 mm', 'beam a from S1 through', '  -> P1: 900 mm', 'beam b from S1 reflected', '  -> whelk: 700 mm', '  -> P1: 200 mm');
    expectNear(r.mm('mismatch'), 0, 1e-9);
  });
  test('the thickness is as unsure as it says', () => {
    const r = glassy('{\n    thickness: 3 mm ± 0.5 mm\n  }');
    expectNear(r.u('mismatch') * 1e3, ((crown - 1) * 0.5) / Math.sqrt(3), 1e-6);
  });
  test('string does not see glass', () => { expectNear(glassy('{\n    thickness: 3 mm\n  }').mm('reference length'), 600, 1e-9); });
});

describe('beams that make no arm', () => {
  const codes = (...lines: string[]): string[] => serious(table(...lines).snapshot.findings);
  test('a ring of beams is one finding, and its beams have no arms', () => {
    const r = table('splitter S1', 'splitter S2', 'plate P1', 'beam a from S1 through', '  -> S2: 100 mm', 'beam b from S2 through', '  -> S1: 100 mm', 'beam c from S2 reflected', '  -> P1: 100 mm');
    expect(r.snapshot.findings.filter(f => f.code === 'beam-ring').map(f => f.data['ring'])).toEqual(['a → b → a']);
    expect(r.results.arms.arms).toEqual([]);
    expect([...r.results.arms.broken].sort()).toEqual(['a', 'b', 'c']);
  });
  test('a ring of three names all three', () => {
    const r = table('splitter S1', 'splitter S2', 'splitter S3', 'beam a from S1 through', '  -> S2: 100 mm', 'beam b from S2 through', '  -> S3: 100 mm', 'beam c from S3 through', '  -> S1: 100 mm');
    expect(r.snapshot.findings.filter(f => f.code === 'beam-ring').map(f => f.data['ring'])).toEqual(['a → c → b → a']);
  });
  test('a beam from where no light arrives', () => {
    expect(codes('splitter S1', 'plate P1', 'object whelk', 'beam a from S1 through', '  -> P1: 100 mm', 'beam b from S1 reflected', '  -> whelk: 100 mm', '  -> P1: 100 mm')).toEqual(['2 unused-thing', '9 arm-broken']);
  });
  test('a beam that feeds itself only', () => {
    expect(codes('splitter S1', 'beam stop B1', 'beam a from S1 through', '  -> S1: 100 mm', '  -> B1: 100 mm')).toContain('8 arm-broken');
  });
  test('a port that the thing does not have', () => {
    expect(codes('splitter S1', 'beam stop B1', 'beam raw from red', '  -> S1: 100 mm', 'beam a from S1 transmitted', '  -> B1: 100 mm')).toEqual(['10 unknown-port']);
    expect(codes('splitter S1', 'beam stop B1', 'beam raw from red', '  -> S1: 100 mm', 'beam a from S1 reflectd', '  -> B1: 100 mm')).toEqual(['10 unknown-port']);
  });
  test('a splitter without a port', () => {
    expect(codes('splitter S1', 'beam stop B1', 'beam raw from red', '  -> S1: 100 mm', 'beam a from S1', '  -> B1: 100 mm')).toEqual(['10 port-missing']);
  });
  test.each(['plate', 'beam stop', 'black card', 'screen', 'wall'])('light that goes on behind a %s without `through` is not followed', kind => {
    const r = table(`${kind} X1`, 'object whelk', 'plate P1', 'beam a from red', '  -> X1: 100 mm', '  -> whelk: 100 mm', '  -> P1: 100 mm');
    expect(serious(r.snapshot.findings)).toContain('11 light-stopped');
    expect(r.results.arms.arms.some(a => a.plate.id === 'P1')).toBe(false);
  });
  test('light that is stopped on its way is not also told to go on at the end of its beam', () => {
    const stopped = ['plate X1', 'object whelk', 'beam a from red', '  -> X1: 100 mm', '  -> whelk: 100 mm'];
    expect(serious(table(...stopped).snapshot.findings).filter(f => /light-stopped|arm-ends-early/.test(f))).toEqual(['10 light-stopped']);
    // with `through` it comes there, and goes on
    expect(serious(table(...stopped.map(l => l.replace('X1:', 'X1 through:'))).snapshot.findings)).toContain('10 arm-ends-early');
  });
  test('light that goes on behind a plate says `through`', () => {
    const r = table('plate X1', 'object whelk', 'plate P1', 'beam a from red', '  -> X1 through: 100 mm', '  -> whelk: 100 mm', '  -> P1: 100 mm');
    expect(r.results.arms.arms.map(a => `${a.plate.id} ${a.role}`)).toEqual(['X1 reference', 'P1 object']);
  });
});
