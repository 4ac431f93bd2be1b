/** Names of all pages that are known: those of the open folders, where somebody can list them, and those that are open. */
import { SymbolInformation, type ServerCapabilities, type WorkspaceSymbol } from 'vscode-languageserver';
import type { Declared } from '../features/search.ts';
import type { Asks } from './asks.ts';
import { rangeOf, SYMBOL } from './convert.ts';
import type { Document } from './documents.ts';
import { later } from './later.ts';
import { allPages, breathe, type ListFiles } from './pages.ts';

export const SEARCH: ServerCapabilities = { workspaceSymbolProvider: { resolveProvider: false } };

/** A list is read by people. */
const MOST = 1000;

export function serveSearch({ connection, documents }: Asks, list: ListFiles): void {
  /** of each page what it declares, as long as its text is the same */
  let known = new Map<string, { readonly text: string; readonly declared: readonly Declared[] }>();

  connection.onWorkspaceSymbol(async ({ query }, token): Promise<WorkspaceSymbol[] | SymbolInformation[]> => {
    const { declaredIn, matching } = await later();
    const { pages } = await allPages(documents, list);
    if (token.isCancellationRequested) return [];
    const now = new Map<string, { readonly text: string; readonly declared: readonly Declared[] }>();
    const all: (Declared & { readonly document: Document })[] = [];
    for (const document of pages) {
      const { id, text } = document;
      const before = known.get(id);
      if (before?.text !== text) await breathe();
      const page = before?.text === text ? before : { text, declared: declaredIn(id, text) };
      now.set(id, page);
      for (const d of page.declared) all.push({ ...d, document });
    }
    known = now;
    return matching(all, typeof query === 'string' ? query : '').slice(0, MOST).map(({ document: d, name, kind, inside, at }) =>
      SymbolInformation.create(name, SYMBOL[kind], rangeOf(d, at), documents.spelling(d.uri), inside));
  });
}
