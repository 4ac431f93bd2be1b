import type { Check } from '../check.ts';
import { darkSideLit } from './dark-side-lit.ts';

export const OBJECT_CHECKS: readonly Check[] = [darkSideLit];
