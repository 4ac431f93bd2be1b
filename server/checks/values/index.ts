import type { Check } from '../check.ts';
import { impossibleValue } from './impossible-value.ts';
import { missingUnit } from './missing-unit.ts';
import { unitsDiffer } from './units-differ.ts';
import { unknownUnit } from './unknown-unit.ts';
import { valueMissing } from './value-missing.ts';
import { valueRing } from './value-ring.ts';
import { valueSought } from './value-sought.ts';
import { wrongUnit } from './wrong-unit.ts';
import { wrongValue } from './wrong-value.ts';

export const VALUE_CHECKS: readonly Check[] = [
  impossibleValue, missingUnit, unitsDiffer, unknownUnit, valueMissing, valueRing, valueSought, wrongUnit, wrongValue,
];
