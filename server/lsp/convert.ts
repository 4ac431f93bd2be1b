/** Between the plain data of the features and the protocol. Nothing else knows both. */
import {
  CodeActionKind, DiagnosticSeverity, DocumentHighlightKind, SemanticTokensBuilder, SymbolKind, type CodeAction, type Diagnostic, type DocumentHighlight, type DocumentLink, type DocumentSymbol, type Hover as ProtocolHover, type InlayHint,
  type Location, type LocationLink, type Position, type Range, type SemanticTokens, type SymbolInformation, type TextEdit, type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Finding, Severity } from '../checks/check.ts';
import type { Definition } from '../features/definition.ts';
import type { Fix } from '../features/fixes/fixes.ts';
import type { Edit } from '../model/edits.ts';
import type { TextChange } from '../features/formatting.ts';
import type { Hover } from '../features/hover/hover.ts';
import type { Hint } from '../features/hints.ts';
import type { Link } from '../features/links.ts';
import type { Use } from '../features/references.ts';
import type { Summary } from '../features/summary.ts';
import type { OutlineItem } from '../features/symbols.ts';
import { TOKEN_MODIFIERS, TOKEN_TYPES } from '../features/token-legend.ts';
import type { WordToken } from '../features/tokens.ts';
import type { Place } from '../model/model.ts';
import type { SummaryAnswer } from './protocol.ts';

/** What a conversion must know of a document. */
export interface Source {
  /** in the client's spelling */
  readonly uri: string;
  readonly version: number;
  /** byte order marks at the start of its text, which editors count and the trees don't */
  readonly marks: number;
}

const SEVERITY: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error, warning: DiagnosticSeverity.Warning, note: DiagnosticSeverity.Information, hint: DiagnosticSeverity.Hint,
};

const shift = (source: Source, line: number): number => (line === 0 ? source.marks : 0);
export const position = (source: Source, line: number, character: number): Position => ({ line, character: character + shift(source, line) });
export const rangeOf = (source: Source, at: Place): Range => ({ start: position(source, at.line, at.start), end: position(source, at.line, at.end) });

/** Line and character of the trees. */
export const placeOf = (source: Source, p: Position): [line: number, character: number] => [p.line, Math.max(0, p.character - shift(source, p.line))];

export const diagnosticOf = (source: Source, f: Finding): Diagnostic => ({ range: rangeOf(source, f.at), severity: SEVERITY[f.severity], code: f.code, source: 'platewright', message: f.message });

/** What is published of the findings: those that the text does not accept, in this file. */
export const published = (findings: readonly Finding[], uri: string): Finding[] => findings.filter(f => f.accepted === undefined && f.at.uri === uri);

export const hoverOf = (source: Source, h: Hover): ProtocolHover => ({ range: rangeOf(source, h.at), contents: { kind: 'markdown', value: h.markdown } });

export const editOf = (source: Source, c: TextChange): TextEdit =>
  ({ range: { start: position(source, c.from.line, c.from.character), end: position(source, c.to.line, c.to.character) }, newText: c.newText });

export function definitionOf(source: Source, d: Definition, target: Source, links: boolean): LocationLink[] | Location {
  const range = rangeOf(target, d.to);
  return links ? [{ originSelectionRange: rangeOf(source, d.from), targetUri: target.uri, targetRange: range, targetSelectionRange: range }] : { uri: target.uri, range };
}

/** `versioned`: the client takes edits for one version of a document, and refuses them for another. */
export function actionOf(source: Source, finding: Finding, fix: Fix, versioned: boolean): CodeAction {
  const edits = fix.edits.map(e => ({ range: rangeOf(source, e.at), newText: e.newText }));
  const edit: WorkspaceEdit = versioned ? { documentChanges: [{ textDocument: { uri: source.uri, version: source.version }, edits }] } : { changes: { [source.uri]: edits } };
  return { title: fix.title, kind: CodeActionKind.QuickFix, diagnostics: [diagnosticOf(source, finding)], isPreferred: fix.preferred, edit };
}

