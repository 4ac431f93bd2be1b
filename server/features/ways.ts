/** Ways of the light, step by step: from where it reaches a thing or a beam, and to what it goes on. */
import type { Beam, Leg, Place, Setup, Thing } from '../model/model.ts';
import { fixed } from '../model/place.ts';
import { legStart } from '../results/legs/legs.ts';
import type { Snapshot } from '../analysis.ts';
import { useAt } from './references.ts';

/** A thing or a beam that light goes by. */
export interface Stop {
  readonly kind: 'thing' | 'beam';
  readonly name: string;
  /** the kind of a thing; of a beam where it starts */
  readonly detail: string;
  readonly at: Place;
  /** last line of it */
  readonly end: number;
}

export interface Step {
  readonly stop: Stop;
  /** where the text says so: legs, or the start of a beam */
  readonly by: readonly Place[];
}

/** The thing or beam that a cursor names. */
export function stopAt(snapshot: Snapshot, line: number, character: number): Stop | undefined {
  const use = useAt(snapshot, line, character);
  return use?.named.at.uri === snapshot.uri ? found(snapshot, use.named.at)?.stop : undefined;
}

/** Of the stop that is declared at a place, where its light comes from: of a thing the things before it, of a beam where it starts. Undefined where none is declared there. */
export function reaching(snapshot: Snapshot, at: Pick<Place, 'line' | 'start'>): Step[] | undefined {
  const here = found(snapshot, at);
  if (!here) return undefined;
  if (here.beam) return here.beam.from ? [{ stop: thingStop(here.beam.from), by: [fixed(here.beam.at)] }] : [];
  return grouped(legsOf(here.setup).filter(l => l.target === here.thing).flatMap(l => step(legStart(l), l)));
}

/** Where it goes on to: of a thing the things behind it, of a beam all that it meets. */
export function goingOn(snapshot: Snapshot, at: Pick<Place, 'line' | 'start'>): Step[] | undefined {
  const here = found(snapshot, at);
  if (!here) return undefined;
  const legs = here.beam ? here.beam.legs : legsOf(here.setup).filter(l => legStart(l) === here.thing);
  return grouped(legs.flatMap(l => step(l.target, l)));
}

const legsOf = ({ beams }: Setup): Leg[] => [...beams.values()].flatMap(b => b.legs);
const step = (thing: Thing | undefined, leg: Leg): { thing: Thing; at: Place }[] => (thing ? [{ thing, at: fixed(leg.at) }] : []);

/** Each thing once, with all legs that lead there. */
function grouped(steps: readonly { readonly thing: Thing; readonly at: Place }[]): Step[] {
  const things = new Map<Thing, Place[]>();
  for (const s of steps) things.set(s.thing, [...things.get(s.thing) ?? [], s.at]);
  return [...things].map(([thing, by]) => ({ stop: thingStop(thing), by }));
}

interface Here { readonly setup: Setup; readonly thing?: Thing; readonly beam?: Beam; readonly stop: Stop }

function found({ model }: Snapshot, at: Pick<Place, 'line' | 'start'>): Here | undefined {
  const same = (x: { at: Place }): boolean => x.at.line === at.line && x.at.start === at.start;
  for (const setup of model.setups) {
    const thing = [...setup.things.values()].find(t => same(t) && t.kind.light !== 'none');
    if (thing) return { setup, thing, stop: thingStop(thing) };
    const beam = [...setup.beams.values()].find(same);
    if (beam) return { setup, beam, stop: { kind: 'beam', name: beam.id, detail: beam.from ? `from ${beam.from.id}${beam.port === undefined ? '' : ` ${beam.port}`}` : '', at: fixed(beam.at), end: beam.node.end } };
  }
  return undefined;
}

const thingStop = (t: Thing): Stop => ({ kind: 'thing', name: t.id, detail: t.kind.word, at: fixed(t.at), end: t.node.end });
