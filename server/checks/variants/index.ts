import type { Check } from '../check.ts';
import { changeMissing } from './change-missing.ts';
import { legUnclear } from './leg-unclear.ts';
import { notInVariant } from './not-in-variant.ts';
import { tooManyVariants } from './too-many-variants.ts';

export const VARIANT_CHECKS: readonly Check[] = [changeMissing, legUnclear, notInVariant, tooManyVariants];
