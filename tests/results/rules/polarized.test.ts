/** Rules of polarization by figures that can be told by hand: Malus’s law, half-wave plates, ideal mirrors, Fresnel’s formulas (Born & Wolf, Principles of Optics, §1.5). */
import { describe, expect, it, test } from 'vitest';
import { ghosts, interfering, passedBy, traced, type Ground, type Meeting, type Train } from '../../../server/results/rules/polarization.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const STRAIGHT: Train = { stretches: [[]], turns: [] };
const through = (...elements: Train['stretches'][number]): Train => ({ stretches: [elements], turns: [] });
const by = (...turns: Train['turns']): Train => ({ stretches: [[], ...turns.map(() => [])], turns });
const meeting = (reference: Train, object: Train, more: Partial<Meeting> = {}): Meeting => ({ ground: 'level', way: 'transmission', from: 'the side', reference, object, ...more });
const LIGHT = { vertical: [0, 1], horizontal: [rad(90), 1], aslant: [rad(45), 1], unpolarized: [0, 0] } as const;
/** Of beams at these angles from the normal, in a layer of index 1.5; behind them what the trains meet. */
const share = (light: keyof typeof LIGHT, of: Meeting, [reference, object]: readonly [number, number], ...facts: number[]): number => interfering(of).compute([...LIGHT[light], 1.5, rad(reference), rad(object), ...facts]);

describe('share that makes fringes, with nothing on the way', () => {
  test.each([[0, 0], [0, 30], [50, -30]])('vertical light makes them at any angles: %d° and %d°', (a, b) => { expect(share('vertical', meeting(STRAIGHT, STRAIGHT), [a, b])).toBeCloseTo(1, 9); });
  // sin 30°/1.5 = 1/3 in the layer: cos² = 1 − 1/9
  it('horizontal light by cos² of the angle in the layer', () => { expect(share('horizontal', meeting(STRAIGHT, STRAIGHT), [0, 30])).toBeCloseTo(8 / 9, 9); });
  // A sine of ±1/3 on each side: the cosine of twice the angle is 1 − 2/9.
  it('by the angle between both, on either side of the normal', () => { expect(share('horizontal', meeting(STRAIGHT, STRAIGHT), [30, -30])).toBeCloseTo((7 / 9) ** 2, 9); });
  // From behind at 30° against 30° from before: in the layer the sines are 1/3 both, so that the cosine is 1/9 − 8/9.
  it('against a reference from behind by their angle, too', () => { expect(share('horizontal', meeting(STRAIGHT, STRAIGHT, { way: 'reflection' }), [30, 30])).toBeCloseTo((7 / 9) ** 2, 9); expect(share('horizontal', meeting(STRAIGHT, STRAIGHT), [30, 30])).toBeCloseTo(1, 9); });
  it('from behind the plate as from before it', () => { expect(share('horizontal', meeting(STRAIGHT, STRAIGHT, { way: 'reflection' }), [30, 0])).toBeCloseTo(8 / 9, 9); });
});

