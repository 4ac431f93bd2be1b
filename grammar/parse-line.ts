/**
 * Parses one line into its tree. A line never affects another one, so an error stays where it is.
 *
 * The parser builds the tree in embedded actions, into a draft that survives a syntax error: what was understood before
 * the error is kept, and the rest of the line is one issue.
 */
import { EmbeddedActionsParser, type IToken } from 'chevrotain';
import * as T from './tokens.ts';
import type { Clause, Expr, LineTree, Span, SyntaxIssue, TokenSpan, TokenType, Word } from './tree.ts';

export const MAX_LINE = 2000;
export const MAX_BRACKETS = 32;

type Draft = { -readonly [K in keyof Omit<LineTree, 'clauses' | 'tokens' | 'text'>]: LineTree[K] } & { clauses: Clause[] };

const start = (t: IToken): number => t.startOffset;
const end = (t: IToken): number => t.startOffset + t.image.length;
const word = (t: IToken): Word => ({ text: t.image, start: start(t), end: end(t) });
const span = (a: Span, b: Span): Span => ({ start: a.start, end: b.end });

class LineParser extends EmbeddedActionsParser {
  draft: Draft = { kind: 'statement', clauses: [], opens: false };
  depth = 0;

  constructor() {
    super(T.ALL, { maxLookahead: 2, recoveryEnabled: false, skipValidations: false });
    this.performSelfAnalysis();
  }

  readonly line = this.RULE('line', () => {
    this.OR([
      { ALT: () => this.SUBRULE(this.leg) },
      { ALT: () => { this.CONSUME(T.RBrace); this.draft.kind = 'close'; } },
      { ALT: () => this.SUBRULE(this.statement) },
    ]);
  });

  private readonly leg = this.RULE('leg', () => {
    this.CONSUME(T.Arrow);
    this.ACTION(() => { this.draft.kind = 'leg'; });
    const subject = this.SUBRULE(this.row);
    this.ACTION(() => { this.draft.subject = subject; });
    this.MANY(() => this.SUBRULE(this.clause));
    this.OPTION(() => this.SUBRULE(this.colonValue));
  });

  private readonly statement = this.RULE('statement', () => {
    const head = this.CONSUME(T.Name);
    this.ACTION(() => { this.draft.head = word(head); });
    this.OPTION1(() => {
      const subject = this.SUBRULE(this.subject);
      this.ACTION(() => { this.draft.subject = subject; });
    });
    this.MANY1(() => this.SUBRULE1(this.clause));
    this.OPTION2(() => {
      this.CONSUME(T.Equals);
      const equals = this.SUBRULE1(this.value);
      this.ACTION(() => { this.draft.equals = equals; });
      this.MANY2(() => this.SUBRULE2(this.clause));
    });
    this.OPTION3(() => {
      const op = this.CONSUME(T.Compare);
      this.ACTION(() => {
        const text = op.image === '≤' ? '<=' : op.image === '≥' ? '>=' : op.image;
        this.draft.compare = { op: text as '<' | '<=' | '>' | '>=', start: start(op), end: end(op) };
      });
      const value = this.SUBRULE2(this.value);
      this.ACTION(() => { this.draft.compare = { ...this.draft.compare!, value }; });
    });
    this.OPTION4(() => this.SUBRULE(this.colonValue));
    this.OPTION5(() => { this.CONSUME(T.LBrace); this.draft.opens = true; });
  });

  private readonly colonValue = this.RULE('colonValue', () => {
    const colon = this.CONSUME(T.Colon);
    this.ACTION(() => { this.draft.colon = start(colon); });
    const value = this.SUBRULE(this.list);
    this.ACTION(() => { this.draft.value = value; });
    this.MANY(() => this.SUBRULE(this.clause));
  });

