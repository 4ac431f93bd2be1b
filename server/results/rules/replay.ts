/** Rules of what a finished hologram shows. Angles are those of where light comes from, from the plate's normal, above zero on the lamp's side; an image lies above zero behind the plate. */
import { imageSine } from '../../optics/replay/angles.ts';
import { imagesApart } from '../../optics/replay/apart.ts';
import { astigmaticSmear, lampSmear, PUPIL, smearsTogether, unseenSmear } from '../../optics/replay/blur.ts';
import { achromaticAngle, colourSeen, coloursOver, colourSmear } from '../../optics/replay/colours.ts';
import { depthOfImage, imagePlace, inPlanePlace, widthByObject, type Order } from '../../optics/replay/focus.ts';
import { sentColour, shareSent } from '../../optics/replay/layer.ts';
import { meetsPlate, parallaxAngle, viewingZone } from '../../optics/replay/view.ts';
import { cross, dot, unit, type Vector } from '../../optics/vectors.ts';
import type { Rule } from '../graph.ts';
import { smooth } from './slopes.ts';

const MEIER = 'Meier 1965, near the axis';
const GRATING = 'the grating equation; MIT OpenCourseWare MAS.450, “Transmission hologram equations”';
const BRAGG = 'Bragg’s condition in a layer (Kogelnik 1969); K_z → K_z/s where it shrinks (Bjelkhagen 1993, from memory)';
const WIDTH = 'm μ / (m μ (1 − R_O/R_R) + R_O/R_C)';

/** Curvature of the light that shows a hologram. Inputs: how far its lamp is. */
export const LAMP_CURVATURE: Rule = { name: 'curvature of the lamp’s light', formula: '1 / distance', compute: ([d]) => 1 / d!, partials: ([d]) => [-1 / d! ** 2] };
export const CONVERGING: Rule = { name: 'curvature of converging light', formula: '−1 / distance', compute: ([d]) => -1 / d!, partials: ([d]) => [1 / d! ** 2] };

/** Angle of the object light in the plane in which the reference comes, above zero on its side. Inputs: plate, its normal, the object, direction of the reference. */
export const OBJECT_BESIDE: Rule = smooth({
  name: 'angle of the object light', formula: 'arcsin of its part along the plate, in the direction from which the reference comes', source: 'geometry',
  compute: x => {
    const [plate, n, object, light] = [0, 3, 6, 9].map(i => [x[i]!, x[i + 1]!, x[i + 2]!] as Vector) as [Vector, Vector, Vector, Vector];
    const along = (v: Vector): Vector => { const into = dot(v, n); return [v[0] - into * n[0], v[1] - into * n[1], v[2] - into * n[2]]; };
    const side = along([-light[0], -light[1], -light[2]]);
    const from = unit([object[0] - plate[0], object[1] - plate[1], object[2] - plate[2]]);
    return Math.asin(Math.max(-1, Math.min(1, dot(along(from), unit(side)))));
  },
});

/** Distances, 1/m and 1: how far the object was, curvatures of the reference and of the lamp's light, ratio of wavelengths. */
const lights = (reference: number, lamp: number): { readonly reference: number; readonly lamp: number } => ({ reference, lamp });
export const placeOf = (m: Order): Rule => smooth({ name: 'place of the image', of: [m], curved: true, formula: `R_O · ${WIDTH} / m μ, which is 1 / (m μ (1/R_O − 1/R_R) + 1/R_C)`, source: MEIER, compute: ([o, r, c, mu]) => imagePlace(m, mu!, o!, lights(r!, c!)) });
export const sizeOf = (m: Order): Rule => smooth({ name: 'width of the image', of: [m], curved: true, formula: WIDTH, source: MEIER, compute: ([o, r, c, mu]) => widthByObject(m, mu!, o!, lights(r!, c!)) });
/** Inputs: width of the image, ratio of wavelengths. */
export const depthOf = (m: Order): Rule => smooth({ name: 'depth of the image', of: [m], formula: 'width² / (m μ)', source: MEIER, compute: ([w, mu]) => depthOfImage(m, mu!, w!) });
/** Inputs as of the place, then the angles of object, reference, lamp and image. */
export const otherPlaceOf = (m: Order): Rule => smooth({
  name: 'place of the image in the plane of the beams', of: [m], curved: true, formula: 'cos²θ_I / (m μ (cos²θ_O/R_O − cos²θ_R/R_R) + cos²θ_C/R_C)', source: 'Champagne 1967, near the axis',
  compute: ([o, r, c, mu, ao, ar, ac, ai]) => inPlanePlace(m, mu!, o!, lights(r!, c!), { object: ao!, reference: ar!, lamp: ac!, image: ai! }),
});
/** Inputs: ratio of wavelengths, angles of object, reference and lamp. */
export const SINE: Rule = smooth({ name: 'sine of the image’s angle', formula: 'μ (sin θ_O − sin θ_R) + sin θ_C', source: GRATING, compute: ([mu, o, r, c]) => imageSine(1, mu!, o!, r!, c!) });
/** Nothing where the light does not leave the plate. Input: its sine. */
export const ANGLE_OF_SINE: Rule = smooth({ name: 'angle of the image', formula: 'arcsin(μ (sin θ_O − sin θ_R) + sin θ_C)', source: GRATING, compute: ([s]) => Math.asin(s!) });

