/** Asks the server for the picture of a page, and for what it would be. */
import { type BaseLanguageClient, LSPErrorCodes, ResponseError } from 'vscode-languageclient';
import { DRAG, PICTURE, type DragAnswer, type DragParams, type PictureAnswer, type PictureParams } from '../../server/lsp/protocol.ts';

/** A newer text has been sent, which brings its own question. */
const SUPERSEDED: readonly number[] = [LSPErrorCodes.ContentModified, LSPErrorCodes.RequestCancelled, LSPErrorCodes.ServerCancelled];

export const askPicture = (client: BaseLanguageClient, params: PictureParams): Promise<PictureAnswer | 'none' | 'superseded' | 'failed'> => ask<PictureAnswer>(client, PICTURE, params);
export const askDrag = (client: BaseLanguageClient, params: DragParams): Promise<DragAnswer | 'none' | 'superseded' | 'failed'> => ask<DragAnswer>(client, DRAG, params);

async function ask<T>(client: BaseLanguageClient, method: string, params: object): Promise<T | 'none' | 'superseded' | 'failed'> {
  try {
    return (await client.sendRequest<T | null>(method, params)) ?? 'none';
  } catch (e) {
    if (e instanceof ResponseError && SUPERSEDED.includes(e.code)) return 'superseded';
    client.outputChannel.warn(`The picture: ${String(e)}`);
    return 'failed';
  }
}
