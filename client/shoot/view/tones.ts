/** What is heard of a shot: few signs, told apart by pitch and number. Plain data; the sound of the bench plan plays it, with its tick each second while something is counted. */
import type { Tone } from '../../plan/view/tones.ts';

const [LOW, MIDDLE, HIGH] = [220, 660, 880];

/** One short tone for each of the last three seconds. */
export const SOON: readonly Tone[] = [{ hz: MIDDLE, at: 0, lasts: 0.07 }];
/** Two that rise: the table has rested. */
export const SETTLED: readonly Tone[] = [{ hz: MIDDLE, at: 0, lasts: 0.14 }, { hz: HIGH, at: 0.16, lasts: 0.18 }];
/** One high: the shutter is open. */
export const OPEN: readonly Tone[] = [{ hz: HIGH, at: 0, lasts: 0.12 }];
/** Three high and long: close it. */
export const OVER: readonly Tone[] = [0, 0.4, 0.8].map(at => ({ hz: HIGH, at, lasts: 0.3 }));
/** Two that fall: it was stopped. */
export const STOPPED: readonly Tone[] = [{ hz: HIGH, at: 0, lasts: 0.14 }, { hz: MIDDLE, at: 0.16, lasts: 0.18 }];
/** One long and low: something is not as it should be, and stands on the page in words. */
export const AMISS: readonly Tone[] = [{ hz: LOW, at: 0, lasts: 1.2 }];
