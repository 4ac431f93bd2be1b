/** The panel that goes through a shot with somebody. The time is counted in its page, by the clock of whoever sits there; how far it is is kept here, so that nothing is lost with a window. */
import { commands, env, l10n, Uri, ViewColumn, window, type Disposable, type Memento, type WebviewPanel } from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { SHOOT, SHOT, type Additions, type ShootAnswer } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { addTo, opened, pageOf as textOf, sayUnsaved } from '../evening/paper.ts';
import { dayOf } from '../../server/lsp/stamp.ts';
import { oneAtATime } from '../one-at-a-time.ts';
import { pageAtHand, sayNoPage } from '../page.ts';
import { pageOf } from './html.ts';
import { isFromPage, isRun, type FromPage, type ToPage, type Write } from './messages.ts';
import { fresh, isUnderWay, later, written, type Run } from './run.ts';
import { FAILED, GONE_PAGE, NO_SHOT, OTHER, OVER, SETTLED, STARTING, STILL, STOPPED } from './words.ts';

const VIEW = 'platewright.shoot';
/** Where it is kept for when the window is loaded anew. */
const KEPT = 'platewright.shoot';

type Entry = Additions & { readonly shot: string; readonly text: string; readonly notes: readonly string[] };

export class ShootPanel {
  private readonly own: readonly Disposable[];
  private readonly ask = oneAtATime(() => this.draw());
  private panel: WebviewPanel | undefined;
  private run: Run | undefined;
  private busy = false;

  constructor(private readonly folder: Uri, private readonly client: BaseLanguageClient, private readonly memory: Memento) {
    const kept = memory.get(KEPT);
    if (isRun(kept)) this.run = kept;
    this.own = [
      commands.registerCommand('platewright.shoot', () => this.shoot()),
      window.registerWebviewPanelSerializer(VIEW, { deserializeWebviewPanel: (panel, state: unknown) => { this.restore(panel, state); return Promise.resolve(); } }),
      client.onDidChangeState(() => { void this.ask(); }),
    ];
  }

  dispose(): void {
    for (const d of this.own) d.dispose();
    this.panel?.dispose();
  }

  /** Of the setup at the cursor; what is under way already goes on. */
  private async shoot(): Promise<void> {
    // The panel itself in front, it goes on with what it shows.
    const editor = this.panel ? window.activeTextEditor : pageAtHand();
    const { run } = this;
    if (run && isUnderWay(run)) {
      if (editor && editor.document.uri.toString() !== run.page) void window.showInformationMessage(OTHER(run.setup));
      this.show();
      return;
    }
    if (editor?.document.languageId !== 'plate' || !this.client.isRunning()) {
      if (this.panel) this.panel.reveal();
      else if (!editor) sayNoPage();
      return;
    }
    const answer = await this.evening({ line: editor.selection.active.line }, editor.document.uri.toString());
    if (typeof answer === 'string') { void window.showInformationMessage(answer); return; }
    const page = editor.document.uri.toString();
    // What is ticked off in a panel that is open stays so.
    if (!this.panel || run?.page !== page || run.setup !== answer.setup) await this.keep({ ...fresh(page, answer.setup, answer.settle ?? 0, answer.openings.map(({ name, seconds }) => ({ name, seconds: seconds ?? 0 }))), n: (run?.n ?? 0) + 1 });
    this.show();
  }

  private show(): void {
    if (this.panel) this.panel.reveal();
    // It is counted and heard also while another tab lies over it.
    else this.fill(window.createWebviewPanel(VIEW, l10n.t('Shoot'), ViewColumn.Beside, { retainContextWhenHidden: true }));
    void this.ask();
  }

  private restore(panel: WebviewPanel, state: unknown): void {
    this.panel?.dispose();
    if (isRun(state)) this.run = later(this.run, state);
    this.fill(panel);
  }

  private fill(panel: WebviewPanel): void {
    const dist = Uri.joinPath(this.folder, 'dist');
    const { webview } = this.panel = panel;
    const at = (file: string): string => webview.asWebviewUri(Uri.joinPath(dist, file)).toString();
    panel.onDidDispose(() => {
      if (this.panel !== panel) return;
      this.panel = undefined;
      if (this.run && (this.run.phase === 'settling' || this.run.phase === 'exposing')) void window.showWarningMessage(STILL(this.run.setup));
    });
    webview.onDidReceiveMessage((m: unknown) => { if (isFromPage(m)) void this.heard(m); });
    webview.options = { enableScripts: true, localResourceRoots: [dist] };
    webview.html = pageOf({ script: at('shoot.js'), style: at('shoot.css'), source: webview.cspSource, nonce: crypto.randomUUID().replaceAll('-', '') });
  }

