/** The page that inputs are taken for, and the files that it may use: those of the workshop. Nothing is read from a disk. */
import { LineCache } from '../../grammar/parse.ts';
import type { Library } from '../../server/analysis.ts';
import { EXAMPLES } from '../examples/library.ts';

export const PAGE = 'file:///saltmarsh/whelk.plate';
const files = new Map(EXAMPLES.map(e => [`file:///saltmarsh/${e.name.replace(/^.*[\\/]/, '')}`, { text: e.text, lines: new LineCache() }]));

export const LIBRARY: Library = {
  resolve: (path, from) => { try { return new URL(path, from).href; } catch { return null; } },
  text: uri => files.get(uri)?.text,
  lines: uri => files.get(uri)?.lines,
};
export const fileAt = (uri: string): string | undefined => files.get(uri)?.text;
