/** What a finished hologram shows: place, size, colour, blur and view, against published values, arithmetic by hand, and rays traced through the grating equation. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { imageSine } from '../../server/optics/replay/angles.ts';
import { imagesApart } from '../../server/optics/replay/apart.ts';
import { astigmaticSmear, lampSmear, smearsTogether, unseenSmear } from '../../server/optics/replay/blur.ts';
import { achromaticAngle, colourSeen, coloursOver, colourSmear } from '../../server/optics/replay/colours.ts';
import { depthOfImage, imagePlace, inPlanePlace, scaledRatios, widthByObject, type Order } from '../../server/optics/replay/focus.ts';
import { fringesAtReplay, sentColour, shareSent, tiltAfter, type Layer, type Recorded } from '../../server/optics/replay/layer.ts';
import { meetsPlate, parallaxAngle, viewingZone } from '../../server/optics/replay/view.ts';
import { between, centralDifference, expectNear, publishedFigures, publishedIds, publishedValue } from './outside.ts';

const DEGREE = Math.PI / 180;
const [MM, NM] = [1e-3, 1e-9];
const RED = 632.8 * NM;

interface Case { readonly inputs: { readonly R_o: number; readonly R_r: number | null; readonly R_c: number | null; readonly mu: number; readonly m: Order }; readonly expected: { readonly R_out: number; readonly M_lat: number; readonly M_long: number } }
const curvature = (mm: number | null): number => (mm === null ? 0 : 1 / (mm * MM));

describe('where an image is, how wide and how deep', () => {
  it.each(publishedIds('img-'))('%s', id => {
    const { inputs: { R_o, R_r, R_c, mu, m }, expected } = publishedFigures(id) as Case;
    const lights = { reference: curvature(R_r), lamp: curvature(R_c) };
    expectNear(imagePlace(m, mu, R_o * MM, lights), expected.R_out * MM, 1e-6 * Math.abs(expected.R_out * MM));
    const width = widthByObject(m, mu, R_o * MM, lights);
    expectNear(width, expected.M_lat, 1e-6 * expected.M_lat);
    expectNear(depthOfImage(m, mu, width), expected.M_long, 1e-6 * Math.abs(expected.M_long));
    expectNear(centralDifference(x => imagePlace(m, mu, x, lights), R_o * MM, 1e-4), expected.M_long, 1e-4 * Math.abs(expected.M_long));
  });
  it('that is farther than numbers go is as far as is promised, to the side to which it lies', () => {
    // 1/R_I = (2 − 4) + 2 is 0; then a little below it. At most 1e9 times as far as the object.
    expectNear(imagePlace(1, 1, 0.5, { reference: 4, lamp: 2 }), 0.5e9, 1);
    expectNear(imagePlace(1, 1, 0.5, { reference: 4 + 8e-12, lamp: 2 }), -0.5e9, 1);
  });
  it('of an object in the plate it is in the plate, as wide as the object', () => {
    expect(imagePlace(1, 0.84, 0, { reference: 1, lamp: 2 })).toBe(0);
    expect(widthByObject(1, 0.84, 0, { reference: 1, lamp: 2 })).toBe(1);
  });
  it('its depth goes by the square of its width: 3² / 1.5', () => {
    expectNear(depthOfImage(1, 1.5, 3), 6, 1e-12);
    expectNear(depthOfImage(-1, 1.5, -3), -6, 1e-12);
  });
  it('in the plane of the beams', () => {
    // Object squarely at 300 mm, parallel reference, lamp at 1000 mm, both at 45°: 1/R = 1/0.3 + cos²45° · 1 = 3.83333 per metre: 260.87 mm.
    expectNear(inPlanePlace(1, 1, 0.3, { reference: 0, lamp: 1 }, { object: 0, reference: 45 * DEGREE, lamp: 45 * DEGREE, image: 0 }), 0.26087, 1e-5);
  });
  it('a plate that has grown by 2 %', () => {
    // Fringes 1.02 times as far apart: 300 mm with parallel light 300 · 1.02² = 312.12 mm; sin 45° / 1.02 = 0.69324.
    const { angles, curvatures } = scaledRatios(1, 1.02);
    expectNear(imagePlace(1, curvatures, 0.3, { reference: 0, lamp: 0 }), 0.31212, 1e-9);
    expectNear(imageSine(1, angles, 0, 45 * DEGREE, 0), -0.693242, 1e-6);
  });
});

/** Rays traced through a plate in the plane z = 0: sources at their distances and angles in x, the grating equation at a point of the plate. `R` below zero: light that runs together. */
interface Bundle { readonly m: Order; readonly mu: number; readonly object: readonly [R: number, angle: number]; readonly reference: readonly [number, number]; readonly lamp: readonly [number, number] }
function sineAt([r, angle]: readonly [number, number], x: number, y: number): [number, number] {
  const [dx, dy, dz] = [r * Math.sin(angle) - x, -y, r * Math.cos(angle)];
  const l = Math.sign(r) * Math.hypot(dx, dy, dz);
  return [dx / l, dy / l];
}
function rayAt(b: Bundle, x: number, y: number): [number, number, number] {
  const [o, r, c] = [b.object, b.reference, b.lamp].map(s => sineAt(s, x, y)) as [[number, number], [number, number], [number, number]];
  const [sx, sy] = [0, 1].map(i => b.m * b.mu * (o[i]! - r[i]!) + c[i]!) as [number, number];
  return [sx, sy, Math.sqrt(1 - sx ** 2 - sy ** 2)];
}
/** Distances from the plate along the middle ray at which rays from ±h meet: across the plane of the beams, and in it. */
function traced(b: Bundle, h: number): { readonly across: number; readonly inPlane: number } {
  const side = rayAt(b, 0, h);
  // Rays from (0, ±h) are mirror images: they meet where y is 0.
  const across = -h / side[1];
  const [p, q] = [rayAt(b, h, 0), rayAt(b, -h, 0)];
  // h + t p_x = −h + u q_x and t p_z = u q_z
  const t = (-2 * h) / (p[0] - (p[2] / q[2]) * q[0]);
  return { across, inPlane: Math.sign(t) * Math.hypot(h + t * p[0], t * p[2]) };
}

