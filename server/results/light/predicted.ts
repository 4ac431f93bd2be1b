/**
 * Light at a plate that nobody has metered: by the power of an arm, the width of its beam and how it arrives; of an object by how it is lit besides. It is the plan that a
 * reading corrects. Worked out where an arm's laser has a written power and something spreads its beam, else only where somebody asks.
 */
import { beamLegs, objectAt, type Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, LIGHT, NUMBER, ONE_DEGREE, POWER, parseUnit } from '../../model/units.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell, Rule } from '../graph.ts';
import { formOf } from '../object/object.ts';
import { angleAt } from '../paths/pairs.ts';
import { EDGE_ON, litAt, referenceFrom } from '../places/angles.ts';
import { cornerLight, objectOverPlate, ratioOver, referenceOverPlate, FACE_LOSS, objectLight, patchesFor, PREDICTED_OBJECT, PREDICTED_REFERENCE, PREDICTED_SCREEN, REFERENCE_LIGHT, SINGLE_RATIO, type OnPlate } from '../rules/object-light.ts';
import { CAUGHT_AS_READ, CAUGHT_POWER } from '../rules/light.ts';
import { caughtShare, landingShare } from '../rules/table.ts';
import type { LightContext } from './context.ts';
import { imageYield } from './image-light.ts';
import type { Powers } from './powers.ts';
import { screenBefore, screenYield } from './screen-light.ts';
import { beamNumbers, FOR_EACH, MICRO, PER_WATT, spreads, type Yield } from './yield.ts';

const [PERCENT, DEGREE, MM] = [parseUnit('%')!, parseUnit('°')!, parseUnit('mm')!];

/** Light over a plate beside that in the middle. */
export interface Over {
  /** how it arrives, or the plate stands, is known by an angle: then nothing tells which side of the plate is left and which is right */
  readonly byAngle: boolean;
  /** what sends the light is summed over so many parts for each point */
  readonly parts: number;
  /** at points as shares of half the width and height, to the right and up for who looks at the face of the plate */
  readonly at: (points: readonly OnPlate[]) => number[];
}

export class Predictions {
  private readonly yields = new Map<Arm, Yield | Cell>();

  constructor(private readonly powers: Powers, private readonly context: LightContext) {}

  /** Whether the text says enough of one of the arms of a plate that its light belongs on the page. */
  static wanted(arms: readonly Arm[]): boolean {
    return arms.some(a => a.laser.facts.has('power') && a.path.some(l => l.target?.facts.has('focal length') === true));
  }

  /** Light of an arm at its plate, by the plan; without a value where it cannot be told. */
  light(arm: Arm, name: string): Cell {
    const words = `light of ${arm.name} at ${arm.plate.id}`;
    if (!arm.laser.facts.has('power')) return this.none(`${name}, by the plan`, LIGHT, words, `the power of ${arm.laser.id} is not written`, arm.laser.at);
    const found = this.yieldOf(arm);
    return 'make' in found ? found.make(name, words, this.powers.ofArm(arm)) : this.context.values.missing(`${name}, by the plan`, LIGHT, words, found.missing!);
  }

  /** Light for each watt that an arm brings; a cell without a value where it cannot be told. */
  yieldOf(arm: Arm): Yield | Cell {
    let found = this.yields.get(arm);
    if (!found) this.yields.set(arm, found = arm.role === 'reference' ? this.reference(arm) : this.object(arm));
    return found;
  }

  /** Weakest corner of the plate in the light of its reference. Undefined where no beam spreads, or the size of the plate is not written. */
  corners(arm: Arm): Cell | undefined {
    const { plate } = arm;
    const { graph, values, beams } = this.context;
    const sides = spreads(arm) ? sidesOfThing(plate, values) : undefined;
    const beam = beams.ofArm(arm);
    if (!sides || !beam) return undefined;
    const name = `${plate.id}.${arm.name}.corner light`;
    const { byAngle, cells } = this.arriving(arm, beam);
    return graph.find(name) ?? graph.derive(name, cornerLight(byAngle, referenceFrom(plate, values)), [...cells, this.centred(arm), sides[0]!, sides[1]!], NUMBER, `weakest corner of ${plate.id} in the light of ${arm.name}`, { unit: PERCENT });
  }

