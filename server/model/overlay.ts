/** The setup that a variant makes of a setup: the same things, beams, values and facts, with its changes. Everything is computed from it as from any other. */
import { replaced } from './bind/placement.ts';
import { over, rivalsOf } from './over.ts';
import type { Beam, Bound, BoundFact, Change, Leg, Measured, Place, Placement, Reading, Setup, Thing, Variant } from './model.ts';

export function overlay(setup: Setup, { name, changes, lost }: Variant): Setup {
  const of = <K extends Change['kind']>(kind: K): Extract<Change, { kind: K }>[] => changes.filter((c): c is Extract<Change, { kind: K }> => c.kind === kind);
  const swaps = swapped(changes);
  const swap = (thing: Thing): Thing => swaps.get(thing) ?? thing;
  const added = of('thing').map(c => c.thing);
  const legs = new Map(of('leg').map(c => [c.leg, c]));
  const set = new Set(of('fact').flatMap(c => (rivalsOf(c.thing.kind, ['wheel']).includes(c.key) ? [c.thing] : [])));
  const beams = new Map(setup.beams);
  for (const { beam } of of('beam')) beams.set(beam.id, beam);
  for (const [id, beam] of beams) if (touched(beam, swaps, legs)) beams.set(id, beamWith(beam, swap, legs));
  return {
    ...setup, variant: name, variants: [], beams, lost: setup.lost || lost,
    things: new Map([...setup.things.values(), ...added].map(t => [t.id, swap(t)])),
    facts: new Map([...setup.facts, ...of('setup fact').map(c => [c.key, c.fact] as const)]),
    lets: new Map([...setup.lets, ...of('let').map(c => [c.let.name, c.let] as const)]),
    // What was read of a wheel says nothing of a trial that sets it otherwise.
    readings: setup.readings.filter(r => !(r.measured?.kind === 'wheel' && set.has(r.measured.splitter))).map(r => readingWith(r, swap)), moved: setup.moved.map(m => ({ ...m, things: m.things.map(swap) })),
  };
}

/** The things that a variant changes, each with the one that takes its place. */
function swapped(changes: readonly Change[]): Map<Thing, Thing> {
  const swaps = new Map<Thing, ThingOver>();
  const ours = (thing: Thing): ThingOver => {
    let own = swaps.get(thing);
    if (!own) swaps.set(thing, own = new ThingOver(thing));
    return own;
  };
  // What is written about a thing counts before its item, in a variant as in a setup.
  for (const c of changes) if (c.kind === 'item') ours(c.thing).takeItem(c.item);
  for (const c of changes) {
    if (c.kind === 'placement') ours(c.thing).placement = replaced(c.thing.placement, c.placement);
    else if (c.kind === 'fact') ours(c.thing).take(c.key, c.fact);
  }
  return swaps;
}

class ThingOver implements Thing {
  readonly id: string;
  readonly kind: Thing['kind'];
  readonly node: Thing['node'];
  readonly doc: string | undefined;
  facts: Map<string, BoundFact>;
  placement: Placement | undefined;
  item: Thing | undefined;
  used: boolean;
  reached: number;
  recordedOn: Thing | undefined;

  constructor(private readonly base: Thing) {
    ({ id: this.id, kind: this.kind, node: this.node, doc: this.doc, placement: this.placement, item: this.item, used: this.used, reached: this.reached, recordedOn: this.recordedOn } = base);
    this.facts = new Map(base.facts);
  }
  get at(): Place { return this.base.at; }

  takeItem(item: Thing): void {
    this.item = item;
    this.facts = over(this.kind, item.facts, new Map([...this.base.facts].filter(([, f]) => f.node.parent === this.base.node)));
  }

  take(key: string, fact: BoundFact): void {
    this.changed.set(key, fact);
    this.facts = over(this.kind, this.facts, this.changed);
  }
  private readonly changed = new Map<string, BoundFact>();
}

const touched = (beam: Beam, swaps: ReadonlyMap<Thing, Thing>, legs: ReadonlyMap<Leg, unknown>): boolean =>
  (swaps.size > 0 && ((beam.from !== undefined && swaps.has(beam.from)) || beam.legs.some(l => l.target && swaps.has(l.target)))) || (legs.size > 0 && beam.legs.some(l => legs.has(l)));

function beamWith(beam: Beam, swap: (t: Thing) => Thing, changed: ReadonlyMap<Leg, { readonly length: Bound; readonly lengthAt: Place }>): Beam {
  const legs: Leg[] = [];
  const { id, from, port, node, at, doc } = beam;
  const own: Beam = { id, legs, node, at, ...(from ? { from: swap(from) } : {}), ...(port !== undefined ? { port } : {}), ...(doc !== undefined ? { doc } : {}) };
  for (const leg of beam.legs) legs.push(new LegOver(leg, own, leg.target && swap(leg.target), changed.get(leg)));
  return own;
}

class LegOver implements Leg {
  constructor(private readonly base: Leg, readonly beam: Beam, readonly target: Thing | undefined, private readonly changed: { readonly length: Bound; readonly lengthAt: Place } | undefined) {}
  get id(): string { return this.base.id; }
  get n(): number { return this.base.n; }
  get to(): string { return this.base.to; }
  get port(): string | undefined { return this.base.port; }
  get at(): Place { return this.base.at; }
  get node(): Leg['node'] { return this.base.node; }
  get length(): Bound | undefined { return this.changed ? this.changed.length : this.base.length; }
  get lengthAt(): Place | undefined { return this.changed ? this.changed.lengthAt : this.base.lengthAt; }
}

/** A reading of things that a variant has changed reads those. */
function readingWith(reading: Reading, swap: (t: Thing) => Thing): Reading {
  const { measured, by } = reading;
  if (!measured) return reading;
  return { ...reading, measured: measuredWith(measured, swap), by: by && { ...by, thing: by.thing && swap(by.thing) } };
}

function measuredWith(m: Measured, swap: (t: Thing) => Thing): Measured {
  const maybe = (t: Thing | undefined): Thing | undefined => t && swap(t);
  switch (m.kind) {
    case 'legs': return { ...m, things: m.things.map(swap) };
    case 'arm': case 'difference': case 'drift': return { ...m, plate: maybe(m.plate) };
    case 'light': return { ...m, at: maybe(m.at), through: typeof m.through === 'object' ? swap(m.through) : m.through };
    case 'dark': case 'image': return { ...m, at: maybe(m.at) };
    case 'wheel': return { ...m, splitter: swap(m.splitter) };
  }
}
