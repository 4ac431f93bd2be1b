/** What the page of its recording tells of a hologram that serves a transfer. What the page of the transfer writes itself counts before that. */
import type { BoundFact, Master, Place, Setup, Thing } from '../../model/model.ts';
import type { Quantity } from '../../model/quantity.ts';
import { fileName } from '../../model/scope.ts';
import { LENGTH, parseUnit } from '../../model/units.ts';
import type { PairFringes } from '../fringes/fringes.ts';
import type { Cell, Graph } from '../graph.ts';
import { objectDistance, recordedAngles, referenceCurvature, type Recording } from './recorded.ts';

const MM = parseUnit('mm')!;

/** The results of the page of a recording. */
export type Page = Recording & { readonly graph: Graph; readonly records: Records };

/** A hologram as it was recorded. Cells are those of the page of its recording. */
export interface Record {
  readonly master: Master;
  readonly page: Page;
  /** undefined where its beams do not tell how it was recorded */
  readonly pair?: PairFringes;
  readonly object?: Thing;
  /** how far the object was, or the image of its own master before it */
  readonly distance?: Cell;
  /** of the reference, 1/m */
  readonly curvature?: Cell;
  readonly angle?: Cell;
  readonly objectAngle?: Cell;
  readonly wavelength?: Cell;
}

export interface Told { readonly quantity: Quantity; readonly at: Place; readonly words: string }

export class Records {
  private readonly known = new Map<string, Record | undefined>();

  /** `results`: of the setup of a recording, which no master leads back from. */
  constructor(private readonly setup: Setup, private readonly results: (setup: Setup) => Page) {}

  of({ id }: Thing): Record | undefined {
    if (!this.known.has(id)) {
      const master = this.setup.masters?.get(id);
      this.known.set(id, master && recordOf(master, this.results(master.setup)));
    }
    return this.known.get(id);
  }

  /** Where its image is and how deep, with the band that they have on the page of the recording. */
  quantity(thing: Thing, phrase: string): Told | undefined {
    if (phrase !== 'image distance' && phrase !== 'depth') return undefined;
    const record = this.of(thing);
    const cell = phrase === 'depth' ? record?.pair?.pair.depth : record?.distance;
    const value = cell && record!.page.graph.value(cell);
    if (value === undefined || value <= 0) return undefined;
    const amount = record!.page.graph.uncertainty(cell!);
    return { quantity: { value, dim: LENGTH, unit: MM, ...(amount > 0 ? { spread: { kind: 'std', amount } } : {}) }, at: record!.object?.at ?? record!.master.plate.at, words: recordedIn(record!.master) };
  }

  /** Its size, and that of its image: of the plate and of the object as they are written there. */
  sizes(thing: Thing, phrase: string): BoundFact | undefined {
    const master = this.setup.masters?.get(thing.id);
    const of = phrase === 'size' ? master?.plate : phrase === 'image size' ? this.of(thing)?.object : undefined;
    return of?.facts.get(of.kind.light === 'diffracts' ? 'image size' : 'size');
  }
}

/** `as “Limpet, master” of limpet.plate was recorded` */
export const recordedIn = ({ setup }: Master): string => `as “${setup.name}” of ${fileName(setup.uri)} was recorded`;

function recordOf(master: Master, page: Page): Record {
  const pair = page.fringes.pairs.find(f => f.plate === master.plate);
  if (!pair) return { master, page };
  const base = `${master.plate.id}.as master`;
  const { object, laser } = pair.pair.arm;
  const [angle, objectAngle] = recordedAngles(pair, base, page);
  const wavelength = page.values.fact(laser, 'wavelength');
  return { master, page, pair, ...(object ? { object } : {}), distance: objectDistance(pair, base, page), curvature: referenceCurvature(pair, base, page), angle, objectAngle, ...(wavelength ? { wavelength } : {}) };
}
