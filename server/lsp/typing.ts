/** What an editor asks for while somebody types and selects: the form of what is being written, the text put in order piece by piece, what is around a cursor, names that change together. */
import type { SelectionRange, ServerCapabilities, SignatureHelp } from 'vscode-languageserver';
import type { Signature } from '../features/signature.ts';
import type { TextSpan } from '../features/selection.ts';
import type { Asks } from './asks.ts';
import { editOf, placeOf, position, rangeOf, type Source } from './convert.ts';
import { later } from './later.ts';

/** A form is shown behind the bracket or comma that asks for its next part. Once it is shown it follows the blanks and signs between its parts. */
export const TYPING: ServerCapabilities = {
  signatureHelpProvider: { triggerCharacters: ['(', ','], retriggerCharacters: [' ', ')', ':', '>'] },
  documentFormattingProvider: true, documentRangeFormattingProvider: true, documentOnTypeFormattingProvider: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] },
  selectionRangeProvider: true, linkedEditingRangeProvider: true,
};

export function serveTyping({ connection, can, answer }: Asks): void {
  connection.onSignatureHelp(({ textDocument: t, position: p }, token) => answer(t.uri, token, async (s, d): Promise<SignatureHelp | null> => {
    const { signatureAt } = await later();
    const found = signatureAt(s, ...placeOf(d, p));
    const markdown = can().textDocument?.signatureHelp?.signatureInformation?.documentationFormat?.includes('markdown') === true;
    return found ? helpOf(found, markdown, can().textDocument?.signatureHelp?.signatureInformation?.parameterInformation?.labelOffsetSupport === true) : null;
  }));

  connection.onDocumentFormatting(({ textDocument: t }, token) => answer(t.uri, token, async (s, d) => (await later()).formatChanges(s).map(c => editOf(d, c))));
  connection.onDocumentRangeFormatting(({ textDocument: t, range: { start, end } }, token) => answer(t.uri, token, async (s, d) => {
    const { formatRange } = await later();
    // A range that ends where a line begins has nothing of that line.
    return formatRange(s, start.line, end.character === 0 && end.line > start.line ? end.line - 1 : end.line).map(c => editOf(d, c));
  }));
  connection.onDocumentOnTypeFormatting(({ textDocument: t, position: p, ch }, token) => answer(t.uri, token, async (s, d) => (await later()).formatTyped(s, p.line, ch).map(c => editOf(d, c))));

  connection.onSelectionRanges(({ textDocument: t, positions }, token) => answer(t.uri, token, async (s, d): Promise<SelectionRange[]> => {
    const { selectionsAt } = await later();
    // One for each position is wanted, in any case.
    return positions.map(p => nested(selectionsAt(s, ...placeOf(d, p)), d) ?? { range: { start: p, end: p } });
  }));

  connection.languages.onLinkedEditingRange(({ textDocument: t, position: p }, token) => answer(t.uri, token, async (s, d) => {
    const { linkedAt } = await later();
    const found = linkedAt(s, ...placeOf(d, p));
    return found.length === 0 ? null : { ranges: found.map(at => rangeOf(d, at)) };
  }));
}

function helpOf({ label, words, parts, active }: Signature, markdown: boolean, offsets: boolean): SignatureHelp {
  const said = (value: string): { documentation: string | { kind: 'markdown'; value: string } } => ({ documentation: markdown ? { kind: 'markdown', value } : value });
  const parameters = parts.map(p => ({ label: offsets ? [p.start, p.end] as [number, number] : label.slice(p.start, p.end), ...said(p.words) }));
  return { signatures: [{ label, ...said(words), parameters }], activeSignature: 0, activeParameter: active };
}

function nested(spans: readonly TextSpan[], d: Source): SelectionRange | undefined {
  // A byte order mark is of the page, and of nothing in it.
  const at = ({ line, character }: TextSpan['from']) => position(d, line, character);
  let outer: SelectionRange | undefined;
  for (const { from, to } of [...spans].reverse()) outer = { range: { start: at(from), end: at(to) }, ...(outer ? { parent: outer } : {}) };
  return outer;
}
