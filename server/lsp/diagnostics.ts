/** Findings in the editor: on request where the client asks for them, else sent whenever something has changed. */
import { DocumentDiagnosticReportKind, LSPErrorCodes, ResponseError, type Connection, type DocumentDiagnosticParams, type DocumentDiagnosticReport } from 'vscode-languageserver';
import type { Arrivals } from './arrivals.ts';
import { diagnosticOf, published } from './convert.ts';
import type { Document, Documents } from './documents.ts';

export interface Client {
  readonly pulls: boolean;
  /** can be told that findings may have changed */
  readonly refreshes: boolean;
}

export class Diagnostics {
  private asking = false;
  private again = false;

  constructor(private readonly connection: Connection, private readonly documents: Documents, private readonly arrivals: Arrivals, private readonly client: () => Client) {}

  async pull(params: DocumentDiagnosticParams, cancelled: () => boolean): Promise<DocumentDiagnosticReport> {
    const document = this.documents.get(params.textDocument.uri);
    if (!document) return { kind: DocumentDiagnosticReportKind.Full, items: [] };
    const { version } = document;
    const stop = (): boolean => cancelled() || document.version !== version || this.arrivals.superseded(document);
    if (stop()) throw superseded();
    const { findings, uri } = await this.documents.snapshot(document);
    if (stop()) throw superseded();
    const resultId = this.documents.idOf(document);
    if (params.previousResultId === resultId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items: published(findings, uri).map(f => diagnosticOf(document, f)) };
  }

  /** A text of the editor has changed. */
  changed(document: Document): void {
    if (!this.client().pulls) this.push(document);
    this.refresh(this.documents.resting([document.uri]));
  }

  /** Texts have changed that these documents use. */
  refresh(documents: readonly Document[]): void {
    const { pulls, refreshes } = this.client();
    if (!pulls) for (const d of documents) this.push(d);
    else if (refreshes && documents.length > 0) void this.askToPull();
  }

  /** The client is asked to ask again; once more where something changes before it has answered. */
  private async askToPull(): Promise<void> {
    this.again = this.asking;
    if (this.asking) return;
    this.asking = true;
    try {
      do {
        this.again = false;
        await this.connection.languages.diagnostics.refresh();
      } while (this.again as boolean);
    } catch { /* the client has gone, or doesn't do it after all */ }
    this.asking = false;
  }

  /** A document that is no longer open keeps no findings. */
  closed(document: Document): void {
    if (!this.client().pulls) void this.connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
  }

  private push(document: Document): void {
    this.send(document).catch((e: unknown) => { this.connection.console.error(String(e)); });
  }

  private async send(document: Document): Promise<void> {
    const { version } = document;
    // The text that follows is sent with its own findings.
    if (this.arrivals.superseded(document)) return;
    const { findings, uri } = await this.documents.snapshot(document);
    if (document.version !== version || this.documents.get(document.uri) !== document) return;
    await this.connection.sendDiagnostics({ uri: document.uri, version, diagnostics: published(findings, uri).map(f => diagnosticOf(document, f)) });
  }
}

/** The client asks again: of a text that has moved on, no findings are better than old ones only if newer ones follow. */
const superseded = (): ResponseError<{ retriggerRequest: boolean }> => new ResponseError(LSPErrorCodes.ServerCancelled, 'A newer text has arrived.', { retriggerRequest: true });
