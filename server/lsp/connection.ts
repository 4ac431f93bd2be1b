/** Wires the protocol to the features: which method asks which, and nothing more. For both hosts. */
import {
  CodeActionKind, DidChangeWatchedFilesNotification, LSPErrorCodes, PositionEncodingKind, ResponseError, TextDocumentSyncKind, type CancellationToken, type ClientCapabilities, type Connection,
  type InitializeParams, type InitializeResult, type WorkspaceFolder,
} from 'vscode-languageserver';
import { AllPages } from './all-pages.ts';
import type { Arrivals } from './arrivals.ts';
import { askToBeTold } from './ask-to-be-told.ts';
import type { Asks } from './asks.ts';
import { serveCard, type Print } from './card.ts';
import { serveCheck } from './check.ts';
import { COMPLETION, serveCompletion } from './completion.ts';
import { actionOf, definitionOf, flatSymbols, hoverOf, placeOf, published, rangeOf, summaryOf, symbolOf } from './convert.ts';
import { Diagnostics } from './diagnostics.ts';
import { Documents, WAITS, type Document, type ReadFile } from './documents.ts';
import { serveEvening } from './evening.ts';
import { hangActionsOf } from './hang.ts';
import { inTextFor, serveInText } from './in-text.ts';
import { later } from './later.ts';
import { lensesFor, serveLenses } from './lenses.ts';
import { namesFor, serveNames } from './names.ts';
import type { ListFiles } from './pages.ts';
import { servePicture } from './picture.ts';
import { serveReview } from './review.ts';
import { Fixes } from './fixes.ts';
import { Laying } from './layouts.ts';
import { SEARCH, serveSearch } from './search.ts';
import { Settings } from './settings.ts';
import { serveShots } from './shots.ts';
import { serveStarts } from './starts.ts';
import { Solving } from './solve.ts';
import { serveTyping, TYPING } from './typing.ts';
import { serveWays, WAYS } from './ways.ts';
import { serveWhy, whyActions } from './why.ts';
import { LIST_FILES, READ_FILE, SUMMARY, type InitializationOptions, type ReadFileParams, type SummaryAnswer, type SummaryParams } from './protocol.ts';

/** Pages of more characters are long: memory counts more than time. */
const LONG = 100_000;

/**
 * Serves one client until it goes. `read` reads files from disk and `list` lists them, where there is one; else, and for addresses that are no files, the client is asked.
 * `long` is called before a long page is read; `print` makes a PDF of a card.
 */
