/** References, highlights and rename. */
import { LSPErrorCodes, ResponseError, type ClientCapabilities, type ServerCapabilities } from 'vscode-languageserver';
import { highlightsAt, useAt, usesOf } from '../features/references.ts';
import type { Refused } from '../features/rename.ts';
import type { Asks } from './asks.ts';
import { highlightOf, placeOf, rangeOf, workspaceEditOf } from './convert.ts';
import { pagesNaming, type ListFiles } from './pages.ts';

/** Only a client that can be told beforehand is told so. */
export const namesFor = (client: ClientCapabilities): ServerCapabilities =>
  ({ referencesProvider: true, documentHighlightProvider: true, renameProvider: client.textDocument?.rename?.prepareSupport === true ? { prepareProvider: true } : true });

/** A start does not wait for what is seldom asked. */
const feature = async () => import('../features/rename.ts');

export function serveNames({ connection, documents, can, answer }: Asks, list: ListFiles): void {
  connection.onDocumentHighlight(({ textDocument: t, position }, token) => answer(t.uri, token, (s, d) => highlightsAt(s, ...placeOf(d, position)).map(u => highlightOf(d, u))));

  connection.onReferences(({ textDocument: t, position, context }, token) => answer(t.uri, token, async (s, d) => {
    const at = placeOf(d, position);
    const here = useAt(s, ...at);
    if (!here) return null;
    const { pages } = await pagesNaming(here.named, d, documents, list);
    const named = useAt(pages[0]!.snapshot, ...at)?.named;
    if (!named) return null;
    return pages.flatMap(p => usesOf(named, [p.snapshot]).filter(u => context.includeDeclaration || !u.declares).map(u => ({ uri: p.document.uri, range: rangeOf(p.document, u.at) })));
  }));

  connection.onPrepareRename(({ textDocument: t, position }, token) => answer(t.uri, token, async (s, d) => {
    const { renamable } = await feature();
    const found = allowed(renamable(s, ...placeOf(d, position), uri => documents.isOpen(uri)));
    return { range: rangeOf(d, found.at), placeholder: found.named.name };
  }));

  connection.onRenameRequest(({ textDocument: t, position, newName }, token) => answer(t.uri, token, async (s, d) => {
    const { rename, renamable } = await feature();
    const at = placeOf(d, position);
    const inside = (uri: string): boolean => documents.isOpen(uri);
    const { pages, whole } = await pagesNaming(allowed(renamable(s, ...at, inside)).named, d, documents, list);
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
