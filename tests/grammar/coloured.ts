/** The colours of a text, by the engine that editors run. */
import { createRegistry } from 'vscode-tmgrammar-test/dist/common/index.js';
import { parseLine } from '../../grammar/parse-line.ts';
import type { TokenType } from '../../grammar/tree.ts';

const path = decodeURIComponent(new URL('../../grammar/plate.tmLanguage.json', import.meta.url).pathname);
export const registry = createRegistry([{ path, scopeName: 'source.plate', language: 'plate' }]);
const grammar = (await registry.loadGrammar('source.plate'))!;

/** Part of a line, with what it is coloured as: all but the scope of the whole language. */
export interface Coloured { readonly start: number; readonly end: number; readonly text: string; readonly scopes: readonly string[] }
type State = ReturnType<typeof grammar.tokenizeLine>['ruleStack'] | null;

/** A line behind others that left the engine in `state`, and how this one leaves it. */
export function colourBehind(text: string, state: State): { readonly parts: Coloured[]; readonly state: State } {
  const { tokens, ruleStack } = grammar.tokenizeLine(text, state);
  // The engine adds a line end of its own to each line.
  return { parts: tokens.map(t => ({ start: t.startIndex, end: Math.min(t.endIndex, text.length), text: text.slice(t.startIndex, t.endIndex), scopes: t.scopes.slice(1) })).filter(t => t.start < t.end), state: ruleStack };
}
/** A line alone. */
export const colours = (text: string): Coloured[] => colourBehind(text, null).parts;

/** The lines of a text, one after the other. */
export function coloursOf(text: string): Coloured[][] {
  let state: State = null;
  return text.split(/\r\n|[\r\n]/).map(line => {
    const done = colourBehind(line, state);
    state = done.state;
    return done.parts;
  });
}

/** Scopes of which one must colour a token of the language. */
const SCOPES: Record<TokenType, readonly string[]> = {
  word: ['variable.other', 'entity.name.type', 'keyword.declaration', 'keyword.control', 'keyword.other.goal', 'keyword.other.reading', 'constant.other.finding', 'support.function'],
  clause: ['keyword.other.clause', 'keyword.other.std'],
  number: ['constant.numeric.plate'], unit: ['keyword.other.unit'], ratio: ['constant.numeric.ratio'], date: ['constant.numeric.date'], string: ['string.quoted.double'],
  comment: ['comment.line.double-slash'], doc: ['comment.line.documentation'],
  arrow: ['keyword.operator.arrow'], tolerance: ['keyword.operator.tolerance'], compare: ['keyword.operator.comparison'], equals: ['keyword.operator.assignment'], by: ['keyword.operator.size'],
  plus: ['keyword.operator.arithmetic'], minus: ['keyword.operator.arithmetic'], star: ['keyword.operator.arithmetic'], slash: ['keyword.operator.arithmetic'],
  colon: ['punctuation.separator.key-value'], comma: ['punctuation.separator.sequence'], lparen: ['punctuation.section.parens.begin'], rparen: ['punctuation.section.parens.end'],
  open: ['punctuation.section.block.begin'], close: ['punctuation.section.block.end'], unknown: ['constant.language.unknown'],
  bad: [],
};

/** Tokens of the language that are coloured as something else. */
export function miscoloured(text: string): string[] {
  const coloured = colours(text);
  return parseLine(text).tokens.flatMap(token => {
    const over = coloured.filter(c => c.start < token.end && c.end > token.start);
    // What is no token may be coloured as it likes, or not at all.
    const right = token.type === 'bad' || over.every(c => SCOPES[token.type].some(scope => c.scopes.some(s => s.startsWith(scope))));
    return right ? [] : [`${token.type} ${text.slice(token.start, token.end)} as ${over.map(c => c.scopes.join(' ')).join(' | ')}`];
  });
}
