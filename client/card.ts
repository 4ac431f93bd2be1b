/** Writes the card for the bench beside the page, where somebody says so, and offers to open it. */
import { commands, env, window, workspace, type Disposable, type TextEditor, type Uri } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { CARD, type CardAnswer, type CardParams } from '../server/lsp/protocol.ts';
import { besidePath, writeCard } from './card-written.ts';

const PAPERS = [{ label: 'A4', paper: 'a4' }, { label: 'Letter', paper: 'letter' }] as const;
const TITLE = 'Write the Bench Card';
const OPEN = 'Open It';
const SAY = { note: window.showInformationMessage, warning: window.showWarningMessage, error: window.showErrorMessage } as const;

export class Cards {
  private readonly own: Disposable;

  constructor(private readonly client: BaseLanguageClient) { this.own = commands.registerCommand('platewright.writeCard', () => this.write()); }

  dispose(): void { this.own.dispose(); }

  private async write(): Promise<void> {
    const editor = window.activeTextEditor;
    if (editor?.document.languageId !== 'plate' || !this.client.isRunning()) return;
    await writeCard<Uri>({
      paper: async () => (await window.showQuickPick(PAPERS, { title: TITLE, placeHolder: 'On which paper is it printed?' }))?.paper,
      ask: paper => this.ask(editor, paper),
      place: async () => {
        const beside = besideOf(editor.document.uri);
        return window.showSaveDialog({ title: TITLE, filters: { 'Bench card': ['html'] }, ...(beside ? { defaultUri: beside } : {}) });
      },
      write: async (at, html) => workspace.fs.writeFile(at, new TextEncoder().encode(html)),
      say: (words, kind) => { void SAY[kind](words); },
      offer,
    });
  }

  private ask({ document, selection }: TextEditor, paper: CardParams['paper'] & string): Promise<CardAnswer | null | undefined> {
    const params: CardParams = { textDocument: { uri: this.client.code2ProtocolConverter.asUri(document.uri) }, line: selection.active.line, paper };
    return this.client.sendRequest<CardAnswer | null>(CARD, params).catch(() => undefined);
  }
}

/** A page that was never saved lies beside nothing. */
const besideOf = (uri: Uri): Uri | undefined => (uri.scheme === 'untitled' ? undefined : uri.with({ path: besidePath(uri.path), query: '', fragment: '' }));

/** Only what lies on a disk opens in a browser. */
async function offer(at: Uri, setup: string): Promise<void> {
  const name = at.path.slice(at.path.lastIndexOf('/') + 1);
  const words = `${name}: the bench card${setup === '' ? '' : ` of “${setup}”`} is written. Print it from a browser.`;
  if (at.scheme !== 'file') void window.showInformationMessage(words);
  else if (await window.showInformationMessage(words, OPEN) === OPEN) await env.openExternal(at);
}
