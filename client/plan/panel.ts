/** The bench plan beside the text: one panel, which shows the setup in which the cursor is. All figures and shapes in it come from the server. */
import { commands, l10n, languages, Uri, ViewColumn, window, workspace, type Disposable, type TextDocument, type WebviewPanel } from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import type { PictureAnswer, PictureParams } from '../../server/lsp/protocol.ts';
import { oneAtATime } from '../one-at-a-time.ts';
import { askDrag, askPicture } from './ask.ts';
import { follow, type Page } from './dragging.ts';
import { Followed } from './followed.ts';
import { pageOf } from './html.ts';
import { isFromPage, isRemembered, type Choose, type Drag, type FromPage, type Look, type Nothing, type Show, type Shown, type ToPage } from './messages.ts';
import { reveal } from './reveal.ts';
import { shownOf } from './shown.ts';
import { writeInto } from './write.ts';
import { MOVED_ON, NO_PAGE, NEVER_MADE, NO_SETUP, noPlaces, NOT_MADE, otherView, STARTING, STOPPED, STOPPED_SINCE, UNREADABLE } from './words.ts';

const VIEW = 'platewright.plan';

export class PlanPanel {
  private readonly own: readonly Disposable[];
  private readonly followed = new Followed();
  private readonly ask = oneAtATime(() => this.draw());
  private panel: WebviewPanel | undefined;
  /** the last answer, and what is shown of it */
  private shown: { readonly answer: PictureAnswer; readonly picture: Shown } | undefined;
  /** what somebody chose, until the cursor goes elsewhere */
  private chosen: Choose | undefined;
  private variant: string | undefined;
  /** which view of it, as long as the panel is there */
  private look: Omit<Look, 'kind'> | undefined;
  /** it is to grow dark once its page is there */
  private darken = false;

  constructor(private readonly folder: Uri, private readonly client: BaseLanguageClient) {
    const update = (): void => { void this.ask(); };
    this.own = [
      this.followed,
      commands.registerCommand('platewright.showPlan', (at?: unknown) => this.showOf(at)),
      commands.registerCommand('platewright.darkenPlan', () => { this.toggleDark(); }),
      window.registerWebviewPanelSerializer(VIEW, { deserializeWebviewPanel: (panel, state: unknown) => { this.restore(panel, state); return Promise.resolve(); } }),
      this.followed.onDidChange(what => { this.moved(what); }),
      client.onDidChangeState(update),
      // A file that is used may have changed as well as the text.
      workspace.onDidChangeTextDocument(e => { if (e.document.languageId === 'plate') update(); }),
      languages.onDidChangeDiagnostics(e => { const page = this.followed.document?.uri.toString(); if (e.uris.some(u => u.toString() === page)) update(); }),
    ];
  }

  dispose(): void {
    for (const d of this.own) d.dispose();
    this.panel?.dispose();
  }

  /** Of the page that somebody points at in a list of files, which is opened for it; else of the one that is followed. */
  private async showOf(at: unknown): Promise<void> {
    if (at instanceof Uri && !window.visibleTextEditors.some(e => e.document.uri.toString() === at.toString())) await window.showTextDocument(at);
    this.open();
  }

  private open(): void {
    if (this.panel) this.panel.reveal(undefined, true);
    else this.fill(window.createWebviewPanel(VIEW, l10n.t('Bench Plan'), { viewColumn: ViewColumn.Beside, preserveFocus: true }));
  }

  /** A page that is not there yet says when it is. */
  private toggleDark(): void {
    if (this.panel?.visible) this.say({ kind: 'darken' });
    else this.darken = true;
    this.open();
  }

  /** After the window was loaded anew. */
  private restore(panel: WebviewPanel, state: unknown): void {
    this.panel?.dispose();
    if (isRemembered(state)) {
      this.followed.await(state.page);
      this.chosen = { kind: 'choose', setup: state.setup, variant: state.variant };
      this.variant = state.variant;
      if (state.look !== undefined) this.look = { look: state.look, plate: state.plate, from: state.from };
    }
    this.fill(panel);
  }

  private fill(panel: WebviewPanel): void {
    const dist = Uri.joinPath(this.folder, 'dist');
    const { webview } = this.panel = panel;
    const at = (file: string): string => webview.asWebviewUri(Uri.joinPath(dist, file)).toString();
    panel.onDidDispose(() => { if (this.panel === panel) this.panel = this.shown = this.chosen = this.variant = this.look = undefined; });
    // Loaded anew with the window, a page may say that it is ready before the panel counts as visible.
    panel.onDidChangeViewState(() => { if (panel.visible) void this.ask(); });
    // A page that was hidden is loaded anew, and says that it is ready.
    webview.onDidReceiveMessage((m: unknown) => { if (isFromPage(m)) this.heard(m); });
    panel.iconPath = { light: Uri.joinPath(this.folder, 'client/plan-light.svg'), dark: Uri.joinPath(this.folder, 'client/plan-dark.svg') };
    webview.options = { enableScripts: true, localResourceRoots: [dist] };
    webview.html = pageOf({ script: at('plan.js'), style: at('plan.css'), source: webview.cspSource, nonce: crypto.randomUUID().replaceAll('-', '') });
  }

  private heard(message: FromPage): void {
    if (message.kind === 'show') void this.showInText(message);
    else if (message.kind === 'drag') void this.dragged(message);
    else {
      if (message.kind === 'choose') this.choose(message);
      if (message.kind === 'look') this.look = message;
      void this.ask();
      if (message.kind === 'ready' && this.darken) this.say({ kind: 'darken' });
      if (message.kind === 'ready') this.darken = false;
    }
  }

