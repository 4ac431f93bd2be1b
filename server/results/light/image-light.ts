/** Light of a transfer: what a first hologram sends into its image, where the next plate takes it up. */
import { ontoObject, type Arm } from '../../model/arms.ts';
import { LENGTH, LIGHT, NUMBER, parseUnit } from '../../model/units.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import { maskOf, openSides, replayAngle } from '../places/mask.ts';
import { IMAGE_ABOUT, imageLight, PREDICTED_IMAGE } from '../rules/image.ts';
import { landingShare } from '../rules/table.ts';
import type { LightContext } from './context.ts';
import { beamNumbers, FOR_EACH, MICRO, PER_WATT, spreads, type Ways, type Yield } from './yield.ts';

const [MM, PERCENT] = [parseUnit('mm')!, parseUnit('%')!];

export function imageYield(arm: Arm, { angle, none }: Ways, context: LightContext): Yield | Cell {
  const { graph, values, legs, beams, places } = context;
  const hologram = arm.object!;
  const base = `${arm.plate.id}.${arm.name}`;
  const onto = ontoObject(arm);
  const last = arm.path.at(-1)!;
  if (!onto) return none(`no light falls on ${hologram.id}`);
  if (arm.path.at(-2) !== onto) return none(`something stands between ${hologram.id} and ${arm.plate.id}: meter the light of ${arm.name} there`);
  if (!spreads(arm)) return none(`nothing spreads the beam of ${arm.name} before ${hologram.id}: write the spreading lens that it goes through`);
  const open = openSides(arm, values);
  if (!open) return none(`how large ${hologram.id} is, is not written: give it a “size”`);
  const image = sidesOfThing(hologram, values, 'image ');
  if (!image) return none(`how large the image of ${hologram.id} is, is not written: give ${hologram.id} an “image size”`);
  const distance = legs.get(last) ?? none(`how far ${hologram.id} is from ${arm.plate.id} is not known`);
  // Behind a mask all that comes to it has passed the opening already.
  const caught = maskOf(arm, values) ? [] : [graph.derive(`${hologram.id}.${arm.name}.caught`, landingShare('rectangular'), [...beamNumbers(beams.at(onto)), replayAngle(hologram, onto, places, values), ...open], NUMBER, `share of ${onto.beam.id} that falls on ${hologram.id}`, { unit: PERCENT })];
  const each = graph.derive(`${base}.light for each watt`, imageLight(values.words(hologram, 'image') === 'virtual'), [...open, image[0]!, image[1]!, imageDistance(arm, distance, context), distance, angle(arm), ...caught],
    PER_WATT, `light of ${arm.name} at ${arm.plate.id} for each watt on ${hologram.id}, if all went into the image`, { unit: FOR_EACH });
  if (each.missing) return each;
  const fact = (phrase: string): Cell => values.fact(hologram, phrase) ?? none(`the ${phrase} of ${hologram.id} is not written`);
  const more = [fact('efficiency'), fact('image light')];
  return { cells: [each, ...more], make: (name, words, power) => graph.derive(name, PREDICTED_IMAGE, [power, each, ...more], LIGHT, words, { unit: MICRO }) };
}

/** Where the image is: as read or written, else about at the plate. */
function imageDistance(arm: Arm, plate: Cell, { graph }: LightContext): Cell {
  const { id } = arm.object!;
  const known = graph.find(`${id}.image`);
  if (known && !known.missing) return known;
  const name = `${arm.plate.id}.${arm.name}.image about`;
  const share = graph.find(`${name} share`) ?? graph.input(`${name} share`, { value: 1, dim: NUMBER, spread: { kind: 'within', amount: 0.1 } }, 'assumed', `where the image of ${id} is, as a share of the way to ${arm.plate.id}`, { reason: 'the plate of a transfer mostly stands in the image; common practice. Write “image distance”' });
  return graph.find(name) ?? graph.derive(name, IMAGE_ABOUT, [plate, share], LENGTH, `image of ${id}, from ${id}, as assumed`, { unit: MM });
}
