/** The panel of a comparison and its page take the messages that they know, and no others; places become numbers. */
import { describe, expect, it, test } from 'vitest';
import { isFromPage, isRemembered, isToPage } from '../../client/review/messages.ts';
import { shownOf } from '../../client/review/shown.ts';
import type { ReviewAnswer, ReviewPlace } from '../../server/lsp/protocol.ts';
import { PAGE, REMEMBER, ROW, SETUP, SHOWN, SOURCES } from './samples.ts';

const of = (row: object): object => ({ ...SHOWN, setups: [{ ...SETUP, changes: [{ ...ROW, ...row }] }] });

describe('to the page', () => {
  test.each([SHOWN, { ...SHOWN, setups: [], nothing: 'Nothing differs.', notes: ['as it is now'] }, ...SOURCES.map(source => ({ ...SHOWN, remember: { page: PAGE, source } })), { kind: 'nothing', words: 'This page is not in the last commit.' }, { kind: 'nothing', words: '', remember: REMEMBER }])('%j', m => { expect(isToPage(m)).toBe(true); });
  test.each([
    ['nothing at all', undefined], ['null', null], ['a word', 'review'], ['a list', [SHOWN]], ['another kind', { ...SHOWN, kind: 'picture' }], ['a kind of the other way', { kind: 'ready' }], ['no number', { ...SHOWN, n: NaN }],
    ['nobody knows what of', { ...SHOWN, remember: undefined }], ['a source that is none', { ...SHOWN, remember: { page: PAGE, source: { kind: 'web', uri: PAGE } } }], ['half a source', { ...SHOWN, remember: { page: PAGE, source: { kind: 'shot', setup: 'Whelk' } } }],
    ['a row without words', of({ words: undefined })], ['a value that is no text', of({ after: 7 })], ['a place that is no number', of({ at: '0' })], ['a finding of no severity', of({ severity: 'fatal' })], ['a setup without findings', { ...SHOWN, setups: [{ ...SETUP, findings: undefined }] }],
    ['an attribute that is no text', { ...SHOWN, setups: [{ ...SETUP, sheet: { ...SETUP.sheet, marks: [{ tag: 'g', attributes: { onclick: () => 0 }, children: [] }] } }] }], ['an item that is nowhere', { ...SHOWN, setups: [{ ...SETUP, items: [{ id: 'M1' }] }] }], ['notes of no words', { ...SHOWN, notes: [1] }],
  ])('not %s', (_, m) => { expect(isToPage(m)).toBe(false); });
});

describe('from the page', () => {
  test.each([{ kind: 'ready' }, { kind: 'other' }, { kind: 'show', n: 1, at: 0, focus: false }])('%j', m => { expect(isFromPage(m)).toBe(true); });
  test.each([undefined, null, 'ready', {}, { kind: 'show' }, { kind: 'show', n: 1, at: NaN, focus: true }, { kind: 'show', n: 1, at: 0 }, { kind: 'show', at: 0, focus: true }, { kind: 'edit', text: '' }, SHOWN])('not %j', m => { expect(isFromPage(m)).toBe(false); });
});

describe('what a page keeps', () => {
  test.each(SOURCES)('of %j', source => { expect(isRemembered({ page: PAGE, source })).toBe(true); });
  test.each([undefined, null, {}, { page: PAGE }, { page: PAGE, source: 'head' }, { page: 7, source: SOURCES[0] }, { page: PAGE, source: { kind: 'file' } }])('not %j', m => { expect(isRemembered(m)).toBe(false); });
});

describe('places', () => {
  const place = (side: ReviewPlace['side'], line: number): ReviewPlace => ({ side, uri: PAGE, range: { start: { line, character: 0 }, end: { line, character: 1 } } });
  const none = { cured: [], added: [], accepted: [], amiss: [], still: 0 };
  const answer: ReviewAnswer = {
    version: 1, borrowed: [], inventories: [{ name: 'lab', changes: [{ words: 'red', at: place('after', 9) }] }], rest: { changes: [], findings: { ...none, cured: [{ words: 'amiss', at: place('before', 8) }] } },
    setups: [{ name: 'Whelk', title: 'Whelk', headline: '', unchanged: false, at: place('after', 1), changes: [{ words: 'M9 is gone', at: place('before', 3) }, { words: 'a line' }], results: [], goals: [], findings: none, items: [{ id: 'M1', words: 'mirror M1', at: place('after', 4) }] }],
  };
  it('are told by their numbers, and which are of the earlier text', () => {
    const { shown, places } = shownOf(answer);
    const [whelk] = shown.setups;
    const line = (at: number | undefined): number | undefined => (at === undefined ? undefined : places[at]?.range.start.line);
    expect(line(whelk!.at)).toBe(1);
    expect(whelk!.changes.map(r => [line(r.at), r.gone])).toEqual([[3, true], [undefined, undefined]]);
    expect(line(whelk!.items[0]!.at)).toBe(4);
    expect(line(shown.inventories[0]!.changes[0]!.at)).toBe(9);
    expect([line(shown.rest.findings.cured[0]!.at), shown.rest.findings.cured[0]!.gone]).toEqual([8, true]);
    expect(places).toHaveLength(5);
  });
});
