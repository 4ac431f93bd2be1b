/**
 * One slip is one finding: a sign that no line may hold, between two tokens of a page without errors, is one error in its line and none elsewhere. What
 * stood behind it in the line is lost, and what needed that is silent.
 * An input is the number of an example, of a token and of a sign.
 */
import fc from 'fast-check';
import { parse } from '../../../grammar/parse.ts';
import { analyse } from '../../../server/analysis.ts';
import { EXAMPLES } from '../../examples/library.ts';
import { WHELK } from '../../checks/library.ts';
import { LIBRARY, PAGE } from '../library.ts';
import { none, type Target } from '../target.ts';

const SIGNS = ['§', ';', '@', '🐚', '$', '!', '\\', '&'];
const SOUND = [WHELK, ...EXAMPLES.filter(e => !e.name.includes('saltmarsh-lab')).map(e => e.text)].filter(text => analyse(PAGE, text, LIBRARY).findings.every(f => f.severity !== 'error'));
/** Where a token ends that is none of a comment: behind it a sign is a slip. */
const PLACES = SOUND.map(text => parse(text).lines.flatMap((l, line) => l.tokens.filter(t => t.type !== 'comment' && t.type !== 'doc').map(t => ({ line, end: t.end }))));

export const slips: Target = {
  name: 'slips', share: 6, few: 8, words: ['1', '7', '23', '150'],
  inputs: fc.tuple(fc.nat(SOUND.length - 1), fc.nat(999), fc.nat(SIGNS.length - 1)).map(n => n.join(' ')),
  run: input => {
    const [page = 0, place = 0, sign = 0] = (input.match(/\d{1,6}/g) ?? []).map(Number);
    const [text, places] = [SOUND[page % SOUND.length]!, PLACES[page % SOUND.length]!];
    const at = places[place % places.length]!;
    const lines = text.split('\n');
    lines[at.line] = `${lines[at.line]!.slice(0, at.end)} ${SIGNS[sign % SIGNS.length]!}${lines[at.line]!.slice(at.end)}`;
    const errors = analyse(PAGE, lines.join('\n'), LIBRARY).findings.filter(f => f.severity === 'error');
    none(`“${lines[at.line]!}” is more than one slip`, errors.length === 1 && errors[0]!.at.line === at.line ? [] : errors.map(f => `${f.at.line - at.line} ${f.code}: ${f.message}`).concat(`${errors.length} errors`));
  },
};