  /** Of the power of an arm what falls on the plate, or on the object that it lights: by the plan, or by the `read` light of a reference. Undefined where nothing spreads its beam, or something else scatters it first, or a size is not known. */
  caught(arm: Arm, read: Cell | undefined): Cell | undefined {
    const { graph, beams } = this.context;
    const onto = arm.path[beamLegs(arm) - 1];
    const on = onto?.target ?? arm.plate;
    if (!onto || on !== (arm.object ?? arm.plate) || on.kind.light === 'diffracts' || !spreads(arm)) return undefined;
    const base = `${arm.plate.id}.${arm.name}`;
    const known = graph.find(`${base}.caught power`);
    if (known) return known;
    const by = arm.object ? this.outline(arm, arm.object) : this.face(arm);
    const share = by && graph.derive(`${base}.caught`, by.rule, [...beamNumbers(beams.at(onto)), ...by.inputs], NUMBER, `share of ${arm.name} that falls on ${on.id}`, { unit: PERCENT });
    if (!share) return undefined;
    const each = read && graph.find(`${base}.light for each watt`);
    const words = `power of ${arm.name} that falls on ${on.id}`;
    return each && !each.missing ? graph.derive(`${base}.caught power`, CAUGHT_AS_READ, [read, each, share], POWER, words) : graph.derive(`${base}.caught power`, CAUGHT_POWER, [this.powers.ofArm(arm), share], POWER, words);
  }

  private face(arm: Arm): { readonly rule: Rule; readonly inputs: readonly Cell[] } | undefined {
    const sides = sidesOfThing(arm.plate, this.context.values);
    return sides && { rule: landingShare('rectangular'), inputs: [this.angle(arm), sides[0]!, sides[1]!] };
  }

  private outline(arm: Arm, thing: Thing): { readonly rule: Rule; readonly inputs: readonly Cell[] } | undefined {
    const { values, places } = this.context;
    const size = this.size(thing, false);
    const lit = litAt(arm.plate, arm, places, values)?.cell;
    const { shape, points } = formOf(thing, values);
    return size && lit && !points ? { rule: caughtShare(shape === 'rounded' || shape === 'sphere'), inputs: [lit, ...size] } : undefined;
  }

  /** The ratio of a hologram in one beam, which nothing on the table sets. Undefined where the arms are no such pair. */
  singleRatio(reference: Arm, object: Arm, name: string): Cell | undefined {
    const thing = object.object;
    if (reference.beam !== object.beam || thing?.kind.word !== 'object') return undefined;
    const { graph, values, legs } = this.context;
    const once = `${object.plate.id}.passes`;
    const passes = graph.find(once) ?? graph.input(once, { value: 0.85, dim: NUMBER, spread: { kind: 'within', amount: 0.12 }, unit: PERCENT }, 'assumed', `share that ${object.plate.id} lets pass to ${thing.id}`, { reason: 'a bare face of glass takes 4 to 10 %, and the layer before it is processed anything up to a fifth; from memory' });
    const facts = ['tone', 'scatter'].map(f => values.fact(thing, f));
    const [tone, scatter] = facts;
    if (!tone || !scatter) return undefined;
    const sides = this.size(thing, false);
    const words = `beam ratio at ${object.plate.id}`;
    if (!sides) return this.none(name, NUMBER, words, `how large ${thing.id} is, is not written: give it a “size”`, thing.at);
    const gap = legs.get(object.path[object.path.length - 1]!) ?? this.none(`${name} by the gap`, LENGTH, words, `how far ${thing.id} is from ${object.plate.id} is not known`, thing.at);
    return graph.derive(name, SINGLE_RATIO, [tone, passes, scatter, gap, ...sides], NUMBER, words);
  }

