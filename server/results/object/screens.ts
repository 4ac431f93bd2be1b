/** Ground glass or a diffuser before the object, or as the object: light from its rim comes by a longer way, which decides what records. */
import { beamLegs, type Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import { Beams } from '../beams/beams.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import type { Pair } from '../paths/pairs.ts';
import { BY_THE_RIM, overScreen } from '../rules/screen.ts';
import { OPEN_SIDE } from '../rules/image.ts';
import { weighted } from '../rules/lengths.ts';
import type { Making } from '../making.ts';

const [PERCENT, MM] = [parseUnit('%')!, parseUnit('mm')!];
const HALF = weighted('half of a side', 'side / 2', [0.5]);

/** A screen that is lit by a beam, and sends its light straight on to the next thing. */
export interface LitScreen {
  readonly screen: Thing;
  readonly onto: Leg;
  readonly across: Leg;
}

/** The screen on the way of an arm, where it is what scatters its light first. */
export function litScreen(arm: Arm): LitScreen | undefined {
  const n = beamLegs(arm);
  const [onto, across] = [arm.path[n - 1], arm.path[n]];
  const screen = onto?.target;
  return onto && across && (screen?.kind.word === 'ground glass' || screen?.kind.word === 'diffuser') ? { screen, onto, across } : undefined;
}

/** The ways by the screen of one pair of arms. */
export interface ScreenWays extends LitScreen {
  readonly pair: Pair;
  /** how much longer the way by the rim of what is lit of it is than through its middle */
  readonly rim: Cell;
  /** brightness of the middle of what records, averaged over the screen; where the coherence is known */
  readonly brightness?: Cell;
}

export class Screens {
  readonly all: readonly ScreenWays[];

  constructor(private readonly context: Making) {
    this.all = context.plates.flatMap(({ pairs, plate }) => pairs.flatMap(pair => this.waysOf(plate, pair) ?? []));
  }

  of(pair: Pair): ScreenWays | undefined { return this.all.find(s => s.pair === pair); }

  /** Undefined where no screen is on the way, nothing tells how wide the beam on it is, or its size is not written. */
  private waysOf(plate: Thing, pair: Pair): ScreenWays | undefined {
    const found = litScreen(pair.arm);
    const { values, beams, legs, published, alias } = this.context;
    const { graph } = values;
    if (!found || !Beams.areShaped(pair.arm)) return undefined;
    const [width, height] = sidesOfThing(found.screen, values) ?? [];
    const distance = legs.get(found.across);
    const angle = values.fact(found.screen, 'scatter angle');
    if (!width || !height || !distance || !angle) return undefined;
    const { level: { past, rayleigh }, wavelength, quality } = beams.at(found.onto);
    const lesser = graph.find(`${found.screen.id}.lesser side`) ?? graph.derive(`${found.screen.id}.lesser side`, OPEN_SIDE, [width, height], LENGTH, `lesser side of ${found.screen.id}`, { unit: MM });
    const half = graph.find(`${found.screen.id}.half side`) ?? graph.derive(`${found.screen.id}.half side`, HALF, [lesser], LENGTH, `half of the lesser side of ${found.screen.id}`, { unit: MM });
    const from = [past, rayleigh, wavelength, quality, half, distance];
    if (from.some(c => c.missing) || !(graph.value(distance)! > 0)) return undefined;
    const base = `${plate.id}.${pair.arm.name}`;
    const rim = graph.derive(`${base}.longer by the rim`, BY_THE_RIM, from, LENGTH, `how much longer the way by the rim of the light on ${found.screen.id} is`, { unit: MM });
    if (rim.missing) return undefined;
    published.push(rim);
    const { coherence } = pair;
    const brightness = coherence && graph.derive(`${base}.screen brightness`, overScreen(coherence.rule), [...from, angle, pair.mismatch, ...coherence.inputs], NUMBER, `brightness over ${found.screen.id}`, { unit: PERCENT });
    const known = brightness && !brightness.missing ? brightness : undefined;
    if (known) { published.push(known); alias('screen brightness', known); }
    return { ...found, pair, rim, ...(known ? { brightness: known } : {}) };
  }
}
