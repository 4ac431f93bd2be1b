/** Where a hologram has its image, and the way back, against published values and arithmetic by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { imageSine, recordingSines } from '../../server/optics/replay/angles.ts';
import { colourSmear, slitColours } from '../../server/optics/replay/colours.ts';
import { imageCurvature, inPlaneCurvature, matchedReference, objectDistance, widthOfImage, type Order } from '../../server/optics/replay/focus.ts';
import { between, expectNear, publishedFigures, publishedIds, publishedValue } from './outside.ts';

const DEGREE = Math.PI / 180;
const [MM, NM] = [1e-3, 1e-9];
const RED = 632.8 * NM;

interface Case { readonly inputs: { readonly R_o: number; readonly R_r: number | null; readonly R_c: number | null; readonly mu: number; readonly m: Order }; readonly expected: { readonly R_out: number; readonly M_lat: number; readonly M_long: number } }
const curvature = (mm: number | null): number => (mm === null ? 0 : 1 / (mm * MM));

describe('where the image is', () => {
  // Meier 1965 and the hand-out of MIT MAS.450; computed by closed form and ray trace outside of this program.
  it.each(publishedIds('img-'))('%s', id => {
    const { inputs: { R_o, R_r, R_c, mu, m }, expected } = publishedFigures(id) as Case;
    expectNear(1 / imageCurvature(m, mu, curvature(R_o), curvature(R_r), curvature(R_c)), expected.R_out * MM, 1e-6 * Math.abs(expected.R_out * MM));
    // and back
    expectNear(objectDistance(m, mu, expected.R_out * MM, curvature(R_r), curvature(R_c)), R_o * MM, 1e-6 * R_o * MM);
    const width = widthOfImage(m, mu, expected.R_out * MM, curvature(R_r), curvature(R_c));
    expectNear(width, expected.M_lat, 1e-6 * expected.M_lat);
    expectNear(width ** 2 / (m * mu), expected.M_long, 1e-6 * Math.abs(expected.M_long));
  });
  it('by another colour', () => {
    // 532/632.8 = 0.8407080; 300 mm with a parallel reference and lamp: 300 / 0.8407080 = 356.842 mm, as wide as it was.
    expectNear(1 / imageCurvature(1, 532 / 632.8, 1 / 0.3, 0, 0), 0.356842, 1e-6);
    expectNear(widthOfImage(1, 532 / 632.8, 0.3568421, 0, 0), 1, 1e-9);
    // Diverging 1 m both times: 1/R = 0.840708 · (3.33333 − 1) + 1 = 2.961652 per metre: 337.649 mm.
    expectNear(1 / imageCurvature(1, 532 / 632.8, 1 / 0.3, 1, 1), 0.337649, 1e-6);
  });
  it('in the plane of the beams', () => {
    // Object squarely at 300 mm, parallel reference and lamp at 1000 mm both at 45°: 1/R = 1/0.3 + cos²45° · 1 = 3.83333 per metre: 260.87 mm; across it 1/(3.33333 + 1) = 230.77 mm.
    const angles = { object: 0, reference: 45 * DEGREE, lamp: 45 * DEGREE, image: 0 };
    expectNear(1 / inPlaneCurvature(1, 1, 1 / 0.3, 0, 1, angles), 0.26087, 1e-5);
    expectNear(1 / imageCurvature(1, 1, 1 / 0.3, 0, 1), 0.23077, 1e-5);
    // All aslant and curved: (1.5 (2 cos²60° − 3 cos²45°) + 4 cos²30°) / cos²60° = (1.5 (0.5 − 1.5) + 3) / 0.25 = 6; the other image (1.5 + 3) / 0.25 = 18.
    const aslant = { object: 60 * DEGREE, reference: -45 * DEGREE, lamp: 30 * DEGREE, image: -60 * DEGREE };
    expectNear(inPlaneCurvature(1, 1.5, 2, 3, 4, aslant), 6, 1e-12);
    expectNear(inPlaneCurvature(-1, 1.5, 2, 3, 4, aslant), 18, 1e-12);
  });
  it('with the reference that fits the lamp the image is as wide as the object, wherever it is', () => {
    fc.assert(fc.property(fc.constantFrom<Order>(1, -1), between(0.5, 2), between(-3, 3), between(0.2, 5), (m, mu, image, lamp) => {
      const reference = matchedReference(m, mu, 1 / lamp);
      expectNear(widthOfImage(m, mu, image, reference, 1 / lamp), 1, 1e-9);
      expectNear(objectDistance(m, mu, image, reference, 1 / lamp), m * mu * image, 1e-9);
    }));
  });
  it('a master that is lit by its own reference run backwards shows its object where that stood', () => {
    // R_C = −R_R: 1/R = −(1/0.3 − 1/1) − 1/1 = −1/0.3.
    expectNear(1 / imageCurvature(-1, 1, 1 / 0.3, 1, -1), -0.3, 1e-12);
    expect(matchedReference(-1, 1, 1 / 1.5)).toBeCloseTo(-1 / 1.5, 12);
  });
});

describe('angles', () => {
  it.each(publishedIds('angle-'))('%s', id => {
    const value = publishedValue(id);
    const angle = (name: string): number => value.input(name) * DEGREE;
    value.check(Math.asin(imageSine(1, value.input('replay_nm') / 632.8, angle('obj'), angle('ref'), angle('ill'))) / DEGREE);
  });
  it('with one colour the recording is the replay', () => {
    const sines = recordingSines(false, 1, 1.52, 45 * DEGREE, -10 * DEGREE)!;
    // sines from a table: 0.70711, −0.17365
    expectNear(sines.reference, 0.70711, 5e-6);
    expectNear(sines.object, -0.17365, 5e-6);
  });
  it('upright fringes: sin θ_R = sin θ_C / μ, whatever the layer', () => {
    // 30° to both sides by 532 nm: 0.5 / 0.8407080 = 0.5947368 by 632.8 nm
    for (const n of [1, 1.52, 1.62]) {
      const sines = recordingSines(false, 532 / 632.8, n, 30 * DEGREE, -30 * DEGREE)!;
      expectNear(sines.reference, 0.5947368, 1e-7);
      expectNear(sines.object, -0.5947368, 1e-7);
    }
  });
  it('tilted fringes, by hand in the layer', () => {
    // n 1.52, lamp 45°, image squarely, 632.8 → 532 nm. Inside arcsin(0.7071068/1.52) = 27.7233°; the fringes lie at half of it, 13.8616°, and half the angle of the beams is that too.
    // Its sine 0.2395781 becomes 0.2395781/0.8407080 = 0.2849719: 16.5572°. So reference 13.8616 + 16.5572 = 30.4188° and object −2.6955° inside; outside 1.52 · 0.5063169 = 0.769602 and 1.52 · (−0.0470284) = −0.071483.
    const sines = recordingSines(false, 532 / 632.8, 1.52, 45 * DEGREE, 0)!;
    expectNear(sines.reference, 0.769602, 1e-5);
    expectNear(sines.object, -0.071483, 1e-5);
  });
  it('a reflection hologram recorded squarely comes back at 45° in a shorter colour', () => {
    // n 1.52, 632.8 nm: 632.8 · √(1 − 0.5/1.52²) = 560.157 nm, in the direction of a mirror. A colour 1e-4 longer is met a little aslant:
    const longer = recordingSines(true, (560.157 * (1 + 1e-4)) / 632.8, 1.52, 45 * DEGREE, 45 * DEGREE)!;
    // cos of the angle inside is 1/1.0001: √(2 · 1e-4) = 0.01414, outside 1.52 · 0.01414 = 0.0215
    expectNear(longer.reference, 0.0215, 2e-4);
    expectNear(longer.object, longer.reference, 1e-12);
  });
  it('a reflection hologram that sends the lamp straight back is recorded from both sides of its way, the reference on that of the lamp', () => {
    // The fringes lie across the lamp's way in the layer, of sine 0.28 and cosine 0.96: 1.5 · 0.28 = 0.42 in air. A colour 1.25 times as long is met at a cosine of 1/1.25 = 0.8 to that way, a sine of 0.6.
    // 1.5 · (0.28 · 0.8 + 0.96 · 0.6) = 1.2 and, on the other side of it, seen from where that light comes, 1.5 · (0.96 · 0.6 − 0.28 · 0.8) = 0.528. Squarely 1.5 · 0.6 = 0.9 both.
    for (const side of [1, -1]) {
      const sines = recordingSines(true, 1.25, 1.5, side * Math.asin(0.42), -side * Math.asin(0.42))!;
      expectNear(sines.reference, side * 1.2, 1e-9);
      expectNear(sines.object, side * 0.528, 1e-9);
    }
    const squarely = recordingSines(true, 1.25, 1.5, 0, 0)!;
    expectNear(squarely.reference, 0.9, 1e-9);
    expectNear(squarely.object, 0.9, 1e-9);
  });
  it('fringes that the laser is too long for are not made', () => {
    // Squarely 2n/532 nm asks for more fringes than 2n/660 nm.
    expect(recordingSines(true, 532 / 660, 1.52, 0, 0)).toBeUndefined();
  });
  it('the fringes along the plate are those of replay', () => {
    fc.assert(fc.property(fc.boolean(), between(0.8, 1.25), between(1.4, 1.7), between(0, 1.2), between(-0.5, 0.5), (reflection, mu, n, lamp, image) => {
      const sines = recordingSines(reflection, mu, n, lamp, image);
      if (!sines || Math.abs(sines.reference) >= 1 || Math.abs(sines.object) >= 1) return;
      expectNear(imageSine(1, mu, Math.asin(sines.object), Math.asin(sines.reference), lamp), Math.sin(image), 1e-9);
    }));
  });
});

describe('colours', () => {
  it('seen at once through the slit of a rainbow hologram', () => {
    // 632.8 nm · 5 mm / (300 mm · sin 45°) = 14.916 nm; with a pupil of 3 mm 23.865 nm
    expectNear(slitColours(RED, 5 * MM, 300 * MM, 45 * DEGREE), 14.916 * NM, 1e-3 * NM);
    expectNear(slitColours(RED, 8 * MM, 300 * MM, 45 * DEGREE), 23.865 * NM, 1e-3 * NM);
  });
  it('smear what stands behind the plate', () => {
    // sin 45° / 632.8 nm = 1.117425 mrad for each nm: 100 nm at 50 mm give 5.587 mm
    expectNear(colourSmear(RED, 100 * NM, 50 * MM, { object: 0, reference: 45 * DEGREE, image: 0 }), 5.587 * MM, 1e-3 * MM);
  });
});

it('nothing outside the domain throws or is not a number', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1e300, Infinity, -Infinity, NaN), between(-10, 10));
  fc.assert(fc.property(fc.array(any, { minLength: 5, maxLength: 5 }), fc.constantFrom<Order>(1, -1), fc.boolean(), ([a, b, c, d, e], m, reflection) => {
    const sines = recordingSines(reflection, a!, b!, c!, d!);
    const all = [
      imageCurvature(m, a!, b!, c!, d!), inPlaneCurvature(m, a!, b!, c!, d!, { object: e!, reference: a!, lamp: b!, image: c! }), objectDistance(m, a!, b!, c!, d!), widthOfImage(m, a!, b!, c!, d!), matchedReference(m, a!, b!),
      imageSine(m, a!, b!, c!, d!), slitColours(a!, b!, c!, d!), colourSmear(a!, b!, c!, { object: d!, reference: e!, image: a! }), ...(sines ? [sines.reference, sines.object] : []),
    ];
    for (const v of all) expect(Number.isFinite(v)).toBe(true);
  }), { numRuns: 2000 });
});
