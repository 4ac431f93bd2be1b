/** All checks, and the codes that were used once and never will be again. */
import type { Check } from './check.ts';
import { LIGHT_CHECKS } from './light/index.ts';
import { PLACE_CHECKS } from './places/index.ts';
import { PATH_CHECKS } from './paths/index.ts';
import { RECORDING_CHECKS } from './recording/index.ts';
import { OBJECT_CHECKS } from './object/index.ts';
import { BEAM_CHECKS } from './beams/index.ts';
import { TABLE_CHECKS } from './table/index.ts';
import { GOAL_CHECKS } from './goals/index.ts';
import { EYE_CHECKS } from './eyes/index.ts';
import { FILE_CHECKS } from './files/index.ts';
import { NAME_CHECKS } from './names/index.ts';
import { READING_CHECKS } from './readings/index.ts';
import { EXPOSURE_CHECKS } from './exposures/index.ts';
import { REPLAY_CHECKS } from './replay/index.ts';
import { TEXT_CHECKS } from './text/index.ts';
import { VALUE_CHECKS } from './values/index.ts';
import { VARIANT_CHECKS } from './variants/index.ts';

/** The groups, in the order of the page that lists them. */
export const CHECK_GROUPS: readonly { readonly title: string; readonly checks: readonly Check[] }[] = [
  { title: 'Paths and light', checks: PATH_CHECKS }, { title: 'Readings', checks: READING_CHECKS }, { title: 'Readings of light', checks: LIGHT_CHECKS }, { title: 'The object', checks: OBJECT_CHECKS }, { title: 'Recording', checks: [...RECORDING_CHECKS, ...EXPOSURE_CHECKS] }, { title: 'The finished hologram', checks: REPLAY_CHECKS }, { title: 'Places', checks: PLACE_CHECKS }, { title: 'On the table', checks: TABLE_CHECKS }, { title: 'Beams', checks: BEAM_CHECKS }, { title: 'Eyes', checks: EYE_CHECKS }, { title: 'Expectations', checks: GOAL_CHECKS }, { title: 'Names', checks: NAME_CHECKS },
  { title: 'Values', checks: VALUE_CHECKS }, { title: 'Variants', checks: VARIANT_CHECKS }, { title: 'Lines and blocks', checks: TEXT_CHECKS }, { title: 'Files', checks: FILE_CHECKS },
];
export const CHECKS: readonly Check[] = CHECK_GROUPS.flatMap(g => g.checks);

/** Codes of checks that are to come; a page may accept them already. */
export const LATER_CODES: readonly string[] = [];

/** Retired codes, kept so that they are not used again. */
export const RETIRED: readonly string[] = [];

const byCode = new Map(CHECKS.map(c => [c.code, c]));

/** The check of a code. Codes come from this program, so an unknown one is a defect of it. */
export function checkOf(code: string): Check {
  const check = byCode.get(code);
  if (!check) throw new Error(`no check is registered for the code “${code}”`);
  return check;
}
export const findCheck = (code: string): Check | undefined => byCode.get(code);
