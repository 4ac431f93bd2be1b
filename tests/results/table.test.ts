/** What stands on the table and in whose way: worked layouts, held against plain trigonometry shown beside each; mirrored and turned tables; sizes of nothing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Finding } from '../../server/checks/check.ts';
import { KINDS } from '../../server/model/things/index.ts';
import { disk, EXAMPLES, PUBLISHED } from '../examples/library.ts';
import { expectNear, read, setup } from './read.ts';

const CODES = ['leg-blocked', 'off-the-table', 'output-unused', 'plate-missed', 'reference-on-object', 'table-too-full', 'beam-clipped', 'pinhole-unfit', 'things-overlap', 'mirror-in-line', 'plate-turned-round'];
const ofTable = (text: string): Finding[] => analyse('file:///saltmarsh/setup.plate', text).findings.filter(f => CODES.includes(f.code));
const said = (text: string): string[] => ofTable(text).map(f => `${f.severity} ${f.code} ${f.subject}`).sort();
const LASER = ['laser red at (60, 100) mm heading 0° {', '  wavelength: 632.8 nm', '  coherence length: 20 m', '  beam diameter: 0.8 mm', '}'];
const block = (line: string, ...facts: string[]): string => [`${line} {`, ...facts.map(f => `  ${f}`), '}'].join('\n  ');

/** A layout that can be turned about and mirrored: every place and heading goes through `at` and `heading`. */
interface Turned { readonly at: (x: number, y: number) => string; readonly heading: (degrees: number) => string }
const AS_IS: Turned = { at: (x, y) => `at (${x}, ${y}) mm`, heading: d => `heading ${d}°` };
function turned(by: number, mirrored: boolean, [dx, dy]: readonly [number, number] = [0, 0]): Turned {
  const a = (by * Math.PI) / 180;
  const s = mirrored ? -1 : 1;
  return { at: (x, y) => `at (${(x * Math.cos(a) - s * y * Math.sin(a) + dx).toFixed(9)}, ${(x * Math.sin(a) + s * y * Math.cos(a) + dy).toFixed(9)}) mm`, heading: d => `heading ${s * d + by}°` };
}

/** Off-axis transmission master, object lit from the front (common practice): splitter (350, 100), M1 (1100, 100), M2 (94, 420), M3 (400, 640), object (700, 400), plate (700, 700). */
const master = ({ at, heading }: Turned, ...more: string[]): string => setup(
  LASER[0]!.replace('at (60, 100) mm heading 0°', `${at(60, 100)} ${heading(0)}`), ...LASER.slice(1), `splitter S1 ${at(350, 100)}`, `mirror M1 ${at(1100, 100)}`, `mirror M2 ${at(94, 420)}`, `mirror M3 ${at(400, 640)}`,
  block('spreader R1 on M1 -> P1 by 60 mm', 'focal length: 4.5 mm'), block(`object whelk ${at(700, 400)}`, 'size: 40 x 60 x 35 mm'), block(`plate P1 ${at(700, 700)} facing whelk`, 'size: 63 x 63 mm'),
  'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> R1', '  -> P1', 'beam object from S1 reflected', '  -> M2', '  -> M3', '  -> whelk', '  -> P1', ...more,
);

describe('worked layouts have nothing in the way', () => {
  test('the master', () => { expect(said(master(AS_IS))).toEqual([]); });
  test.each([...EXAMPLES, ...PUBLISHED].map(p => [p.name, p] as const))('%s', (_, page) => { expect(analyse(page.uri, page.text, disk).findings.filter(f => CODES.includes(f.code)).map(f => f.message)).toEqual([]); });
});