it('near the axis rays through the grating meet where the formulas say', () => {
  const angle = between(-1, 1);
  fc.assert(fc.property(fc.constantFrom<Order>(1, -1), between(0.75, 1.3), between(0.1, 0.6), angle, between(0.5, 3), angle, between(0.5, 3), angle, fc.boolean(), (m, mu, ro, o, rr, r, rc, c, converging) => {
    const sine = imageSine(m, mu, o, r, c);
    fc.pre(Math.abs(sine) < 0.95);
    const image = Math.asin(sine);
    const bundle: Bundle = { m, mu, object: [ro, o], reference: [rr, r], lamp: [converging ? -rc : rc, c] };
    const lights = { reference: 1 / rr, lamp: 1 / bundle.lamp[0] };
    const found = traced(bundle, 1e-5);
    const close = (exact: number, formula: number): void => { if (Math.abs(exact) < 20) expectNear(formula, exact, 2e-3 * Math.abs(exact)); };
    close(found.across, imagePlace(m, mu, ro, lights));
    close(found.inPlane, inPlanePlace(m, mu, ro, lights, { object: o, reference: r, lamp: c, image }));
  }), { numRuns: 500 });
});
it('far from the axis the ray of a published case crosses elsewhere', () => {
  // Parallel reference and lamp at 0°, 632.8 → 532 nm, object at 300 mm: through x = 40 mm the exact ray crosses at 357.771 mm, the formula gives 356.842 mm.
  const [sx, , cz] = rayAt({ m: 1, mu: 532 / 632.8, object: [0.3, 0], reference: [1e9, 0], lamp: [1e9, 0] }, 0.04, 0);
  expectNear((-0.04 / sx) * cz, 0.357771, 1e-6);
  expectNear(imagePlace(1, 532 / 632.8, 0.3, { reference: 0, lamp: 0 }), 0.356842, 1e-6);
});

