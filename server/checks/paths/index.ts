import type { Check } from '../check.ts';
import { armsMismatched } from './arms-mismatched.ts';
import { objectTooDeep } from './object-too-deep.ts';
import { twoLengths } from './two-lengths.ts';
import { unusedThing } from './unused-thing.ts';
import { armMissing } from './arm-missing.ts';
import { coherenceTwice } from './coherence-twice.ts';
import { coherenceUnknown } from './coherence-unknown.ts';
import { notComputedYet } from './not-computed-yet.ts';
import { armBroken } from './arm-broken.ts';
import { armEndsEarly } from './arm-ends-early.ts';
import { beamRing } from './beam-ring.ts';
import { lightStopped } from './light-stopped.ts';
import { viewDull } from './view-dull.ts';

export const PATH_CHECKS: readonly Check[] = [armsMismatched, objectTooDeep, viewDull, twoLengths, unusedThing, armMissing, coherenceTwice, coherenceUnknown, notComputedYet, armBroken, armEndsEarly, beamRing, lightStopped];
