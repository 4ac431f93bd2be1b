import type { Check } from '../check.ts';

export const GOAL_CHECKS: readonly Check[] = [];