describe('with plates of a wave', () => {
  const OBJECT = (facts: Train['stretches'][number]): Meeting => meeting(STRAIGHT, through(...facts));
  // Light at 0° leaves a half-wave plate at twice its axis: cos² of that.
  test.each([[0, 1], [22.5, 0.5], [30, 0.25], [45, 0]])('a half-wave plate at %d° leaves %d of vertical light', (axis, left) => { expect(share('vertical', OBJECT(['half-wave plate']), [0, 0], rad(axis))).toBeCloseTo(left, 9); });
  it('of light in all directions one state is turned over by it, and lies on the other', () => { expect(share('unpolarized', OBJECT(['half-wave plate']), [0, 0], 0)).toBeCloseTo(0, 9); });
  it('two of them one after the other undo each other', () => { expect(share('vertical', OBJECT(['half-wave plate', 'half-wave plate']), [0, 0], rad(30), rad(30))).toBeCloseTo(1, 9); });
  // Made for 600 nm it delays 632.8 nm by π·600/632.8; at 45° the vertical part is cos² of half of that.
  it('one for another colour turns less', () => { expect(share('vertical', OBJECT(['half-wave plate for a wavelength']), [0, 0], rad(45), 600e-9, 632.8e-9)).toBeCloseTo(Math.cos((Math.PI / 2) * (600 / 632.8)) ** 2, 9); });
  it('a polarizer before the object leaves what is polarized its way', () => { expect(share('vertical', OBJECT(['polarizer']), [0, 0], rad(30))).toBeCloseTo(0.75, 9); });
  it('a crossed one leaves no light, of which no share is known', () => { expect(share('vertical', OBJECT(['polarizer']), [0, 0], rad(90))).toBeNaN(); });
  it('and so it is in the reference', () => {
    expect(share('vertical', meeting(through('polarizer'), STRAIGHT), [0, 0], rad(90))).toBeNaN();
    expect(share('vertical', meeting(through('half-wave plate'), STRAIGHT), [0, 0], rad(30))).toBeCloseTo(0.25, 9);
  });
  it('what the reference meets is read before what the object light meets', () => { expect(share('vertical', meeting(through('half-wave plate'), through('half-wave plate')), [0, 0], rad(10), rad(30))).toBeCloseTo(Math.cos(rad(40)) ** 2, 9); });
});

describe('by mirrors', () => {
  it('vertical light stays vertical', () => { expect(share('vertical', meeting(STRAIGHT, by('mirror')), [0, 0])).toBeCloseTo(1, 9); });
  // Of light at 45° one mirror turns one of both halves over: ½ − ½.
  it('one more turns light at 45° square to itself, two more do not', () => {
    expect(share('aslant', meeting(STRAIGHT, by('mirror')), [0, 0])).toBeCloseTo(0, 9);
    expect(share('aslant', meeting(STRAIGHT, by('mirror', 'mirror')), [0, 0])).toBeCloseTo(1, 9);
    expect(share('aslant', meeting(by('mirror'), by('mirror')), [0, 0])).toBeCloseTo(1, 9);
  });
  // |½(1 + e^iφ)|² = cos²(φ/2)
  it('one whose coating delays p by 60° leaves 3/4 of light at 45°', () => { expect(share('aslant', meeting(by('mirror'), by('coating')), [0, 0], rad(60))).toBeCloseTo(0.75, 9); });
  it('and all of vertical light, which is s alone', () => { expect(share('vertical', meeting(by('mirror'), by('coating')), [0, 0], rad(60))).toBeCloseTo(1, 9); });
});

describe('by what scatters', () => {
  // What is depolarized is half of it still the reference’s way: 1 − d/2.
  test.each([['facet', 0, 1], ['facet', 0.4, 0.8], ['facet', 1, 0.5], ['screen', 0, 1], ['screen', 0.4, 0.8], ['screen', 1, 0.5]] as const)('a %s that depolarizes %d of vertical light leaves %d', (turn, d, left) => { expect(share('vertical', meeting(STRAIGHT, by(turn)), [0, 0], d)).toBeCloseTo(left, 9); });
  // Goodman, Statistical Optics (1985): fully developed speckle; two states in two directions each, of four products one.
  it('of light in all directions a quarter, where nothing is kept', () => { expect(share('unpolarized', meeting(STRAIGHT, by('screen')), [0, 0], 1)).toBeCloseTo(0.25, 9); });
  it('a screen that keeps it turns nothing over, a facet does as a mirror', () => {
    expect(share('aslant', meeting(STRAIGHT, by('screen')), [0, 0], 0)).toBeCloseTo(1, 9);
    expect(share('aslant', meeting(STRAIGHT, by('facet')), [0, 0], 0)).toBeCloseTo(0, 9);
  });
});

