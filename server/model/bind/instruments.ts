/** What a reading was taken with: `by thread`, `by lab.meter-1`, `by tape`. */
import type { Clause, Node, Word } from '../../../grammar/tree.ts';
import type { Instrument, Measured, Thing } from '../model.ts';
import { nearest, type Scope } from '../scope.ts';

/** Plain words for an instrument that is not declared: nothing is known of its error. */
export const PLAIN: Readonly<Record<string, 'string' | 'meter'>> = { string: 'string', tape: 'string', ruler: 'string', meter: 'meter' };

/** Kind of instrument that a reading is taken with; undefined where it takes none, or any. */
export const WANTED: Readonly<Record<Measured['kind'], 'string' | 'meter' | undefined>> = {
  legs: 'string', arm: 'string', difference: 'string', image: 'string', light: 'meter', dark: 'meter', wheel: undefined, drift: undefined,
};
const ARTICLE = { string: 'a string, a tape or a ruler', meter: 'a light meter' } as const;

export function bindInstrument(clause: Clause, node: Node, measured: Measured | undefined, words: string, scope: Scope, missed: Set<string>): Instrument | undefined {
  const { value } = clause;
  if (!value) return undefined;
  const { sink, setup } = scope;
  const word = value.kind === 'phrase' ? value.words[0] : undefined;
  if (!word || (value.kind === 'phrase' && value.words.length > 1)) {
    const found = node.line.text.slice(value.start, value.end);
    if (!node.line.issue) sink.report('wrong-value', sink.place(node, value), words, { found: `“${found}”`, wanted: 'the name of an instrument, in one word' }, setup);
    return undefined;
  }
  const thing = scope.find(word.text) ?? itemCalled(word.text, scope);
  const plain = thing ? undefined : Object.hasOwn(PLAIN, word.text) ? PLAIN[word.text] : undefined;
  if (!thing && !plain) { unknown(word, node, measured, scope, missed); return undefined; }
  // An item of an inventory that the setup has given a name is that thing.
  const meant = thing && ([...scope.things.values()].filter(t => t.item === thing).length === 1 ? [...scope.things.values()].find(t => t.item === thing)! : thing);
  if (meant) {
    meant.used = thing.used = true;
    sink.refer(node, word, thing);
  }
  const wanted = measured && WANTED[measured.kind];
  const is = plain ?? meant!.kind.word;
  if (is !== 'string' && is !== 'meter' || (wanted && is !== wanted)) {
    sink.report('instrument-unfit', sink.place(node, word), words, { instrument: word.text, is: plain ? `a ${word.text}` : meant!.kind.article, wanted: ARTICLE[wanted ?? 'string'], measured: words }, setup);
    return undefined;
  }
  return { name: meant?.id ?? word.text, thing: meant, at: sink.place(node, word) };
}

/** The only item of that name in all inventories. */
function itemCalled(name: string, scope: Scope): Thing | undefined {
  const found = scope.inventories.called(name);
  return found.length === 1 ? found[0] : undefined;
}

/** One slip is one finding, however often the name is used. */
function unknown(word: Word, node: Node, measured: Measured | undefined, scope: Scope, missed: Set<string>): void {
  const { sink, setup, inventories } = scope;
  const wanted = (measured && WANTED[measured.kind]) ?? 'string';
  // Where an inventory could not be read, the instrument may well be one of its items.
  if (sink.incomplete && !scope.find(word.text)) return;
  const fits = (t: Thing): boolean => t.kind.word === 'string' || t.kind.word === 'meter';
  const full = [...inventories.values()].filter(i => i.things.has(word.text)).map(i => `${i.name}.${word.text}`);
  const own = [...scope.things.values()].filter(fits).map(t => t.id);
  const items = [...inventories.values()].flatMap(i => [...i.things.values()].filter(fits).flatMap(t => [t.id, `${i.name}.${t.id}`]));
  const suggestion = full[0] ?? nearest(word.text, [...own, ...items, ...Object.keys(PLAIN)]);
  if (scope.nameless || node.line.issue?.start === word.end || missed.has(word.text)) return;
  missed.add(word.text);
  sink.report('unknown-name', sink.place(node, word), word.text, { name: word.text, wanted: full.length > 1 ? `one of ${full.join(', ')}` : `the name of ${ARTICLE[wanted]}`, ...(suggestion ? { suggestion } : {}) }, setup);
}
