/** Where the second spot of a splitter goes: followed along the arms that the splitter reflects, through lenses, pinholes and apertures, up to what is lit. In plain numbers. */
import { beamLegs, type Arm } from '../../model/arms.ts';
import type { Beam, Thing } from '../../model/model.ts';
import type { Cell } from '../graph.ts';
import { Beams } from '../beams/beams.ts';
import { legStart } from '../places/light-ways.ts';
import { maskOf } from '../places/mask.ts';
import { usualWedgeTurn } from '../rules/splitter.ts';
import type { TableContext } from './context.ts';
import type { SecondSpots } from './second-spots.ts';
import { extentOf } from './standing.ts';

/** A second spot that comes all the way to what its arm lights. */
export interface TravellingSpot {
  readonly splitter: Thing;
  /** the beam that it runs beside */
  readonly beam: Beam;
  /** what it lights in the end */
  readonly lit: Thing;
  readonly offset: Cell;
  /** only where a wedge is written */
  readonly angle?: Cell;
  /** only where it can be told */
  readonly share?: Cell;
  /** width of the beam on the splitter to 1/e², m; undefined where nothing tells */
  readonly width?: number;
  /** the spreader whose pinhole lets it pass */
  readonly pinhole?: Thing;
  /** angle that a wedge of half a degree would give it, rad */
  readonly wedged: number;
}

/** Lenses that spread a narrow beam are hardly wider, m; common practice. */
const WIDEST_SPREADER = 0.01;
/** Less than that is squarely, and both spots are one, m. */
const APART = 1e-5;

/** One for each splitter whose thickness is written: the first arm along which the spot comes through. */
export function spotWays(spots: SecondSpots, context: TableContext): TravellingSpot[] {
  const { setup, graph } = context;
  return [...setup.things.values()].flatMap((splitter): TravellingSpot[] => {
    if (splitter.kind.light !== 'shares' || !splitter.facts.has('thickness')) return [];
    const offset = spots.offset(splitter);
    const off = graph.value(offset);
    if (off === undefined || off < APART) return [];
    const angle = splitter.facts.has('wedge') ? spots.angle(splitter) : undefined;
    const turn = angle ? graph.value(angle) : 0;
    if (turn === undefined) return [];
    for (const arm of context.arms.arms) {
      const at = arm.path.slice(0, beamLegs(arm)).findIndex((l, i) => i > 0 && legStart(l)?.id === splitter.id && (l.n === 1 ? l.beam.port : arm.path[i - 1]!.port) === 'reflected');
      if (at < 0) continue;
      // Nobody can tell which end of a wedge is thick: it has to come through either way.
      const [one, other] = [turn, -turn].map(u => followed(arm, at, off, u, context));
      if (!one || !other) continue;
      const share = spots.share(splitter);
      const onto = arm.path[at - 1]!;
      const radius = Beams.areShaped(arm) ? graph.value(context.beams.radius(onto)) : undefined;
      const [, wavelength, incidence] = offset.inputs;
      return [{
        splitter, beam: arm.path[at]!.beam, lit: one.lit, offset, wedged: usualWedgeTurn(context.values.words(splitter, 'glass')!, graph.value(wavelength!)!, graph.value(incidence!)!),
        ...(angle && turn > 0 ? { angle } : {}), ...(share.missing ? {} : { share }), ...(radius === undefined ? {} : { width: 2 * radius }), ...(one.pinhole ? { pinhole: one.pinhole } : {}),
      }];
    }
    return [];
  });
}

/** The middle of the spot, `off` beside its beam and leaving it by `u`, from leg to leg: undefined where it is stopped, misses a face, or cannot be told. */
function followed(arm: Arm, from: number, off: number, u: number, context: TableContext): { readonly lit: Thing; readonly pinhole?: Thing } | undefined {
  const { graph, legs, places, values, beams } = context;
  let pinhole: Thing | undefined;
  const end = beamLegs(arm);
  for (const leg of arm.path.slice(from, end)) {
    const thing = leg.target && places.own(leg.target);
    if (!thing) return undefined;
    if (u !== 0) {
      const length = legs.get(leg);
      const way = length && graph.value(length);
      if (way === undefined) return undefined;
      off += u * way;
    }
    const radius = Beams.areShaped(arm) ? graph.value(beams.radius(leg)) ?? 0 : 0;
    if (Math.abs(off) > reach(thing, radius, arm, context)) return undefined;
    if (leg === arm.path[end - 1]) return { lit: thing, ...(pinhole ? { pinhole } : {}) };
    if (!bends(thing)) continue;
    const [focal, hole] = ['focal length', 'pinhole'].map(f => (thing.facts.has(f) ? values.fact(thing, f) : undefined));
    const f = focal && graph.value(focal);
    if (f === undefined) return undefined;
    const width = hole && graph.value(hole);
    // Light that is parallel to the beam comes to the same focus, however far beside it.
    if (width !== undefined && f > 0) {
      if (Math.abs(u) * f > width / 2) return undefined;
      pinhole = thing;
    }
    u -= off / f;
  }
  return undefined;
}

const LENSES: ReadonlySet<string> = new Set(['spreader', 'lens', 'collimator']);
const bends = (thing: Thing): boolean => LENSES.has(thing.kind.word) || thing.facts.has('focal length');

/** How far beside its middle a thing takes or passes light whose beam has that radius. */
function reach(thing: Thing, radius: number, arm: Arm, { values, graph }: TableContext): number {
  const half = (phrase: string): number => { const cell = thing.facts.has(phrase) ? values.fact(thing, phrase) : undefined; return (cell && graph.value(cell) !== undefined ? graph.value(cell)! : Infinity) / 2; };
  switch (thing.kind.word) {
    // An opening that its beam fills is set on the beam: what lies more than half beside it does not pass.
    case 'aperture': return half('diameter');
    // The spot lies beside the beam in the plane of the fold, level on most tables: a slit that runs upright stops it by its width.
    case 'slit': {
      const mask = maskOf(arm, values);
      return (mask?.slit === thing ? mask.upright : values.words(thing, 'direction') === 'vertical') ? half('width') : half('length');
    }
    case 'spreader': return Math.min(half('diameter'), thing.facts.has('diameter') ? Infinity : WIDEST_SPREADER / 2);
    default: {
      if (!thing.kind.footprint) return Infinity;
      const { size } = extentOf(thing);
      return Math.min(size[0], size[1]) / 2 + radius;
    }
  }
}

