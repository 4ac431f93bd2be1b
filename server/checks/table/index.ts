import type { Check } from '../check.ts';
import { legBlocked } from './leg-blocked.ts';
import { offTheTable } from './off-the-table.ts';
import { outputUnused } from './output-unused.ts';
import { plateMissed } from './plate-missed.ts';
import { referenceOnObject } from './reference-on-object.ts';
import { tableTooFull } from './table-too-full.ts';

export const TABLE_CHECKS: readonly Check[] = [legBlocked, offTheTable, outputUnused, plateMissed, referenceOnObject, tableTooFull];
