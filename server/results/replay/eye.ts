/** From where somebody looks, until a viewer is written. */
import type { Thing } from '../../model/model.ts';
import { LENGTH, parseUnit } from '../../model/units.ts';
import type { Cell, Graph } from '../graph.ts';

const ARM = { value: 0.5, dim: LENGTH, unit: parseUnit('mm')! } as const;

/** `base`: what the names of the results of a plate under a lamp begin with */
export const eyeOf = (plate: Thing, base: string, graph: Graph): Cell => graph.find(`${base}.viewing distance`)
  ?? graph.input(`${base}.viewing distance`, ARM, 'assumed', `distance of who looks at ${plate.id}`, { reason: 'about an arm’s length, until a viewer is written; common practice' });
