import type { Check } from '../check.ts';
import { headingOff } from './heading-off.ts';
import { lightBends } from './light-bends.ts';
import { mirrorTurned } from './mirror-turned.ts';
import { placeRing } from './place-ring.ts';
import { placeUnknown } from './place-unknown.ts';
import { placedInInventory } from './placed-in-inventory.ts';
import { placedTwice } from './placed-twice.ts';
import { placementIncomplete } from './placement-incomplete.ts';
import { referenceFromDisagrees } from './reference-from-disagrees.ts';
import { twoAngles } from './two-angles.ts';

export const PLACE_CHECKS: readonly Check[] = [headingOff, lightBends, mirrorTurned, placeRing, placeUnknown, placedInInventory, placedTwice, placementIncomplete, twoAngles, referenceFromDisagrees];
