import type { Check } from '../check.ts';
import { angleDisagrees } from './angle-disagrees.ts';
import { cornersDark } from './corners-dark.ts';
import { fringesDrift } from './fringes-drift.ts';
import { headSizeMissing } from './head-size-missing.ts';
import { lightUnlikely } from './light-unlikely.ts';
import { metersNotComparable } from './meters-not-comparable.ts';
import { noLight } from './no-light.ts';
import { polarizerAddsLight } from './polarizer-adds-light.ts';
import { ratioUnusual } from './ratio-unusual.ts';
import { wheelDisagrees } from './wheel-disagrees.ts';

export const LIGHT_CHECKS: readonly Check[] = [noLight, cornersDark, fringesDrift, angleDisagrees, wheelDisagrees, headSizeMissing, metersNotComparable, polarizerAddsLight, ratioUnusual, lightUnlikely];