  private readonly clause = this.RULE('clause', () => {
    const w = this.CONSUME(T.ClauseWord);
    const at = this.ACTION(() => this.draft.clauses.push({ word: word(w), start: start(w), end: end(w) }) - 1);
    const value = this.SUBRULE(this.path);
    this.ACTION(() => { this.draft.clauses[at] = { word: word(w), value, start: start(w), end: value.end }; });
  });

  private readonly subject = this.RULE('subject', (): Expr => {
    let first = this.SUBRULE(this.row);
    const items = [first];
    this.MANY(() => {
      this.OR([
        { ALT: () => { this.CONSUME(T.Arrow); const next = this.SUBRULE1(this.row); this.ACTION(() => { items.push(next); }); } },
        { ALT: () => {
          const op = this.CONSUME(T.Minus);
          const right = this.SUBRULE2(this.row);
          this.ACTION(() => { first = { kind: 'binary', op: '-', left: first, right, at: word(op), ...span(first, right) }; items[0] = first; });
        } },
        { ALT: () => {
          const op = this.CONSUME(T.Plus);
          const right = this.SUBRULE3(this.row);
          this.ACTION(() => { first = { kind: 'binary', op: '+', left: first, right, at: word(op), ...span(first, right) }; items[0] = first; });
        } },
      ]);
    });
    return items.length === 1 ? first : { kind: 'path', items, ...span(items[0]!, items[items.length - 1]!) };
  });

  private readonly row = this.RULE('row', (): Expr => {
    const items: Expr[] = [];
    this.AT_LEAST_ONE(() => { const p = this.SUBRULE(this.primary); this.ACTION(() => { items.push(p); }); });
    return items.length <= 1 ? items[0]! : { kind: 'row', items, ...span(items[0]!, items[items.length - 1]!) };
  });