describe('legs', () => {
  test('pass things by as far as geometry says: the reference passes the middle of the object at 166 mm', () => {
    // From R1 towards (700, 700) the way is (−400, 600)/721.11; (700, 400) lies 300 · 400/721.11 = 166.41 mm beside it. The whelk is 40 mm wide and 35 deep:
    // its nearest corner lies (20 · 600 + 17.5 · 400)/721.11 = 26.35 mm nearer.
    const { results } = read(master(AS_IS));
    expectNear(results.graph.value(results.ask('reference.3.distance from whelk')!)! * 1000, 166.41 - (20 * 600 + 17.5 * 400) / 721.11, 0.01);
    expectNear(results.graph.value(results.ask('reference.3.clearance')!)!, Math.min(...[...results.setup.things.keys()].filter(t => !['R1', 'P1'].includes(t)).map(t => results.graph.value(results.ask(`reference.3.distance from ${t}`)!)!)), 1e-12);
  });
  test('the object beam of a split-beam layout passes the edge of a plate of 127 mm', () => {
    // (620, 760) → (780, 500) crosses x = 700 at y = 630, far above the plate's edge at 500 + 63.5; with the holder of 10 mm there are 56.5 mm along the plate.
    // Square to the beam, whose direction is (160, −260)/305.3: 56.5 · 160/305.3 = 29.6 mm; the holder is 15 mm deep, and its corner lies 7.5 · 260/305.3 = 6.4 mm nearer: 23.2 mm.
    const text = setup('laser red at (60, 200) mm heading 0°', 'splitter S1 at (150, 200) mm', 'mirror Ma at (150, 675.5) mm', 'mirror Mr at (450, 250) mm', 'mirror Mo1 at (550, 200) mm', 'mirror Mo2 at (620, 760) mm', 'object scene at (780, 500) mm', block('plate P1 at (700, 500) mm heading 180°', 'size: 127 x 102 mm'),
      'beam raw from red', '  -> S1', 'beam reference from S1 reflected', '  -> Ma', '  -> Mr', '  -> P1', 'beam object from S1 through', '  -> Mo1', '  -> Mo2', '  -> scene', '  -> P1');
    const { results } = read(text);
    expectNear(results.graph.value(results.ask('object.3.clearance')!)! * 1000, (56.5 * 160 - 7.5 * 260) / Math.hypot(160, 260), 1e-6);
    expect(said(text)).toEqual([]);
  });
  test('a card of 60 mm in the middle of the reference blocks it; 20 mm beside the light for the plate it does not', () => {
    const at = (off: number): string => master(AS_IS, block(`black card BC1 at (${(900 - off * 600 / 721.11).toFixed(3)}, ${(400 - off * 400 / 721.11).toFixed(3)}) mm facing P1`, 'size: 60 x 150 mm'));
    expect(said(at(0))).toEqual(['warning leg-blocked reference.3 BC1']);
    // Half-way, 300 mm behind the lens, the light for a plate of 63 mm is 2 · 31.5 · 300/661 = 29 mm wide: 14.3 mm and half of the card, 30 mm, with the room of 5 mm for its slant.
    expect(said(at(55))).toEqual([]);
    const [half] = ofTable(at(38));
    expect(half).toMatchObject({ code: 'leg-blocked', subject: 'reference.3 BC1', data: { axis: false, sure: true } });
  });
  test('of a thing whose size is not written its mount counts, as a note', () => {
    // A mirror of 50 mm with 8 mm of mount round it reaches 33 mm from its middle.
    const page = (y: number, ...facts: string[]): string => setup('laser red at (0, 0) mm heading 0°', block(`mirror M9 at (500, ${y}) mm heading 180°`, ...facts), 'beam stop B1 at (900, 0) mm', 'beam raw from red', '  -> B1', 'accept unused-thing "spare"');
    expect(said(page(32))).toEqual(['note leg-blocked raw.1 M9']);
    expect(said(page(34))).toEqual([]);
    expect(said(page(24, 'diameter: 50 mm'))).toEqual(['warning leg-blocked raw.1 M9']);
    expect(said(page(28, 'diameter: 50 mm'))).toEqual(['note leg-blocked raw.1 M9']);
    expect(said(page(0))).toEqual(['warning leg-blocked raw.1 M9']);
  });
  test('shadows: of the object on the plate, and of the plate holder on the object', () => {
    // Half-way of the reference from R1 (1066.7, 149.9) to (700, 700) lies (883, 425): there the object stands in it. So does its post, where it hangs higher.
    expect(said(master(AS_IS).replace('object whelk at (700, 400) mm', 'object whelk at (870, 440) mm').replace('facing whelk', 'heading 270°'))).toContain('warning leg-blocked reference.3 whelk');
    expect(said(master(AS_IS).replace('object whelk at (700, 400) mm', 'object whelk at (883, 425, 220) mm').replace('facing whelk', 'heading 270°'))).toContain('note leg-blocked reference.3 whelk');
    // Light that comes over the plate from (640, 900): at the plate, y 700, it is at x 664; the glass begins at 668.5 mm, its holder, 10 mm wider, at 658.5.
    expect(said(master(AS_IS).replace('mirror M3 at (400, 640) mm', 'mirror M3 at (640, 900) mm'))).toContain('note leg-blocked object.3 P1');
    expect(said(master(AS_IS).replace('mirror M3 at (400, 640) mm', 'mirror M3 at (680, 900) mm'))).toContain('warning leg-blocked object.3 P1');
  });
  test('what the give of the places leaves open is undecided, and says by how much', () => {
    // A written mirror of 50 mm stands y mm beside a beam without width; square to it, 25 mm of its face reach towards the beam. Its y is sure to ± 4 mm, a standard uncertainty of 4/√3 mm (GUM 4.3.7): the 95 % band is ± 4.6 mm.
    const page = (y: number, give = ' ± 4 mm'): string => setup('laser red at (0, 0) mm heading 0°', block(`mirror M9 at (500 mm, ${y} mm${give})`, 'diameter: 50 mm').replace(') {', ') heading 180° {'), 'beam stop B1 at (900, 0) mm', 'beam raw from red', '  -> B1', 'accept unused-thing "spare"', 'accept eye-caution "x"').replace('  accept eye-caution "x"\n', '');
    const one = (y: number, give?: string): Finding | undefined => ofTable(page(y, give)).find(f => f.code === 'leg-blocked');
    // Surely in the way; by 3 mm of ± 4.6 in it; the same without a give is no question; the mount of the usual size, 8 mm, passes it by 2 mm; 6 mm beyond that is far enough.
    expect(one(10)).toMatchObject({ severity: 'warning', data: { undecided: false, sure: true } });
    expectNear(Number(one(10)!.data['give']) * 1000, 8 / Math.sqrt(3), 0.05);
    expectNear(Number(one(10)!.data['gap']) * 1000, -15, 0.05);
    expect(one(22)).toMatchObject({ severity: 'note', data: { undecided: true, sure: true } });
    expect(one(22)!.message).toContain('runs 3 ± 5 mm into mirror M9');
    expect(one(22, '')).toMatchObject({ severity: 'warning', data: { undecided: false } });
    expect(one(35)).toMatchObject({ severity: 'note', data: { undecided: true, sure: false } });
    expect(one(35)!.message).toMatch(/passes mirror M9 by 2 ± 5 mm, 500 mm behind red and with a mount of the usual size: whether it is cut is undecided\. Measure where they stand, or put M9 2\.?\d* mm farther from the light\./);
    expect(one(35, '')).toBeUndefined();
    expect(one(39)).toBeUndefined();
  });
  test('a post stands in a beam below its thing', () => {
    const page = (z: number, y: number): string => setup('beam height: 120 mm', 'laser red at (0, 0) mm heading 0°', `mirror M9 at (500, ${y}, ${z}) mm heading 180°`, 'beam stop B1 at (900, 0) mm', 'beam raw from red', '  -> B1', 'accept unused-thing "spare"');
    expect(said(page(220, 5))).toEqual(['note leg-blocked raw.1 M9']);
    // 6.35 mm is half of its thickness; and what stands below the beam has its post below it too.
    expect(said(page(220, 7))).toEqual([]);
    expect(said(page(60, 0))).toEqual([]);
  });
  test('light is led through what a leg names', () => {
    const page = (...legs: string[]): string => setup('laser red at (0, 0) mm heading 0°', 'polarizer LP1 at (500, 0) mm', 'beam stop B1 at (900, 0) mm', 'beam raw from red', ...legs.map(l => `  -> ${l}`), 'accept unused-thing "spare"');
    expect(said(page('LP1', 'B1'))).toEqual([]);
    expect(said(page('B1'))).toEqual(['warning leg-blocked raw.1 LP1']);
    expect(ofTable(page('B1'))[0]!.message).toContain('name it as a leg');
  });
});

