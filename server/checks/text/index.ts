import type { Check } from '../check.ts';
import { blockBelowFact } from './block-below-fact.ts';
import { braceNotClosed } from './brace-not-closed.ts';
import { braceNotOpened } from './brace-not-opened.ts';
import { braceOnOwnLine } from './brace-on-own-line.ts';
import { decimalComma } from './decimal-comma.ts';
import { fileTooLarge } from './file-too-large.ts';
import { legWithoutBeam } from './leg-without-beam.ts';
import { lineTooLong } from './line-too-long.ts';
import { nestedTooDeep } from './nested-too-deep.ts';
import { nestingTooDeep } from './nesting-too-deep.ts';
import { numberTooLarge } from './number-too-large.ts';
import { reservedName } from './reserved-name.ts';
import { unclosedBracket } from './unclosed-bracket.ts';
import { unclosedText } from './unclosed-text.ts';
import { unexpectedText } from './unexpected-text.ts';
import { unreadableCharacter } from './unreadable-character.ts';
import { valueExpected } from './value-expected.ts';

export const TEXT_CHECKS: readonly Check[] = [
  blockBelowFact, braceNotClosed, braceNotOpened, braceOnOwnLine, decimalComma, fileTooLarge, legWithoutBeam, lineTooLong, nestedTooDeep, nestingTooDeep,
  numberTooLarge, reservedName, unclosedBracket, unclosedText, unexpectedText, unreadableCharacter, valueExpected,
];
