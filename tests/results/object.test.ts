/** Which side of the object is lit and seen, against closed forms; and the trap of light from the far side. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { expectNear, read, type Read } from './read.ts';

/** An object at (0, 0) that a plate 100 m away on +y sees, lit by light that runs side by side from `angle` to the left of the line of sight, `up` above the level. */
const lit = (angle: number, object: readonly string[], up = 0): Read => {
  const [a, u] = [(angle * Math.PI) / 180, (up * Math.PI) / 180];
  const from = [Math.sin(a) * Math.cos(u), Math.cos(a) * Math.cos(u), Math.sin(u)].map(c => (c * 100_000).toFixed(6));
  return read(`setup "Whelk shell" {
  laser red at (${from.join(', ')}) mm facing S1 {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (${from.map(c => (Number(c) * 0.9).toFixed(6)).join(', ')}) mm
  mirror M1 at (90000, 90000) mm
  object whelk at (0, 0) mm {
${object.map(l => `    ${l}\n`).join('')}  }
  plate P1 at (0, 100000) mm facing whelk
  beam raw from red
    -> S1
  beam reference from S1 reflected
    -> M1
    -> P1
  beam object from S1 through
    -> whelk
    -> P1
}
`);
};
type V = readonly [number, number, number];
const look = ({ results }: Read, what: string): number => results.graph.value(results.ask(`P1.object.${what}`)!)!;
const found = ({ snapshot }: Read): string[] => snapshot.findings.filter(f => f.code === 'dark-side-lit').map(f => f.message);

describe('a ball', () => {
  // Both halves overlap in a lune of π − ψ: that share of π of each is lit and seen.
  it.each([0, 30, 51.3, 90, 120, 150, 180])('lit at %s° from the line of sight', angle => {
    const r = lit(angle, ['shape: sphere', 'diameter: 40 mm']);
    expectNear(look(r, 'lit side'), 1 - angle / 180, 0.05);
    expectNear(look(r, 'seen side'), 1 - angle / 180, 0.05);
  });
  it('from above as from the side', () => expectNear(look(lit(0, ['shape: sphere', 'diameter: 40 mm'], 60), 'lit side'), 1 - 60 / 180, 0.05));
  // Of the seen half the nearest part of all is lit up to 90°: from there to the rim it is one radius deep, less half a patch at either end.
  it('is lit over its radius', () => expectNear(look(lit(45, ['shape: sphere', 'diameter: 40 mm']), 'lit depth'), 0.02, 0.003));
});

describe('an object without a shape counts as rounded', () => {
  // Of one as wide as deep the sections level with the table are circles, so that its height does not change the share.
  it.each([40, 51.3, 110])('lit at %s°', angle => expectNear(look(lit(angle, ['size: 40 x 80 x 40 mm']), 'lit side'), 1 - angle / 180, 0.05));
});

describe('a rounded thing wider than deep', () => {
  // Sum over 400 × 400 pieces of x²/a² + y²/b² + z²/c² = 1, areas by cross products: across, up, toward the plate.
  const share = (angle: number, [a, b, c]: readonly [number, number, number]): number => {
    const n = 400;
    let [seen, both] = [0, 0];
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) {
      const [u, v] = [(Math.PI * (i + 0.5)) / n, (2 * Math.PI * (j + 0.5)) / n];
      const across: V = [a * Math.cos(u) * Math.cos(v), b * -Math.sin(u), c * Math.cos(u) * Math.sin(v)];
      const round: V = [-a * Math.sin(u) * Math.sin(v), 0, c * Math.sin(u) * Math.cos(v)];
      // outwards
      const normal: V = [round[1] * across[2] - round[2] * across[1], round[2] * across[0] - round[0] * across[2], round[0] * across[1] - round[1] * across[0]];
      const out = Math.sign(normal[0] * a * Math.sin(u) * Math.cos(v) + normal[1] * b * Math.cos(u) + normal[2] * c * Math.sin(u) * Math.sin(v));
      if (out * normal[2] <= 0) continue;
      seen += Math.hypot(...normal);
      if (out * (normal[0] * Math.sin(angle) + normal[2] * Math.cos(angle)) > 0) both += Math.hypot(...normal);
    }
    return both / seen;
  };
  it.each([30, 60, 110, 135])('lit at %s°', angle => expectNear(look(lit(angle, ['size: 40 x 60 x 35 mm']), 'lit side'), share((angle * Math.PI) / 180, [20, 30, 17.5]), 0.03));
  it.each([45, 135])('flat, lit at %s°', angle => expectNear(look(lit(angle, ['size: 80 x 60 x 20 mm']), 'lit side'), share((angle * Math.PI) / 180, [40, 30, 10]), 0.04));
});

