/** What may move while the shutter is open, on whole tables, against closed forms. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between } from '../optics/outside.ts';
import { expectNear, read, type Read } from './read.ts';

const RED = 632.8e-9;
const nm = (v: number): number => v * 1e9;
const asked = ({ results }: Read, name: string): number => {
  const cell = results.ask(name);
  expect(cell?.missing, name).toBeUndefined();
  return results.graph.value(cell!)!;
};
const named = ({ results }: Read): string[] => results.movement.things().map(d => d.thing.id);

interface Table { readonly turn?: number; readonly mirrored?: boolean; readonly inches?: boolean; readonly reversed?: boolean; readonly more?: string; readonly M2?: readonly [number, number] }
/** All folds at 45°: the reference comes at 45° on a plate that looks straight at its object. */
function table({ turn = 0, mirrored = false, inches = false, more = '', M2 = [400, 600] }: Table = {}): string {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const at = (x: number, y: number): string => {
    const v = mirrored ? -y : y;
    return `(${[c * x - s * v, s * x + c * v].map(n => (n / (inches ? 25.4 : 1)).toFixed(9)).join(', ')}) ${inches ? 'in' : 'mm'}`;
  };
  return `setup "Whelk shell" {
  hologram: transmission
  laser red at ${at(0, 0)} {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  mirror M0 at ${at(400, 0)}
  splitter S1 at ${at(400, 300)}
  mirror M1 at ${at(1200, 300)}
  mirror M2 at ${at(M2[0], M2[1])}
  object whelk at ${at(700, 600)}
  plate P1 at ${at(700, 800)} facing whelk
  ${more}
  beam raw from red
    -> M0
    -> S1
  beam reference from S1 reflected
    -> M1
    -> P1
  beam object from S1 through
    -> M2
    -> whelk
    -> P1
}
`;
}

describe('each thing in its most delicate direction', () => {
  it('a mirror along its normal: λ / (20 cos θ)', () => {
    const r = read(table());
    // 632.8 nm / (20 cos 45°)
    expectNear(nm(asked(r, 'M2.allowed movement')), 44.746, 0.001);
    expectNear(asked(r, 'M2.delicacy'), (2 * Math.SQRT1_2) / RED, 1);
    expect(r.results.movement.things().find(d => d.thing.id === 'M2')!.along).toBe('along its normal');
    const angle = asked(r, 'M1.incidence');
    expectNear(nm(asked(r, 'M1.allowed movement')), nm(RED) / (20 * Math.cos(angle)), 1e-6);
  });
  // Square to the plate and at 45°: along the plate sin 45° / λ, along its normal (1 − cos 45°) / λ, in all 2 sin 22.5° / λ.
  it('a plate in its plane, along its normal, at worst', () => {
    const r = read(table());
    const θ = r.value('P1.reference.angle');
    expectNear(nm(asked(r, 'P1.allowed movement in its plane')), nm(RED) / (10 * Math.sin(θ)), 1e-5);
    expectNear(nm(asked(r, 'P1.allowed movement along its normal')), nm(RED) / (10 * (1 - Math.cos(θ))), 1e-5);
    expectNear(nm(asked(r, 'P1.allowed movement')), nm(RED) / (20 * Math.sin(θ / 2)), 1e-5);
    // the reference of this table comes at 45° to the plate: 500 mm across, 500 mm on
    expectNear(θ, Math.PI / 4, 1e-9);
    expectNear(nm(asked(r, 'P1.allowed movement in its plane')), 89.491, 0.001);
  });
  // Light on the whelk runs at right angles to the line of sight: √2 for each metre.
  it('an object between light and line of sight: 2 cos(ψ/2)', () => expectNear(asked(read(table()), 'whelk.delicacy') * RED, Math.SQRT2, 1e-9));
  it('a splitter only for what it reflects', () => expectNear(asked(read(table()), 'S1.delicacy') * RED, Math.SQRT2, 1e-9));
  it('what stands before the arms part does not count', () => {
    const r = read(table());
    expect(named(r)).not.toContain('M0');
    expect(named(r)).not.toContain('red');
    expect(r.results.ask('M0.delicacy')).toBeUndefined();
  });
  it('the most delicate comes first', () => {
    const r = read(table());
    const values = r.results.movement.things().map(d => r.results.graph.value(d.delicacy)!);
    expect(values).toEqual([...values].sort((a, b) => b - a));
    expect(named(r).sort()).toEqual(['M1', 'M2', 'P1', 'S1', 'whelk']);
  });
  it('a movement that large changes the path by a tenth of a wavelength', () => {
    // by another way: the lengths of the legs themselves, M2 moved along its normal on a table of 10 nm steps
    const r = read(table());
    const allowed = asked(r, 'M2.allowed movement');
    const { graph } = r.results;
    const mismatch = r.cell('mismatch');
    const [x, y] = [graph.find('M2.x')!, graph.find('M2.y')!];
    // light comes up along y and leaves along x: the normal is (1, −1)/√2
    const moved = graph.evaluate(mismatch, new Map([[x, graph.value(x)! + allowed / Math.SQRT2], [y, graph.value(y)! - allowed / Math.SQRT2]]));
    expectNear(Math.abs(moved - graph.value(mismatch)!) / RED, 0.1, 1e-4);
  });
});

