/** What to record, from where the finished hologram will hang; figures by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse, type Snapshot } from '../../server/analysis.ts';
import { hangOf, type HangAnswer, type HangAnswers } from '../../server/features/hang/answer.ts';
import { hangMarkdown } from '../../server/features/hang/markdown.ts';
import { hangPage } from '../../server/features/hang/page.ts';
import { hangText } from '../../server/features/hang/text.ts';
import type { Cell } from '../../server/results/graph.ts';

const DEGREE = Math.PI / 180;
interface Page { readonly hologram?: string; readonly laser?: string; readonly plate?: string; readonly lamp?: string; readonly viewer?: string; readonly more?: string }
const block = (head: string, facts: string): string => `  ${head} {\n${facts.split('; ').map(f => `    ${f}\n`).join('')}  }\n`;
const page = ({ hologram = 'reflection', laser = 'wavelength: 632.8 nm', plate = 'image behind: 80 mm', lamp = 'distance: 1.5 m; angle: 45°', viewer, more = '' }: Page): string =>
  `setup "Limpet" {\n${hologram === '' ? '' : `  hologram: ${hologram}\n`}${block('laser red', laser)}${block('plate P1', plate)}${block('lamp spot', lamp)}${viewer === undefined ? '' : block('viewer visitor', viewer)}${more}}\n`;
const snapshotOf = (text: string): Snapshot => analyse('a.plate', text);
const all = (text: string): HangAnswers => hangOf(snapshotOf(text).results[0]!);
const of = (p: Page | string): HangAnswer => all(typeof p === 'string' ? p : page(p)).answers[0]!;
const value = (a: HangAnswer, cell: Cell | undefined): number | undefined => cell && a.results.graph.value(cell);
const mm = (a: HangAnswer, cell: Cell | undefined): number => value(a, cell)! * 1e3;
const degrees = (a: HangAnswer, cell: Cell): number => value(a, cell)! / DEGREE;
const kinds = (a: HangAnswer): string[] => a.hitches.map(h => h.kind);
const words = (a: HangAnswer): string => hangText([hangPage({ results: a.results, answers: [a], untold: [] })], 'a.plate').replace(/\s+/g, ' ');

/** The whole page of a limpet that is on a table: object beam 1394 mm, reference 1471 mm, object 300 mm from the plate. */
const onTable = (plate: string, lamp = 'distance: 1.5 m; angle: 45°', spreader = ''): string => `setup "Limpet" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    beam diameter: 0.8 mm
  }
  splitter S1
  mirror M2
${spreader}  object limpet {
    depth: 40 mm
  }
${block('plate P1', plate)}${block('lamp spot', lamp)}  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
${spreader === '' ? '' : '    -> R1: 871 mm\n'}    -> P1: ${spreader === '' ? '1471' : '600'} mm
  beam object from S1 reflected
    -> M2: 700 mm
    -> limpet: 471 mm
    -> P1: 300 mm
}
`;

