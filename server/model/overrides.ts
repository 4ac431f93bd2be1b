/** Where a thing is written otherwise than the item of the inventory that it is. */
import { wordsOf } from './literal.ts';
import type { BoundFact, Place, Setup, Thing } from './model.ts';

/** A fact of an item, and what a thing that is this item writes in its place. */
export interface Override {
  readonly thing: Thing;
  readonly key: string;
  readonly fact: BoundFact;
  /** `lab.red-12` */
  readonly item: string;
  /** the value that the item has, as written */
  readonly instead: string;
  /** where the item has it */
  readonly at: Place;
}

/** Undefined where the thing has the fact from its item, or the item has no such fact. */
export function overrideOf(thing: Thing, key: string): Override | undefined {
  const fact = thing.facts.get(key);
  const before = thing.item?.facts.get(key);
  return fact && before && fact !== before ? { thing, key, fact, item: itemName(thing)!, instead: factText(before), at: before.at } : undefined;
}

/** All of a setup, in the order of the text. */
export const overridesOf = (setup: Setup): Override[] =>
  [...setup.things.values()].flatMap(t => (t.item ? [...t.facts.keys()].flatMap(key => overrideOf(t, key) ?? []) : []));

/** The item that a thing is, by the name under which it is known to it. */
export function itemName({ item, node }: Thing): string | undefined {
  const written = node.line.equals && wordsOf(node.line.equals);
  // A variant may have put another item in its place.
  return item && (written !== undefined && (written === item.id || written.endsWith(`.${item.id}`)) ? written : item.id);
}

/** The value of a fact as written. */
export const factText = ({ node, at }: BoundFact): string => node.line.text.slice(at.start, node.line.comment?.start).trim();
