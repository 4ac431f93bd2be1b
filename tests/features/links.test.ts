import { expect, it } from 'vitest';
import { analyse, type Library } from '../../server/analysis.ts';
import { linksOf } from '../../server/features/links.ts';
import { FILE } from './source.ts';

/** A folder with one file; a path that leaves it leads nowhere. */
const library: Library = {
  resolve: (path, from) => { const to = new URL(path, from).href; return to.startsWith('file:///saltmarsh/') ? to : null; },
  text: uri => (uri === 'file:///saltmarsh/lab%20%C2%B5.plate' ? 'inventory lab {\n}\n' : undefined),
};
const check = (source: string, ...wanted: string[]): void => {
  const s = analyse(FILE, source, library);
  expect(linksOf(s).map(l => `${l.at.line}: ${s.tree.lines[l.at.line]!.text.slice(l.at.start, l.at.end)} → ${l.to}, ${l.title}`)).toEqual(wanted);
};

it('a path leads to its file', () => check('// µ\nuse "./lab µ.plate" // 😀', '1: ./lab µ.plate → file:///saltmarsh/lab%20%C2%B5.plate, Open lab µ.plate'));
it('a file that is missing has none', () => check('use "other.plate"'));
it('nor has one outside of the open folder', () => check('use "../lab.plate"'));
it('nor a path that is not written yet', () => check('use ""\nuse\nuse "lab'));
