/** Things moved out of the way: to the nearest hole, or whole centimetre, from which what was found is gone. */
import type { Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { holeSpacing } from '../../model/holes.ts';
import type { Thing } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { writtenOf, type Written } from './numbers.ts';

export interface Move {
  readonly thing: Thing;
  /** from and to, m */
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly numbers: readonly [Written, Written];
}

/** Findings that are about where something stands, and what is so where they are gone. */
export const MOVED: Readonly<Record<string, string>> = {
  'leg-blocked': 'the beam is free', 'things-overlap': 'there is room for both', 'off-the-table': 'it stands on the table', 'mirror-in-line': 'it turns the light', 'plate-missed': 'the beam meets the plate', 'reference-on-object': 'the reference passes the object',
  'dark-side-lit': 'the side that the plate sees is lit', 'face-parallel': 'it no longer faces the plate squarely', 'reference-too-near': 'the reference stands clear of the object',
};

/** Where there are no holes, m: boards mostly have them an inch apart (common practice). */
const GRID = 0.025;
/** Nobody looks further than that, in holes: what helps only from there is another layout. */
const RINGS = 8;

/** All places round each thing that the finding names, the nearest first. */
export function* movesFor(finding: Finding, r: Results, { tree, uri }: Snapshot): Generator<Move> {
  if (!(finding.code in MOVED)) return;
  const step = holeSpacing(r.setup) ?? GRID;
  const things = named(finding, r).flatMap(thing => {
    const cells = thing.placement?.at ? r.places.of(thing) : undefined;
    if (!cells || cells[0].at?.uri !== uri) return [];
    const numbers = [writtenOf(cells[0], tree), writtenOf(cells[1], tree)] as const;
    const [x, y] = [r.graph.value(cells[0]), r.graph.value(cells[1])];
    return numbers[0] && numbers[1] && x !== undefined && y !== undefined ? [{ thing, x, y, numbers: [numbers[0], numbers[1]] as const }] : [];
  });
  const [w, d] = r.table.size ?? [Infinity, Infinity];
  // What stands beside the table comes back to its edge first.
  const offset = (v: number, most: number): number => (v < 0 ? Math.ceil(-v / step) : v > most ? -Math.ceil((v - most) / step) : 0);
  for (const [i, j] of ROUND) for (const { thing, x, y, numbers } of things) {
    const to = [onGrid(x + offset(x, w) * step, i, step), onGrid(y + offset(y, d) * step, j, step)] as const;
    if (to[0] < 0 || to[1] < 0 || to[0] > w || to[1] > d || (to[0] === x && to[1] === y)) continue;
    yield { thing, x: [x, to[0]], y: [y, to[1]], numbers };
  }
}

/** So many steps on, from a place on the grid; what stands beside it keeps that. */
const onGrid = (v: number, steps: number, step: number): number => Math.round((v + steps * step) * 1e6) / 1e6;

/** Steps in both directions, those to the nearest places first. */
const ROUND: readonly (readonly [number, number])[] = Array.from({ length: (2 * RINGS + 1) ** 2 }, (_, k) => [Math.floor(k / (2 * RINGS + 1)) - RINGS, (k % (2 * RINGS + 1)) - RINGS] as const)
  .filter(([i, j]) => Math.hypot(i, j) <= RINGS).sort((a, b) => Math.hypot(...a) - Math.hypot(...b));

/** The things that a finding is about: what stands wrong before what it is in the way of. */
function named({ subject, data }: Finding, { setup }: Results): Thing[] {
  const words = [data['thing'], data['mirror'], data['from'], ...subject.split(/[ .]/), data['plate']].filter(w => typeof w === 'string');
  return [...new Set(words)].flatMap(w => setup.things.get(w) ?? []).filter(t => !STAYS.has(t.kind.word));
}
/** The picture is made of these: another place of them is another picture. */
const STAYS: ReadonlySet<string> = new Set(['object', 'plate', 'hologram', 'laser', 'table', 'room', 'viewer', 'wall']);