  private readonly path = this.RULE('path', (): Expr => {
    const items: Expr[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: T.Arrow, DEF: () => { const v = this.SUBRULE(this.value); this.ACTION(() => { items.push(v); }); } });
    return items.length <= 1 ? items[0]! : { kind: 'path', items, ...span(items[0]!, items[items.length - 1]!) };
  });

  private readonly list = this.RULE('list', (): Expr => {
    const items: Expr[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: T.Comma, DEF: () => { const v = this.SUBRULE(this.value); this.ACTION(() => { items.push(v); }); } });
    return items.length <= 1 ? items[0]! : { kind: 'list', items, ...span(items[0]!, items[items.length - 1]!) };
  });

  private readonly value = this.RULE('value', (): Expr => {
    let v = this.SUBRULE(this.sizes);
    this.OPTION(() => {
      const op = this.CONSUME(T.Tolerance);
      const by = this.SUBRULE(this.operand);
      let last: Span = by;
      let std = false;
      this.OPTION1(() => { const s = this.CONSUME(T.Std); this.ACTION(() => { std = true; last = word(s); }); });
      this.ACTION(() => { v = { kind: 'tolerance', value: v, op: op.image === '±' || op.image === '+/-' ? '±' : '×÷', by, std, ...span(v, last) }; });
    });
    return v;
  });

  private readonly sizes = this.RULE('sizes', (): Expr => {
    const parts: Expr[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: T.By, DEF: () => { const s = this.SUBRULE(this.sum); this.ACTION(() => { parts.push(s); }); } });
    return parts.length <= 1 ? parts[0]! : { kind: 'sizes', parts, ...span(parts[0]!, parts[parts.length - 1]!) };
  });

  private readonly sum = this.RULE('sum', (): Expr => {
    let left = this.SUBRULE(this.product);
    this.MANY(() => {
      const op = this.OR([{ ALT: () => this.CONSUME(T.Plus) }, { ALT: () => this.CONSUME(T.Minus) }]);
      const right = this.SUBRULE1(this.product);
      this.ACTION(() => { left = { kind: 'binary', op: op.image === '+' ? '+' : '-', left, right, at: word(op), ...span(left, right) }; });
    });
    return left;
  });

  private readonly product = this.RULE('product', (): Expr => {
    let left = this.SUBRULE(this.operand);
    this.MANY(() => {
      const op = this.OR([{ ALT: () => this.CONSUME(T.Star) }, { ALT: () => this.CONSUME(T.Slash) }]);
      const right = this.SUBRULE1(this.operand);
      this.ACTION(() => { left = { kind: 'binary', op: op.image === '*' ? '*' : '/', left, right, at: word(op), ...span(left, right) }; });
    });
    return left;
  });

  private readonly operand = this.RULE('operand', (): Expr => {
    const signs: IToken[] = [];
    this.MANY(() => {
      const s = this.OR([{ ALT: () => this.CONSUME(T.Plus) }, { ALT: () => this.CONSUME(T.Minus) }]);
      this.ACTION(() => { signs.push(s); });
    });
    const p = this.SUBRULE(this.primary);
    return this.ACTION(() => signs.reduceRight<Expr>((arg, s) => ({ kind: 'unary', op: s.image === '+' ? '+' : '-', arg, start: start(s), end: arg.end }), p));
  });

  private readonly primary = this.RULE('primary', (): Expr => this.OR([
    { ALT: () => {
      const t = this.CONSUME(T.NumberToken);
      const unit = this.OPTION(() => this.CONSUME(T.Unit));
      return this.ACTION((): Expr => ({ kind: 'number', value: Number(t.image), ...withUnit(t, unit) }));
    } },
    { ALT: () => {
      const t = this.CONSUME(T.Unknown);
      const unit = this.OPTION1(() => this.CONSUME1(T.Unit));
      return this.ACTION((): Expr => ({ kind: 'unknown', ...withUnit(t, unit) }));
    } },
    { ALT: () => {
      const t = this.CONSUME(T.Ratio);
      return this.ACTION((): Expr => { const [l, r] = t.image.split(':'); return { kind: 'ratio', left: Number(l), right: Number(r), start: start(t), end: end(t) }; });
    } },
    { ALT: () => { const t = this.CONSUME(T.DateToken); return this.ACTION((): Expr => ({ kind: 'date', text: t.image, start: start(t), end: end(t) })); } },
    { ALT: () => {
      const t = this.CONSUME(T.Text);
      return this.ACTION((): Expr => ({ kind: 'string', value: t.image.slice(1, -1).replace(/\\(.)/g, '$1'), start: start(t), end: end(t) }));
    } },
    { GATE: () => this.LA(2).tokenType === T.LParen && this.LA(2).startOffset === end(this.LA(1)), ALT: () => {
      const name = this.CONSUME(T.Name);
      const g = this.SUBRULE(this.brackets);
      return this.ACTION((): Expr => ({ kind: 'call', name: word(name), args: g.items, ...(g.unit ? { unit: g.unit } : {}), start: start(name), end: g.end }));
    } },
    { ALT: () => {
      const words: Word[] = [];
      this.AT_LEAST_ONE({
        GATE: () => words.length === 0 || !(this.LA(2).tokenType === T.LParen && this.LA(2).startOffset === end(this.LA(1))),
        DEF: () => { const w = this.CONSUME1(T.Name); this.ACTION(() => { words.push(word(w)); }); },
      });
      return this.ACTION((): Expr => ({ kind: 'phrase', words, ...span(words[0]!, words[words.length - 1]!) }));
    } },
    { ALT: () => { const g = this.SUBRULE1(this.brackets); return this.ACTION((): Expr => ({ kind: 'group', ...g })); } },
  ]));

  private readonly brackets = this.RULE('brackets', (): { items: readonly Expr[]; unit?: Word } & Span => {
    const open = this.CONSUME(T.LParen);
    const items: Expr[] = [];
    this.MANY_SEP({ SEP: T.Comma, DEF: () => { const v = this.SUBRULE(this.value); this.ACTION(() => { items.push(v); }); } });
    const close = this.CONSUME(T.RParen);
    const unit = this.OPTION(() => this.CONSUME(T.Unit));
    return this.ACTION(() => ({ items, ...withUnit(open, unit ?? close), ...(unit ? { unit: word(unit) } : {}) }));
  });
}

