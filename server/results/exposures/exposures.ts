/** Plates that get several exposures: how the table stands for each, how long it lasts, and what it leaves of the brightness of its image. */
import { lasersAt, lightName, type Arm } from '../../model/arms.ts';
import type { Setup, Thing, Variant } from '../../model/model.ts';
import { overlay } from '../../model/overlay.ts';
import { nearest } from '../../model/scope.ts';
import { NUMBER, parseUnit, TIME } from '../../model/units.ts';
import type { Cell, Graph } from '../graph.ts';
import type { Shown } from '../replay/shown.ts';
import { LEFT_BY_SHARE, SHARE_OF_TIME, sharedBy } from '../rules/exposures.ts';
import { weighted } from '../rules/lengths.ts';
import type { Values } from '../values.ts';
import { valueOf } from './taken.ts';
import type { Making } from '../making.ts';

const PERCENT = parseUnit('%')!;

/** What is asked of the page as the table stands for an exposure. */
export interface Page {
  readonly setup: Setup;
  readonly graph: Graph;
  readonly values: Values;
  readonly arms: { readonly arms: readonly Arm[] };
  readonly replay: { readonly all: readonly Shown[] };
  ask(name: string): Cell | undefined;
}

/** `P`: the results of a page, whatever more they tell. */
export interface Exposure<P extends Page = Page> {
  readonly thing: Thing;
  readonly plate: Thing;
  /** how the table stands for it; undefined as it is written */
  readonly variant?: Variant;
  readonly laser?: Thing;
  /** of the page as the table stands for it; the page’s own are those of whoever asks */
  readonly results?: P;
  /** of what the plate needs */
  readonly share: Cell;
  readonly time: Cell;
  /** brightness of its image beside that of one that has the plate for itself */
  readonly left: Cell;
}

/** An exposure whose line does not tell what it is. */
export interface Unclear { readonly thing: Thing; readonly fact: string | undefined; readonly why: string }

export interface OnPlate<P extends Page = Page> { readonly plate: Thing; readonly all: readonly Exposure<P>[]; readonly sum: Cell; readonly time: Cell }

export interface ExposuresContext<P extends Page> extends Making {
  /** a result of the page, worked out where nothing has asked for it yet */
  readonly ask: (name: string) => Cell | undefined;
  /** results of the page with one of its variants */
  readonly plan: (setup: Setup) => P;
}

/** An exposure as its line tells it. */
interface Told { readonly thing: Thing; readonly plate: Thing; readonly called?: string; readonly variant?: Variant; readonly laser?: Thing }

export class Exposures<P extends Page = Page> {
  /** empty in a variant, where the table stands in one way only */
  readonly plates: readonly OnPlate<P>[];
  readonly unclear: readonly Unclear[];
  private readonly told: readonly Told[];
  private readonly planned = new Map<Variant, P>();
  private readonly shares = new Map<Told, Cell>();

  constructor(private readonly context: ExposuresContext<P>) {
    const { setup, published } = context;
    const read = [...setup.things.values()].filter(t => t.kind.word === 'exposure').map(t => this.read(t));
    this.told = read.flatMap(e => ('why' in e ? [] : e));
    // What seems to be missing may be what a line declares that cannot be understood.
    this.unclear = read.flatMap(e => ('why' in e && !setup.lost ? [e] : []));
    const plates = [...new Set(this.told.map(e => e.plate))];
    for (const plate of plates) this.share(plate, this.told.filter(e => e.plate === plate));
    this.plates = setup.variant === undefined ? plates.map(plate => this.onPlate(plate, this.told.filter(e => e.plate === plate))) : [];
    for (const { all, time } of this.plates) for (const cell of [...all.flatMap(e => [e.time, e.left]), time]) if (!cell.missing) published.push(cell);
  }

  /** Share of the exposure in which the table stands as it does here; `none` where a plate gets several and this is none of them, undefined where it gets one. */
  own(plate: Thing, laser: Thing): { readonly share: Cell; readonly alone: boolean } | 'none' | undefined {
    const all = this.told.filter(e => e.plate.id === plate.id);
    const own = all.find(e => e.called === this.context.setup.variant && (!e.laser || e.laser.id === laser.id));
    if (all.length < 2) return undefined;
    return own ? { share: this.shares.get(own)!, alone: own.laser !== undefined } : 'none';
  }

