/** The morning after: one line, what came out, behind the newest shot that has no outcome yet. */
import { commands, window, type Disposable, type TextDocument } from 'vscode';
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
    if (typeof open === 'string') { void window.showWarningMessage('Which shot waits for its outcome could not be told, or the page has changed in the meantime. Ask again.'); return; }
    if ('refused' in open) { void window.showInformationMessage(open.refused); return; }
    if (!('known' in open)) return;
    const words = await wordsFor(open);
    if (words !== undefined) await this.write(document, open, words);
  }

  private async write(document: TextDocument, { setup, shot }: Open, words: string): Promise<void> {
    const made = await addTo<Noted>(this.client, document, OUTCOME, () => ({ setup, shot, words }), 'An outcome');
    if (made.kind === 'not') { void window.showErrorMessage(`${made.words} The words were: ${words}`); return; }
    if (!made.saved) void sayUnsaved(document, made.answer.line);
    const why = 'Why?';
    if (await window.showInformationMessage(`Shot ${shot}: ${made.answer.line}. ${made.answer.says}`.trim(), why) === why) await commands.executeCommand(WHY_COMMAND, pageOf(this.client, document).textDocument.uri, made.answer.at);
  }
}

/** Any words will do; those that “why” knows can be chosen from a list. */
async function wordsFor({ shot, on, more, known }: Open): Promise<string | undefined> {
  const title = `What came out of shot ${shot}${on === undefined ? '' : ` of ${on.split('T')[0]!}`}?${more > 0 ? ` (${more} other${more > 1 ? 's have' : ' has'} no outcome either)` : ''}`;
  for (let value = ''; ;) {
    const said = await askIn({ title, value, placeholder: 'dull at the back', prompt: `In your own words. “Why” knows ${known.slice(0, SOME).join(', ')} and more; the button has them all.`, list: 'Choose from the Words That Why Knows' });
    if (said === undefined || (typeof said === 'string' && said.trim() === '')) return undefined;
    if (typeof said === 'string') return said.trim();
    value = (await window.showQuickPick([...known], { title, placeHolder: 'What “why” knows; it can be changed before it is written' })) ?? value;
  }
}
const SOME = 6;