describe('from above and below', () => {
  // sin 45°/1.5: its square is 2/9.
  test.each(['above', 'below'] as const)('a reference from %s is s where the light is horizontal, and lies aslant where it is vertical', from => {
    const of = meeting(by('mirror'), STRAIGHT, { from });
    expect(share('horizontal', of, [45, 0])).toBeCloseTo(1, 9);
    expect(share('vertical', of, [45, 0])).toBeCloseTo(7 / 9, 9);
    expect(traced(of, [...LIGHT.vertical, 1.5, rad(45), 0]).reference).toMatchObject({ rising: [0], mixed: [] });
  });
});

describe('a reference that an object scatters, from above', () => {
  const of = meeting(by('facet'), STRAIGHT, { from: 'above' });
  // It is lit from the side, along x, and throws light down along (0, 1, −1)/√2 as a facet does that stands square to the bisector. Of y it makes (−√½, −½, −½), of z (√½, −½, −½): half of either is s. Into the layer
  // go 2 cos θ/(cos θ + n cos θ′) of s and 2 cos θ/(n cos θ + cos θ′) of p (Fresnel); of what is p there sin 45°/1.5, whose square is 2/9, leaves 7/9 upright.
  it('is half s before the layer, whichever way the light was', () => {
    const [outside, inside] = [Math.SQRT1_2, Math.sqrt(7 / 9)];
    const [s, p] = [1 / (outside + 1.5 * inside), 1 / (1.5 * outside + inside)].map(t => t * t) as [number, number];
    expect(share('horizontal', of, [45, 0], 0)).toBeCloseTo(s / (s + p), 9);
    expect(share('vertical', of, [45, 0], 0)).toBeCloseTo(((p / (s + p)) * 7) / 9, 9);
  });
  // From behind the plate it is lit from the other side, and throws light along (0, −1, −1)/√2: of y it makes (−√½, ½, −½), and half of either is s again.
  it('from behind as from before', () => {
    const [outside, inside] = [Math.SQRT1_2, Math.sqrt(7 / 9)];
    const [s, p] = [1 / (outside + 1.5 * inside), 1 / (1.5 * outside + inside)].map(t => t * t) as [number, number];
    expect(share('horizontal', { ...of, way: 'reflection' }, [45, 0], 0)).toBeCloseTo(s / (s + p), 9);
    expect(share('vertical', { ...of, way: 'reflection' }, [45, 0], 0)).toBeCloseTo(((p / (s + p)) * 7) / 9, 9);
  });
  // Straight down: y stays y, which is square to x; z becomes x, which is square to z.
  it('straight down makes no fringes', () => { for (const light of ['horizontal', 'vertical'] as const) expect(share(light, of, [90, 0], 0)).toBeCloseTo(0, 9); });
});

describe('straight from above', () => {
  // sin 90°/1.5 = 2/3 in the layer. A mirror folds it in the upright plane of the plate’s normal.
  test.each(['mirror', 'coating'] as const)('by a %s light that is horizontal stays s', turn => {
    const of = meeting(by(turn), STRAIGHT, { from: 'above' });
    const lag = turn === 'coating' ? [rad(60)] : [];
    expect(share('horizontal', of, [90, 0], ...lag)).toBeCloseTo(1, 6);
    expect(share('vertical', of, [90, 0], ...lag)).toBeCloseTo(5 / 9, 6);
  });
});

