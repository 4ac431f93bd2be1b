/**
 * Parses one line into its tree. A line never affects another one, so an error stays where it is.
 *
 * The parser builds the tree in embedded actions, into a draft that survives a syntax error: what was understood before
 * the error is kept, and the rest of the line is one issue.
 */
import { EmbeddedActionsParser, type IOrAlt, type IToken } from 'chevrotain';
import { issueAt, issueBefore } from './line-issues.ts';
import * as T from './tokens.ts';
import type { Clause, Expr, LineKind, LineTree, Span, TokenSpan, TokenType, Word, SyntaxIssue } from './tree.ts';

export { MAX_BRACKETS } from './line-issues.ts';
export const MAX_LINE = 2000;

/** Statements that may name several things, parted by commas. */
const LISTED: ReadonlySet<string> = new Set(['moved']);

type Draft = { -readonly [K in keyof Omit<LineTree, 'clauses' | 'tokens' | 'text' | 'memo' | 'formatted'>]?: LineTree[K] } & { kind: LineKind; clauses: Clause[] };

const start = (t: IToken): number => t.startOffset;
const end = (t: IToken): number => t.startOffset + t.image.length;
const word = (t: IToken): Word => ({ text: t.image, start: start(t), end: end(t) });

/** Exported for the test that lets the library check the grammar, which takes too long to do at each start. */
export class LineParser extends EmbeddedActionsParser {
  draft: Draft = { kind: 'statement', clauses: [], opens: false };

  constructor(check = false) {
    super(T.ALL, { maxLookahead: 2, recoveryEnabled: false, skipValidations: !check });
    this.performSelfAnalysis();
  }

