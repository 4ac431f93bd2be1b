import type { Check } from '../check.ts';
import { instrumentUnfit } from './instrument-unfit.ts';
import { noSuchDate } from './no-such-date.ts';
import { readingMisplaced } from './reading-misplaced.ts';
import { readingUnclear } from './reading-unclear.ts';

export const READING_CHECKS: readonly Check[] = [readingUnclear, readingMisplaced, instrumentUnfit, noSuchDate];
