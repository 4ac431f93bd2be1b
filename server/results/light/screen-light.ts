/** Light of an object that is lit through ground glass or a diffuser. */
import type { Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, LIGHT, NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { litScreen } from '../object/screens.ts';
import { weighted } from '../rules/lengths.ts';
import { BEHIND, evenlyLit, objectLight, patchesFor, PREDICTED_BEHIND, PREDICTED_SOFT } from '../rules/object-light.ts';
import type { Form } from '../rules/surface.ts';
import type { LightContext } from './context.ts';
import { beamNumbers, FOR_EACH, MICRO, PER_WATT, spreads, type Ways, type Yield } from './yield.ts';

const MM = parseUnit('mm')!;

/** The screen that lights the object of an arm, and the two legs from it to the plate; undefined where something else scatters before the object. */
export function screenBefore(arm: Arm): { readonly screen: Thing; readonly onto: Leg; readonly across: Leg; readonly on: Leg } | undefined {
  const found = litScreen(arm);
  const on = arm.path.at(-1);
  return found && found.across.target === arm.object && on && arm.path.at(-2) === found.across ? { ...found, on } : undefined;
}

interface More extends Ways {
  /** how light falls on a thing and goes on: two directions, else an angle */
  readonly seen: (thing: Thing, onto: Leg, on: Leg, screen: boolean) => readonly Cell[]
  /** how the plate stands to what is seen so */
  readonly stands: (seen: readonly Cell[]) => { readonly by: { readonly byAngle: boolean; readonly plateByAngle: boolean }; readonly cells: readonly Cell[] }
  readonly size: (thing: Thing, screen: boolean) => readonly Cell[] | undefined
  /** how the object is laid out */
  readonly laid: (thing: Thing) => Form
  /** the angle of the light on the object from the line of sight */
  readonly litAt: (arm: Arm) => Cell | undefined
}

export function screenYield(arm: Arm, found: NonNullable<ReturnType<typeof screenBefore>>, ways: More, context: LightContext): Yield | Cell {
  const { graph, values, legs, beams } = context;
  const { screen, onto, across, on } = found;
  const { none } = ways;
  const object = arm.object!;
  const base = `${arm.plate.id}.${arm.name}`;
  if (!spreads(arm, screen)) return none(`nothing spreads the beam of ${arm.name} before ${screen.id}: write the spreading lens that it goes through`);
  const size = ways.size(screen, true);
  if (!size) return none(`how large ${screen.id} is, is not written: give it a “size”`, screen.at);
  const fact = (thing: Thing, phrase: string): Cell => values.fact(thing, phrase) ?? none(`the ${phrase} of ${thing.id} is not written`, thing.at);
  const [toObject, toPlate] = [across, on].map(l => legs.get(l)) as [Cell | undefined, Cell | undefined];
  if (!toObject || !toPlate) return none(`how far ${screen.id}, ${object.id} and ${arm.plate.id} are from each other is not known`);
  const radius = graph.value(beams.radius(onto));
  const count = radius === undefined ? 0 : patchesFor(radius, size.map(c => graph.value(c) ?? 0) as [number, number, number]);
  const through = ways.seen(screen, onto, across, true);
  const front = beamNumbers(beams.at(onto));
  const ofScreen = objectLight({ shape: 'screen', lying: 'upright', count, byAngle: through.length === 1, plateByAngle: true });
  const lost = [fact(screen, 'loss'), fact(screen, 'scatter')];
  const from = ways.litAt(arm);
  const angle = from && graph.value(from);
  if (angle === undefined) return none(`from where ${screen.id} lights ${object.id} is not known: write “lit at” of ${object.id}`);

  if (angle > BEHIND) {
    // The plate sees the screen itself, as far as what stands before it lets it.
    const name = `${base}.way from ${screen.id}`;
    const distance = graph.find(name) ?? graph.derive(name, weighted('way past the object', 'sum of both legs', [1, 1]), [toObject, toPlate], LENGTH, `way from ${screen.id} past ${object.id} to ${arm.plate.id}`, { unit: MM });
    const each = graph.derive(`${base}.light past ${object.id} for each watt`, ofScreen, [...front, distance, ways.angle(arm), fact(screen, 'scatter angle'), ...through, ...size], PER_WATT, `light of ${screen.id} at ${arm.plate.id} for each watt on it, if it lost nothing and ${object.id} were not there`, { unit: FOR_EACH });
    if (each.missing) return each;
    const more = [...lost, fact(object, 'passes')];
    return { cells: [each, ...more], make: (n, words, power) => graph.derive(n, PREDICTED_BEHIND, [power, each, ...more], LIGHT, words, { unit: MICRO }) };
  }

  const body = ways.size(object, false);
  if (!body) return none(`how large ${object.id} is, is not written: give it a “size”`);
  const squarely = graph.find('lit squarely') ?? graph.input('lit squarely', { value: 0, dim: ANGLE }, 'computed', 'light that falls squarely');
  const onObject = graph.derive(`${base}.light for each watt`, ofScreen, [...front, toObject, squarely, fact(screen, 'scatter angle'), ...through, ...size], PER_WATT, `light on ${object.id} for each watt on ${screen.id}, if that lost nothing`, { unit: FOR_EACH });
  if (onObject.missing) return onObject;
  const seen = ways.seen(object, across, on, false);
  const stand = ways.stands(seen);
  const share = graph.derive(`${base}.share of the light on ${object.id}`, evenlyLit({ ...ways.laid(object), count: 0, ...stand.by }), [toPlate, ...stand.cells, fact(object, 'gloss'), fact(object, 'gloss angle'), ...seen, ...body], NUMBER, `light at ${arm.plate.id} as a share of that on ${object.id}, were it white`);
  if (share.missing) return share;
  const more = [...lost, share, fact(object, 'tone'), fact(object, 'scatter')];
  return { cells: [onObject, ...more], make: (n, words, power) => graph.derive(n, PREDICTED_SOFT, [power, onObject, ...more], LIGHT, words, { unit: MICRO }) };
}