/** Inputs: place, angle and width of one image, then of the other; distance and angle of the eye, width of the object. */
export const APART: Rule = smooth({
  name: 'register of two images', curved: true, formula: 'the farthest that a point is seen beside the same point of the other image', source: 'geometry',
  compute: ([p, a, w, q, b, x, v, e, h]) => imagesApart({ distance: p!, angle: a!, width: w! }, { distance: q!, angle: b!, width: x! }, { distance: v!, angle: e! }, h! / 2),
});

/** Thickness of a finished layer beside that at the exposure. Inputs: shrinkage, then how far it was swollen. */
export const THICKNESS: Rule = smooth({ name: 'thickness of the finished layer', formula: '(1 − shrinkage) / (1 + pre-swell)', compute: ([s, swollen]) => (1 - s!) / (1 + (swollen ?? 0)) });
/** Inputs: wavelength, index, angles of reference and object, thickness beside that at the exposure, index at replay, angle of the lamp. */
export const COLOUR: Rule = smooth({
  name: 'colour of the image', formula: '2 n k̂·K / |K|², K the fringes in the finished layer', source: BRAGG,
  compute: ([w, n, r, o, s, now, lamp]) => sentColour({ reflection: true, wavelength: w!, index: n!, reference: r!, object: o! }, { thickness: s!, index: now! }, lamp!)?.wavelength ?? Number.NaN,
});
/** The same inputs, then thickness of the layer and the swing of its index, and the wavelength at replay. */
export const shareOf = (reflection: boolean): Rule => smooth({
  name: 'share of its brightness', of: [reflection], curved: true, formula: 'efficiency by how far the light misses the fringes of the finished layer, as a share of that at the recording', source: BRAGG,
  compute: ([w, n, r, o, s, now, lamp, d, n1, at]) => shareSent({ reflection, wavelength: w!, index: n!, reference: r!, object: o! }, { thickness: s!, index: now! }, d!, n1!, { wavelength: at!, lamp: lamp! }),
});
/** Ratio of the wavelength that an eye sees of white light. Inputs: angles of object, reference, lamp, and of the light that the eye sees. */
export const SEEN: Rule = smooth({ name: 'colour that the eye sees', formula: '(sin θ_I − sin θ_C) / (sin θ_O − sin θ_R)', source: GRATING, compute: ([o, r, c, i]) => colourSeen({ object: o!, reference: r!, lamp: c!, image: i! }) ?? Number.NaN });
/** Inputs: ratio of wavelengths, wavelength of the recording. */
export const IN_COLOUR: Rule = { name: 'wavelength of the image', formula: 'ratio · wavelength of the laser', compute: ([mu, w]) => mu! * w!, partials: ([mu, w]) => [w!, mu!] };

/** Inputs: size and distance of the lamp, place of the part, angles of lamp and image. */
export const LAMP_SMEAR: Rule = smooth({ name: 'smear by the lamp', formula: 'distance of the part · size / distance of the lamp · cos θ_C / cos θ_I', source: GRATING, compute: ([s, z, d, c, i]) => lampSmear(s!, z!, d!, { lamp: c!, image: i! }) });
/** Inputs: wavelength of the recording, width of the band, place of the part, angles of object, reference and image. */
export const COLOUR_SMEAR: Rule = smooth({ name: 'smear by colours', formula: 'distance of the part · band · |sin θ_O − sin θ_R| / (wavelength · cos θ_I)', source: GRATING, compute: ([w, band, d, o, r, i]) => colourSmear(w!, band!, d!, { object: o!, reference: r!, image: i! }) });
export const SMEARS: Rule = smooth({ name: 'blur', formula: 'root of the sum of the squares', compute: x => smearsTogether(...x) });
export const LEAST_OF: Rule = smooth({ name: 'band of colours', formula: 'the lesser of that of the lamp and that of the hologram', compute: x => Math.min(...x) });
/** What an eye does not see. Inputs: how far the eye is from the plate, place of the image. */
export const UNSEEN: Rule = smooth({ name: 'blur that no eye sees', formula: 'one minute of arc', source: 'common practice', compute: ([v, d]) => unseenSmear(v!, d!) });

