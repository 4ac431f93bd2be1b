/**
 * The tokens of a line. Whitespace parts tokens and has no other meaning.
 *
 * A unit is only a unit directly behind a number, `?` or a closing bracket; elsewhere the same letters are a name. So
 * the unit's pattern looks at the token before it. Clause words are the only reserved words.
 */
import { createToken, Lexer, type IToken, type TokenType as ChevType } from 'chevrotain';

export const CLAUSE_WORDS = ['at', 'on', 'beyond', 'by', 'facing', 'heading', 'tilted', 'turning', 'from', 'to', 'for'] as const;
/** Words that cannot be names. */
export const RESERVED: ReadonlySet<string> = new Set<string>([...CLAUSE_WORDS, 'std', 'x']);

// `x.5` is a size behind `x`, not a name.
const NAME = /x(?=\.\p{N})|\p{L}[\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*(?:\.[\p{L}\p{N}][\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*)*/uy;
const UNIT = /[\p{L}µ°%′″][\p{L}\p{N}µ°%²³¹⁰⁴⁻]*(?:\^-?\d+)?(?:[/·*][\p{L}µ°%][\p{L}\p{N}µ°%²³¹⁰⁴⁻]*(?:\^-?\d+)?)*/uy;

const BY = /x(?![\p{L}_])|×(?!÷)/uy;

function sticky(re: RegExp, text: string, offset: number): RegExpExecArray | null {
  re.lastIndex = offset;
  return re.exec(text);
}

const token = (name: string, pattern: RegExp | string, more: object = {}): ChevType => createToken({ name, pattern, ...more });

/** Typeset text brings thin and unbroken blanks along. */
export const Blank = createToken({ name: 'Blank', pattern: /[ \t\v\f\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000\ufeff]+/, group: Lexer.SKIPPED, line_breaks: false });
export const Doc = token('Doc', /\/\/\/[^\n]*/);
export const Comment = token('Comment', /\/\/[^\n]*/);
export const DateToken = token('Date', /\d{4}-\d{2}-\d{2}(?:T\d{2}:\d{2})?(?![\d-])/);
const DEC = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
export const Ratio = token('Ratio', new RegExp(`${DEC}:${DEC}(?![\\d.:])`));
export const NumberToken = token('Number', new RegExp(`${DEC}(?:[eE][+-]?\\d+)?`));
export const Arrow = token('Arrow', /->|→/);
export const Tolerance = token('Tolerance', /±|\+\/-|×÷|\*\//);
export const Compare = token('Compare', /<=|>=|≤|≥|<|>/);
export const Equals = token('Equals', '=');
export const Colon = token('Colon', ':');
export const Comma = token('Comma', ',');
export const LParen = token('LParen', '(');
export const RParen = token('RParen', ')');
export const LBrace = token('LBrace', '{');
export const RBrace = token('RBrace', '}');
export const Plus = token('Plus', '+');
export const Minus = token('Minus', /[-−]/);
export const Star = token('Star', '*');
export const Slash = token('Slash', '/');
export const Unknown = token('Unknown', '?');

export const Name = createToken({
  name: 'Name', line_breaks: false,
  pattern: { exec: (text: string, offset: number) => sticky(NAME, text, offset) },
});
/** Reserved words are cut out of names by hand: a keyword pattern of its own would also match the start of a longer name. */
const reserved = (name: string, test: (word: string, after: string) => boolean): ChevType => createToken({
  name, line_breaks: false,
  pattern: { exec: (text: string, offset: number) => { const m = sticky(NAME, text, offset); return m && test(m[0], text.slice(offset + m[0].length)) ? m : null; } },
});
const clauseWords: ReadonlySet<string> = new Set(CLAUSE_WORDS);
/** Before a colon it ends a phrase, as in `lit at: 30°`: no clause is followed by one without a value. */
export const ClauseWord = reserved('ClauseWord', (w, after) => clauseWords.has(w) && !/^[ \t]*:/.test(after));
export const Std = reserved('Std', w => w === 'std');
/** `x` between sizes, also without blanks as in `40x60`; where no size stands before it, `x60` is a name. */
export const By = createToken({
  name: 'By', line_breaks: false,
  pattern: {
    exec: (text: string, offset: number, before: IToken[]) => {
      const by = sticky(BY, text, offset);
      if (by?.[0] !== 'x' || takesUnit(before) || before[before.length - 1]?.tokenType === Unit) return by;
      return sticky(NAME, text, offset)![0] === 'x' ? by : null;
    },
  },
});
/** `48"`: a sign of inches directly behind a number is a unit, which is not known, and opens no text. */
const inches = (offset: number, before: IToken[]): boolean => {
  const last = before[before.length - 1];
  return last?.tokenType === NumberToken && last.startOffset + last.image.length === offset;
};
const quoted = (name: string, pattern: RegExp): ChevType => createToken({
  name, line_breaks: false, pattern: { exec: (text: string, offset: number, before: IToken[]) => (text[offset] !== '"' || inches(offset, before) ? null : sticky(pattern, text, offset)) },
});
export const Text = quoted('Text', /"(?:[^"\\]|\\.)*"/y);
export const OpenText = quoted('OpenText', /"(?:[^"\\]|\\.)*/y);
export const Unit = createToken({
  name: 'Unit', line_breaks: false,
  pattern: {
    exec: (text: string, offset: number, before: IToken[]) => {
      if (!takesUnit(before) || sticky(/x\d/y, text, offset)) return null;
      const m = sticky(text[offset] === '"' && inches(offset, before) ? /"/y : UNIT, text, offset);
      return m && !RESERVED.has(m[0]) ? m : null;
    },
  },
});

function takesUnit(before: IToken[]): boolean {
  const last = before[before.length - 1]?.tokenType;
  return last === NumberToken || last === RParen || last === Unknown;
}

/** In the order in which they are tried. `By` before all names: else each `x` of `1x1x1x…` is looked at as a name to the end of the line. */
export const ALL = [
  Blank, Doc, Comment, Text, OpenText, Arrow, Tolerance, Compare, DateToken, Ratio, Unit, NumberToken, By, ClauseWord, Std, Name,
  Equals, Colon, Comma, LParen, RParen, LBrace, RBrace, Plus, Minus, Star, Slash, Unknown,
];

// A name may begin with any letter of any alphabet, so that no first character tells the pattern: what would look for it is left out (`safeMode`).
export const LEXER_OPTIONS = { positionTracking: 'onlyOffset', ensureOptimizations: false, safeMode: true } as const;
export const lexer = new Lexer(ALL, { ...LEXER_OPTIONS, skipValidations: true });
