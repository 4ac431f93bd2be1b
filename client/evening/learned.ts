/** Shows what all shots teach, and what of it could be written into an inventory: as a change that is looked through before it is made. And all shots by date. */
import { commands, l10n, ProgressLocation, Range, Uri, window, workspace, WorkspaceEdit, type Disposable } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { HISTORY, LEARN, type HistoryAnswer, type LearnAnswer, type Update } from '../../server/lsp/protocol.ts';
import { Answers } from '../answers.ts';
import { ask } from '../ask.ts';
import { opened } from './paper.ts';
import { NO_ANSWER, offerWords, stale } from './learning.ts';

const LOOK = l10n.t('Look Through the Change');

export class Learned {
  private readonly answers = new Answers('platewright-shots');
  private readonly own: readonly Disposable[];

  constructor(private readonly client: BaseLanguageClient) {
    this.own = [commands.registerCommand('platewright.learn', () => this.learn()), commands.registerCommand('platewright.showShots', () => this.history()), this.answers];
  }

  dispose(): void { for (const d of this.own) d.dispose(); }

  private async learn(): Promise<void> {
    const answer = await this.asked<LearnAnswer>(LEARN, l10n.t('What the shots teach'));
    if (!answer) return;
    await this.answers.show(l10n.t('What the shots teach'), answer.markdown);
    const words = offerWords(answer.updates);
    if (words !== undefined && await window.showInformationMessage(words, LOOK) === LOOK) await offered(answer.updates);
  }

  private async history(): Promise<void> {
    const answer = await this.asked<HistoryAnswer>(HISTORY, l10n.t('The shots by date'));
    if (answer) await this.answers.show(l10n.t('The shots by date'), answer.markdown);
  }

  /** All pages of a folder may have to be read. */
  private async asked<T>(method: string, what: string): Promise<T | undefined> {
    if (!this.client.isRunning()) return undefined;
    const answer = await window.withProgress({ location: ProgressLocation.Window, title: `${what}…` }, () => ask<T>(this.client, method, {}, what));
    if (typeof answer !== 'string') return answer;
    void window.showWarningMessage(NO_ANSWER);
    return undefined;
  }
}

/** The editor lists the changes, and makes those that somebody ticks. */
async function offered(updates: readonly Update[]): Promise<void> {
  const pages = await Promise.all(updates.map(u => opened(u.uri)));
  const movedOn = (): boolean => {
    const moved = stale(updates, (_, line, i) => (pages[i] && line < pages[i].lineCount ? pages[i].lineAt(line).text : undefined));
    if (moved !== undefined) void window.showWarningMessage(moved);
    return moved !== undefined;
  };
  if (movedOn()) return;
  const edit = new WorkspaceEdit();
  for (const { uri, range: { start, end }, newText, words, detail } of updates) edit.replace(Uri.parse(uri), new Range(start.line, start.character, end.line, end.character), newText, { needsConfirmation: true, label: words, description: detail });
  // Discarded by who looked through them, or by the editor, since a page was changed all the while.
  if (!(await workspace.applyEdit(edit))) movedOn();
}