  /** Share of an arm that the bare face of the plate throws back. Only for those who ask: what a plate needs is stated for the light that falls on it. */
  faceLoss(arm: Arm): Cell {
    const { graph } = this.context;
    const name = `${arm.plate.id}.${arm.name}.face loss`;
    const index = `${arm.plate.id}.face index`;
    return graph.find(name) ?? graph.derive(name, FACE_LOSS, [this.angle(arm), graph.input(index, { value: 1.52, dim: NUMBER, spread: { kind: 'within', amount: 0.03 } }, 'assumed', `index of the face of ${arm.plate.id}`, { reason: 'gelatin and the glass of plates have 1.49 to 1.54; from memory' })], NUMBER, `share of ${arm.name} that the face of ${arm.plate.id} throws back`, { unit: PERCENT });
  }

  /** The numbers of a reference at its plate, and how it arrives. */
  private arriving(arm: Arm, beam: NonNullable<ReturnType<LightContext['beams']['ofArm']>>): { readonly byAngle: boolean; readonly cells: readonly Cell[] } {
    const { plate } = arm;
    const { places } = this.context;
    const [normal, light] = [places.directions.facing(places.own(plate)), places.directions.of(beam.leg)];
    const byPlaces = normal && light && !plate.facts.has('reference angle') ? [...normal, ...light] : undefined;
    return { byAngle: !byPlaces, cells: [...beamNumbers(beam.front), ...(byPlaces ?? [this.angle(arm)])] };
  }

  /**
   * Least and greatest beam ratio over the plate, as shares of that in the middle: by the plan, of a spread reference and objects that send their own light. Made when asked for.
   * Undefined where that is not what lights the plate, or a size is not known.
   *
   * @param light of one of several object beams, in the middle of the plate
   */
  ratioOver(reference: Arm, objects: readonly Arm[], end: 'least' | 'greatest', light: (arm: Arm) => Cell | undefined): Cell | undefined {
    const { plate } = reference;
    const { graph, values, beams } = this.context;
    const name = `${plate.id}.${objects.length === 1 ? `${objects[0]!.name}.` : ''}${end} ratio across the plate`;
    const known = graph.find(name);
    if (known) return known;
    const sides = spreads(reference) ? sidesOfThing(plate, values) : undefined;
    const beam = beams.ofArm(reference);
    const parts = objects.flatMap(arm => {
      const each = this.yieldOf(arm);
      const made = 'make' in each ? each.over : undefined;
      const own = objects.length === 1 ? [] : light(arm);
      return made && own ? [{ part: { laid: made.laid, inputs: made.inputs.length }, cells: [...(Array.isArray(own) ? [] : [own]), ...made.inputs] }] : [];
    });
    if (!sides || !beam || parts.length < objects.length) return undefined;
    const { byAngle, cells } = this.arriving(reference, beam);
    const rule = ratioOver(end, byAngle, referenceFrom(plate, values), parts.map(p => p.part), cells.length);
    return graph.derive(name, rule, [sides[0]!, sides[1]!, ...cells, ...parts.flatMap(p => p.cells)], NUMBER, `${end} ratio of reference and ${objects.length === 1 ? objects[0]!.name : 'object light'} across ${plate.id}, by that in the middle`);
  }

  /** Light of an arm over its plate beside that in the middle, at points as shares of half the width and height: what `ratioOver` takes the least and the greatest of. Undefined where nothing tells it. */
  sharesOver(arm: Arm): Over | undefined {
    const { plate } = arm;
    const { graph, values, beams } = this.context;
    const sides = sidesOfThing(plate, values);
    const numbers = (cells: readonly Cell[]): number[] | undefined => (cells.some(c => c.missing) ? undefined : [sides![0]!, sides![1]!, ...cells].map(c => graph.value(c)!));
    if (!sides) return undefined;
    if (arm.role === 'object') {
      const each = this.yieldOf(arm);
      const made = 'make' in each ? each.over : undefined;
      const x = made && numbers(made.inputs);
      return x && { byAngle: made.laid.byAngle || made.laid.plateByAngle, parts: made.laid.count, at: points => objectOverPlate(made.laid, x, points) };
    }
    const beam = spreads(arm) ? beams.ofArm(arm) : undefined;
    const arriving = beam && this.arriving(arm, beam);
    const x = arriving && numbers(arriving.cells);
    return x && { byAngle: arriving.byAngle, parts: 1, at: points => referenceOverPlate(arriving.byAngle, referenceFrom(plate, values), x, points) };
  }

