/** Opens the answer to why a plate came out as it did, as a page of Markdown that nobody has to save. */
import { commands, EventEmitter, Uri, ViewColumn, window, workspace, type Disposable, type TextDocumentContentProvider } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { WHY, WHY_COMMAND, type WhyAnswer, type WhyParams } from '../server/lsp/protocol.ts';

const SCHEME = 'platewright-why';

export class WhyPages implements TextDocumentContentProvider {
  private readonly changed = new EventEmitter<Uri>();
  readonly onDidChange = this.changed.event;
  private readonly pages = new Map<string, string>();
  private readonly own: readonly Disposable[];

  constructor(private readonly client: BaseLanguageClient) {
    this.own = [workspace.registerTextDocumentContentProvider(SCHEME, this), commands.registerCommand(WHY_COMMAND, (uri?: unknown, line?: unknown) => this.open(uri, line)), this.changed];
  }

  dispose(): void {
    for (const d of this.own) d.dispose();
  }

  provideTextDocumentContent(uri: Uri): string {
    return this.pages.get(uri.toString()) ?? '';
  }

  /** Of the line that an action names, else of the cursor. */
  private async open(given: unknown, at: unknown): Promise<void> {
    const editor = window.activeTextEditor;
    const uri = typeof given === 'string' ? given : editor?.document.languageId === 'plate' ? this.client.code2ProtocolConverter.asUri(editor.document.uri) : undefined;
    if (uri === undefined || !this.client.isRunning()) return;
    const params: WhyParams = { textDocument: { uri }, line: typeof at === 'number' ? at : editor?.selection.active.line ?? 0 };
    const answer = await this.client.sendRequest<WhyAnswer | null>(WHY, params).catch(() => null);
    if (!answer) return;
    const page = Uri.from({ scheme: SCHEME, path: `/${answer.title.replace(/[/\\?#]/g, ' ').trim()}.md` });
    this.pages.set(page.toString(), answer.markdown);
    this.changed.fire(page);
    // Without the editor's own view of Markdown the text itself is as good.
    await commands.executeCommand('markdown.showPreviewToSide', page).then(undefined, async () => { await window.showTextDocument(await workspace.openTextDocument(page), { preview: true, viewColumn: ViewColumn.Beside }); });
  }
}
