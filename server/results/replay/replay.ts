/** What a finished hologram shows under each lamp that is written: where its image stands, how large, deep and sharp it is, in which colour, and from where it is seen. Without a lamp there is nothing. */
import type { Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, NUMBER, parseUnit, PER_LENGTH } from '../../model/units.ts';
import type { PairFringes } from '../fringes/fringes.ts';
import type { Cell } from '../graph.ts';
import { Stands } from '../hang/stands.ts';
import { legStart } from '../paths/legs.ts';
import { CURVATURE, WAVELENGTH_RATIO } from '../rules/hang.ts';
import { weighted } from '../rules/lengths.ts';
import { ANGLE_OF_SINE, COLOUR, depthOf, IN_COLOUR, OBJECT_BESIDE, otherPlaceOf, placeOf, SEEN, shareOf, SINE, sizeOf, THICKNESS } from '../rules/replay.ts';
import { hungOf } from './hung.ts';
import { lightOf, troubleOf } from './lamp.ts';
import { mastersOf, type Master } from './masters.ts';
import { sharpened } from './sharp.ts';
import type { Image, Part, ReplayContext, Shown } from './shown.ts';
import { viewOf } from './view.ts';

const [MM, NM, DEGREE, PERCENT] = [parseUnit('mm')!, parseUnit('nm')!, parseUnit('°')!, parseUnit('%')!];
const ASIDE = weighted('angle', 'as it is at the recording', [1]);
const OPPOSITE = weighted('line of sight', 'opposite to the viewer', [-1]);
const PARTS: readonly (readonly [Part['part'], number])[] = [['near', -0.5], ['middle', 0], ['far', 0.5]];
const partRules = new Map(PARTS.map(([part, share]) => [part, weighted('distance of a part', 'distance of the middle, and half of the depth', [1, share])]));
const known = (c: Cell | undefined): c is Cell => c !== undefined && !c.missing;

export class Replay {
  readonly all: readonly Shown[];
  /** first holograms of transfers, with the light that shows them */
  readonly masters: readonly Master[];
  private readonly stands: Stands;

  constructor(private readonly context: ReplayContext) {
    const { setup, values, fringes } = context;
    this.stands = new Stands(setup, values);
    const shown: Shown[] = [];
    const plates = [...setup.things.values()].filter(t => t.kind.word === 'plate');
    for (const lamp of setup.things.values()) {
      if (lamp.kind.word !== 'lamp') continue;
      const plate = this.stands.plateNamed(lamp) ?? (plates.length === 1 ? plates[0] : undefined);
      const pair = plate && fringes.pairs.find(f => f.plate === plate);
      if (pair) shown.push(this.shown(lamp, pair, shown.some(s => s.plate === plate) ? `${plate.id}.replay by ${lamp.id}` : `${plate.id}.replay`));
    }
    this.all = shown;
    this.masters = mastersOf(context.plates, context.beams, values);
    for (const s of shown) this.publish(s);
  }

  private shown(lamp: Thing, pair: PairFringes, base: string): Shown {
    const { setup, values } = this.context;
    const { plate, way } = pair;
    const hung = hungOf(lamp, pair, values);
    const light = lightOf(lamp, plate, base, { setup, values, stands: this.stands });
    const viewer = this.stands.before('viewer', plate);
    const angle = viewer && (viewer.facts.has('angle') || viewer.facts.has('height')) ? this.stands.angleOf(viewer, plate, `${base}.viewer angle`, `angle of ${viewer.id}`) : undefined;
    const eye = known(angle) ? angle : undefined;
    const word = setup.facts.get('hologram')?.value;
    const rainbow = word?.kind === 'words' && word.text === 'rainbow';
    const first = { base, lamp, plate, pair, way, rainbow, hung, light };
    const before = troubleOf(light, hung, way, values);
    if (before) return { ...first, trouble: before, view: { ...(viewer ? { viewer } : {}) } };
    const made = this.image(first, eye);
    if (typeof made === 'string') return { ...first, trouble: made, view: { ...(viewer ? { viewer } : {}) } };
    const image = sharpened(made, { ...first, viewer }, this.context);
    return { ...first, image, view: viewOf(image, { ...first, viewer, eye }, this.context) };
  }

