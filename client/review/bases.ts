/** Tells the server what each open page was in the last commit, so that it can say above each setup what has changed since. */
import { workspace, type Disposable, type TextDocument } from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { BASE, type BaseParams } from '../../server/lsp/protocol.ts';
import { onDidChangeHead, repositoryOf } from './git.ts';
import { headOf } from './source.ts';

export class Bases {
  private readonly own: readonly Disposable[];
  /** of each page, how often it was looked at: what was begun before the last time is old */
  private readonly times = new WeakMap<TextDocument, number>();

  /** @param headChanged of any repository */
  constructor(private readonly client: BaseLanguageClient, headChanged: () => void) {
    const all = (): void => { for (const d of workspace.textDocuments) void this.tell(d); };
    this.own = [
      client.onDidChangeState(({ newState }) => { if (newState === State.Running) all(); }),
      workspace.onDidOpenTextDocument(d => { void this.tell(d); }),
      workspace.onDidChangeConfiguration(e => { if (e.affectsConfiguration('platewright.lens')) all(); }),
      onDidChangeHead(() => { all(); headChanged(); }),
    ];
  }

  dispose(): void {
    for (const d of this.own) d.dispose();
  }

  private async tell(page: TextDocument): Promise<void> {
    if (page.languageId !== 'plate' || page.uri.scheme !== 'file' || !this.client.isRunning()) return;
    const time = (this.times.get(page) ?? 0) + 1;
    this.times.set(page, time);
    const wanted = workspace.getConfiguration('platewright', page.uri).get<boolean>('lens', true);
    const repository = wanted ? await repositoryOf(page.uri) : undefined;
    const earlier = repository === undefined || typeof repository === 'string' ? undefined : await headOf(this.client, repository, page);
    const params: BaseParams = { textDocument: { uri: this.client.code2ProtocolConverter.asUri(page.uri) }, base: earlier ? { ...earlier, since: 'the last commit' } : null };
    if (time === this.times.get(page) && !page.isClosed && this.client.isRunning()) await this.client.sendNotification(BASE, params).catch(() => undefined);
  }
}
