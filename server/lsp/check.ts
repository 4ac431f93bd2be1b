/** Answers what the command line prints of pages, for the tasks of an editor. */
import { LSPErrorCodes, ResponseError, type CancellationToken } from 'vscode-languageserver';
import type { Asks } from './asks.ts';
import type { Document } from './documents.ts';
import { later } from './later.ts';
import { allPages, breathe, type ListFiles } from './pages.ts';
import { CHECK, MAX_LISTED, type CheckParams, type Printed } from './protocol.ts';
import { isInside, nameOf, pathOf } from './uris.ts';

export function serveCheck({ connection, documents }: Asks, list: ListFiles): void {
  /** Relative to the open folder, where there is one; else whole, so that the file is found among several. */
  const naming = (uri: string): string => {
    const [folder, ...others] = documents.inFolders;
    if (folder !== undefined && others.length === 0 && isInside(uri, folder)) return uri.slice(folder.length + 1).split('/').map(nameOf).join('/');
    return uri.startsWith('file:') ? pathOf(uri) : nameOf(uri);
  };

  connection.onRequest(CHECK, async ({ pages, strict = false }: CheckParams, token: CancellationToken): Promise<Printed> => {
    const { exitFor, listedText, printable } = await later();
    const { found, missing, whole } = await named(pages);
    const listed = [];
    for (const d of [...found].sort((a, b) => (a.id < b.id ? -1 : 1))) {
      if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'It is not wanted any more.');
      const { findings } = await documents.snapshot(d);
      listed.push({ uri: d.id, name: naming(d.id), findings });
      await breathe();
    }
    const text = [
      ...missing.map(uri => `${naming(uri)} cannot be read`), ...(whole ? [] : [`The open folders hold more than ${MAX_LISTED} pages, and the rest was not looked at. Open a smaller folder.`]),
      listed.length === 0 && missing.length === 0 ? 'There is no .plate file in the open folders.\n' : listedText(listed, naming),
    ].join('\n');
    return { text: text.split('\n').map(printable).join('\n'), code: missing.length > 0 ? 3 : exitFor(listed.flatMap(p => p.findings), strict) };
  });

  async function named(pages: readonly string[] | undefined): Promise<{ readonly found: readonly Document[]; readonly missing: readonly string[]; readonly whole: boolean }> {
    if (!pages) {
      const { pages: found, whole } = await allPages(documents, list);
      return { found, missing: [], whole };
    }
    const read = await Promise.all(pages.map(uri => documents.page(uri)));
    return { found: read.flatMap(d => d ?? []), missing: pages.filter((_, i) => !read[i]), whole: true };
  }
}
