/** Mismatch and depth brightness of the setup in which the cursor is. A click goes to the worst finding. */
import { l10n, languages, MarkdownString, Position, Range, StatusBarAlignment, window, workspace, type StatusBarItem, type TextEditor } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { SUMMARY, type SummaryAnswer, type SummaryParams } from '../server/lsp/protocol.ts';
import { oneAtATime } from './one-at-a-time.ts';

const ICON = { error: '$(error) ', warning: '$(warning) ', note: '', hint: '' } as const;

export class StatusBar {
  private readonly item: StatusBarItem = window.createStatusBarItem('platewright.figures', StatusBarAlignment.Left);
  private readonly listening: readonly { dispose(): unknown }[];
  /** line of the cursor that was asked for last */
  private line = -1;

  constructor(private readonly client: BaseLanguageClient) {
    this.item.name = l10n.t('Platewright: figures of the setup');
    const ask = oneAtATime(() => this.show());
    const update = (): void => { void ask(); };
    this.listening = [
      client.onDidChangeState(update), window.onDidChangeActiveTextEditor(update),
      window.onDidChangeTextEditorSelection(e => { if (e.textEditor === window.activeTextEditor && e.selections[0]?.active.line !== this.line) update(); }),
      // A file that is used may have changed as well as the text.
      languages.onDidChangeDiagnostics(e => { const uri = shown()?.document.uri.toString(); if (e.uris.some(u => u.toString() === uri)) update(); }),
      workspace.onDidChangeTextDocument(e => { if (e.document === shown()?.document) update(); }),
      workspace.onDidChangeConfiguration(e => { if (e.affectsConfiguration('platewright.statusBar')) update(); }),
    ];
  }

  dispose(): void {
    for (const l of this.listening) l.dispose();
    this.item.dispose();
  }

  private async show(): Promise<void> {
    const editor = shown();
    const summary = editor && this.client.isRunning() ? await this.ask(editor) : undefined;
    if (summary === undefined) this.item.hide();
    else if (summary !== 'superseded') {
      this.fill(editor!, summary);
      this.item.show();
    }
  }

  private async ask(editor: TextEditor): Promise<SummaryAnswer | 'superseded' | undefined> {
    this.line = editor.selection.active.line;
    const params: SummaryParams = { textDocument: { uri: this.client.code2ProtocolConverter.asUri(editor.document.uri) }, line: this.line };
    try {
      return (await this.client.sendRequest<SummaryAnswer | null>(SUMMARY, params)) ?? undefined;
    } catch {
      // A newer text has been sent, which brings its own question.
      return 'superseded';
    }
  }

  private fill(editor: TextEditor, { setup, plate, mismatch, brightness, markdown, worst }: SummaryAnswer): void {
    const paths = mismatch === undefined ? l10n.t('No mismatch yet') : plate === undefined ? l10n.t('Mismatch {0}', mismatch) : l10n.t('{0}: mismatch {1}', plate, mismatch);
    const figures = mismatch === undefined || brightness === undefined ? paths : l10n.t('{0}, darkest {1}', paths, brightness);
    this.item.text = (worst ? ICON[worst.severity] : '') + figures;
    this.item.accessibilityInformation = { label: `${setup}: ${figures}` };
    this.item.tooltip = new MarkdownString(markdown);
    const place = worst && new Position(worst.line, worst.character);
    this.item.command = place
      ? { title: l10n.t('Go to the finding'), command: 'vscode.open', arguments: [editor.document.uri, { selection: new Range(place, place) }] }
      : { title: l10n.t('Show Output'), command: 'platewright.showOutput' };
  }
}

/** The active editor, where it shows a page and its figures are wanted. */
function shown(): TextEditor | undefined {
  const editor = window.activeTextEditor;
  return editor?.document.languageId === 'plate' && workspace.getConfiguration('platewright').get<boolean>('statusBar.show', true) ? editor : undefined;
}
