/** Rules of light: what a meter shows, light in the plate's plane, ratio, corners, exposure, the wheel of a splitter, power along a beam. */
import { driftContrast, longestExposure } from '../../optics/drift.ts';
import { exposureTime, reciprocityTime } from '../../optics/exposure.ts';
import { angleByReadings, headArea, lightInPlane, lightRatio } from '../../optics/light.ts';
import { densityTransmission, shareAtMark, splitterShare, weightsAtMark } from '../../optics/power.ts';
import { recordedBrightness } from '../../optics/visibility.ts';
import type { Rule } from '../graph.ts';

const LAMBERT = 'Lambert’s cosine law (any optics text)';

/** A reading without what the meter shows in the dark. Inputs: reading, dark reading. */
export const WITHOUT_DARK: Rule = { name: 'without the dark reading', formula: 'reading − dark reading', linear: true, compute: ([a, b]) => a! - b!, partials: () => [1, -1] };

/** A reading times the factor of its meter. Inputs: reading, factor. */
export const CALIBRATED: Rule = { name: 'calibrated', formula: 'reading · calibration', compute: ([a, b]) => a! * b!, partials: ([a, b]) => [b!, a!] };

/** Power on a head as light on it. Inputs: power, area. */
export const ON_HEAD: Rule = { name: 'light on the head', formula: 'power / area of the head', compute: ([p, a]) => p! / a!, partials: ([p, a]) => [1 / a!, -p! / (a! * a!)] };
/** The reverse: a light as the power that a head catches of it. */
export const CAUGHT: Rule = { name: 'power on the head', formula: 'light · area of the head', compute: ([e, a]) => e! * a!, partials: ([e, a]) => [a!, e!] };

export const ROUND_HEAD: Rule = { name: 'area of a round head', formula: 'π · diameter² / 4', compute: ([d]) => headArea(d!), partials: ([d]) => [(2 * headArea(d!)) / d!] };
export const SQUARE_HEAD: Rule = { name: 'area of a head', formula: 'width · height', compute: ([a, b]) => a! * b!, partials: ([a, b]) => [b!, a!] };

/** Light that was read facing the beam, in the plane of the plate. Inputs: light, angle. */
export const IN_PLANE: Rule = {
  name: 'light in the plane of the plate', formula: 'E · cos θ: E read facing the beam, θ its angle from the plate’s normal', source: LAMBERT,
  compute: ([e, angle]) => lightInPlane(e!, angle!), partials: ([e, angle]) => [Math.cos(angle!), -e! * Math.sin(angle!)],
};
/** Angle of arrival by two readings. Inputs: in the plane of the plate, facing the beam. */
export const ANGLE_BY_READINGS: Rule = { name: 'angle by two readings', formula: 'arccos(in the plate’s plane / facing the beam)', source: LAMBERT, curved: true, compute: ([flat, facing]) => angleByReadings(flat!, facing!) };

/** No light, and less than none, makes no ratio: such draws are left out. */
const ratio = (a: number, b: number): number => (a > 0 && b > 0 ? lightRatio(a, b) : Number.NaN);
/** Reference light to object light. */
export const RATIO: Rule = { name: 'beam ratio', formula: 'reference light / object light', compute: ([r, o]) => ratio(r!, o!), partials: ([r, o]) => [1 / o!, -r! / (o! * o!)] };
/** One light as a share of another. */
export const SHARE: Rule = { name: 'share', formula: 'a / b', compute: RATIO.compute, partials: RATIO.partials! };
/** Object light from the reference's and a known ratio. */
export const BY_RATIO: Rule = { name: 'object light by the ratio', formula: 'reference light / beam ratio', compute: RATIO.compute, partials: RATIO.partials! };
/** Reference light from the object's and a known ratio. */
export const BY_RATIO_BACK: Rule = { name: 'reference light by the ratio', formula: 'object light · beam ratio', compute: CALIBRATED.compute, partials: CALIBRATED.partials! };
/** Reference to that object light which is polarized like it. Inputs: beam ratio, polarized share, which may be less where it is exactly 1, and never more. */
export const EFFECTIVE: Rule = { name: 'effective ratio', formula: 'beam ratio / polarized share of the object light', compute: ([k, share]) => ratio(k!, Math.min(1, share!)), partials: ([k, share]) => (share! <= 1 ? [1 / share!, -k! / (share! * share!)] : [1, 0]) };
/** Share of the object light that a polarizer along the reference lets through. Inputs: light through it, light without it, its own loss (0 where that is not told). */
export const POLARIZED: Rule = { name: 'polarized share', formula: 'light through the polarizer / ((1 − loss of the polarizer) · light without it)', compute: ([p, e, loss]) => ratio(p!, (1 - (loss ?? 0)) * e!) };