interface Shrunk { readonly inputs: { readonly obj: number; readonly ref: number; readonly n: number; readonly rec_nm: number; readonly s: number; readonly n2: number; readonly ill: number }; readonly expected: { readonly wavelength_nm: number; readonly out_deg: number } }
describe('a layer that has shrunk', () => {
  it.each(publishedIds('shrink-'))('%s', id => {
    const { inputs: x, expected } = publishedFigures(id) as Shrunk;
    const sent = sentColour({ reflection: true, wavelength: x.rec_nm * NM, index: x.n, reference: x.ref * DEGREE, object: x.obj * DEGREE }, { thickness: x.s, index: x.n2 }, x.ill * DEGREE)!;
    expectNear(sent.wavelength / NM, expected.wavelength_nm, 1e-6 * expected.wavelength_nm);
    expectNear(Math.asin(sent.sine) / DEGREE, expected.out_deg, 1e-5);
  });
  const squarely: Recorded = { reflection: true, wavelength: RED, index: 1.52, reference: 0, object: 0 };
  it('another index moves the colour too', () => {
    // 632.8 · 0.85 · 1.55/1.63 = 511.481 nm
    expectNear(sentColour({ ...squarely, index: 1.63 }, { thickness: 0.85, index: 1.55 }, 0)!.wavelength / NM, 511.481, 1e-3);
  });
  it('lit at 45°, one that was recorded squarely is mirror-like in green', () => {
    // 632.8 · √(1 − 0.5/1.52²) = 560.157 nm, at 45°
    const sent = sentColour(squarely, { thickness: 1, index: 1.52 }, 45 * DEGREE)!;
    expectNear(sent.wavelength / NM, 560.157, 1e-3);
    expectNear(sent.sine, Math.SQRT1_2, 1e-9);
  });
  it('tilts its planes', () => {
    // tan 13.861° = 0.246768; / 0.85 = 0.290315: 16.188°
    expectNear(tiltAfter(13.861 * DEGREE, 0.85) / DEGREE, 16.188, 1e-3);
    // 45° and 0° from one side lie 27.7233° apart inside: planes at half of that from the normal.
    const recorded: Recorded = { reflection: false, wavelength: RED, index: 1.52, reference: 45 * DEGREE, object: 0 };
    const tilt = (thickness: number): number => { const [kx, kz] = fringesAtReplay(recorded, { thickness, index: 1.52 }); return Math.abs(Math.atan(kz / kx)) / DEGREE; };
    expectNear(tilt(1), 13.8616, 1e-4);
    expectNear(tilt(0.85), 16.188, 1e-3);
  });
  it('a transmission hologram is met by its own reference in its own colour', () => {
    fc.assert(fc.property(fc.boolean(), between(-1, 1), between(-0.4, 0.4), between(1.4, 1.7), (reflection, reference, object, index) => {
      fc.pre(Math.abs(reference - object) > 0.05);
      const sent = sentColour({ reflection, wavelength: RED, index, reference, object }, { thickness: 1, index }, reference)!;
      expectNear(sent.wavelength, RED, 1e-9 * RED);
      expectNear(sent.sine, Math.sin(object), 1e-9);
    }));
  });
  it('sends nothing where it has no fringes, to a lamp on their other side, or beyond all colours', () => {
    const layer: Layer = { thickness: 1, index: 1.5 };
    const crossed: Recorded = { reflection: false, wavelength: RED, index: 1.5, reference: 45 * DEGREE, object: 0 };
    expect(sentColour({ ...crossed, object: 45 * DEGREE }, layer, 45 * DEGREE)).toBeUndefined();
    expect(sentColour(crossed, layer, -45 * DEGREE)).toBeUndefined();
    // The planes halve both directions in the layer, 28.1° and 0. A lamp is met by λ sin γ / sin 14.1°, γ its angle from them in the layer: on the side of the reference above 0, and next to nothing along them.
    expectNear(sentColour(crossed, layer, 45 * DEGREE)!.wavelength, RED, 1e-15);
    const along = Math.asin(1.5 * Math.sin(Math.asin(Math.SQRT1_2 / 1.5) / 2));
    expect(sentColour(crossed, layer, along + 1e-4)).toBeUndefined();
    // Of directions 0.0535° apart in the layer, a lamp at 60° (35.3°), γ 7.2°: λ sin 7.2° / sin 0.0267° = 170 µm.
    expect(sentColour({ ...crossed, object: 44.9 * DEGREE }, layer, 60 * DEGREE)).toBeUndefined();
  });
  it('sends less of a colour that misses its fringes', () => {
    const layer: Layer = { thickness: 1, index: 1.52 };
    expectNear(shareSent(squarely, layer, 7e-6, 0.01, { wavelength: RED, lamp: 0 }), 1, 1e-12);
    // Kogelnik, reflection, squarely, weak: η = ν² sin²ξ/ξ² with ξ = (2π n d/λ₀)(λ − λ₀)/λ₀ and ν as 1/λ. 640 nm: 2π · 1.52 · 7/0.6328 = 105.6466; · 7.2/632.8 = 1.202047;
    // (0.932781/1.202047)² = 0.602167; · (632.8/640)² = 0.588695
    expectNear(shareSent(squarely, layer, 7e-6, 0.0005, { wavelength: 640 * NM, lamp: 0 }), 0.588695, 2e-3);
    // Shrunk to 95 % it is met by 601.16 nm and 6.65 µm deep, so that 2πnd/λ₀ is 105.6465 as before. 607 nm is 1.009715 of that; Kogelnik's c_S is 1 − K/β, so −1.019429, by which
    // ξ = 105.6465 · 0.009715/1.019429 = 1.006748, and sin²ξ/ξ² = 0.704648; ν² beside the best (0.95 · 632.8/607)²/1.019429 = 0.962157
    expectNear(shareSent(squarely, { thickness: 0.95, index: 1.52 }, 7e-6, 0.0005, { wavelength: 607 * NM, lamp: 0 }), 0.704648 * 0.962157, 2e-3);
    expect(shareSent(squarely, layer, 7e-6, 0.01, { wavelength: 532 * NM, lamp: 0 })).toBeLessThan(0.05);
  });
});

