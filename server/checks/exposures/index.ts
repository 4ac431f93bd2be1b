import type { Check } from '../check.ts';
import { exposureSharesOff } from './exposure-shares-off.ts';
import { exposureUnclear } from './exposure-unclear.ts';
import { exposuresMixed } from './exposures-mixed.ts';

export const EXPOSURE_CHECKS: readonly Check[] = [exposureUnclear, exposureSharesOff, exposuresMixed];
