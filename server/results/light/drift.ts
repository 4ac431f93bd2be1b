/** Creeping fringes: how long the shutter may be open, and what the drift leaves. */
import type { Reading, Thing } from '../../model/model.ts';
import { FREQUENCY, NUMBER, parseUnit, TIME } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { DRIFT_BRIGHTNESS, LONGEST_EXPOSURE } from '../rules/light.ts';
import { weighted } from '../rules/lengths.ts';
import type { LightContext } from './context.ts';
import { counting } from './fates.ts';
import type { Meters } from './meter.ts';

export interface Drift {
  readonly plate: Thing;
  readonly reading: Reading;
  readonly rate: Cell;
  readonly longest: Cell;
  /** how long the shutter is open: as written for the setup, else as worked out */
  readonly exposure: Cell;
  readonly brightness: Cell;
}

const READ = weighted('drift', 'as it was read', [1]);
const PER_MINUTE = parseUnit('fringes/min')!;

/** Undefined where no drift was read at the plate. A reading without a place belongs to the only plate there is. */
export function driftAt(plate: Thing, plates: readonly Thing[], exposure: () => Cell, meters: Meters, { readings, graph, values, published, alias, fates }: LightContext): Drift | undefined {
  const reading = counting(readings.filter(r => r.measured?.kind === 'drift' && (r.measured.plate ? r.measured.plate === plate : plates.length === 1)), fates);
  const read = reading && meters.input(reading);
  if (read?.dim !== FREQUENCY) return undefined;
  const rate = graph.derive(`${plate.id}.drift`, READ, [read], FREQUENCY, `drift of the fringes at ${plate.id}`, { unit: read.unit ?? PER_MINUTE, at: reading!.at });
  fates.set(reading!, { kind: 'counts', of: rate, says: rate });
  const longest = graph.value(rate) === 0
    ? values.missing(`${plate.id}.longest exposure`, TIME, `longest exposure of ${plate.id}`, { code: 'value-missing', why: `no drift was seen at ${plate.id}`, at: reading!.at })
    : graph.derive(`${plate.id}.longest exposure`, LONGEST_EXPOSURE, [rate], TIME, `longest exposure of ${plate.id}`);
  const time = values.setupFact('exposure') ?? exposure();
  const brightness = graph.derive(`${plate.id}.drift brightness`, DRIFT_BRIGHTNESS, [rate, time], NUMBER, `brightness that the drift leaves at ${plate.id}`);
  published.push(rate, longest, ...(brightness.missing ? [] : [brightness]));
  for (const [name, cell] of [['drift', rate], ['longest exposure', longest], ['drift brightness', brightness]] as const) alias(name, cell);
  return { plate, reading: reading!, rate, longest, exposure: time, brightness };
}
