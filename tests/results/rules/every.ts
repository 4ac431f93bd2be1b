/**
 * Every rule with a worked figure, and with the inputs between which its slopes are tried. Figures are by hand: what is behind `is` is the arithmetic, in the words of its source where it needs any.
 * SI; angles in radians, `rad` makes them of degrees.
 */
import { acrylic, fusedSilica } from '../../../server/optics/glass.ts';
import type { Rule } from '../../../server/results/graph.ts';
import * as beams from '../../../server/results/rules/beams.ts';
import * as carried from '../../../server/results/rules/carried.ts';
import * as coherence from '../../../server/results/rules/coherence.ts';
import * as exposures from '../../../server/results/rules/exposures.ts';
import * as eyes from '../../../server/results/rules/eyes.ts';
import * as fringes from '../../../server/results/rules/fringes.ts';
import * as geometry from '../../../server/results/rules/geometry.ts';
import * as hang from '../../../server/results/rules/hang.ts';
import * as image from '../../../server/results/rules/image.ts';
import * as lengths from '../../../server/results/rules/lengths.ts';
import * as light from '../../../server/results/rules/light.ts';
import * as losses from '../../../server/results/rules/losses.ts';
import * as maps from '../../../server/results/rules/maps.ts';
import * as movement from '../../../server/results/rules/movement.ts';
import * as objectLight from '../../../server/results/rules/object-light.ts';
import * as object from '../../../server/results/rules/object.ts';
import * as polarization from '../../../server/results/rules/polarization.ts';
import * as readings from '../../../server/results/rules/readings.ts';
import * as replay from '../../../server/results/rules/replay.ts';
import * as screen from '../../../server/results/rules/screen.ts';
import * as splitter from '../../../server/results/rules/splitter.ts';
import * as table from '../../../server/results/rules/table.ts';

/** Between which values an input is moved; a single number is not moved. */
type Between = number | readonly [number, number];

export interface Use {
  /** the rule, or what makes it */
  readonly exported: unknown;
  readonly rule: Rule;
  /** the same rule, made anew */
  readonly again: () => Rule;
  readonly at: readonly number[];
  readonly is: number;
  readonly between: readonly Between[] | undefined;
}

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
/** The same for all of some inputs. */
const all = (count: number, from: number, to: number): Between[] => Array.from({ length: count }, () => [from, to] as const);

const use = (exported: Rule, at: readonly number[], is: number, between?: readonly Between[]): Use => ({ exported, rule: exported, again: () => exported, at, is, between });
const made = <T extends readonly unknown[]>(exported: (...args: T) => Rule, args: T, at: readonly number[], is: number, between?: readonly Between[]): Use => ({ exported, rule: exported(...args), again: () => exported(...args), at, is, between });

const POWER: Between = [1e-3, 2e-2];
const LIGHT: Between = [0.1, 5];
const SHARE: Between = [0.1, 0.9];
const WAVELENGTH: Between = [450e-9, 650e-9];
const LENGTH: Between = [0.1, 2];
const ANGLE: Between = [0.1, 1.2];
const RATIO: Between = [0.8, 1.2];

const C = 299_792_458;
const L = 500e-9;
/** Rayleigh range of a clean beam of radius 0.5 mm at 500 nm: π · 0.25 mm² / 500 nm. */
const Z = Math.PI / 2;
const W = 0.5e-3;

/** Refractive index of fused silica (Malitson 1965), wavelength in m. */
function silica(wavelength: number): number {
  const s = (wavelength * 1e6) ** 2;
  return Math.sqrt(1 + (0.6961663 * s) / (s - 0.0684043 ** 2) + (0.4079426 * s) / (s - 0.1162414 ** 2) + (0.8974794 * s) / (s - 9.896161 ** 2));
}
const N = silica(L);
/** N = n − λ dn/dλ. */
const GROUP = N - (L * (silica(L + 1e-11) - silica(L - 1e-11))) / 2e-11;

const FAR: fringes.Known = { by: 'angles', way: 'transmission', from: 'the side', far: true, spread: false, plate: false, object: false };
const FACING: fringes.Known = { ...FAR, way: 'reflection' };
const NEAR: fringes.Known = { ...FAR, far: false, object: true };
const AIR_ANGLES: readonly Between[] = [[0.3, 1], [-0.6, -0.05]];
const INDEX: Between = [1.45, 1.6];
const NO_MORE: hang.Has = { reference: false, ratio: false };
/** cos of the angle in a layer of index 1.5 of light at 30° in air: its sine is 1/3. */
const INSIDE = Math.sqrt(8) / 3;

