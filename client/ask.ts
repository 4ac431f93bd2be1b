/** Asks the server. */
import { type BaseLanguageClient, LSPErrorCodes, ResponseError } from 'vscode-languageclient';

/** A newer text has been sent, which brings its own question. */
const SUPERSEDED: readonly number[] = [LSPErrorCodes.ContentModified, LSPErrorCodes.RequestCancelled, LSPErrorCodes.ServerCancelled];

/** @param what is asked for, as a log says it */
export async function ask<T>(client: BaseLanguageClient, method: string, params: object, what: string): Promise<T | 'none' | 'superseded' | 'failed'> {
  try {
    return (await client.sendRequest<T | null>(method, params)) ?? 'none';
  } catch (e) {
    if (e instanceof ResponseError && SUPERSEDED.includes(e.code)) return 'superseded';
    client.outputChannel.warn(`${what}: ${String(e)}`);
    return 'failed';
  }
}