function withUnit(t: IToken, unit: IToken | undefined): Span & { unit?: Word } {
  if (!unit) return { start: start(t), end: end(t) };
  return unit.tokenType === T.Unit ? { start: start(t), end: end(unit), unit: word(unit) } : { start: start(t), end: end(unit) };
}

const parser = new LineParser();

const TYPE = new Map<unknown, TokenType>([
  [T.Doc, 'doc'], [T.Comment, 'comment'], [T.Text, 'string'], [T.OpenText, 'bad'], [T.DateToken, 'date'], [T.Ratio, 'ratio'], [T.NumberToken, 'number'],
  [T.Arrow, 'arrow'], [T.Tolerance, 'tolerance'], [T.Compare, 'compare'], [T.Unit, 'unit'], [T.ClauseWord, 'clause'], [T.Std, 'clause'],
  [T.By, 'by'], [T.Name, 'word'], [T.Equals, 'equals'], [T.Colon, 'colon'], [T.Comma, 'comma'], [T.LParen, 'lparen'], [T.RParen, 'rparen'],
  [T.LBrace, 'open'], [T.RBrace, 'close'], [T.Plus, 'plus'], [T.Minus, 'minus'], [T.Star, 'star'], [T.Slash, 'slash'], [T.Unknown, 'unknown'],
]);

/**
 * Parses one line (without its line end). Never throws; a line that can't be read wholly has an `issue`.
 * Pure: the same text gives an equal tree.
 */
export function parseLine(text: string): LineTree {
  if (text.trim() === '') return { kind: 'blank', text, tokens: [], clauses: [], opens: false };
  if (text.length > MAX_LINE) {
    return { kind: 'unreadable', text, tokens: [], clauses: [], opens: false, issue: { code: 'line-too-long', found: '', start: 0, end: text.length } };
  }
  const { tokens, errors } = T.lexer.tokenize(text);
  const spans: TokenSpan[] = tokens.map(t => ({ type: TYPE.get(t.tokenType)!, start: start(t), end: end(t) }));
  const last = tokens[tokens.length - 1];
  let comment: Span | undefined;
  if (last && (last.tokenType === T.Comment || last.tokenType === T.Doc)) {
    comment = { start: start(last), end: end(last) };
    tokens.pop();
  }
  const lexIssue = lexerIssue(text, errors, tokens, spans);
  if (tokens.length === 0 && !lexIssue) {
    const doc = last?.tokenType === T.Doc;
    return { kind: doc ? 'doc' : 'comment', text, tokens: spans, clauses: [], opens: false, ...(comment ? { comment } : {}) };
  }
  const cut = lexIssue ? tokens.filter(t => end(t) <= lexIssue.start) : tokens;
  const draft: Draft = { kind: 'statement', clauses: [], opens: false };
  let issue = lexIssue ?? bracketIssue(cut);
  if (cut.length > 0 && issue?.code !== 'nesting-too-deep') {
    parser.draft = draft;
    parser.input = cut;
    parser.line();
    const e = parser.errors[0];
    if (e && !lexIssue) issue = issueAt(text, e.token, cut, e.name);
    if (!e && !issue) issue = undefined;
  } else if (cut.length === 0) draft.kind = 'unreadable';
  if (!draft.head && draft.kind === 'statement') draft.kind = 'unreadable';
  // A brace at the end still opens its block, so that a broken line doesn't spill its error over the block.
  if (issue) draft.opens = draft.kind !== 'close' && braces(tokens) > 0;
  if (issue && draft.kind === 'unreadable' && tokens[0]?.tokenType === T.RBrace) draft.kind = 'close';
  return { text, tokens: spans, ...draft, ...(comment ? { comment } : {}), ...(issue ? { issue } : {}) };
}

