/** Writes the card for the bench beside the page, where somebody says so, and offers to open it. */
import { commands, env, l10n, UIKind, Uri, window, workspace, type Disposable, type TextEditor } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { CARD, type CardAnswer, type CardParams } from '../server/lsp/protocol.ts';
import { pageAtHand, sayNoPage } from './page.ts';
import { putFile, seenAt, type Seen } from './put-file.ts';
import { besidePath, saidKind, writeCard, type Kind } from './card-written.ts';

const PAPERS = { a4: 'A4', letter: l10n.t('Letter') } as const;
const FORMS = { pdf: l10n.t('to be printed'), html: l10n.t('to be read in a browser, and printed from there') } as const;
const TITLE = l10n.t('Write the Bench Card');
const OPEN = l10n.t('Open It');
const SAY = { note: window.showInformationMessage, warning: window.showWarningMessage, error: window.showErrorMessage } as const;

/** Where a card goes, and what is there already. */
interface Chosen { readonly at: Uri; readonly before: Seen | undefined }

export class Cards {
  private readonly own: Disposable;

  constructor(private readonly client: BaseLanguageClient) { this.own = commands.registerCommand('platewright.writeCard', (said?: unknown) => this.write(said)); }

  dispose(): void { this.own.dispose(); }

  private async write(said: unknown): Promise<void> {
    const editor = pageAtHand();
    if (!editor) sayNoPage();
    if (!editor || !this.client.isRunning()) return;
    const known = saidKind(said);
    await writeCard<Chosen>({
      kind: () => this.kind(known),
      ask: kind => this.ask(editor, kind),
      place: async ({ form }) => {
        const to = placeIn(said);
        if (to) return mayTake(to);
        const beside = besideOf(editor.document.uri, form);
        const at = await window.showSaveDialog({ title: TITLE, filters: { [l10n.t('Bench card')]: [form] }, ...(beside ? { defaultUri: beside } : {}) });
        return at && { at, before: await seenAt(workspace.fs, at) };
      },
      write: ({ at, before }, file) => putFile(workspace.fs, at, file, before, at.scheme === 'file' && env.uiKind === UIKind.Web && env.remoteName === undefined),
      say: (words, kind) => { void SAY[kind](words); },
      offer: ({ at }, setup, form) => offer(at, setup, form),
    });
  }

  /** One question for paper and form. */
  private async kind({ paper, form }: Partial<Kind>): Promise<Kind | undefined> {
    if (paper && form) return { paper, form };
    const prints = printsCards(this.client);
    const forms = form ? [form] : prints ? ['pdf', 'html'] as const : ['html'] as const;
    const rows = (paper ? [paper] : ['a4', 'letter'] as const).flatMap(p => forms.map(f => ({ label: `${PAPERS[p]}, ${f.toUpperCase()}`, description: FORMS[f], chosen: { paper: p, form: f } })));
    return (await window.showQuickPick(rows, { title: TITLE, placeHolder: prints ? l10n.t('On which paper, and as what?') : l10n.t('On which paper? PDF needs a server beside the editor; a browser prints HTML, into a PDF too') }))?.chosen;
  }

  private ask({ document, selection }: TextEditor, kind: Kind): Promise<CardAnswer | null | undefined> {
    const params: CardParams = { textDocument: { uri: this.client.code2ProtocolConverter.asUri(document.uri) }, line: selection.active.line, ...kind };
    return this.client.sendRequest<CardAnswer | null>(CARD, params).catch((e: unknown) => { this.client.outputChannel.warn(`A card: ${String(e)}`); return undefined; });
  }
}

const printsCards = (client: BaseLanguageClient): boolean => (client.initializeResult?.capabilities.experimental as { readonly printsCards?: unknown } | undefined)?.printsCards === true;

/** Where it is to go, said with the command. */
const placeIn = (said: unknown): Uri | undefined => (typeof said === 'object' && said !== null && 'to' in said && said.to instanceof Uri ? said.to : undefined);

/** A file that is there is only taken the place of when somebody says so. */
async function mayTake(at: Uri): Promise<Chosen | undefined> {
  const before = await seenAt(workspace.fs, at);
  const take = l10n.t('Write Over It');
  return !before || await window.showWarningMessage(l10n.t('{0} is there already.', nameOf(at)), { modal: true }, take) === take ? { at, before } : undefined;
}

/** A page that was never saved lies beside nothing. */
const besideOf = (uri: Uri, form: Kind['form']): Uri | undefined => (uri.scheme === 'untitled' ? undefined : uri.with({ path: besidePath(uri.path, form), query: '', fragment: '' }));

const nameOf = (at: Uri): string => at.path.slice(at.path.lastIndexOf('/') + 1);

/** Only what lies on a disk opens in another program. */
async function offer(at: Uri, setup: string, form: Kind['form']): Promise<void> {
  const written = setup === '' ? l10n.t('{0}: the bench card is written.', nameOf(at)) : l10n.t('{0}: the bench card of “{1}” is written.', nameOf(at), setup);
  const words = form === 'html' ? `${written} ${l10n.t('Print it from a browser.')}` : written;
  if (at.scheme !== 'file') void window.showInformationMessage(words);
  else if (await window.showInformationMessage(words, OPEN) === OPEN) await env.openExternal(at);
}
