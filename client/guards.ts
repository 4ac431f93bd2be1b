/** What is known of something that came from elsewhere: a message, a state that was kept. */
import type { PictureMark, PictureSheet } from '../server/lsp/protocol.ts';

export type Is<T> = (v: unknown) => v is T;
export const words: Is<string> = v => typeof v === 'string';
export const truth: Is<boolean> = v => typeof v === 'boolean';
export const number: Is<number> = (v): v is number => typeof v === 'number' && Number.isFinite(v);
export const exactly = <T extends string>(word: T): Is<T> => (v): v is T => v === word;
export const oneOf = <T extends string>(...all: readonly T[]): Is<T> => (v): v is T => all.includes(v as T);
/** A place of a list in which nothing stands counts as well; `every` would leave it out. */
export const list = <T>(is: Is<T>): Is<readonly T[]> => (v): v is readonly T[] => Array.isArray(v) && Array.from<unknown>(v).every(is);
export const maybe = <T>(is: Is<T>): Is<T | undefined> => (v): v is T | undefined => v === undefined || is(v);
export const object = (v: unknown): v is Readonly<Record<string, unknown>> => typeof v === 'object' && v !== null && !Array.isArray(v);
/** With these members at least; what else there is nobody reads. */
export const record = <T extends object>(members: { readonly [K in keyof T]-?: Is<T[K]> }): Is<T> => (v): v is T => object(v) && Object.entries<Is<unknown>>(members).every(([name, is]) => is(v[name]));

/** Deeper than that no picture is. */
const DEEPEST = 20;
function isMark(v: unknown, depth: number): v is PictureMark {
  if (!object(v) || depth >= DEEPEST || !words(v['tag']) || !object(v['attributes']) || (v['text'] !== undefined && !words(v['text'])) || !Array.isArray(v['children'])) return false;
  for (const name in v['attributes']) if (!words(v['attributes'][name])) return false;
  for (const child of v['children']) if (!isMark(child, depth + 1)) return false;
  return true;
}
const mark: Is<PictureMark> = (v): v is PictureMark => isMark(v, 0);
export const box = record<PictureSheet['box']>({ x: number, y: number, w: number, h: number });
export const sheet = record<PictureSheet>({ title: words, box, marks: list(mark) });
