/** The register of two recordings on one plate: how far their images are seen beside each other under one lamp. */
import { ANGLE, LENGTH, parseUnit } from '../../model/units.ts';
import type { Thing } from '../../model/model.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import { APART, UNSEEN } from '../rules/replay.ts';
import type { Values } from '../values.ts';
import { eyeOf } from './eye.ts';
import { OPPOSITE } from '../masters/recorded.ts';
import type { Apart, Image, ReplayContext, Shown } from './shown.ts';

const [MM, DEGREE] = [parseUnit('mm')!, parseUnit('°')!];
const known = (c: Cell | undefined): c is Cell => c !== undefined && !c.missing;

/** Place, angle and width of an image. */
export const imageCells = (i: Image): readonly [Cell, Cell, Cell] => [i.parts.find(p => p.part === 'middle')!.place, i.angle, i.size];

export interface Beside {
  /** what the names of its results begin with */
  readonly base: string;
  readonly plate: Thing;
  readonly object: Thing | undefined;
  /** see `imageCells` */
  readonly first: readonly (Cell | undefined)[];
  readonly other: readonly (Cell | undefined)[];
  /** distance and angle of the viewer */
  readonly eye: Cell | undefined;
  readonly angle: Cell | undefined;
  readonly words: string;
}

/** How far a point of the other image is seen beside the same point of the first, and what no eye sees there. Undefined where one of them has no image, or how large the object is, is not known. */
export function besideEachOther({ base, plate, object, first, other, words, ...at }: Beside, values: Values): { readonly cell: Cell; readonly unseen: Cell } | undefined {
  const { graph } = values;
  const sides = object && sidesOfThing(object, values);
  const images = [...first, ...other];
  if (!sides || !images.every(known)) return undefined;
  const [done, seen] = [graph.find(`${base}.apart`), graph.find(`${base}.apart unseen`)];
  if (done && seen) return { cell: done, unseen: seen };
  const widest = sides.slice(0, 2).reduce((x, y) => ((graph.value(y) ?? 0) > (graph.value(x) ?? 0) ? y : x));
  const eye = at.eye ?? eyeOf(plate, base, graph);
  // Who stands nowhere looks straight at the first image.
  const angle = at.angle ?? graph.derive(`${base}.straight view`, OPPOSITE, [images[1]!], ANGLE, `from where one looks straight at the image of ${plate.id}`, { unit: DEGREE });
  const cell = graph.derive(`${base}.apart`, APART, [...images, eye, angle, widest], LENGTH, words, { unit: MM });
  const unseen = graph.derive(`${base}.apart unseen`, UNSEEN, [eye, images[0]!], LENGTH, 'what nobody sees there', { unit: MM });
  return cell.missing ? undefined : { cell, unseen };
}

/** Of two lasers at once. */
export function apartOf(one: Shown, first: Shown, { values }: ReplayContext): Apart | undefined {
  const object = one.pair.pair.arm.object;
  if (!one.image || !first.image || object !== first.pair.pair.arm.object) return undefined;
  const found = besideEachOther({
    base: one.base, plate: one.plate, object, first: imageCells(first.image), other: imageCells(one.image), eye: one.view.distance, angle: one.view.angle, words: `how far the image of ${one.laser!.id} is seen beside that of ${first.laser!.id}`,
  }, values);
  return found && { first, ...found };
}
