import type { Check } from '../check.ts';

export const NAME_CHECKS: readonly Check[] = [];