describe('the table may lie any way', () => {
  const spoilt = (t: Turned): string => master(t, block(`black card BC1 ${t.at(880, 430)} ${t.heading(120)}`, 'size: 60 x 150 mm'), block(`mirror M9 ${t.at(725, 560)} ${t.heading(10)}`, 'diameter: 25 mm'), `splitter S9 ${t.at(94, 800)}`, 'accept unused-thing "spare"');
  const expected = said(spoilt(AS_IS));
  test('what is found is something', () => { expect(expected.length).toBeGreaterThan(1); });
  test('turned, mirrored and moved', () => {
    fc.assert(fc.property(fc.integer({ min: -180, max: 180 }), fc.boolean(), fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 })), (by, mirrored, to) => {
      expect(said(spoilt(turned(by, mirrored, to)))).toEqual(expected);
    }), { numRuns: 40 });
  });
  test('and distances are the same', () => {
    const d = (t: Turned): number => { const { results } = read(master(t)); return results.graph.value(results.ask('reference.3.clearance')!)!; };
    for (const t of [turned(90, false), turned(33, true), turned(-120, true, [200, 30])]) expectNear(d(t), d(AS_IS), 1e-9);
  });
  test('mount angles turn with it', () => {
    // Light along +x that goes on along +y leaves a mirror that faces 135°.
    const page = (by: number): string => { const { at, heading } = turned(by, false); return setup(`laser red ${at(0, 0)} ${heading(0)}`, `mirror M1 ${at(500, 0)}`, `beam stop B1 ${at(500, 400)}`, 'beam raw from red', '  -> M1', '  -> B1'); };
    for (const by of [0, 20, -60]) { const { results } = read(page(by)); expectNear((results.graph.value(results.ask('M1.mount angle')!)! * 180) / Math.PI, 135 + by, 1e-6); }
  });
});

