/**
 * Back from where a finished hologram will hang (lamp, viewer, where its image is to stand) to how it is recorded: reference angle and distance, object distance, and for an image that reaches through the plate both steps, master and transfer.
 * Worked out when somebody asks.
 */
import type { Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, NUMBER, PER_LENGTH, parseUnit } from '../../model/units.ts';
import type { Fringes } from '../fringes/fringes.ts';
import { hologramWay } from '../fringes/way.ts';
import type { Cell } from '../graph.ts';
import { legStart } from '../legs/legs.ts';
import type { Pair } from '../paths/pairs.ts';
import { CURVATURE, LAMP_ANGLE, matchedDistance, objectBack, OTHER_FOCUS, recordingAngle, SIGHT, SLIT_COLOURS, SMEAR, unmade, WAVELENGTH_RATIO, widthBack } from '../rules/hang.ts';
import type { HologramWay } from '../rules/fringes.ts';
import { weighted } from '../rules/lengths.ts';
import { SAME, Stands } from './stands.ts';
import type { Making } from '../making.ts';

/** Distances for one reference. */
export interface Distances {
  /** `lamp`: it spreads from as far as the lamp, or runs together there; `as set up` on the page; `parallel` where no page tells of one */
  readonly reference: 'lamp' | 'as set up' | 'parallel';
  /** from how far it spreads, or at which distance it runs together; undefined of parallel light */
  readonly distance?: Cell;
  /** from the object to the plate; of two steps from the plate of the second to where the master’s image stands, above zero before it */
  readonly object?: Cell;
  /** of two steps: from the master to the plate, and from the master to its image, which is also how far the object is from the master */
  readonly master?: Cell;
  readonly fromMaster?: Cell;
  /** width of the image as a multiple of the object's */
  readonly width?: Cell;
}

/** One lamp, and the plate that it shows. */
export interface Hanging {
  /** what the names of its cells begin with: `P1.hang` */
  readonly base: string;
  readonly lamp: Thing;
  readonly plate: Thing;
  readonly viewer?: Thing;
  readonly way: HologramWay;
  readonly rainbow: boolean;
  /** the pair of beams that records it on the page */
  readonly pair?: Pair;
  /** an image before the plate, or in it, takes a master and a transfer: `page`, as the page has it, or `needed` */
  readonly transfer?: 'page' | 'needed';
  /** the master, where the page has one */
  readonly master?: Thing;
  /** where the image is to stand, above zero behind the plate */
  readonly image: Cell;
  /** `written`, or as far as the object or the master's image stands on the page */
  readonly imageFrom: 'written' | 'page';
  readonly lampAngle: Cell;
  /** it stands behind a reflection hologram, which is lit from the front */
  readonly wrongSide: boolean;
  /** higher than the plate, lower, or not known */
  readonly from?: 'above' | 'below';
  readonly lampDistance?: Cell;
  readonly viewerAngle: Cell;
  readonly viewerDistance?: Cell;
  /** where the lamp has a colour of its own: its wavelength beside the laser's */
  readonly ratio?: Cell;
  readonly referenceAngle: Cell;
  /** why there are no such angles at the recording */
  readonly unmade?: 'too fine' | 'too slanted';
  readonly objectAngle: Cell;
  /** with a reference that fits the lamp, then with the one that there is */
  readonly distances: readonly Distances[];
  /** where, by another colour than the laser’s, lines that run the other way are sharp */
  readonly otherFocus?: Cell;
  /** of an image that white light shows through the plate: by how much each 10 nm of colour smear its middle */
  readonly smear?: Cell;
  /** colours that an eye sees at once through the slit of a rainbow hologram */
  readonly colours?: Cell;
}

/** Why a lamp tells nothing. */
export interface Untold { readonly lamp?: Thing; readonly plate?: Thing; readonly why: 'no lamp' | 'no plate' | 'which plate' | 'no way'; readonly plates: readonly Thing[] }

export interface HangContext extends Making {
  readonly fringes: Fringes;
}

