/** Answers that are a page of Markdown: shown beside the text, and nobody has to save them. */
import { commands, EventEmitter, Uri, ViewColumn, window, workspace, type Disposable, type TextDocumentContentProvider } from 'vscode';

export class Answers implements TextDocumentContentProvider {
  private readonly changed = new EventEmitter<Uri>();
  readonly onDidChange = this.changed.event;
  private readonly pages = new Map<string, string>();
  private readonly own: Disposable;

  constructor(private readonly scheme: string) { this.own = workspace.registerTextDocumentContentProvider(scheme, this); }

  dispose(): void {
    this.own.dispose();
    this.changed.dispose();
  }

  provideTextDocumentContent(uri: Uri): string {
    return this.pages.get(uri.toString()) ?? '';
  }

  async show(title: string, markdown: string): Promise<void> {
    const page = Uri.from({ scheme: this.scheme, path: `/${title.replace(/[/\\?#]/g, ' ').trim()}.md` });
    this.pages.set(page.toString(), markdown);
    this.changed.fire(page);
    // Without the editor's own view of Markdown the text itself is as good.
    await commands.executeCommand('markdown.showPreviewToSide', page).then(undefined, async () => { await window.showTextDocument(await workspace.openTextDocument(page), { preview: true, viewColumn: ViewColumn.Beside }); });
  }
}
