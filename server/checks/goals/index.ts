import type { Check } from '../check.ts';
import { ambiguousResult } from './ambiguous-result.ts';
import { expectationFailed } from './expectation-failed.ts';
import { expectationUndecided } from './expectation-undecided.ts';
import { unknownResult } from './unknown-result.ts';

export const GOAL_CHECKS: readonly Check[] = [expectationFailed, expectationUndecided, unknownResult, ambiguousResult];
