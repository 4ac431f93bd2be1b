/** The page that an evening is written on, as the editor has it. */
import { env, l10n, Uri, window, workspace, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { Additions, Refused } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { writeInto } from '../plan/write.ts';
import { add, NOT_SAVED, type Added } from './adding.ts';

export const pageOf = (client: BaseLanguageClient, document: TextDocument): { readonly textDocument: { readonly uri: string } } => ({ textDocument: { uri: client.code2ProtocolConverter.asUri(document.uri) } });

/** Asks for lines and writes them. @param what as a log says it */
export function addTo<A extends Additions>(client: BaseLanguageClient, document: TextDocument, method: string, params: () => object, what: string): Promise<Added<A>> {
  const { version, write } = writeInto(document);
  return add<A>({
    version, write, ask: () => ask<A | Refused>(client, method, { ...pageOf(client, document), ...params() }, what),
    // A page that has no file yet is kept by the editor, which asks for a name when it is closed.
    save: async () => document.isUntitled || !document.isDirty || document.save(),
  });
}

/** What is not saved is said, until somebody has saved it. @param text that is copied where nothing else helps */
export async function sayUnsaved(document: TextDocument, text: string): Promise<void> {
  const [again, copy] = [l10n.t('Save Again'), l10n.t('Copy the Lines')];
  for (;;) {
    const chosen = await window.showErrorMessage(NOT_SAVED, again, copy);
    if (chosen === copy) await env.clipboard.writeText(text);
    else if (chosen !== again || await document.save().then(s => s, () => false)) return;
  }
}

export async function opened(uri: string): Promise<TextDocument | undefined> {
  try {
    return await workspace.openTextDocument(Uri.parse(uri));
  } catch {
    return undefined;
  }
}
