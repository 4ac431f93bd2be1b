/** The examples and the published setups, with a library that reads what they use. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Library } from '../../server/analysis.ts';

export interface Page { readonly name: string; readonly uri: string; readonly text: string }

export const pagesOf = (folder: string): Page[] => readdirSync(folder).filter(f => f.endsWith('.plate')).sort().map(name => {
  const path = resolve(folder, name);
  return { name: join(folder, name), uri: pathToFileURL(path).href, text: readFileSync(path, 'utf8') };
});
export const EXAMPLES = pagesOf('examples');
export const PUBLISHED = pagesOf('tests/fixtures/published');

export const disk: Library = {
  resolve: (path, from) => new URL(path, from).href,
  text: uri => (existsSync(fileURLToPath(uri)) ? readFileSync(fileURLToPath(uri), 'utf8') : undefined),
};
