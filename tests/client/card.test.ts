/** How the editor writes a card: only where somebody chose a place, and never in silence when it did not come about. */
import { describe, expect, test } from 'vitest';
import { besidePath, writeCard, type Desk } from '../../client/card-written.ts';

function desk(of: Partial<Desk<string>> = {}) {
  const did: string[] = [];
  const own: Desk<string> = {
    paper: () => Promise.resolve('letter'), ask: paper => { did.push(`ask ${paper}`); return Promise.resolve({ setup: 'Whelk', html: '<html>' }); }, place: () => Promise.resolve('/desk/whelk-card.html'),
    write: (at, html) => { did.push(`write ${html} to ${at}`); return Promise.resolve(); }, say: (words, kind) => { did.push(`${kind}: ${words}`); }, offer: (at, setup) => { did.push(`offer ${at} of ${setup}`); return Promise.resolve(); }, ...of,
  };
  return { own, did };
}
const done = async (of: Partial<Desk<string>> = {}): Promise<string[]> => { const { own, did } = desk(of); await writeCard(own); return did; };

describe('a card', () => {
  test('is asked for, written where it was said, and offered', async () => {
    expect(await done()).toEqual(['ask letter', 'write <html> to /desk/whelk-card.html', 'offer /desk/whelk-card.html of Whelk']);
  });
  test('is not asked for where nobody chose a paper', async () => { expect(await done({ paper: () => Promise.resolve(undefined) })).toEqual([]); });
  test('is not written where nobody chose a place', async () => { expect(await done({ place: () => Promise.resolve(undefined) })).toEqual(['ask letter']); });
  test('of a page without a setup there is none, and that is said', async () => { expect(await done({ ask: () => Promise.resolve(null) })).toEqual([expect.stringMatching(/^note: There is no setup on the page/)]); });
  test('that could not be made is not asked a place for', async () => { expect(await done({ ask: () => Promise.resolve(undefined) })).toEqual([expect.stringMatching(/^warning: .*Ask for it again\.$/)]); });
  test('that could not be written is not offered', async () => { expect(await done({ write: () => Promise.reject(new Error('the disk is full')) })).toEqual(['ask letter', 'error: The card could not be written: the disk is full']); });
});

test.each([['/a/whelk.plate', '/a/whelk-card.html'], ['/a/notes', '/a/notes-card.html'], ['/a.plate/b.plate', '/a.plate/b-card.html']])('beside %s lies %s', (page, card) => { expect(besidePath(page)).toBe(card); });
