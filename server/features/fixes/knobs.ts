/** What can be set otherwise on a table to change a result: numbers that the result rests on, those of one place together. */
import type { Snapshot } from '../../analysis.ts';
import type { Thing } from '../../model/model.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { asUnknown, type Unknown } from '../../results/solve/unknowns.ts';
import { writtenOf, type Written } from './numbers.ts';

export interface Knob {
  /** what is moved or set; undefined of a fact of the setup itself */
  readonly thing: Thing | undefined;
  readonly kind: 'place' | 'distance' | 'direction' | 'leg' | 'fact';
  readonly numbers: readonly { readonly cell: Cell; readonly unknown: Unknown; readonly written: Written }[];
  /** by how much all of them together move the result, each over where it is looked for, SI */
  readonly reach: number;
}

/** Facts that are set on the table, or by taking another lens; what a thing is, no fix makes otherwise. */
const SET: ReadonlySet<string> = new Set(['reflects', 'density', 'focal length', 'pinhole', 'axis', 'polarization', 'exposure', 'delay', 'settle', 'diameter', 'angle', 'distance', 'height', 'size']);

/** Knobs of a result, in the order in which they are offered: what moves least of what has been set up first, what changes the picture last. */
export function knobsOf(of: Cell, r: Results, { uri, tree }: Snapshot): Knob[] {
  const groups = new Map<string, { thing: Thing | undefined; kind: Knob['kind']; numbers: Knob['numbers'][number][]; reach: number }>();
  // Where a result is at its least, nothing moves it at first.
  const slopes = r.graph.gradient(of);
  for (const cell of r.graph.ancestors(of)) {
    if (cell.rule || cell.origin !== 'written' || cell.at?.uri !== uri || !isOwn(cell.at.line, r)) continue;
    const slope = slopes.get(cell) ?? 0;
    const sort = sortOf(cell.name, r);
    const written = sort && writtenOf(cell, tree);
    if (!written) continue;
    const unknown = asUnknown(cell, r);
    const key = sort.kind === 'place' ? sort.thing!.id : cell.name;
    const group = groups.get(key) ?? { ...sort, numbers: [], reach: 0 };
    groups.set(key, group);
    group.numbers.push({ cell, unknown, written });
    group.reach += Math.abs(slope) * (unknown.high - unknown.low);
  }
  return [...groups.values()].map(g => ({ ...g, numbers: [...g.numbers].sort((a, b) => a.cell.index - b.cell.index) })).sort((a, b) => rank(a) - rank(b) || b.reach - a.reach);
}

const RANK: Readonly<Record<Knob['kind'], number>> = { direction: 0, distance: 0, leg: 0, fact: 1, place: 2 };
/** What the picture shows stays where it is as long as anything else will do. */
const rank = ({ kind, thing }: Knob): number => RANK[kind] + (thing && isShown(thing) ? 10 : 0);
const isShown = ({ kind: { word } }: Thing): boolean => word === 'object' || word === 'plate' || word === 'hologram';
/** Moved by more than that it is another picture, m. */
const SAME_PICTURE = 0.1;
/** The farthest that a thing is moved, m. */
export const farthest = ({ kind, thing }: Knob): number => (kind === 'place' && thing && isShown(thing) ? SAME_PICTURE : Infinity);

const isOwn = (line: number, { setup }: Results): boolean => line > setup.node.at && line <= setup.node.end && !setup.variants.some(v => line >= v.node.at && line <= v.node.end);

function sortOf(name: string, { setup }: Results): { thing: Thing | undefined; kind: Knob['kind'] } | undefined {
  const dot = name.indexOf('.');
  const [owner, what] = dot < 0 ? ['', name.replace(/ as written$/, '')] : [name.slice(0, dot), name.slice(dot + 1)];
  if (/\.length(?:\.plan)?$/.test(name)) return { thing: undefined, kind: 'leg' };
  const thing = setup.things.get(owner);
  if (owner !== '' && !thing) return undefined;
  // A laser is what all else is set up by.
  if (thing && /^[xy]$/.test(what)) return thing.kind.light === 'source' ? undefined : { thing, kind: 'place' };
  if (thing && what === 'by') return { thing, kind: 'distance' };
  if (thing && /^(?:heading|turning|tilt)$/.test(what)) return { thing, kind: 'direction' };
  return SET.has(what) ? { thing, kind: 'fact' } : undefined;
}
