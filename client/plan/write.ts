/** The text of a page, as a drag reads and writes it. */
import { Range, workspace, WorkspaceEdit, type TextDocument } from 'vscode';
import type { TextRange } from '../../server/lsp/protocol.ts';
import type { Page } from './dragging.ts';

const rangeOf = ({ start, end }: TextRange): Range => new Range(start.line, start.character, end.line, end.character);

export const writeInto = (document: TextDocument): Omit<Page, 'ask'> => ({
  version: () => (document.isClosed ? NaN : document.version),
  textAt: range => document.getText(rangeOf(range)),
  write: async changes => {
    const edit = new WorkspaceEdit();
    for (const { range, newText } of changes) edit.replace(document.uri, rangeOf(range), newText);
    return workspace.applyEdit(edit);
  },
});
