/** Findings of all pages of the open folders, open or not, for a client that wants them. */
import { DocumentDiagnosticReportKind, LSPErrorCodes, ResponseError, type Connection, type PreviousResultId, type WorkspaceDocumentDiagnosticReport } from 'vscode-languageserver';
import { diagnosticOf, published } from './convert.ts';
import type { Document, Documents } from './documents.ts';
import { allPages, breathe, type ListFiles } from './pages.ts';
import { canonical } from './uris.ts';

/** What was told of a page that is not open: it stays true while its text and those that it uses are the same. */
interface Told { readonly id: string; readonly text: string; readonly files: readonly string[]; readonly revisions: readonly number[] }

export class AllPages {
  private told = new Map<string, Told>();
  private ids = 0;
  private readonly waiting = new Set<() => void>();
  /** how often something has changed */
  private news = 0;

  constructor(private readonly documents: Documents, private readonly list: ListFiles) {}

  serve(connection: Connection): void {
    connection.languages.diagnostics.onWorkspace(async ({ previousResultIds: before }, token) => {
      const known = new Map((Array.isArray(before) ? before : []).map(p => [canonical(p.uri), p]));
      for (;;) {
        const { news } = this;
        const items = await this.reports(known, () => token.isCancellationRequested);
        if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'It is not wanted any more.');
        // Clients ask again as soon as they are answered: without news the answer waits for some.
        if (known.size === 0 || items.some(i => i.kind === DocumentDiagnosticReportKind.Full)) return { items };
        // What has changed while they were looked at wakes nobody any more.
        if (news === this.news) await new Promise<void>(resolve => {
          const go = (): void => { this.waiting.delete(go); resolve(); };
          this.waiting.add(go);
          token.onCancellationRequested(go);
        });
      }
    });
  }

  /** Files have changed on disk, pages were saved or closed, or other folders are open. What is typed does not count: open pages are asked for by themselves. */
  changed(): void {
    this.news++;
    for (const go of [...this.waiting]) go();
  }

  private async reports(known: ReadonlyMap<string, PreviousResultId>, cancelled: () => boolean): Promise<WorkspaceDocumentDiagnosticReport[]> {
    const { pages } = await allPages(this.documents, this.list);
    const now = new Map<string, Told>();
    const items: WorkspaceDocumentDiagnosticReport[] = [];
    for (const page of pages) {
      if (cancelled()) return [];
      items.push(await this.report(page, known.get(page.id)?.value, now));
    }
    this.told = now;
    // Of a page that has gone nothing is left.
    const here = new Set(pages.map(p => p.id));
    for (const [id, { uri }] of known) if (!here.has(id)) items.push({ kind: DocumentDiagnosticReportKind.Full, uri, version: null, items: [] });
    return items;
  }

  private async report(page: Document, before: string | undefined, now: Map<string, Told>): Promise<WorkspaceDocumentDiagnosticReport> {
    const open = this.documents.get(page.uri) === page;
    const { uri } = page;
    const version = open ? page.version : null;
    const told = open ? undefined : this.told.get(page.id);
    if (told?.id === before && told?.text === page.text && told.files.every((f, i) => this.documents.revisionOf(f) === told.revisions[i])) {
      now.set(page.id, told);
      return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: told.id, uri, version };
    }
    // What somebody asks for meanwhile comes first.
    await breathe();
    const { findings, files, uri: id } = await this.documents.snapshot(page);
    const resultId = open ? this.documents.idOf(page) : `page ${++this.ids}`;
    if (!open) now.set(page.id, { id: resultId, text: page.text, files: files.slice(1), revisions: files.slice(1).map(f => this.documents.revisionOf(f)) });
    else if (before === resultId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId, uri, version };
    return { kind: DocumentDiagnosticReportKind.Full, resultId, uri, version, items: published(findings, id).map(f => diagnosticOf(page, f)) };
  }
}