  private read(thing: Thing): readonly Told[] | Unclear {
    const { setup } = this.context;
    // Quotes with nothing in them yet name nothing.
    const word = (phrase: string): string | undefined => { const v = thing.facts.get(phrase)?.value; return v?.kind === 'words' && v.text !== '' ? v.text : undefined; };
    const plates = [...setup.things.values()].filter(t => t.kind.word === 'plate');
    // Whoever names no plate opens the shutter for all of them.
    const on = word('plate') === undefined ? plates : plates.filter(p => p.id === word('plate'));
    if (on.length === 0) return { thing, fact: word('plate') === undefined ? undefined : 'plate', why: plates.length === 0 ? 'this setup has no plate' : `there is no plate “${word('plate')!}”` };
    const name = word('variant');
    const variant = name === undefined ? undefined : setup.variants.find(v => v.name === name);
    if (name !== undefined && !variant && setup.variant === undefined) {
      const names = setup.variants.map(v => v.name);
      const near = nearest(name, names);
      return { thing, fact: 'variant', why: names.length === 0 ? `this setup has no variant: write \`variant "${name}" { … }\` with what is changed for it` : `there is no variant “${name}”${near === undefined ? `, only ${names.slice(0, 5).map(n => `“${n}”`).join(', ')}` : `; there is “${near}”`}` };
    }
    const laser = word('laser') === undefined ? undefined : setup.things.get(word('laser')!);
    return on.map(plate => ({ thing, plate, ...(name === undefined ? {} : { called: name }), ...(variant ? { variant } : {}), ...(laser ? { laser } : {}) }));
  }

  /** What is written, and of the rest each alike. */
  private share(plate: Thing, all: readonly Told[]): void {
    const { values } = this.context;
    const written = new Map(all.flatMap(({ thing }) => { const cell = thing.facts.has('share') ? values.fact(thing, 'share') : undefined; return cell ? [[thing, cell] as const] : []; }));
    const open = all.length - written.size;
    for (const e of all) {
      const { thing } = e;
      const rest = (): Cell => values.graph.derive(`${this.nameOf(e)}.share`, sharedBy(open), [...written.values()], NUMBER, `share of ${thing.id} in what ${plate.id} needs`, { unit: PERCENT });
      this.shares.set(e, written.get(thing) ?? rest());
    }
  }

  private onPlate(plate: Thing, all: readonly Told[]): OnPlate<P> {
    const { values, alias } = this.context;
    const { graph } = values;
    const made = all.map((e): Exposure<P> => {
      const results = e.variant && this.resultsOf(e.variant);
      const share = this.shares.get(e)!;
      const name = this.nameOf(e);
      const needed = this.needed(e, results);
      const exponent = plate.facts.has('reciprocity') ? values.fact(plate, 'reciprocity') : undefined;
      const time = graph.derive(`${name}.exposure time`, SHARE_OF_TIME, [share, needed, ...(exponent ? [exponent] : [])], TIME, `exposure ${e.thing.id} of ${plate.id}`);
      const left = graph.derive(`${name}.brightness`, LEFT_BY_SHARE, [share], NUMBER, `brightness of what ${e.thing.id} records beside that of a plate for itself`, { unit: PERCENT });
      if (name === e.thing.id) alias(`${plate.id}.${name}.exposure time`, time);
      return { ...e, ...(results ? { results } : {}), share, time, left };
    });
    return {
      plate, all: made, sum: graph.derive(`${plate.id}.shares`, weighted('sum of shares', 'sum of the exposures', made.map(() => 1)), made.map(e => e.share), NUMBER, `what all exposures of ${plate.id} come to`, { unit: PERCENT }),
      time: graph.derive(`${plate.id}.time of all exposures`, weighted('sum of times', 'sum of the exposures', made.map(() => 1)), made.map(e => e.time), TIME, `time of all exposures of ${plate.id}`),
    };
  }

  private resultsOf(variant: Variant): P {
    const known = this.planned.get(variant) ?? this.context.plan(overlay(this.context.setup, variant));
    this.planned.set(variant, known);
    return known;
  }

  /** How long the plate needs by that light alone. */
  /** What the names of its results begin with: its own, or where it is one of several plates’ theirs as well. */
  private nameOf({ thing, plate }: Told): string {
    return this.told.filter(e => e.thing === thing).length > 1 ? `${plate.id}.${thing.id}` : thing.id;
  }

  private needed(e: Told, results: P | undefined): Cell {
    const { thing, plate, laser, variant } = e;
    const { values, arms, ask } = this.context;
    const of = (own: readonly Arm[], on: Thing): string => `${laser && lasersAt(on, own).length > 1 ? lightName(on, [...lasersAt(on, own)].find(l => l.id === laser.id) ?? laser, own) : on.id}.exposure time`;
    const words = `exposure of ${plate.id} by the light of ${thing.id} alone`;
    const none = (): Cell => values.missing(`${this.nameOf(e)}.needed`, TIME, words, { code: 'value-missing', why: `what ${plate.id} needs in the light of ${thing.id} is not known`, at: thing.at });
    if (!results) return ask(of(arms.arms, plate)) ?? none();
    const name = of(results.arms.arms, results.setup.things.get(plate.id) ?? plate);
    const cell = results.ask(name) ?? results.graph.find(name);
    return cell ? valueOf(cell, results.graph, `${this.nameOf(e)}.needed`, words, { at: thing.at, reason: `as the page tells with “${variant!.name}”` }, values.graph) : none();
  }
}
