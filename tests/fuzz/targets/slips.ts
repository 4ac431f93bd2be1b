/**
 * One slip is one finding: a sign that no line may hold, between two tokens of a page without errors, is one error in its line and none elsewhere. What
 * stood behind it in the line is lost, and what needed that is silent.
 * An input is the page, with `¦` before the sign. Of a page that has errors without it nothing can be said.
 */
import fc from 'fast-check';
import { parse } from '../../../grammar/parse.ts';
import { analyse } from '../../../server/analysis.ts';
import type { Finding } from '../../../server/checks/check.ts';
import { EXAMPLES } from '../../examples/library.ts';
import { TRIED, WHELK } from '../../checks/library.ts';
import { LIBRARY, PAGE } from '../library.ts';
import { none, type Target } from '../target.ts';

const MARK = '¦';
const SIGNS = ['§', ';', '@', '🐚', '$', '!', '\\', '&'];
const PAGES = [WHELK, TRIED, ...EXAMPLES.filter(e => !e.name.includes('saltmarsh-lab')).map(e => e.text)];

/** Where a token ends that is none of a comment: behind it a sign is a slip. */
const placesIn = (text: string): { line: number; end: number }[] => parse(text).lines.flatMap((l, line) => l.tokens.filter(t => t.type !== 'comment' && t.type !== 'doc').map(t => ({ line, end: t.end })));
const errorsOf = (text: string): Finding[] => analyse(PAGE, text, LIBRARY).findings.filter(f => f.severity === 'error');

export const slips: Target = {
  name: 'slips', share: 6, few: 8, words: [...SIGNS.map(s => `${MARK}${s}`), MARK],
  inputs: fc.tuple(fc.constantFrom(...PAGES), fc.nat(), fc.constantFrom(...SIGNS)).map(([text, n, sign]) => {
    const places = placesIn(text);
    const { line, end } = places[n % places.length]!;
    const lines = text.split('\n');
    lines[line] = `${lines[line]!.slice(0, end)} ${MARK}${sign}${lines[line]!.slice(end)}`;
    return lines.join('\n');
  }),
  run: input => {
    const [before, after, ...more] = input.split(MARK);
    const sign = SIGNS.find(s => after?.startsWith(s));
    if (before === undefined || after === undefined || more.length > 0 || sign === undefined || /[\r\ufeff]/.test(input)) return;
    const sound = before.trimEnd() + after.slice(sign.length);
    const line = before.trimEnd().split('\n').length - 1;
    const end = before.trimEnd().length - before.trimEnd().lastIndexOf('\n') - 1;
    if (!placesIn(sound).some(p => p.line === line && p.end === end) || errorsOf(sound).length > 0) return;
    const errors = errorsOf(before + after);
    none('more than one slip', errors.length === 1 && errors[0]!.at.line === line ? [] : errors.map(f => `${f.at.line - line} ${f.code}: ${f.message}`).concat(`${errors.length} errors`));
  },
};
