import type { Check } from '../check.ts';

export const PATH_CHECKS: readonly Check[] = [];
