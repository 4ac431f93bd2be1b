/** What a finished hologram shows under its lamp; figures by hand. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { CHECKS } from '../../server/checks/registry.ts';
import type { Shown } from '../../server/results/replay/shown.ts';
import { read, serious, type Read } from './read.ts';

const DEGREE = Math.PI / 180;
interface Page { readonly hologram?: string; readonly object?: string; readonly gap?: number; readonly plate?: string; readonly lamp?: string; readonly viewer?: string; readonly more?: string }
const block = (head: string, facts: string): string => `  ${head} {\n${facts.split('; ').map(f => `    ${f}\n`).join('')}  }\n`;
const PLATE = 'reference angle: 45°; object angle: 0°; reference distance: 1000 mm';
const page = ({ hologram = 'transmission', object = 'depth: 40 mm', gap = 300, plate = PLATE, lamp = 'distance: 500 mm; angle: 45°; laser: red', viewer, more = '' }: Page): string => `setup "Limpet" {
  hologram: ${hologram}
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
${block('object limpet', object)}${block('plate P1', plate)}${lamp === '' ? '' : block('lamp spot', lamp)}${viewer === undefined ? '' : block('viewer visitor', viewer)}${more}  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> limpet: ${1500 - gap} mm
    -> P1: ${gap} mm
}
`;
const of = (p: Page): Read => read(page(p));
const only = (r: Read): Shown => r.results.replay.all[0]!;
const near = (v: number, digits = 6): number => expect.closeTo(v, digits) as number;

describe('where the image is', () => {
  it('a lamp too near: 1/R = 1/0.3 − 1/1 + 1/0.5 = 4.3333 per metre', () => {
    const r = of({});
    // 230.769 mm, 0.769231 times as wide, 0.591716 times as deep (a case of Meier’s formula that another program has worked out)
    expect([r.mm('P1.replay.place'), r.value('image size'), r.value('image depth'), r.value('image angle')]).toEqual([230.769, 0.769231, 0.591716, 0].map(v => near(v, 3)));
    // ends at 280 and 320 mm: 1/0.28 + 1 = 4.571429: 218.75 mm; 1/0.32 + 1 = 4.125: 242.424 mm
    expect([r.mm('P1.replay.near.place'), r.mm('P1.replay.far.place')]).toEqual([near(218.75, 6), near(242.424, 3)]);
    // in the plane of the beams, all but the object's light by cos² 45° = 1/2: 1/0.3 − 0.5 + 1 = 3.83333: 260.870 mm
    expect(r.mm('P1.replay.other place')).toBeCloseTo(260.87, 2);
  });
  it('in another colour of the lamp', () => {
    // 532/632.8 = 0.840708: sin = 0.840708 · (−0.707107) + 0.707107 = 0.112637: 6.4673°; diverging 1 m both times: 337.649 mm, 0.94622
    const r = of({ lamp: 'distance: 1000 mm; angle: 45°; wavelength: 532 nm' });
    expect([r.value('image angle') / DEGREE, r.mm('image place'), r.value('image size'), r.value('image colour') * 1e9]).toEqual([6.4673, 337.649, 0.94622, 532].map(v => near(v, 3)));
  });
  it('flipped in the beam that recorded it, 750 mm before it and 2.5 times as wide', () => {
    const r = of({ lamp: 'distance: 1000 mm; angle: 45°; laser: red; hung: flipped' });
    expect([r.mm('image place'), r.value('image size'), r.value('image depth')]).toEqual([-750, 2.5, -6.25].map(v => near(v, 6)));
    expect([only(r).hung.depth, serious(r.snapshot.findings).map(f => f.split(' ')[1])]).toEqual(['pseudoscopic', ['master-in-diverging-beam']]);
  });
  it('flipped in its reference run backwards, where the object stood', () => {
    const r = of({ lamp: 'distance: 1000 mm; angle: 45°; laser: red; beam: converging; hung: flipped' });
    expect([r.mm('image place'), r.value('image size')]).toEqual([near(-300), near(1)]);
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  it('an object in the plate is shown in the plate', () => {
    const r = of({ gap: 0.001, object: 'tone: 50%' });
    expect([r.mm('image place'), r.value('image size')]).toEqual([near(0, 2), near(1, 2)]);
  });
  it('as unsure as what it rests on', () => {
    // dR/dR_C = R²/R_C² = (0.230769/0.5)² = 0.213018; half-width 20 mm: 20/√3 · 0.213018 = 2.4597 mm
    expect(of({ lamp: 'distance: 500 mm ± 20 mm; angle: 45°; laser: red' }).u('image place') * 1e3).toBeCloseTo(2.4597, 3);
  });
  test('parallel light both times leaves it alone', () => {
    expect(of({ plate: 'reference angle: 45°; object angle: 0°; reference distance: parallel', lamp: 'distance: 1 m; angle: 45°; laser: red; beam: parallel' }).mm('image place')).toBeCloseTo(300, 6);
  });
});

describe('colour', () => {
  const shrunk = (percent: string, more = ''): Read => of({ hologram: 'reflection', gap: 60, plate: `${PLATE}; index: 1.52; shrinkage: ${percent}${more}`, lamp: 'distance: 1 m; angle: 45°' });
  it.each([['10%', '', 569.19, 4.076], ['15%', '', 537.174, 6.134], ['0%', '', 632.8, 0], ['1%', '; pre-swell: 10%', 569.19, 4.076]])('a layer that loses %s%s', (percent, more, colour, out) => {
    // 0.99/1.1 = 0.9
    const r = shrunk(percent, more);
    expect([r.value('image colour') * 1e9, r.value('image angle') / DEGREE]).toEqual([near(colour, 2), near(out, 2)]);
  });
  it('which nobody knows is a band, and no finding', () => {
    const r = of({ hologram: 'reflection', gap: 60, plate: `${PLATE}; index: 1.52`, lamp: 'distance: 1 m; angle: 45°' });
    expect(r.u('image colour') * 1e9).toBeGreaterThan(20);
    expect(serious(r.snapshot.findings).filter(f => f.includes('colour'))).toEqual([]);
  });
  it('of white light through a rainbow hologram as the eye stands: 532 nm at 6.4673° on the far side of the lamp', () => {
    const r = of({ hologram: 'rainbow', lamp: 'distance: 1 m; angle: 45°', viewer: 'distance: 400 mm; angle: -6.4673°' });
    expect(r.value('image colour') * 1e9).toBeCloseTo(532, 2);
  });
});

describe('sharpness', () => {
  it('a lamp of 3 mm at 1.5 m blurs what stands 50 mm off by 0.0707 mm at 45°', () => {
    const r = of({ gap: 50, object: 'tone: 50%', plate: 'reference angle: 45°; object angle: 0°; reference distance: 1500 mm', lamp: 'distance: 1500 mm; angle: 45°; size: 3 mm; laser: red' });
    expect(r.mm('image blur')).toBeCloseTo(0.0707, 4);
  });
  it('a band of colours besides, as squares', () => {
    // 1.117425 mrad/nm · 10 nm · 50 mm = 0.558713 mm; √(0.558713² + 0.070711²) = 0.563170 mm
    const r = of({ gap: 50, object: 'tone: 50%', plate: 'reference angle: 45°; object angle: 0°; reference distance: 1500 mm', lamp: 'distance: 1500 mm; angle: 45°; size: 3 mm; wavelength: 632.8 nm; bandwidth: 10 nm' });
    expect(r.mm('image blur')).toBeCloseTo(0.56317, 4);
  });
});

describe('aberrations of light that is not that of the recording', () => {
  const example = (code: string): string => CHECKS.find(c => c.code === code)!.example;
  it('upright and level lines are sharp at different distances, and no eye is for both', () => {
    const r = read(example('image-astigmatic'));
    // m = −1, 150 mm before: −1/0.15 + 1/3 = −6.33333: −157.895 mm; in the plane, cos² 60° = 1/4 of the lamp: −1/0.15 + 1/12 = −6.58333: −151.899 mm.
    expect([r.mm('P2.replay.place'), r.mm('P2.replay.other place')]).toEqual([near(-157.895, 3), near(-151.899, 3)]);
    // From 300 mm: v = 142.105 and 148.101 mm, 7.03704 − 6.75213 = 0.28491 dpt; 2 mm · that · 142.105 mm = 0.080973 mm.
    expect(r.mm('P2.replay.astigmatic blur')).toBeCloseTo(0.080973, 5);
    expect(r.snapshot.findings.filter(f => f.code === 'image-astigmatic').map(f => f.severity)).toEqual(['note']);
    // One minute of arc at 142.105 mm is 0.0413 mm.
    expect(r.snapshot.findings.find(f => f.code === 'image-astigmatic')!.data['beside']).toBeCloseTo(0.080973 / 0.041337, 1);
  });
  it('and none in the light of the recording, whatever the angle', () => {
    const r = read(example('image-astigmatic').replace('distance: 3 m', 'distance: 3 m\n    beam: parallel'));
    expect(r.mm('P2.replay.astigmatic blur')).toBeCloseTo(0, 9);
    expect(r.snapshot.findings.map(f => f.code)).not.toContain('image-astigmatic');
  });
  it('a lamp that is off by more has its own finding, and no second one', () => {
    const r = read(example('image-astigmatic').replace('distance: 3 m', 'distance: 600 mm'));
    expect(r.snapshot.findings.map(f => f.code)).toContain('lamp-distance-off');
    expect(r.snapshot.findings.map(f => f.code)).not.toContain('image-astigmatic');
  });
  it('off the image of the slit a rainbow hologram has bands of colours', () => {
    const at = (mm: number): Read => read(example('viewer-off-slit').replace('distance: 700 mm', `distance: ${mm} mm`));
    // −1/0.3 + 1/3 = −3: the slit is imaged 333.333 mm before the plate, 1.1111 times as wide. 100 mm · (1 − 333.333/700) / 1.1111 = 47.143 mm; 632.8 nm · 47.143/(300 sin 45°) = 140.63 nm.
    expect(at(700).value('P2.replay.colours over the plate') * 1e9).toBeCloseTo(140.63, 1);
    // Nearer, at 250 mm: 100 · 0.33333 / 1.1111 = 30 mm: 89.49 nm.
    expect(at(250).value('P2.replay.colours over the plate') * 1e9).toBeCloseTo(89.49, 1);
    expect([700, 350, 333].map(mm => at(mm).snapshot.findings.some(f => f.code === 'viewer-off-slit'))).toEqual([true, false, false]);
  });
});

describe('the view', () => {
  it('through a plate of 102 mm, 300 mm before the image', () => {
    const r = of({ object: 'size: 40 x 30 mm', plate: `${PLATE}; size: 102 x 127 mm`, lamp: 'distance: 1000 mm; angle: 45°; laser: red', viewer: 'distance: 600 mm' });
    // 2 arctan(51/300) = 19.297°; (102 · 900 − 40 · 600)/300 = 226 mm
    expect([r.value('P1.replay.parallax') / DEGREE, r.mm('P1.replay.viewing zone')]).toEqual([near(19.297, 2), near(226, 6)]);
  });
  it('of a plate that stood on its side, through its other side', () => {
    const r = of({ object: 'size: 40 x 30 mm', plate: `${PLATE}; size: 102 x 127 mm; up: left`, lamp: 'distance: 1000 mm; angle: 45°; laser: red', viewer: 'distance: 600 mm' });
    // 2 arctan(63.5/300) = 23.906°; (127 · 900 − 30 · 600)/300 = 321 mm
    expect([r.value('P1.replay.parallax') / DEGREE, r.mm('P1.replay.viewing zone')]).toEqual([near(23.906, 2), near(321, 6)]);
  });
});

describe('how it hangs', () => {
  const side = (plate: string, lamp = ''): string | undefined => only(of({ plate: `${PLATE}; ${plate}`, lamp: `distance: 1 m; angle: 45°; laser: red${lamp}` })).hung.from;
  it.each([['reference from: above; up: up', '', 'above'], ['reference from: above; up: down', '', 'below'], ['reference from: above; up: up', '; hung: flipped', 'below'], ['reference from: above', '', undefined], ['up: up', '', undefined]])('%s%s', (plate, lamp, from) => { expect(side(plate, lamp)).toBe(from); });
  it.each([['toward the object', '', false], ['away from the object', '', true], ['toward the object', '; hung: flipped', true], ['toward the reference', '', false]])('emulsion %s%s', (emulsion, lamp, front) => {
    expect(only(of({ plate: `${PLATE}; emulsion: ${emulsion}`, lamp: `distance: 1 m; angle: 45°; laser: red${lamp}` })).hung.layerFront).toBe(front);
  });
  it('two lamps of one plate have figures of their own', () => {
    const r = of({ more: block('lamp window', 'distance: 1500 mm; angle: 45°; laser: red') });
    // 1/0.3 − 1 + 1/1.5 = 3 per metre: 333.333 mm
    expect([r.mm('P1.replay.place'), r.mm('P1.replay by window.place')]).toEqual([near(230.769, 3), near(333.333, 3)]);
  });
});

it('without a lamp there is nothing', () => {
  const r = of({ lamp: '' });
  expect([r.results.replay.all, r.results.graph.cells.filter(c => c.name.includes('replay'))]).toEqual([[], []]);
});
it('what is not known is named', () => {
  const r = of({ plate: 'reference angle: 45°' });
  expect(only(r).image!.size.missing?.why).toContain('reference distance');
});
it('no figure of any lamp is not a number, and nothing throws', () => {
  const number = fc.constantFrom('0.001', '1', '1000', '1e6', '45', '89.999', '-45', '180', '?');
  fc.assert(fc.property(number, number, number, fc.constantFrom('diverging', 'parallel', 'converging'), fc.constantFrom('as recorded', 'flipped'), fc.constantFrom('transmission', 'reflection', 'rainbow'), fc.constantFrom('', '; wavelength: 500 nm', '; laser: red'), (d, a, v, beam, hung, hologram, colour) => {
    const r = of({ hologram, plate: `${PLATE}; material: ultra-fine silver halide; size: 63 x 63 mm; up: up`, lamp: `distance: ${d} mm; angle: ${a}°; size: 3 mm; beam: ${beam}; hung: ${hung}${colour}`, viewer: `distance: ${v} mm; angle: ${a}°` });
    for (const c of r.results.graph.cells) { const x = r.results.graph.value(c); if (x !== undefined) expect(Number.isFinite(x), c.name).toBe(true); }
    for (const f of r.snapshot.findings) expect(f.message).not.toMatch(/NaN|undefined|Infinity/);
  }), { numRuns: 150 });
});