  private reference(arm: Arm): Yield | Cell {
    const { graph, beams } = this.context;
    const base = `${arm.plate.id}.${arm.name}`;
    const beam = beams.ofArm(arm);
    if (!beam) return this.none(`${base}.light for each watt`, PER_WATT, '', `${arm.name} has no legs`);
    if (!spreads(arm)) return this.none(`${base}.light for each watt`, PER_WATT, '', `nothing on the way of ${arm.name} spreads its beam: write the spreading lens that it goes through`, arm.plate.at);
    const angle = this.angle(arm);
    if (Math.abs(graph.value(angle) ?? 0) >= EDGE_ON) return this.none(`${base}.light for each watt`, PER_WATT, '', `${arm.name} runs along ${arm.plate.id} and misses it`, arm.plate.at);
    const each = graph.derive(`${base}.light for each watt`, REFERENCE_LIGHT, [...beamNumbers(beam.front), angle], PER_WATT, `light of ${arm.name} at ${arm.plate.id} for each watt of it`, { unit: FOR_EACH });
    return each.missing ? each : { cells: [each], make: (name, words, power) => graph.derive(name, PREDICTED_REFERENCE, [power, each], LIGHT, words, { unit: MICRO }) };
  }

  private object(arm: Arm): Yield | Cell {
    const { graph, values, legs } = this.context;
    const thing = arm.object!;
    const called = `${arm.plate.id}.${arm.name}.light for each watt`;
    const none = (why: string, at = thing.at): Cell => this.none(called, PER_WATT, `light of ${arm.name} for each watt of it`, why, at);
    const { word } = thing.kind;
    const screen = word === 'ground glass' || word === 'diffuser';
    const ways = { angle: (a: Arm): Cell => this.angle(a), none };
    if (thing.kind.light === 'diffracts') return imageYield(arm, ways, this.context);
    if (word !== 'object' && !screen) return none(`how ${thing.id} scatters is not known: meter its light at ${arm.plate.id}`);
    const at = objectAt(arm);
    const [onto, on] = [arm.path[at], arm.path[arm.path.length - 1]!];
    if (!onto) return none(`no light falls on ${thing.id}`);
    const lit = word === 'object' ? screenBefore(arm) : undefined;
    if (lit) {
      return screenYield(arm, lit, {
        ...ways, seen: (t, from, to, isScreen) => this.seen(arm, t, from, to, isScreen), stands: s => this.plateStands(arm, s), size: (t, isScreen) => this.size(t, isScreen), laid: t => formOf(t, values),
        litAt: a => litAt(a.plate, a, this.context.places, values)?.cell,
      }, this.context);
    }
    const before = arm.path.slice(0, at).find(l => l.target && (l.target.kind.light === 'scatters' || l.target.kind.word === 'fill card'));
    if (before) return none(`${thing.id} is lit by light that ${before.target!.id} scatters: meter what of it reaches ${arm.plate.id}`);
    if (!spreads(arm, thing)) return none(`nothing spreads the beam of ${arm.name} before ${thing.id}: write the spreading lens that it goes through`);
    const size = this.size(thing, screen);
    if (!size) return none(`how large ${thing.id} is, is not written: give it a “size”`);
    const fact = (phrase: string): Cell => values.fact(thing, phrase) ?? this.none(`${thing.id}.${phrase}`, NUMBER, `${phrase} of ${thing.id}`, `the ${phrase} of ${thing.id} is not written`, thing.at);
    const front = this.context.beams.at(onto);
    const laid = { ...formOf(thing, values), ...(screen ? { shape: 'screen' as const } : {}) };
    const seen = this.seen(arm, thing, onto, on, screen);
    const stand = this.plateStands(arm, seen);
    const radius = graph.value(this.context.beams.radius(onto));
    const distance = legs.get(on) ?? none(`how far ${thing.id} is from ${arm.plate.id} is not known`);
    const count = radius === undefined ? 0 : patchesFor(radius, size.map(c => graph.value(c) ?? 0) as [number, number, number]);
    const [whole, inputs] = [{ ...laid, count, ...stand.by }, [...beamNumbers(front), distance, ...stand.cells, ...(screen ? [fact('scatter angle')] : [fact('gloss'), fact('gloss angle')]), ...seen, ...size]];
    const each = graph.derive(called, objectLight(whole), inputs, PER_WATT, `light of ${arm.name} at ${arm.plate.id} for each watt on ${thing.id}, ${screen ? 'if it lost nothing' : 'if it were white'}`, { unit: FOR_EACH });
    if (each.missing) return each;
    const [share, scatter] = [fact(screen ? 'loss' : 'tone'), fact('scatter')];
    return { cells: [each, share, scatter], over: { laid: whole, inputs }, make: (name, words, power) => graph.derive(name, screen ? PREDICTED_SCREEN : PREDICTED_OBJECT, [power, each, share, scatter], LIGHT, words, { unit: MICRO }) };
  }

