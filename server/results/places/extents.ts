/** How large plates and objects are, for whoever looks at more than their middles. */
import type { Thing } from '../../model/model.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import type { Values } from '../values.ts';

const SIDES = ['width', 'height', 'depth'] as const;

/** Width and height of a thing, and its depth where the text has one; undefined where no size is written. What somebody asked for before is the same input. `of`: of its image. */
export function sidesOfThing(thing: Thing, values: Values, of: '' | 'image ' = ''): readonly Cell[] | undefined {
  const size = values.sizes(thing, `${of}size`);
  if (size?.value.kind !== 'sizes') return undefined;
  const { graph } = values;
  return size.value.parts.map((q, i) => {
    const name = `${thing.id}.${of}${SIDES[i]!}`;
    return graph.find(name) ?? graph.input(name, q, 'written', `${SIDES[i]!} of ${of ? 'the image of ' : ''}${thing.id}`, { at: size.at });
  });
}

/** What an object's light comes from: the sizes of a box or a ball, or single points from its middle, m. */
export interface Extent {
  readonly shape: 'box' | 'ball' | readonly (readonly [number, number, number])[];
  /** width, height, depth; undefined where none is written, or where there are points */
  readonly sides?: readonly Cell[];
}

/** `depth` is that of the pair. A thing that is flat has none. */
export function extentOf(thing: Thing, depth: Cell | undefined, values: Values): Extent {
  const points = thing.facts.get('points')?.value;
  if (points?.kind === 'places') return { shape: points.places.map(p => [p[0].value, p[1].value, p[2].value]) };
  const ball = values.words(thing, 'shape') === 'sphere';
  const diameter = ball ? values.fact(thing, 'diameter') : undefined;
  if (diameter && !diameter.missing) return { shape: 'ball', sides: [diameter, diameter, diameter] };
  const sides = sidesOfThing(thing, values);
  const [width, height, own] = sides ?? [];
  if (!width || !height) return { shape: 'box' };
  const deep = depth && !depth.missing ? depth : own;
  return { shape: ball ? 'ball' : 'box', sides: [width, height, deep ?? flatDepth(thing, values)] };
}

/** The depth of what has none. */
export function flatDepth({ id }: Thing, { graph }: Values): Cell {
  const name = `${id}.depth of a flat thing`;
  return graph.find(name) ?? graph.input(name, { value: 0, dim: LENGTH }, 'written', `depth of ${id}`);
}