const [MM, NM, DEGREE] = [parseUnit('mm')!, parseUnit('nm')!, parseUnit('°')!];
const RIGHT_ANGLE = Math.PI / 2;
const BEFORE = weighted('image before the plate', 'below zero', [-1]);
const LESS = weighted('from the master', 'master to plate − image before it', [1, -1]);
const isMissing = (c: Cell | undefined): boolean => !c || c.missing !== undefined;

export class Hang {
  private found: { readonly hangings: readonly Hanging[]; readonly untold: readonly Untold[] } | undefined;

  private readonly stands: Stands;
  constructor(private readonly context: HangContext) { this.stands = new Stands(context.setup, context.values); }

  /** Each lamp of the setup. */
  all(): { readonly hangings: readonly Hanging[]; readonly untold: readonly Untold[] } {
    return this.found ??= this.make();
  }

  /** `P1.hang.reference angle` and the like. */
  ask(name: string): Cell | undefined {
    if (!/\.hang\b/.test(name)) return undefined;
    this.all();
    return this.context.values.graph.find(name);
  }

  private make(): { hangings: Hanging[]; untold: Untold[] } {
    const things = [...this.context.setup.things.values()];
    const [lamps, plates] = [things.filter(t => t.kind.word === 'lamp'), things.filter(t => t.kind.word === 'plate')];
    const hangings: Hanging[] = [];
    const untold: Untold[] = lamps.length === 0 ? [{ why: 'no lamp', plates }] : [];
    for (const lamp of lamps) {
      const named = this.stands.plateNamed(lamp);
      const plate = named ?? (plates.length === 1 ? plates[0] : undefined);
      if (!plate) { untold.push({ lamp, why: plates.length === 0 ? 'no plate' : 'which plate', plates }); continue; }
      const hanging = this.hanging(lamp, plate, hangings.some(h => h.plate === plate) ? `${plate.id}.hang by ${lamp.id}` : `${plate.id}.hang`);
      if (hanging) hangings.push(hanging);
      else untold.push({ lamp, plate, why: 'no way', plates });
    }
    return { hangings, untold };
  }

