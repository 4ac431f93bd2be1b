/** What has become of a page since an earlier text, beside the page: one panel, brought up to date by each edit. All words and figures in it come from the server. */
import { commands, l10n, languages, Uri, ViewColumn, window, workspace, type Disposable, type TextDocument, type WebviewPanel } from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { REVIEW, REVIEW_COMMAND, type ReviewAnswer, type ReviewParams, type ReviewPlace } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { oneAtATime } from '../one-at-a-time.ts';
import { reveal } from '../plan/reveal.ts';
import { Bases } from './bases.ts';
import { choose } from './choose.ts';
import { pageOf } from './html.ts';
import { isFromPage, isRemembered, type FromPage, type Remembered, type Show, type Shown, type Source, type ToPage } from './messages.ts';
import { OldTexts } from './old-text.ts';
import { shownOf } from './shown.ts';
import { nameOf, read, type Before } from './source.ts';
import { borrowed, FAILED, GONE_PAGE, NO_VARIANT, STARTING, STOPPED, STOPPED_SINCE } from './words.ts';

const VIEW = 'platewright.review';

interface Last {
  readonly picture: Shown;
  /** the same as text, without its number */
  readonly told: string;
  readonly version: number;
  readonly before: Before;
  readonly places: readonly ReviewPlace[];
}

export class ReviewPanel {
  private readonly own: readonly Disposable[];
  private readonly old = new OldTexts();
  private readonly ask = oneAtATime(() => this.draw());
  private panel: WebviewPanel | undefined;
  private of: Remembered | undefined;
  private last: Last | undefined;
  /** the earlier text, until what it is read from changes */
  private before: { readonly of: Remembered; readonly read: Before } | undefined;
  /** how often it may have changed */
  private changes = 0;
  private n = 0;