  // Choices that rest on nothing but the parser are made once, as the library advises: they are asked for with each word.
  private readonly lines: IOrAlt<void>[] = [
    { ALT: () => this.SUBRULE(this.leg) },
    { ALT: () => { this.CONSUME(T.RBrace); this.draft.kind = 'close'; } },
    { ALT: () => this.SUBRULE(this.statement) },
  ];
  private readonly signs: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME(T.Plus) }, { ALT: () => this.CONSUME(T.Minus) }];
  private readonly factors: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME(T.Star) }, { ALT: () => this.CONSUME(T.Slash) }];

  readonly line = this.RULE('line', () => { this.OR(this.lines); });

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
      this.OR([
        { ALT: () => {
          const items = [this.SUBRULE(this.subject)];
          // Several names of one statement are only parted by commas where it may name several.
          this.MANY3({ GATE: () => LISTED.has(head.image), DEF: () => { this.CONSUME(T.Comma); const next = this.SUBRULE1(this.row); this.ACTION(() => { items.push(next); }); } });
          this.ACTION(() => { this.draft.subject = items.length === 1 ? items[0]! : { kind: 'list', items, start: items[0]!.start, end: items[items.length - 1]!.end }; });
        } },
        // `S1 -> M1: 760 mm`, as in a reading: the head is the first end of the path.
        { ALT: () => {
          const items: Expr[] = [{ kind: 'phrase', words: [word(head)], start: start(head), end: end(head) }];
          this.AT_LEAST_ONE(() => { this.CONSUME(T.Arrow); const next = this.SUBRULE(this.row); this.ACTION(() => { items.push(next); }); });
          this.ACTION(() => { this.draft.subject = { kind: 'path', items, start: items[0]!.start, end: items[items.length - 1]!.end }; });
        } },
      ]);
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
    const items = [this.SUBRULE(this.row)];
    const join = (op: IToken, right: Expr): void => {
      const left = items.pop()!;
      items.push({ kind: 'binary', op: op.image === '+' ? '+' : '-', left, right, at: word(op), start: left.start, end: right.end });
    };
    this.MANY(() => {
      this.OR([
        { ALT: () => { this.CONSUME(T.Arrow); const next = this.SUBRULE1(this.row); this.ACTION(() => { items.push(next); }); } },
        { ALT: () => {
          const op = this.CONSUME(T.Minus);
          const right = this.SUBRULE2(this.row);
          this.ACTION(() => join(op, right));
        } },
        { ALT: () => {
          const op = this.CONSUME(T.Plus);
          const right = this.SUBRULE3(this.row);
          this.ACTION(() => join(op, right));
        } },
      ]);
    });
    return items.length <= 1 ? items[0]! : { kind: 'path', items, start: items[0]!.start, end: items[items.length - 1]!.end };
  });

  private readonly row = this.RULE('row', (): Expr => {
    const items: Expr[] = [];
    this.AT_LEAST_ONE(() => { const p = this.SUBRULE(this.primary); this.ACTION(() => { items.push(p); }); });
    return items.length <= 1 ? items[0]! : { kind: 'row', items, start: items[0]!.start, end: items[items.length - 1]!.end };
  });

  private readonly path = this.RULE('path', (): Expr => {
    const items: Expr[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: T.Arrow, DEF: () => { const v = this.SUBRULE(this.value); this.ACTION(() => { items.push(v); }); } });
    return items.length <= 1 ? items[0]! : { kind: 'path', items, start: items[0]!.start, end: items[items.length - 1]!.end };
  });

  private readonly list = this.RULE('list', (): Expr => {
    const items: Expr[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: T.Comma, DEF: () => { const v = this.SUBRULE(this.value); this.ACTION(() => { items.push(v); }); } });
    return items.length <= 1 ? items[0]! : { kind: 'list', items, start: items[0]!.start, end: items[items.length - 1]!.end };
  });

  private readonly value = this.RULE('value', (): Expr => {
    let v = this.SUBRULE(this.sizes);
    this.OPTION(() => {
      const op = this.CONSUME(T.Tolerance);
      const by = this.SUBRULE(this.operand);
      let last: Span = by;
      let std = false;
      this.OPTION1(() => { const s = this.CONSUME(T.Std); this.ACTION(() => { std = true; last = word(s); }); });
      this.ACTION(() => { v = { kind: 'tolerance', value: v, op: op.image === '±' || op.image === '+/-' ? '±' : '×÷', by, std, start: v.start, end: last.end }; });
    });
    return v;
  });

  private readonly sizes = this.RULE('sizes', (): Expr => {
    const parts: Expr[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: T.By, DEF: () => { const s = this.SUBRULE(this.sum); this.ACTION(() => { parts.push(s); }); } });
    return parts.length <= 1 ? parts[0]! : { kind: 'sizes', parts, start: parts[0]!.start, end: parts[parts.length - 1]!.end };
  });

  private readonly sum = this.RULE('sum', (): Expr => {
    let left = this.SUBRULE(this.product);
    this.MANY(() => {
      const op = this.OR(this.signs);
      const right = this.SUBRULE1(this.product);
      this.ACTION(() => { left = { kind: 'binary', op: op.image === '+' ? '+' : '-', left, right, at: word(op), start: left.start, end: right.end }; });
    });
    return left;
  });

  private readonly product = this.RULE('product', (): Expr => {
    let left = this.SUBRULE(this.operand);
    this.MANY(() => {
      const op = this.OR(this.factors);
      const right = this.SUBRULE1(this.operand);
      this.ACTION(() => { left = { kind: 'binary', op: op.image === '*' ? '*' : '/', left, right, at: word(op), start: left.start, end: right.end }; });
    });
    return left;
  });

  private readonly operand = this.RULE('operand', (): Expr => {
    const signs: IToken[] = [];
    this.MANY(() => {
      const s = this.OR(this.signs);
      this.ACTION(() => { signs.push(s); });
    });
    const p = this.SUBRULE(this.primary);
    return this.ACTION(() => signs.reduceRight<Expr>((arg, s) => ({ kind: 'unary', op: s.image === '+' ? '+' : '-', arg, start: start(s), end: arg.end }), p));
  });

  private readonly primaries: IOrAlt<Expr>[] = [
    { ALT: () => {
      const t = this.CONSUME(T.NumberToken);
      const unit = this.OPTION(() => this.CONSUME(T.Unit));
      return this.ACTION((): Expr => ({ kind: 'number', value: Number(t.image), unit: unitWord(unit), start: start(t), end: end(unit ?? t) }));
    } },
    { ALT: () => {
      const t = this.CONSUME(T.Unknown);
      const unit = this.OPTION1(() => this.CONSUME1(T.Unit));
      return this.ACTION((): Expr => ({ kind: 'unknown', unit: unitWord(unit), start: start(t), end: end(unit ?? t) }));
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
      return this.ACTION((): Expr => ({ kind: 'call', name: word(name), args: g.items, unit: g.unit, start: start(name), end: g.end }));
    } },
    { ALT: () => {
      const words: Word[] = [];
      this.AT_LEAST_ONE({
        GATE: () => words.length === 0 || !(this.LA(2).tokenType === T.LParen && this.LA(2).startOffset === end(this.LA(1))),
        DEF: () => { const w = this.CONSUME1(T.Name); this.ACTION(() => { words.push(word(w)); }); },
      });
      return this.ACTION((): Expr => ({ kind: 'phrase', words, start: words[0]!.start, end: words[words.length - 1]!.end }));
    } },
    { ALT: () => { const g = this.SUBRULE1(this.brackets); return this.ACTION((): Expr => ({ kind: 'group', items: g.items, unit: g.unit, start: g.start, end: g.end })); } },
  ];
  private readonly primary = this.RULE('primary', (): Expr => this.OR(this.primaries));

  private readonly brackets = this.RULE('brackets', (): { items: readonly Expr[]; unit: Word | undefined } & Span => {
    const open = this.CONSUME(T.LParen);
    const items: Expr[] = [];
    this.MANY_SEP({ SEP: T.Comma, DEF: () => { const v = this.SUBRULE(this.value); this.ACTION(() => { items.push(v); }); } });
    const close = this.CONSUME(T.RParen);
    const unit = this.OPTION(() => this.CONSUME(T.Unit));
    return this.ACTION(() => ({ items, unit: unitWord(unit), start: start(open), end: end(unit ?? close) }));
  });
}