  private hanging(lamp: Thing, plate: Thing, base: string): Hanging | undefined {
    const { setup, values, plates, fringes } = this.context;
    const { graph } = values;
    const pair = plates.find(p => p.plate === plate)?.pairs[0];
    const kind = setup.facts.get('hologram')?.value;
    const word = kind?.kind === 'words' ? kind.text : undefined;
    const way = (pair && (fringes.of(pair)?.way ?? hologramWay(setup, pair))) ?? (word === undefined ? undefined : word === 'reflection' ? 'reflection' : 'transmission');
    if (!way) return undefined;
    const rainbow = word === 'rainbow';
    const holograms = [...setup.things.values()].filter(t => t.kind.light === 'diffracts');
    const master = pair ? (pair.arm.object?.kind.light === 'diffracts' ? pair.arm.object : undefined) : holograms.length === 1 ? holograms[0] : undefined;
    const viewer = this.stands.before('viewer', plate);
    const [image, imageFrom] = this.image(plate, pair, master, base);
    const at = graph.value(image);
    const transfer = master ? 'page' : rainbow || (at !== undefined && at <= 0) ? 'needed' : undefined;

    const angle = this.stands.angleOf(lamp, plate, `${base}.lamp angle as written`, `angle of ${lamp.id}`);
    const slant = graph.value(angle);
    const lampAngle = graph.derive(`${base}.lamp angle`, LAMP_ANGLE, [angle], ANGLE, `angle of ${lamp.id} from the normal of ${plate.id}`, { unit: DEGREE });
    const viewerAngle = viewer && (viewer.facts.has('angle') || viewer.facts.has('height')) && !isMissing(this.stands.angleOf(viewer, plate, `${base}.viewer angle`, `angle of ${viewer.id}`)) ? this.stands.angleOf(viewer, plate, `${base}.viewer angle`, `angle of ${viewer.id}`)
      : graph.input(`${base}.viewer angle`, { value: 0, dim: ANGLE, unit: DEGREE }, 'assumed', `angle of ${viewer?.id ?? 'the viewer'} from the normal of ${plate.id}`, { reason: 'a hologram is mostly hung where one looks at it squarely; common practice' });
    const ratio = this.ratio(lamp, pair, base);
    const sight = graph.derive(`${base}.line of sight`, slant !== undefined && slant < 0 ? SAME : SIGHT, [viewerAngle], ANGLE, `from where the light of the image comes to ${plate.id}`, { unit: DEGREE });
    const layer = ratio ? [ratio, values.fact(plate, 'index') ?? graph.missing(`${base}.index`, NUMBER, `index of ${plate.id}`, { code: 'value-missing', why: `the index of the layer of ${plate.id} is not known`, at: plate.at })] : [];
    const recorded = (of: 'reference' | 'object'): Cell => graph.derive(`${base}.${of} angle`, recordingAngle(of, way === 'reflection'), [lampAngle, sight, ...layer], ANGLE, `${of} angle of ${plate.id} for ${lamp.id}`, { unit: DEGREE });
    const [referenceAngle, objectAngle] = [recorded('reference'), recorded('object')];

    const [mu, index, to, seen] = [...layer, lampAngle, sight].map(c => graph.value(c));
    const impossible = ratio && mu !== undefined && index !== undefined && to !== undefined && seen !== undefined ? unmade(way === 'reflection', mu, index, to, seen) : undefined;
    const lampDistance = values.fact(lamp, 'distance');
    const viewerDistance = viewer && values.fact(viewer, 'distance');
    const more = { base, plate, image, ratio, lamp: lampDistance ?? graph.missing(`${base}.lamp distance`, LENGTH, `distance of ${lamp.id}`, { code: 'value-missing', why: `the distance of ${lamp.id} is not written`, at: lamp.at }) };
    const alternative = this.asSetUp(pair, base);
    const distances = [{ reference: 'lamp' as const }, alternative].map(r => (transfer ? this.twoSteps(r, viewer, viewerDistance, more) : this.oneStep(r, more)));
    const slit = rainbow ? [...setup.things.values()].find(t => t.kind.word === 'slit' && t.facts.has('width')) : undefined;
    const [width, gap, wavelength] = [slit && values.fact(slit, 'width'), distances[0]?.master, this.wavelength(pair)];
    const colours = slit && width && gap && wavelength && !isMissing(gap) && !isMissing(referenceAngle) ? graph.derive(`${base}.colours through ${slit.id}`, SLIT_COLOURS, [wavelength, width, gap, referenceAngle], LENGTH, `colours that an eye sees at once through ${slit.id}`, { unit: NM }) : undefined;
    const angles = [referenceAngle, objectAngle, sight];
    const otherFocus = ratio && !transfer && lampDistance && at !== undefined && at > 1e-3 && !angles.some(isMissing) ? graph.derive(`${base}.other focus`, OTHER_FOCUS, [image, lampDistance, ratio, lampAngle, sight, referenceAngle, objectAngle], LENGTH, `image of ${plate.id} behind it, for lines that run the other way`, { unit: MM }) : undefined;
    const white = way === 'transmission' && !rainbow && !lamp.facts.has('wavelength') && !lamp.facts.has('laser');
    const smear = white && wavelength && !isMissing(image) && !angles.some(isMissing) ? graph.derive(`${base}.smear`, SMEAR, [wavelength, image, objectAngle, referenceAngle, sight], LENGTH, `smear of the image of ${plate.id} by each 10 nm of colour`, { unit: MM }) : undefined;
    const from = this.stands.higher(lamp, plate);
    return {
      base, lamp, plate, way, rainbow, image, imageFrom, lampAngle, viewerAngle, referenceAngle, objectAngle, distances,
      wrongSide: way === 'reflection' && slant !== undefined && Math.abs(slant) >= RIGHT_ANGLE,
      ...(viewer ? { viewer } : {}), ...(pair ? { pair } : {}), ...(transfer ? { transfer } : {}), ...(master ? { master } : {}), ...(lampDistance ? { lampDistance } : {}), ...(viewerDistance ? { viewerDistance } : {}),
      ...(ratio ? { ratio } : {}), ...(colours ? { colours } : {}), ...(otherFocus ? { otherFocus } : {}), ...(smear ? { smear } : {}), ...(from ? { from } : {}), ...(impossible ? { unmade: impossible } : {}),
    };
  }

