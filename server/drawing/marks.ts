/** Pictures as trees of plain marks: what an SVG file and a panel make of them is the same. Text of a page is only ever text here, and never markup. */

/** Nothing else is ever drawn. */
export type Tag = 'g' | 'path' | 'line' | 'circle' | 'ellipse' | 'rect' | 'text' | 'title' | 'defs' | 'pattern' | 'clipPath';
export type Attributes = Readonly<Record<string, string>>;

export interface Mark {
  readonly tag: Tag;
  readonly attributes: Attributes;
  readonly children: readonly Mark[];
  readonly text?: string;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** A picture: one unit is a millimetre, y downwards. */
export interface Sheet {
  readonly title: string;
  readonly box: Box;
  readonly marks: readonly Mark[];
}

/** The same for a page on which several pictures stand: the names of its parts begin with `mark`, so that none takes those of another. */
export const amongOthers = (sheet: Sheet, mark: string): Sheet => ({ ...sheet, marks: sheet.marks.map(m => renamed(m, mark)) });
function renamed(m: Mark, mark: string): Mark {
  const attributes = Object.fromEntries(Object.entries(m.attributes).map(([k, v]) => [k, k === 'id' ? `${mark}${v}` : v.replace(/^url\(#/, `url(#${mark}`)]));
  return { ...m, attributes, children: m.children.map(c => renamed(c, mark)) };
}

export type Point = readonly [number, number];

/** The smallest box that holds points, mm. */
export function boxOf(points: readonly Point[]): Box {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { x: left, y: top, w: right - left, h: bottom - top };
}

export const mark = (tag: Tag, attributes: Readonly<Record<string, string | number>>, children: readonly Mark[] = []): Mark => ({ tag, attributes: written(attributes), children });

/** The words that a screen reader and a pointer that rests are told of what they are in. */
export const told = (words: string): Mark => ({ tag: 'title', attributes: {}, children: [], text: words });

/** @param size height of a letter, mm */
export function label(text: string, x: number, y: number, size: number, name = '', anchor: 'start' | 'middle' | 'end' = 'start'): Mark {
  return { tag: 'text', attributes: written({ ...(name ? { class: name } : {}), x, y, 'font-size': size, ...(anchor === 'start' ? {} : { 'text-anchor': anchor }) }), children: [], text };
}

export const shape = (points: readonly Point[], closed = true): string => `${points.map((p, i) => `${i === 0 ? 'M' : 'L'}${n(p[0])} ${n(p[1])}`).join('')}${closed ? 'Z' : ''}`;

/** A number with at most two decimals, and never −0. */
export const n = (v: number): string => String(Math.round(v * 100) / 100 + 0);

function written(a: Readonly<Record<string, string | number>>): Attributes {
  const texts: Record<string, string> = {};
  // A full table has thousands of marks: no list is made of what each is written with.
  for (const k in a) { const v = a[k]!; texts[k] = typeof v === 'number' ? n(v) : v; }
  return texts;
}
