/** Writes the card for the bench beside the page, where somebody says so, and offers to open it. */
import { commands, env, type Uri, window, workspace, type Disposable, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { CARD, type CardAnswer, type CardParams } from '../server/lsp/protocol.ts';

export const CARD_COMMAND = 'platewright.writeCard';

const PAPERS = [{ label: 'A4', paper: 'a4' }, { label: 'Letter', paper: 'letter' }] as const;
const OPEN = 'Open It';

export class Cards {
  private readonly own: Disposable;

  constructor(private readonly client: BaseLanguageClient) { this.own = commands.registerCommand(CARD_COMMAND, () => this.write()); }

  dispose(): void { this.own.dispose(); }

  private async write(): Promise<void> {
    const editor = window.activeTextEditor;
    if (editor?.document.languageId !== 'plate' || !this.client.isRunning()) return;
    const { document, selection } = editor;
    const chosen = await window.showQuickPick(PAPERS, { title: 'Write the Bench Card', placeHolder: 'On which paper is it printed?' });
    if (!chosen) return;
    const params: CardParams = { textDocument: { uri: this.client.code2ProtocolConverter.asUri(document.uri) }, line: selection.active.line, paper: chosen.paper };
    const answer = await this.client.sendRequest<CardAnswer | null>(CARD, params).catch(() => undefined);
    if (answer === undefined) { void window.showWarningMessage('The card could not be made, or the page has changed in the meantime. Ask for it again.'); return; }
    if (answer === null) { void window.showInformationMessage('There is no setup on the page, so that there is no card to write.'); return; }
    // The dialog asks before it takes the place of a file.
    const beside = besideOf(document);
    const target = await window.showSaveDialog({ title: 'Write the Bench Card', filters: { 'Bench card': ['html'] }, ...(beside ? { defaultUri: beside } : {}) });
    if (!target) return;
    try {
      await workspace.fs.writeFile(target, new TextEncoder().encode(answer.html));
    } catch (e) {
      void window.showErrorMessage(`The card could not be written: ${e instanceof Error ? e.message : String(e)}`);
      return;
    }
    await offer(target, answer.setup);
  }
}

/** `whelk-card.html` beside `whelk.plate`; a page that was never saved has no folder. */
function besideOf({ uri }: TextDocument): Uri | undefined {
  if (uri.scheme === 'untitled') return undefined;
  return uri.with({ path: `${uri.path.replace(/\.plate$/, '')}-card.html`, query: '', fragment: '' });
}

/** Only what lies on a disk opens in a browser. */
async function offer(target: Uri, setup: string): Promise<void> {
  const name = target.path.slice(target.path.lastIndexOf('/') + 1);
  const words = `${name}: the bench card${setup === '' ? '' : ` of “${setup}”`} is written. Print it from a browser.`;
  if (target.scheme !== 'file') { void window.showInformationMessage(words); return; }
  if (await window.showInformationMessage(words, OPEN) === OPEN) await env.openExternal(target);
}
