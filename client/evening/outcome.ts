/** The morning after: one line, what came out, behind the newest shot that has no outcome yet. */
import { commands, l10n, window, type Disposable, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { OUTCOME, WHY_COMMAND, type Additions, type OutcomeAnswer } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { pageAtHand, sayNoPage } from '../page.ts';
import { askIn } from './box.ts';
import { addTo, pageOf, sayUnsaved } from './paper.ts';

type Open = Extract<OutcomeAnswer, { readonly known: readonly string[] }>;
type Noted = Additions & { readonly line: string; readonly at: number; readonly says: string };

export class Outcomes {
  private readonly own: Disposable;

  constructor(private readonly client: BaseLanguageClient) { this.own = commands.registerCommand('platewright.noteOutcome', () => this.note()); }

  dispose(): void { this.own.dispose(); }

  private async note(): Promise<void> {
    const editor = pageAtHand();
    if (!editor) sayNoPage();
    if (!editor || !this.client.isRunning()) return;
    const { document } = editor;
    const open = await ask<OutcomeAnswer>(this.client, OUTCOME, { ...pageOf(this.client, document), line: editor.selection.active.line }, 'An outcome');
    if (typeof open === 'string') { void window.showWarningMessage(l10n.t('Which shot waits for its outcome could not be told, or the page has changed in the meantime. Ask again.')); return; }
    if ('refused' in open) { void window.showInformationMessage(open.refused); return; }
    if (!('known' in open)) return;
    const words = await wordsFor(open);
    if (words !== undefined) await this.write(document, open, words);
  }

  private async write(document: TextDocument, { setup, shot }: Open, words: string): Promise<void> {
    const made = await addTo<Noted>(this.client, document, OUTCOME, () => ({ setup, shot, words }), 'An outcome');
    if (made.kind === 'not') { void window.showErrorMessage(`${made.words} ${l10n.t('The words were: {0}', words)}`); return; }
    if (!made.saved) void sayUnsaved(document, made.answer.line);
    const why = l10n.t('Why?');
    if (await window.showInformationMessage(`${l10n.t('Shot {0}', shot)}: ${made.answer.line}. ${made.answer.says}`.trim(), why) === why) await commands.executeCommand(WHY_COMMAND, pageOf(this.client, document).textDocument.uri, made.answer.at);
  }
}

/** Any words will do; those that “why” knows can be chosen from a list. */
async function wordsFor({ shot, on, more, known }: Open): Promise<string | undefined> {
  const asked = on === undefined ? l10n.t('What came out of shot {0}?', shot) : l10n.t('What came out of shot {0} of {1}?', shot, on.split('T')[0]!);
  const title = more === 0 ? asked : `${asked} ${more === 1 ? l10n.t('(one other has no outcome either)') : l10n.t('({0} others have no outcome either)', more)}`;
  for (let value = ''; ;) {
    const said = await askIn({ title, value, placeholder: 'dull at the back', prompt: l10n.t('In your own words. “Why” knows {0} and more; the button has them all.', known.slice(0, SOME).join(', ')), list: l10n.t('Choose from the Words That Why Knows') });
    if (said === undefined || (typeof said === 'string' && said.trim() === '')) return undefined;
    if (typeof said === 'string') return said.trim();
    value = (await window.showQuickPick([...known], { title, placeHolder: l10n.t('What “why” knows; it can be changed before it is written') })) ?? value;
  }
}
const SOME = 6;
