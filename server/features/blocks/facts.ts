/** What is written of things, as a card says it. */
import type { Setup, Thing } from '../../model/model.ts';
import { factText } from '../../model/overrides.ts';

/** A fact as it is written, without the quotes of a text; undefined where it is left open or not written. */
export function fact(thing: Pick<Thing, 'facts'> | Setup, phrase: string): string | undefined {
  const bound = thing.facts.get(phrase);
  if (!bound || bound.value.kind === 'unknown') return undefined;
  const text = bound.value.kind === 'words' ? bound.value.text : factText(bound);
  return text === '' || text === 'unknown' ? undefined : text;
}

export const things = (setup: Setup, ...kinds: readonly string[]): Thing[] => [...setup.things.values()].filter(t => kinds.includes(t.kind.word));

/** `M1`, `M1 and M2`, `M1, M2 and M3` */
export const listed = (names: readonly string[]): string => names.join(', ').replace(/, (?=[^,]*$)/, ' and ');

/** The first letter as a sentence has it. */
export const sentence = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