describe('a reflection hologram', () => {
  const reflection = (angle: string): string => `setup "Shard" {
  hologram: reflection
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  object shard {
    lit at: 60°
  }
  plate P1 {
    reference angle: ${angle}
    object angle: 0°
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> shard: 1420 mm
    -> P1: 80 mm
}
`;
  // (1 + cos 45°) / λ along the normal of the plate: 37.07 nm; 632.8 nm / 20 = 31.64 nm squarely.
  it('from angles only: the plate along its normal', () => {
    expectNear(nm(asked(read(reflection('45°')), 'P1.allowed movement along its normal')), 37.069, 0.001);
    expectNear(nm(asked(read(reflection('0°')), 'P1.allowed movement')), 31.64, 0.001);
  });
  it('from angles only: the object by its light, and nothing of which no angle is known', () => {
    const r = read(reflection('45°'));
    expectNear(asked(r, 'shard.delicacy') * RED, 2 * Math.cos(Math.PI / 6), 1e-9);
    expect(named(r).sort()).toEqual(['P1', 'shard']);
  });
  it('the reversed light has the same', () => {
    expect(asked(read(reflection('-30°')), 'P1.allowed movement') / asked(read(reflection('30°')), 'P1.allowed movement')).toBeCloseTo(1, 9);
  });
});

describe('a single beam', () => {
  const single = `setup "Oyster" {
  hologram: reflection
  laser red at (0, 0) mm {
    wavelength: 632.8 nm
    coherence length: 5 m
    beam diameter: 0.8 mm
  }
  mirror M1 at (500, 0) mm
  spreader R1 at (500, 100) mm {
    focal length: 16.5 mm
  }
  mirror M2 at (500, 500) mm
  plate P1 at (1000, 1000) mm heading 180° {
    size: 102 x 127 mm
  }
  object oyster at (1010, 1000) mm {
    size: 80 x 60 x 20 mm
  }
  beam all from red
    -> M1
    -> R1
    -> M2
    -> P1 through
    -> oyster
    -> P1
}
`;
  it('only the plate against its object matters', () => {
    const r = read(single);
    expect(r.results.movement.things().map(d => [d.thing.id, d.against?.id])).toEqual([['P1', 'oyster']]);
    expect(r.results.ask('M1.delicacy')).toBeUndefined();
    expect(r.results.ask('R1.delicacy')).toBeUndefined();
    expect(r.results.ask('oyster.delicacy')).toBe(r.results.ask('P1.delicacy'));
  });
  // The light goes on from M2 to the oyster, atan(500/510) from the x axis, and comes back along it.
  it('by how much', () => expectNear(asked(read(single), 'P1.delicacy') * RED, 2 * Math.cos(Math.atan2(500, 510) / 2), 1e-9));
});

