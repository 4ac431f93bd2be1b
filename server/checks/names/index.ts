import type { Check } from '../check.ts';
import { errorAccepted } from './error-accepted.ts';
import { nameMissing } from './name-missing.ts';
import { nameOfTwoWords } from './name-of-two-words.ts';
import { nameTaken } from './name-taken.ts';
import { notInInventory } from './not-in-inventory.ts';
import { nothingToAccept } from './nothing-to-accept.ts';
import { outsideSetup } from './outside-setup.ts';
import { portMissing } from './port-missing.ts';
import { reasonMissing } from './reason-missing.ts';
import { unknownCode } from './unknown-code.ts';
import { unknownFact } from './unknown-fact.ts';
import { unknownName } from './unknown-name.ts';
import { unknownPort } from './unknown-port.ts';
import { unknownWord } from './unknown-word.ts';
import { writtenTwice } from './written-twice.ts';

export const NAME_CHECKS: readonly Check[] = [
  errorAccepted, nothingToAccept, unknownCode, nameMissing, nameOfTwoWords, nameTaken, notInInventory, outsideSetup, portMissing, reasonMissing, unknownFact, unknownName, unknownPort, unknownWord, writtenTwice,
];
