/** Polarization along the arms of whole setups: closed forms, another way through the mirrors, and symmetries of the table. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectNear, read, type Read } from './read.ts';

interface Around { readonly laser?: readonly string[]; readonly object?: readonly string[]; readonly plate?: readonly string[]; readonly things?: readonly string[]; readonly reference?: readonly string[]; readonly arm?: readonly string[]; readonly hologram?: string; readonly more?: readonly string[] }
const block = (facts: readonly string[] | undefined): string => (facts && facts.length > 0 ? ` {\n${facts.map(f => `    ${f}\n`).join('')}  }` : '');
/** A setup that names distances only. `reference` and `arm`: what the beams meet on their way. */
const strings = (a: Around = {}): string => `setup "Whelk shell" {
  hologram: ${a.hologram ?? 'transmission'}
  laser red${block(['wavelength: 632.8 nm', 'coherence length: 5 m', ...(a.laser ?? [])])}
  splitter S1
${(a.things ?? []).map(l => `  ${l}\n`).join('')}  object whelk${block(a.object)}
  plate P1${block(a.plate)}
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
${(a.reference ?? []).map(t => `    -> ${t}: 100 mm\n`).join('')}    -> P1: ${1500 - 100 * (a.reference ?? []).length} mm
  beam object from S1 reflected
${(a.arm ?? []).map(t => `    -> ${t}: 100 mm\n`).join('')}    -> whelk: ${1200 - 100 * (a.arm ?? []).length} mm
    -> P1: 300 mm
${(a.more ?? []).map(l => `  ${l}\n`).join('')}}
`;
const KEEPS = ['depolarization: 0%'];
const share = (r: Read): number => { const cell = r.results.ask('P1.object.polarization')!; expect(cell.missing).toBeUndefined(); return r.results.graph.value(cell)!; };
const at = (reference: string, object = '0°', index = '1.52'): string[] => [`reference angle: ${reference}`, `object angle: ${object}`, `index: ${index}`];

it('an angle that nothing tells is one guess, for the light of a reference and for its polarization', () => {
  const r = read(strings({ laser: ['polarization: horizontal', 'power: 5 mW', 'beam diameter: 1 mm'], things: ['lens L1 { focal length: 10 mm }'].map(l => l.replace(' { ', ' {\n    ').replace(' }', '\n  }')), reference: ['L1'] }));
  const guesses = ['P1.object.polarization', 'P1.reference.light'].map(name => r.results.graph.ancestors((r.results.ask(name) ?? r.results.graph.find(name))!).filter(c => c.words === 'angle of reference at P1'));
  expect(guesses.map(g => g.map(c => c.origin))).toEqual([['assumed'], ['assumed']]);
  expect(guesses[0]![0]).toBe(guesses[1]![0]);
});

describe('level folds', () => {
  it.each(['0°', '15°', '45°', '80°'])('s and s make fringes with all of the light, at %s as anywhere', angle => {
    expectNear(share(read(strings({ laser: ['polarization: vertical'], object: KEEPS, plate: at(angle, '-10°') }))), 1, 1e-12);
  });
  // |cos| of the angle in the layer. In a layer of index 1 that is the angle in air: 0.96593, 0.86603, 0.70711, 0.5 for 15°, 30°, 45°, 60° (any table of cosines);
  // 45° in a layer of 1.52: arcsin(sin 45° / 1.52) = 27.723°, cosine 0.885207.
  it.each([['15°', '1', 0.96593], ['30°', '1', 0.86603], ['45°', '1', 0.70711], ['60°', '1', 0.5], ['45°', '1.52', 0.885207]])('p and p lose with the angle: %s in a layer of %s', (angle, index, cosine) => {
    expectNear(Math.sqrt(share(read(strings({ laser: ['polarization: horizontal'], object: KEEPS, plate: at(angle, '0°', index) })))), cosine, 1e-5);
  });
  it('p and p from opposite sides at 90° within the layer make none', () => {
    // 45° each, from opposite sides, in a layer of index 1.
    expectNear(share(read(strings({ hologram: 'reflection', laser: ['polarization: horizontal'], object: KEEPS, plate: at('45°', '45°', '1') }))), 0, 1e-12);
  });
  it('of an angle between, the parts along and across count each for itself', () => {
    // Vertical parts 1·1, horizontal parts 1·cos δ: (cos²α ± sin²α cos δ)², + where both arms have as many folds as each other.
    const [a, cosine] = [Math.PI / 6, 0.885207];
    // Object arm: S1 reflects, and the facet of the object: two. The face of the layer lets TS and TP of the reference in, 0.5 of both squarely.
    const [v, h] = [Math.cos(a) ** 2, Math.sin(a) ** 2];
    expectNear(share(read(strings({ laser: ['polarization: vertical', 'polarization angle: 30°'], object: KEEPS, plate: at('45°') }))), (v * Math.sqrt(TS) + h * Math.sqrt(TP) * cosine) ** 2 / (v * TS + h * TP), 1e-5);
  });
  it('what the object depolarizes makes half as many', () => {
    for (const [d, left] of [[0, 1], [0.5, 0.75], [1, 0.5]]) expectNear(share(read(strings({ laser: ['polarization: vertical'], object: [`depolarization: ${100 * d!}%`], plate: at('45°') }))), left!, 1e-12);
  });
});