/** Edits of several pages at once. One that is not open has no version. */
export function workspaceEditOf(pages: readonly { readonly source: Source; readonly open: boolean; readonly edits: readonly Edit[] }[], versioned: boolean): WorkspaceEdit {
  const changed = pages.map(({ source, open, edits }) => ({ textDocument: { uri: source.uri, version: open ? source.version : null }, edits: edits.map(e => ({ range: rangeOf(source, e.at), newText: e.newText })) }));
  return versioned ? { documentChanges: changed } : { changes: Object.fromEntries(changed.map(c => [c.textDocument.uri, c.edits])) };
}

export const highlightOf = (source: Source, u: Use): DocumentHighlight => ({ range: rangeOf(source, u.at), kind: u.declares ? DocumentHighlightKind.Write : DocumentHighlightKind.Read });

export const linkOf = (source: Source, l: Link, target: string): DocumentLink => ({ range: rangeOf(source, l.at), target, tooltip: l.title });

/** Tokens as the protocol counts them: lines, characters, lengths, numbers of types, bits of modifiers. */
export function tokensOf(source: Source, tokens: readonly WordToken[]): SemanticTokens {
  const builder = new SemanticTokensBuilder();
  for (const t of tokens) builder.push(t.line, t.start + shift(source, t.line), t.length, TOKEN_TYPES.indexOf(t.type), t.modifiers.reduce((bits, m) => bits | (1 << TOKEN_MODIFIERS.indexOf(m)), 0));
  return builder.build();
}

/** By which the chain of numbers of a hint is found when somebody points at it. */
export interface HintData {
  readonly uri: string;
  readonly setup: number;
  readonly result: string;
}

/** `words`: its chain of numbers, for a client that will not ask for it. */
export function hintOf(source: Source, h: Hint, sourceOf: (uri: string) => Source, words: string | undefined): InlayHint {
  const data: HintData = { uri: source.uri, setup: h.setup, result: h.result };
  const label = h.parts.map(({ text, to }) => ({ value: text, ...(to ? { location: { uri: sourceOf(to.uri).uri, range: rangeOf(sourceOf(to.uri), to) } } : {}) }));
  return { position: position(source, h.line, h.character), label, paddingLeft: true, data, ...(words === undefined ? {} : { tooltip: { kind: 'markdown', value: words } }) };
}

export const SYMBOL: Readonly<Record<OutlineItem['kind'], SymbolKind>> = {
  setup: SymbolKind.Module, inventory: SymbolKind.Package, thing: SymbolKind.Object, beam: SymbolKind.Event, leg: SymbolKind.Field, variant: SymbolKind.Namespace, shot: SymbolKind.Constant,
};

export function symbolOf(source: Source, lines: readonly { readonly text: string }[], item: OutlineItem): DocumentSymbol {
  // Editors want a name, and the place of it inside of the whole.
  const length = Math.max(lines[item.end]?.text.length ?? 0, item.end === item.at.line ? item.at.end : 0);
  return {
    name: item.name || item.kind, detail: item.detail, kind: SYMBOL[item.kind], selectionRange: rangeOf(source, item.at),
    range: { start: { line: item.at.line, character: 0 }, end: position(source, item.end, length) },
    ...(item.children.length > 0 ? { children: item.children.map(c => symbolOf(source, lines, c)) } : {}),
  };
}

/** For clients that show no tree. */
export function flatSymbols(uri: string, symbols: readonly DocumentSymbol[], container?: string): SymbolInformation[] {
  return symbols.flatMap(s => [
    { name: s.name, kind: s.kind, location: { uri, range: s.range }, ...(container !== undefined ? { containerName: container } : {}) }, ...flatSymbols(uri, s.children ?? [], s.name),
  ]);
}

export function summaryOf(source: Source, summary: Summary, markdown: string): SummaryAnswer {
  const { worst, ...figures } = summary;
  const answer = { ...figures, markdown };
  if (!worst) return answer;
  const { start } = rangeOf(source, worst.at);
  return { ...answer, worst: { severity: worst.severity, message: worst.message, line: start.line, character: start.character } };
}