  private async heard(message: FromPage): Promise<void> {
    if (message.kind === 'ready') { await this.ask(); return; }
    // A page that was loaded anew may tell of what is over already.
    if (later(this.run, message.run) !== message.run && this.run?.n !== message.run.n) return;
    await this.keep(message.run);
    if (message.kind === 'write') await this.write(message);
    else if (message.over !== undefined && this.panel?.visible === false) void window.showWarningMessage(message.over === 'exposed' ? OVER : SETTLED);
  }

  private async keep(run: Run): Promise<void> {
    this.run = run;
    await this.memory.update(KEPT, run);
  }

  /** One entry for one shot, and none that gets lost: until it stands on the page, the panel offers to write it. */
  private async write({ run, on }: Write): Promise<void> {
    if (this.busy || run.phase !== 'exposed' || run.opened.length === 0) return;
    this.busy = true;
    const exposures = run.opened.map((seconds, i) => ({ ...run.exposures[i], seconds }));
    try {
      const page = await opened(run.page);
      const not = async (words: string): Promise<void> => {
        this.say({ kind: 'not written', words });
        const copy = l10n.t('Copy What Is Known');
        if (await window.showErrorMessage(`${l10n.t('The shot is not written down yet.')} ${words}`, copy) === copy) await env.clipboard.writeText(JSON.stringify({ on, exposures, settle: run.rested, notes: run.notes }));
      };
      if (!page) { void not(GONE_PAGE); return; }
      if (!this.client.isRunning()) { void not(STOPPED); return; }
      const told = Object.entries(run.fields).filter(([step, text]) => step !== 'plate' && text.trim() !== '').map(([step, text]) => `${step} ${text.trim()}`);
      const note = [...told, ...run.notes].join('; ');
      const made = await addTo<Entry>(this.client, page, SHOT, () => ({
        setup: run.setup, on, exposures, ...(run.rested === undefined ? {} : { settle: run.rested }), ...(run.fields['plate']?.trim() ? { plate: run.fields['plate'].trim() } : {}), ...(note === '' ? {} : { note }),
      }), 'A shot');
      if (made.kind === 'not') { void not(made.words); return; }
      await this.keep(written(run));
      this.say({ kind: 'written', shot: made.answer.shot, saved: made.saved, notes: made.answer.notes });
      if (!made.saved) void sayUnsaved(page, made.answer.text);
      await this.draw();
    } finally {
      this.busy = false;
    }
  }

  /** What there is to do, or why that is not known. */
  private async evening(of: { readonly line: number } | { readonly setup: string }, uri: string): Promise<Exclude<ShootAnswer, { refused: string }> | string> {
    const page = await opened(uri);
    if (!page) return GONE_PAGE;
    if (!this.client.isRunning()) return this.client.state === State.Starting ? STARTING : STOPPED;
    const answer = await ask<ShootAnswer>(this.client, SHOOT, { ...textOf(this.client, page), ...of, day: dayOf(new Date()) }, 'What there is to do for a shot');
    if (answer === 'superseded') return this.evening(of, uri);
    return typeof answer === 'string' ? FAILED : 'refused' in answer ? answer.refused : answer;
  }

  private async draw(): Promise<void> {
    const { panel, run } = this;
    if (!panel) return;
    if (!run) { this.say({ kind: 'nothing', words: NO_SHOT }); return; }
    const evening = await this.evening({ setup: run.setup }, run.page);
    if (typeof evening === 'string' || evening.setup !== run.setup) this.say({ kind: 'nothing', words: typeof evening === 'string' ? evening : GONE_PAGE });
    else if (this.run) {
      panel.title = l10n.t('Shoot: {0}', evening.setup);
      this.say({ kind: 'evening', evening, run: this.run });
    }
  }

  private say(message: ToPage): void {
    void this.panel?.webview.postMessage(message);
  }
}