/** What a polarizer passes is at most all: readings that say a little more leave it at that, and of exactly all the truth may be less. Input: the share as read. */
export const AT_MOST_ALL: Rule = { name: 'polarized share', formula: 'the share as read, and at most all of it', curved: true, compute: ([share]) => Math.min(1, share!), partials: ([share]) => [share! <= 1 ? 1 : 0] };
/** Readings that are said to be exact are rounded: by less than this share they may be more than all. */
const ROUNDED = 0.01;
/** Whether a share is above all of it by more than its readings leave open. Plain numbers: the share, its standard uncertainty. */
export const isMoreThanAll = (share: number, u: number): boolean => share - 1 > Math.max(3 * u, ROUNDED);

/** The weakest of some corners against the centre. Inputs: centre, then the corners. */
export const WEAKEST_CORNER: Rule = {
  name: 'corner light', formula: 'weakest corner / centre', curved: true,
  compute: ([centre, ...corners]) => lightRatio(Math.min(...corners), centre!),
  partials: ([centre, ...corners]) => {
    const least = Math.min(...corners);
    const at = corners.indexOf(least);
    return [-least / (centre! * centre!), ...corners.map((_, i) => (i === at ? 1 / centre! : 0))];
  },
};

/** Inputs: exposure that the plate needs, all light on it. Curved: what is known to a factor only has no straight lines. */
export const EXPOSURE_TIME: Rule = {
  name: 'exposure time', formula: 'exposure that the plate needs / light at the plate', curved: true, compute: ([h, e]) => exposureTime(h!, e!), partials: ([h, e]) => [1 / e!, -h! / (e! * e!)],
};
/** Inputs: exposure that the plate needs, all light on it, exponent of the reciprocity law. */
export const LONG_EXPOSURE_TIME: Rule = {
  name: 'exposure time with reciprocity', formula: 't^(1/p), t = exposure that the plate needs / light at the plate, in seconds', source: 'Schwarzschild 1900 (from memory)', curved: true,
  compute: ([h, e, p]) => reciprocityTime(exposureTime(h!, e!), p!),
};

/** Inputs: fringes per second. */
export const LONGEST_EXPOSURE: Rule = { name: 'longest exposure', formula: '0.1 fringe / drift', source: 'a tenth of a wavelength of path (common practice)', compute: ([rate]) => longestExposure(rate!) };
/** Inputs: fringes per second, exposure. */
export const DRIFT_BRIGHTNESS: Rule = {
  name: 'brightness that a drift leaves', formula: '(sin(πm) / (πm))²: m fringes go by during the exposure', source: 'Collier, Burckhardt & Lin, Optical Holography (1971) (from memory)', curved: true,
  compute: ([rate, time]) => recordedBrightness(driftContrast(rate! * time!)),
};

/** Share that a wheel reflects. Inputs: where it stands, then the share at each mark. */
export const wheelShare = (marks: readonly number[]): Rule => ({
  name: 'share at the wheel’s mark', of: marks, formula: 'straight line between the two neighbouring marks',
  compute: ([setting, ...values]) => shareAtMark(marks, values, setting!),
  partials: ([setting, ...values]) => {
    // At a mark the slope of either side may be the one that counts: the steeper is taken.
    const slopes = marks.flatMap((m, i) => (i > 0 && marks[i - 1]! <= setting! && setting! <= m ? [(values[i]! - values[i - 1]!) / (m - marks[i - 1]!)] : []));
    return [slopes.reduce((most, s) => (Math.abs(s) > Math.abs(most) ? s : most), 0), ...weightsAtMark(marks, setting!)];
  },
});