describe('a plate that has stretched', () => {
  it('has its fringes farther apart along the surface, and as far along its normal', () => {
    const recorded: Recorded = { reflection: true, wavelength: RED, index: 1.52, reference: 0.6, object: -0.2 };
    const [kx, kz] = fringesAtReplay(recorded, { thickness: 1, index: 1.52 });
    const [stretched, along] = fringesAtReplay(recorded, { thickness: 1, index: 1.52, scale: 1.02 });
    // (sin θ_O − sin θ_R)/λ, and 1.02 times as far apart
    expectNear(kx * RED, Math.sin(-0.2) - Math.sin(0.6), 1e-9);
    expectNear(stretched * RED, (Math.sin(-0.2) - Math.sin(0.6)) / 1.02, 1e-9);
    expect(along).toBe(kz);
  });
});

describe('two images on one plate, for an eye', () => {
  // Similar triangles: a point at x, b behind the plate, is seen at x + (x_eye − x) b/(b + v) of the plate by an eye v before it.
  it('one behind the other, straight before the eye, differ at the edges', () => {
    // 30 mm off the middle, 100 and 200 mm behind, from 400 mm: 30 · 400/500 = 24 and 30 · 400/600 = 20; 4 mm, as seen at the first · 500/400
    expectNear(imagesApart({ distance: 0.1, angle: 0, width: 1 }, { distance: 0.2, angle: 0, width: 1 }, { distance: 0.4, angle: 0 }, 0.03), 5 * MM, 1e-12);
  });
  it('one aside and the other twice as wide differ most at one edge', () => {
    // sin 0.6: 60 mm aside and 80 mm behind; 30, 60, 90 mm · 400/480 = 25, 50, 75; the other −60, 0, 60 · 400/500 = −48, 0, 48: 73, 50, 27; 73 · 480/400
    expectNear(imagesApart({ distance: 0.1, angle: Math.asin(0.6), width: 1 }, { distance: 0.1, angle: 0, width: 2 }, { distance: 0.4, angle: 0 }, 0.03), 87.6 * MM, 1e-12);
  });
  it('one before the plate and one in it', () => {
    // 30 · 400/300 = 40 and 30: 10 mm, as seen at the first · 300/400
    expectNear(imagesApart({ distance: -0.1, angle: 0, width: 1 }, { distance: 0, angle: 0, width: 1 }, { distance: 0.4, angle: 0 }, 0.03), 7.5 * MM, 1e-12);
  });
  it('for an eye aside differ by how deep they are', () => {
    // The eye 300 mm aside, 400 before: 0.8 x + 60 and x · 2/3 + 100 of 100 and 200 mm behind; 44 mm at x = −30; · 500/400
    expectNear(imagesApart({ distance: 0.1, angle: 0, width: 1 }, { distance: 0.2, angle: 0, width: 1 }, { distance: 0.5, angle: Math.asin(0.6) }, 0.03), 55 * MM, 1e-12);
  });
});

it('a plate that parts no colours sends none to an eye', () => {
  expect(colourSeen({ object: 0.5, reference: 0.5, lamp: 0.2, image: 0.3 })).toBeUndefined();
});