describe('a spreading lens', () => {
  it('moves the light at the corners of the plate, and that of its middle not at all', () => {
    const text = table({ more: 'spreader R1 at (1160, 340) mm {\n    focal length: 9 mm\n  }' }).replace('-> M1\n', '-> M1\n    -> R1\n').replace('facing whelk', 'facing whelk {\n    size: 60 x 80 mm\n  }').replace('coherence length: 5 m', 'coherence length: 5 m\n    beam diameter: 0.8 mm');
    const r = read(text);
    // From the focus 9 mm behind the lens to the plate √(460² + 460²) − 9 mm; half of the diagonal of the plate is 50 mm.
    const angle = Math.atan(50 / (Math.hypot(460, 460) - 9));
    expect(asked(r, 'R1.delicacy') * RED / (2 * Math.sin(angle / 2))).toBeCloseTo(1, 3);
    expect(r.results.movement.things().at(-1)!.thing.id).toBe('R1');
  });
});

describe('a ground glass that light crosses straight', () => {
  const page = `setup "Sea-holly leaf" {
  hologram: transmission
  laser red at (0, 0) mm {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (200, 0) mm
  mirror M1 at (200, 400) mm
  ground glass GG1 at (500, 400) mm
  object leaf at (680, 400) mm {
    size: 60 x 90 x 20 mm
  }
  mirror M2 at (700, 0) mm
  plate P1 at (900, 400) mm facing leaf
  beam raw from red
    -> S1
  beam object from S1 reflected
    -> M1
    -> GG1
    -> leaf
    -> P1
  beam reference from S1 through
    -> M2
    -> P1
}
`;
  // To the corner of the leaf: atan(√(30² + 45²) / 180) = 16.73°, 2 sin 8.36° / 632.8 nm = 0.4597 fringes/µm.
  it('across its beam, for the corners of what it lights', () => {
    const r = read(page);
    expectNear(asked(r, 'GG1.delicacy') * RED, 2 * Math.sin(Math.atan(Math.hypot(30, 45) / 180) / 2), 1e-9);
    expect(r.results.movement.things().find(d => d.thing.id === 'GG1')!.along).toBe('across the beam');
    // without a size of the plate nothing is known of the leaf
    expect(named(r)).not.toContain('leaf');
  });
});

describe('symmetries', () => {
  it('a table turned, mirrored or written in inches', () => {
    fc.assert(fc.property(between(-3, 3), fc.boolean(), fc.boolean(), between(250, 550), between(450, 800), (turn, mirrored, inches, x, y) => {
      const [a, b] = [read(table({ M2: [x, y] })), read(table({ M2: [x, y], turn, mirrored, inches }))];
      expect(named(b).sort()).toEqual(named(a).sort());
      for (const id of named(a)) expect(asked(b, `${id}.delicacy`) / asked(a, `${id}.delicacy`), id).toBeCloseTo(1, 6);
    }), { numRuns: 25 });
  });
  it('derivatives are those of differences', () => {
    const r = read(table());
    const { graph } = r.results;
    const cell = r.results.ask('M1.delicacy')!;
    for (const name of ['M1.x', 'M1.y', 'P1.x', 'red.wavelength']) {
      const input = graph.find(name)!;
      const [x, h] = [graph.value(input)!, name === 'red.wavelength' ? 1e-11 : 1e-6];
      const slope = (graph.evaluate(cell, new Map([[input, x + h]])) - graph.evaluate(cell, new Map([[input, x - h]]))) / (2 * h);
      expectNear(graph.gradient(cell).get(input)!, slope, 1e-4 * Math.abs(slope) + 1);
    }
  });
});

