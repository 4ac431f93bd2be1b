/** Ghost fringes in the plates of whole setups, bare edges, and faces that look at a plate. */
import { describe, expect, it } from 'vitest';
import { linearField } from '../../server/optics/polarization/field.ts';
import { unpolarizedLight } from '../../server/optics/polarization/states.ts';
import { ghostContrasts, lightGhostContrasts } from '../../server/optics/ghosts/ghosts.ts';
import { expectNear, read, type Read } from './read.ts';

const page = (polarization: string, plate: readonly string[], more: readonly string[] = []): string => `setup "Whelk shell" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
${polarization === '' ? '' : `    polarization: ${polarization}\n`}  }
  splitter S1
  object whelk
  plate P1 {
${plate.map(f => `    ${f}\n`).join('')}  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
${more.map(l => `  ${l}\n`).join('')}}
`;
const found = (r: Read, code: string): string[] => r.snapshot.findings.filter(f => f.code === code).map(f => `${f.severity} ${f.subject}${f.accepted === undefined ? '' : ' accepted'}`);
const ghosts = (text: string): string[] => found(read(text), 'ghost-fringes');

describe('ghost fringes', () => {
  // 2R/(1 + R²) and 2√R/(1 + R) with Fresnel's shares for n = 1.52: R 0.042580 squarely, s 0.096733 and p 0.009357 at 45° (Born & Wolf, §1.5, worked out by another program);
  // p off the back face runs at 2 · 27.723° to the reference in the glass, which takes off cos 55.446° = 0.56719.
  it.each([['vertical', '0°', 0.08501, 0.39584], ['horizontal', '0°', 0.08501, 0.39584], ['vertical', '45°', 0.19167, 0.56717], ['horizontal', '45°', 0.01871, 0.19167 * 0.56719]])('%s light at %s', (polarization, angle, two, back) => {
    const r = read(page(polarization, [`reference angle: ${angle}`]));
    expectNear(r.value('P1.reference.ghost fringes'), two, 1e-5);
    expectNear(r.value('P1.reference.back face fringes'), back, 1e-5);
    expectNear(r.value('ghost fringes'), two, 1e-5);
  });
  it('p at Brewster’s angle of 56.6593° has none', () => expectNear(read(page('horizontal', ['reference angle: 56.6593°'])).value('ghost fringes'), 0, 1e-8));
  it('random light has those of s and p, each with its share of the light inside', () => {
    const [s, p] = [0.096733, 0.009357];
    // Both states have half of the light, of which the front face lets 1 − R in.
    const expected = (2 * ((1 - s) * s + (1 - p) * p)) / ((1 - s) * (1 + s * s) + (1 - p) * (1 + p * p));
    expectNear(read(page('random', ['reference angle: 45°'])).value('ghost fringes'), expected, 1e-5);
  });
  it('of one state are those of polarized light', () => {
    const [light, normal] = [[0.6, 0.2, 0.77], [0, 0, 1]] as const;
    for (const angle of [0, 0.4, 1.2]) expect(lightGhostContrasts([{ field: linearField(light, angle), state: 0, steady: true }], normal, 1.52)).toEqual(ghostContrasts(linearField(light, angle), normal, 1.52));
    expect(lightGhostContrasts(unpolarizedLight([0, 0, 1]), normal, 1.52).twoBounces).toBeCloseTo(0.08501, 5);
    expect(lightGhostContrasts([], normal, 1.52)).toEqual({ twoBounces: 0, backFace: 0 });
  });
});

describe('the note', () => {
  it('is one, with the cure', () => {
    const r = read(page('vertical', ['reference angle: 45°']));
    expect(found(r, 'ghost-fringes')).toEqual(['note P1']);
    expect(r.snapshot.findings.find(f => f.code === 'ghost-fringes')!.message)
      .toBe('The light of reference makes ghost fringes in the glass of P1, with a contrast of 19 % (wood grain). p-polarized light leaves 1.9 % at 45°, and none at 56.7°; or a black backing in a liquid of the index of glass takes them away.');
  });
  it('is silent for p, behind a backing, and where no angle is known', () => {
    expect(ghosts(page('horizontal', ['reference angle: 45°']))).toEqual([]);
    expect(ghosts(page('vertical', ['reference angle: 45°', 'backing: index-matched']))).toEqual([]);
    expect(ghosts(page('vertical', ['size: 63 x 63 mm']))).toEqual([]);
  });
  it('shows both where nobody has told how the laser is polarized', () => {
    const r = read(page('unknown', ['reference angle: 45°']));
    expect(r.snapshot.findings.find(f => f.code === 'ghost-fringes')!.data).toMatchObject({ high: 0.192, low: 0.102 });
  });
  it('leaves a page alone that says nothing of polarization, and still answers who asks', () => {
    const r = read(page('', ['reference angle: 45°']));
    expect(found(r, 'ghost-fringes')).toEqual([]);
    expect(r.results.graph.cells.some(c => c.name.includes('ghost'))).toBe(false);
    expectNear(r.results.graph.value(r.results.ask('ghost fringes')!)!, 0.19167, 1e-5);
  });
  it('is accepted by its name', () => expect(ghosts(page('vertical', ['reference angle: 45°'], ['accept ghost-fringes "every plate of mine has them"']))).toEqual(['note P1 accepted']));
  it('may be expected', () => {
    const r = read(page('vertical', ['reference angle: 45°'], ['expect ghost fringes < 10%', 'expect P1.polarization > 20%']));
    expect(r.results.goals.map(g => g.outcome)).toEqual(['not met', 'met']);
  });
});

