import type { Check } from '../check.ts';

export const FILE_CHECKS: readonly Check[] = [];