  private image(s: Pick<Shown, 'base' | 'lamp' | 'plate' | 'pair' | 'way' | 'rainbow' | 'hung' | 'light'>, eye: Cell | undefined): Image | 'no image' | 'no colour' {
    const { values } = this.context;
    const { graph } = values;
    const { base, plate, hung: { order }, light } = s;
    const [reference, object] = this.recorded(s.pair, base);
    const laser = values.fact(s.pair.pair.arm.laser, 'wavelength')!;
    const { ratio, colour, by, missed } = this.colour(s, [reference, object], laser, eye);
    if (missed) return 'no colour';
    const one = ratio ?? (graph.find(`${base}.same colour`) ?? graph.input(`${base}.same colour`, { value: 1, dim: NUMBER }, 'written', 'the colour of the laser beside itself'));
    const sine = graph.derive(`${base}.sine`, SINE, [one, object, reference, light.angle], NUMBER, `sine of the angle of the image of ${plate.id}`);
    const angle = graph.derive(`${base}.angle`, ANGLE_OF_SINE, [sine], ANGLE, `angle of the image of ${plate.id}`, { unit: DEGREE });
    if (!sine.missing && angle.missing) return 'no image';
    const curvature = this.referenceCurvature(s.pair, base);
    const distance = this.objectDistance(s.pair, base);
    const depth = s.pair.pair.depth ?? (s.pair.pair.arm.object && values.fact(s.pair.pair.arm.object, 'depth'));
    const rest = [curvature, light.curvature, one];
    const parts = PARTS.flatMap(([part]): Part[] => {
      if (part !== 'middle' && !known(depth)) return [];
      const tail = part === 'middle' ? '' : `.${part}`;
      const words = part === 'middle' ? `the image of ${plate.id}` : `the ${part} end of the image of ${plate.id}`;
      const at = part === 'middle' ? distance : graph.derive(`${base}${tail}.object distance`, partRules.get(part)!, [distance, depth!], LENGTH, `distance of the ${part} end at the recording`);
      return [{ part, place: graph.derive(`${base}${tail}.place`, placeOf(order), [at, ...rest], LENGTH, `place of ${words} behind it`, { unit: MM }) }];
    });
    const size = graph.derive(`${base}.size`, sizeOf(order), [distance, ...rest], NUMBER, `width of the image of ${plate.id} as a multiple of that of its object`);
    const layer = this.layer(s.pair, base);
    const share = light.white ? undefined : graph.derive(`${base}.brightness`, shareOf(s.way === 'reflection'), [laser, layer[0]!, reference, object, layer[1]!, layer[2]!, light.angle, layer[3]!, layer[4]!, colour], NUMBER, `brightness of the image of ${plate.id}, as a share of its full brightness`, { unit: PERCENT });
    return {
      angle, object, reference, curvature, colour, colourBy: by, parts, size, ...(ratio ? { ratio } : {}), ...(share ? { brightness: share } : {}),
      depth: graph.derive(`${base}.depth`, depthOf(order), [size, one], NUMBER, `depth of the image of ${plate.id} as a multiple of that of its object`),
      other: graph.derive(`${base}.other place`, otherPlaceOf(order), [distance, ...rest, object, reference, light.angle, angle], LENGTH, `place of the image of ${plate.id} for lines across the plane of its beams`, { unit: MM }),
    };
  }

  /** Angles of reference and object light at the recording, in the plane of the reference, above zero on its side. */
  private recorded(f: PairFringes, base: string): readonly [Cell, Cell] {
    const { values, plates } = this.context;
    const { graph } = values;
    const arms = plates.find(p => p.plate === f.plate)!.arms;
    const reference = arms.find(a => a.arm === f.pair.reference)!.angle!.cell;
    const own = arms.find(a => a.arm === f.pair.arm)?.angle?.cell ?? values.fact(f.plate, 'object angle');
    const object = f.from.known.by === 'places' ? graph.derive(`${base}.object angle`, OBJECT_BESIDE, f.from.inputs.slice(0, 12), ANGLE, `angle of the object light at ${f.plate.id}, to the side of the reference`, { unit: DEGREE }) : own!;
    // A reference that is written on the other side of the normal turns both.
    const turned = (graph.value(reference) ?? 0) < 0 ? -1 : 1;
    return turned > 0 ? [reference, object] : [[reference, 'reference'] as const, [object, 'object'] as const].map(([c, of]) => graph.derive(`${base}.${of} angle to its side`, OPPOSITE, [c], ANGLE, c.words, { unit: DEGREE })) as [Cell, Cell];
  }

  /** The colour of the image, as a ratio to that of the laser where it is another. `missed`: no colour of its lamp meets the fringes, or reaches the viewer. */
  private colour({ base, plate, pair, way, light }: Pick<Shown, 'base' | 'plate' | 'pair' | 'way' | 'light'>, [reference, object]: readonly [Cell, Cell], laser: Cell, eye: Cell | undefined): { readonly ratio?: Cell; readonly colour: Cell; readonly by: Image['colourBy']; readonly missed?: true } {
    const { graph } = this.context.values;
    const words = `colour of the image of ${plate.id}`;
    const beside = (of: Cell): Cell => graph.derive(`${base}.ratio of wavelengths`, WAVELENGTH_RATIO, [of, laser], NUMBER, 'its colour beside that of the laser');
    if (!light.white) {
      const own = light.wavelength && light.wavelength !== laser && graph.value(light.wavelength) !== graph.value(laser) ? light.wavelength : undefined;
      const colour = graph.derive(`${base}.colour`, ASIDE, [own ?? laser], LENGTH, words, { unit: NM });
      return { colour, by: 'lamp', ...(own ? { ratio: beside(own) } : {}) };
    }
    if (way === 'reflection') {
      const [n, thickness, now] = this.layer(pair, base);
      const colour = graph.derive(`${base}.colour`, COLOUR, [laser, n!, reference, object, thickness!, now!, light.angle], LENGTH, words, { unit: NM });
      const missed = colour.missing?.code === 'impossible-value' ? { missed: true as const } : {};
      return { colour, by: 'layer', ratio: beside(colour), ...missed };
    }
    if (!eye) return { colour: graph.derive(`${base}.colour`, ASIDE, [laser], LENGTH, words, { unit: NM }), by: 'laser' };
    const sight = graph.derive(`${base}.line of sight`, OPPOSITE, [eye], ANGLE, `from where the light of the image comes to ${plate.id}`, { unit: DEGREE });
    const ratio = graph.derive(`${base}.ratio of wavelengths`, SEEN, [object, reference, light.angle, sight], NUMBER, 'the colour that the viewer sees beside that of the laser');
    const colour = graph.derive(`${base}.colour`, IN_COLOUR, [ratio, laser], LENGTH, words, { unit: NM });
    return { colour, by: 'viewer', ratio, ...(ratio.missing?.code === 'impossible-value' ? { missed: true as const } : {}) };
  }

