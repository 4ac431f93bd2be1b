import type { Check } from '../check.ts';
import { exposureHardToTime } from './exposure-hard-to-time.ts';
import { fringesTooFine } from './fringes-too-fine.ts';
import { referenceTooNear } from './reference-too-near.ts';
import { shutterShakes } from './shutter-shakes.ts';
import { sidesDisagree } from './sides-disagree.ts';

export const RECORDING_CHECKS: readonly Check[] = [fringesTooFine, sidesDisagree, referenceTooNear, shutterShakes, exposureHardToTime];