describe('sharpness', () => {
  it('a lamp of 3 mm at 1.5 m smears 50 mm by 0.1 mm, aslant by less', () => {
    expectNear(lampSmear(3 * MM, 1.5, 50 * MM, { lamp: 0, image: 0 }), 0.1 * MM, 1e-9);
    expectNear(lampSmear(3 * MM, 1.5, 50 * MM, { lamp: 45 * DEGREE, image: 0 }), 0.0707 * MM, 5e-8);
    // an image at 60°: cos 60° is 1/2
    expectNear(lampSmear(3 * MM, 1.5, 50 * MM, { lamp: 0, image: 60 * DEGREE }), 0.2 * MM, 1e-9);
    // the sun, 9.3 mrad wide
    expectNear(lampSmear(9.3 * MM, 1, -50 * MM, { lamp: 0, image: 0 }), 0.465 * MM, 1e-9);
  });
  it('the band of a reflection hologram smears as the surface parts colours', () => {
    // 15 nm at 1.117425 mrad/nm are 16.76 mrad; at 50 mm 0.838 mm; nothing where the fringes lie along the surface
    expectNear(colourSmear(RED, 15 * NM, 50 * MM, { object: 0, reference: 45 * DEGREE, image: 0 }), 0.838 * MM, 1e-6);
    // an image at 60° twice that, by 1/cos 60°
    expectNear(colourSmear(RED, 15 * NM, 50 * MM, { object: 0, reference: 45 * DEGREE, image: 60 * DEGREE }), 1.676 * MM, 2e-6);
    expect(colourSmear(RED, 15 * NM, 50 * MM, { object: 45 * DEGREE, reference: 45 * DEGREE, image: 45 * DEGREE })).toBe(0);
  });
  it('smears add as squares', () => expect(smearsTogether(3, 4)).toBe(5));
  it('an eye at 500 mm does not see 0.1454 mm', () => expectNear(unseenSmear(0.5, 0), 0.1454 * MM, 5e-8));
  it('an image 250 mm behind the plate is half as far again, one before it half as far', () => {
    expectNear(unseenSmear(0.5, 0.25), 0.2182 * MM, 5e-8);
    expectNear(unseenSmear(0.5, -0.25), 0.0727 * MM, 5e-8);
  });
});

describe('the slit of a rainbow hologram', () => {
  // Recorded with 632.8 nm, 45°, slit at 300 mm straight before the plate, light parallel: place along the ray, and height off the normal. At the true wavelength the slit is where it was.
  it.each([[480, 9.831, 395.5, 68.54], [532, 6.467, 356.84, 40.45], [580, 3.382, 327.31, 19.35], [660, -1.742, 287.64, -8.75]])('%i nm', (nm, out, place, height) => {
    const image = Math.asin(imageSine(1, nm / 632.8, 0, 45 * DEGREE, 45 * DEGREE));
    const r = imagePlace(1, nm / 632.8, 0.3, { reference: 0, lamp: 0 });
    expectNear(image / DEGREE, out, 1e-3);
    expectNear(r / MM, place, 0.01);
    expectNear((r * Math.tan(image)) / MM, height, 0.01);
    expectNear(colourSeen({ object: 0, reference: 45 * DEGREE, lamp: 45 * DEGREE, image })! * 632.8, nm, 1e-6);
  });
  it.each(['achrom-45'])('tipped: %s', id => {
    const value = publishedValue(id);
    value.check(achromaticAngle(value.input('ref_deg') * DEGREE) / DEGREE);
  });
  it('tipped for 60°', () => {
    // arctan 0.8660254 = 40.893°
    expectNear(achromaticAngle(60 * DEGREE) / DEGREE, 40.893, 1e-3);
  });
  it('no colour reaches an eye on the far side of the lamp', () => expect(colourSeen({ object: 0, reference: 45 * DEGREE, lamp: 45 * DEGREE, image: 50 * DEGREE })).toBeUndefined());
});

describe('the view', () => {
  it('round an image 50 mm off, through 100 mm of plate, 90°', () => {
    expectNear(parallaxAngle(100 * MM, 50 * MM) / DEGREE, 90, 1e-9);
    expectNear(parallaxAngle(100 * MM, 0) / DEGREE, 180, 1e-9);
  });
  it('all of an image is seen from less the wider it is', () => {
    // Plate 100 mm, image 40 mm wide 100 mm behind it, eye at 500 mm: (100 · 600 − 40 · 500)/100 = 400 mm; as far before it (100 · 400 − 20000)/100 = 200 mm.
    expectNear(viewingZone(0.1, 0.1, 0.04, 0.5), 0.4, 1e-12);
    expectNear(viewingZone(0.1, -0.1, 0.04, 0.5), 0.2, 1e-12);
  });
  it('the line to an eye meets the plate', () => {
    // image 100 mm behind, squarely; eye 500 mm off at 30°: aside 250, off 433.013 mm; 250 · 100/533.013 = 46.903 mm
    expectNear(meetsPlate({ distance: 0.1, angle: 0 }, { distance: 0.5, angle: 30 * DEGREE }), 0.046903, 1e-6);
    expect(meetsPlate({ distance: 0, angle: 0 }, { distance: 0.5, angle: 0.7 })).toBe(0);
    // By 3, 4, 5 and 7, 24, 25: from 300 mm aside and 400 behind to 280 the other way and 960 before it: 300 − 580 · 400/1360 = 129.412 mm.
    expectNear(meetsPlate({ distance: 0.5, angle: Math.asin(0.6) }, { distance: 1, angle: -Math.asin(0.28) }), 0.129412, 1e-6);
  });
});

