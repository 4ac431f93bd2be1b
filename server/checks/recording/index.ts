import type { Check } from '../check.ts';
import { edgeLight } from './edge-light.ts';
import { faceParallel } from './face-parallel.ts';
import { filmFlexes } from './film-flexes.ts';
import { exposureHardToTime } from './exposure-hard-to-time.ts';
import { fringesTooFine } from './fringes-too-fine.ts';
import { ghostFringes } from './ghost-fringes.ts';
import { platesParallel } from './plates-parallel.ts';
import { polarizationCrossed } from './polarization-crossed.ts';
import { referenceTooNear } from './reference-too-near.ts';
import { safelightFogs } from './safelight-fogs.ts';
import { sensitivityUnlikely } from './sensitivity-unlikely.ts';
import { slitAlongReference } from './slit-along-reference.ts';
import { slitUpright } from './slit-upright.ts';
import { shutterShakes } from './shutter-shakes.ts';
import { sidesDisagree } from './sides-disagree.ts';

export const RECORDING_CHECKS: readonly Check[] = [fringesTooFine, sidesDisagree, polarizationCrossed, ghostFringes, edgeLight, faceParallel, platesParallel, filmFlexes, referenceTooNear, slitAlongReference, slitUpright, shutterShakes, exposureHardToTime, safelightFogs, sensitivityUnlikely];
