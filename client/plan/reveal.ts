/** Shows in the text where an item of the picture is written. */
import { Range, Selection, TextEditorRevealType, ViewColumn, window, type TextDocument } from 'vscode';
import type { PictureItem } from '../../server/lsp/protocol.ts';

/** @param focus whoever wants it goes on in the text */
export async function reveal(document: TextDocument, { start, end }: NonNullable<PictureItem['range']>, focus: boolean): Promise<void> {
  const range = new Range(start.line, start.character, end.line, end.character);
  const editor = window.visibleTextEditors.find(e => e.document === document);
  if (!editor || focus) await window.showTextDocument(document, { viewColumn: editor?.viewColumn ?? ViewColumn.One, preserveFocus: !focus, selection: range });
  else {
    editor.selection = new Selection(range.start, range.end);
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  }
}
