/** Random sentences of the grammar in grammar/language.md, rule by rule, as lists of pieces with blanks between them. */
import fc, { type Arbitrary } from 'fast-check';

type Pieces = Arbitrary<string[]>;

const one = (...texts: string[]): Pieces => fc.constantFrom(...texts).map(text => [text]);
const seq = (...parts: Pieces[]): Pieces => fc.tuple(...parts).map(p => p.flat());
// Mostly nothing, so that sentences stay as short as people write them.
const maybe = (part: Pieces): Pieces => fc.oneof({ weight: 3, arbitrary: fc.constant<string[]>([]) }, { weight: 1, arbitrary: part });
const many = (part: Pieces): Pieces => maybe(fc.oneof({ weight: 3, arbitrary: part }, { weight: 1, arbitrary: seq(part, part) }));
const parted = (part: Pieces, by: Pieces): Pieces => seq(part, many(seq(by, part)));

const word = one('M1', 'whelk', 'focal', 'red-12', 'lab.fine-grain', 'P1.reference.length', 'x1', 'x-ray', 'größe', 'at-1', 'e5', 'standard', 'mm');
const unit = one('mm', 'µW/cm²', '°', '%', '°C', 'lines/mm', 'points', 'mm^-1', '′');
const number = seq(one('12', '0.5', '.5', '1.5e-3', '750', '2E3'), maybe(unit));
const text = one('"Whelk shell"', '""', String.raw`"a \" { // b"`, '"🐚"');
const phrase = seq(word, many(word));
const ratio = one('4:1', '2.5:1');
const date = one('2026-02-11', '2026-02-11T18:30');
const clauseWord = one('at', 'on', 'beyond', 'by', 'facing', 'heading', 'tilted', 'turning', 'from', 'to', 'for');

function primary(depth: number): Pieces {
  const flat = [number, seq(one('?'), maybe(unit)), ratio, date, text, phrase];
  if (depth === 0) return fc.oneof(...flat);
  const inner = fc.oneof({ weight: 1, arbitrary: fc.constant<string[]>([]) }, { weight: 5, arbitrary: list(depth - 1) });
  return fc.oneof(...flat, seq(one('sin(', 'max('), inner, one(')'), maybe(unit)), seq(one('('), inner, one(')'), maybe(unit)));
}
const operand = (depth: number): Pieces => seq(many(one('-', '+', '−')), primary(depth));
const product = (depth: number): Pieces => parted(operand(depth), one('*', '/'));
const sum = (depth: number): Pieces => parted(product(depth), one('+', '-'));
const sizes = (depth: number): Pieces => parted(sum(depth), one('x', '×'));
function value(depth: number): Pieces {
  return seq(sizes(depth), maybe(seq(one('±', '+/-', '×÷', '*/'), operand(depth), maybe(one('std')))));
}
function list(depth: number): Pieces {
  return parted(value(depth), one(','));
}
/** Letters behind a number or a closing bracket are a unit, so the words of a row come first. */
const row = fc.oneof(phrase, seq(maybe(phrase), many(fc.oneof(number, ratio, date, text)), one('"end"')), seq(phrase, one('sqrt('), value(0), one(')')));
const subject = parted(row, one('->', '→', '-', '+'));
const clauses = many(seq(clauseWord, parted(value(0), one('->'))));
const fact = seq(one(':'), list(1), clauses);

export const statement = seq(
  word, maybe(subject), clauses, maybe(seq(one('='), value(1), clauses)), maybe(seq(one('<', '<=', '>', '>=', '≤', '≥'), value(1))), maybe(fact), maybe(one('{')),
);
export const leg = seq(one('->', '→'), row, clauses, maybe(fact));
/** A whole sentence with single blanks between its pieces. */
export const sentence = fc.oneof(statement, leg).map(pieces => pieces.join(' '));

/** The same pieces with other blanks between them, or none: often another sentence, or none at all. */
export const loose = fc.oneof(statement, leg).chain(pieces => fc.array(fc.constantFrom(' ', ' ', '  ', '\t', '\u00a0', ''), { minLength: pieces.length, maxLength: pieces.length }).map(blanks => pieces.map((p, i) => p + blanks[i]!).join('')));

const soupPiece = fc.constantFrom(
  '(', ')', '{', '}', ',', ':', '=', '<', '≥', '->', '→', '-', '−', '+', '±', '+/-', '×÷', '*/', '*', '/', '//', '///', '?', '"', '\\', 'x', '×', 'std', 'at', 'from', 'M1', 'beam', 'a.b', 'a-', '12', '1e999', '4:1',
  '2026-02-11', '632,8', '.', ';', '@', '°', '%', 'mm', 'µW/cm²', '^', '🐚', '\ud83d', '\ufeff', '\u00a0', '\u2028', '\v', ' ', '  ', '\t',
);
/** Any pieces in any order. */
export const soup = fc.array(soupPiece, { maxLength: 12 }).map(p => p.join(''));

const comment = fc.constantFrom('// by way of the post', '//', '/// a note { "', '////  ', '// 🐚 \t');
const line = fc.tuple(
  fc.constantFrom('', '  ', '    ', '\t', '   \t'),
  fc.oneof({ weight: 6, arbitrary: sentence }, { weight: 4, arbitrary: loose }, { weight: 4, arbitrary: fc.constantFrom('}', '} // end', 'setup "a" {', 'beam raw from red', '-> M1', '}}', '{') }, { weight: 2, arbitrary: soup }, fc.constant('')),
  fc.oneof({ weight: 3, arbitrary: fc.constant('') }, comment),
  fc.constantFrom('', '', ' ', '\t '),
).map(p => p.join(''));

/** A text of such lines, with line ends of one kind or mixed. */
export const page = fc.tuple(fc.array(line, { maxLength: 14 }), fc.constantFrom(['\n'], ['\r\n'], ['\r'], ['\n', '\r\n', '\r']), fc.boolean()).map(
  ([lines, ends, last]) => lines.map((l, i) => l + (i < lines.length - 1 || last ? ends[i % ends.length]! : '')).join(''),
);
