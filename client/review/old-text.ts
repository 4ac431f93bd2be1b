/** Earlier texts to be read in the editor. Nobody writes in them. */
import { EventEmitter, Uri, workspace, type Disposable, type TextDocument, type TextDocumentContentProvider } from 'vscode';
import { EARLIER } from '../earlier-scheme.ts';

export class OldTexts implements TextDocumentContentProvider {
  private readonly changed = new EventEmitter<Uri>();
  readonly onDidChange = this.changed.event;
  private readonly own: Disposable = workspace.registerTextDocumentContentProvider(EARLIER, this);
  /** the last texts that were asked for, by their addresses here */
  private readonly texts = new Map<string, string>();

  dispose(): void {
    this.own.dispose();
    this.changed.dispose();
  }

  provideTextDocumentContent(uri: Uri): string { return this.texts.get(uri.toString()) ?? ''; }

  /** @param called what the text is called, such as a commit */
  async open(of: Uri, called: string, text: string): Promise<TextDocument> {
    const uri = Uri.from({ scheme: EARLIER, path: `/${called.replace(/[/\\?#]/g, ' ').trim()}${of.path}`, query: of.toString() });
    const key = uri.toString();
    const before = this.texts.get(key);
    this.texts.set(key, text);
    if (before !== undefined && before !== text) this.changed.fire(uri);
    return workspace.openTextDocument(uri);
  }
}