/** What a face of 1.52 lets in at 45°: 1 − 0.096733 of s and 1 − 0.009357 of p (Fresnel; the table of Born & Wolf’s formulas by another program). */
const [TS, TP] = [1 - 0.096733, 1 - 0.009357];

describe('random polarization', () => {
  const random = (more: Around): number => share(read(strings({ laser: ['polarization: random'], object: KEEPS, plate: at('45°'), things: ['mirror M1', 'mirror M2'], ...more })));
  // ½(1·1 ± cos δ), each weighed by what the face lets in: the states lie on one another where the folds of both arms differ by an even number, the object counting as one; cos δ = 0.885207.
  const both = (sign: number): number => ((Math.sqrt(TS) + sign * Math.sqrt(TP) * 0.885207) / 2) ** 2 / ((TS + TP) / 2);
  it('keeps its fringes through equal arms', () => expectNear(random({ reference: ['M1', 'M2'] }), both(1), 1e-5));
  it('and all of them squarely', () => expectNear(random({ plate: at('0°') }), 1, 1e-12));
  it('loses nearly all with one mirror more', () => {
    expectNear(random({ reference: ['M1'], things: ['mirror M1'] }), both(-1), 1e-5);
    expectNear(random({ reference: ['M1'], things: ['mirror M1'], plate: at('0°') }), 0, 1e-12);
  });
  it('a polarizer behind the laser makes of it what a polarized laser has', () => {
    const r = read(strings({ laser: ['polarization: random'], object: KEEPS, plate: at('45°'), reference: ['M1'], things: ['mirror M1', 'polarizer LP1 {', '  axis: 0°', '}'] }).replace('beam raw from red\n', 'beam raw from red\n    -> LP1: 50 mm\n'));
    expectNear(share(r), 1, 1e-9);
  });
  it('is told apart from what nobody has told', () => {
    const r = read(strings({ object: KEEPS, plate: at('45°'), reference: ['M1'], things: ['mirror M1'] }));
    const cell = r.results.ask('P1.object.polarization')!;
    const choice = r.results.graph.find('red.polarized share')!;
    expect([1, 0].map(v => Number(r.results.graph.evaluate(cell, new Map([[choice, v]])).toFixed(5)))).toEqual([1, 0.00127]);
    // Nothing of polarization is on a page that says nothing of it.
    expect(r.results.published.some(c => c.name.includes('polarization'))).toBe(false);
  });
});