const unitWord = (t: IToken | undefined): Word | undefined => t && word(t);

const parser = new LineParser();

const TYPE = new Map<unknown, TokenType>([
  [T.Doc, 'doc'], [T.Comment, 'comment'], [T.Text, 'string'], [T.OpenText, 'bad'], [T.DateToken, 'date'], [T.Ratio, 'ratio'], [T.NumberToken, 'number'],
  [T.Arrow, 'arrow'], [T.Tolerance, 'tolerance'], [T.Compare, 'compare'], [T.Unit, 'unit'], [T.ClauseWord, 'clause'], [T.Std, 'clause'],
  [T.By, 'by'], [T.Name, 'word'], [T.Equals, 'equals'], [T.Colon, 'colon'], [T.Comma, 'comma'], [T.LParen, 'lparen'], [T.RParen, 'rparen'],
  [T.LBrace, 'open'], [T.RBrace, 'close'], [T.Plus, 'plus'], [T.Minus, 'minus'], [T.Star, 'star'], [T.Slash, 'slash'], [T.Unknown, 'unknown'],
]);

/** Most lines have no clauses; they share the empty list. */
const NO_CLAUSES: readonly Clause[] = [];

/** A page is mostly lines, so that a line keeps its tree and not its tokens: these are read again when the formatter or an editor asks. */
class LineOf implements LineTree {
  readonly kind: LineKind;
  readonly head: Word | undefined;
  readonly subject: Expr | undefined;
  readonly clauses: readonly Clause[];
  readonly equals: Expr | undefined;
  readonly compare: LineTree['compare'];
  readonly colon: number | undefined;
  readonly value: Expr | undefined;
  readonly opens: boolean;
  memo: LineTree['memo'] = undefined;
  formatted: string | undefined = undefined;