/** Of an eye, whose pupil is 4 mm. Inputs: how far it is, place of the image, place of its lines across the plane of the beams. */
export const ASTIGMATIC: Rule = smooth({ name: 'least blur of an astigmatic image', curved: true, formula: 'p/2 · |1/v₁ − 1/v₂| · v₁', source: 'circle of least confusion', compute: ([v, a, b]) => astigmaticSmear(PUPIL, v!, a!, b!) });
/** Inputs: wavelength of the recording, side of the plate, place of the slit’s image, its width as a multiple, distance of the eye, of the slit from the plate, angle of the reference. */
export const COLOURS_OVER: Rule = smooth({ name: 'colours over the plate', curved: true, formula: 'wavelength · side · |1 − S/V| / (M · distance · sin θ_R)', source: 'similar triangles, the grating equation', compute: ([w, h, s, m, v, d, r]) => coloursOver(w!, h!, { place: Math.abs(s!), width: m! }, v!, d!, r!) });

/** Inputs: side of the plate, place of the image. */
export const PARALLAX: Rule = smooth({ name: 'parallax', formula: '2 arctan(side / 2 · distance)', source: 'geometry', compute: ([w, d]) => parallaxAngle(w!, d!) });
/** Inputs: side of the plate, place of the image, side of the object, width of the image as a multiple, distance of the eye. */
export const ZONE: Rule = smooth({ name: 'viewing zone', curved: true, formula: 'W (V + D) / |D| − B V / |D|', source: 'similar triangles', compute: ([w, d, b, size, v]) => viewingZone(w!, d!, b! * Math.abs(size!), v!) });
/** Inputs: place and angle of the image, distance and angle of the eye. */
export const MEETS: Rule = smooth({ name: 'where the line of sight meets the plate', formula: 'from the eye to the middle of the image', source: 'geometry', compute: ([d, i, v, e]) => meetsPlate({ distance: d!, angle: i! }, { distance: v!, angle: e! }) });
/** Inputs: a side, a multiple. */
export const TIMES: Rule = { name: 'image of a side', formula: 'side · width of its image', compute: ([a, b]) => a! * Math.abs(b!), partials: ([a, b]) => [Math.abs(b!), a! * Math.sign(b!)] };
/** Inputs: angle of the reference. */
export const ACHROMATIC: Rule = smooth({ name: 'achromatic angle', formula: 'arctan(sin θ_R)', source: 'Benton & Bove 2008, from memory', compute: ([r]) => achromaticAngle(r!) });

/** Seen by who looks at a finished hologram. */
export type LampSide = 'above' | 'below' | 'the left' | 'the right';
export type { Order };

/** Sine of five degrees: nearer to the normal than that light comes from no side. */
const SQUARELY = 0.087;

/** From where a finished hologram takes its light. `at`: plate, its normal, the object, direction of the reference; `up` is where its top was, seen from the object. Undefined where the reference came squarely. */
export function lampSide(at: readonly number[], up: string, order: Order): LampSide | undefined {
  const [plate, normal, object, light] = [0, 3, 6, 9].map(i => [at[i]!, at[i + 1]!, at[i + 2]!] as Vector) as [Vector, Vector, Vector, Vector];
  const back = ([x, y, z]: Vector): Vector => [-x, -y, -z];
  const n = dot(normal, [object[0] - plate[0], object[1] - plate[1], object[2] - plate[2]]) < 0 ? back(normal) : normal;
  const along = (v: Vector): Vector => { const into = dot(v, n); return [v[0] - into * n[0], v[1] - into * n[1], v[2] - into * n[2]]; };
  const high = unit(along([0, 0, 1]));
  const right = cross(back(n), high);
  const top = up === 'up' ? high : up === 'down' ? back(high) : up === 'right' ? right : back(right);
  // As recorded one looks at it from the side away from the object; flipped, from that of the object, and the light runs backwards.
  const source = order === 1 ? back(along(light)) : along(light);
  const [a, b] = [dot(source, top), dot(source, cross(order === 1 ? n : back(n), top))];
  if (Math.hypot(a, b) < SQUARELY) return undefined;
  return Math.abs(a) >= Math.abs(b) ? (a > 0 ? 'above' : 'below') : b > 0 ? 'the right' : 'the left';
}
