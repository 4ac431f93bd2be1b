/** References, highlights and rename. */
import { LSPErrorCodes, ResponseError, type ClientCapabilities, type ServerCapabilities } from 'vscode-languageserver';
import type { Refused } from '../features/rename.ts';
import type { Asks } from './asks.ts';
import { highlightOf, placeOf, rangeOf, workspaceEditOf } from './convert.ts';
import { later } from './later.ts';
import { pagesNaming, type ListFiles } from './pages.ts';

/** Only a client that can be told beforehand is told so. */
export const namesFor = (client: ClientCapabilities): ServerCapabilities =>
  ({ referencesProvider: true, documentHighlightProvider: true, renameProvider: client.textDocument?.rename?.prepareSupport === true ? { prepareProvider: true } : true });

export function serveNames({ connection, documents, can, answer }: Asks, list: ListFiles): void {
  connection.onDocumentHighlight(({ textDocument: t, position }, token) => answer(t.uri, token, async (s, d) => (await later()).highlightsAt(s, ...placeOf(d, position)).map(u => highlightOf(d, u))));

  connection.onReferences(({ textDocument: t, position, context }, token) => answer(t.uri, token, async (s, d) => {
    const { isShared, useAt, usesOf } = await later();
    const at = placeOf(d, position);
    const here = useAt(s, ...at);
    if (!here) return null;
    const { pages } = await pagesNaming(here.named, isShared(here.named), d, documents, list);
    const named = useAt(pages[0]!.snapshot, ...at)?.named;
    if (!named) return null;
    return pages.flatMap(p => usesOf(named, [p.snapshot]).filter(u => context.includeDeclaration || !u.declares).map(u => ({ uri: p.document.uri, range: rangeOf(p.document, u.at) })));
  }));

  connection.onPrepareRename(({ textDocument: t, position }, token) => answer(t.uri, token, async (s, d) => {
    const { renamable } = await later();
    const found = allowed(renamable(s, ...placeOf(d, position), uri => documents.isOpen(uri)));
    return { range: rangeOf(d, found.at), placeholder: found.named.name };
  }));

  connection.onRenameRequest(({ textDocument: t, position, newName }, token) => answer(t.uri, token, async (s, d) => {
    const { isShared, rename, renamable } = await later();
    const at = placeOf(d, position);
    const inside = (uri: string): boolean => documents.isOpen(uri);
    const asked = allowed(renamable(s, ...at, inside)).named;
    const { pages, whole } = await pagesNaming(asked, isShared(asked), d, documents, list);
    if (!whole) throw refusal('The open folders hold more pages than are looked at, so that some that name it might be missed. Open a smaller folder.');
    const { named } = allowed(renamable(pages[0]!.snapshot, ...at, inside));
    const edits = allowed(rename(pages, named, newName));
    const changed = pages.flatMap(({ document, snapshot }) => (edits.has(snapshot.uri) ? [{ document, edits: edits.get(snapshot.uri)! }] : []));
    const versioned = can().workspace?.workspaceEdit?.documentChanges === true;
    return workspaceEditOf(changed.map(c => ({ source: c.document, open: documents.get(c.document.uri) === c.document, edits: c.edits })), versioned);
  }));
}

const refusal = (why: string): ResponseError => new ResponseError(LSPErrorCodes.RequestFailed, why);

function allowed<T extends object>(found: T | Refused): T {
  if ('refused' in found) throw refusal(found.refused);
  return found;
}
