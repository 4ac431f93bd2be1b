/** What a plate has before it and how that is lit: objects by a beam straight on, objects by ground glass or a diffuser, and first holograms, whose window stands for the object of a transfer. */
import { ontoObject } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { Beams } from '../beams/beams.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import { screenBefore } from '../light/screen-light.ts';
import { beamNumbers } from '../light/yield.ts';
import { formOf, sidesOfObject, spreadOf } from '../object/object.ts';
import type { Pair } from '../paths/pairs.ts';
import type { Results } from '../plan.ts';
import type { Layout } from '../rules/maps.ts';
import { minus } from '../rules/object.ts';
import { lightOnParts, placeOfPart, recordedParts, type Sighted } from '../rules/seen.ts';
import { glow, isBehind, pastObject, softLight, softRecorded, spotsOf, type Screen } from '../rules/soft.ts';
import { HERE } from '../rules/surface.ts';
import type { Vector } from '../rules/table.ts';

/** One thing before a plate, in the light of one beam. */
export interface InSight {
  readonly pair: Pair;
  readonly thing: Thing;
  /** its middle, m */
  readonly middle: Vector;
  readonly layout: Layout;
  readonly x: readonly number[];
  /** Light on each part for each watt of the beam; or where nothing compares beams, as a share of that in the middle. */
  readonly light: (of: Sighted, compared: boolean) => Float64Array;
  /** whether the beam is known, so that its light can be told for each watt */
  readonly told: boolean;
  /** brightness with which each part records, as a share of matched paths; undefined where nothing tells how well the laser's light holds together */
  readonly recorded: (of: Sighted) => Float64Array | undefined;
  readonly darkest?: { readonly at: Vector; readonly cell: Cell };
  /** what of it is not in the picture */
  readonly note?: string;
}

/** Empty where nothing that the plate sees stands somewhere, is lit, and has a size. */
export const inSight = (r: Results, plate: Thing): readonly InSight[] =>
  (r.plates.find(p => p.plate === plate)?.pairs ?? []).flatMap(pair => (screenBefore(pair.arm) ? throughScreen(r, plate, pair) : mapped(r, pair)));

/** What has a map of its own: an object that a beam lights straight on, or the hologram of a transfer. */
function mapped(r: Results, pair: Pair): InSight[] {
  const map = r.maps.of(pair);
  const thing = pair.arm.object!;
  const onto = ontoObject(pair.arm);
  const [middle, along] = [places(r, r.places.of(r.places.own(thing))), onto && places(r, r.places.directions.of(onto))];
  if (!map || !onto || !middle || !along) return [];
  const { layout } = map;
  const x = map.inputs.map(c => r.graph.value(c)!);
  const beam = beamOnto(r, pair, onto);
  const brightness = brightnessOf(r, pair);
  const { darkest, darkestBrightness } = map.found ?? {};
  return [{
    pair, thing, middle, layout, x, told: beam !== undefined,
    light: ({ patches }, compared) => lightOnParts(layout, x, patches, along, compared ? beam : undefined),
    recorded: ({ patches }) => brightness && recordedParts(layout, x, patches, brightness),
    ...(darkest && darkestBrightness && !darkestBrightness.missing ? { darkest: { at: placeOfPart(layout, x, darkest), cell: darkestBrightness } } : {}),
    ...(layout.form === 'hologram' ? { note: `the image of ${thing.id} is not drawn: each part of ${thing.id} sends light to all of it, and records as brightly as its grey says` } : {}),
  }];
}

