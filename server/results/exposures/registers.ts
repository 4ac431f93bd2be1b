/** What several exposures of one plate show under one lamp: whether their images lie on each other, and whether one shows where the other is wanted. */
import type { Thing } from '../../model/model.ts';
import type { Cell, Graph } from '../graph.ts';
import { besideEachOther, imageCells } from '../replay/apart.ts';
import type { Shown } from '../replay/shown.ts';
import type { Exposure, Exposures, OnPlate, Page } from './exposures.ts';
import { valueOf } from './taken.ts';

/** Wavelengths that differ by less are one colour, m. */
const ONE_COLOUR = 2e-9;

/** One exposure under a lamp. Cells are those of the page as the table stood for it. */
export interface Seen { readonly exposure: Exposure; readonly shown: Shown; readonly graph: Graph }

export interface Register {
  readonly lamp: Thing;
  readonly plate: Thing;
  readonly first: Seen;
  readonly other: Seen;
  /** recorded in light of one colour: then they are mostly meant to be seen one without the other */
  readonly oneColour: boolean;
  /** how far a point of the other is seen beside the same point of the first, m, and what no eye sees there; of images in different colours */
  readonly apart?: Cell;
  readonly unseen?: Cell;
}

/** What of the page as it is written is asked. */
type Written = Pick<Page, 'setup' | 'graph' | 'values' | 'replay'> & { readonly exposures: Exposures };

/** Each exposure beside the first one, under each lamp that shows both. */
export function registersOf(r: Written): readonly Register[] {
  return r.exposures.plates.flatMap(on => [...r.setup.things.values()].filter(t => t.kind.word === 'lamp').flatMap(lamp => {
    const [first, ...others] = seenUnder(lamp, on, r);
    return first ? others.map(other => register(lamp, on.plate, first, other, r)) : [];
  }));
}

function seenUnder(lamp: Thing, { plate, all }: OnPlate, r: Written): Seen[] {
  return all.flatMap((exposure): Seen[] => {
    const { replay, graph } = exposure.results ?? r;
    const shown = replay.all.find(s => s.lamp.id === lamp.id && s.plate.id === plate.id && (!exposure.laser || !s.laser || s.laser.id === exposure.laser.id));
    return shown?.image ? [{ exposure, shown, graph }] : [];
  });
}

const wavelengthOf = ({ exposure, shown }: Seen, r: Written): number | undefined => {
  const page = exposure.results ?? r;
  const cell = page.values.fact(shown.pair.pair.arm.laser, 'wavelength');
  return cell && page.graph.value(cell);
};

function register(lamp: Thing, plate: Thing, first: Seen, other: Seen, r: Written): Register {
  const [a, b] = [first, other].map(s => wavelengthOf(s, r)) as [number | undefined, number | undefined];
  const head = { lamp, plate, first, other, oneColour: a !== undefined && b !== undefined && Math.abs(a - b) < ONE_COLOUR };
  const made = apartOf(lamp, first, other, r);
  return made ? { ...head, ...made } : head;
}

function apartOf(lamp: Thing, first: Seen, other: Seen, { graph, values }: Written): { readonly apart: Cell; readonly unseen: Cell } | undefined {
  const taken = (s: Seen, what: string, cell: Cell | undefined): Cell | undefined => (cell && (s.graph === graph ? cell : valueOf(cell, s.graph, `${s.exposure.plate.id}.${s.exposure.thing.id}.replay by ${lamp.id}.${what}`, `${what} of the image of ${s.exposure.thing.id}`, { at: s.exposure.thing.at, reason: `as the page tells with “${s.exposure.variant!.name}”` }, graph)));
  const image = (s: Seen): (Cell | undefined)[] => imageCells(s.shown.image!).map((c, i) => taken(s, ['place', 'angle', 'size'][i]!, c));
  const { view, plate } = first.shown;
  const found = besideEachOther({
    base: `${plate.id}.${other.exposure.thing.id}.replay by ${lamp.id}`, plate, object: first.shown.pair.pair.arm.object, first: image(first), other: image(other), eye: taken(first, 'viewing distance', view.distance), angle: taken(first, 'viewer angle', view.angle),
    words: `how far the image of ${other.exposure.thing.id} is seen beside that of ${first.exposure.thing.id}`,
  }, values);
  return found && { apart: found.cell, unseen: found.unseen };
}
