/** Asks the server for the picture of a page, and for what it would be. */
import type { BaseLanguageClient } from 'vscode-languageclient';
import { DRAG, PICTURE, type DragAnswer, type DragParams, type PictureAnswer, type PictureParams } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';

export const askPicture = (client: BaseLanguageClient, params: PictureParams): Promise<PictureAnswer | 'none' | 'superseded' | 'failed'> => ask<PictureAnswer>(client, PICTURE, params, 'The picture');
export const askDrag = (client: BaseLanguageClient, params: DragParams): Promise<DragAnswer | 'none' | 'superseded' | 'failed'> => ask<DragAnswer>(client, DRAG, params, 'The picture');
