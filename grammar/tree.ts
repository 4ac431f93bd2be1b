/**
 * The typed tree of one line, and of a document made of lines.
 *
 * A line's tree is position-free: its offsets count from the start of the line, so that the tree of an unchanged line is
 * kept by its text, and equal lines share one tree. Where a line stands is known only to the {@link Node} that holds it.
 */

/** A range inside one line, in UTF-16 units from the start of the line; `end` is exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface Word extends Span {
  readonly text: string;
}

/** One number with the unit that stands behind it. `value` is as written, not yet in SI. */
export interface NumberExpr extends Span {
  readonly kind: 'number';
  readonly value: number;
  readonly unit: Word | undefined;
}
export interface UnknownExpr extends Span {
  readonly kind: 'unknown';
  readonly unit: Word | undefined;
}
export interface RatioExpr extends Span {
  readonly kind: 'ratio';
  readonly left: number;
  readonly right: number;
}
export interface DateExpr extends Span {
  readonly kind: 'date';
  readonly text: string;
}
export interface StringExpr extends Span {
  readonly kind: 'string';
  readonly value: string;
}
/** Adjacent names: `focal length`, `toward the object`, `P1.reference.length`. */
export interface PhraseExpr extends Span {
  readonly kind: 'phrase';
  readonly words: readonly Word[];
}
export interface CallExpr extends Span {
  readonly kind: 'call';
  readonly name: Word;
  readonly args: readonly Expr[];
  readonly unit: Word | undefined;
}
/** `(60, 100) mm` has two items; `(3 + 4) mm` has one. */
export interface GroupExpr extends Span {
  readonly kind: 'group';
  readonly items: readonly Expr[];
  readonly unit: Word | undefined;
}
export interface UnaryExpr extends Span {
  readonly kind: 'unary';
  readonly op: '-' | '+';
  readonly arg: Expr;
}
export interface BinaryExpr extends Span {
  readonly kind: 'binary';
  readonly op: '+' | '-' | '*' | '/';
  readonly left: Expr;
  readonly right: Expr;
  /** where the operator stands: an error of units is reported here */
  readonly at: Span;
}
/** `40 x 60 x 35 mm` */
export interface SizesExpr extends Span {
  readonly kind: 'sizes';
  readonly parts: readonly Expr[];
}
export interface ToleranceExpr extends Span {
  readonly kind: 'tolerance';
  readonly value: Expr;
  readonly op: '±' | '×÷';
  readonly by: Expr;
  readonly std: boolean;
}
/** `M1 -> P1` */
export interface PathExpr extends Span {
  readonly kind: 'path';
  readonly items: readonly Expr[];
}
/** More than one primary side by side: `measured S1`, `"Whelk"` behind a phrase, `7` behind `shot`. */
export interface RowExpr extends Span {
  readonly kind: 'row';
  readonly items: readonly Expr[];
}
export interface ListExpr extends Span {
  readonly kind: 'list';
  readonly items: readonly Expr[];
}

export type Expr =
  | NumberExpr | UnknownExpr | RatioExpr | DateExpr | StringExpr | PhraseExpr | CallExpr | GroupExpr
  | UnaryExpr | BinaryExpr | SizesExpr | ToleranceExpr | PathExpr | RowExpr | ListExpr;

export interface Clause extends Span {
  readonly word: Word;
  readonly value?: Expr;
}

/** What stands on a line. `close` is a lone `}`. */
export type LineKind = 'blank' | 'comment' | 'doc' | 'close' | 'leg' | 'statement' | 'unreadable';

/** Why a line, or the end of it, could not be read. */
export interface SyntaxIssue extends Span {
  readonly code: 'unexpected-text' | 'value-expected' | 'unreadable-character' | 'unclosed-bracket' | 'unclosed-text'
    | 'number-too-large' | 'brace-on-own-line' | 'decimal-comma' | 'nesting-too-deep' | 'line-too-long';
  readonly found: string;
  /** what would have been understood here, in words */
  readonly wanted?: string;
}

export interface TokenSpan extends Span {
  readonly type: TokenType;
}
export type TokenType =
  | 'word' | 'clause' | 'number' | 'unit' | 'ratio' | 'date' | 'string' | 'comment' | 'doc'
  | 'arrow' | 'colon' | 'comma' | 'open' | 'close' | 'lparen' | 'rparen' | 'equals' | 'compare'
  | 'plus' | 'minus' | 'star' | 'slash' | 'by' | 'tolerance' | 'unknown' | 'bad';

/** The tree of one line. A line with an `issue` keeps all that was understood before it. */
export interface LineTree {
  readonly kind: LineKind;
  readonly text: string;
  readonly tokens: readonly TokenSpan[];
  /** the first word of a statement */
  readonly head: Word | undefined;
  /** what follows the first word, or the target of a leg */
  readonly subject: Expr | undefined;
  readonly clauses: readonly Clause[];
  readonly equals: Expr | undefined;
  readonly compare: ({ readonly op: '<' | '<=' | '>' | '>='; readonly value?: Expr } & Span) | undefined;
  readonly colon: number | undefined;
  readonly value: Expr | undefined;
  /** the line ends in `{` */
  readonly opens: boolean;
  readonly comment: Span | undefined;
  readonly issue: SyntaxIssue | undefined;
  /** What a later stage has made of this line's text alone. Kept here, since it holds just as long as the line does. */
  memo: { readonly of: unknown; readonly made: unknown } | undefined;
  /** How the formatter writes it, without its indent, once that was asked: it follows from the text alone as well. */
  formatted: string | undefined;
}

/** A statement with what its block and its legs hold. One whose lines an edit has not touched is kept, and moves to where they stand now. */
export interface Node {
  readonly line: LineTree;
  /** zero-based line number, of the text that was nested last */
  readonly at: number;
  readonly parent: Node | undefined;
  /** notes written above it with `///` */
  readonly doc: string | undefined;
  /** facts and statements of its block, in order */
  readonly children: readonly Node[];
  /** legs below it, for a beam */
  readonly legs: readonly Node[];
  /** line number of the closing brace; the last line it reaches when the brace is missing */
  readonly end: number;
  /** What a later stage has made of it. Kept here, since it may hold as long as the node does. */
  memo: unknown;
}

/** Braces that do not pair, and legs without a beam. */
export interface NestingIssue {
  readonly code: 'brace-not-closed' | 'brace-not-opened' | 'leg-without-beam' | 'nested-too-deep' | 'file-too-large';
  readonly at: number;
}

export interface Tree {
  readonly lines: readonly LineTree[];
  readonly nodes: readonly Node[];
  readonly issues: readonly NestingIssue[];
}
