/** The register of two recordings on one plate: how far their images are seen beside each other under one lamp. */
import { ANGLE, LENGTH, parseUnit } from '../../model/units.ts';
import { sidesOfThing } from '../fringes/extents.ts';
import type { Cell } from '../graph.ts';
import { APART, UNSEEN } from '../rules/replay.ts';
import { eyeOf } from './eye.ts';
import { OPPOSITE } from './recorded.ts';
import type { Apart, ReplayContext, Shown } from './shown.ts';

const [MM, DEGREE] = [parseUnit('mm')!, parseUnit('°')!];
const known = (c: Cell | undefined): c is Cell => c !== undefined && !c.missing;

/** Undefined where one of them has no image, or how large the object is, is not known. */
export function apartOf(one: Shown, first: Shown, { values }: ReplayContext): Apart | undefined {
  const { graph } = values;
  const object = one.pair.pair.arm.object;
  const sides = object && object === first.pair.pair.arm.object ? sidesOfThing(object, values) : undefined;
  const [a, b] = [first, one].map(s => s.image && [s.image.parts.find(p => p.part === 'middle')!.place, s.image.angle, s.image.size]);
  if (!sides || !a?.every(known) || !b?.every(known)) return undefined;
  const widest = sides.slice(0, 2).reduce((x, y) => ((graph.value(y) ?? 0) > (graph.value(x) ?? 0) ? y : x));
  const eye = one.view.distance ?? eyeOf(one.plate, first.base, graph);
  // Who stands nowhere looks straight at the first image.
  const angle = one.view.angle ?? graph.find(`${first.base}.straight view`) ?? graph.derive(`${first.base}.straight view`, OPPOSITE, [first.image!.angle], ANGLE, `from where one looks straight at the image of ${one.plate.id}`, { unit: DEGREE });
  const cell = graph.derive(`${one.base}.apart`, APART, [...a, ...b, eye, angle, widest], LENGTH, `how far the image of ${one.laser!.id} is seen beside that of ${first.laser!.id}`, { unit: MM });
  const unseen = graph.derive(`${one.base}.apart unseen`, UNSEEN, [eye, a[0]!], LENGTH, 'what nobody sees there', { unit: MM });
  return cell.missing ? undefined : { first, cell, unseen };
}