  /** Index at the recording, thickness at replay beside that at the exposure, index at replay, thickness of the layer and swing of its index. */
  private layer({ plate }: PairFringes, base: string): readonly Cell[] {
    const { values } = this.context;
    const { graph } = values;
    const fact = (phrase: string): Cell => values.fact(plate, phrase) ?? graph.find(`${base}.${phrase}`) ?? graph.missing(`${base}.${phrase}`, phrase === 'layer' ? LENGTH : NUMBER, `${phrase} of ${plate.id}`, { code: 'value-missing', why: `the ${phrase} of ${plate.id} is not known: write “${phrase}”, or its “material”`, at: plate.at });
    const swollen = values.fact(plate, 'pre-swell');
    const thickness = graph.find(`${base}.thickness`) ?? graph.derive(`${base}.thickness`, THICKNESS, [fact('shrinkage'), ...(swollen ? [swollen] : [])], NUMBER, `thickness of the finished layer of ${plate.id} beside that at the exposure`);
    return [fact('index'), thickness, values.fact(plate, 'finished index') ?? fact('index'), fact('layer'), fact('index amplitude')];
  }

  private referenceCurvature({ plate, pair: { reference } }: PairFringes, base: string): Cell {
    const { values, fringes } = this.context;
    const { graph } = values;
    const [name, words] = [`${base}.reference curvature`, `curvature of ${reference.name} at ${plate.id}`];
    const spread = fringes.spread(reference);
    if (spread) return graph.derive(name, CURVATURE, spread, PER_LENGTH, words);
    if (plate.facts.get('reference distance')?.value.kind === 'words') return graph.input(name, { value: 0, dim: PER_LENGTH }, 'written', words);
    return graph.missing(name, PER_LENGTH, words, { code: 'value-missing', why: `nothing says from how far the reference of ${plate.id} spreads: write “reference distance” in ${plate.id}, or what spreads it`, at: plate.at });
  }

  /** From the plate to the middle of the object, or to the image of the master: above zero before the plate, as at the recording. */
  private objectDistance({ plate, pair }: PairFringes, base: string): Cell {
    const { values, legs } = this.context;
    const { graph } = values;
    const { arm } = pair;
    if (arm.object?.kind.light === 'diffracts') {
      return graph.find(`${plate.id}.image offset`) ?? graph.missing(`${base}.object distance`, LENGTH, `image of ${arm.object.id} before ${plate.id}`, { code: 'value-missing', why: `the image distance of ${arm.object.id} is not written`, at: arm.object.at });
    }
    const from = arm.path.findLastIndex(l => legStart(l) === arm.object);
    const on = arm.path.slice(Math.max(0, from));
    const cells = on.map(l => legs.get(l));
    if (from < 0 || cells.some(c => !c) || on.some(l => l.target?.facts.has('focal length') === true)) {
      return graph.missing(`${base}.object distance`, LENGTH, `distance of the object from ${plate.id}`, { code: 'value-missing', why: `how far ${arm.object?.id ?? 'the object'} is from ${plate.id} is not known`, at: plate.at });
    }
    return cells.length === 1 ? cells[0]! : graph.derive(`${base}.object distance`, weighted('way of the object light', 'sum of the legs', cells.map(() => 1)), cells as Cell[], LENGTH, `way from ${arm.object!.id} to ${plate.id}`);
  }

  private publish({ base, image, view }: Shown): void {
    if (!image) return;
    const tell = (what: string, cell: Cell | undefined): void => {
      if (!known(cell)) return;
      this.context.published.push(cell);
      this.context.alias(`image ${what}`, cell);
      this.context.alias(`${base.split('.')[0]!}.image ${what}`, cell);
    };
    for (const part of image.parts) {
      const head = part.part === 'middle' ? '' : `${part.part} `;
      tell(`${head}place`, part.place);
      tell(`${head}blur`, part.blur);
    }
    tell('size', image.size);
    tell('depth', image.depth);
    tell('angle', image.angle);
    tell('colour', image.colour);
    tell('brightness', image.brightness);
    for (const cell of [view.parallax, view.zone, view.opening?.place, view.opening?.width, view.opening?.height]) if (known(cell)) this.context.published.push(cell);
  }
}