  /** How the light falls on a thing and goes on: two directions where the places tell them, else an angle. */
  private seen(arm: Arm, thing: Thing, onto: Leg, on: Leg, screen: boolean): readonly Cell[] {
    const { graph, places, values } = this.context;
    const { directions } = places;
    const written = thing.facts.has('lit at');
    const [light, sight] = written ? [] : [directions.of(onto), on.target && directions.between(places.own(thing), places.own(on.target))];
    if (light && sight && !light[0].missing && !sight[0].missing) return [...light, ...sight];
    const lit = screen ? undefined : litAt(arm.plate, arm, places, values)?.cell;
    const name = `${thing.id}.lit through`;
    return [lit ?? graph.find(name) ?? graph.input(name, { value: Math.PI, dim: ANGLE, unit: DEGREE, spread: { kind: 'within', amount: 15 * ONE_DEGREE } }, 'assumed', `angle at which ${thing.id} is lit`, { reason: 'a screen is mostly lit straight through; common practice' })];
  }

  /** How the plate of an arm stands to its object light: its normal where places tell that and what is seen from it, else the angle at which the light arrives. */
  private plateStands(arm: Arm, seen: readonly Cell[]): { readonly by: { readonly byAngle: boolean; readonly plateByAngle: boolean }; readonly cells: readonly Cell[] } {
    const { plate } = arm;
    const byAngle = seen.length === 1;
    const normal = byAngle || plate.facts.has('object angle') ? undefined : this.context.places.directions.facing(this.context.places.own(plate));
    return normal && !normal[0].missing ? { by: { byAngle, plateByAngle: false }, cells: normal } : { by: { byAngle, plateByAngle: true }, cells: [this.angle(arm)] };
  }

  private size(thing: Thing, screen: boolean): readonly Cell[] | undefined {
    const { graph, values } = this.context;
    const sides = sidesOfThing(thing, values) ?? [];
    const round = values.fact(thing, 'diameter');
    const [width, height] = [sides[0] ?? round, sides[1] ?? round];
    if (!width || !height) return undefined;
    const flat = (): Cell => graph.find(`${thing.id}.no depth`) ?? graph.input(`${thing.id}.no depth`, { value: 0, dim: LENGTH }, 'computed', `depth of ${thing.id}`);
    return [width, height, screen ? flat() : sides[2] ?? values.fact(thing, 'depth') ?? round ?? flat()];
  }

  /** How well a beam is centred on its plate. */
  private centred({ plate, name }: Arm): Cell {
    const { graph } = this.context;
    const called = `${plate.id}.${name}.off centre`;
    return graph.find(called) ?? graph.input(called, { value: 0, dim: LENGTH, unit: MM, spread: { kind: 'within', amount: 5e-3 } }, 'assumed', `how far ${name} is beside the middle of ${plate.id}`, { reason: 'a spread beam is centred by eye, on a card, to about 5 mm; common practice' });
  }

  private angle(arm: Arm): Cell { return angleAt(arm, this.context.plates, this.context.values); }

  private none(name: string, dim: Cell['dim'], words: string, why: string, at?: Thing['at']): Cell {
    return this.context.values.missing(name, dim, words, { code: 'value-missing', why, ...(at ? { at } : {}) });
  }
}
