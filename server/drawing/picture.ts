/** What a panel shows of a page: the picture of one of its setups, and where in the text each thing and leg of it stands. */
import type { Snapshot } from '../analysis.ts';
import type { Place } from '../model/place.ts';
import type { Results } from '../results/plan.ts';
import { variantsOf } from '../results/variants.ts';
import { drawingOf, type Drawing } from './drawing.ts';
import type { Sheet } from './marks.ts';
import { planOf } from './plan/plan.ts';

/** Which setup of a page, by name or by a line in it, and which of its variants. */
export interface Wanted {
  readonly line?: number;
  readonly setup?: string;
  readonly variant?: string;
}

/** Something in a picture that stands in the text. */
export interface Item {
  /** that of `data-item` of its marks */
  readonly id: string;
  /** for whoever does not see it: `mirror M1 at (1100, 100) mm` */
  readonly words: string;
  readonly written: Place;
}

export interface Picture {
  readonly setup: string;
  readonly variant?: string;
  /** the setups of the page with their variants, to choose from */
  readonly choices: readonly { readonly setup: string; readonly variants: readonly string[] }[];
  /** undefined where nothing of it can be drawn */
  readonly sheet?: Sheet;
  readonly items: readonly Item[];
}

/** Undefined where the page has no setup. What is asked for and is not there any more gives what it is of, else the first. */
export function pictureOf({ results }: Snapshot, wanted: Wanted = {}): Picture | undefined {
  const base = chosen(results, wanted);
  if (!base) return undefined;
  const variants = variantsOf(base);
  const variant = variants.find(v => v.variant.name === wanted.variant);
  const drawing = drawingOf(variant?.results ?? base);
  return {
    setup: base.setup.name, ...(variant ? { variant: variant.variant.name } : {}),
    choices: results.map(r => ({ setup: r.setup.name, variants: variantsOf(r).map(v => v.variant.name) })),
    ...(drawing ? { sheet: planOf(drawing) } : {}), items: drawing ? itemsOf(drawing) : [],
  };
}

/** The setup of that name, else the one that the line is in or the last above it, else the first. */
export function chosen(results: readonly Results[], { line, setup }: Wanted): Results | undefined {
  return (setup !== undefined ? results.find(r => r.setup.name === setup) : undefined) ?? (line !== undefined ? results.findLast(r => r.setup.node.at <= line) : undefined) ?? results[0];
}

function itemsOf(d: Drawing): Item[] {
  return [
    ...d.things.map(t => ({ id: t.name, words: `${t.kind} ${t.name} at (${Math.round(t.at[0] * 1000)}, ${Math.round(t.at[1] * 1000)}) mm`, written: t.written })),
    ...d.legs.map(l => ({ id: l.id, words: `leg ${l.words}${l.length === '' ? '' : `, ${l.length}`}`, written: l.written })),
  ];
}
