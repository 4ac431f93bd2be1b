import { Lexer } from 'chevrotain';
import { expect, test } from 'vitest';
import { LineParser } from '../../grammar/parse-line.ts';
import { ALL, LEXER_OPTIONS } from '../../grammar/tokens.ts';

// At a start the library's own checks of tokens and grammar (unreachable tokens, ambiguous or left-recursive rules) are skipped; here they run.
test('the library finds nothing wrong with the tokens', () => {
  expect(new Lexer(ALL, { ...LEXER_OPTIONS, deferDefinitionErrorsHandling: true }).lexerDefinitionErrors).toEqual([]);
});
test('the library finds nothing wrong with the grammar', () => {
  expect(() => new LineParser(true)).not.toThrow();
});
