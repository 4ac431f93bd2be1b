/** A setup without places as what has to be laid out: things that stand somewhere, the legs between them, and what is straight, turned or lit where. */
import { holeSpacing } from '../../model/holes.ts';
import type { Leg, Setup, Thing } from '../../model/model.ts';
import type { Arm } from '../../model/arms.ts';
import { tableSize } from '../../model/table.ts';
import type { Results } from '../plan.ts';

/** How the place of a thing is found. */
export type Stand =
  /** anywhere */
  | { readonly kind: 'free' }
  /** the laser: near a corner, shining along the table's edge */
  | { readonly kind: 'laser' }
  /** the first thing that a laser meets: in front of it */
  | { readonly kind: 'before'; readonly laser: number }
  /** what is met straight behind something: on from it in the direction in which light came */
  | { readonly kind: 'straight'; readonly from: number; readonly by: number };

export interface Piece {
  readonly thing: Thing;
  readonly stand: Stand;
  /** radius of the room that it takes, mm, mount included */
  readonly room: number;
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** what stands in it, from its start on, and how far apart, mm */
  readonly within: readonly Thing[];
  /** radius of its light at start and end, mm */
  readonly light: readonly [number, number];
}

/** At a mirror, or where a splitter reflects: the pieces before, at and behind it. */
export interface Turn { readonly from: number; readonly at: number; readonly to: number }

/** A pair of arms that is to match: the stretches of each that the other has not. */
export interface Match { readonly object: readonly Stretch[]; readonly reference: readonly Stretch[] }

/** A plate with its object and the last piece before each. */
export interface Seen { readonly plate: number; readonly object: number; readonly lit: number; readonly reference: number | undefined; readonly behind: boolean; readonly angle: number | undefined }

export interface Ways {
  readonly pieces: readonly Piece[];
  readonly stretches: readonly Stretch[];
  readonly turns: readonly Turn[];
  readonly matches: readonly Match[];
  readonly seen: readonly Seen[];
}

/** Why a setup cannot be laid out, in words. */
export interface Unfit { readonly why: string }

/** What light goes straight through is put into a leg. */
const isWithin = (t: Thing): boolean => t.kind.light === 'passes';
const WIDE = new Set(['spreader', 'lens', 'collimator']);

export function waysOf({ setup, arms }: Results): Ways | Unfit {
  const placed = [...setup.things.values()].filter(t => t.placement !== undefined);
  if (placed.length > 0) return { why: `${placed[0]!.id} has a place already; take the places out that are to be found, of all things` };
  const measured = [...setup.beams.values()].flatMap(b => b.legs).find(l => l.length !== undefined);
  if (measured) return { why: `the leg to ${measured.to} has a length; a layout decides all lengths, so take them out` };
  if (arms.arms.length === 0) return { why: 'no beam leads from a laser to a plate' };
  if (arms.arms.some(a => a.object?.kind.light === 'diffracts')) return { why: 'transfers are not laid out yet' };
  const index = new Map<string, number>();
  const pieces: { thing: Thing; stand: Stand; room: number }[] = [];
  const add = (thing: Thing, stand: Stand): number => {
    let i = index.get(thing.id);
    if (i === undefined) { index.set(thing.id, i = pieces.length); pieces.push({ thing, stand, room: roomOf(thing) }); }
    return i;
  };
  const stretches: Stretch[] = [];
  const turns: Turn[] = [];
  const byLeg = new Map<Leg, Stretch>();
  const arrived = new Map<number, number>();
  let left = [...setup.beams.values()];
  // A beam is laid out once it is known where its light comes from.
  while (left.length > 0) {
    const ready = left.filter(b => b.from && (b.from.kind.light === 'source' || index.has(b.from.id)));
    if (ready.length === 0) return { why: `nothing leads to ${left[0]!.from?.id ?? left[0]!.id}` };
    left = left.filter(b => !ready.includes(b));
    for (const beam of ready) {
      let at = add(beam.from!, { kind: 'laser' });
      let port = beam.from!.kind.light === 'source' ? undefined : beam.port;
      let waiting: { thing: Thing; leg: Leg }[] = [];
      for (const leg of beam.legs) {
        const to = leg.target;
        if (!to) return { why: `${leg.to} is no thing of the setup` };
        if (isWithin(to)) { waiting.push({ thing: to, leg }); continue; }
        const from = arrived.get(at);
        const { light } = pieces[at]!.thing.kind;
        const straight = from !== undefined && (port === 'through' || ((light === 'recorded' || light === 'shares') && port !== 'reflected'));
        const i = add(to, light === 'source' ? { kind: 'before', laser: at } : straight ? { kind: 'straight', from, by: at } : { kind: 'free' });
        if (from !== undefined && (light === 'turns' || (light === 'shares' && port === 'reflected'))) turns.push({ from, at, to: i });
        const stretch: Stretch = { from: at, to: i, within: waiting.map(w => w.thing), light: [THIN, THIN] };
        stretches.push(stretch);
        for (const w of [...waiting.map(x => x.leg), leg]) byLeg.set(w, stretch);
        if (!arrived.has(i)) arrived.set(i, at);
        [at, port, waiting] = [i, leg.port, []];
      }
    }
  }
  const wide = spread(arms.arms, byLeg, stretches);
  const all = wide.map((light, i) => ({ ...stretches[i]!, light }));
  const of = new Map(stretches.map((s, i) => [s, all[i]!]));
  const own = (a: Arm): Set<Stretch> => new Set(a.path.flatMap(l => { const s = byLeg.get(l); return s ? [of.get(s)!] : []; }));
  const matches: Match[] = [];
  const seen: Seen[] = [];
  const reflection = (setup.facts.get('hologram')?.value as { text?: string } | undefined)?.text === 'reflection';
  for (const a of arms.arms) {
    if (a.role !== 'object' || !a.object) continue;
    const reference = arms.arms.find(x => x.plate === a.plate && x.role === 'reference' && x.laser === a.laser);
    const [mine, others] = [own(a), reference ? own(reference) : new Set<Stretch>()];
    if (reference && reference.beam !== a.beam) matches.push({ object: [...mine].filter(s => !others.has(s)), reference: [...others].filter(s => !mine.has(s)) });
    const [plate, object] = [index.get(a.plate.id)!, index.get(a.object.id)!];
    const lit = [...mine].find(s => s.to === object)!.from;
    const last = reference && reference.beam !== a.beam ? [...others].find(s => s.to === plate)?.from : undefined;
    // The reference comes as the lamp will, unless the plate says otherwise.
    const lamp = [...setup.things.values()].find(t => t.kind.word === 'lamp');
    const angle = a.plate.facts.get('reference angle')?.value ?? lamp?.facts.get('angle')?.value;
    if (lit !== plate) seen.push({ plate, object, lit, reference: last, behind: reflection, angle: angle?.kind === 'quantity' ? Math.abs(angle.quantity.value) : undefined });
  }
  return { pieces, stretches: all, turns, matches, seen };
}