  /** Where the image is to stand: as written, else as the object or the master's image stands on the page. */
  private image(plate: Thing, pair: Pair | undefined, master: Thing | undefined, base: string): [Cell, 'written' | 'page'] {
    const { values, legs } = this.context;
    const { graph } = values;
    const words = `image of ${plate.id} behind it`;
    const [behind, before] = ['image behind', 'image before'].map(p => (plate.facts.has(p) ? values.fact(plate, p) : undefined));
    if (behind) return [graph.derive(`${base}.image`, SAME, [behind], LENGTH, words, { unit: MM }), 'written'];
    if (before) return [graph.derive(`${base}.image`, BEFORE, [before], LENGTH, words, { unit: MM }), 'written'];
    const last = pair?.arm.path.at(-1);
    const offset = master && graph.find(`${plate.id}.image offset`);
    if (offset) return [graph.derive(`${base}.image`, BEFORE, [offset], LENGTH, words, { unit: MM }), 'page'];
    const leg = pair && last && !master && legStart(last) === pair.arm.object ? legs.get(last) : undefined;
    if (leg) return [graph.derive(`${base}.image`, SAME, [leg], LENGTH, words, { unit: MM }), 'page'];
    return [graph.missing(`${base}.image`, LENGTH, words, { code: 'value-missing', why: `it is not written where the image of ${plate.id} is to stand`, at: plate.at }), 'page'];
  }

  private wavelength(pair: Pair | undefined): Cell | undefined {
    const { setup, values } = this.context;
    const lasers = [...setup.things.values()].filter(t => t.kind.word === 'laser');
    const laser = pair?.arm.laser ?? (lasers.length === 1 ? lasers[0] : undefined);
    return laser && values.fact(laser, 'wavelength');
  }

  /** Undefined where the hologram is looked at in the colour of its laser, as far as anybody knows. */
  private ratio(lamp: Thing, pair: Pair | undefined, base: string): Cell | undefined {
    const { setup, values } = this.context;
    const named = lamp.facts.get('laser')?.value;
    const laser = named?.kind === 'words' ? setup.things.get(named.text) : undefined;
    const [shown, recorded] = [laser ? values.fact(laser, 'wavelength') : lamp.facts.has('wavelength') ? values.fact(lamp, 'wavelength') : undefined, this.wavelength(pair)];
    if (!shown || !recorded || shown === recorded || isMissing(shown) || isMissing(recorded)) return undefined;
    return values.graph.value(shown) === values.graph.value(recorded) ? undefined : values.graph.derive(`${base}.ratio of wavelengths`, WAVELENGTH_RATIO, [shown, recorded], NUMBER, `wavelength of ${lamp.id} beside that of the laser`);
  }

  /** The reference as the page has it; parallel light where nothing tells. */
  private asSetUp(pair: Pair | undefined, base: string): { readonly reference: 'as set up' | 'parallel'; readonly curvature: Cell; readonly distance?: Cell } {
    const { values, fringes } = this.context;
    const { graph } = values;
    const spread = pair && fringes.spread(pair.reference);
    if (spread && !spread.some(isMissing)) return { reference: 'as set up', distance: graph.derive(`${base}.reference distance as set up`, SAME, [spread[0]!], LENGTH, `from how far ${pair.reference.name} spreads on the page`, { unit: MM }), curvature: graph.derive(`${base}.curvature of the reference`, CURVATURE, spread, PER_LENGTH, `curvature of ${pair.reference.name} at ${pair.reference.plate.id}`) };
    return { reference: 'parallel', curvature: graph.input(`${base}.curvature of the reference`, { value: 0, dim: PER_LENGTH }, 'written', 'curvature of parallel light') };
  }