describe('one step', () => {
  test('in the colour of the laser the recording is the replay', () => {
    const a = of({});
    const [fits, parallel] = a.hanging.distances;
    expect([degrees(a, a.hanging.referenceAngle), value(a, a.hanging.objectAngle)]).toEqual([45, -0].map(v => expect.closeTo(v, 9) as number));
    expect(mm(a, fits!.distance)).toBeCloseTo(1500, 6);
    expect(mm(a, fits!.object)).toBeCloseTo(80, 6);
    // With a parallel reference 1/R_O = 1/80 − 1/1500: 84.507 mm, and the image 80/84.507 = 0.94667 times as wide.
    expect(mm(a, parallel!.object)).toBeCloseTo(84.507, 3);
    expect(value(a, parallel!.width)).toBeCloseTo(0.946667, 6);
    expect(a.lines.map(l => l.text)).toEqual(['reference angle: 45°']);
    expect(kinds(a)).toEqual([]);
  });
  test('whoever looks from above the normal looks along an object below it', () => {
    const a = of({ viewer: 'distance: 600 mm; angle: 10°' });
    expect(degrees(a, a.hanging.objectAngle)).toBeCloseTo(-10, 9);
    expect(a.lines.map(l => l.text)).toEqual(['reference angle: 45°', 'object angle: -10°']);
  });
  test('another colour: angles by hand in the layer, distances by the ratio of the colours', () => {
    const a = of({ hologram: 'transmission', plate: 'image behind: 300 mm; index: 1.52', lamp: 'distance: 1 m; angle: 45°; wavelength: 532 nm' });
    // As in tests/optics/replay.test.ts: sines 0.769602 and −0.071483, 50.316° and −4.099°. 1000 · 0.840708 mm and 300 · 0.840708 mm.
    expect(degrees(a, a.hanging.referenceAngle)).toBeCloseTo(50.316, 2);
    expect(degrees(a, a.hanging.objectAngle)).toBeCloseTo(-4.099, 2);
    expect(mm(a, a.hanging.distances[0]!.distance)).toBeCloseTo(840.708, 2);
    expect(mm(a, a.hanging.distances[0]!.object)).toBeCloseTo(252.212, 2);
    // In the plane of the beams, cosines squared 0.407713, 0.994890, 0.5 and 1: μ (0.994890/0.252212 − 0.407713/0.840708) + 0.5 = 0.840708 · (3.944657 − 0.484964) + 0.5 = 3.408592 per metre: 293.38 mm.
    expect(mm(a, a.hanging.otherFocus)).toBeCloseTo(293.38, 1);
    expect(words(a)).toContain('as wide as the object and 1.19 times as deep');
  });
  test('the angle by heights, and from where', () => {
    // (2.6 − 1.5) / 1.5: arcsin 0.733333 = 47.167°
    const a = of({ lamp: 'distance: 1.5 m; height: 2.6 m', more: block('wall W1', 'height: 1.5 m') });
    expect(degrees(a, a.hanging.referenceAngle)).toBeCloseTo(47.167, 2);
    expect(a.lines.map(l => l.text)).toEqual(['reference angle: 47.2°', 'reference from: above']);
    expect(words(a)).toMatch(/leaves the plane of the table.*Local rules/);
  });
  test('where nothing else is written the image is to stand where the object stands', () => {
    const a = of(onTable('reference angle: 30°'));
    expect([a.hanging.imageFrom, mm(a, a.hanging.image), mm(a, a.now.object), degrees(a, a.now.reference!)]).toEqual(['page', 300, 300, 30].map(v => (typeof v === 'string' ? v : expect.closeTo(v, 9) as number)));
    expect(words(a)).toContain('as spot will stand; on the page 30°');
    // sin 45° / 632.8 nm = 1.117425 mrad a nm: 10 nm at 300 mm smear 3.3523 mm
    expect(mm(a, a.hanging.smear)).toBeCloseTo(3.3523, 3);
  });
  test('the reference as on the page counts beside one that fits', () => {
    const a = of(onTable('image behind: 200 mm', 'distance: 2 m; angle: 45°', '  spreader R1 {\n    focal length: 4.5 mm\n  }\n'));
    const other = a.hanging.distances[1]!;
    expect(other.reference).toBe('as set up');
    // R_R = 600 − 4.5 mm but for the waist: 1/R_O = 1/0.2 + 1/0.5955 − 1/2 = 6.17926 per metre: 161.83 mm; 200/161.83 = 1.2359 times as wide.
    expect(mm(a, other.object)).toBeCloseTo(161.83, 1);
    expect(value(a, other.width)).toBeCloseTo(1.2359, 3);
  });
  test('a master on the page: where its image stands there, and a reference as far off as there', () => {
    const a = of(`setup "Limpet" {\n  hologram: rainbow\n  laser red {\n    wavelength: 632.8 nm\n  }\n  splitter S1\n  hologram H1 {\n    image distance: 250 mm\n    depth: 40 mm\n  }\n  plate P2 {\n    reference angle: 45°\n  }\n${block('lamp spot', 'distance: 2 m; angle: 45°')}${block('viewer visitor', 'distance: 400 mm')}  beam raw from red\n    -> S1: 300 mm\n  beam reference from S1 through\n    -> P2: 900 mm\n  beam master from S1 reflected\n    -> H1: 660 mm\n  beam image from H1 diffracted\n    -> P2: 240 mm\n}\n`);
    // 250 − 240 mm: behind the plate as the master sees it, and behind it for who looks later.
    expect([mm(a, a.hanging.image), a.hanging.imageFrom, a.hanging.transfer, mm(a, a.now.master), mm(a, a.now.fromMaster)]).toEqual([10, 'page', 'page', 240, 250].map(v => (typeof v === 'string' ? v : expect.closeTo(v, 6) as number)));
    expect([mm(a, a.hanging.distances[0]!.master), mm(a, a.hanging.distances[0]!.fromMaster)]).toEqual([400, 410].map(v => expect.closeTo(v, 6) as number));
    expect([kinds(a), a.lines]).toEqual([[], []]);
  });
  test('what the page says already is not written again', () => { expect(of({ plate: 'image behind: 80 mm; reference angle: 45°' }).lines).toEqual([]); });
});