describe('a rule that is asked again', () => {
  const of = meeting(through('half-wave plate'), by('mirror', 'coating'));
  const CASES = [[0, 1, 1.5, 0, 0, 0, 0], [rad(10), 1, 1.5, 0, 0, rad(20), 0], [rad(10), 1, 1.5, 0, 0, rad(20), rad(50)], [rad(45), 1, 1.5, 0, 0, rad(20), rad(50)], [rad(45), 0.5, 1.5, 0, 0, rad(20), rad(50)], [rad(45), 0.5, 1.5, rad(30), 0, rad(20), rad(50)], [rad(45), 0.5, 1.5, rad(30), rad(-20), rad(20), rad(50)], [rad(45), 0.5, 1.5, rad(30), rad(-20), rad(20), rad(80)]];
  it('with another input says what it says when that is the first', () => {
    const rule = interfering(of);
    const fresh = CASES.map(x => interfering(of).compute(x));
    // All figures differ, so that none can stand for another.
    expect(new Set(fresh.map(v => v.toFixed(6))).size).toBe(CASES.length);
    for (const i of [0, 1, 2, 3, 4, 5, 6, 7, 0, 2, 1, 7, 3, 3, 6, 5, 4]) expect(rule.compute(CASES[i]!)).toBe(fresh[i]);
  });
});

describe('what is told of the way', () => {
  const way = (angle: number, train: Train, ...directions: readonly (readonly number[])[]) => traced(meeting(STRAIGHT, train, { ground: 'places' }), [rad(angle), 1, 1.5, 0, -1, 0, 0, 1, 0, ...directions.flat()]).object;
  const [EAST, NORTH, UP] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]] as const;
  // Of light at an angle α from vertical sin²α is p at a level mirror: 0.0194 at 8°, 0.0208 at 8.3°; what is less than 0.02 is none to speak of.
  test.each([[0, []], [8, []], [8.3, [0]], [45, [0]], [81.7, [0]], [82, []], [90, []]] as const)('light at %d° from vertical is mixed at %j of a level mirror', (angle, mixed) => { expect(way(angle, by('mirror'), EAST, NORTH)).toMatchObject({ mixed, rising: [] }); });
  it('which is told by the number of the turn', () => { expect(way(45, by('mirror', 'mirror'), NORTH, NORTH, EAST).mixed).toEqual([1]); });
  it('a mirror that folds light up leads out of the plane, whatever is polarized how', () => {
    expect(way(0, by('mirror'), EAST, UP)).toMatchObject({ rising: [0], mixed: [] });
    expect(way(45, by('mirror'), EAST, UP)).toMatchObject({ rising: [0], mixed: [0] });
  });
  // A mirror at 45° whose normal rises by that angle: d − 2(d·n)n.
  const folded = (up: number): readonly number[] => { const n = [Math.SQRT1_2 * Math.cos(rad(up)), Math.SQRT1_2 * Math.cos(rad(up)), Math.sin(rad(up))] as const; return EAST.map((v, i) => v - 2 * n[0] * n[i]!); };
  test.each([[1.9, []], [2.1, [0]], [-1.9, []], [-2.1, [0]]] as const)('a normal that rises by %d° counts as rising at %j', (up, rising) => { expect(way(0, by('mirror'), EAST, folded(up)).rising).toEqual(rising); });
  it('past a mirror that turns nothing it goes as it came', () => { expect(way(45, by('mirror'), EAST, EAST)).toMatchObject({ mixed: [], rising: [] }); });
  it('what scatters mixes nothing', () => { expect(traced(meeting(STRAIGHT, by('screen'), { ground: 'places' }), [rad(45), 1, 1.5, 0, -1, 0, 0, 1, 0, 0.2, ...EAST, ...UP]).object).toMatchObject({ mixed: [], rising: [] }); });
  it('has what the last polarizer passes of the light on it', () => {
    expect(way(0, STRAIGHT, NORTH).passed).toBe(1);
    expect(traced(meeting(STRAIGHT, through('polarizer')), [0, 1, 1.5, 0, 0, rad(60)]).object.passed).toBeCloseTo(0.25, 9);
  });
});