describe('warmth', () => {
  const strings = (difference: number, more = ''): string => `setup "Whelk" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    ${more}
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: ${1200 + difference} mm
    -> P1: 300 mm
}
`;
  // 0.1 · 632.8 nm / (1 m · 12 · 10⁻⁶ /K) = 5.27 mK for arms a metre apart; OpenStax has 12 · 10⁻⁶ for steel.
  it('of the table under unequal arms', () => expectNear(asked(read(strings(1000)), 'P1.allowed warming'), 0.1 * RED / 12e-6, 1e-7));
  // Half the difference, twice the warmth.
  it('less for arms that match better', () => expectNear(asked(read(strings(500)), 'P1.allowed warming') / asked(read(strings(1000)), 'P1.allowed warming'), 2, 1e-9));
  // 0.2 nm/K of a diode: 1 m · 0.2 nm / (632.8 nm)² = 499.5 fringes a kelvin, beside 19 of the table.
  it('and of a laser that drifts', () => expectNear(0.1 / asked(read(strings(1000, 'drift: 0.2 nm/K')), 'P1.allowed warming'), 0.2e-9 / RED ** 2 + 12e-6 / RED, 0.01));
  // By the coefficients of Callister, app. B, and OpenStax vol. 2, table 1.2 (both as physics tables quote them): aluminium 23.6 (to 25), granite 7.9 (5 to 9), stainless steel 17.3 alone, to which 5 % are left open.
  it('of a table whose material is written', () => {
    const of = (material: string): number[] => {
      const r = read(strings(1000).replace('splitter S1', `table material: ${material}\n  splitter S1`));
      const allowed = r.results.ask('P1.allowed warming')!;
      const table = r.results.graph.find('expansion of the table')!;
      return [r.value('P1.allowed warming') * 1e3, r.results.graph.value(table)! * 1e6, table.spread?.kind === 'within' ? table.spread.amount * 1e6 : Number.NaN, r.results.graph.ancestors(allowed).filter(c => c.origin === 'assumed' && c.name === table.name).length];
    };
    // 0.1 · 632.8 nm / (1 m · α): 2.68, 8.01 and 3.66 mK.
    const near = (found: number[], expected: number[]): void => { for (const [i, e] of expected.entries()) expect(found[i]).toBeCloseTo(e, 2); };
    near(of('aluminium'), [2.681, 23.6, 1.4, 1]);
    near(of('granite'), [8.01, 7.9, 2.9, 1]);
    near(of('stainless steel'), [3.658, 17.3, 0.865, 1]);
  });
  it('stands nowhere before it is asked for', () => expect(read(strings(1000)).results.graph.cells.some(c => /warming|kelvin|expansion/.test(c.name))).toBe(false));
});

describe('a shutter on the table', () => {
  const page = (facts: string, exposure: string): string => `setup "Whelk" {
  laser red {
    coherence length: 5 m
  }
  shutter gate${facts === '' ? '' : ` {\n    ${facts}\n  }`}
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> gate: 100 mm
    -> S1: 250 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  ${exposure}
}
`;
  const codes = (facts: string, exposure: string): string[] => read(page(facts, exposure)).snapshot.findings.filter(f => f.code === 'shutter-shakes').map(f => f.severity);
  it('that shakes it for a third of the exposure', () => {
    expect(codes('mounted: table', 'exposure: 3 s')).toEqual(['note']);
    expect(read(page('mounted: table\n    ring time: 1 s', 'exposure: 3 s')).value('gate.ring share')).toBeCloseTo(1 / 3, 9);
  });
  it.each([
    ['a long exposure', 'mounted: table', 'exposure: 6 s'], ['a stand of its own', 'mounted: stand', 'exposure: 3 s'], ['a card', 'mounted: hand', 'exposure: 3 s'],
    ['nothing is written of it', '', 'exposure: 3 s'], ['no exposure is known', 'mounted: table', ''],
  ])('is silent: %s', (_, facts, exposure) => expect(codes(facts, exposure)).toEqual([]));
});

describe('nothing without what it needs', () => {
  it('no wavelength', () => expect(named(read(table().replace('wavelength: 632.8 nm', '')))).toEqual([]));
  it('no cell is made before somebody asks', () => expect(read(table()).results.graph.cells.some(c => /delicacy|allowed/.test(c.name))).toBe(false));
  it('things at one place have no figure', () => {
    const r = read(table({ M2: [700, 600] }));
    expect(named(r)).not.toContain('M2');
    expect(named(r)).not.toContain('whelk');
  });
});
