/** The colours of the text: marked samples, and the same tokens as the language itself on random lines. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { parseGrammarTestCase, runGrammarTestCase } from 'vscode-tmgrammar-test/dist/unit/index.js';
import { parseLine } from '../../grammar/parse-line.ts';
import { FILE_STATEMENTS, STATEMENTS } from '../../server/model/bind/bind.ts';
import { KINDS } from '../../server/model/things/index.ts';
import { EXAMPLES, PUBLISHED } from '../examples/library.ts';
import { sample, SAMPLES } from './check.ts';
import { colours, miscoloured, registry } from './coloured.ts';
import { loose, sentence } from './sentences.ts';

vi.setConfig({ testTimeout: 60_000 });

const path = (name: string): string => decodeURIComponent(new URL(name, import.meta.url).pathname);

describe('marked samples', () => {
  test.each(readdirSync(path('highlight')))('%s', async name => {
    const sampled = parseGrammarTestCase(readFileSync(path(`highlight/${name}`), 'utf8'));
    expect(sampled.assertions.length).toBeGreaterThan(5);
    const failures = await runGrammarTestCase(registry, sampled);
    expect(failures.map(f => `line ${f.line + 1}, ${f.start}-${f.end}: missing ${f.missing.join(' ')}, unexpected ${f.unexpected.join(' ')}, is ${f.actual.join(' ')}`)).toEqual([]);
  });
  test('among them is each kind of statement', () => {
    const marked = readdirSync(path('highlight')).flatMap(name => readFileSync(path(`highlight/${name}`), 'utf8').split('\n')).filter((_, at, lines) => /^\/\/ *(?:\^|<-)/.test(lines[at + 1] ?? ''));
    expect([...FILE_STATEMENTS, ...STATEMENTS].filter(word => !marked.some(line => line.trimStart().startsWith(`${word} `)))).toEqual([]);
  });
});

describe('the tokens of the language', () => {
  test.each(SAMPLES)('in %s', name => {
    for (const line of sample(name).split('\n')) expect(miscoloured(line), line).toEqual([]);
  });
  test.each([...EXAMPLES, ...PUBLISHED].map(p => [p.name, p.text]))('in each line of %s', (_, text) => {
    for (const line of text.split('\n')) {
      expect(miscoloured(line), line).toEqual([]);
      expect(colours(line).filter(c => c.scopes.length === 0 && c.text.trim() !== '').map(c => c.text), line).toEqual([]);
    }
  });
  test('in random sentences, with any blanks between', () => {
    fc.assert(fc.property(fc.oneof(sentence, loose), text => {
      if (!parseLine(text).issue) expect(miscoloured(text)).toEqual([]);
    }), { numRuns: 1000 });
  });
});

test.each(KINDS.map(k => k.word))('the kind “%s” and its name', kind => {
  for (const behind of ['', ' {', ' at (3, 4) mm', ' = lab.n', ' // old']) {
    const scopes = (text: string): string[] => colours(text + behind).slice(0, 3).map(c => c.scopes.at(-1) ?? '');
    expect(scopes(`${kind} N1`)).toEqual(['entity.name.type.plate', '', 'variable.other.definition.plate']);
    if (!kind.includes(' ')) expect(scopes(kind)[0]).toBe(behind === '' || behind === ' {' || behind === ' // old' ? 'entity.name.type.plate' : 'variable.other.plate');
  }
});
