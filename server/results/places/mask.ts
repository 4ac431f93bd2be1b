/** What is open of a hologram that serves as the object of a transfer: all of it, or what a slit right before it leaves. */
import { objectAt, type Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, parseUnit } from '../../model/units.ts';
import { sidesOfThing } from './extents.ts';
import type { Cell } from '../graph.ts';
import { FROM_NORMAL } from '../rules/geometry.ts';
import { OPEN_SIDE } from '../rules/image.ts';
import type { Values } from '../values.ts';
import { assumedAngle } from './angles.ts';
import type { Places } from './places.ts';

const MM = parseUnit('mm')!;

/** The slit that light meets right before a hologram. */
export interface Mask {
  readonly slit: Thing;
  /** the leg on which the beam comes to the slit */
  readonly onto: Leg;
  /** it runs up and down on the table */
  readonly upright: boolean;
}

/** Undefined where nothing masks the hologram of an arm. */
export function maskOf(arm: Arm, values: Values): Mask | undefined {
  const onto = arm.path[objectAt(arm) - 1];
  const slit = onto?.target;
  if (arm.object?.kind.light !== 'diffracts' || slit?.kind.word !== 'slit' || !onto) return undefined;
  // A slit is told as whoever looks at the finished plate sees it; a plate whose top points aside lies on its side on the table.
  const aside = ['left', 'right'].includes(values.words(arm.plate, 'up') ?? 'up');
  return { slit, onto, upright: (values.words(slit, 'direction') === 'vertical') !== aside };
}

/** Width and height of what is open of the hologram of an arm; undefined where its size is not written. */
export function openSides(arm: Arm, values: Values): readonly [Cell, Cell] | undefined {
  const hologram = arm.object;
  const [width, height] = (hologram && sidesOfThing(hologram, values)) ?? [];
  if (!hologram || !width || !height) return undefined;
  const mask = maskOf(arm, values);
  if (!mask) return [width, height];
  const { graph } = values;
  const across = values.fact(mask.slit, 'width');
  const along = values.fact(mask.slit, 'length');
  const open = (side: Cell, slit: Cell | undefined, what: string): Cell => {
    const name = `${hologram.id}.open ${what} behind ${mask.slit.id}`;
    return slit ? graph.find(name) ?? graph.derive(name, OPEN_SIDE, [side, slit], LENGTH, `${what} that ${mask.slit.id} leaves open of ${hologram.id}`, { unit: MM }) : side;
  };
  return mask.upright ? [open(width, across, 'width'), open(height, along, 'height')] : [open(width, along, 'width'), open(height, across, 'height')];
}

/** Angle, from its normal, at which the light comes to a hologram: by the places, else assumed. */
export function replayAngle(hologram: Thing, onto: Leg, places: Places, values: Values): Cell {
  const { graph } = values;
  const name = `${hologram.id}.angle of its light`;
  const known = graph.find(name);
  if (known) return known;
  const [normal, light] = [places.directions.facing(places.own(hologram)), places.directions.of(onto)];
  const words = `angle at which light comes to ${hologram.id}`;
  if (normal && light && ![...normal, ...light].some(c => c.missing)) return graph.derive(name, FROM_NORMAL, [...normal, ...light], ANGLE, words);
  return assumedAngle(name, words, 'a hologram is lit as it was by its reference, mostly at 30° to 60°; common practice', values);
}
