/** Asks the server for the picture of a page. */
import { type BaseLanguageClient, LSPErrorCodes, ResponseError } from 'vscode-languageclient';
import { PICTURE, type PictureAnswer, type PictureParams } from '../../server/lsp/protocol.ts';

/** A newer text has been sent, which brings its own question. */
const SUPERSEDED: readonly number[] = [LSPErrorCodes.ContentModified, LSPErrorCodes.RequestCancelled, LSPErrorCodes.ServerCancelled];

export async function askPicture(client: BaseLanguageClient, params: PictureParams): Promise<PictureAnswer | 'none' | 'superseded' | 'failed'> {
  try {
    return (await client.sendRequest<PictureAnswer | null>(PICTURE, params)) ?? 'none';
  } catch (e) {
    if (e instanceof ResponseError && SUPERSEDED.includes(e.code)) return 'superseded';
    client.outputChannel.warn(`The picture: ${String(e)}`);
    return 'failed';
  }
}