describe('two steps', () => {
  test('an image before the plate takes a master, as far off as one looks from', () => {
    const a = of({ plate: 'image before: 30 mm', viewer: 'distance: 500 mm' });
    const [fits, parallel] = a.hanging.distances;
    expect([mm(a, fits!.master), mm(a, fits!.object), mm(a, fits!.fromMaster), mm(a, fits!.distance)]).toEqual([500, 30, 470, 1500].map(v => expect.closeTo(v, 6) as number));
    // By a parallel reference the master's opening moves out as 1/R_O = 1/R_I + 1/R_C: 1/0.5 + 1/1.5 per metre, 375 mm; the image 1/0.03 + 1/1.5, 29.412 mm.
    expect([mm(a, parallel!.master), mm(a, parallel!.object)]).toEqual([375, 29.412].map(v => expect.closeTo(v, 3) as number));
    expect(words(a)).toContain('so the image comes right side out');
  });
  test('a rainbow hologram: the slit 300 mm off is seen from 356.842 mm in green', () => {
    const a = of({ hologram: 'rainbow', plate: 'image behind: 0 mm; index: 1.52', lamp: 'distance: 2 m; angle: 45°; wavelength: 532 nm', viewer: 'distance: 356.842 mm', more: block('slit mask', 'width: 5 mm') });
    expect(mm(a, a.hanging.distances[0]!.master)).toBeCloseTo(300, 3);
    expect(mm(a, a.hanging.distances[0]!.fromMaster)).toBeCloseTo(300, 3);
    // 632.8 · 5 / (300 · 0.769602) = 13.704 nm
    expect(value(a, a.hanging.colours)! * 1e9).toBeCloseTo(13.704, 2);
  });
  test('the published case of a diverging lamp', () => {
    // R_O 300, parallel reference, lamp 1000 mm, conjugate: the image of the opening at 428.571 mm (Meier 1965; img-8).
    const a = of({ plate: 'image behind: 0 mm', lamp: 'distance: 1 m; angle: 45°', viewer: 'distance: 428.571 mm' });
    expect(mm(a, a.hanging.distances[1]!.master)).toBeCloseTo(300, 3);
  });
  test('a lamp above is a reference from below, run backwards', () => {
    const a = of({ plate: 'image before: 30 mm', viewer: 'distance: 500 mm', lamp: 'distance: 1.5 m; height: 2.6 m', more: block('wall W1', 'height: 1.5 m') });
    expect(a.lines.map(l => l.text)).toContain('reference from: below');
  });
});

describe('what stands against it', () => {
  test.each<[string, Page, string, RegExp]>([
    ['a lamp behind a reflection hologram', { lamp: 'distance: 1 m; angle: 135°' }, 'lamp behind', /Spot stands behind P1/],
    ['a lamp along the plate', { lamp: 'distance: 1 m; angle: 89°' }, 'lamp edge-on', /runs along P1/],
    ['a laser that is too long', { laser: 'wavelength: 660 nm', lamp: 'distance: 1 m; angle: 10°; wavelength: 532 nm' }, 'too fine', /waves are too long/],
    ['a beam that no light from air is', { hologram: 'transmission', laser: 'wavelength: 660 nm', lamp: 'distance: 1 m; angle: 75°; wavelength: 441.6 nm' }, 'too slanted', /more slanted in the layer/],
    ['a lamp that is too near', { lamp: 'distance: 70 mm; angle: 45°' }, 'no object', /It takes a lamp more than 80 mm away/],
    ['a lamp whose angle nobody knows', { lamp: 'distance: 1 m' }, 'no angle', /write its “angle: 45°”/],
    ['a lamp that is higher than it is far', { lamp: 'distance: 1 m; height: 3 m', more: block('wall W1', 'height: 1.2 m') }, 'too steep', /so near/],
    ['a lamp whose distance nobody knows', { lamp: 'angle: 45°' }, 'no distance', /write its “distance: 1.5 m”/],
    ['an image that nobody has placed', { plate: 'size: 63 x 63 mm' }, 'no image', /write “image behind: 80 mm” or/],
    ['no viewer of a transfer', { plate: 'image before: 30 mm' }, 'no viewer', /write a “viewer” with its “distance: 600 mm”/],
    ['an image behind who looks', { plate: 'image before: 700 mm', viewer: 'distance: 600 mm' }, 'behind the viewer', /at the eyes or behind them/],
  ])('%s', (_, p, kind, text) => {
    const a = of(p);
    expect(kinds(a)).toEqual([kind]);
    expect(words(a)).toMatch(text);
  });
  test('an object that would reach into the plate', () => {
    // Half of 40 mm is 20 mm; its middle is to be 15 mm behind.
    const a = of(onTable('image behind: 15 mm'));
    expect(a.hitches).toMatchObject([{ kind: 'in the plate', by: expect.closeTo(0.005, 9) as number }]);
  });
  test('a lamp behind a transmission hologram is where it belongs', () => {
    const a = of({ hologram: 'transmission', lamp: 'distance: 1 m; angle: 135°' });
    expect([kinds(a), degrees(a, a.hanging.referenceAngle)]).toEqual([[], expect.closeTo(45, 9) as number]);
  });
  test.each<[string, string, string]>([
    ['no lamp', 'setup "A" {\n  plate P1\n}\n', 'no lamp'], ['no plate', `setup "A" {\n${block('lamp spot', 'angle: 45°')}}\n`, 'no plate'],
    ['two plates', page({ more: '  plate P2\n' }), 'which plate'], ['nobody says which hologram', page({ hologram: '' }), 'no way'],
  ])('%s', (_, text, why) => {
    const answers = all(text);
    expect(answers.untold.map(u => u.why)).toEqual([why]);
    expect(hangPage(answers).says[0]).toMatch(/\.$/);
  });
  test('the plate that a lamp names', () => { expect(of(page({ lamp: 'distance: 1 m; angle: 45°; plate: P2', more: '  plate P2 {\n    image behind: 10 mm\n  }\n' })).hanging.plate.id).toBe('P2'); });
});

