/** Answers with pictures of setups. */
import type { CancellationToken } from 'vscode-languageserver';
import type { Asks } from './asks.ts';
import { rangeOf } from './convert.ts';
import { later } from './later.ts';
import { PICTURE, type PictureAnswer, type PictureParams } from './protocol.ts';

export function servePicture({ connection, answer }: Asks): void {
  connection.onRequest(PICTURE, ({ textDocument: t, line, setup, variant, view }: PictureParams, token: CancellationToken): Promise<PictureAnswer | null> => answer(t.uri, token, async (s, d) => {
    const { pictureOf } = await later();
    const picture = pictureOf(s, { ...(typeof line === 'number' ? { line } : {}), ...(typeof setup === 'string' ? { setup } : {}), ...(typeof variant === 'string' ? { variant } : {}), ...(typeof view === 'string' ? { view } : {}) });
    if (!picture) return null;
    const items = picture.items.map(({ id, words, written }) => ({ id, words, ...(written.uri === s.uri ? { range: rangeOf(d, written) } : {}) }));
    return { ...picture, items, version: d.version };
  }));
}
