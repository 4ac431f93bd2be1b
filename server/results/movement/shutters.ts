/** Shutters that stand on the table and shake it as they open. */
import type { Setup, Thing } from '../../model/model.ts';
import { NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { RING_SHARE } from '../rules/movement.ts';
import type { Values } from '../values.ts';

export interface Ringing {
  readonly shutter: Thing;
  readonly time: Cell;
  readonly exposure: Cell;
  /** for how much of the exposure the table rings */
  readonly share: Cell;
}

const PERCENT = parseUnit('%')!;

/** Only of shutters that are written to stand on the table, or to shake it; and where it is known how long they are open. */
export function shuttersOf({ setup, values, exposure }: { readonly setup: Setup; readonly values: Values; readonly exposure: () => Cell | undefined }): Ringing[] {
  return [...setup.things.values()].flatMap((shutter): Ringing[] => {
    if (shutter.kind.word !== 'shutter' || values.words(shutter, 'mounted') !== 'table' || !(shutter.facts.has('mounted') || shutter.facts.has('ring time'))) return [];
    const [time, open] = [values.fact(shutter, 'ring time'), exposure()];
    if (!time || !open || time.missing || open.missing || !(values.graph.value(open)! > 0)) return [];
    return [{ shutter, time, exposure: open, share: values.graph.derive(`${shutter.id}.ring share`, RING_SHARE, [time, open], NUMBER, `share of the exposure in which ${shutter.id} shakes the table`, { unit: PERCENT }) }];
  });
}
