import type { Check } from '../check.ts';
import { legBlocked } from './leg-blocked.ts';
import { mirrorInLine } from './mirror-in-line.ts';
import { offTheTable } from './off-the-table.ts';
import { outputUnused } from './output-unused.ts';
import { plateMissed } from './plate-missed.ts';
import { plateTurnedRound } from './plate-turned-round.ts';
import { referenceOnObject } from './reference-on-object.ts';
import { secondSpot } from './second-spot.ts';
import { tableTooFull } from './table-too-full.ts';
import { thingsOverlap } from './things-overlap.ts';
import { undiffractedOnPlate } from './undiffracted-on-plate.ts';

export const TABLE_CHECKS: readonly Check[] = [legBlocked, thingsOverlap, mirrorInLine, offTheTable, outputUnused, plateMissed, plateTurnedRound, referenceOnObject, secondSpot, tableTooFull, undiffractedOnPlate];
