import type { Check } from '../check.ts';
import { colourShifted } from './colour-shifted.ts';
import { imageBlurred } from './image-blurred.ts';
import { imageInsideOut } from './image-inside-out.ts';
import { lampAngleOff } from './lamp-angle-off.ts';
import { lampBehind } from './lamp-behind.ts';
import { lampDistanceOff } from './lamp-distance-off.ts';
import { lampFromOtherSide } from './lamp-from-other-side.ts';
import { lampImpossible } from './lamp-impossible.ts';
import { lampMissesFringes } from './lamp-misses-fringes.ts';
import { masterInDivergingBeam } from './master-in-diverging-beam.ts';
import { masterLightOff } from './master-light-off.ts';
import { masterMissing } from './master-missing.ts';
import { masterRing } from './master-ring.ts';
import { masterTurned } from './master-turned.ts';
import { noImage } from './no-image.ts';
import { viewerOutside } from './viewer-outside.ts';

export const REPLAY_CHECKS: readonly Check[] = [lampImpossible, lampBehind, lampFromOtherSide, noImage, lampDistanceOff, masterMissing, masterRing, masterInDivergingBeam, masterLightOff, masterTurned, lampAngleOff, lampMissesFringes, imageInsideOut, imageBlurred, colourShifted, viewerOutside];
