import type { Check } from '../check.ts';
import { beamRises } from './beam-rises.ts';
import { laserCaution } from './laser-caution.ts';
import { lightAtEyeHeight } from './light-at-eye-height.ts';

export const EYE_CHECKS: readonly Check[] = [laserCaution, beamRises, lightAtEyeHeight];
