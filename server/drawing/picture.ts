/** What a panel shows of a page: a picture of one of its setups, and where in the text each thing and leg of it stands. */
import type { Snapshot } from '../analysis.ts';
import { plain } from '../model/show.ts';
import type { Results } from '../results/plan.ts';
import { variantsOf } from '../results/variants.ts';
import { dimOf, type Dim } from './dim.ts';
import { plateOf } from './hung/view.ts';
import { handlesOf } from './drag/handles.ts';
import type { Sheet } from './marks.ts';
import type { Probe } from './probe.ts';
import type { Item, Look } from './view.ts';
import { VIEWS, viewNamed } from './views.ts';

/** Which setup of a page, by name or by a line in it, which of its variants, and which picture of it. */
export interface Wanted extends Look {
  readonly line?: number;
  readonly setup?: string;
  readonly variant?: string;
  readonly view?: string;
}

/** An item of a picture, and what of it can be dragged. */
export interface Handled extends Item {
  readonly drags: readonly ('move' | 'turn')[];
  /** why it cannot be moved, in words that go on from its name */
  readonly stays?: string;
}

export interface Picture {
  readonly setup: string;
  readonly variant?: string;
  /** the setups of the page with their variants, to choose from */
  readonly choices: readonly { readonly setup: string; readonly variants: readonly string[] }[];
  /** which view it is of, and all that there are */
  readonly view: string;
  readonly views: readonly { readonly name: string; readonly words: string; /** why it cannot be drawn */ readonly why?: string }[];
  /** of a view of one plate: which, and which there are */
  readonly plate?: string;
  readonly plates: readonly string[];
  /** undefined where the view cannot be drawn */
  readonly sheet?: Sheet;
  readonly probe?: Probe;
  readonly items: readonly Handled[];
  /** in which colour it may be shown beside open plates */
  readonly dim: Dim;
  /** how many errors the page has: looked for when somebody asks, since that takes longer than to draw, and no step of a drag tells them */
  readonly errors: () => number;
  /** what it is a picture of */
  readonly results: Results;
}

/** Undefined where the page has no setup. What is asked for and is not there any more gives what it is of, else the first. */
export function pictureOf(snapshot: Snapshot, wanted: Wanted = {}): Picture | undefined {
  const { uri, results } = snapshot;
  const base = chosen(results, wanted);
  if (!base) return undefined;
  const variants = variantsOf(base);
  const variant = variants.find(v => v.variant.name === wanted.variant);
  const view = viewNamed(wanted.view) ?? VIEWS[0]!;
  const shown = variant?.results ?? base;
  const all = VIEWS.map(v => ({ view: v, of: v.of(shown, v.name === 'hung' || wanted.plate === undefined ? wanted : { ...wanted, plate: plateOf(wanted.plate)! }) }));
  const { of } = all.find(v => v.view === view)!;
  const drawn = typeof of === 'string' ? undefined : of();
  return {
    setup: base.setup.name, ...(variant ? { variant: variant.variant.name } : {}),
    choices: results.map(r => ({ setup: r.setup.name, variants: variantsOf(r).map(v => v.variant.name) })),
    view: view.name, views: all.map(({ view: { name, words }, of: f }) => ({ name, words, ...(typeof f === 'string' ? { why: f } : {}) })),
    ...(drawn ? { sheet: drawn.sheet } : {}), ...(drawn?.probe ? { probe: drawn.probe } : {}), ...(drawn?.plate === undefined ? {} : { plate: drawn.plate }), plates: drawn?.choices ?? shown.plates.map(p => p.plate.id),
    items: (drawn?.items ?? []).map(i => (view.drags ? handled(i, shown, uri, variant && base) : { ...i, drags: [], stays: 'stands still here; it is moved on the table from above' })),
    dim: dimOf(shown, results.filter(r => r !== base)), errors: () => snapshot.findings.filter(f => f.severity === 'error').length, results: shown,
  };
}

/** The setup of that name, else the one that the line is in or the last above it, else the first. */
export function chosen(results: readonly Results[], { line, setup }: Wanted): Results | undefined {
  return (setup !== undefined ? results.find(r => r.setup.name === setup) : undefined) ?? (line !== undefined ? results.findLast(r => r.setup.node.at <= line) : undefined) ?? results[0];
}

function handled(item: Item, r: Results, uri: string, base: Results | undefined): Handled {
  const thing = r.setup.things.get(item.id);
  if (!thing) return { ...item, drags: [], stays: 'goes from thing to thing; move those' };
  const { move, turn, stays } = handlesOf(thing, r, uri, base);
  const words = turn ? `${item.words}, heading ${plain((turn.heading * 180) / Math.PI, 4)}°` : item.words;
  return { ...item, words, drags: [...(move ? ['move' as const] : []), ...(turn ? ['turn' as const] : [])], ...(stays !== undefined ? { stays } : {}) };
}