describe('a reference from above', () => {
  // The plane in which it slants is upright, so that vertical light is p: 56.6593° by places.
  const above = (polarization: string): Read => read(`setup "Oyster" {
  hologram: transmission
  laser red at (-1000, 0, ${(1000 / Math.tan((56.6593 * Math.PI) / 180)).toFixed(6)}) mm facing M1 {
    wavelength: 632.8 nm
    coherence length: 5 m
    polarization: ${polarization}
  }
  mirror M1 at (0, 0, ${(1000 / Math.tan((56.6593 * Math.PI) / 180)).toFixed(6)}) mm
  plate P1 at (${Math.tan((56.6593 * Math.PI) / 180) * 1000 / Math.tan((56.6593 * Math.PI) / 180)}, 0, 0) mm heading 0° tilted 90°
  beam all from red
    -> M1
    -> P1
}
`);
  it('vertical light has none, horizontal light has those of s', () => {
    // Light from (0, 0, h) to (1000, 0, 0): tan of the angle from the upright normal is 1000/h, h = 1000/tan 56.6593°.
    expectNear(above('vertical').value('ghost fringes'), 0, 1e-7);
    // R of s at Brewster's angle: ((n² − 1)/(n² + 1))².
    const R = ((1.52 ** 2 - 1) / (1.52 ** 2 + 1)) ** 2;
    expectNear(above('horizontal').value('ghost fringes'), (2 * R) / (1 + R * R), 1e-6);
  });
});

describe('a bare edge', () => {
  const lit = (plate: readonly string[], focal = '4.5 mm'): Read => read(page('vertical', ['size: 63 x 63 mm', ...plate]).replace('splitter S1', `splitter S1\n  spreader R1 {\n    focal length: ${focal}\n  }`).replace('coherence length', 'beam diameter: 0.8 mm\n    coherence length').replace('-> P1: 1500 mm', '-> R1: 300 mm\n    -> P1: 1200 mm'));
  it('in a steep and wide reference has a note, with the share of the light that enters it', () => {
    const r = lit(['reference angle: 50°']);
    expect(found(r, 'edge-light')).toEqual(['note P1']);
    // 650 mm from the laser its waist of 0.4 mm has widened by the Rayleigh range π w²/(M² λ), M² = 1.1 (assumed); 4.5 mm before the lens it is spread from there on. On the edge of 2 mm (assumed), 31.5 mm · cos 50° from the middle
    // of the beam, falls t · tan 50° · exp(−2 (31.5 cos 50°/w)²); on the face beside it ∫ exp(−2 (x cos 50°/w)²) dx from −31.5 to 31.5 mm, by the midpoint rule.
    const rayleigh = (Math.PI * 0.4e-3 ** 2) / (1.1 * 632.8e-9);
    const radius = (0.4 * Math.hypot(1, 0.65 / rayleigh) * 1195.5) / 4.5;
    const at = (x: number): number => Math.exp(-2 * ((x * Math.cos((50 * Math.PI) / 180)) / radius) ** 2);
    let face = 0;
    for (let i = 0; i < 630; i++) face += at(-31.5 + (i + 0.5) / 10) / 10;
    const edge = 2 * Math.tan((50 * Math.PI) / 180) * at(31.5);
    const [finding] = r.snapshot.findings.filter(f => f.code === 'edge-light');
    expectNear(Number(finding!.data['share']), edge / (edge + face), 5e-4);
    expect(finding!.message).toContain('bare edge towards the light');
    expect(finding!.message).toContain('2 mm (assumed)');
  });
  const edge = (r: Read): unknown => r.snapshot.findings.find(f => f.code === 'edge-light')?.data['edge'];
  it.each([['above', 'upper'], ['below', 'lower']])('is the one towards a reference from %s', (from, is) => { expect(edge(lit(['reference angle: 50°', `reference from: ${from}`]))).toBe(is); });
  // A plate that faces south: who looks at it has the east on the right. In a row from the laser to the plate at 50° from its normal.
  it.each([['east', 1, 'right'], ['west', -1, 'left']] as const)('by places is the one towards a reference from the %s', (_, to, is) => {
    const along = (d: number): string => `at (${(to * d * Math.sin((50 * Math.PI) / 180)).toFixed(3)}, ${(-d * Math.cos((50 * Math.PI) / 180)).toFixed(3)}) mm`;
    const r = read(`setup "Whelk shell" {\n  hologram: transmission\n  laser red ${along(1850)} heading ${to > 0 ? 140 : 40}° {\n    wavelength: 632.8 nm\n    beam diameter: 0.8 mm\n    coherence length: 5 m\n    polarization: vertical\n  }\n  splitter S1 ${along(1500)}\n  spreader R1 ${along(1200)} {\n    focal length: 4.5 mm\n  }\n  object whelk\n  plate P1 at (0, 0) mm heading 270° {\n    size: 63 x 63 mm\n  }\n  beam raw from red\n    -> S1\n  beam reference from S1 through\n    -> R1\n    -> P1\n  beam object from S1 reflected\n    -> whelk\n    -> P1\n}\n`);
    expect(edge(r)).toBe(is);
  });
  it.each([[['reference angle: 50°', 'edges: masked'], '4.5 mm'], [['reference angle: 50°', 'edges: index-matched'], '4.5 mm'], [['reference angle: 20°'], '4.5 mm'], [['reference angle: 50°'], '60 mm'], [['reference angle: 50°', 'base: film'], '4.5 mm'], [['reference angle: 50°', 'thickness: 1 mm'], '4.5 mm'], [['reference angle: 50°', 'edges: bare', 'thickness: ?'], '4.5 mm']] as const)('has none where %s with %s', (plate, focal) => {
    // Masked; less slant; a narrow beam; a thin edge: 1 mm · tan 50°/63 mm is 1.9 %.
    expect(found(lit(plate, focal), 'edge-light')).toEqual([]);
  });
});

