/** A client of the server: opens pages, edits them, and asks, as an editor does. The server runs in this process, behind its two streams. */
import { PassThrough } from 'node:stream';
import { TextDocument } from 'vscode-languageserver-textdocument';
import {
  createConnection, createMessageConnection, ProposedFeatures, StreamMessageReader, StreamMessageWriter, type CodeAction, type Diagnostic, type DocumentDiagnosticReport, type Hover, type InitializeResult,
  type MessageConnection, type Position, type PublishDiagnosticsParams, type Range, type TextEdit, type WorkspaceEdit,
} from 'vscode-languageserver/node';
import { Arrivals } from '../../server/lsp/arrivals.ts';
import { serve } from '../../server/lsp/connection.ts';
import type { ReadFile, Waits } from '../../server/lsp/documents.ts';
import { listInside, print, readInside } from '../../server/lsp/node.ts';
import { STRATEGY } from '../../server/lsp/strategy.ts';

export interface Settings {
  /** the client asks for findings, instead of having them sent */
  readonly pulls?: boolean;
  /** open folder, as an address */
  readonly folder?: string;
  readonly watches?: boolean;
  readonly capabilities?: Record<string, unknown>;
  readonly options?: unknown;
  /** how the server reads files; null: it cannot, and prints nothing either. Only where it reads them itself does it list them */
  readonly read?: ReadFile | null;
  readonly waits?: Waits;
  /** what the client answers to requests of the server */
  readonly answers?: Readonly<Record<string, (params: unknown) => unknown>>;
}

export class Editor {
  readonly sent: PublishDiagnosticsParams[] = [];
  readonly logged: string[] = [];
  refreshes = 0;
  watched: unknown;
  initialized: InitializeResult | undefined;
  private waiting: (() => void)[] = [];

  constructor(readonly connection: MessageConnection) {
    connection.onNotification('textDocument/publishDiagnostics', (p: PublishDiagnosticsParams) => {
      this.sent.push(p);
      for (const go of this.waiting.splice(0)) go();
    });
    connection.onNotification('window/logMessage', ({ message }: { message: string }) => { this.logged.push(message); });
    connection.onRequest('workspace/diagnostic/refresh', () => { this.refreshes++; return null; });
    connection.onRequest('client/registerCapability', (p: { registrations: { method: string; registerOptions: unknown }[] }) => {
      this.watched = p.registrations.find(r => r.method === 'workspace/didChangeWatchedFiles')?.registerOptions;
      return null;
    });
    connection.listen();
  }

  async open(text: string, uri = 'file:///saltmarsh/whelk.plate'): Promise<Page> {
    await this.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'plate', version: 1, text } });
    return new Page(this, uri, TextDocument.create(uri, 'plate', 1, text));
  }

  /** The findings that are sent next for a page and satisfy a test; fails after two seconds. */
  async next(uri: string, test: (found: PublishDiagnosticsParams) => boolean = () => true): Promise<PublishDiagnosticsParams> {
    const end = Date.now() + 2000;
    for (;;) {
      const at = this.sent.findIndex(p => p.uri === uri && test(p));
      if (at >= 0) return this.sent.splice(0, at + 1)[at]!;
      if (Date.now() > end) throw new Error(`no findings were sent for ${uri}`);
      await new Promise<void>(resolve => { this.waiting.push(resolve); setTimeout(resolve, 50); });
    }
  }

  close(): void { this.connection.dispose(); }
}

/** An open page, with the text as the client has it. */
export class Page {
  private version = 1;
  private resultId: string | undefined;

  constructor(private readonly editor: Editor, readonly uri: string, private readonly document: TextDocument) {}

  get text(): string { return this.document.getText(); }

  /** Where a piece of the text stands, in the client's terms. */
  range(of: string, from = 0): Range {
    const at = this.text.indexOf(of, from);
    if (at < 0) throw new Error(`“${of}” is not there`);
    return { start: this.document.positionAt(at), end: this.document.positionAt(at + of.length) };
  }

  slice(range: Range): string { return this.document.getText(range); }

  /** Replaces one piece of the text by another, as typing does. Gives what undoes it. */
  async type(from: string, to: string): Promise<() => Promise<void>> {
    const edit = { range: this.range(from), newText: to };
    const undo = this.reverse(edit);
    await this.edit([edit]);
    return () => this.edit([undo]);
  }