  private oneStep(r: Reference, { base, plate, image, ratio, lamp }: Replay): Distances {
    const { graph } = this.context.values;
    const tail = r.curvature ? ` ${r.reference}` : '';
    const has = { reference: r.curvature !== undefined, ratio: ratio !== undefined };
    const inputs = [image, ...(r.curvature ? [lamp, r.curvature] : []), ...(ratio ? [ratio] : [])];
    const distance = r.curvature ? r.distance : graph.derive(`${base}.reference distance`, matchedDistance, [lamp, ...(ratio ? [ratio] : [])], LENGTH, `from how far the reference of ${plate.id} spreads`, { unit: MM });
    return {
      reference: r.reference, ...(distance ? { distance } : {}), object: graph.derive(`${base}.object distance${tail}`, objectBack(1, has), inputs, LENGTH, `distance of the object from ${plate.id}`, { unit: MM }),
      ...(r.curvature ? { width: graph.derive(`${base}.width${tail}`, widthBack(1, has), inputs, NUMBER, `width of the image as a multiple of the object’s`) } : {}),
    };
  }

  /** The plate of a transfer is turned round and lit by its reference run backwards: so the master's opening comes to stand before it, where one looks through it. */
  private twoSteps(r: Reference, viewer: Thing | undefined, distance: Cell | undefined, { base, plate, image, ratio, lamp }: Replay): Distances {
    const { graph } = this.context.values;
    const tail = r.curvature ? ` ${r.reference}` : '';
    const has = { reference: r.curvature !== undefined, ratio: ratio !== undefined };
    const rest = [...(r.curvature ? [lamp, r.curvature] : []), ...(ratio ? [ratio] : [])];
    const eyes = graph.derive(`${base}.viewing distance${tail}`, BEFORE, [distance ?? graph.missing(`${base}.viewer distance${tail}`, LENGTH, `distance of ${viewer?.id ?? 'a viewer'}`, {
      code: 'value-missing', why: viewer ? `the distance of ${viewer.id} is not written` : 'no viewer is written, whose distance tells how far the master is from the plate', at: viewer?.at ?? plate.at,
    })], LENGTH, `where ${viewer?.id ?? 'the viewer'} stands, before ${plate.id}`, { unit: MM });
    const master = graph.derive(`${base}.master distance${tail}`, objectBack(-1, has), [eyes, ...rest], LENGTH, `distance of the master from ${plate.id}`, { unit: MM });
    const object = graph.derive(`${base}.image before the plate${tail}`, objectBack(-1, has), [image, ...rest], LENGTH, `image of the master before ${plate.id} at the transfer`, { unit: MM });
    const fromMaster = graph.derive(`${base}.image distance${tail}`, LESS, [master, object], LENGTH, 'from the master to its image', { unit: MM });
    const converging = r.curvature ? r.distance : graph.derive(`${base}.reference distance`, matchedDistance, [lamp, ...(ratio ? [ratio] : [])], LENGTH, `at which distance behind ${plate.id} its reference runs together`, { unit: MM });
    return {
      reference: r.reference, ...(converging ? { distance: converging } : {}), master, object, fromMaster,
      ...(r.curvature ? { width: graph.derive(`${base}.width${tail}`, widthBack(-1, has), [image, ...rest], NUMBER, `width of the image as a multiple of the master’s image`) } : {}),
    };
  }
}

interface Reference { readonly reference: Distances['reference']; readonly curvature?: Cell; readonly distance?: Cell }
interface Replay { readonly base: string; readonly plate: Thing; readonly image: Cell; readonly ratio: Cell | undefined; readonly lamp: Cell }
