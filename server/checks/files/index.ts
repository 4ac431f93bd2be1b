import type { Check } from '../check.ts';
import { importOutside } from './import-outside.ts';
import { importRing } from './import-ring.ts';
import { importUnreadable } from './import-unreadable.ts';
import { inventoryTwice } from './inventory-twice.ts';
import { moreFindings } from './more-findings.ts';
import { pathTooLong } from './path-too-long.ts';
import { tooManyArms } from './too-many-arms.ts';
import { tooManyFiles } from './too-many-files.ts';
import { tooManyThings } from './too-many-things.ts';

export const FILE_CHECKS: readonly Check[] = [
  importOutside, importRing, importUnreadable, inventoryTwice, moreFindings, pathTooLong, tooManyArms, tooManyFiles, tooManyThings,
];
