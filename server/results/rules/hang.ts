/** Rules back from where a finished hologram will hang to its recording. Angles are those of where light comes from, from the plate's normal, above zero on the lamp's side; an image lies above zero behind the plate. */
import { recordingSines } from '../../optics/replay/angles.ts';
import { colourSmear, slitColours } from '../../optics/replay/colours.ts';
import { inPlaneCurvature, matchedReference, objectDistance, widthOfImage, type Order } from '../../optics/replay/focus.ts';
import type { Rule } from '../graph.ts';
import { smooth } from './slopes.ts';

const MEIER = 'Meier 1965, near the axis';
const layered = 'the fringes in the layer are the same at the recording and at replay (Bragg; Snell)';

/** An angle by heights. Inputs: height of what is there, height of the plate, distance. Nothing where it is higher than it is far. */
export const BY_HEIGHT: Rule = smooth({ name: 'angle by heights', formula: 'arcsin((height − height of the plate) / distance)', compute: ([h, p, d]) => Math.asin((h! - p!) / d!) });

/** Wavelength at replay beside that of the recording. Inputs: both. */
export const WAVELENGTH_RATIO: Rule = { name: 'ratio of wavelengths', formula: 'wavelength of the lamp / wavelength of the laser', compute: ([l, r]) => l! / r!, partials: ([l, r]) => [1 / r!, -l! / r! ** 2] };

/** The angle of the lamp, counted to its own side; of one that stands behind the plate from the normal there. */
export const LAMP_ANGLE: Rule = {
  name: 'angle of the lamp', formula: 'to its own side, from the nearer normal',
  compute: ([a]) => (Math.abs(a!) > Math.PI / 2 ? Math.PI - Math.abs(a!) : Math.abs(a!)), partials: ([a]) => [a! < 0 === Math.abs(a!) > Math.PI / 2 ? 1 : -1],
};

/** Where the light of the image comes from, seen from the plate: opposite to who looks. */
export const SIGHT: Rule = { name: 'line of sight', formula: 'opposite to the viewer', linear: true, compute: ([v]) => -v!, partials: () => [-1] };

/** Angle of the reference or of the object light at the recording. Inputs: angle of the lamp, from where the image's light comes; then, where the lamp has another wavelength, their ratio and the index of the layer. */
export const recordingAngle = (of: 'reference' | 'object', reflection: boolean): Rule => smooth({
  name: `${of} by replay`, of: [of, reflection], formula: of === 'reference' ? 'as the lamp will stand; k_O − k_R in the layer as at replay' : 'along the line of sight; k_O − k_R in the layer as at replay', source: layered,
  compute: ([lamp, image, ratio, index]) => {
    const sines = recordingSines(reflection, ratio ?? 1, index ?? 1.5, lamp!, image!);
    // light that would have to be more slanted than any is has no angle, and so no value
    return sines ? Math.asin(sines[of]) : Number.NaN;
  },
});

/** Why a plate cannot be recorded for such a replay: the laser's waves are too long for its fringes, or a beam would have to be more slanted than light from air can be. */
export function unmade(reflection: boolean, ratio: number, index: number, lamp: number, image: number): 'too fine' | 'too slanted' | undefined {
  const sines = recordingSines(reflection, ratio, index, lamp, image);
  return !sines ? 'too fine' : Math.abs(sines.reference) > 1 || Math.abs(sines.object) > 1 ? 'too slanted' : undefined;
}

/** Distance from the plate from which the reference has to spread, or, where the image is shown by the reference run backwards, at which it has to run together. Inputs: distance of the lamp, ratio of wavelengths. */
export const matchedDistance: Rule = smooth({
  name: 'reference by replay', formula: 'distance of the lamp · ratio of wavelengths', source: MEIER,
  compute: ([lamp, ratio]) => 1 / matchedReference(1, ratio ?? 1, 1 / lamp!),
});

/**
 * Distance of the object at the recording, below zero where its light has to run together behind the plate. Inputs: distance of the image; where the reference is not the matched one, distance of the lamp and curvature of the reference;
 * where the ratio of wavelengths is not 1, that, by `has`.
 */
export const objectBack = (order: Order, has: Has): Rule => smooth({
  name: 'object by replay', of: [order, has.reference, has.ratio], formula: has.reference ? 'm μ R_I / (1 + R_I (m μ / R_R − 1 / R_C))' : 'm · distance of the image · ratio of wavelengths', source: MEIER, curved: has.reference,
  compute: x => { const { image, reference, lamp, ratio } = read(x, has); return objectDistance(order, ratio, image, reference, lamp); },
});

/** Width of the image as a multiple of the object's. Inputs as `objectBack`. */
export const widthBack = (order: Order, has: Has): Rule => smooth({
  name: 'width by replay', of: [order, has.reference, has.ratio], formula: '1 + R_I (m μ / R_R − 1 / R_C)', source: MEIER,
  compute: x => { const { image, reference, lamp, ratio } = read(x, has); return widthOfImage(order, ratio, image, reference, lamp); },
});

export interface Has { readonly reference: boolean; readonly ratio: boolean }
function read([image, ...more]: readonly number[], has: Has): { readonly image: number; readonly lamp: number; readonly reference: number; readonly ratio: number } {
  const ratio = has.ratio ? more[has.reference ? 2 : 0]! : 1;
  // With the matched reference the lamp’s distance falls out.
  return has.reference ? { image: image!, ratio, lamp: 1 / more[0]!, reference: more[1]! } : { image: image!, ratio, lamp: 0, reference: 0 };
}

/** Curvature of a spread beam. Inputs: way past its focus, Rayleigh range. */
export const CURVATURE: Rule = smooth({ name: 'curvature', formula: 'z / (z² + z_R²)', compute: ([z, r]) => z! / (z! ** 2 + r! ** 2) });

/** Colours that an eye sees at once. Inputs: wavelength, width of the slit, distance from it to the plate, angle of the reference. */
export const SLIT_COLOURS: Rule = smooth({
  name: 'colours through a slit', formula: 'wavelength · width / (distance · sin of the reference angle)', source: 'the grating equation; Benton & Bove 2008, from memory',
  compute: ([w, a, d, angle]) => slitColours(w!, a!, d!, angle!),
});

/** Where the image is sharp in the plane of reference and object, with the reference that fits the lamp. Inputs: distance of the image across that plane, not 0, of the lamp, ratio of wavelengths, angles of lamp, image, reference, object. */
export const OTHER_FOCUS: Rule = smooth({
  name: 'other focus', formula: 'R_I in the plane of the beams: cos²θ_I / (μ (cos²θ_O / R_O − cos²θ_R / R_R) + cos²θ_C / R_C)', source: 'Champagne 1967, near the axis',
  compute: ([at, far, ratio, lamp, image, reference, object]) => 1 / inPlaneCurvature(1, ratio!, 1 / objectDistance(1, ratio!, at!, matchedReference(1, ratio!, 1 / far!), 1 / far!), matchedReference(1, ratio!, 1 / far!), 1 / far!, {
    lamp: lamp!, image: image!, reference: reference!, object: object!,
  }),
});

/** Band of colours for which the smear is told, m. */
export const SMEAR_BAND = 10e-9;
/** Smear by each 10 nm of colour. Inputs: wavelength, distance of the image, angles of object, reference and image. */
export const SMEAR: Rule = smooth({
  name: 'smear by colour', formula: 'distance · 10 nm · |sin θ_O − sin θ_R| / (wavelength · cos θ_I)', source: 'the grating equation', compute: ([w, d, object, reference, image]) => colourSmear(w!, SMEAR_BAND, d!, { object: object!, reference: reference!, image: image! }),
});