const braces = (tokens: IToken[]): number => tokens.reduce((n, t) => n + (t.tokenType === T.LBrace ? 1 : t.tokenType === T.RBrace ? -1 : 0), 0);

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

function lexerIssue(text: string, errors: { offset: number; length: number }[], tokens: IToken[], spans: TokenSpan[]): SyntaxIssue | undefined {
  const e = errors[0];
  const open = tokens.find(t => t.tokenType === T.OpenText);
  const big = tokens.find(t => t.tokenType === T.NumberToken && !Number.isFinite(Number(t.image)));
  const found: SyntaxIssue[] = [];
  if (e) {
    for (const x of errors) spans.push({ type: 'bad', start: x.offset, end: x.offset + x.length });
    spans.sort((a, b) => a.start - b.start);
    found.push({ code: 'unreadable-character', found: text.slice(e.offset, e.offset + e.length), start: e.offset, end: e.offset + e.length });
  }
  if (open) found.push({ code: 'unclosed-text', found: open.image, start: start(open), end: end(open) });
  if (big) found.push({ code: 'number-too-large', found: big.image, start: start(big), end: end(big) });
  const comma = decimalComma(tokens);
  if (comma) found.push(comma);
  return found.sort((a, b) => a.start - b.start)[0];
}

/** Too many brackets are found before parsing: the recursive descent must not run out of stack. */
function bracketIssue(tokens: IToken[]): SyntaxIssue | undefined {
  let depth = 0;
  let signs = 0;
  for (const t of tokens) {
    if (t.tokenType === T.LParen && ++depth > MAX_BRACKETS) return { code: 'nesting-too-deep', found: '(', start: start(t), end: end(t) };
    if (t.tokenType === T.RParen) depth--;
    signs = t.tokenType === T.Minus || t.tokenType === T.Plus ? signs + 1 : 0;
    if (signs > MAX_BRACKETS) return { code: 'nesting-too-deep', found: t.image, start: start(t), end: end(t) };
  }
  return undefined;
}

function issueAt(text: string, at: IToken, tokens: IToken[], error: string): SyntaxIssue {
  const missing = Number.isNaN(at.startOffset) || at.tokenType.name === 'EOF' || at.image === '';
  const lastToken = tokens[tokens.length - 1]!;
  const previous = missing ? lastToken : tokens[tokens.indexOf(at) - 1];
  const depth = tokens.slice(0, missing ? undefined : tokens.indexOf(at)).reduce((n, t) => n + (t.tokenType === T.LParen ? 1 : t.tokenType === T.RParen ? -1 : 0), 0);
  if (missing) {
    const s = { start: end(lastToken), end: end(lastToken) };
    const at2 = { start: start(lastToken), end: end(lastToken) };
    if (depth > 0 && valueEnds(lastToken)) return { code: 'unclosed-bracket', found: '', ...at2 };
    return { code: 'value-expected', found: '', wanted: wantedAfter(previous), ...(s.start > 0 ? at2 : s) };
  }
  const rest = { start: start(at), end: text.trimEnd().length };
  const one = { start: start(at), end: end(at) };
  if (at.tokenType === T.LBrace || at.tokenType === T.RBrace) return { code: 'brace-on-own-line', found: at.image, ...one };
  const lastTok = tokens[tokens.length - 1]!;
  const stop = lastTok.tokenType === T.LBrace ? end(tokens[Math.max(tokens.length - 2, tokens.indexOf(at))]!) : Math.min(rest.end, end(lastTok));
  if (previous && !valueEnds(previous) && error !== 'NotAllInputParsedException') return { code: 'value-expected', found: at.image, wanted: wantedAfter(previous), ...one };
  return { code: 'unexpected-text', found: text.slice(start(at), stop), start: start(at), end: Math.max(stop, one.end) };
}

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