  constructor(readonly text: string, draft: Partial<Draft> & { kind: LineKind }, readonly comment: Span | undefined, readonly issue: SyntaxIssue | undefined) {
    this.kind = draft.kind;
    this.head = draft.head;
    this.subject = draft.subject;
    this.clauses = draft.clauses && draft.clauses.length > 0 ? draft.clauses : NO_CLAUSES;
    this.equals = draft.equals;
    this.compare = draft.compare;
    this.colon = draft.colon;
    this.value = draft.value;
    this.opens = draft.opens ?? false;
  }

  get tokens(): readonly TokenSpan[] { return tokensIn(this.text); }
}

/** The tokens of one line, in order; none where it is too long to be read. */
export function tokensIn(line: string): readonly TokenSpan[] {
  if (line.length > MAX_LINE) return [];
  const { tokens, errors } = T.lexer.tokenize(line);
  const spans: TokenSpan[] = tokens.map(t => ({ type: TYPE.get(t.tokenType)!, start: start(t), end: end(t) }));
  for (const e of errors) spans.push({ type: 'bad', start: e.offset, end: e.offset + e.length });
  return spans.sort((a, b) => a.start - b.start);
}

/**
 * Parses one line (without its line end). Never throws; a line that can't be read wholly has an `issue`.
 * Pure: the same text gives an equal tree.
 */
export function parseLine(text: string): LineTree {
  if (text.trim() === '') return new LineOf(text, { kind: 'blank' }, undefined, undefined);
  if (text.length > MAX_LINE) return tooLong(text);
  const { tokens, errors } = T.lexer.tokenize(text);
  const last = tokens[tokens.length - 1];
  let comment: Span | undefined;
  if (last && (last.tokenType === T.Comment || last.tokenType === T.Doc)) {
    comment = { start: start(last), end: end(last) };
    tokens.pop();
  }
  let issue = issueBefore(text, errors, tokens);
  if (tokens.length === 0 && !issue) return new LineOf(text, { kind: last?.tokenType === T.Doc ? 'doc' : 'comment' }, comment, undefined);
  const early = issue?.start ?? text.length;
  const cut = tokens.filter(t => end(t) <= early);
  const draft: Draft = { kind: 'statement', clauses: [], opens: false };
  if (cut.length > 0) {
    parser.draft = draft;
    parser.input = cut;
    parser.line();
    const e = parser.errors[0];
    if (e) issue ??= issueAt(text, e.token, cut, e.name);
  }
  if (!draft.head && draft.kind === 'statement') draft.kind = 'unreadable';
  // A brace at the end still opens its block, so that a broken line doesn't spill its error over the block.
  if (issue) draft.opens = draft.kind !== 'close' && bracesLeftOpen(tokens) > 0;
  return new LineOf(text, draft, comment, issue);
}

/** Not read at all, but its braces still count, as far as the ends of the line show them. */
function tooLong(text: string): LineTree {
  const kind = text.trimStart().startsWith('}') ? 'close' : 'unreadable';
  const opens = kind !== 'close' && !text.trimStart().startsWith('//') && text.trimEnd().endsWith('{');
  return new LineOf(text, { kind, opens }, undefined, { code: 'line-too-long', found: '', start: 0, end: text.length });
}

/** Text that is not closed swallows the brace at the end of its line. */
const bracesLeftOpen = (tokens: IToken[]): number => tokens.reduce((n, t) =>
  n + (t.tokenType === T.LBrace || (t.tokenType === T.OpenText && t.image.trimEnd().endsWith('{')) ? 1 : t.tokenType === T.RBrace ? -1 : 0), 0);
