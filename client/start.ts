/** What the extension does on desktop and web alike: starts the server, reads files for it, and adds a status bar, the bench plan, the comparison with earlier texts and the commands. It computes nothing. */
import { commands, l10n, Uri, window, workspace, type ExtensionContext, type LogOutputChannel } from 'vscode';
import { CloseAction, State, vsdiag, type BaseLanguageClient, type ErrorHandler, type LanguageClientOptions } from 'vscode-languageclient';
import { LIST_FILES, MAX_LISTED, READ_FILE, type InitializationOptions, type ReadFileParams } from '../server/lsp/protocol.ts';
import { Cards } from './card.ts';
import { EARLIER } from './earlier-scheme.ts';
import { Learned } from './evening/learned.ts';
import { Outcomes } from './evening/outcome.ts';
import { Readings } from './evening/readings.ts';
import { NewSetup } from './new-setup.ts';
import { PlanPanel } from './plan/panel.ts';
import { ReviewPanel } from './review/panel.ts';
import { ShootPanel } from './shoot/panel.ts';
import { StatusBar } from './status-bar.ts';
import { provideTasks } from './tasks.ts';
import { WhyPages } from './why.ts';

let client: BaseLanguageClient | undefined;
/** the server that starts next was asked for */
let asked = false;

export async function start(context: ExtensionContext, make: (options: LanguageClientOptions) => BaseLanguageClient): Promise<void> {
  const output = window.createOutputChannel('Platewright', { log: true });
  // Asked anew at each start of the server.
  const does = (): InitializationOptions => ({ readsFiles: true, listsFiles: true, opensWhy: true, opensReview: true, checksAllPages: workspace.getConfiguration('platewright').get<boolean>('checkAllPages', false), inventoryFolders: workspace.getConfiguration('platewright').get<string[]>('inventoryFolders', []) });
  const own = client = make({
    documentSelector: [{ language: 'plate' }], outputChannel: output, initializationOptions: does,
    diagnosticPullOptions: { onChange: true, onFocus: true },
    errorHandler: {
      error: (error, message, count) => usual().error(error, message, count),
      closed: async () => {
        const closing = await usual().closed();
        return closing.action === CloseAction.DoNotRestart ? { ...closing, message: given() } : closing;
      },
    },
    middleware: {
      // An earlier text is looked at, and no more: what it used is not where it was.
      didOpen: (document, next) => (document.uri.scheme === EARLIER ? Promise.resolve() : next(document)),
      didClose: (document, next) => (document.uri.scheme === EARLIER ? Promise.resolve() : next(document)),
      // The older side of a comparison is not what anybody is working on.
      provideDiagnostics: (document, before, token, next) =>
        (('uri' in document ? document.uri : document).scheme === 'git' ? { kind: vsdiag.DocumentDiagnosticReportKind.full, items: [] } : next(document, before, token)),
    },
  });
  let handler: ErrorHandler | undefined;
  const usual = (): ErrorHandler => handler ??= own.createDefaultErrorHandler();
  // The library starts a server again that has gone by itself; the page's author should know, since that is a defect.
  own.onDidChangeState(({ newState }) => {
    if (newState !== State.Running) return;
    if (!asked) void sayRestarted(output);
    asked = false;
  });
  own.onRequest(READ_FILE, ({ uri }: ReadFileParams) => readFile(uri));
  own.onRequest(LIST_FILES, async () => (await workspace.findFiles('**/*.plate', '{**/node_modules/**,**/.*/**}', MAX_LISTED + 1)).map(uri => own.code2ProtocolConverter.asUri(uri)));
  context.subscriptions.push(
    output, new StatusBar(own), new NewSetup(own), new WhyPages(own), new PlanPanel(context.extensionUri, own), new ReviewPanel(context.extensionUri, own), new Cards(own), new Readings(own), new ShootPanel(context.extensionUri, own, context.workspaceState), new Outcomes(own), new Learned(own), provideTasks(own),
    commands.registerCommand('platewright.showOutput', () => { output.show(); }),
    commands.registerCommand('platewright.restartServer', () => restart(own)),
  );
  await begin(own);
}

/** Starts the server because somebody wants it. */
function begin(own: BaseLanguageClient): Promise<void> {
  asked = true;
  return own.start();
}

async function sayRestarted(output: LogOutputChannel): Promise<void> {
  const show = l10n.t('Show Output');
  if (await window.showWarningMessage(l10n.t('The server of Platewright had stopped by itself and was started again. Nothing of your text is lost.'), show) === show) output.show();
}

/** Why the server is not started again, and how it is. */
const given = (): string => l10n.t('The server of Platewright has stopped by itself too often within a few minutes and is not started again. Nothing of your text is lost. “Platewright: Show Output” says why; “Platewright: Restart Server” starts it.');

export async function stop(): Promise<void> {
  await client?.dispose();
  client = undefined;
}

/** A server that does not stop is left behind; the new one takes its place. */
async function restart(own: BaseLanguageClient): Promise<void> {
  await own.stop().catch((e: unknown) => { own.outputChannel.warn(String(e)); });
  await begin(own);
}

async function readFile(uri: string): Promise<string | null> {
  try {
    return new TextDecoder().decode(await workspace.fs.readFile(Uri.parse(uri)));
  } catch {
    return null;
  }
}
