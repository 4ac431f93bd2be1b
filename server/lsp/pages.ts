/** The pages in which something may be named: those of the open folders, and those that are open. */
import type { Bearer } from '../model/mentions/names.ts';
import { fileName } from '../model/scope.ts';
import type { Page } from '../features/rename.ts';
import type { Document, Documents } from './documents.ts';
import { MAX_LISTED } from './protocol.ts';
import { canonical } from './uris.ts';

/** Lists the addresses of the pages in some folders, at most {@link MAX_LISTED} and one more. */
export type ListFiles = (folders: readonly string[]) => Promise<readonly string[]>;

export interface Found {
  readonly pages: readonly (Page & { readonly document: Document })[];
  /** false: there are more pages than are looked at */
  readonly whole: boolean;
}

/** So many files are read at once. */
const AT_ONCE = 50;

/** The pages that may name it, others too where it is shared; the one in which it was asked comes first. What is not open is read anew. */
export async function pagesNaming(named: Bearer, shared: boolean, asked: Document, documents: Documents, list: ListFiles): Promise<Found> {
  const home = canonical(named.at.uri);
  const listed = shared ? await list(documents.inFolders).catch(() => []) : [];
  const uris = new Set(shared ? [home, ...[...documents.all()].map(d => d.id), ...listed.slice(0, MAX_LISTED).map(canonical)] : []);
  uris.delete(asked.id);
  const found = [asked];
  const all = [...uris];
  for (let i = 0; i < all.length; i += AT_ONCE) {
    const read = await Promise.all(all.slice(i, i + AT_ONCE).map(uri => documents.page(uri)));
    // Only a page that uses the file can name what it holds.
    for (const d of read) if (d && (d.id === home || d.text.includes(fileName(home)))) found.push(d);
  }
  // All at last, so that they are of one time.
  for (const d of found) await documents.snapshot(d);
  const pages: Found['pages'][number][] = [];
  for (const d of found) pages.push({ document: d, snapshot: await documents.snapshot(d), library: documents.textsFor(d) });
  return { pages, whole: listed.length <= MAX_LISTED };
}

/** All pages that are known: those that are open, and those of the open folders as they stand on disk. One that cannot be read is left out. */
export async function allPages(documents: Documents, list: ListFiles): Promise<{ readonly pages: readonly Document[]; readonly whole: boolean }> {
  const listed = await list(documents.inFolders).catch(() => []);
  const uris = [...new Set([...[...documents.all()].map(d => d.id), ...listed.slice(0, MAX_LISTED).map(canonical)])];
  const pages: Document[] = [];
  for (let i = 0; i < uris.length; i += AT_ONCE) for (const d of await Promise.all(uris.slice(i, i + AT_ONCE).map(uri => documents.page(uri)))) if (d) pages.push(d);
  return { pages, whole: listed.length <= MAX_LISTED };
}

/** Lets messages through that have come in the meantime. */
export const breathe = (): Promise<void> => new Promise(go => { setTimeout(go, 0); });
