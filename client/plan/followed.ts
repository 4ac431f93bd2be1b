/** The page that the panel follows: the one that was active last, as long as it is open. */
import { EventEmitter, window, workspace, type Disposable, type TextDocument, type TextEditor } from 'vscode';
import { EARLIER } from '../earlier-scheme.ts';

export class Followed {
  private readonly changed = new EventEmitter<'page' | 'line'>();
  /** another page or none, or the cursor came to another line */
  readonly onDidChange = this.changed.event;
  private readonly listening: readonly Disposable[];
  private own: TextDocument | undefined;
  private at = 0;
  /** address of a page that a panel was of before the window was loaded anew, and that may come yet */
  private awaited: string | undefined;

  constructor() {
    this.listening = [
      this.changed,
      window.onDidChangeActiveTextEditor(e => { this.take(e); }),
      window.onDidChangeVisibleTextEditors(() => { this.find(); }),
      window.onDidChangeTextEditorSelection(({ textEditor, selections }) => {
        const line = selections[0]?.active.line;
        if (textEditor.document !== this.own || line === undefined || line === this.at) return;
        this.at = line;
        this.changed.fire('line');
      }),
      workspace.onDidCloseTextDocument(document => {
        if (document !== this.own) return;
        this.own = undefined;
        this.find();
        this.changed.fire('page');
      }),
    ];
    this.take(window.activeTextEditor);
    this.find();
  }

  dispose(): void {
    for (const l of this.listening) l.dispose();
  }

  get document(): TextDocument | undefined { return this.own; }

  /** Line of its cursor. */
  get line(): number { return this.at; }

  /** Of several pages in sight, that one, unless another is active. */
  await(page: string): void {
    if (window.activeTextEditor?.document === this.own && this.own) return;
    this.awaited = page;
    this.find();
  }

  private find(): void {
    const pages = window.visibleTextEditors.filter(isPage);
    const awaited = pages.find(e => e.document.uri.toString() === this.awaited);
    if (awaited) this.awaited = undefined;
    if (awaited || !this.own) this.take(awaited ?? pages[0]);
  }

  private take(editor: TextEditor | undefined): void {
    if (!editor || !isPage(editor) || editor.document === this.own) return;
    this.own = editor.document;
    this.at = editor.selection.active.line;
    this.changed.fire('page');
  }
}

const isPage = ({ document }: TextEditor): boolean => document.languageId === 'plate' && document.uri.scheme !== EARLIER;
