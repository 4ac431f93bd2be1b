/** How a finished hologram hangs: as in its holder or flipped, what is up, on which side its layer is, and from where its lamp has to come. All of it follows from the text and the places. */
import type { Thing } from '../../model/model.ts';
import type { PairFringes } from '../fringes/fringes.ts';
import { lampSide, type LampSide, type Order } from '../rules/replay.ts';
import type { Records } from '../masters/records.ts';
import type { Values } from '../values.ts';

export type { LampSide };

export interface Hung {
  /** 1 as in its holder; −1 flipped, lit the way of its reference backwards */
  readonly order: Order;
  /** whether the text says so */
  readonly written: boolean;
  /** near parts of the object come near to the viewer, or the image is inside out */
  readonly depth: 'orthoscopic' | 'pseudoscopic';
  /** from where its light has to come, by where the reference came from and where the top was; undefined where the text does not tell both */
  readonly from?: LampSide;
  /** where the top was in the holder, as written */
  readonly up?: string;
  /** the layer looks at the viewer; undefined where its side is not written */
  readonly layerFront?: boolean;
}

export function hungOf(lamp: Thing, f: PairFringes, values: Values, records: Records): Hung {
  const { plate, pair } = f;
  const word = lamp.facts.get('hung')?.value;
  const written = word?.kind === 'words';
  const master = pair.arm.object?.kind.light === 'diffracts' ? pair.arm.object : undefined;
  const order: Order = written ? (word.text === 'flipped' ? -1 : 1) : master ? -1 : 1;
  const turned = master !== undefined && isInsideOut(master, values, records);
  const from = fromOf(f, order, values);
  const up = plate.facts.has('up') ? values.words(plate, 'up') : undefined;
  const layer = plate.facts.has('emulsion') ? values.words(plate, 'emulsion') : undefined;
  const onObjectSide = layer === undefined ? undefined : layer.startsWith('toward') === (layer.endsWith('object') || f.way === 'transmission');
  return {
    order, written, depth: (order === 1) !== turned ? 'orthoscopic' : 'pseudoscopic', ...(from ? { from } : {}), ...(up !== undefined ? { up } : {}),
    // Flipped, one looks at it from where the object stood, else from the other side.
    ...(onObjectSide !== undefined ? { layerFront: onObjectSide === (order === -1) } : {}),
  };
}

/** The real image of a master is inside out, unless what it was made from was so itself; a virtual one is as that was. */
function isInsideOut(master: Thing, values: Values, records: Records): boolean {
  const record = records.of(master);
  const before = record?.object?.kind.light === 'diffracts' && isInsideOut(record.object, record.page.values, record.page.records);
  return (values.words(master, 'image') !== 'virtual') !== before;
}

/** Undefined where it is not written what is up, or nothing tells from which side the reference comes. */
function fromOf(f: PairFringes, order: Order, values: Values): LampSide | undefined {
  const { plate, from: { known, inputs } } = f;
  const up = plate.facts.has('up') ? values.words(plate, 'up') : undefined;
  if (up === undefined) return undefined;
  if (known.by === 'angles') {
    if (!plate.facts.has('reference from') || known.from === 'the side' || (up !== 'up' && up !== 'down')) return undefined;
    return (known.from === 'above') === (up === 'up') === (order === 1) ? 'above' : 'below';
  }
  const at = inputs.slice(0, 12).map(c => values.graph.value(c));
  if (at.some(v => v === undefined)) return undefined;
  return lampSide(at as number[], up, order);
}