export function serve(connection: Connection, arrivals: Arrivals, read?: ReadFile, list?: ListFiles, long?: () => void, print?: Print, waits = WAITS): void {
  let can: ClientCapabilities = {};
  let options: InitializationOptions = {};
  const documents = new Documents(async (uri, folders) => {
    if (read && uri.startsWith('file:')) return read(uri, folders);
    const params: ReadFileParams = { uri };
    return options.readsFiles === true ? (await connection.sendRequest<string | null>(READ_FILE, params)) ?? undefined : undefined;
  }, uri => { refresh(documents.resting([uri])); }, waits);
  const diagnostics = new Diagnostics(connection, documents, arrivals, () => ({
    pulls: can.textDocument?.diagnostic !== undefined, refreshes: can.workspace?.diagnostics?.refreshSupport === true,
  }));
  const watches = (): boolean => can.workspace?.didChangeWatchedFiles?.dynamicRegistration === true;
  const watchesBeside = (): boolean => can.workspace?.didChangeWatchedFiles?.relativePatternSupport === true;

  connection.onInitialize((params): InitializeResult => {
    can = params.capabilities;
    options = (params.initializationOptions ?? {}) as InitializationOptions;
    documents.setFolders(foldersOf(params));
    documents.setInventories(listOf(options.inventoryFolders));
    return {
      serverInfo: { name: 'platewright' },
      capabilities: {
        positionEncoding: PositionEncodingKind.UTF16,
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: { includeText: false } },
        ...(can.textDocument?.diagnostic ? { diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: options.checksAllPages === true } } : {}),
        hoverProvider: true, documentSymbolProvider: true, definitionProvider: true,
        ...namesFor(can), ...inTextFor(can), ...TYPING, ...SEARCH, ...WAYS, ...COMPLETION, ...lensesFor(can, options.opensReview === true),
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        ...(print ? { experimental: { printsCards: true } } : {}),
      },
    };
  });
  connection.onInitialized(() => {
    settings.begin(() => { inText.refresh(); lenses.refresh(); });
    // What lies in folders of inventories is no file of an open folder.
    const beside = watchesBeside() ? documents.besideFolders.map(baseUri => ({ globPattern: { baseUri, pattern: '**/*.plate' } })) : [];
    if (watches()) askToBeTold(connection, DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: '**/*.plate' }, ...beside] });
    if (can.workspace?.workspaceFolders !== true) return;
    connection.workspace.onDidChangeWorkspaceFolders(async () => {
      // Those that were known stay, where a client does not tell.
      const folders: unknown = await connection.workspace.getWorkspaceFolders().catch(() => undefined);
      if (folders === undefined) return;
      documents.setFolders(addressesOf(folders));
      refresh([...documents.all()]);
      pages.changed();
    });
  });

  connection.onDidOpenTextDocument(({ textDocument: t }) => {
    if (typeof t.text === 'string' && t.text.length > LONG) long?.();
    if (typeof t.uri === 'string' && typeof t.text === 'string') diagnostics.changed(documents.opened(t.uri, t.languageId, t.version, t.text));
  });
  connection.onDidChangeTextDocument(({ textDocument: t, contentChanges }) => {
    const document = documents.changed(t.uri, contentChanges, t.version);
    if (!document) return;
    diagnostics.changed(document);
    if (documents.resting([document.uri]).length === 0) return;
    inText.refresh();
    lenses.refresh();
  });
  connection.onDidSaveTextDocument(() => {
    pages.changed();
    // Without a watcher nobody tells of files that another program wrote, so that they are looked at again now and then.
    if (watches() && (watchesBeside() || documents.besideFolders.length === 0)) return;
    documents.changedAnywhere();
    refresh([...documents.all()]);
  });
  connection.onDidCloseTextDocument(({ textDocument: t }) => {
    const document = documents.get(t.uri);
    if (!document) return;
    const resting = documents.resting([t.uri]);
    documents.closed(t.uri);
    review.closed(t.uri);
    diagnostics.closed(document);
    refresh(resting);
    pages.changed();
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    const uris = changes.map(c => c.uri);
    documents.changedOutside(uris);
    refresh(documents.resting(uris));
    pages.changed();
  });
  connection.languages.diagnostics.on((params, token) => diagnostics.pull(params, () => token.isCancellationRequested));

  /** Answers from the snapshot of a document; null where it is not open. */
  const answer: Asks['answer'] = async (uri, token, from, use = 'now') => {
    const document = documents.get(uri);
    if (!document) return null;
    const { version } = document;
    const stop = (moved: boolean): void => {
      if (token.isCancellationRequested || moved) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'A newer text has arrived.');
    };
    const late = (): boolean => use === 'now' && (document.version !== version || arrivals.superseded(document));
    stop(late());
    const snapshot = await documents.snapshot(document);
    // A place is one of the text that it was asked of.
    stop(document.version !== version || late());
    const found = await from(snapshot, document);
    stop(late());
    return found;
  };
  const asks = { connection, documents, can: () => can, answer };
  const listed: ListFiles = async folders => {
    if (list && folders.every(f => f.startsWith('file:'))) return list(folders);
    return options.listsFiles === true ? connection.sendRequest<string[]>(LIST_FILES) : [];
  };
  serveNames(asks, listed);
  serveShots(asks, listed);
  serveStarts(asks);
  serveCheck(asks, listed);
  serveCompletion(asks, listed);
  serveTyping(asks);
  serveSearch(asks, listed);
  serveWays(asks);
  serveWhy(asks);
  servePicture(asks);
  serveCard(asks, print);
  serveEvening(asks);
  const settings = new Settings(connection, () => can);
  const review = serveReview(asks, () => options.opensReview === true, () => { lenses.refresh(); });
  const lenses = serveLenses(asks, settings, review.lenses);
  const pages = new AllPages(documents, listed);
  pages.serve(connection);
  const solving = new Solving(documents);
  const fixes = new Fixes(documents);
  const laid = new Laying(documents);
  const inText = serveInText(asks, solving, settings);
  /** Texts have changed that these documents use. */
  const refresh = (resting: readonly Document[]): void => {
    diagnostics.refresh(resting);
    if (resting.length === 0) return;
    inText.refresh();
    lenses.refresh();
  };

  connection.onHover(({ textDocument: t, position }, token) => answer(t.uri, token, async (s, d) => {
    const { hoverAt } = await later();
    const hover = hoverAt(s, ...placeOf(d, position));
    return hover ? hoverOf(d, hover) : null;
  }));
  connection.onDefinition(({ textDocument: t, position }, token) => answer(t.uri, token, async (s, d) => {
    const { definitionAt } = await later();
    const found = definitionAt(s, ...placeOf(d, position));
    if (!found) return null;
    const target = documents.get(found.to.uri) ?? { uri: found.to.uri, version: 0, marks: 0 };
    return definitionOf(d, found, target, can.textDocument?.definition?.linkSupport === true);
  }));
  connection.onDocumentSymbol(({ textDocument: t }, token) => answer(t.uri, token, async (s, d) => {
    const symbols = (await later()).symbolsOf(s).map(i => symbolOf(d, s.tree.lines, i));
    return can.textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true ? symbols : flatSymbols(d.uri, symbols);
  }));
  connection.onCodeAction(({ textDocument: t, range, context }, token) => answer(t.uri, token, async (s, d) => {
    if (context.only && !context.only.some(k => k === CodeActionKind.Empty || k === CodeActionKind.QuickFix)) return [];
    const touched = published(s.findings, s.uri).filter(f => touches(rangeOf(d, f.at), range));
    const why = options.opensWhy === true && !context.only ? await whyActions(s, d, range.start.line) : [];
    const versioned = can.workspace?.workspaceEdit?.documentChanges === true;
    const cures = (await Promise.all(touched.map(async f => (await fixes.of(f, s, d)).map(fix => actionOf(d, f, fix, versioned))))).flat();
    return [...cures, ...await solving.actions(s, d, range, versioned), ...await laid.actions(s, d, range, versioned), ...await hangActionsOf(s, d, range, documents, versioned), ...why];
  }));
  connection.onRequest(SUMMARY, ({ textDocument: t, line }: SummaryParams, token: CancellationToken): Promise<SummaryAnswer | null> => answer(t.uri, token, async (s, d) => {
    const { summaryAt, summaryMarkdown } = await later();
    const summary = summaryAt(s, line);
    return summary ? summaryOf(d, summary, summaryMarkdown(summary)) : null;
  }));

  connection.listen();
}

const listOf = (given: unknown): readonly unknown[] => (Array.isArray(given) ? given : []);
const addressesOf = (folders: unknown): string[] => listOf(folders).flatMap(f => { const uri = (f as { uri?: unknown } | null)?.uri; return typeof uri === 'string' ? [uri] : []; });

function foldersOf(params: InitializeParams & { workspaceFolders?: WorkspaceFolder[] | null }): string[] {
  if (params.workspaceFolders) return addressesOf(params.workspaceFolders);
  // Older clients only know one folder.
  const { rootUri } = params as { rootUri?: string | null };
  return rootUri ? [rootUri] : [];
}

type Range = ReturnType<typeof rangeOf>;
const touches = (a: Range, b: Range): boolean => before(a.start, b.end) && before(b.start, a.end);
const before = (a: Range['start'], b: Range['start']): boolean => a.line < b.line || (a.line === b.line && a.character <= b.character);
