/** Opens the answer to why a plate came out as it did. */
import { commands, window, type Disposable } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { WHY, WHY_COMMAND, type WhyAnswer, type WhyParams } from '../server/lsp/protocol.ts';
import { Answers } from './answers.ts';

export class WhyPages {
  private readonly answers = new Answers('platewright-why');
  private readonly own: Disposable;

  constructor(private readonly client: BaseLanguageClient) { this.own = commands.registerCommand(WHY_COMMAND, (uri?: unknown, line?: unknown) => this.open(uri, line)); }

  dispose(): void {
    this.own.dispose();
    this.answers.dispose();
  }

  /** Of the line that an action names, else of the cursor. */
  private async open(given: unknown, at: unknown): Promise<void> {
    const editor = window.activeTextEditor;
    const uri = typeof given === 'string' ? given : editor?.document.languageId === 'plate' ? this.client.code2ProtocolConverter.asUri(editor.document.uri) : undefined;
    if (uri === undefined || !this.client.isRunning()) return;
    const params: WhyParams = { textDocument: { uri }, line: typeof at === 'number' ? at : editor?.selection.active.line ?? 0 };
    const answer = await this.client.sendRequest<WhyAnswer | null>(WHY, params).catch(() => null);
    if (answer) await this.answers.show(answer.title, answer.markdown);
  }
}
