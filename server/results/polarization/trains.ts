/** From the legs of an arm to what rules of polarization take: what its light meets, in order, and the cells that say how. */
import type { Leg, Thing } from '../../model/model.ts';
import { ANGLE, NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { legStart } from '../places/light-ways.ts';
import type { Places } from '../places/places.ts';
import type { Element, Train, Turn } from '../rules/polarization.ts';
import type { Values } from '../values.ts';

/** What the light of some legs meets. */
export interface Way {
  readonly train: Train;
  /** inputs of what it meets, in the order in which the rules take them */
  readonly facts: readonly Cell[];
  /** three cells for each stretch, where all of them are known by places */
  readonly directions: readonly Cell[] | undefined;
  /** the things at its turns, and in its stretches */
  readonly turns: readonly Thing[];
  readonly elements: readonly { readonly thing: Thing; readonly element: Element }[];
}

/** What stands at a turn, and how it is to be taken. */
interface Met { readonly thing: Thing; readonly turn: Turn }

const NO_THINGS: ReadonlySet<Thing> = new Set();
const DEGREE = parseUnit('°')!;
const PERCENT = parseUnit('%')!;

/** How a way is read. */
export interface Taken {
  /** mirrors that the light meets neither as s nor as p, so that what their coating delays counts */
  readonly mixed?: ReadonlySet<Thing>;
  /** what is left out, to see what it does */
  readonly without?: (thing: Thing) => boolean;
}

/** The last leg's target ends the way; `behind`: it is the last thing on it instead. */
export function wayOf(path: readonly Leg[], values: Values, places: Places, { mixed = NO_THINGS, without }: Taken = {}, behind = false): Way {
  const stretches: Element[][] = [[]];
  const turns: Met[] = [];
  const elements: { thing: Thing; element: Element }[] = [];
  const facts: Cell[] = [];
  const ends: (Thing | undefined)[] = [path[0] && legStart(path[0])];
  for (const [i, leg] of path.entries()) {
    const [thing, next] = [leg.target && places.own(leg.target), path[i + 1]];
    if (!thing || (!next && !behind)) { ends.push(thing); break; }
    const port = next ? (next.n === 1 ? next.beam.port : leg.port) : undefined;
    const element = without?.(thing) ? undefined : elementOf(thing);
    if (element) {
      stretches[stretches.length - 1]!.push(element);
      elements.push({ thing, element });
      facts.push(...elementFacts(thing, element, path[0]!.beam.from, values));
    }
    const turn = turnOf(thing, port, mixed);
    if (turn) {
      turns.push({ thing, turn });
      stretches.push([]);
      ends.push(thing);
      facts.push(...turnFacts(thing, turn, values));
    }
    if (!next) ends.push(thing);
  }
  const directions = stretches.map((_, i) => { const [a, b] = [ends[i], ends[i + 1]]; return a && b && a !== b ? places.directions.between(places.own(a), places.own(b)) : undefined; });
  const known = directions.every(d => d?.every(c => !c.missing) === true);
  return { train: { stretches, turns: turns.map(t => t.turn) }, facts, directions: known ? directions.flatMap(d => d!) : undefined, turns: turns.map(t => t.thing), elements };
}

function elementOf(thing: Thing): Element | undefined {
  if (thing.kind.word === 'polarizer') return 'polarizer';
  if (thing.kind.word === 'half-wave plate') return thing.facts.has('wavelength') ? 'half-wave plate for a wavelength' : 'half-wave plate';
  return undefined;
}

function turnOf(thing: Thing, port: string | undefined, mixed: ReadonlySet<Thing>): Turn | undefined {
  const { light, word } = thing.kind;
  if (light === 'turns') return word === 'fill card' ? 'facet' : mixed.has(thing) ? 'coating' : 'mirror';
  if (light === 'shares') return port !== 'reflected' ? undefined : mixed.has(thing) ? 'coating' : 'mirror';
  if (light === 'scatters') return word === 'object' ? 'facet' : 'screen';
  return light === 'diffracts' && port === 'diffracted' ? 'screen' : undefined;
}

function elementFacts(thing: Thing, element: Element, laser: Thing | undefined, values: Values): Cell[] {
  const fact = (of: Thing, phrase: string): Cell => values.fact(of, phrase) ?? values.missing(`${of.id}.${phrase}`, ANGLE, `${phrase} of ${of.id}`, { code: 'value-missing', why: `the ${phrase} of ${of.id} is not written`, at: of.at });
  const axis = fact(thing, 'axis');
  return element === 'half-wave plate for a wavelength' && laser ? [axis, fact(thing, 'wavelength'), fact(laser, 'wavelength')] : [axis];
}

function turnFacts(thing: Thing, turn: Turn, values: Values): Cell[] {
  if (turn === 'mirror') return [];
  if (turn === 'coating') return [lagOf(thing, values)];
  return [values.fact(thing, 'depolarization') ?? hologramLoses(thing, values)];
}

/** A coating delays p against s by what its maker knows; it counts where the light is neither. */
function lagOf(mirror: Thing, values: Values): Cell {
  const name = `${mirror.id}.delay of p`;
  const layers = mirror.kind.light === 'shares' || values.words(mirror, 'coating') === 'dielectric';
  const [amount, reason] = layers ? [Math.PI / 2, 'stacks of layers delay p against s by whatever their design left open; from memory']
    : [Math.PI / 9, 'bare aluminium delays p by 10° at 45° (Fresnel’s formulas for its complex index), a protecting layer changes that; from memory'];
  return values.graph.find(name) ?? values.graph.input(name, { value: 0, dim: ANGLE, unit: DEGREE, spread: { kind: 'within', amount } }, 'assumed', `delay of p against s by ${mirror.id}`, { reason });
}

function hologramLoses(thing: Thing, values: Values): Cell {
  const name = `${thing.id}.depolarization`;
  return values.graph.find(name) ?? values.graph.input(name, { value: 0.05, dim: NUMBER, unit: PERCENT, spread: { kind: 'within', amount: 0.05 } }, 'assumed', `depolarization of ${thing.id}`, { reason: 'a hologram bends light without scattering it, and keeps its polarization but for a few per cent; from memory' });
}
