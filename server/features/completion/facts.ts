/** Lines of facts: the phrases that are not written yet, each with its value. */
import { factKey, factOn } from '../../model/bind/facts.ts';
import type { Node } from '../../../grammar/tree.ts';
import { factIndex, kindNamed } from '../../model/things/index.ts';
import type { Fact } from '../../model/things/kind.ts';
import { typeWords } from '../../model/things/words.ts';
import type { Cursor } from './cursor.ts';
import { template, type Offer } from './item.ts';
import { valuePieces } from './values.ts';

/** The facts of a block that are not written yet, those that are mostly written first. `before`: what stands before each phrase, as `S1.` in a variant. */
export function factOffers(c: Cursor, facts: readonly Fact[], owner: string, node: Node | undefined, before = ''): Offer[] {
  const written = new Set(node ? writtenIn(node, facts, c.line).keys() : []);
  const { usual = [] } = kindNamed(owner) ?? {};
  const rank = (f: Fact): number => { const i = usual.indexOf(f.phrase); return i < 0 ? usual.length : i; };
  return facts.filter(f => f.numbered === true || !written.has(f.phrase)).sort((a, b) => rank(a) - rank(b)).map(f => factOffer(c, f, owner, before));
}

function factOffer(c: Cursor, fact: Fact, owner: string, before: string): Offer {
  const phrase = before + fact.phrase;
  const { type } = fact;
  const names = type.type === 'name' ? c.things.filter(t => t.kind.word === type.of).map(t => t.id) : [];
  const head = { label: phrase, kind: 'fact', detail: typeWords(type), about: { of: 'fact', owner, phrase: fact.phrase } } as const;
  // Where the line goes on, it has its value.
  if (c.rest !== '') return { ...head, text: phrase, ...toColon(c) };
  const { snippet } = template([phrase, ...(fact.numbered ? [' ', { stop: '4.5' }] : []), ': ', ...valuePieces(fact, names)]);
  return { ...head, text: fact.numbered ? `${phrase} ` : `${phrase}: `, snippet };
}

/** A phrase with its colon is replaced as a whole. */
function toColon(c: Cursor): { to?: number } {
  const on = /^[ \t\p{L}\p{N}_-]*(?=:)/u.exec(c.text.slice(c.end))?.[0];
  return on === undefined ? {} : { to: c.end + on.trimEnd().length };
}

/** The lines of a block by their facts, but for the one with the cursor. */
export function writtenIn(node: Node, facts: readonly Fact[], but: number): Map<string, Node> {
  const index = factIndex(facts);
  return new Map(node.children.filter(n => n.at !== but && n.line.head).flatMap((n): [string, Node][] => { const f = factOn(n.line, index); return f ? [[factKey(f), n]] : []; }));
}
