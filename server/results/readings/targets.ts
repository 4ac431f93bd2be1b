/** What a reading of a length is a reading of: legs of the setup, or one arm against another. */
import type { Arm, Arms } from '../../model/arms.ts';
import type { Leg, Measured, Setup, Thing } from '../../model/model.ts';
import { legStart } from '../legs/legs.ts';
import { ownLegs } from '../legs/own-legs.ts';

export type Target =
  | { readonly kind: 'path'; readonly legs: readonly Leg[]; readonly arm?: Arm }
  /** an object arm minus the reference of its plate; `sign` is −1 where the reading has them the other way round */
  | { readonly kind: 'difference'; readonly arm: Arm; readonly reference: Arm; readonly sign: 1 | -1 }
  /** why it cannot be told, or is of nothing that is computed; silent where another finding says so */
  | { readonly kind: 'none'; readonly why: string; readonly silent?: boolean; readonly useless?: boolean };

/** Legs by the things that they lead to. */
export type Ends = ReadonlyMap<Thing, readonly Leg[]>;
export function legsByEnd({ beams }: Setup): Ends {
  const ends = new Map<Thing, Leg[]>();
  for (const { legs } of beams.values()) {
    for (const leg of legs) {
      if (!leg.target) continue;
      const among = ends.get(leg.target);
      if (among) among.push(leg);
      else ends.set(leg.target, [leg]);
    }
  }
  return ends;
}

export function targetOf(m: Measured, setup: Setup, arms: Arms, ends: Ends): Target {
  switch (m.kind) {
    case 'legs': return legsAlong(m.things, setup, ends);
    case 'arm': {
      const arm = armNamed(m.arm, m.plate, setup, arms);
      return 'kind' in arm ? arm : { kind: 'path', legs: ownLegs(arm, arms.arms), arm };
    }
    case 'difference': return difference(m, setup, arms);
    default: return { kind: 'none', why: '', silent: true };
  }
}

function armNamed(name: string, plate: Thing | undefined, setup: Setup, { arms, broken }: Arms): Arm | Target {
  const here = arms.filter(a => !plate || a.plate === plate);
  const byName = here.filter(a => a.name === name);
  const found = byName.length > 0 ? byName : here.filter(a => a.role === name);
  if (found.length === 1) return found[0]!;
  if (found.length > 1) return { kind: 'none', why: `${found.map(a => `“${a.name} at ${a.plate.id}”`).join(' and ')} are called so; say which` };
  const silent = setup.unsure || broken.size > 0 || [...setup.beams.values()].some(unfinished);
  return { kind: 'none', silent, why: setup.beams.has(name) ? `the beam ${name} does not end at ${plate ? plate.id : 'a plate'}` : `no ${name === 'object' ? 'object light' : 'reference'} reaches ${plate ? plate.id : 'a plate'}` };
}
const unfinished = ({ legs, node }: { legs: readonly Leg[]; node: Leg['node'] }): boolean => node.line.issue !== undefined || legs.some(l => !l.target || l.node.line.issue !== undefined);

function difference(m: Measured & { kind: 'difference' }, setup: Setup, arms: Arms): Target {
  const [a, b] = [armNamed(m.arm, m.plate, setup, arms), armNamed(m.other, m.plate, setup, arms)];
  if ('kind' in a) return a;
  if ('kind' in b) return b;
  if (a.plate !== b.plate) return { kind: 'none', why: `${a.name} and ${b.name} end at different plates` };
  for (const [arm, reference, sign] of [[a, b, 1], [b, a, -1]] as const) {
    const its = arms.arms.find(r => r.plate === arm.plate && r.role === 'reference' && r.laser === arm.laser);
    if (arm.role === 'object' && its === reference) return { kind: 'difference', arm, reference, sign };
  }
  return { kind: 'none', why: `${a.name} and ${b.name} are not an object arm and its reference, so that no result needs their difference`, useless: true };
}

/** String has no direction: a run may be named from either end. */
function legsAlong(things: readonly Thing[], setup: Setup, ends: Ends): Target {
  const legs = run(things, ends) ?? run([...things].reverse(), ends);
  if (legs) return { kind: 'path', legs };
  const at = things.findIndex((t, i) => i > 0 && !legBetween(things[i - 1]!, t, ends) && !legBetween(t, things[i - 1]!, ends));
  const [a, b] = at > 0 ? [things[at - 1]!, things[at]!] : [things[0]!, things[things.length - 1]!];
  const silent = setup.unsure || [...setup.beams.values()].some(unfinished);
  return { kind: 'none', silent, why: `no light goes straight from ${a.id} to ${b.id}; name what stands between them` };
}

const legBetween = (a: Thing, b: Thing, ends: Ends): Leg | undefined => ends.get(b)?.find(l => legStart(l) === a);

function run(things: readonly Thing[], ends: Ends): Leg[] | undefined {
  const legs: Leg[] = [];
  for (let i = 1; i < things.length; i++) {
    const before = legs[legs.length - 1];
    const next = before?.beam.legs[before.n];
    const leg = next && next.target === things[i] ? next : legBetween(things[i - 1]!, things[i]!, ends);
    if (!leg) return undefined;
    legs.push(leg);
  }
  return legs;
}
