/** Why a line could not be read: what the parser must not be given, and where it stopped. One issue a line, the first by place. */
import type { IToken } from 'chevrotain';
import * as T from './tokens.ts';
import type { Span, SyntaxIssue } from './tree.ts';

export const MAX_BRACKETS = 32;

const start = (t: IToken): number => t.startOffset;
const end = (t: IToken): number => t.startOffset + t.image.length;

/** The first thing that the parser could not or must not be given; it gets what stands before. */
export function issueBefore(text: string, errors: { offset: number; length: number }[], tokens: IToken[]): SyntaxIssue | undefined {
  const e = errors[0];
  const open = tokens.find(t => t.tokenType === T.OpenText);
  const big = tokens.find(t => (t.tokenType === T.NumberToken || t.tokenType === T.Ratio) && t.image.split(':').some(n => !Number.isFinite(Number(n))));
  const found: (SyntaxIssue | undefined)[] = [decimalComma(tokens), bracketIssue(tokens)];
  if (e) {
    found.push({ code: 'unreadable-character', found: text.slice(e.offset, e.offset + e.length), start: e.offset, end: e.offset + e.length });
  }
  if (open) found.push({ code: 'unclosed-text', found: open.image, start: start(open), end: end(open) });
  if (big) found.push({ code: 'number-too-large', found: big.image, start: start(big), end: end(big) });
  return found.filter(i => i !== undefined).sort((a, b) => a.start - b.start)[0];
}

/** Where the parser stopped, as an issue. `tokens` is what it was given; `at` is not among them when the line ended too early. */
export function issueAt(text: string, at: IToken, tokens: IToken[], error: string): SyntaxIssue {
  const index = tokens.indexOf(at);
  const previous = tokens[(index < 0 ? tokens.length : index) - 1];
  const place = (t: IToken): Span => ({ start: start(t), end: end(t) });
  const expected = (t: IToken, found: string): SyntaxIssue => ({ code: 'value-expected', found, wanted: wantedAfter(previous), ...place(t) });
  if (previous && valueEnds(previous) && (index < 0 || endsBracket(at)) && inBrackets(tokens, index)) return { code: 'unclosed-bracket', found: '', ...place(previous) };
  if (previous && index < 0) return expected(previous, '');
  const last = tokens[tokens.length - 1]!;
  const stop = end(last.tokenType === T.LBrace ? tokens[Math.max(tokens.length - 2, index)]! : last);
  const unexpected: SyntaxIssue = { code: 'unexpected-text', found: text.slice(start(at), stop), start: start(at), end: stop };
  // At the end of its line a brace is right: what is wrong is what is missing before it, or that a leg takes no block.
  if (at === last && at.tokenType === T.LBrace && previous && !brace(previous)) return valueEnds(previous) ? unexpected : expected(previous, '');
  const amid = brace(at) ? at : previous?.tokenType === T.LBrace ? previous : undefined;
  if (amid) return { code: 'brace-on-own-line', found: amid.image, ...place(amid) };
  if (previous && !valueEnds(previous) && error !== 'NotAllInputParsedException') return expected(at, at.image);
  return unexpected;
}

/** `632,8` outside brackets: a decimal comma, not a list. */
function decimalComma(tokens: IToken[]): SyntaxIssue | undefined {
  let depth = 0;
  for (let i = 0; i < tokens.length; i++) {
    const [a, c, b] = [tokens[i]!, tokens[i + 1], tokens[i + 2]];
    depth += a.tokenType === T.LParen ? 1 : a.tokenType === T.RParen ? -1 : 0;
    if (depth > 0 || !c || !b || a.tokenType !== T.NumberToken || c.tokenType !== T.Comma || b.tokenType !== T.NumberToken) continue;
    if (end(a) === start(c) && end(c) === start(b)) return { code: 'decimal-comma', found: `${a.image},${b.image}`, start: start(a), end: end(b) };
  }
  return undefined;
}

/** Too many brackets are found before parsing: the recursive descent must not run out of stack. */
function bracketIssue(tokens: IToken[]): SyntaxIssue | undefined {
  let depth = 0;
  let signs = 0;
  for (const t of tokens) {
    if (t.tokenType === T.LParen && ++depth > MAX_BRACKETS) return { code: 'nesting-too-deep', found: '(', start: start(t), end: end(t) };
    if (t.tokenType === T.RParen) depth = Math.max(0, depth - 1);
    signs = t.tokenType === T.Minus || t.tokenType === T.Plus ? signs + 1 : 0;
    if (signs > MAX_BRACKETS) return { code: 'nesting-too-deep', found: t.image, start: start(t), end: end(t) };
  }
  return undefined;
}

/** What can't stand in brackets: the closing one is missing before it. */
const endsBracket = (t: IToken): boolean => [T.ClauseWord, T.Colon, T.Equals, T.Compare, T.LBrace].includes(t.tokenType);
const inBrackets = (tokens: IToken[], index: number): boolean =>
  tokens.slice(0, index < 0 ? undefined : index).reduce((n, t) => n + (t.tokenType === T.LParen ? 1 : t.tokenType === T.RParen ? -1 : 0), 0) > 0;

const brace = (t: IToken): boolean => t.tokenType === T.LBrace || t.tokenType === T.RBrace;
const valueEnds = (t: IToken): boolean => [T.NumberToken, T.Unit, T.Name, T.RParen, T.Text, T.Ratio, T.DateToken, T.Unknown, T.Std].includes(t.tokenType);

function wantedAfter(t: IToken | undefined): string {
  if (!t) return 'a statement';
  switch (t.tokenType) {
    case T.Colon: return 'a value';
    case T.Arrow: return 'the name of what the light meets next';
    case T.ClauseWord: return t.image === 'at' ? 'a place such as (100, 200) mm' : `what follows “${t.image}”`;
    case T.Tolerance: return 'how much either way';
    case T.Equals: return 'a value or an inventory item';
    default: return 'a value';
  }
}
