import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonical, foldersFor, isInside, resolveUse } from '../../server/lsp/uris.ts';

const name = fc.stringMatching(/^[a-zµ😀 %#?&+@~'()é-]{1,6}$/u).filter(s => s.trim() === s && s !== '');
const ROOT = 'file:///saltmarsh/note%20book';

describe('an address', () => {
  it('has one spelling, whatever is encoded in it', () => {
    fc.assert(fc.property(fc.array(name, { minLength: 1, maxLength: 4 }), names => {
      // Node spells an address in its own way, with more left as it is.
      const node = pathToFileURL(`/${names.join('/')}`).href;
      const all = `file:///${names.map(n => [...new TextEncoder().encode(n)].map(b => `%${b.toString(16).padStart(2, '0')}`).join('')).join('/')}`;
      expect(canonical(node)).toBe(canonical(all));
      expect(canonical(canonical(node))).toBe(canonical(node));
      expect(decodeURIComponent(canonical(node))).toBe(`file:///${names.join('/')}`);
    }));
  });

  it('of a drive has a small letter', () => expect(canonical('file:///C:/lab/a.plate')).toBe(canonical('file:///c%3A/lab/a.plate')));
  it('keeps its host and scheme', () => expect(canonical('vscode-remote://host%3A80/a b')).toBe('vscode-remote://host%3A80/a%20b'));
  it('that cannot be decoded has one spelling too', () => expect(canonical(canonical('file:///%zz'))).toBe(canonical('file:///%zz')));
});

describe('the path of a use', () => {
  // Half of a pair of UTF-16: `encodeURIComponent` throws at it (ECMA-262, Encode).
  it.each(['\ud83d.plate', 'a/\udc1a'])('that holds half of a sign is an address of no file', path => expect(resolveUse(path, `${ROOT}/a.plate`, [ROOT])).toBe(`${ROOT}/${path.replace(/[\ud83d\udc1a]/, '%EF%BF%BD')}`));
  const step = fc.oneof({ weight: 3, arbitrary: name }, fc.constantFrom('..', '.', ''));
  it('means what it means in an address, inside of the folder, and nothing outside', () => {
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 6 }), steps => {
      const path = steps.join('/').replace(/^\/+/, '');
      if (path === '' || path.endsWith('/') || /(^|\/)\.{1,2}$/.test(path)) return;
      // The WHATWG URL of Node resolves the same path; it climbs no further than the top.
      const wanted = canonical(new URL(`./${path.split('/').filter(s => s !== '').map(encodeURIComponent).join('/')}`, `${ROOT}/shelf/whelk.plate`).href);
      const climbs = path.split('/').reduce((s, p) => ({ depth: s.depth + (p === '..' ? -1 : p === '' || p === '.' ? 0 : 1), least: Math.min(s.least, s.depth + (p === '..' ? -1 : 0)) }), { depth: 3, least: 3 }).least < 0;
      expect(resolveUse(path, `${ROOT}/shelf/whelk.plate`, [ROOT])).toBe(isInside(wanted, ROOT) && !climbs ? wanted : null);
    }));
  });

  it('may be absolute, inside of the folder', () => {
    expect(resolveUse('/saltmarsh/note book/lab.plate', `${ROOT}/a.plate`, [ROOT])).toBe(`${ROOT}/lab.plate`);
    expect(resolveUse('/saltmarsh/lab.plate', `${ROOT}/a.plate`, [ROOT])).toBeNull();
  });

  it('does not mistake a folder for another whose name begins alike', () => expect(resolveUse('../note book 2/lab.plate', `${ROOT}/a.plate`, [ROOT])).toBeNull());
});

describe('the folders of a file', () => {
  it('are the open ones where it lies in one', () => expect(foldersFor(`${ROOT}/a.plate`, [ROOT, 'file:///other'])).toEqual([ROOT, 'file:///other']));
  it('are its own where it lies in none', () => expect(foldersFor('file:///else/a.plate', [ROOT])).toEqual(['file:///else']));
  it('are the open ones for a text that was never saved', () => expect(foldersFor('untitled:Untitled-1', [ROOT])).toEqual([ROOT]));
});