describe('a box', () => {
  it.each([[30, 1], [80, 1], [95, 0], [150, 0]])('shows its front: light at %s°', (angle, share) => expectNear(look(lit(angle, ['shape: box', 'size: 40 x 60 x 35 mm']), 'lit side'), share, 1e-9));
});

describe('the side that the plate does not see', () => {
  it.each([[20, 0], [90, 0], [125, 1], [180, 1]])('light at %s°', (angle, times) => expect(found(lit(angle, ['size: 40 x 60 x 35 mm']))).toHaveLength(times));
  it.each([[20, 0], [95, 0], [105, 1], [180, 1]])('without a size the angle tells: %s°', (angle, times) => expect(found(lit(angle, ['tone: 30%']))).toHaveLength(times));
  it('says from where, by what, and what to do', () => {
    const [message] = found(lit(135, ['size: 40 x 60 x 35 mm']));
    // 22 % by the sum over the ellipsoid above
    expect(message).toMatch(/^The light on whelk comes from behind it and from the left as the plate sees it, at 135° from the line of sight of P1: only (?:1[89]|2\d) % of what the plate sees is lit\. Bring the light in from the side of whelk where P1 is/);
  });
  it('is lit on purpose where that is written, or through ground glass', () => {
    expect(found(lit(150, ['size: 40 x 60 x 35 mm', 'lit at: 150°']))).toEqual([]);
    expect(example('back-lit-leaf').filter(f => f.code === 'dark-side-lit')).toEqual([]);
  });
});

const library = { text: (uri: string) => readFileSync(new URL(`../../examples/${uri.split('/').pop()!}`, import.meta.url), 'utf8'), resolve: (path: string) => `file:///examples/${path}` };
const snapshotOf = (name: string, change: (text: string) => string = t => t): ReturnType<typeof analyse> => analyse(`file:///examples/${name}.plate`, change(library.text(`/${name}.plate`)), library);
const example = (name: string): ReturnType<typeof analyse>['findings'] => snapshotOf(name).findings;

describe('the whelk on the table', () => {
  it('is lit from the front at 51°, and its paths match as planned', () => {
    const [r] = snapshotOf('whelk-on-the-table', t => t.replace(/^ *measured .*\n/gm, '')).results;
    const value = (name: string): number => r!.graph.value(r!.ask(name) ?? r!.graph.find(name)!)!;
    expectNear((value('P1.object.lighting angle') * 180) / Math.PI, 51.3, 0.05);
    // 409.8 + 376.9 + 384.2 + 300.0 against 750.0 + 721.1
    expectNear(value('P1.object.mismatch') * 1000, -0.2, 0.05);
    expect(value('P1.object.lit side')).toBeGreaterThan(0.65);
    expect(example('whelk-on-the-table').filter(f => f.code === 'dark-side-lit')).toEqual([]);
  });
  // The last mirror on the far side: light toward the plate, 135° from the line of sight. The depth seems to cost little: 40 mm · (1 + cos 135°) = 12 mm.
  it('the trap: the last mirror on the far side', () => {
    const trap = snapshotOf('whelk-on-the-table', t => t.replace('mirror M3 at (400, 640) mm', 'mirror M3 at (450, 150) mm').replace('size: 40 x 60 x 35 mm', 'size: 40 x 60 x 80 mm'));
    const [r] = trap.results;
    const value = (name: string): number => r!.graph.value(r!.graph.find(name)!)!;
    expectNear((value('P1.object.lighting angle') * 180) / Math.PI, 135, 0.05);
    expectNear((value('P1.object.far.mismatch') - value('P1.object.mismatch')) * 1000, 11.7, 0.05);
    const [finding] = trap.findings.filter(f => f.code === 'dark-side-lit');
    expect(finding).toMatchObject({ severity: 'warning', subject: 'P1.whelk', data: { from: 'M3' } });
    expect(finding!.message).toContain('Move M3 to the side of whelk where P1 is');
  });
});

describe('places that tell nothing', () => {
  it.each(['(0, 100000) mm', '(0, 0) mm'])('plate and object at one place say nothing: %s', at => {
    const r = read(`setup "Whelk shell" {
  laser red at (100, 0) mm facing whelk {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (50, 0) mm
  object whelk at ${at} {
    size: 40 x 60 x 35 mm
  }
  plate P1 at ${at} heading 90° {
    size: 63 x 63 mm
  }
  beam raw from red
    -> S1
  beam reference from S1 reflected
    -> P1
  beam object from S1 through
    -> whelk
    -> P1
}
`);
    expect(found(r)).toEqual([]);
    expect(r.results.published.filter(c => c.name.startsWith('P1.object.') && !c.missing && !Number.isFinite(r.results.graph.value(c)!))).toEqual([]);
  });
});