  constructor(private readonly folder: Uri, private readonly client: BaseLanguageClient) {
    const update = (): void => { void this.ask(); };
    this.own = [
      this.old, new Bases(client, () => { this.readAgain(); }),
      commands.registerCommand('platewright.compare', (uri?: unknown) => this.compare(uri)),
      commands.registerCommand(REVIEW_COMMAND, (uri?: unknown) => this.compare(uri, { kind: 'head' })),
      window.registerWebviewPanelSerializer(VIEW, { deserializeWebviewPanel: (panel, state: unknown) => { this.restore(panel, state); return Promise.resolve(); } }),
      client.onDidChangeState(update),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId !== 'plate') return;
        const { of, before } = this;
        const changed = document.uri.toString();
        if ((of?.source.kind === 'file' && changed === of.source.uri) || (changed === of?.page && before?.read.ofPage)) this.forget();
        update();
      }),
      // A file that is used may have changed as well as the text.
      languages.onDidChangeDiagnostics(e => { if (e.uris.some(u => u.toString() === this.of?.page)) update(); }),
    ];
  }

  dispose(): void {
    for (const d of this.own) d.dispose();
    this.panel?.dispose();
  }

  /** Of the page that is named, else of the active one, else of the one that is shown. Without a source it is asked for. */
  private async compare(given: unknown, source?: Source): Promise<void> {
    const { activeTextEditor: editor } = window;
    const named = typeof given === 'string' || given instanceof Uri ? given : editor ? undefined : this.of?.page;
    const page = named === undefined ? editor?.document : await opened(named);
    if (page?.languageId !== 'plate') return;
    const chosen = source ?? await choose(this.client, page);
    if (chosen) this.show({ page: page.uri.toString(), source: chosen });
  }

  private show(of: Remembered): void {
    this.of = of;
    this.last = undefined;
    this.forget();
    if (this.panel) this.panel.reveal(undefined, true);
    else this.fill(window.createWebviewPanel(VIEW, l10n.t('Comparison'), { viewColumn: ViewColumn.Beside, preserveFocus: true }));
    void this.ask();
  }

  /** After the window was loaded anew. */
  private restore(panel: WebviewPanel, state: unknown): void {
    this.panel?.dispose();
    if (isRemembered(state)) this.of = { page: state.page, source: state.source };
    this.fill(panel);
  }

  private fill(panel: WebviewPanel): void {
    const dist = Uri.joinPath(this.folder, 'dist');
    const { webview } = this.panel = panel;
    const at = (file: string): string => webview.asWebviewUri(Uri.joinPath(dist, file)).toString();
    panel.onDidDispose(() => { if (this.panel === panel) this.panel = this.of = this.last = this.before = undefined; });
    // That it has the keyboard is a change too.
    let { visible } = panel;
    panel.onDidChangeViewState(() => {
      if (panel.visible && !visible) void this.ask();
      ({ visible } = panel);
    });
    // A page that was hidden is loaded anew, and says that it is ready.
    webview.onDidReceiveMessage((m: unknown) => { if (isFromPage(m)) this.heard(m); });
    panel.iconPath = { light: Uri.joinPath(this.folder, 'client/compare-light.svg'), dark: Uri.joinPath(this.folder, 'client/compare-dark.svg') };
    webview.options = { enableScripts: true, localResourceRoots: [dist] };
    webview.html = pageOf({ script: at('review.js'), style: at('review.css'), source: webview.cspSource, nonce: crypto.randomUUID().replaceAll('-', '') });
  }

  private heard(message: FromPage): void {
    if (message.kind === 'show') void this.showInText(message);
    else if (message.kind === 'other') void this.compare(this.of?.page);
    else void this.ask();
  }

  /** The earlier text may be another one: a commit was made, or a repository has come. */
  private readAgain(): void {
    if (!this.of || this.of.source.kind === 'file' || this.of.source.kind === 'variant') return;
    this.forget();
    void this.ask();
  }

  private forget(): void {
    this.before = undefined;
    this.changes++;
  }

  /** Compares, and shows what comes of it. */
  private async draw(): Promise<void> {
    const { of } = this;
    if (!this.panel?.visible || !of) return;
    const page = await opened(of.page);
    this.panel.title = l10n.t('Comparison: {0}', nameOf(Uri.parse(of.page)));
    if (!this.client.isRunning()) {
      this.missing(of, this.client.state === State.Starting ? STARTING : STOPPED);
      return;
    }
    const made = page ? await this.made(of, page) : GONE_PAGE;
    if (of !== this.of || made === undefined) return;
    if (typeof made === 'string') this.nothing(of, made);
    else {
      this.last = made;
      this.say(made.picture);
    }
  }

  /** A sentence where it cannot be made; undefined where a newer text has come, which is asked for anew. */
  private async made(of: Remembered, page: TextDocument): Promise<Last | string | undefined> {
    const { changes } = this;
    const before = this.before?.of === of ? this.before.read : await read(this.client, page, of.source);
    if (before === undefined || typeof before === 'string') return before;
    // What has changed while it was read is read again.
    if (changes === this.changes) this.before = { of, read: before };
    const params: ReviewParams = { textDocument: { uri: this.client.code2ProtocolConverter.asUri(page.uri) }, before: before.before, ...(before.setup === undefined ? {} : { setup: before.setup }) };
    const { version } = page;
    const answer = await ask<ReviewAnswer>(this.client, REVIEW, params, 'The comparison');
    if (answer === 'superseded') return undefined;
    if (answer === 'failed') return FAILED;
    if (answer === 'none') return of.source.kind === 'variant' ? NO_VARIANT : GONE_PAGE;
    const { shown, places } = shownOf(answer);
    const notes = before.dated && answer.borrowed.length > 0 ? [borrowed(answer.borrowed)] : [];
    const picture = { kind: 'review' as const, remember: of, before: before.names[0], after: before.names[1], ...shown, notes };
    const told = JSON.stringify(picture);
    // What is the same keeps its number: a click on it may be on its way.
    const n = told === this.last?.told ? this.last.picture.n : ++this.n;
    return { picture: { ...picture, n }, told, version, before, places };
  }

  /** The comparison from before stays, where there is one. */
  private missing(of: Remembered, why: string): void {
    if (this.last) this.say({ ...this.last.picture, notes: [STOPPED_SINCE] });
    else this.nothing(of, why);
  }

  private nothing(of: Remembered, words: string): void {
    this.last = undefined;
    this.say({ kind: 'nothing', words, remember: of });
  }

  private say(message: ToPage): void {
    void this.panel?.webview.postMessage(message);
  }

  private async showInText({ n, at, focus }: Show): Promise<void> {
    const { last, of } = this;
    const place = last?.picture.n === n ? last.places[at] : undefined;
    if (!last || !of || !place) return;
    const { before: earlier, names } = last.before;
    const uri = this.client.protocol2CodeConverter.asUri(place.uri);
    if (place.side === 'before' && 'text' in earlier && of.source.kind !== 'file') {
      const is = (u: string): boolean => this.client.protocol2CodeConverter.asUri(u).toString() === uri.toString();
      const text = (earlier.uri === undefined ? uri.toString() === of.page : is(earlier.uri)) ? earlier.text : earlier.files.find(f => is(f.uri))?.text;
      if (typeof text === 'string') {
        await reveal(await this.old.open(uri, names[0], text), place.range, focus);
        return;
      }
    }
    const document = await opened(uri);
    // Where something stands, the comparison knows of the text that it was made of.
    if (document && (document.uri.toString() !== of.page || document.version === last.version)) await reveal(document, place.range, focus);
  }
}

async function opened(uri: string | Uri): Promise<TextDocument | undefined> {
  try {
    return await workspace.openTextDocument(typeof uri === 'string' ? Uri.parse(uri) : uri);
  } catch {
    return undefined;
  }
}
