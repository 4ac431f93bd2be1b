/** The panel and its page take the messages that they know, and no others. */
import { describe, expect, test } from 'vitest';
import { isFromPage, isRemembered, isToPage } from '../../client/plan/messages.ts';
import { DRAG, mark, NOTHING, PICTURE, PROBE } from './samples.ts';

describe('to the page', () => {
  test.each([PICTURE, { ...PICTURE, variant: 'closer', plate: 'P1', kept: 'from before', old: true, probe: PROBE }, { kind: 'darken' }, NOTHING, { ...NOTHING, example: 'x', setup: 'Whelk', choices: PICTURE.choices }, { kind: 'marked', ids: [] }, { kind: 'would', n: 1 }, { kind: 'would', n: 1, words: 'M1 stays' }, { kind: 'would', n: 1, would: { sheet: PICTURE.sheet, items: PICTURE.items, figures: [] } }])('%j', m => { expect(isToPage(m)).toBe(true); });
  const deep = Array.from({ length: 1000 }).reduce<unknown>(m => mark([m]), mark());
  test.each([
    ['nothing at all', undefined], ['null', null], ['a word', 'picture'], ['a list', [PICTURE]], ['no kind', {}], ['another kind', { ...PICTURE, kind: 'drag' }], ['a kind of the other way', { kind: 'ready' }],
    ['no sheet', { ...PICTURE, sheet: undefined }], ['a box of no number', { ...PICTURE, sheet: { ...PICTURE.sheet, box: { x: 0, y: 0, w: NaN, h: 10 } } }], ['a box of words', { ...PICTURE, sheet: { ...PICTURE.sheet, box: { x: 0, y: 0, w: '10', h: 10 } } }],
    ['an attribute that is no text', { ...PICTURE, sheet: { ...PICTURE.sheet, marks: [{ tag: 'g', attributes: { onclick: () => 0 }, children: [] }] } }], ['a mark without marks', { ...PICTURE, sheet: { ...PICTURE.sheet, marks: [{ tag: 'g', attributes: {} }] } }],
    ['a colour that no screen has', { ...PICTURE, dim: { hue: 'amber', why: '' } }], ['no colour', { ...PICTURE, dim: undefined }], ['no plates', { ...PICTURE, plates: undefined }], ['errors that are no number', { ...PICTURE, errors: 'none' }],
    ['no view', { ...PICTURE, look: undefined }], ['views of no words', { ...PICTURE, looks: [{ name: 'plan' }] }], ['figures that are no text', { ...PICTURE, figures: [{ label: 'mismatch', text: 3 }] }],
    ['a net of no rows', { ...PICTURE, probe: { ...PROBE, rows: 0, texts: [] } }], ['a net with a hole', { ...PICTURE, probe: { ...PROBE, texts: ['1 µW/cm²'] } }], ['a net with a column too many', { ...PICTURE, probe: { ...PROBE, across: [...PROBE.across, ''] } }], ['a net with a row that is nowhere', { ...PICTURE, probe: { ...PROBE, down: [] } }],
    ['an item that is dragged otherwise', { ...PICTURE, items: [{ ...PICTURE.items[0], drags: ['stretch'] }] }], ['an item of no place', { ...PICTURE, items: [{ ...PICTURE.items[0], x: NaN }] }],
    ['an answer to nothing', { kind: 'would', words: 'M1 stays' }], ['an answer without a picture', { kind: 'would', n: 1, would: { items: [], figures: [] } }],
    ['marks without end', { ...PICTURE, sheet: { ...PICTURE.sheet, marks: [deep] } }], ['items of no name', { ...PICTURE, items: [{ words: 'M1', written: true }] }], ['ids that are no words', { kind: 'marked', ids: [1] }], ['choices of no list', { ...PICTURE, choices: {} }],
  ])('not %s', (_, m) => { expect(isToPage(m)).toBe(false); });
});

describe('from the page', () => {
  test.each([{ kind: 'ready' }, { kind: 'show', id: 'M1', focus: false }, { kind: 'choose', setup: 'Whelk' }, { kind: 'choose', setup: 'Whelk', variant: 'closer' }, { kind: 'look', look: 'arms' }, { kind: 'look', look: 'object', plate: 'P2', from: { x: -0.5, y: 1 } }, DRAG, { ...DRAG, gesture: 'turn', dropped: true }])('%j', m => { expect(isFromPage(m)).toBe(true); });
  test.each([undefined, null, 'ready', [], {}, { kind: 'show' }, { kind: 'show', id: 'M1', focus: 'yes' }, { kind: 'show', id: 1, focus: true }, { kind: 'choose' }, { kind: 'choose', setup: 'Whelk', variant: 3 }, { kind: 'look' }, { kind: 'look', look: 'object', plate: 2 }, { kind: 'look', look: 'object', from: { x: 0 } }, { ...DRAG, stepped: undefined }, { kind: 'darken' }, { kind: 'look', look: 'object', from: { x: NaN, y: 0 } }, { ...DRAG, gesture: 'stretch' }, { ...DRAG, x: Infinity }, { ...DRAG, dropped: 1 }, { ...DRAG, n: undefined }, { kind: 'edit', text: '' }, PICTURE])('not %j', m => { expect(isFromPage(m)).toBe(false); });
});

describe('what a page keeps', () => {
  test.each([{ page: 'file:///x', setup: 'Whelk' }, { page: 'file:///x', setup: 'Whelk', variant: 'closer', look: 'object', plate: 'P1', from: { x: 0, y: 0.5 }, view: { x: 1, y: 2, k: 0.5 }, dark: true }])('%j', m => { expect(isRemembered(m)).toBe(true); });
  test.each([undefined, null, {}, { page: 'file:///x' }, { page: 'file:///x', setup: 'Whelk', dark: 'yes' }, { page: 'file:///x', setup: 'Whelk', view: { x: 1, y: 2 } }, { page: 'file:///x', setup: 'Whelk', view: { x: 1, y: 2, k: Infinity } }])('not %j', m => { expect(isRemembered(m)).toBe(false); });
});