const THIN = 3;
/** Radii of the light in each stretch: behind what spreads it, to what is wide enough for a plate or an object; mm. */
function spread(arms: readonly Arm[], byLeg: ReadonlyMap<Leg, Stretch>, stretches: readonly Stretch[]): [number, number][] {
  const light = new Map<Stretch, [number, number]>(stretches.map(s => [s, [THIN, THIN]]));
  for (const arm of arms) {
    const end = arm.path.findIndex(l => l.target?.kind.light === 'scatters' || l.target === arm.plate);
    const from = arm.path.findIndex(l => l.target !== undefined && WIDE.has(l.target.kind.word));
    if (from >= 0 && from < end) {
      const way = [...new Set(arm.path.slice(from, end + 1).map(l => byLeg.get(l)!))];
      const last = radiusOf(arm.path[end]!.target!);
      way.forEach((s, i) => light.set(s, [THIN + (last * i) / way.length, THIN + (last * (i + 1)) / way.length]));
    }
    for (const l of arm.path.slice(end + 1)) { const s = byLeg.get(l); if (s) light.set(s, [radiusOf(arm.path[end]!.target!), radiusOf(arm.plate)]); }
  }
  return stretches.map(s => light.get(s)!);
}

function sizeOf(t: Thing): readonly number[] {
  const size = t.facts.get('size')?.value;
  const diameter = t.facts.get('diameter')?.value;
  return size?.kind === 'sizes' ? size.parts.map(p => p.value * 1000) : diameter?.kind === 'quantity' ? [diameter.quantity.value * 1000] : t.kind.footprint?.assumed ?? [50, 50];
}
/** Half of what light has to be as wide as, mm. */
const radiusOf = (t: Thing): number => Math.hypot(sizeOf(t)[0] ?? 50, sizeOf(t)[1] ?? sizeOf(t)[0] ?? 50) / 2;
/** What it takes of the table round its place, mm. */
function roomOf(t: Thing): number {
  const f = t.kind.footprint;
  return f ? Math.max((sizeOf(t)[0] ?? 50) / 2 + f.mount, f.face === 'body' ? (sizeOf(t)[2] ?? 50) / 2 : f.depth / (f.lies === 'behind' ? 1 : 2)) : 40;
}

export const tableOf = (setup: Setup): readonly [number, number] => {
  const [length, width] = tableSize(setup) ?? [1.2, 0.9];
  return [length * 1000, width * 1000];
};
export const holesOf = (setup: Setup): number => (holeSpacing(setup) ?? 0.025) * 1000;