/** Power behind a thing that loses a share. Inputs: power before it, its loss. */
export const BEHIND: Rule = { name: 'power behind it', formula: 'power · (1 − loss)', compute: ([p, loss]) => p! * (1 - loss!), partials: ([p, loss]) => [1 - loss!, -p!] };
/** What falls on a thing of a beam. Inputs: power of the beam, share that the thing catches. */
export const CAUGHT_POWER: Rule = { name: 'power that falls on it', formula: 'power of the beam · share that is caught', compute: ([p, share]) => p! * share!, partials: ([p, share]) => [share!, p!] };
/** The same by a light that was read. Inputs: light in the middle, light there for each watt of the beam, share that is caught. */
export const CAUGHT_AS_READ: Rule = { name: 'power that falls on it', formula: 'light as read / light for each watt · share that is caught', compute: ([light, each, share]) => (light! / each!) * share!, partials: ([light, each, share]) => [share! / each!, (-light! * share!) / (each! * each!), light! / each!] };
/** Power behind a polarizer. Inputs: power before it, share of that light in its direction, its loss. */
export const BEHIND_POLARIZER: Rule = {
  name: 'power behind a polarizer', formula: 'power · share along its axis · (1 − loss)', compute: ([p, share, loss]) => p! * share! * (1 - loss!), partials: ([p, share, loss]) => [share! * (1 - loss!), p! * (1 - loss!), -p! * share!],
};
/** Power behind an attenuator. Inputs: power before it, its density. */
export const BEHIND_DENSITY: Rule = { name: 'power behind an attenuator', formula: 'power · 10^(−density)', compute: ([p, d]) => p! * densityTransmission(d!) };
/** Power that is reflected. Inputs: power on the splitter, share that it reflects, its loss. */
export const REFLECTED: Rule = {
  name: 'power reflected', formula: 'power · (1 − loss) · share reflected', compute: ([p, share, loss]) => p! * splitterShare(share!, loss!),
  partials: ([p, share, loss]) => [share! * (1 - loss!), p! * (1 - loss!), -p! * share!],
};
/** Power that goes through. Inputs as of {@link REFLECTED}. */
export const THROUGH: Rule = {
  name: 'power through', formula: 'power · (1 − loss) · (1 − share reflected)', compute: ([p, share, loss]) => p! * splitterShare(1 - share!, loss!),
  partials: ([p, share, loss]) => [(1 - share!) * (1 - loss!), -p! * (1 - loss!), -p! * (1 - share!)],
};
/** Power that a hologram sends into its image. Inputs: power on it, its efficiency. */
export const DIFFRACTED: Rule = { name: 'power diffracted', formula: 'power · efficiency', compute: CALIBRATED.compute, partials: CALIBRATED.partials! };

/** A factor beyond this is none of light; with it, no product overflows. */
const MOST = 1e200;
/** By how much a reading differs from the plan, as a factor. Inputs: reading, plan. */
export const FACTOR: Rule = { name: 'correction', formula: 'reading / plan', compute: ([a, b]) => (b === 0 ? 0 : Math.max(-MOST, Math.min(MOST, a! / b!))), partials: RATIO.partials! };
/** A plan with its correction. Inputs: plan, factor. */
export const CORRECTED: Rule = { name: 'corrected by a reading', formula: 'plan · correction', compute: CALIBRATED.compute, partials: CALIBRATED.partials! };

/** Offset of an image from a plate. Inputs: distance of the plate, distance of the image, both from the first hologram. */
export const BEFORE_PLATE: Rule = { name: 'image before the plate', formula: 'distance of the plate − distance of the image', linear: true, compute: WITHOUT_DARK.compute, partials: WITHOUT_DARK.partials! };
