import type { Item } from '../messages.ts';

/** A thing by its name, a leg by its words. */
export const nameOf = ({ id, words, x }: Item): string => (x === undefined ? words : id);
