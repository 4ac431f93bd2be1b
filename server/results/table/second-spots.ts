/** The second spot of each splitter that reflects, as results. Made when somebody asks for them. */
import type { Leg, Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, NUMBER, parseUnit, type Dim } from '../../model/units.ts';
import type { Cell, Missing, Rule } from '../graph.ts';
import { incidence } from '../places/angles.ts';
import { legStart } from '../places/light-ways.ts';
import { laserLight } from '../polarization/laser-light.ts';
import { GLASSES } from '../rules/lengths.ts';
import { S_PART, secondSpot, secondSpotLight, secondSpotTurn } from '../rules/splitter.ts';
import type { TableContext } from './context.ts';

const [MM, PERCENT] = [parseUnit('mm')!, parseUnit('%')!];
/** Longest way back to a laser that is walked. */
const MOST_LEGS = 5000;
/** Upright part of a direction below which light runs level. */
const LEVEL = 0.02;

export class SecondSpots {
  constructor(private readonly context: TableContext) {}

  /** `S1.second spot`, `S1.second spot angle`, `S1.second spot share` */
  ask(name: string): Cell | undefined {
    const [, id, what] = /^(.*)\.second spot( angle| share)?$/.exec(name) ?? [];
    const splitter = id === undefined ? undefined : this.context.places.named(id);
    if (splitter?.kind.light !== 'shares') return undefined;
    return what === undefined ? this.offset(splitter) : what === ' angle' ? this.angle(splitter) : this.share(splitter);
  }

  /** Distance of the second spot from the first at the splitter, square to the beam. Missing where the thickness of the glass is not written: the usual ones differ by far. */
  offset(splitter: Thing): Cell {
    return this.derive(splitter, 'second spot', LENGTH, `distance of the second spot of ${splitter.id}`, secondSpot, [...this.written(splitter, 'thickness'), ...this.light(splitter)], MM);
  }

  /** Angle between both beams; missing where no wedge is written. */
  angle(splitter: Thing): Cell {
    return this.derive(splitter, 'second spot angle', ANGLE, `angle of the second spot of ${splitter.id}`, secondSpotTurn, [...this.light(splitter), ...this.written(splitter, 'wedge')]);
  }

  /** Of the light that is reflected, the share in the second spot, were the back face bare and the film on the front. */
  share(splitter: Thing): Cell {
    const reflects = this.context.reflects(splitter) ?? { code: 'value-missing', why: `how much ${splitter.id} reflects is not known`, at: splitter.at };
    return this.derive(splitter, 'second spot share', NUMBER, `share of the reflected light in the second spot of ${splitter.id}`, secondSpotLight, [reflects, ...this.sPart(splitter), ...this.light(splitter)], PERCENT);
  }

  private derive(splitter: Thing, what: string, dim: Dim, words: string, rule: (glass: (typeof GLASSES)[string]) => Rule, inputs: readonly (Cell | Missing)[], unit?: typeof MM): Cell {
    const { graph, values } = this.context;
    const name = `${splitter.id}.${what}`;
    const found = graph.find(name);
    if (found) return found;
    const lacks = inputs.find((i): i is Missing => !('index' in i));
    const glass = GLASSES[values.words(splitter, 'glass') ?? ''];
    if (lacks || !glass) return values.missing(name, dim, words, lacks ?? { code: 'unreadable', why: `the glass of ${splitter.id} cannot be read`, at: splitter.at });
    return graph.derive(name, rule(glass), inputs as readonly Cell[], dim, words, unit ? { unit } : {});
  }

  private written(splitter: Thing, phrase: string): (Cell | Missing)[] {
    const cell = splitter.facts.has(phrase) ? this.context.values.fact(splitter, phrase) : undefined;
    return [cell ?? { code: 'value-missing', why: `the ${phrase} of ${splitter.id} is not written`, at: splitter.at }];
  }

  /** Wavelength and angle of incidence of the light on it. */
  private light(splitter: Thing): (Cell | Missing)[] {
    const { places, values } = this.context;
    const lacks = (why: string): Missing => ({ code: 'value-missing', why, at: splitter.at });
    const [turn] = places.directions.turns(splitter);
    const angle = incidence(splitter, places, values);
    if (!turn || !angle) return [lacks(`no places tell at which angle ${splitter.id} reflects`)];
    const { laser } = this.wayTo(turn.passage.arriving);
    return [(laser && values.fact(laser, 'wavelength')) ?? lacks(`the wavelength of the light on ${splitter.id} is not known`), angle];
  }

  /** Share of the light on a splitter that is s-polarized: by the laser, as long as all runs level and nothing turns the polarization; else anything. */
  private sPart(splitter: Thing): Cell[] {
    const { graph, values, places } = this.context;
    const name = `${splitter.id}.s-polarized share`;
    const known = graph.find(name);
    if (known) return [known];
    const [turn] = places.directions.turns(splitter);
    const { laser, legs } = turn ? this.wayTo(turn.passage.arriving) : { laser: undefined, legs: [] };
    const words = `s-polarized share of the light on ${splitter.id}`;
    const level = turn && [...legs, turn.passage.leaving].every(l => { const z = places.directions.of(l)?.[2]; return z && !z.missing && Math.abs(graph.value(z)!) < LEVEL; });
    if (laser && level && !legs.some(l => TURNS.has(l.target?.kind.word ?? ''))) { const { angle, share } = laserLight(laser, values); return [graph.derive(name, S_PART, [angle, share], NUMBER, words, { unit: PERCENT })]; }
    return [graph.input(name, { value: 0.5, dim: NUMBER, unit: PERCENT, spread: { kind: 'within', amount: 0.5 } }, 'assumed', words, { reason: 'what stands before the splitter may turn the polarization either way' })];
  }

  /** The legs on which light comes to the end of one, and its laser. */
  private wayTo(leg: Leg): { readonly laser: Thing | undefined; readonly legs: readonly Leg[] } {
    const legs: Leg[] = [];
    for (let l: Leg | undefined = leg; l && legs.length < MOST_LEGS; l = this.context.places.ways.before(l)) legs.push(l);
    const start = legStart(legs.at(-1)!);
    return { laser: start?.kind.light === 'source' ? start : undefined, legs };
  }
}

const TURNS: ReadonlySet<string> = new Set(['polarizer', 'half-wave plate']);