describe('polarizers and half-wave plates', () => {
  const vertical = (more: Around): Read => read(strings({ laser: ['polarization: vertical'], object: KEEPS, plate: at('45°'), ...more }));
  it.each([[0, 1], [22.5, 0.5], [45, 0], [90, 1]])('a half-wave plate at %s° in one arm leaves %s', (axis, left) => {
    // It turns by twice its angle; what is then horizontal does not meet the vertical of the other arm: cos²(2α) of the light.
    expectNear(share(vertical({ arm: ['HW1'], things: ['half-wave plate HW1 {', `  axis: ${axis}°`, '}'] })), left, 1e-9);
  });
  it('a half-wave plate for another colour turns less, and makes it elliptic', () => {
    // Delay π · 532/632.8; of light at 45° to the axis cos²(delay/2) stays as it was.
    const delay = (Math.PI * 532) / 632.8;
    expectNear(share(vertical({ arm: ['HW1'], things: ['half-wave plate HW1 {', '  axis: 45°', '  wavelength: 532 nm', '}'] })), Math.cos(delay / 2) ** 2, 1e-9);
  });
  it('two crossed polarizers, one in each arm, leave no fringes', () => {
    const r = read(strings({ laser: ['polarization: random'], object: KEEPS, plate: at('45°'), reference: ['LP1'], arm: ['LP2'], things: ['polarizer LP1 {', '  axis: 0°', '}', 'polarizer LP2 {', '  axis: 90°', '}'] }));
    expectNear(share(r), 0, 1e-12);
  });
  it('two crossed polarizers in one arm leave no light', () => {
    const r = vertical({ reference: ['LP1', 'LP2'], things: ['polarizer LP1 {', '  axis: 0°', '}', 'polarizer LP2 {', '  axis: 90°', '}'] });
    expect(r.results.ask('P1.object.polarization')!.missing?.why).toBe('LP2 lets none of the light of reference through');
  });
  it('one without an axis tells nothing', () => {
    expect(vertical({ reference: ['LP1'], things: ['polarizer LP1'] }).results.ask('P1.object.polarization')!.missing?.why).toBe('the axis of LP1 is not written');
  });
});

/** A table with a periscope in the object arm: M2 sends the light up, M3 across at the new height. Turned about the vertical by `turn`, seen in a mirror with `flip`. */
const periscope = (turn = 0, flip = false, lift = 200, laser = 'vertical'): string => {
  const place = (x: number, y: number, z: number): string => {
    const [a, b] = [flip ? -x : x, y];
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return `(${(a * c - b * s).toFixed(9)}, ${(a * s + b * c).toFixed(9)}, ${z}) mm`;
  };
  return `setup "Whelk shell" {
  hologram: transmission
  laser red at ${place(0, 0, 120)} facing S1 {
    wavelength: 632.8 nm
    coherence length: 5 m
    polarization: ${laser}
  }
  splitter S1 at ${place(300, 0, 120)}
  mirror M1 at ${place(1000, 0, 120)}
  mirror M2 at ${place(300, 300, 120)}
  mirror M3 at ${place(300, 300, 120 + lift)}
  object whelk at ${place(700, 300, 120 + lift)} {
    depolarization: 0%
  }
  plate P1 at ${place(700, 700, 120 + lift)} facing whelk
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
${lift === 0 ? '' : '    -> M3\n'}    -> whelk
    -> P1
}
`;
};

describe('places', () => {
  it('a periscope that turns the light by 90° crosses it', () => {
    // Vertical light goes along +y, is sent up by M2 (then along −y or +y), and across along +x by M3: its field stays along y, which is level.
    // Behind the facet to +y it is along x. The reference comes from below, so that a little is left.
    const low = share(read(periscope()));
    expect(low).toBeLessThan(0.06);
    const findings = read(periscope()).snapshot.findings.filter(f => f.code === 'polarization-crossed');
    expect(findings.map(f => [f.severity, f.subject])).toEqual([['warning', 'P1']]);
    expect(findings[0]!.message).toContain('M2');
  });
  it('without it, they meet', () => {
    expectNear(share(read(periscope(0, false, 0).replace('  mirror M3 at (300.000000000, 300.000000000, 120) mm\n', ''))), 1, 1e-9);
  });
  it('neither turning the table nor looking at it in a mirror changes anything', () => {
    fc.assert(fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.boolean(), fc.integer({ min: 30, max: 400 }), fc.constantFrom('vertical', 'horizontal', 'random'), (turn, flip, lift, laser) => {
      expectNear(share(read(periscope(turn, flip, lift, laser))), share(read(periscope(0, false, lift, laser))), 1e-6);
    }), { numRuns: 25 });
  });
});

