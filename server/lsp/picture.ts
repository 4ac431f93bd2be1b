/** Answers with pictures of setups, and with what a drag in one would make of the page. */
import type { CancellationToken } from 'vscode-languageserver';
import type { Snapshot } from '../analysis.ts';
import type { Wanted } from '../drawing/picture.ts';
import type { Asks } from './asks.ts';
import { rangeOf } from './convert.ts';
import type { Document } from './documents.ts';
import { later } from './later.ts';
import { DRAG, PICTURE, type DragAnswer, type DragParams, type PictureAnswer, type PictureParams, type PictureShown } from './protocol.ts';

export function servePicture({ connection, documents, answer }: Asks): void {
  connection.onRequest(PICTURE, (params: PictureParams, token: CancellationToken) => answer(params.textDocument.uri, token, async (s, d): Promise<PictureAnswer | null> => {
    const made = await answerOf(s, d, wantedOf(params));
    return made && { ...made.answer, errors: made.errors() };
  }));
  connection.onRequest(DRAG, (params: DragParams, token: CancellationToken) => answer(params.textDocument.uri, token, async (s, d): Promise<DragAnswer | null> => {
    const { item, gesture, x, y, free, dropped, version, stepped } = params;
    if (version !== d.version || typeof item !== 'string' || typeof x !== 'number' || typeof y !== 'number') return null;
    const { dragged } = await later();
    const wanted = wantedOf(params);
    const made = dragged(s, wanted, { item, gesture: gesture === 'turn' ? 'turn' : 'move', to: stepped === true ? [x, -y] : [x / 1000, -y / 1000], stepped: stepped === true, free, dropped }, documents.textsFor(d));
    if ('refused' in made) return made;
    const after = await answerOf(made.after, d, wanted);
    return after && { version: d.version, edits: made.edits.map(e => ({ range: rangeOf(d, e.at), newText: e.newText })), picture: after.answer };
  }));
}

function wantedOf({ line, setup, variant, view, plate, viewpoint }: PictureParams): Wanted {
  const from = typeof viewpoint?.x === 'number' && typeof viewpoint.y === 'number' ? { from: [viewpoint.x, viewpoint.y] as const } : {};
  return { ...from, ...(typeof plate === 'string' ? { plate } : {}), ...(typeof line === 'number' ? { line } : {}), ...(typeof setup === 'string' ? { setup } : {}), ...(typeof variant === 'string' ? { variant } : {}), ...(typeof view === 'string' ? { view } : {}) };
}

async function answerOf(s: Snapshot, d: Document, wanted: Wanted): Promise<{ readonly answer: PictureShown; readonly errors: () => number } | null> {
  const { pictureOf, figuresOf } = await later();
  const picture = pictureOf(s, wanted);
  if (!picture) return null;
  const { results, errors, ...shown } = picture;
  const items = picture.items.map(({ written, ...item }) => ({ ...item, ...(written.uri === s.uri ? { range: rangeOf(d, written) } : {}) }));
  return { answer: { ...shown, items, figures: figuresOf(results), version: d.version }, errors };
}
