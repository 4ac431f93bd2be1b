/** The colours of the text: marked samples, and the same tokens as the language itself on random lines. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { createRegistry } from 'vscode-tmgrammar-test/dist/common/index.js';
import { parseGrammarTestCase, runGrammarTestCase } from 'vscode-tmgrammar-test/dist/unit/index.js';
import { parseLine } from '../../grammar/parse-line.ts';
import type { TokenType } from '../../grammar/tree.ts';
import { KINDS } from '../../server/model/things/index.ts';
import { sample, SAMPLES } from './check.ts';
import { loose, sentence } from './sentences.ts';

vi.setConfig({ testTimeout: 60_000 });

const path = (name: string): string => decodeURIComponent(new URL(name, import.meta.url).pathname);
const registry = createRegistry([{ path: path('../../grammar/plate.tmLanguage.json'), scopeName: 'source.plate', language: 'plate' }]);
const loaded = registry.loadGrammar('source.plate');

describe('marked samples', () => {
  test.each(readdirSync(path('highlight')))('%s', async name => {
    const sampled = parseGrammarTestCase(readFileSync(path(`highlight/${name}`), 'utf8'));
    expect(sampled.assertions.length).toBeGreaterThan(5);
    const failures = await runGrammarTestCase(registry, sampled);
    expect(failures.map(f => `line ${f.line + 1}, ${f.start}-${f.end}: missing ${f.missing.join(' ')}, unexpected ${f.unexpected.join(' ')}, is ${f.actual.join(' ')}`)).toEqual([]);
  });
});

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
  bad: [''],
};

/** Tokens of the language that are coloured as something else. */
async function miscoloured(text: string): Promise<string[]> {
  const grammar = (await loaded)!;
  const coloured = grammar.tokenizeLine(text, null).tokens;
  return parseLine(text).tokens.flatMap(token => {
    const over = coloured.filter(c => c.startIndex < token.end && c.endIndex > token.start);
    const right = over.every(c => SCOPES[token.type].some(scope => c.scopes.some(s => s.startsWith(scope))));
    return right ? [] : [`${token.type} ${text.slice(token.start, token.end)} as ${over.map(c => c.scopes.slice(1).join(' ')).join(' | ')}`];
  });
}

describe('the tokens of the language', () => {
  test.each(SAMPLES)('in %s', async name => {
    for (const line of sample(name).split('\n')) expect(await miscoloured(line), line).toEqual([]);
  });
  test('in random sentences, with any blanks between', async () => {
    await fc.assert(fc.asyncProperty(fc.oneof(sentence, loose), async text => {
      if (!parseLine(text).issue) expect(await miscoloured(text)).toEqual([]);
    }), { numRuns: 1000 });
  });
});

test.each(KINDS.map(k => k.word))('the kind “%s” and its name', async kind => {
  const grammar = (await loaded)!;
  for (const behind of ['', ' {', ' at (3, 4) mm', ' = lab.n', ' // old']) {
    const scopes = (text: string): string[] => grammar.tokenizeLine(text + behind, null).tokens.slice(0, 3).map(t => t.scopes.at(-1)!);
    expect(scopes(`${kind} N1`)).toEqual(['entity.name.type.plate', 'source.plate', 'variable.other.definition.plate']);
    if (!kind.includes(' ')) expect(scopes(kind)[0]).toBe(behind === '' || behind === ' {' || behind === ' // old' ? 'entity.name.type.plate' : 'variable.other.plate');
  }
});