describe('share that a polarizer passes', () => {
  const passed = (train: Train, ...x: number[]): number => passedBy('level', train).compute(x);
  // Malus; of the part in all directions half.
  test.each([[1, 0.25], [0, 0.5], [0.6, 0.6 * 0.25 + 0.4 / 2], [1.5, 0.25], [-1, 0.5]])('of light of which %d is polarized, at 60°: %d', (polarized, is) => { expect(passed(through('polarizer'), 0, polarized, rad(60))).toBeCloseTo(is, 9); });
  it('the second one of what the first has left', () => { expect(passed(through('polarizer', 'polarizer'), 0, 1, rad(30), rad(60))).toBeCloseTo(0.75, 9); });
  it('nothing of nothing', () => { expect(passed(through('polarizer', 'polarizer'), 0, 1, rad(90), 0)).toBeCloseTo(0, 9); });
  it('before a mirror, with nothing behind it', () => { expect(passed({ stretches: [['polarizer'], []], turns: ['mirror'] }, 0, 1, rad(60))).toBeCloseTo(0.25, 9); });
  it('without one all of it', () => { expect(passed(STRAIGHT, 0, 1)).toBe(1); });
});

describe('ghost fringes', () => {
  const contrast = (which: 'twoBounces' | 'backFace', light: keyof typeof LIGHT, angle: number, train: Train = STRAIGHT, ...facts: number[]): number => ghosts('level', 'the side', train, which).compute([...LIGHT[light], 1.5, rad(angle), ...facts]);
  // At right angles R = ((1.5 − 1)/(1.5 + 1))² = 0.04 of any light.
  test.each(['vertical', 'horizontal', 'unpolarized'] as const)('of %s light that meets the plate squarely', light => {
    expect(contrast('twoBounces', light, 0)).toBeCloseTo(0.08 / 1.0016, 9);
    expect(contrast('backFace', light, 0)).toBeCloseTo(0.4 / 1.04, 9);
  });
  it('of horizontal light at Brewster’s angle there are none', () => { for (const which of ['twoBounces', 'backFace'] as const) expect(contrast(which, 'horizontal', (Math.atan(1.5) * 180) / Math.PI)).toBeCloseTo(0, 9); });
  // Fresnel: R_s = sin²(a − b)/sin²(a + b), R_p = tan²(a − b)/tan²(a + b)
  it('by each polarization at 30°', () => {
    const [a, b] = [rad(30), Math.asin(1 / 3)];
    const [s, p] = [(Math.sin(a - b) / Math.sin(a + b)) ** 2, (Math.tan(a - b) / Math.tan(a + b)) ** 2];
    expect(contrast('twoBounces', 'vertical', 30)).toBeCloseTo((2 * s) / (1 + s * s), 9);
    expect(contrast('twoBounces', 'horizontal', -30)).toBeCloseTo((2 * p) / (1 + p * p), 9);
    expect(contrast('backFace', 'vertical', 30)).toBeCloseTo((2 * Math.sqrt(s)) / (1 + s), 9);
    expect(contrast('backFace', 'horizontal', 30)).toBeCloseTo(((2 * Math.sqrt(p)) / (1 + p)) * Math.cos(2 * b), 9);
  });
  it('of no light none are known', () => { expect(contrast('twoBounces', 'vertical', 0, through('polarizer'), rad(90))).toBeNaN(); });
  it('behind a half-wave plate at 45° vertical light is horizontal', () => { expect(contrast('twoBounces', 'vertical', 30, through('half-wave plate'), rad(45))).toBeCloseTo(contrast('twoBounces', 'horizontal', 30), 9); });
});

describe('two rules', () => {
  const ground = (g: Ground): string => JSON.stringify(interfering(meeting(STRAIGHT, STRAIGHT, { ground: g })).of);
  it('of other trains are told from each other', () => {
    const all = [STRAIGHT, through('polarizer'), through('half-wave plate'), by('mirror'), by('coating'), by('screen')].flatMap(t => [interfering(meeting(t, STRAIGHT)), interfering(meeting(STRAIGHT, t))]).map(r => JSON.stringify(r.of));
    // That with nothing on both ways is there twice.
    expect(new Set(all).size).toBe(11);
    expect(ground('level')).not.toBe(ground('places'));
  });
});