  private reverse({ range, newText }: TextEdit): TextEdit {
    const before = this.slice(range);
    const start = this.document.offsetAt(range.start);
    const end = TextDocument.create('', '', 0, this.text.slice(0, start) + newText).positionAt(start + newText.length);
    return { range: { start: range.start, end }, newText: before };
  }

  /** Edits that don't overlap, all meant for the text as it is now. They are told from the last to the first, so that each range stays true. */
  async edit(edits: readonly TextEdit[]): Promise<void> {
    const sorted = [...edits].sort((a, b) => this.document.offsetAt(b.range.start) - this.document.offsetAt(a.range.start));
    const contentChanges = sorted.map(e => ({ range: e.range, text: e.newText }));
    TextDocument.update(this.document, contentChanges, ++this.version);
    await this.editor.connection.sendNotification('textDocument/didChange', { textDocument: { uri: this.uri, version: this.version }, contentChanges });
  }

  /** The whole text anew, as editors tell that know no pieces. */
  async rewrite(text: string): Promise<void> {
    TextDocument.update(this.document, [{ text }], ++this.version);
    await this.editor.connection.sendNotification('textDocument/didChange', { textDocument: { uri: this.uri, version: this.version }, contentChanges: [{ text }] });
  }

  async apply(edit: WorkspaceEdit): Promise<void> {
    const [change] = edit.documentChanges ?? [];
    if (change && 'edits' in change) {
      if (change.textDocument.version !== this.version) throw new Error(`the edit is for version ${String(change.textDocument.version)}, the page is at ${this.version}`);
      await this.edit(change.edits as TextEdit[]);
    } else await this.edit(edit.changes![this.uri]!);
  }

  ask<T>(method: string, more: object = {}): Promise<T> { return this.editor.connection.sendRequest(method, { textDocument: { uri: this.uri }, ...more }); }

  async pull(): Promise<DocumentDiagnosticReport> {
    const report = await this.ask<DocumentDiagnosticReport>('textDocument/diagnostic', this.resultId === undefined ? {} : { previousResultId: this.resultId });
    this.resultId = report.resultId;
    return report;
  }

  async findings(): Promise<Diagnostic[]> {
    this.resultId = undefined;
    const report = await this.pull();
    return report.kind === 'full' ? report.items : [];
  }

  async codes(): Promise<unknown[]> { return (await this.findings()).map(d => d.code); }

  async hover(position: Position): Promise<string> {
    const hover = await this.ask<Hover | null>('textDocument/hover', { position });
    return hover === null ? '' : (hover.contents as { value: string }).value;
  }

  actions(range: Range, only?: string[]): Promise<CodeAction[]> { return this.ask('textDocument/codeAction', { range, context: { diagnostics: [], ...(only ? { only } : {}) } }); }

  close(): Promise<void> { return this.editor.connection.sendNotification('textDocument/didClose', { textDocument: { uri: this.uri } }); }
}

export async function startEditor(settings: Settings = {}): Promise<Editor> {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const arrivals = new Arrivals(new StreamMessageReader(up));
  const server = createConnection(ProposedFeatures.all, arrivals, new StreamMessageWriter(down), STRATEGY);
  serve(server, arrivals, settings.read === null ? undefined : settings.read ?? readInside, settings.read === undefined ? listInside : undefined, undefined, settings.read === null ? undefined : print, settings.waits);
  const editor = new Editor(createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up)));
  for (const [method, answer] of Object.entries(settings.answers ?? {})) editor.connection.onRequest(method, answer);
  await introduce(editor, settings);
  return editor;
}

export async function introduce(editor: Editor, { pulls = true, folder, watches = false, capabilities = {}, options }: Settings): Promise<void> {
  editor.initialized = await editor.connection.sendRequest('initialize', {
    processId: null, rootUri: null, ...(options === undefined ? {} : { initializationOptions: options }), workspaceFolders: folder === undefined ? null : [{ uri: folder, name: 'notebook' }],
    capabilities: {
      textDocument: { ...(pulls ? { diagnostic: {} } : {}), documentSymbol: { hierarchicalDocumentSymbolSupport: true }, definition: { linkSupport: true } },
      workspace: { ...(pulls ? { diagnostics: { refreshSupport: true } } : {}), didChangeWatchedFiles: { dynamicRegistration: watches }, workspaceEdit: { documentChanges: true } },
      ...capabilities,
    },
  });
  await editor.connection.sendNotification('initialized', {});
}
