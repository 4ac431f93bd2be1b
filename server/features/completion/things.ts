/** Declarations: the words of kinds, each with a name, and whole blocks with the facts that one mostly writes. */
import { factIndex, factsOf, KINDS } from '../../model/things/index.ts';
import type { Kind } from '../../model/things/kind.ts';
import type { Cursor } from './cursor.ts';
import { block, shown, template, type Offer, type Piece } from './item.ts';
import { freeName, takenNames } from './names.ts';
import { valuePieces } from './values.ts';

/** All kinds: those of which there is none here yet need no number behind their name. */
export function kindOffers(c: Cursor): Offer[] {
  const taken = takenNames(c);
  return KINDS.flatMap(kind => {
    const opening = openingOf(kind, c, taken);
    if (!opening) return [];
    const head = { detail: kind.doc.split(/(?<=\.) /)[0]!.replaceAll('`', ''), about: { of: 'kind', word: kind.word } } as const;
    // Where the line goes on, its name stands there.
    if (c.rest !== '') return [{ ...head, label: kind.word, kind: 'kind', text: kind.word }];
    const plain: Offer = { ...head, label: kind.word, kind: 'kind', text: opening.length > 1 ? `${kind.word} ` : kind.word, snippet: template(opening).snippet };
    const whole = blockOffer(kind, opening, c);
    // `exposure: 20 s` is a fact of any setup, and what is meant by the word alone.
    return whole ? [...(kind.word === 'exposure' ? [] : [plain]), whole] : [plain];
  });
}

/** `mirror M4`; undefined where there can be no second. */
function openingOf(kind: Kind, c: Cursor, taken: ReadonlySet<string>): Piece[] | undefined {
  const name = nextName(kind, c, taken);
  return name === '' ? [kind.word] : [`${kind.word} `, { stop: name }];
}

export const nextName = (kind: Kind, c: Cursor, taken: ReadonlySet<string> = takenNames(c)): string => freeName(kind, taken, c.things.filter(t => t.kind === kind).map(t => t.id));

/** A kind with a block of the facts that one is mostly written with. */
function blockOffer(kind: Kind, opening: readonly Piece[], c: Cursor): Offer | undefined {
  const known = factIndex(factsOf(kind));
  const facts = (kind.usual ?? []).flatMap(p => known.get(p) ?? []);
  if (facts.length === 0) return undefined;
  const names = (of: string): string[] => c.things.filter(t => t.kind.word === of).map(t => t.id);
  const lines = facts.filter(f => f.type.type !== 'name' || names(f.type.of).length > 0).map((f): Piece[] => [`${f.phrase}: `, ...valuePieces(f, f.type.type === 'name' ? names(f.type.of) : [])]);
  const { text, snippet } = template(block(opening, lines));
  return { label: `${kind.word} { … }`, kind: 'block', detail: `${kind.article} with ${facts.slice(0, 3).map(f => f.phrase).join(', ')}${facts.length > 3 ? ' …' : ''}`, text, snippet, words: `${kind.doc}\n\n${shown(text)}` };
}
