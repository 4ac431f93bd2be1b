/** Layouts of a setup without places: up to three that can be built, each tried on a copy of the page and told nothing against by its findings. */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import { show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import type { Results } from '../../results/plan.ts';
import { layout } from '../../results/layout/search.ts';
import { holesOf, tableOf, waysOf } from '../../results/layout/ways.ts';
import { layoutEdits, placements } from './writing.ts';
import type { Places } from '../../results/layout/worth.ts';

export interface Layout {
  readonly edits: readonly Edit[];
  /** what is written for each thing, by its name */
  readonly written: ReadonlyMap<string, string>;
  /** the setup as it is then */
  readonly results: Results;
  readonly after: Snapshot;
  /** what is still told of it: notes */
  readonly notes: readonly string[];
}

export interface Layouts {
  readonly found: readonly Layout[];
  /** why there is none */
  readonly why?: string;
  readonly tried: number;
  readonly table: readonly [number, number];
  readonly holes: number;
}

/** Of what assumed sizes let expect there is room elsewhere. */
const IN_THE_WAY: ReadonlySet<string> = new Set(['leg-blocked', 'things-overlap', 'beam-clipped', 'reference-on-object', 'second-spot', 'face-parallel', 'plate-turned-round', 'arms-mismatched']);

const WANTED = 3;
const SEEDS = 40;
/** What a string tells, mm. */
const MATCHED = 3;
/** Two layouts of which no thing stands farther apart are one, mm. */
const ALIKE = 150;

/** In steps: one for each that is looked for. */
export function* laying(snapshot: Snapshot, r: Results, library: Library): Generator<void, Layouts> {
  const [table, holes] = [tableOf(r.setup), holesOf(r.setup)];
  const ways = waysOf(r);
  if ('why' in ways) return { found: [], why: ways.why, tried: 0, table, holes };
  const before = new Set(snapshot.findings.map(f => `${f.code} ${f.subject}`));
  const found: (Layout & { readonly places: Places })[] = [];
  let tried = 0;
  let nearest = '';
  for (let seed = 1; seed <= SEEDS && found.length < WANTED; seed++) {
    const { places, worth } = yield* layout(ways, table, holes, seed, MATCHED);
    tried++;
    yield;
    if (worth > 0 || found.some(f => f.places.every((p, i) => Math.hypot(p[0] - places[i]![0], p[1] - places[i]![1]) < ALIKE))) continue;
    const placed = placements(ways, places);
    const edits = layoutEdits(placed);
    const after = analyse(snapshot.uri, applyEdits(snapshot.text, edits), library);
    const results = after.results.find(x => x.setup.name === r.setup.name);
    const told = after.findings.filter(f => f.setup === r.setup.name && f.accepted === undefined && !before.has(`${f.code} ${f.subject}`));
    const against = told.find(f => f.severity === 'error' || f.severity === 'warning' || IN_THE_WAY.has(f.code));
    if (against) nearest ||= against.message;
    if (!results || against) continue;
    found.push({ places, edits, written: new Map([...placed].map(([t, words]) => [t.id, words])), results, after, notes: told.filter(f => f.severity === 'note').map(f => f.message) });
  }
  // The least said about it first, then what takes the least room.
  found.sort((a, b) => a.notes.length - b.notes.length || lengthOf(a.results) - lengthOf(b.results));
  const why = nearest === '' ? `nothing was found in ${tried} tries on a table of ${table[0]} x ${table[1]} mm; a larger table or fewer mirrors may do` : `of ${tried} tries none was free of findings: ${nearest}`;
  return { found, tried, table, holes, ...(found.length > 0 ? {} : { why }) };
}

const lengthOf = (r: Results): number => [...r.legs].reduce((sum, [, cell]) => sum + (r.graph.value(cell) ?? 0), 0);

/** What is told of a layout in a line: "mismatch 2 mm, reference angle 41.6°, lighting angle 31°". */
export function layoutWords({ results: r }: Layout): string {
  const of = (name: string): string[] => r.plates.flatMap(p => {
    const cell = r.graph.find(`${p.plate.id}.${name}`) ?? (r.aliases.get(name)?.length === 1 ? r.aliases.get(name)![0] : undefined);
    const value = cell && r.graph.value(cell);
    return cell === undefined || value === undefined ? [] : [`${name} ${cell.dim === ANGLE ? show(Math.round((value * 1800) / Math.PI) * Math.PI / 1800, ANGLE) : show(Math.abs(Math.round(value * 1e4) / 1e4), cell.dim)}`];
  });
  return [...of('mismatch'), ...of('reference angle'), ...of('lighting angle')].join(', ');
}

export function layoutsOf(snapshot: Snapshot, r: Results, library: Library): Layouts {
  const steps = laying(snapshot, r, library);
  for (;;) { const step = steps.next(); if (step.done) return step.value; }
}