export const EVERY: readonly Use[] = [
  use(beams.PAST_START, [1e-3], 0, [[1e-3, 2e-3]]),
  use(beams.RAYLEIGH_START, [2 * W, L, 1], Z, [[1e-3, 2e-3], WAVELENGTH, [1, 1.5]]),
  use(beams.BEAM_QUALITY, [4e-3, 1e-3, 1e-6], Math.PI),
  use(beams.BEAM_QUALITY, [1e-4, 1e-3, 1e-6], 1),
  use(beams.PAST_ON, [0.2, 0.3], 0.5, [LENGTH, LENGTH]),
  // q = i and f = 1: 1/q′ = −i − 1, q′ = (−1 + i)/2.
  use(beams.PAST_LENS, [0, 1, 1], -0.5),
  use(beams.RAYLEIGH_LENS, [0, 1, 1], 0.5),
  // At 60° f is half as long along the fold, and twice as long across it.
  made(beams.foldedPast, [true], [0, 1, 2, rad(60)], -0.5),
  made(beams.foldedPast, [false], [0, 1, 0.5, rad(60)], -0.5),
  made(beams.foldedRayleigh, [true], [0, 1, 2, rad(60)], 0.5),
  made(beams.foldedRayleigh, [false], [0, 1, 0.5, rad(60)], 0.5),
  use(beams.BEAM_RADIUS, [Z, Z, L, 1], W * Math.SQRT2),
  use(beams.BEAM_RADIUS, [0, Z, L, 4], W * 2),
  use(beams.BEAM_DIAMETER, [3e-3], 6e-3, [[1e-3, 5e-3]]),
  // λ f / w = 10 µm
  use(beams.PINHOLE_SHARE, [10e-6, L, 0.01, W], 1 - Math.exp(-(Math.PI ** 2) / 2)),
  use(beams.BEHIND_PINHOLE, [10e-3, 0.1, 0.9], 8.1e-3, [POWER, SHARE, SHARE]),

  // A square of 0.1 m on a face twice as wide: half of the face, and all of the light.
  use(carried.REACHED, [0, 0, 0, 0, 1, 0, 0.1, 0.1, 0, 1, 0, 0, 0, 1, 0, 0, -1, 0, 0.2, 0.1], 0.5),
  use(carried.TAKEN_UP, [0, 0, 0, 0, 1, 0, 0.1, 0.1, 0, 1, 0, 0, 0, 1, 0, 0, -1, 0, 0.2, 0.1], 1),
  use(carried.TAKEN_UP, [0, 0, 0, 0, 1, 0, 0.1, 0.1, 0, 1, 0, 0, 0, 1, 0, 0, -1, 0, 0.05, 0.1], 0.5),
  use(carried.THROWN_BACK, [0, 0, 0, 0, 1, 0, 0.1, 0.1, 0, 1, 0, 0, 1, 0, 0, -1, 0, 0.1, 0.05], 0.5),
  // Along the normal (1, 2, 2)/3 they are (0.4 + 0.4 − 0.2)/3 = 0.2 apart, and the light has a third of its way along it.
  use(carried.LONGER, [1, 1, 1, 1.4, 1.2, 0.9, 1, 2, 2, 2, 0, 0], 0.4 / 3),
  use(carried.LONGER, [0, 0, 0, 0.7, 0.2, 0, 0, -1, 0, Math.sin(rad(60)), Math.cos(rad(60)), 0], 0.2),

  // Two modes: cos² of half their phase, an eighth of a turn at a quarter of the revival distance.
  use(coherence.MODES_BRIGHTNESS, [0.15, 0.6, 2], 0.5, [[0.05, 0.25], [0.5, 0.7], 3]),
  made(coherence.lineBrightness, ['gaussian'], [0.3, C / 0.3 * ((2 * Math.LN2) / Math.PI)], 0.25, [LENGTH, [1e8, 3e8]]),
  made(coherence.lineBrightness, ['lorentzian'], [0.3, C / 0.3 * (Math.LN2 / Math.PI)], 0.25, [LENGTH, [1e8, 3e8]]),
  made(coherence.lineBrightness, ['rectangular'], [0.3, C / 0.6], (2 / Math.PI) ** 2, [LENGTH, [1e7, 1e8]]),
  made(coherence.linewidthFrom, ['gaussian'], [0.3, 0.5], (C / 0.3) * ((2 * Math.LN2) / Math.PI)),
  made(coherence.linewidthFrom, ['lorentzian'], [0.3, Math.exp(-1)], C / 0.3 / Math.PI),
  made(coherence.linewidthFrom, ['rectangular'], [0.3, 2 / Math.PI], C / 0.6),
  made(coherence.halfContrast, ['gaussian'], [1e9], (C / 1e9) * ((2 * Math.LN2) / Math.PI)),
  made(coherence.halfContrast, ['lorentzian'], [1e9], (C / 1e9) * (Math.LN2 / Math.PI)),
  // sin x = x/2 at 1.895494267
  made(coherence.halfContrast, ['rectangular'], [1e9], (C / 1e9) * (1.895494267033981 / Math.PI)),
  use(coherence.REVIVAL, [0.3], 0.6, [LENGTH]),
  use(coherence.MODE_SPACING, [0.3], C / 0.6),
  made(coherence.partMismatch, [0.5], [0.01, 0.04, rad(60)], 0.04, [[-0.1, 0.1], [0.01, 0.1], ANGLE]),
  made(coherence.partMismatch, [-0.5], [0.01, 0.04, rad(60)], -0.02, [[-0.1, 0.1], [0.01, 0.1], ANGLE]),

  made(exposures.sharedBy, [1], [0.3, 0.2], 0.5, all(2, 0.1, 0.4)),
  made(exposures.sharedBy, [2], [0.3, 0.2], 0.25, all(2, 0.1, 0.4)),
  use(exposures.SHARE_OF_TIME, [0.25, 8], 2, [SHARE, [1, 20]]),
  use(exposures.SHARE_OF_TIME, [0.25, 8, 0.5], 0.5, [SHARE, [1, 20], [0.7, 1]]),
  use(exposures.LEFT_BY_SHARE, [0.5, 0.4], 0.04),
  use(exposures.LOST_BY_SHARE, [0.5, 0.4], 0.96),
  use(exposures.SHARE_OF_LIGHT, [1, 4], 0.25, [LIGHT, LIGHT]),

  // 18 t^0.75 J/m² in a quarter of a second, and 10 W/m² on, through 7 mm (IEC 60825-1).
  use(eyes.EYE_LIMIT, [633e-9], 18 * 0.25 ** -0.25 * Math.PI * 3.5e-3 ** 2, [WAVELENGTH]),
  use(eyes.LONG_LOOK_LIMIT, [633e-9], 10 * Math.PI * 3.5e-3 ** 2, [[510e-9, 690e-9]]),
  // C = 10^(0.02 (475 − 450)) W/m², from 450 nm on, and 1 W/m² of bluer light.
  use(eyes.LONG_LOOK_LIMIT, [475e-9], Math.sqrt(10) * Math.PI * 3.5e-3 ** 2, [[451e-9, 499e-9]]),
  use(eyes.LONG_LOOK_LIMIT, [405e-9], Math.PI * 3.5e-3 ** 2, [[401e-9, 449e-9]]),
  use(eyes.TIMES_LIMIT, [2e-3, 1e-3], 2, [POWER, POWER]),

  made(fringes.alongSurface, [FAR, fringes.MIDDLE], [rad(30), 0], 0.5, AIR_ANGLES),
  made(fringes.alongSurface, [{ ...FAR, from: 'above' }, fringes.MIDDLE], [rad(30), rad(-30)], 1, AIR_ANGLES),
  made(fringes.acrossLayer, [FACING, fringes.MIDDLE], [0, 0, 1.5], 3, [...AIR_ANGLES, INDEX]),
  use(fringes.PER_METRE, [0.5, L], 1e6, [[0.2, 2], WAVELENGTH]),
  use(fringes.RESOLVING_SHARE, [1e6, 5e6], 0.2, [[1e5, 2e6], [1e6, 5e6]]),
  made(fringes.tilt, [FACING], [0, 0, 1.5], 0, [...AIR_ANGLES, INDEX]),
  made(fringes.tilt, [FAR], [rad(30), rad(-30), 1.5], rad(90), [[0.3, 1], [-0.2, -0.05], INDEX]),
  // f = 2n/λ: Q = 8π n d / λ
  made(fringes.volume, [FACING], [0, 0, 1.5, L, 7e-6], 8 * Math.PI * 1.5 * 14),
  made(fringes.efficiency, [FAR], [rad(30), rad(-30), 1.5, L, 7e-6, 0.02], Math.sin((Math.PI * 0.02 * 14) / INSIDE) ** 2),
  made(fringes.efficiency, [FACING], [0, 0, 1.5, L, 7e-6, 0.02], Math.tanh(Math.PI * 0.02 * 14) ** 2),
  // An object 0.1 m wide and 1 m off reaches sin(atan 0.05) to either side.
  made(fringes.separation, [NEAR, 'box'], [rad(30), 0, 1, 0.1, 0.1, 0], 0.5 / (3 * Math.sin(Math.atan(0.05))), [[0.5, 1], [-0.2, -0.05], [0.5, 1], [0.02, 0.1], [0.02, 0.1], [0.02, 0.05]]),
  made(fringes.againstBeams, [FACING, 'worst'], [0, 0], 2, AIR_ANGLES),
  made(fringes.againstBeams, [FACING, 'normal'], [rad(60), 0], 1.5, AIR_ANGLES),
  made(fringes.againstBeams, [FAR, 'surface'], [rad(30), rad(-30)], 1, AIR_ANGLES),
  made(fringes.againstBeams, [FAR, 'worst'], [rad(60), 0], 1, AIR_ANGLES),
  made(fringes.againstBeams, [FAR, 'surface'], [rad(60), 0], Math.sqrt(0.75), AIR_ANGLES),

  made(geometry.towards, [0], [1, 1, 0, 4, 5, 0], 0.6, all(6, -1, 1)),
  made(geometry.towards, [1], [1, 1, 0, 4, 5, 0], 0.8, all(6, -1, 1)),
  made(geometry.towards, [2], [0, 0, 1, 0, 3, 5], 0.8, all(6, -1, 1)),
  made(geometry.along, [0], [1, 1, 0, 4, 5, 0, 10], 7, [...all(6, -1, 1), LENGTH]),
  made(geometry.along, [1], [1, 1, 0, 4, 5, 0, 10], 9, [...all(6, -1, 1), LENGTH]),
  made(geometry.along, [2], [0, 0, 1, 0, 3, 5, 10], 9, [...all(6, -1, 1), LENGTH]),
  use(geometry.BEYOND, [1, 0.6, 10], 7, [LENGTH, [-1, 1], LENGTH]),
  made(geometry.turned, ['left', 1], [1, 0, 0], 1, all(3, -1, 1)),
  made(geometry.turned, ['right', 1], [1, 0, 0], -1, all(3, -1, 1)),
  made(geometry.turned, ['right', 1], [0.6, 0.8, 0], -0.6, all(3, -1, 1)),
  made(geometry.turned, ['up', 2], [1, 0, 0], 1, all(3, -1, 1)),
  made(geometry.turned, ['down', 2], [1, 0, 0], -1, all(3, -1, 1)),
  made(geometry.turned, ['back', 1], [0, 0.6, 0.8], -0.6, all(3, -1, 1)),
  made(geometry.turnedBy, [1], [1, 0, 0, rad(30)], 0.5, [...all(3, -1, 1), ANGLE]),
  made(geometry.headed, [1], [rad(30)], 0.5, [ANGLE]),
  made(geometry.headed, [2], [rad(70), rad(30)], 0.5, [ANGLE, ANGLE]),
  // Level 3 on and 4 aside: cos 30° of 3/5.
  made(geometry.facedAt, [0], [1, 2, 0, 4, 6, 5, rad(30)], Math.sqrt(0.75) * 0.6, [...all(6, -1, 1), ANGLE]),
  made(geometry.facedAt, [2], [0, 0, 0, 1, 1, 5, rad(30)], 0.5, [...all(6, -1, 1), ANGLE]),
  made(geometry.bisecting, [0], [1, 0, 0, 0, 1, 0], -Math.SQRT1_2, all(6, -1, 1)),
  use(geometry.FROM_NORMAL, [0, 1, 0, 0.5, -Math.sqrt(0.75), 0], rad(30), all(6, -1, 1)),
  use(geometry.BETWEEN, [1, 0, 0, 0.5, Math.sqrt(0.75), 0], rad(60), all(6, -1, 1)),
  use(geometry.INCIDENCE, [1, 0, 0, 0.5, Math.sqrt(0.75), 0], rad(60), all(6, -1, 1)),
  use(geometry.FOLD, [rad(30)], rad(120), [ANGLE]),
  use(geometry.LIT_AT, [0.5, Math.sqrt(0.75), 0, 0, -1, 0], rad(30), all(6, -1, 1)),

  use(hang.BY_HEIGHT, [2.5, 1.5, 2], rad(30), [[2, 2.5], [1, 1.5], [2, 3]]),
  use(hang.WAVELENGTH_RATIO, [600e-9, L], 1.2, [WAVELENGTH, WAVELENGTH]),
  use(hang.LAMP_ANGLE, [rad(40)], rad(40), [[0.1, 1.5]]),
  use(hang.LAMP_ANGLE, [rad(-40)], rad(40), [[-1.5, -0.1]]),
  use(hang.LAMP_ANGLE, [rad(140)], rad(40), [[1.6, 3]]),
  use(hang.LAMP_ANGLE, [rad(-140)], rad(40), [[-3, -1.6]]),
  use(hang.SIGHT, [0.3], -0.3, [ANGLE]),
  // With one colour both angles are as at replay.
  made(hang.recordingAngle, ['reference', false], [rad(40), rad(-10)], rad(40), [ANGLE, [-0.4, -0.05]]),
  made(hang.recordingAngle, ['object', true], [rad(40), rad(-10)], rad(-10), [ANGLE, [-0.4, -0.05]]),
  use(hang.matchedDistance, [2], 2, [LENGTH]),
  use(hang.matchedDistance, [2, 0.8], 1.6, [LENGTH, RATIO]),
  made(hang.objectBack, [1, NO_MORE], [0.1], 0.1, [LENGTH]),
  made(hang.objectBack, [-1, { reference: false, ratio: true }], [0.1, 0.8], -0.08, [LENGTH, RATIO]),
  // 1 + 0.1 (0.8 · 1 − 1/2) = 1.03
  made(hang.objectBack, [1, { reference: true, ratio: true }], [0.1, 2, 1, 0.8], 0.08 / 1.03, [[0.05, 0.2], LENGTH, [0.2, 1], RATIO]),
  made(hang.widthBack, [1, { reference: true, ratio: true }], [0.1, 2, 1, 0.8], 1.03, [[0.05, 0.2], LENGTH, [0.2, 1], RATIO]),
  made(hang.widthBack, [-1, { reference: true, ratio: false }], [0.1, 2, 1], 0.85, [[0.05, 0.2], LENGTH, [0.2, 1]]),
  made(hang.widthBack, [1, NO_MORE], [0.1], 1, [LENGTH]),
  use(hang.CURVATURE, [3, 4], 0.12, [LENGTH, LENGTH]),
  use(hang.SLIT_COLOURS, [L, 5e-3, 0.5, rad(30)], 1e-8, [WAVELENGTH, [1e-3, 1e-2], LENGTH, ANGLE]),
  // With one colour, and the angles of the recording, the image is where the object was.
  use(hang.OTHER_FOCUS, [0.1, 2, 1, rad(40), rad(-10), rad(40), rad(-10)], 0.1, [[0.05, 0.3], LENGTH, RATIO, ANGLE, [-0.4, -0.05], ANGLE, [-0.4, -0.05]]),
  use(hang.SMEAR, [L, 0.1, 0, rad(30), 0], 1e-3, [WAVELENGTH, LENGTH, [-0.4, -0.05], ANGLE, [-0.4, -0.05]]),

  use(image.OPEN_SIDE, [0.1, 0.02], 0.02, [[0.1, 0.2], [0.01, 0.05]]),
  use(image.OPEN_SIDE, [0.02, 0.1], 0.02, [[0.01, 0.05], [0.1, 0.2]]),
  use(image.BEHIND_SLIT, [10e-3, 0.3], 3e-3, [POWER, SHARE]),
  use(image.IMAGE_ABOUT, [0.3, 0.5], 0.15, [LENGTH, SHARE]),
  // On the plate itself the image is as large as it is; half as far off as the plate the light of each point is as wide as the opening.
  made(image.imageLight, [false], [0.3, 0.3, 0.1, 0.2, 0.5, 0.5, rad(60)], 25),
  made(image.imageLight, [false], [0.3, 0.3, 0.1, 0.1, 0.5, 1, 0, 0.5], 0.5 / 0.09),
  // Behind the hologram: the opening twice as wide, 0.6 m.
  made(image.imageLight, [true], [0.3, 0.3, 0.1, 0.1, 0.5, 0.5, 0], 1 / 0.36),
  use(image.PREDICTED_IMAGE, [0.01, 25, 0.2, 0.8], 0.04, [POWER, LIGHT, SHARE, SHARE]),

  use(lengths.DISTANCE, [1, 1, 1, 3, 4, 7], 7, all(6, -1, 1)),
  made(lengths.weighted, ['difference', 'a − 2b', [1, -2]], [5, 2], 1, [LENGTH, LENGTH]),
  made(lengths.glassPath, [fusedSilica], [0.01, L], (GROUP - 1) * 0.01),

  use(light.WITHOUT_DARK, [5, 0.5], 4.5, [LIGHT, LIGHT]),
  use(light.CALIBRATED, [5, 1.2], 6, [LIGHT, RATIO]),
  use(light.ON_HEAD, [1e-3, 1e-4], 10, [POWER, [1e-5, 1e-4]]),
  use(light.CAUGHT, [10, 1e-4], 1e-3, [LIGHT, [1e-5, 1e-4]]),
  use(light.ROUND_HEAD, [0.02], Math.PI * 1e-4, [[5e-3, 2e-2]]),
  use(light.SQUARE_HEAD, [0.01, 0.02], 2e-4, [[5e-3, 2e-2], [5e-3, 2e-2]]),
  use(light.IN_PLANE, [4, rad(60)], 2, [LIGHT, ANGLE]),
  use(light.ANGLE_BY_READINGS, [2, 4], rad(60)),
  use(light.RATIO, [8, 2], 4, [LIGHT, LIGHT]),
  use(light.SHARE, [2, 8], 0.25, [LIGHT, LIGHT]),
  use(light.BY_RATIO, [8, 4], 2, [LIGHT, [2, 8]]),
  use(light.BY_RATIO_BACK, [2, 4], 8, [LIGHT, [2, 8]]),
  use(light.EFFECTIVE, [4, 0.5], 8, [[2, 8], SHARE]),
  use(light.POLARIZED, [0.4, 1, 0.2], 0.5),
  use(light.POLARIZED, [0.4, 1], 0.4),
  use(light.AT_MOST_ALL, [0.8], 0.8, [SHARE]),
  use(light.AT_MOST_ALL, [1.2], 1, [[1.1, 1.3]]),
  use(light.WEAKEST_CORNER, [2, 1.5, 1, 1.2, 1.4], 0.5, [[2, 3], [1.5, 1.9], [0.5, 1], [1.1, 1.4], [1.1, 1.4]]),
  use(light.EXPOSURE_TIME, [2, 0.5], 4, [LIGHT, LIGHT]),
  use(light.LONG_EXPOSURE_TIME, [8, 0.5, 0.5], 256),
  use(light.LONGEST_EXPOSURE, [0.02], 5),
  use(light.DRIFT_BRIGHTNESS, [0.05, 10], (2 / Math.PI) ** 2),
  made(light.wheelShare, [[0, 10, 20]], [15, 0.2, 0.4, 0.8], 0.6, [[0.5, 19.5], ...all(3, 0.1, 0.9)]),
  use(light.BEHIND, [10, 0.1], 9, [POWER, SHARE]),
  use(light.CAUGHT_POWER, [10, 0.3], 3, [POWER, SHARE]),
  use(light.CAUGHT_AS_READ, [2, 4, 0.5], 0.25, [LIGHT, LIGHT, SHARE]),
  use(light.BEHIND_POLARIZER, [10, 0.5, 0.1], 4.5, [POWER, SHARE, SHARE]),
  use(light.BEHIND_DENSITY, [10, 2], 0.1),
  use(light.REFLECTED, [10, 0.3, 0.1], 2.7, [POWER, SHARE, SHARE]),
  use(light.THROUGH, [10, 0.3, 0.1], 6.3, [POWER, SHARE, SHARE]),
  use(light.DIFFRACTED, [10, 0.3], 3, [POWER, SHARE]),
  use(light.FACTOR, [6, 3], 2, [LIGHT, LIGHT]),
  use(light.CORRECTED, [3, 2], 6, [LIGHT, RATIO]),
  use(light.BEFORE_PLATE, [0.3, 0.2], 0.1, [LENGTH, LENGTH]),

  use(losses.LOST, [0.3], 0.7, [SHARE]),
  // 4 · 3 / 16
  use(losses.LOST_BY_RATIO, [3], 0.25, [[1.5, 8]]),
  use(losses.ALL_LOST, [0], 1, [LIGHT]),
  // Half of it, and twice as much: sin² of 45°.
  use(losses.LOST_BY_EXPOSURE, [1, 2], 0.5),
  use(losses.LOST_BY_EXPOSURE, [2, 1], 0.5),
  use(losses.RECORDED, [0.5, 0.2, 0.25], 0.3, [SHARE, SHARE, SHARE]),

  use(maps.WALK, [-1e-3, 2e-3], 3e-3, [[-1, 0], [0, 1]]),
  made(maps.offRevival, [2], [0.7, 0.3], 0.1, [LENGTH, LENGTH]),

  // Two directions at right angles.
  made(movement.delicacy, [[1, -1]], [1, 0, 0, 0, 1, 0, L], Math.SQRT2 / L, [...all(6, -1, 1), WAVELENGTH]),
  use(movement.BY_PATH, [1.2, 600e-9], 2e6, [[0.5, 2], WAVELENGTH]),
  use(movement.OBJECT, [rad(60), L], Math.sqrt(3) / L, [ANGLE, WAVELENGTH]),
  // A corner 0.5 m aside and 0.5 m off: 45°.
  use(movement.SIDEWAYS, [0.5, 0, 0.6, 0.8, L], (2 * Math.sin(rad(22.5))) / L),
  // z / (z² + z_R²) = ½, of a corner 2 m aside
  use(movement.SIDEWAYS, [1, 1, 2.4, 3.2, L], (2 * Math.sin(rad(22.5))) / L),
  use(movement.ALLOWED, [2e6], 5e-8, [[1e5, 4e6]]),
  use(movement.ALLOWED, [0.05], 1, [[0.01, 0.09]]),
  use(movement.RING_SHARE, [2, 10], 0.2, [LIGHT, LIGHT]),
  use(movement.BY_WARMTH, [-0.1, 10e-6, L], 2),
  // 0.1 (20 + 1 pm / (500 nm)²)
  use(movement.BY_WARMTH_AND_LASER, [-0.1, 10e-6, L, -1e-12], 2.4),
  use(movement.ALLOWED_WARMING, [2], 0.05),

  use(objectLight.REFERENCE_LIGHT, [0, Z, 0, Z, L, 1, rad(60)], 1 / (Math.PI * W * W)),
  // A parallel beam of 0.1 m: exp(−2 · 0.05² / 0.1²) in the corner of a plate of 60 mm by 80 mm.
  made(objectLight.cornerLight, [true, 'the side'], [0, (Math.PI * 0.01) / L, 0, (Math.PI * 0.01) / L, L, 1, 0, 0, 0.06, 0.08], Math.exp(-0.5)),
  use(objectLight.PREDICTED_OBJECT, [0.01, 25, 0.2, 0.8], 0.04, [POWER, LIGHT, SHARE, SHARE]),
  use(objectLight.PREDICTED_SCREEN, [0.01, 25, 0.2, 0.8], 0.16, [POWER, LIGHT, SHARE, RATIO]),
  use(objectLight.PREDICTED_BEHIND, [0.01, 25, 0.2, 0.8, 0.5], 0.08),
  use(objectLight.PREDICTED_SOFT, [0.01, 25, 0.2, 0.8, 0.5, 0.5, 2], 0.08),
  use(objectLight.PREDICTED_REFERENCE, [0.01, 25], 0.25, [POWER, LIGHT]),
  // 1 / (0.5 · 0.8²), and twice that where the front is as far off as the disc of 0.01 π m² is wide.
  use(objectLight.SINGLE_RATIO, [0.5, 0.8, 1, 0.02, 0.1 * Math.PI, 0.1, 0.04], 3.125),
  use(objectLight.SINGLE_RATIO, [0.5, 0.8, 2, 0.12, 0.1 * Math.PI, 0.1, 0.04], 3.125),
  made(objectLight.splitForRatio, [true], [4, 1, 0.25, 0.25], 1 / 3),
  made(objectLight.splitForRatio, [false], [4, 1, 1], 0.8),
  // 0.2 / 0.8 of the metered ratio of 1; and 0.8 / 0.2.
  made(objectLight.splitFromMetered, [true], [4, 1, 0.2], 0.25 / 4.25),
  made(objectLight.splitFromMetered, [false], [4, 1, 0.2], 0.5),
  use(objectLight.FACE_LOSS, [0, 1.5], 0.04),

  use(object.PAST_PLATE, [0, 0, 0, 3, 0, 0, 3, 4, 0], -2),

  // Malus: cos² of 60°; of light polarized at random half.
  made(polarization.passedBy, ['level', { stretches: [['polarizer']], turns: [] }], [0, 1, rad(60)], 0.25),
  made(polarization.passedBy, ['level', { stretches: [['half-wave plate', 'polarizer']], turns: [] }], [0, 0, rad(20), rad(60)], 0.5),

  use(readings.STRETCHED, [2, 0.01], 2.02, [LENGTH, [0, 0.02]]),
  use(readings.TAPE, [2, 0.001], 2.001, [LENGTH, [-1e-3, 1e-3]]),
  use(readings.OFFSET, [2, 1.5], 0.5, [LENGTH, LENGTH]),
  made(readings.corrected, ['plan + offset'], [2, 0.01], 2.01, [LENGTH, [-0.1, 0.1]]),
  made(readings.same, ['length', 'a'], [2], 2, [LENGTH]),

  use(replay.LAMP_CURVATURE, [2], 0.5, [LENGTH]),
  use(replay.CONVERGING, [2], -0.5, [LENGTH]),
  // The reference comes from the right, the object stands 20° to the right.
  use(replay.OBJECT_BESIDE, [0, 0, 0, 0, -1, 0, Math.sin(rad(20)), -Math.cos(rad(20)), 0, -0.5, Math.sqrt(0.75), 0], rad(20), [...all(3, -0.1, 0.1), 0, -1, 0, [-0.3, 0.3], [-1, -0.6], [-0.1, 0.1], [-0.8, -0.4], [0.5, 0.8], [-0.2, 0.2]]),
  // 0.8 (5 − 1) + 0.5 = 3.7, and −3.2 + 0.5 = −2.7
  made(replay.placeOf, [1], [0.2, 1, 0.5, 0.8], 1 / 3.7, [[0.1, 0.3], [0.2, 1], [0.2, 1], RATIO]),
  made(replay.placeOf, [-1], [0.2, 1, 0.5, 0.8], -1 / 2.7, [[0.1, 0.3], [0.2, 1], [0.2, 1], RATIO]),
  made(replay.sizeOf, [1], [0.2, 1, 0.5, 0.8], 0.8 / 0.74, [[0.1, 0.3], [0.2, 1], [0.2, 1], RATIO]),
  made(replay.sizeOf, [-1], [0.2, 1, 0.5, 0.8], 0.8 / 0.54, [[0.1, 0.3], [0.2, 1], [0.2, 1], RATIO]),
  made(replay.depthOf, [1], [2, 0.8], 5, [[0.5, 2], RATIO]),
  made(replay.depthOf, [-1], [2, 0.8], -5, [[0.5, 2], RATIO]),
  // cos² of 60°: 0.25 / (0.8 (0.25 · 5 − 1) + 0.5)
  made(replay.otherPlaceOf, [1], [0.2, 1, 0.5, 0.8, rad(60), 0, 0, rad(60)], 0.25 / 0.7, [[0.1, 0.3], [0.2, 1], [0.2, 1], RATIO, ...all(4, -0.5, 0.5)]),
  made(replay.otherPlaceOf, [-1], [0.2, 1, 0.5, 0.8, rad(60), 0, 0, rad(60)], 0.25 / 0.3, [[0.1, 0.2], [0.2, 1], [0.2, 1], RATIO, ...all(4, -0.3, 0.3)]),
  use(replay.SINE, [0.8, 0, rad(30), rad(30)], 0.1, [RATIO, ANGLE, ANGLE, ANGLE]),
  use(replay.ANGLE_OF_SINE, [0.5], rad(30), [[-0.7, 0.7]]),
  use(replay.APART, [0.1, 0.2, 1, 0.1, 0.2, 1, 1, 0, 0.2], 0, [[0.1, 0.15], 0, [1, 1.1], [0.2, 0.25], 0.1, [1.2, 1.3], [1, 2], 0, [0.1, 0.2]]),
  // On the plate, one a tenth wider than the other: its edges lie 0.01 m farther out.
  use(replay.APART, [0, 0, 1, 0, 0, 1.1, 1, 0, 0.2], 0.01, [[0.01, 0.05], 0, [1, 1.1], [0.01, 0.05], 0, [1.2, 1.3], [1, 2], 0, [0.1, 0.2]]),
  use(replay.THICKNESS, [0.1], 0.9, [[0.01, 0.2]]),
  use(replay.THICKNESS, [0.1, 0.2], 0.75, [[0.01, 0.2], [0.01, 0.2]]),
  // Straight on the colour goes as thickness times index.
  use(replay.COLOUR, [L, 1.5, 0, 0, 0.9, 1.55, 0], L * 0.9 * (1.55 / 1.5), [WAVELENGTH, INDEX, ANGLE, [-0.4, -0.05], [0.9, 1.1], INDEX, ANGLE]),
  made(replay.shareOf, [true], [L, 1.5, rad(40), rad(-10), 1, 1.5, rad(40), 7e-6, 0.02, L], 1, [L, 1.5, [0.6, 0.8], [-0.3, -0.1], [0.99, 1.01], [1.49, 1.51], [0.6, 0.8], 7e-6, [0.01, 0.02], L]),
  // The edge of the band of a layer, by the colour at replay.
  made(replay.shareOf, [true], [L, 1.5, rad(40), rad(-10), 1, 1.5, rad(40), 7e-6, 0.02, L], 1, [L, 1.5, rad(40), rad(-10), 1, 1.5, rad(40), 7e-6, 0.02, [489e-9, 495e-9]]),
  made(replay.shareOf, [false], [L, 1.5, rad(40), rad(-10), 1, 1.5, rad(40), 7e-6, 0.02, L], 1, [L, 1.5, [0.6, 0.8], [-0.3, -0.1], [0.99, 1.01], [1.49, 1.51], [0.6, 0.8], 7e-6, [0.01, 0.02], L]),
  // (0.1 − 0.5) / (0 − 0.5)
  use(replay.SEEN, [0, rad(30), rad(30), Math.asin(0.1)], 0.8, [[-0.2, -0.05], [0.5, 0.8], [0.5, 0.8], [-0.2, -0.05]]),
  use(replay.IN_COLOUR, [1.2, L], 600e-9, [RATIO, WAVELENGTH]),
  use(replay.LAMP_SMEAR, [5e-3, 2, -0.1, rad(60), 0], 1.25e-4, [[1e-3, 1e-2], LENGTH, LENGTH, ANGLE, ANGLE]),
  use(replay.COLOUR_SMEAR, [L, 10e-9, -0.1, 0, rad(30), 0], 1e-3, [WAVELENGTH, [1e-8, 5e-8], LENGTH, [-0.4, -0.05], ANGLE, ANGLE]),
  use(replay.SMEARS, [3e-3, 4e-3, 12e-3], 13e-3, all(3, 1e-3, 1e-2)),
  use(replay.LEAST_OF, [3e-9, 2e-9], 2e-9, [[3e-8, 4e-8], [1e-8, 2e-8]]),
  // An eye sees a minute of arc, here at 1.2 m.
  use(replay.UNSEEN, [1, 0.2], rad(1.2 / 60), [LENGTH, LENGTH]),
  // Lines at 1 m and at 2 m: 2 mm · ½ · 1
  use(replay.ASTIGMATIC, [1, 0, 1], 1e-3, [[1, 2], [0.1, 0.2], [0.3, 0.4]]),
  use(replay.COLOURS_OVER, [L, 0.2, -1, 1, 2, 0.5, rad(30)], 2e-7, [WAVELENGTH, [0.1, 0.3], [0.5, 1], RATIO, [1.5, 2], LENGTH, ANGLE]),
  use(replay.PARALLAX, [0.2, 0.1], rad(90), [[0.1, 0.3], LENGTH]),
  // 0.2 · 0.6 / 0.1 − 0.05 · 0.5 / 0.1
  use(replay.ZONE, [0.2, 0.1, 0.05, -1, 0.5], 0.95, [[0.3, 0.4], [0.05, 0.2], [0.02, 0.05], RATIO, LENGTH]),
  // 0.2 · 0.6 / 0.1 − 0.1 · 0.5 / 0.1, twice as wide
  use(replay.ZONE, [0.2, 0.1, 0.05, 2, 0.5], 0.7, [[0.3, 0.4], [0.05, 0.2], [0.02, 0.05], [1, 2], LENGTH]),
  use(replay.MEETS, [0.1, 0, 1, 0], 0, [LENGTH, [-0.3, 0.3], LENGTH, [-0.3, 0.3]]),
  use(replay.TIMES, [0.1, -2], 0.2, [LENGTH, [-2, -1]]),
  use(replay.TIMES, [0.1, 2], 0.2, [LENGTH, [1, 2]]),
  use(replay.ACHROMATIC, [rad(30)], Math.atan(0.5), [ANGLE]),

  // 3-4-5: √(0.04² + 0.03²) − 0.04, in parallel light
  use(screen.BY_THE_RIM, [0, Math.PI / L, L, 1, 0.03, 0.04], 0.01),
  // From a point 0.04 m before it as well: twice that. A narrow beam, 3 mm wide at w, would be its own rim.
  use(screen.BY_THE_RIM, [0.04, 1e-7, L, 1, 0.03, 0.04], 0.02),
  made(screen.overScreen, [{ name: 'even', formula: '0.3', compute: () => 0.3 }], [0, Math.PI / L, L, 1, 0.03, 0.04, 0.3, 0], 0.3),

  // 45°: 2t · ½ / √(n² − ½)
  made(splitter.secondSpot, [fusedSilica], [6e-3, L, rad(45)], 6e-3 / Math.sqrt(N * N - 0.5)),
  made(splitter.secondSpotTurn, [fusedSilica], [L, rad(45), 1e-3], (2e-3 * Math.sqrt(N * N - 0.5)) / Math.SQRT1_2),
  made(splitter.secondSpotLight, [fusedSilica], [0.5, 0.3, L, 0], (0.25 * ((N - 1) / (N + 1)) ** 2) / (0.5 + 0.25 * ((N - 1) / (N + 1)) ** 2)),
  use(splitter.S_PART, [rad(60), 0.8], 0.3),

  made(table.passing, [{ face: 'rectangular', lies: 'around' }, true], [0, 0, 0, 1, 0, 0, 0.5, 0.2, 0, 0, 1, 0, 0.1, 0.1, 0.04], 0.18),
  // Behind its face, which looks away from the leg.
  made(table.passing, [{ face: 'rectangular', lies: 'behind' }, true], [0, 0, 0, 1, 0, 0, 0.5, 0.2, 0, 0, 1, 0, 0.1, 0.1, 0.04], 0.16),
  made(table.passing, [{ face: 'round', lies: 'behind' }, false], [0, 0, 0, 1, 0, 0, 0.5, 0.2, 0, 0.1, 0.1, 0.04], 0.15),
  use(table.OFFSET, [0, 0, 0, 1, 0, 0, 0.5, 0.3, 0.4], 0.5),
  use(table.MOUNT_ANGLE, [0, -1, 0], rad(270)),
  use(table.MOUNT_TILT, [1, 0, 1], rad(45)),
  made(table.landingShare, ['round'], [0, Z, 0, Z, L, 1, 0, 2 * W, 2 * W], 1 - Math.exp(-2)),
  // erf(√2) = 0.954499736 each way: two standard deviations of a normal number
  made(table.landingShare, ['rectangular'], [0, Z, 0, Z, L, 1, 0, 2 * W, 2 * W], 0.954499736103642 ** 2),
  made(table.caughtShare, [true], [0, Z, 0, Z, L, 1, rad(90), 9, 2 * W, 2 * W], 1 - Math.exp(-2)),
  // cos 60° · 2w + sin 60° · 2w/√3 = 2w
  made(table.caughtShare, [false], [0, Z, 0, Z, L, 1, rad(60), 2 * W, 2 * W, (2 * W) / Math.sqrt(3)], 0.954499736103642 ** 2),
  // 30 mm by 40 mm on a face that is seen 100 mm by 100 mm
  made(table.reach, ['round'], [0.01, 0.1, rad(60), 0.2, 0.1, 0.3, 0.4], 2),
  made(table.reach, ['rectangular'], [0.01, 0.1, rad(60), 0.2, 0.1, 0.3, 0.4], 2.5),
  use(table.PINHOLE_FIT, [13e-6, L, -0.01, W], 1),
  use(table.PINHOLE_TO_CHOOSE, [L, -0.01, W], 13e-6),
];

