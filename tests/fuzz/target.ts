/** What is tried with many inputs. An input is a text, so that it can be kept as a file, cut down, and changed. */
import type { Arbitrary } from 'fast-check';

export interface Target {
  readonly name: string;
  /** of a thousand inputs that are tried in all, how many are its own */
  readonly share: number;
  /** how many are tried with the other tests */
  readonly few: number;
  readonly inputs: Arbitrary<string>;
  /** words that inputs are likely to be made of */
  readonly words: readonly string[];
  /** Throws where something does not hold. */
  readonly run: (input: string) => void | Promise<void>;
}

/** The first of these that are wrong, or nothing. */
export function none(what: string, wrong: readonly unknown[]): void {
  if (wrong.length > 0) throw new Error(`${what}: ${wrong.slice(0, 3).map(w => (typeof w === 'string' ? w : JSON.stringify(w))).join('; ')}`);
}

export function same(what: string, found: unknown, wanted: unknown): void {
  const [a, b] = [JSON.stringify(found), JSON.stringify(wanted)];
  if (a === b) return;
  const at = [...Array(Math.min(a.length, b.length)).keys()].find(i => a[i] !== b[i]) ?? Math.min(a.length, b.length);
  throw new Error(`${what}: found …${a.slice(Math.max(0, at - 40), at + 80)}…, wanted …${b.slice(Math.max(0, at - 40), at + 80)}…`);
}

/** A number that is the same for the same text: for choices that must not change while an input is looked at again. */
export function hash(text: string): number {
  // FNV-1a, by G. Fowler, L. C. Noll and K.-P. Vo
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h >>> 0;
}

const BROKEN = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object \w+\]/;
/** Texts that show what no text should; where the input has such words itself, nothing can be said. */
export const unfit = (input: string, shown: readonly string[]): string[] => (BROKEN.test(input) ? [] : shown.filter(t => BROKEN.test(t)).map(t => t.slice(Math.max(0, t.search(BROKEN) - 60), t.search(BROKEN) + 40)));