describe('a bare edge on the table', () => {
  // Light from the laser along +x. A plate that faces 130° has its normal 50° off the way back, −x; its right, for somebody who looks at its face, is (−sin 130°, cos 130°) = (−0.77, −0.64): the light, which runs against that, meets the right edge.
  // Tipped back by 50°, its top leans away, to (sin 50°, 0, cos 50°): the lower edge stands nearer to the light, and faces it.
  const table = (plates: readonly string[]): Read => read(`setup "Oyster" {
  hologram: transmission
  laser red at (0, 0, 0) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 5 m
    beam diameter: 0.8 mm
  }
  splitter S1 at (200, 0, 0) mm
  spreader R1 at (300, 0, 0) mm {
    focal length: 4.5 mm
  }
${plates.map(p => `  ${p} {\n    size: 63 x 63 mm\n  }\n`).join('')}  object whelk at (1200, 400, 0) mm
  beam raw from red
    -> S1
  beam reference from S1 through
    -> R1
    -> P1
  beam object from S1 reflected
    -> whelk
    -> P1
}
`);
  it.each([['heading 130°', 'right'], ['heading 230°', 'left'], ['heading 180° tilted 50°', 'lower'], ['heading 180° tilted -50°', 'upper']])('of a plate with %s the %s one', (way, edge) => {
    const [f] = table([`plate P1 at (1300, 0, 0) mm ${way}`]).snapshot.findings.filter(x => x.code === 'edge-light');
    expect(f?.data['edge']).toBe(edge);
  });
});

describe('a face that looks at a plate', () => {
  const facing = (mirror: string, ...more: string[]): string[] => found(read(`setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    coherence length: 5 m
  }
  splitter S1 at (300, 0) mm
  mirror M1 at (900, 0) mm
  mirror M2 at ${mirror}
  object whelk at (500, 600) mm
  plate P1 at (700, 400) mm heading 90°
${more.map(l => `  ${l}\n`).join('')}  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> whelk
    -> P1
}
`), 'face-parallel');
  it.each([
    ['(700, 690) mm heading 270°', 1], ['(700, 690) mm heading 272.5°', 1], ['(720, 690) mm heading 270°', 1], ['(700, 690) mm heading 274°', 0], ['(700, 690) mm heading 90°', 0], ['(900, 690) mm heading 270°', 0],
    // the reference comes from below, the object light from above: both sides are lit; the back of a mirror sends nothing back
    ['(700, 150) mm heading 90°', 1], ['(700, 150) mm heading 270°', 0],
    // only its rim stands over the plate, 100 mm wide as it is assumed: 50 + 25 mm from the middle nothing is left
    ['(770, 690) mm heading 270°', 0],
  ])('a mirror at %s: %s', (mirror, n) => expect(facing(mirror)).toHaveLength(n));
  it.each([
    ['black card BC1 at (700, 550) mm heading 90°', 0], ['black card BC1 at (500, 550) mm heading 90°', 1], ['object pot at (700, 550) mm {\n    size: 150 x 150 x 50 mm\n  }', 0], ['object bead at (700, 550) mm {\n    size: 5 x 5 x 5 mm\n  }', 1], ['lens L1 at (700, 550) mm heading 92°', 2],
  ])('with %s between: %s', (thing, n) => expect(facing('(700, 690) mm heading 270°', thing)).toHaveLength(n));
  it('behind a plate that is lit from the front only sees none of its light', () => {
    const page = (y: number, heading: number): string[] => found(read(`setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  splitter S1 at (300, 0) mm
  mirror M1 at (900, 0) mm
  mirror M2 at (700, ${y}) mm heading ${heading}°
  object whelk at (500, 200) mm
  plate P1 at (700, 400) mm heading 270°
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> whelk
    -> P1
}
`), 'face-parallel');
    expect([page(150, 90), page(650, 270)]).toEqual([['note M2'], []]);
  });
});