it('nothing outside the domain throws or is not a number', () => {
  const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1e300, Infinity, -Infinity, NaN), between(-10, 10));
  fc.assert(fc.property(fc.array(any, { minLength: 5, maxLength: 5 }), fc.constantFrom<Order>(1, -1), fc.boolean(), ([a, b, c, d, e], m, reflection) => {
    const recorded: Recorded = { reflection, wavelength: a!, index: b!, reference: c!, object: d! };
    const layer: Layer = { thickness: e!, index: a!, scale: b! };
    const sent = sentColour(recorded, layer, c!);
    const all = [
      widthByObject(m, a!, b!, { reference: c!, lamp: d! }), imagePlace(m, a!, b!, { reference: c!, lamp: d! }), inPlanePlace(m, a!, b!, { reference: c!, lamp: d! }, { object: e!, reference: a!, lamp: b!, image: c! }), depthOfImage(m, a!, b!),
      ...Object.values(scaledRatios(a!, b!)), ...(sent ? [sent.wavelength, sent.sine] : []), shareSent(recorded, layer, d!, e!, { wavelength: a!, lamp: b! }), tiltAfter(a!, b!), lampSmear(a!, b!, c!, { lamp: d!, image: e! }), smearsTogether(a!, b!),
      unseenSmear(a!, b!), colourSeen({ object: a!, reference: b!, lamp: c!, image: d! }) ?? 0, achromaticAngle(a!), parallaxAngle(a!, b!), viewingZone(a!, b!, c!, d!), meetsPlate({ distance: a!, angle: b! }, { distance: c!, angle: d! }),
    ];
    for (const v of all) expect(Number.isFinite(v)).toBe(true);
  }), { numRuns: 2000 });
});

describe('two image distances, and bands of colours', () => {
  it('the least blur between them is half the pupil by the difference of their vergences', () => {
    // 300 mm off: v = 500 and 550 mm, 2 − 1.818182 = 0.181818 dpt; 2 mm of that at 500 mm: 0.181818 mm
    expect(astigmaticSmear(4e-3, 0.3, 0.2, 0.25) * 1e3).toBeCloseTo(0.181818, 6);
    expect(astigmaticSmear(4e-3, 0.3, 0.2, 0.2)).toBe(0);
  });
  it('an eye in the image of the slit has one colour, any other those of a slit as wide as the plate is seen through there', () => {
    // 100 mm · (1 − 0.4/0.8) = 50 mm: 632.8 nm · 50/(300 · 0.5) = 210.933 nm
    expect(coloursOver(632.8e-9, 0.1, { place: 0.4, width: 1 }, 0.8, 0.3, Math.PI / 6) * 1e9).toBeCloseTo(210.933, 3);
    // a slit imaged twice as wide counts for half
    expect(coloursOver(632.8e-9, 0.1, { place: 0.4, width: 2 }, 0.8, 0.3, Math.PI / 6) * 1e9).toBeCloseTo(210.933 / 2, 3);
    expect(coloursOver(632.8e-9, 0.1, { place: 0.4, width: 1 }, 0.4, 0.3, Math.PI / 6)).toBe(0);
  });
  it('nothing outside the domain throws or is not a number', () => {
    const any = fc.oneof(fc.double(), fc.constantFrom(NaN, Infinity, -Infinity, 0));
    fc.assert(fc.property(any, any, any, any, any, any, (a, b, c, d, e, f) => {
      expect(Number.isFinite(astigmaticSmear(a, b, c, d))).toBe(true);
      expect(Number.isFinite(coloursOver(a, b, { place: c, width: d }, e, f, a))).toBe(true);
    }));
  });
});