  private choose(choice: Choose): void {
    this.chosen = choice;
    this.variant = choice.variant;
  }

  private moved(what: 'page' | 'line'): void {
    // A choice holds as long as the page is the same and the cursor where it was; a variant as long as its setup is shown.
    this.chosen = undefined;
    if (what === 'page') this.variant = undefined;
    if (what === 'page' || (this.shown?.answer.choices.length ?? 0) > 1) void this.ask();
    else if (this.shown) this.say({ kind: 'marked', ids: this.marked(this.shown.answer) });
  }

  /** Asks for the picture and shows what comes of it. */
  private async draw(): Promise<void> {
    const { document, line } = this.followed;
    if (!this.panel?.visible) return;
    if (!document) {
      this.nothing(NO_PAGE);
      return;
    }
    const page = document.uri.toString();
    this.panel.title = l10n.t('Bench Plan: {0}', document.uri.path.replace(/^.*\//, ''));
    if (!this.client.isRunning()) {
      this.missing(page, STOPPED_SINCE, this.client.state === State.Starting ? STARTING : STOPPED);
      return;
    }
    const answer = await this.answerOf(this.wanted(document, line));
    if (answer === 'none') this.missing(page, UNREADABLE, NO_SETUP);
    else if (answer === 'failed') this.missing(page, NOT_MADE, NEVER_MADE);
    else if (answer !== 'superseded' && document === this.followed.document) this.show(page, answer.answer, answer.missed);
  }

  /** What is shown of a page. */
  private wanted({ uri }: TextDocument, line: number): PictureParams {
    const { chosen, variant, look } = this;
    return {
      textDocument: { uri: this.client.code2ProtocolConverter.asUri(uri) }, line, ...(chosen ? { setup: chosen.setup } : {}), ...(variant === undefined ? {} : { variant }),
      ...(look ? { view: look.look, ...(look.plate === undefined ? {} : { plate: look.plate }), ...(look.from ? { viewpoint: look.from } : {}) } : {}),
    };
  }

  /** The picture of the chosen view and plate; where that cannot be drawn, of another plate, else of the first view that can be, and why. */
  private async answerOf({ plate, ...wanted }: PictureParams): Promise<{ readonly answer: PictureAnswer; readonly missed?: string } | Exclude<Awaited<ReturnType<typeof askPicture>>, PictureAnswer>> {
    const answer = await askPicture(this.client, { ...wanted, ...(plate === undefined ? {} : { plate }) });
    if (typeof answer === 'string') return answer;
    const why = answer.views.find(v => v.name === wanted.view);
    const missed = why ? { missed: otherView(why) } : {};
    const others = [...(plate === undefined ? [] : [wanted.view]), answer.views.find(v => v.why === undefined)?.name];
    let next = answer;
    for (const view of others) {
      if (next.sheet) break;
      const made = view === undefined ? next : await askPicture(this.client, { ...wanted, view });
      if (typeof made === 'string') return made;
      next = made;
    }
    return next === answer ? { answer } : { answer: next, ...missed };
  }

  private show(page: string, answer: PictureAnswer, kept?: string): void {
    const { setup, variant, choices, sheet } = answer;
    if (!sheet) {
      this.nothing({ ...noPlaces(setup), setup, choices });
      return;
    }
    if (this.shown?.picture.page !== page || this.shown.picture.setup !== setup) this.variant = variant;
    const picture = shownOf({ ...answer, sheet }, { page, marked: this.marked(answer), kept });
    this.shown = { answer, picture };
    this.say(picture);
  }

  /** The picture from before stays, where there is one of that page. */
  private missing(page: string, kept: string, otherwise: Omit<Nothing, 'kind'>): void {
    if (this.shown?.picture.page !== page) this.nothing(otherwise);
    else this.say({ ...this.shown.picture, marked: [], kept, old: true });
  }

  private nothing(why: Omit<Nothing, 'kind'>): void {
    this.shown = undefined;
    this.say({ kind: 'nothing', ...why });
  }

  private say(message: ToPage): void {
    void this.panel?.webview.postMessage(message);
  }

  /** Items that stand in the line of the cursor. */
  private marked({ items }: PictureAnswer): string[] {
    const { line } = this.followed;
    return items.filter(({ range }) => range && range.start.line <= line && line <= range.end.line).map(i => i.id);
  }

  private async showInText({ id, focus }: Show): Promise<void> {
    const { document } = this.followed;
    // Where it stands, the picture knows of the text that it was made of.
    if (!document || this.shown?.picture.page !== document.uri.toString() || this.shown.answer.version !== document.version) return;
    const range = this.shown.answer.items.find(i => i.id === id)?.range;
    if (range) await reveal(document, range, focus);
  }

  /** Each is answered, so that the page can go on. */
  private async dragged(drag: Drag): Promise<void> {
    const { shown } = this;
    const { document, line } = this.followed;
    const seen = document && shown?.picture.page === document.uri.toString() ? { wanted: { ...this.wanted(document, line), setup: shown.answer.setup, view: shown.answer.view }, version: shown.answer.version } : undefined;
    const answer = document && seen && this.client.isRunning() ? await follow(this.textOf(document), seen, drag) : { kind: 'would' as const, n: drag.n, words: MOVED_ON };
    // What was written is in the picture before somebody is told so.
    if (drag.dropped) await this.draw();
    this.say(answer);
  }

  private textOf(document: TextDocument): Page {
    return {
      ...writeInto(document),
      ask: async params => {
        const answer = await askDrag(this.client, params);
        return typeof answer === 'string' ? undefined : answer;
      },
    };
  }
}