describe('the edge of the table', () => {
  const page = (x: number, more = ''): string => setup('table: 1200 x 900 mm', 'laser red at (60, 100) mm heading 0°', `mirror M1 at (${x}, 100) mm`, `beam stop B1 at (${x}, 1000) mm`, 'beam raw from red', '  -> M1', '  -> B1', more);
  test('a mirror beyond it is a warning, a stop none', () => { expect([1199, 1200, 1201].map(x => said(page(x)))).toEqual([[], [], ['warning off-the-table M1']]); });
  test('how far', () => { expect(ofTable(page(1250))[0]!.message).toContain('50 mm beside the table'); });
  test('a shutter on a stand of its own may stand where it likes', () => { expect(said(page(1000, 'shutter gate at (-80, 100) mm'))).toEqual([]); });
  test('without a table nothing is said', () => { expect(said(page(1250).replace('table: 1200 x 900 mm', ''))).toEqual([]); });
});

describe('faces', () => {
  /** A narrow beam: the laser is told to be wide. */
  const narrow = (diameter: number, angle: number): string => {
    const a = (angle * Math.PI) / 180;
    return setup('laser red at (0, 0) mm heading 0° {', '  wavelength: 632.8 nm', '  coherence length: 20 m', '  beam diameter: 20 mm', '}', block('mirror M1 at (500, 0) mm', `diameter: ${diameter} mm`), block(`object whelk at (${(500 - 400 * Math.cos(2 * a)).toFixed(6)}, ${(400 * Math.sin(2 * a)).toFixed(6)}) mm`, 'size: 40 x 40 x 10 mm'),
      block('plate P1 at (300, 900) mm facing whelk', 'size: 63 x 63 mm'), 'beam all from red', '  -> M1', '  -> P1 through', '  -> whelk', '  -> P1').replace('  -> P1 through\n    -> whelk', '  -> whelk').replace('    -> P1 through\n', '');
  };
  test('a round face at a slant catches what an oval does', () => {
    // w = 10 mm (z_R = π w²/λ = 496 m), 20 mm across: squarely 1 − exp(−2 · (10/10)²) = 0.8647 (Siegman 1986, ch. 17); at 0.1° as good as squarely.
    const r = read(narrow(20, 0.1)).results;
    expectNear(r.graph.value(r.ask('all.1.landing share')!)!, 0.864665, 2e-5);
    // At 60° the face is 10 × 20 mm as seen from the beam: ∫ over the ellipse by midpoint sums in the test.
    const s = read(narrow(20, 60)).results;
    let sum = 0;
    const step = 0.02;
    for (let x = -5 + step / 2; x < 5; x += step) for (let y = -10 + step / 2; y < 10; y += step) if ((x / 5) ** 2 + (y / 10) ** 2 < 1) sum += (2 / (Math.PI * 100)) * Math.exp((-2 * (x * x + y * y)) / 100) * step * step;
    expectNear(s.graph.value(s.ask('all.1.landing share')!)!, sum, 2e-4);
  });
  test('are findings below 97 %, warnings below 80 %', () => {
    // 1 − exp(−2 (a/10)²): 26 mm across 0.9660, 28 mm 0.9802, 17 mm 0.7643
    expect([28, 26, 17].map(d => said(narrow(d, 0.1)).filter(s => s.includes('beam-clipped')))).toEqual([[], ['note beam-clipped all.1 M1'], ['warning beam-clipped all.1 M1']]);
  });
  test('behind a spreading lens what the plate needs has to fit, and no more', () => {
    const page = (diameter: number): string => setup('laser red at (0, 0) mm heading 0° {', '  wavelength: 632.8 nm', '  coherence length: 20 m', '  beam diameter: 0.8 mm', '}', 'splitter S1 at (200, 0) mm', block('spreader R1 at (400, 0) mm', 'focal length: 4.5 mm'), block('mirror M1 at (900, 0) mm', `diameter: ${diameter} mm`), 'mirror M2 at (200, 300) mm',
      block('object whelk at (700, 300) mm', 'size: 20 x 20 x 10 mm'), block('plate P1 at (900, 500) mm heading 270°', 'size: 60 x 60 mm'), 'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> R1', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> M2', '  -> whelk', '  -> P1');
    // From the focus, 4.5 mm behind the lens, it is 495.5 mm to the mirror and 995.5 mm to the plate: of 60 mm there are 29.86 mm at the mirror, at 45° 42.2 mm along it; both ways √(42.2² + 29.86²) = 51.7 mm.
    const r = read(page(40)).results;
    const reached = r.graph.value(r.ask('reference.2.reach')!)!;
    const at = (60 * 495.5) / 995.5;
    expectNear(40 / reached / Math.hypot(at * Math.SQRT2, at), 1, 2e-3);
    expect([40, 52, 60].map(d => said(page(d)).filter(s => s.includes('clipped')))).toEqual([['warning beam-clipped reference.2 M1'], [], []]);
  });
});

describe('pinholes', () => {
  const page = (pinhole: string, more = 'beam diameter: 0.8 mm'): string => `setup "Cockle" {\n  hologram: reflection\n  laser red {\n    wavelength: 632.8 nm\n    coherence length: 20 m\n    ${more}\n  }\n  spreader R1 {\n    focal length: 16.5 mm\n    pinhole: ${pinhole}\n  }\n  plate P1\n  object cockle {\n    depth: 20 mm\n  }\n  beam all from red\n    -> R1: 1 mm\n    -> P1 through: 900 mm\n    -> cockle: 12 mm\n    -> P1: 12 mm\n}\n`;
  test('the one to choose: 16.5 mm at a radius of 0.4 mm wants 33.93 µm (an optics supplier’s tutorial)', () => {
    const r = read(page('25 µm')).results;
    expectNear(r.graph.value(r.ask('R1.pinhole to choose')!)! * 1e6, 33.93, 0.01);
  });
  test('too small, fitting, and too wide', () => { expect(['20 µm', '27 µm', '34 µm', '100 µm', '105 µm'].map(p => said(page(p)).length)).toEqual([1, 0, 0, 0, 1]); });
  test('of a beam whose width is a guess only what is surely wrong is said', () => {
    expect(said(page('20 µm', 'power: 5 mW'))).toEqual([]);
    expect(said(page('5 µm', 'power: 5 mW'))).toEqual(['note pinhole-unfit R1']);
  });
  test('a lens without a focus', () => { expect(ofTable(page('25 µm').replace('16.5 mm', '-16.5 mm'))[0]!.message).toContain('no place'); });
});

describe('stray light', () => {
  const page = (...more: string[]): string => setup('laser red at (0, 0) mm heading 0°', 'splitter S1 at (300, 0) mm', 'beam stop B1 at (300, 400) mm', 'beam raw from red', '  -> S1', 'beam turned from S1 reflected', '  -> B1', ...more);
  test('an output that no beam uses', () => { expect(said(page())).toEqual(['note output-unused S1']); });
  test('a stop or card in its way is what was asked for', () => {
    expect(said(page('beam stop B2 at (600, 0) mm'))).toEqual([]);
    expect(said(page('black card B2 at (600, 20) mm heading 180°'))).toEqual([]);
    expect(said(page('black card B2 at (600, 60) mm heading 180°'))).toEqual(['note output-unused S1']);
    expect(said(page('beam stop B2'))).toEqual([]);
  });
  test('where it falls on a plate it fogs it', () => { expect(ofTable(page('plate P1 at (700, 0) mm heading 180°', 'accept unused-thing "x"')).map(f => `${f.severity} ${f.code} ${String(f.data['on'])}`)).toEqual(['warning output-unused P1']); });
  test('reference light on the object, until a card keeps it off', () => {
    // The lens of 2.9 mm spreads 0.66 mm of radius to 0.66 · 600/2.9 = 137 mm at 600 mm; the object begins within that.
    const spill = (...more: string[]): string => master(AS_IS, ...more).replace('focal length: 4.5 mm', 'focal length: 2.9 mm').replace('at (700, 400) mm {', 'at (760, 430) mm {').replace('facing whelk', 'heading 270°');
    const [f] = ofTable(spill()).filter(x => x.code === 'reference-on-object');
    expect(f).toMatchObject({ severity: 'note', subject: 'whelk' });
    const [x, y] = [Number(f!.data['x']) * 1000, Number(f!.data['y']) * 1000];
    // A card beyond that edge, along the line from R1 to the whelk.
    const [rx, ry] = [1066.72, 149.92];
    const [ux, uy] = [(x - rx) / Math.hypot(x - rx, y - ry), (y - ry) / Math.hypot(x - rx, y - ry)];
    const card = block(`black card BC1 at (${(x - 28 * uy * Math.sign(uy) ).toFixed(1)}, ${(y + 28 * ux * Math.sign(uy)).toFixed(1)}) mm heading ${((Math.atan2(uy, ux) * 180) / Math.PI).toFixed(1)}°`, 'size: 60 x 150 mm');
    expect(said(spill(card))).toEqual([]);
  });
  test('in single-beam nothing is said of it', () => {
    const page = EXAMPLES.find(e => e.name.endsWith('single-beam-oyster.plate'))!;
    expect(analyse(page.uri, page.text, disk).findings.filter(f => f.code === 'reference-on-object')).toEqual([]);
  });
});

describe('what makes no sense', () => {
  const numbers = (text: string): void => {
    const { results, findings } = analyse('file:///x.plate', text);
    for (const r of results) for (const c of r.graph.cells) expect(Number.isFinite(r.graph.value(c) ?? 0), c.name).toBe(true);
    for (const f of findings) expect(`${f.message} ${JSON.stringify(f.data)}`).not.toMatch(/NaN|Infinity|undefined/);
  };
  test.each([
    ['a plate of nothing', master(AS_IS).replace('63 x 63', '0 x 0')], ['a whelk of nothing', master(AS_IS).replace('40 x 60 x 35', '0 x 0 x 0')], ['a focal length of nothing', master(AS_IS).replace('4.5 mm', '0 mm')],
    ['all at one place', master({ at: () => 'at (0, 0) mm', heading: d => `heading ${d}°` })], ['a table of nothing', master(AS_IS, 'table: 0 x 0 mm')], ['half a card', master(AS_IS, 'black card BC1 at (700, 550) mm {', '  size: 60 x', '}')],
    ['a splitter that its own beam comes back to', setup('laser red at (0, 0) mm', 'splitter S1 at (100, 0) mm', 'beam raw from red', '  -> S1', 'beam a from S1 through', '  -> S1')],
    ['a whelk as large as the room', master(AS_IS).replace('40 x 60 x 35 mm', '40 x 60 x 35 m')], ['places without end', master({ at: (x, y) => `at (${x}e12, ${y}e12) mm`, heading: d => `heading ${d}°` })],
  ])('%s', (_, text) => { numbers(text); });
  test('every kind says what stands on the table, or that nothing does', () => {
    for (const k of KINDS) { expect('footprint' in k, k.word).toBe(true); if (k.footprint) for (const v of [...k.footprint.assumed, k.footprint.depth]) expect(v, k.word).toBeGreaterThan(0); }
    expect(KINDS.filter(k => !k.footprint).map(k => k.word)).toEqual(['exposure', 'lamp', 'viewer', 'wall', 'room', 'meter', 'string']);
  });
  test('a setup without places makes no cell for its table', () => {
    const text = 'setup "x" {\n  laser red\n  mirror M1\n  beam stop B1\n  beam raw from red\n    -> M1: 100 mm\n    -> B1: 100 mm\n}\n';
    expect(analyse('file:///x.plate', text).results[0]!.graph.cells.filter(c => /face|mount|clearance|distance from/.test(c.name))).toEqual([]);
  });
});

describe('things in one another', () => {
  const page = (second: string, ...facts: string[]): string => setup(...LASER, 'splitter S1 at (350, 100) mm', facts.length > 0 ? block(`beam stop B1 ${second}`, ...facts) : `beam stop B1 ${second}`, 'beam raw from red', '  -> S1');
  // Posts are 12.7 mm thick (common practice): two things 5 mm apart would have to be 7.7 mm farther off, whatever their sizes are.
  test('by their posts, where no size is written; legs of the one are not blocked besides', () => {
    const [one, ...more] = ofTable(page('at (355, 100) mm'));
    expect([one, more]).toMatchObject([{ code: 'things-overlap', subject: 'B1 S1', severity: 'warning', data: { sure: true, undecided: false } }, []]);
    expectNear(Number(one!.data['gap']), -7.7e-3, 1e-9);
  });
  test('undecided by the give of their places, with as much as has to be measured', () => {
    const found = ofTable(page('at (355 ± 10, 100) mm')).find(f => f.code === 'things-overlap');
    expect(found).toMatchObject({ severity: 'note', data: { undecided: true } });
    // ± 10 mm is anywhere within: a standard uncertainty of 10/√3 mm (GUM 4.3.7), and twice that is half of the 95 % band.
    expectNear(Number(found!.data['give']), (2 * 10e-3) / Math.sqrt(3), 1e-9);
  });
  test('one thing that takes up many places is one finding', () => {
    const found = ofTable(master(AS_IS).replace('size: 40 x 60 x 35 mm', 'size: 4 x 6 x 3.5 m'));
    expect(found.filter(f => ['things-overlap', 'leg-blocked'].includes(f.code)).map(f => f.subject)).toEqual(['whelk']);
  });
  // Half of its depth is 17.5 mm: at 17 mm from the plate it stands 0.5 mm in it, at 18 mm it does not.
  test.each([[16, true], [18, false]])('a thing %i mm from the plate', (distance, isIn) => {
    const found = ofTable(master(AS_IS).replace('at (700, 700) mm', `at (700, ${400 + distance}) mm`));
    expect(found.some(f => f.code === 'things-overlap' && f.severity === 'warning')).toBe(isIn);
  });
});

describe('things turned the wrong way', () => {
  test.each([['the light goes straight on', 100, true], ['it is turned by 2.9°: atan(20/400)', 120, true], ['it is turned by 5.7°: atan(40/400)', 140, false]])('a mirror where %s', (_, y, found) => {
    const text = setup(...LASER, 'mirror M1 at (500, 100) mm', `beam stop B1 at (900, ${y}) mm`, 'beam raw from red', '  -> M1', '  -> B1');
    expect(ofTable(text).filter(f => f.code === 'mirror-in-line').map(f => f.subject)).toEqual(found ? ['M1'] : []);
    expect(ofTable(text).filter(f => found && f.code === 'beam-clipped')).toEqual([]);
  });
  test('a plate with its back to the object and the reference is told how to head; one that faces away from the object only is none', () => {
    const at = (heading: number): string => master(AS_IS).replace('facing whelk', `heading ${heading}°`);
    const [found] = ofTable(at(90)).filter(f => f.code === 'plate-turned-round');
    expect(found).toMatchObject({ subject: 'P1', severity: 'note' });
    // The half turn of 90°: 3π/2.
    expectNear(Number(found!.data['heading']), 1.5 * Math.PI, 1e-9);
    expect(found!.message).toContain('“heading 270°”');
    expect(ofTable(at(270)).filter(f => f.code === 'plate-turned-round')).toEqual([]);
    // The object stands to 270° of the plate, the reference comes from 303.7°: 0° has both before it or along it, 200° the object before and the reference behind.
    expect(ofTable(at(200)).filter(f => f.code === 'plate-turned-round')).toEqual([]);
  });
});

test('what rests on a reference that misses its plate is not told', () => {
  // The reference comes from (1040, 190) mm, at 303.7° from the plate: a plate that heads 33.7° lies along it.
  const text = master(AS_IS).replace('facing whelk', 'heading 33.7°').replace('beam diameter: 0.8 mm', 'beam diameter: 0.8 mm\n  power: 12 mW').replace('mirror M3 at', 'spreader R2 on M2 -> M3 by 30 mm {\n    focal length: 4.5 mm\n  }\n  mirror M3 at').replace('  -> M3', '  -> R2\n  -> M3');
  const codes = analyse('file:///saltmarsh/setup.plate', text).findings.map(f => f.code);
  expect(codes).toContain('plate-missed');
  expect(codes.filter(c => ['ratio-unusual', 'edge-light', 'exposure-hard-to-time', 'corners-dark'].includes(c))).toEqual([]);
});
