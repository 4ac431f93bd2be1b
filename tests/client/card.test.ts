/** How the editor writes a card: only where somebody chose a place, and never in silence when it did not come about. */
import { describe, expect, test } from 'vitest';
import { besidePath, saidKind, writeCard, type Desk } from '../../client/card-written.ts';

function desk(of: Partial<Desk<string>> = {}) {
  const did: string[] = [];
  const own: Desk<string> = {
    kind: () => Promise.resolve({ paper: 'letter', form: 'html' }), ask: ({ paper, form }) => { did.push(`ask ${paper} ${form}`); return Promise.resolve(form === 'html' ? { setup: 'Whelk', html: '<html>µ' } : { setup: 'Whelk', pdf: 'JVBERi3/' }); },
    place: ({ form }) => Promise.resolve(`/desk/whelk-card.${form}`), write: (at, file) => { did.push(`write ${[...file].join(' ')} to ${at}`); return Promise.resolve(); }, say: (words, kind) => { did.push(`${kind}: ${words}`); },
    offer: (at, setup, form) => { did.push(`offer ${at} of ${setup}, ${form}`); return Promise.resolve(); }, ...of,
  };
  return { own, did };
}
const done = async (of: Partial<Desk<string>> = {}): Promise<string[]> => { const { own, did } = desk(of); await writeCard(own); return did; };
const pdf: Partial<Desk<string>> = { kind: () => Promise.resolve({ paper: 'a4', form: 'pdf' }) };

describe('a card', () => {
  test('is asked for, written where it was said, and offered', async () => {
    // < h t m l > by ASCII, µ by UTF-8: C2 B5
    expect(await done()).toEqual(['ask letter html', 'write 60 104 116 109 108 62 194 181 to /desk/whelk-card.html', 'offer /desk/whelk-card.html of Whelk, html']);
  });
  test('as a PDF is written byte by byte', async () => {
    // RFC 4648: JVBERi3/ is 25 50 44 46 2D FF, of which the first five are %PDF-
    expect(await done(pdf)).toEqual(['ask a4 pdf', 'write 37 80 68 70 45 255 to /desk/whelk-card.pdf', 'offer /desk/whelk-card.pdf of Whelk, pdf']);
  });
  test('that is refused as a PDF is not asked a place for, and why is said', async () => {
    expect(await done({ ...pdf, ask: () => Promise.resolve({ setup: 'Whelk', refused: 'There is no disk.' }) })).toEqual(['warning: There is no disk.']);
    expect(await done({ ...pdf, ask: () => Promise.resolve({ setup: 'Whelk', html: '<html>' }) })).toEqual([expect.stringMatching(/^warning: The card could not be made/)]);
  });
  test('is not asked for where nobody chose a paper', async () => { expect(await done({ kind: () => Promise.resolve(undefined) })).toEqual([]); });
  test('is not written where nobody chose a place', async () => { expect(await done({ place: () => Promise.resolve(undefined) })).toEqual(['ask letter html']); });
  test('of a page without a setup there is none, and that is said', async () => { expect(await done({ ask: () => Promise.resolve(null) })).toEqual([expect.stringMatching(/^note: There is no setup on the page/)]); });
  test('that could not be made is not asked a place for', async () => { expect(await done({ ask: () => Promise.resolve(undefined) })).toEqual([expect.stringMatching(/^warning: .*Ask for it again\.$/)]); });
  test('that could not be written is not offered', async () => { expect(await done({ write: () => Promise.reject(new Error('the disk is full')) })).toEqual(['ask letter html', 'error: The card could not be written: the disk is full']); });
});

test.each([['/a/whelk.plate', '/a/whelk-card.html'], ['/a/notes', '/a/notes-card.html'], ['/a.plate/b.plate', '/a.plate/b-card.html']])('beside %s lies %s', (page, card) => {
  expect(besidePath(page, 'html')).toBe(card);
  expect(besidePath(page, 'pdf')).toBe(card.replace(/html$/, 'pdf'));
});

test('what is said with the command is taken as far as it can be understood', () => {
  expect(saidKind({ paper: 'letter', form: 'pdf', to: 'x' })).toEqual({ paper: 'letter', form: 'pdf' });
  for (const said of [undefined, null, 7, 'pdf', {}, { paper: 'a5', form: 'PDF' }]) expect(saidKind(said), JSON.stringify(said)).toEqual({});
});
