/** Where lamps and viewers stand before a plate that hangs somewhere: as written, else by heights. */
import type { Setup, Thing } from '../../model/model.ts';
import { ANGLE, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { BY_HEIGHT } from '../rules/hang.ts';
import { weighted } from '../rules/lengths.ts';
import type { Values } from '../values.ts';

const DEGREE = parseUnit('°')!;
export const SAME = weighted('image distance', 'as it is written, or stands on the page', [1]);

export class Stands {
  constructor(private readonly setup: Setup, private readonly values: Values) {}

  plateNamed(thing: Thing): Thing | undefined {
    const name = thing.facts.get('plate')?.value;
    return name?.kind === 'words' ? this.setup.things.get(name.text) : undefined;
  }

  /** What stands before a plate: what names it, else what names none. */
  before(word: string, plate: Thing): Thing | undefined {
    const all = [...this.setup.things.values()].filter(t => t.kind.word === word);
    return all.find(t => this.plateNamed(t) === plate) ?? all.find(t => !t.facts.has('plate'));
  }

  /** As written, else by the heights of what is there and of the wall. */
  angleOf(thing: Thing, plate: Thing, name: string, words: string): Cell {
    const { values } = this;
    const { graph } = values;
    const known = graph.find(name);
    if (known) return known;
    const written = thing.facts.has('angle') ? values.fact(thing, 'angle') : undefined;
    if (written) return graph.derive(name, SAME, [written], ANGLE, words, { unit: DEGREE });
    const wall = this.before('wall', plate);
    const [height, hangs, distance] = [values.fact(thing, 'height'), wall && values.fact(wall, 'height'), values.fact(thing, 'distance')];
    if (height && hangs && distance) return graph.derive(name, BY_HEIGHT, [height, hangs, distance], ANGLE, words, { unit: DEGREE });
    return graph.missing(name, ANGLE, words, { code: 'value-missing', why: `the angle of ${thing.id} is not written, nor are its height, its distance and the height of the wall, which tell it`, at: thing.at });
  }

  /** The lamp beside the middle of the plate, where both heights are written. */
  higher(lamp: Thing, plate: Thing): 'above' | 'below' | undefined {
    const wall = this.before('wall', plate);
    const [height, hangs] = [this.values.fact(lamp, 'height'), wall && this.values.fact(wall, 'height')].map(c => c && this.values.graph.value(c));
    return height === undefined || hangs === undefined || height === hangs ? undefined : height > hangs ? 'above' : 'below';
  }
}
