/** Every fact of the vocabulary can be written: no name of a fact collides with a word of the language. */
import { describe, expect, it } from 'vitest';
import { KINDS, SETUP_FACTS, factsOf } from '../../server/model/things/index.ts';
import type { Fact } from '../../server/model/things/kind.ts';
import { unitsFor } from '../../server/model/units.ts';
import { look, MASTER, serious } from './library.ts';

describe('all facts can be written', () => {
  it.each(KINDS.map(k => [k.word, k] as const))('%s', (word, kind) => {
    const others = factsOf(kind).flatMap(f => (f.type.type === 'name' ? [`  ${f.type.of} ${f.type.of}-1\n`] : []));
    const variant = word === 'exposure' ? '  variant "green" {\n    beam height: 120 mm\n  }\n  exposure second\n' : '';
    const text = `setup "Whelk shell" {\n${others.join('')}${variant}  ${word} M1 {\n${factsOf(kind).map(lineOf).join('')}  }\n}\n`;
    expect(look(text, MASTER).findings.filter(serious).map(f => f.message)).toEqual([]);
  });
  it('a setup', () => {
    expect(look(`setup "Whelk shell" {\n${SETUP_FACTS.map(lineOf).join('')}}\n`).findings.filter(serious).map(f => f.message)).toEqual([]);
  });
});

/** The fact with a value as it is usually written, or as its type takes it. */
const lineOf = (fact: Fact): string => `    ${fact.phrase}${fact.numbered ? ' 4.5' : ''}: ${fact.usual?.[0] ?? valueOf(fact)}\n`;
function valueOf({ type }: Fact): string {
  switch (type.type) {
    case 'quantity': {
      const unit = unitsFor(type.dim)[0]!;
      if (unit === '%') return '50%';
      return type.within ? type.within.words.replace(/ to .*/, '') : `1 ${unit}`;
    }
    case 'count': return '3';
    case 'choice': return type.words[0]!;
    case 'sizes': return `${Array.from({ length: type.numbers[0]! }, () => '40').join(' x ')} mm`;
    case 'ratio': return '4:1';
    case 'points': return '(1, 2, 3) mm';
    case 'text': return '"as it was"';
    case 'date': return '2026-02-11';
    case 'name': return `${type.of}-1`;
  }
}