/** Rules that take a whole setup and state no slopes by hand, and which tests hold them. */
export const OF_A_SETUP: ReadonlyMap<unknown, string> = new Map<unknown, string>([
  [fringes.bandwidth, 'tests/results/fringes.test.ts'],
  [maps.mismatchAt, 'tests/results/maps.test.ts'], [maps.acrossPlate, 'tests/results/maps.test.ts'], [maps.brightnessAt, 'tests/results/maps.test.ts'],
  [object.lookedAt, 'tests/results/object.test.ts'],
  [objectLight.objectLight, 'tests/results/predicted-light-surface.test.ts'], [objectLight.evenlyLit, 'tests/results/predicted-light-surface.test.ts'], [objectLight.ratioOver, 'tests/results/ratio-over-plate.test.ts'],
  [polarization.interfering, 'tests/results/polarization.test.ts'], [polarization.ghosts, 'tests/results/polarization-ghosts.test.ts'],
]);

/** Makers of rules with what tells two of their rules apart; made anew each time. */
export const apart = (): readonly (readonly [Rule, Rule])[] => [
  [beams.foldedPast(true), beams.foldedPast(false)], [beams.foldedRayleigh(true), beams.foldedRayleigh(false)],
  [coherence.lineBrightness('gaussian'), coherence.lineBrightness('lorentzian')], [coherence.linewidthFrom('gaussian'), coherence.linewidthFrom('lorentzian')], [coherence.halfContrast('gaussian'), coherence.halfContrast('rectangular')],
  [coherence.partMismatch(0.5), coherence.partMismatch(0.25)], [exposures.sharedBy(2), exposures.sharedBy(3)],
  [fringes.alongSurface(FAR, fringes.MIDDLE), fringes.alongSurface(FACING, fringes.MIDDLE)], [fringes.acrossLayer(FAR, fringes.MIDDLE), fringes.acrossLayer(FAR, { plate: [0.5, 0], object: [0, 0, 0] })],
  [fringes.alongSurface(NEAR, { plate: [0, 0], object: [0, 0, 0.1] }), fringes.alongSurface(NEAR, { plate: [0, 0], object: [0, 0, 0.1], metres: true })],
  [fringes.tilt(FAR), fringes.tilt(NEAR)], [fringes.volume(FAR), fringes.volume(FACING)], [fringes.efficiency(FAR), fringes.efficiency({ ...FAR, from: 'above' })], [fringes.bandwidth(FAR), fringes.bandwidth({ ...FAR, spread: true })],
  [fringes.separation(NEAR, 'box'), fringes.separation(NEAR, 'ball')], [fringes.againstBeams(FAR, 'surface'), fringes.againstBeams({ ...FAR, plate: true }, 'surface')],
  [geometry.towards(0), geometry.towards(1)], [geometry.along(1), geometry.along(2)], [geometry.turned('left', 0), geometry.turned('left', 1)], [geometry.turned('back', 0), geometry.turned('back', 1)], [geometry.turnedBy(0), geometry.turnedBy(1)],
  [geometry.headed(0), geometry.headed(1)], [geometry.facedAt(0), geometry.facedAt(1)], [geometry.bisecting(0), geometry.bisecting(1)],
  [hang.recordingAngle('object', true), hang.recordingAngle('object', false)], [hang.objectBack(1, NO_MORE), hang.objectBack(-1, NO_MORE)], [hang.widthBack(1, NO_MORE), hang.widthBack(1, { reference: true, ratio: false })],
  [hang.objectBack(1, NO_MORE), hang.objectBack(1, { reference: false, ratio: true })],
  [image.imageLight(true), image.imageLight(false)], [lengths.weighted('sum', 'Σ', [1, 1]), lengths.weighted('sum', 'Σ', [1, -1])], [lengths.glassPath(fusedSilica), lengths.glassPath(acrylic)], [light.wheelShare([0, 10]), light.wheelShare([0, 20])],
  [maps.offRevival(1), maps.offRevival(2)], [movement.delicacy([1, -1]), movement.delicacy([1, 1])], [objectLight.cornerLight(true), objectLight.cornerLight(false)], [objectLight.cornerLight(true, 'above'), objectLight.cornerLight(true, 'below')],
  [objectLight.splitForRatio(true), objectLight.splitForRatio(false)], [objectLight.splitFromMetered(true), objectLight.splitFromMetered(false)], [replay.placeOf(1), replay.placeOf(-1)], [replay.sizeOf(1), replay.sizeOf(-1)], [replay.depthOf(1), replay.depthOf(-1)],
  [replay.otherPlaceOf(1), replay.otherPlaceOf(-1)], [replay.shareOf(true), replay.shareOf(false)], [splitter.secondSpot(fusedSilica), splitter.secondSpot(acrylic)], [splitter.secondSpotTurn(fusedSilica), splitter.secondSpotTurn(acrylic)],
  [splitter.secondSpotLight(fusedSilica), splitter.secondSpotLight(acrylic)], [table.passing({ face: 'round', lies: 'behind' }, true), table.passing({ face: 'round', lies: 'around' }, true)], [table.passing({ face: 'round', lies: 'behind' }, true), table.passing({ face: 'round', lies: 'behind' }, false)],
  [table.landingShare('round'), table.landingShare('rectangular')], [table.caughtShare(true), table.caughtShare(false)], [table.reach('round'), table.reach('rectangular')],
];
