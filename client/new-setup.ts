/** Begins a page with one of the usual layouts, and opens the guide to the first one. A page is not saved anywhere until somebody saves it, and nothing is written over. */
import { commands, FileType, l10n, Uri, ViewColumn, window, workspace, WorkspaceEdit, type Disposable, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { STARTS, type StartsAnswer } from '../server/lsp/protocol.ts';
import { ask } from './ask.ts';
import { freeName, namedIn, type Start } from './new-page.ts';

/** As package.json names it, behind publisher and name. */
const GUIDE = 'platewright.platewright#firstSteps';

export class NewSetup {
  private readonly own: readonly Disposable[];

  constructor(private readonly client: BaseLanguageClient) {
    this.own = [
      commands.registerCommand('platewright.newSetup', (said?: unknown) => this.begin(said)),
      commands.registerCommand('platewright.firstSteps', () => commands.executeCommand('workbench.action.openWalkthrough', GUIDE, false)),
    ];
  }

  dispose(): void { for (const d of this.own) d.dispose(); }

  private async begin(said: unknown): Promise<void> {
    // Somebody may be quicker than the server; one that is gone is started.
    if (!this.client.isRunning()) await this.client.start().catch((e: unknown) => { this.client.outputChannel.warn(String(e)); });
    const starts = this.client.isRunning() ? await ask<StartsAnswer>(this.client, STARTS, {}, 'Pages to begin with') : 'failed';
    if (typeof starts === 'string') { void window.showWarningMessage(l10n.t('The server of Platewright gave no answer, so there is no list of layouts. “Platewright: Show Output” says why; “Platewright: Restart Server” may help.')); return; }
    const start = namedIn(said, starts) ?? await choose(starts);
    if (!start) return;
    const folder = said instanceof Uri ? await folderOf(said) : undefined;
    const page = folder ? await within(folder, start) : await workspace.openTextDocument({ language: 'plate', content: start.text });
    // Whoever follows the guide keeps it in sight.
    await window.showTextDocument(page, { viewColumn: typeof said === 'string' ? ViewColumn.Beside : ViewColumn.Active });
  }
}

async function choose(starts: readonly Start[]): Promise<Start | undefined> {
  const rows = starts.map(start => ({ label: start.title, detail: start.words, start }));
  return (await window.showQuickPick(rows, { title: l10n.t('New setup: what to begin with'), placeHolder: l10n.t('It opens as a page of its own; save it where you like'), matchOnDetail: true }))?.start;
}

/** The folder that somebody points at, or that of the file; only where it lies on a disk, since elsewhere an editor may lose the way from a page without a file to it. */
async function folderOf(at: Uri): Promise<Uri | undefined> {
  if (at.scheme !== 'file') return undefined;
  const kind = await workspace.fs.stat(at).then(s => s.type, () => FileType.Unknown);
  return (kind & FileType.Directory) !== 0 ? at : Uri.joinPath(at, '..');
}

/** A page that will be saved in a folder, under a name that neither a file nor an open page has. */
async function within(folder: Uri, start: Start): Promise<TextDocument> {
  const name = await freeName(start, async n => {
    const at = Uri.joinPath(folder, n);
    return workspace.textDocuments.some(d => d.uri.path === at.path) || workspace.fs.stat(at).then(() => true, () => false);
  });
  const page = await workspace.openTextDocument(Uri.joinPath(folder, name).with({ scheme: 'untitled' }));
  const edit = new WorkspaceEdit();
  edit.insert(page.uri, page.positionAt(0), start.text);
  // An empty page would say nothing of why it is empty.
  return await workspace.applyEdit(edit) ? page : workspace.openTextDocument({ language: 'plate', content: start.text });
}
