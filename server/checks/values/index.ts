import type { Check } from '../check.ts';

export const VALUE_CHECKS: readonly Check[] = [];