test('the lines, written, say what was asked, and are no finding', () => {
  const text = page({ viewer: 'distance: 600 mm; angle: 10°' });
  const written = text.replace('    image behind', `${of(text).lines.map(l => `    ${l.text}\n`).join('')}    image behind`);
  expect(of(written).lines).toEqual([]);
  expect(snapshotOf(written).findings.filter(f => f.severity !== 'hint')).toEqual(snapshotOf(text).findings.filter(f => f.severity !== 'hint'));
});

test('a name asks for a figure as for any other result', () => {
  const r = snapshotOf(page({})).results[0]!;
  expect(r.graph.value(r.ask('P1.hang.object distance')!)).toBeCloseTo(0.08, 9);
  expect(r.ask('P1.hang.nothing')).toBeUndefined();
  const goals = snapshotOf(page({ more: '  expect P1.hang.reference angle < 60°\n  expect P1.hang.object distance > 90 mm\n' })).results[0]!.goals;
  expect(goals.map(g => g.outcome)).toEqual(['met', 'not met']);
});

test('nothing is called safe, no line is longer than a screen, and Markdown tells the same', () => {
  for (const text of [page({}), page({ lamp: 'distance: 1 m; angle: 45°; laser: red', plate: 'image before: 20 mm' }), page({ lamp: 'angle: 45°' })]) {
    const pages = [hangPage(all(text))];
    for (const l of hangText(pages, 'a.plate').split('\n')) expect([...l].length).toBeLessThanOrEqual(80);
    expect(hangText(pages, 'a.plate')).not.toMatch(/\bsafe\b|NaN|Infinity/);
    expect(hangMarkdown(pages, 'a.plate')).toContain('| reference angle | 45° |');
  }
});

test('whatever is written, every figure is a number or says why not', () => {
  const number = fc.constantFrom('0', '1e-9', '0.001', '1', '45', '90', '135', '180', '-45', '1000', '1e9', '?', 'x');
  const fact = fc.tuple(fc.constantFrom('distance', 'angle', 'height', 'wavelength', 'image behind', 'image before', 'index', 'laser', 'plate'), number, fc.constantFrom('mm', 'm', '°', 'nm', '')).map(([f, n, u]) => `${f}: ${n} ${u}`.trimEnd());
  const facts = fc.array(fact, { minLength: 1, maxLength: 4 }).map(f => f.join('; '));
  fc.assert(fc.property(fc.constantFrom('', 'reflection', 'transmission', 'rainbow'), facts, facts, facts, (hologram, plate, lamp, viewer) => {
    const answers = all(page({ hologram, plate, lamp, viewer }));
    expect(hangText([hangPage(answers)], 'a.plate')).not.toMatch(/NaN|Infinity|undefined|null/);
    for (const c of answers.results.graph.cells) if (!c.missing) expect(Number.isFinite(answers.results.graph.value(c))).toBe(true);
  }), { numRuns: 300 });
});
