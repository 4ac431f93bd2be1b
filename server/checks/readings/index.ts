import type { Check } from '../check.ts';
import { instrumentUnfit } from './instrument-unfit.ts';
import { likeliestCause } from './likeliest-cause.ts';
import { noSuchDate } from './no-such-date.ts';
import { readingDisagrees } from './reading-disagrees.ts';
import { readingMisplaced } from './reading-misplaced.ts';
import { readingStale } from './reading-stale.ts';
import { readingUnclear } from './reading-unclear.ts';
import { readingsContradict } from './readings-contradict.ts';

export const READING_CHECKS: readonly Check[] = [readingDisagrees, readingsContradict, likeliestCause, readingStale, readingUnclear, readingMisplaced, instrumentUnfit, noSuchDate];