describe('what rests on it', () => {
  // 10 mW through a sheet at 30° to upright light: cos² 30° = 3/4 of it, and a fifth is lost in the sheet; of random light half.
  it.each([['vertical', 6], ['random', 4]])('the power behind a polarizer in %s light', (polarization, mW) => {
    const r = read(strings({ laser: [`polarization: ${polarization}`, 'power: 10 mW'], things: ['polarizer LP1 {', '  axis: 30°', '  loss: 20%', '}', 'mirror M1 {', '  loss: 0%', '}'] }).replace('beam raw from red\n', 'beam raw from red\n    -> LP1: 50 mm\n    -> M1: 50 mm\n'));
    expectNear(r.results.graph.value(r.results.ask('raw.2.power')!)! * 1000, mW, 1e-9);
  });
  it('the second of two sheets sees what the first one let through', () => {
    const r = read(strings({ laser: ['polarization: random', 'power: 10 mW'], things: ['polarizer LP1 {', '  axis: 20°', '  loss: 0%', '}', 'polarizer LP2 {', '  axis: 80°', '  loss: 0%', '}'] }).replace('beam raw from red\n', 'beam raw from red\n    -> LP1: 50 mm\n    -> LP2: 50 mm\n'));
    expectNear(r.results.graph.value(r.results.ask('raw.3.power')!)! * 1000, 10 * 0.5 * 0.25, 1e-9);
  });
  it('the effective ratio, where none was read through a sheet', () => {
    const ratio = (...more: string[]): number => read(strings({ laser: ['polarization: vertical'], object: ['depolarization: 40%'], plate: at('45°'), more: ['beam ratio: 4:1', ...more] })).value('effective ratio');
    // 1 − 0.4/2 of the object light.
    expectNear(ratio(), 5, 1e-9);
  });
  it('a reading through a sheet goes before it, and silences the finding', () => {
    const crossed = (...more: string[]): Read => read(strings({ laser: ['polarization: vertical'], object: ['depolarization: 0%'], plate: at('45°'), arm: ['HW1'], things: ['half-wave plate HW1 {', '  axis: 45°', '}', 'meter needle {', '  head: 8 mm', '}'], more }));
    const found = (r: Read): string[] => r.snapshot.findings.filter(f => f.code === 'polarization-crossed').map(f => String(f.data['by']));
    expect(found(crossed())).toEqual(['half-wave plate']);
    const r = crossed('measured reference at P1: 80 by needle', 'measured object at P1: 20 by needle', 'measured object at P1 through polarizer: 16 by needle');
    expect(found(r)).toEqual([]);
    expectNear(r.value('effective ratio'), 5, 1e-9);
  });
});

describe('the cause of a crossing', () => {
  const by = (a: Around): string[] => read(strings({ plate: at('45°'), object: KEEPS, ...a })).snapshot.findings.filter(f => f.code === 'polarization-crossed').map(f => `${f.severity} ${String(f.data['by'])} ${String(f.data['things'])}`.trim());
  it('is named', () => {
    expect(by({ laser: ['polarization: vertical'], arm: ['LP1'], things: ['polarizer LP1 {', '  axis: 80°', '}'] })).toEqual(['warning polarizer LP1']);
    expect(by({ laser: ['polarization: random'], reference: ['M1'], things: ['mirror M1'] })).toEqual(['warning random laser red']);
    expect(by({ laser: ['polarization: horizontal'], hologram: 'reflection', plate: at('45°', '45°', '1.3') })).toEqual(['warning wide angle']);
    expect(by({ laser: ['polarization: random'], object: ['depolarization: 90%'], reference: ['M1', 'M2'], things: ['mirror M1', 'mirror M2'] })).toEqual(['note object whelk']);
    expect(by({ laser: ['polarization: vertical'] })).toEqual([]);
  });
});
