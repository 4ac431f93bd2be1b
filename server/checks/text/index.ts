import type { Check } from '../check.ts';

export const TEXT_CHECKS: readonly Check[] = [];
