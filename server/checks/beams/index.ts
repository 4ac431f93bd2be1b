import type { Check } from '../check.ts';
import { beamClipped } from './beam-clipped.ts';
import { lensTooSteep } from './lens-too-steep.ts';
import { pinholeUnfit } from './pinhole-unfit.ts';

export const BEAM_CHECKS: readonly Check[] = [beamClipped, pinholeUnfit, lensTooSteep];