/** An object that ground glass or a diffuser lights; from behind the plate sees that round the object. */
function throughScreen(r: Results, plate: Thing, pair: Pair): InSight[] {
  const { screen, onto } = screenBefore(pair.arm)!;
  const object = pair.arm.object!;
  const ends = pair.reference.path.at(-1)!;
  const { directions } = r.places;
  const number = (c: Cell | undefined): number | undefined => (!c || c.missing ? undefined : r.graph.value(c));
  const numbers = (cells: readonly (Cell | undefined)[] | undefined): number[] | undefined => { const all = cells?.map(number); return all?.every(v => v !== undefined) ? all : undefined; };
  const at = (t: Thing): Vector | undefined => places(r, r.places.of(r.places.own(t)));
  const form = formOf(object, r.values);
  const [plateAt, middle, screenAt, normal, along, reference] = [at(plate), at(object), at(screen), places(r, directions.facing(r.places.own(plate))), places(r, directions.of(onto)), places(r, directions.of(ends))];
  const [sides, held, open] = [sidesOfThing(plate, r.values), sidesOfObject(object, pair.depth, r.values, form), sidesOfThing(screen, r.values)].map(numbers);
  const [beam, halfWidth, mismatch] = [beamOnto(r, pair, onto), number(r.values.fact(screen, 'scatter angle')), number(pair.mismatch)];
  const focus = spreadOf(pair.reference, ends, r.beams);
  if (!plateAt || !middle || !screenAt || !normal || !along || !reference || !sides || !held || !open || !beam || halfWidth === undefined || mismatch === undefined || (!focus && Beams.areShaped(pair.reference))) return [];
  const lost = number(r.values.fact(screen, 'loss')) ?? 0;
  const spread = numbers(focus) ?? [];
  const [toScreen, toPlate] = [minus(screenAt, middle), minus(plateAt, middle)];
  // A screen that no heading is written of stands squarely in its light.
  const face = places(r, directions.facing(r.places.own(screen))) ?? along;
  const lit: Screen = { at: toScreen, normal: face, sides: [open[0]!, open[1]!], along, beam, halfWidth };
  const spots = spotsOf(lit);
  const inMiddle = once(() => softLight(lit, spots, [{ point: HERE, normal: HERE, area: 1 }]).reduce((sum, [v]) => sum + v!, 0));
  const shared = (light: Float64Array, compared: boolean): Float64Array => { const by = compared ? 1 - lost : 1 / inMiddle(); return light.map(v => v * by); };
  const brightness = brightnessOf(r, pair);
  const layout: Layout = { form, reference: focus !== undefined, light: false };
  const x = [mismatch, ...plateAt, ...middle, ...normal, ...reference, ...spread, ...minus(HERE, toScreen), sides[0]!, sides[1]!, ...held];
  let each: { readonly of: Sighted; readonly light: readonly Float64Array[] } | undefined;
  const eachOn = (of: Sighted): readonly Float64Array[] => (each?.of === of ? each : (each = { of, light: softLight(lit, spots, of.patches) })).light;
  const behind = isBehind(toScreen, toPlate);
  const seen: InSight = {
    pair, thing: object, middle, layout, x, told: true,
    light: (of, compared) => shared(eachOn(of).reduce((sum, on) => sum.map((v, i) => v + on[i]!), new Float64Array(of.patches.length)), compared),
    recorded: of => brightness && softRecorded(layout, x, lit, spots, eachOn(of), of.patches, brightness),
    ...(behind ? { note: `what ${object.id} lets through of the light of ${screen.id} is not drawn` } : {}),
  };
  if (!behind) return [seen];
  const pane: Layout = { form: 'hologram', reference: focus !== undefined, light: true };
  const y = [mismatch + pastObject(toScreen, toPlate), ...plateAt, ...screenAt, ...normal, ...face, ...reference, ...spread, ...along, beam[0]!, beam[1]!, sides[0]!, sides[1]!, open[0]!, open[1]!, 0];
  return [seen, {
    pair, thing: screen, middle: screenAt, layout: pane, x: y, told: true,
    light: ({ patches, plate: eye }, compared) => { const bright = glow({ ...lit, at: HERE }, patches, eye); return shared(lightOnParts(pane, y, patches, along, beam).map((v, i) => v * bright[i]!), compared); },
    recorded: ({ patches }) => brightness && recordedParts(pane, y, patches, brightness),
    note: `${screen.id} is drawn as bright as it looks from the middle of ${plate.id}`,
  }];
}

/** The six numbers of a beam as it meets a thing; undefined where nothing tells how wide it is. */
function beamOnto({ graph, beams }: Results, pair: Pair, onto: Leg): readonly number[] | undefined {
  if (!Beams.areShaped(pair.arm)) return undefined;
  const cells = beamNumbers(beams.at(onto));
  return cells.some(c => c.missing) ? undefined : cells.map(c => graph.value(c)!);
}

function brightnessOf({ graph }: Results, { coherence }: Pair): ((mismatch: number) => number) | undefined {
  if (!coherence || coherence.inputs.some(c => c.missing)) return undefined;
  const rest = coherence.inputs.map(c => graph.value(c)!);
  return d => coherence.rule.compute([d, ...rest]);
}

function places({ graph }: Results, cells: readonly Cell[] | undefined): Vector | undefined {
  if (!cells || cells.some(c => c.missing)) return undefined;
  return cells.map(c => graph.value(c)!) as unknown as Vector;
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}
