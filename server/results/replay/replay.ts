/** What a finished hologram shows under each lamp that is written: where its image stands, how large, deep and sharp it is, in which colour, and from where it is seen. Without a lamp there is nothing. */
import { lasersAt } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import type { PairFringes } from '../fringes/fringes.ts';
import type { Cell } from '../graph.ts';
import { Stands } from '../hang/stands.ts';
import { WAVELENGTH_RATIO } from '../rules/hang.ts';
import { weighted } from '../rules/lengths.ts';
import { ANGLE_OF_SINE, COLOUR, depthOf, IN_COLOUR, otherPlaceOf, placeOf, SEEN, shareOf, SINE, sizeOf, THICKNESS } from '../rules/replay.ts';
import { hungOf } from './hung.ts';
import { lightOf, troubleOf } from './lamp.ts';
import { mastersOf, type Master } from './masters.ts';
import { objectDistance, OPPOSITE, recordedAngles, referenceCurvature } from '../masters/recorded.ts';
import { sharpened } from './sharp.ts';
import type { Image, Part, ReplayContext, Shown } from './shown.ts';
import { apartOf } from './apart.ts';
import { viewOf } from './view.ts';

const [MM, NM, DEGREE, PERCENT] = [parseUnit('mm')!, parseUnit('nm')!, parseUnit('°')!, parseUnit('%')!];
const ASIDE = weighted('angle', 'as it is at the recording', [1]);
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
      if (!plate) continue;
      const by = shown.some(s => s.plate === plate) ? `replay by ${lamp.id}` : 'replay';
      // Each laser has recorded fringes of its own.
      const lasers = lasersAt(plate, context.plates.flatMap(p => p.arms.map(a => a.arm)));
      const made: Shown[] = [];
      for (const laser of lasers) {
        const pair = fringes.pairs.find(f => f.plate === plate && f.pair.arm.laser === laser);
        if (!pair || (lasers.length > 1 && this.isOthers(lamp, laser, lasers))) continue;
        const one = lasers.length > 1 ? { ...this.shown(lamp, pair, `${plate.id}.${laser.id}.${by}`), laser } : this.shown(lamp, pair, `${plate.id}.${by}`);
        const apart = made[0] && apartOf(one, made[0], context);
        made.push(apart ? { ...one, apart } : one);
      }
      shown.push(...made);
    }
    this.all = shown;
    this.masters = mastersOf(context.plates, context.beams, values, context.records);
    for (const s of shown) this.publish(s);
  }

  /** Light of one colour is meant for the recording in that colour, where there is one. */
  private isOthers(lamp: Thing, laser: Thing, lasers: readonly Thing[]): boolean {
    const { values, setup } = this.context;
    const word = lamp.facts.get('laser')?.value;
    const own = word?.kind === 'words' ? setup.things.get(word.text) : undefined;
    if (own && lasers.includes(own)) return own !== laser;
    const lit = lamp.facts.has('wavelength') ? values.fact(lamp, 'wavelength') : own && values.fact(own, 'wavelength');
    const at = lit && values.graph.value(lit);
    if (at === undefined) return false;
    const off = (l: Thing): number => Math.abs((values.graph.value(values.fact(l, 'wavelength')!) ?? Infinity) - at);
    return lasers.reduce((a, b) => (off(b) < off(a) ? b : a)) !== laser;
  }

  private shown(lamp: Thing, pair: PairFringes, base: string): Shown {
    const { setup, values } = this.context;
    const { plate, way } = pair;
    const hung = hungOf(lamp, pair, values, this.context.records);
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
    const [reference, object] = recordedAngles(s.pair, base, this.context);
    const laser = values.fact(s.pair.pair.arm.laser, 'wavelength')!;
    const { ratio, colour, by, missed } = this.colour(s, [reference, object], laser, eye);
    if (missed) return 'no colour';
    const one = ratio ?? (graph.find(`${base}.same colour`) ?? graph.input(`${base}.same colour`, { value: 1, dim: NUMBER }, 'written', 'the colour of the laser beside itself'));
    const sine = graph.derive(`${base}.sine`, SINE, [one, object, reference, light.angle], NUMBER, `sine of the angle of the image of ${plate.id}`);
    const angle = graph.derive(`${base}.angle`, ANGLE_OF_SINE, [sine], ANGLE, `angle of the image of ${plate.id}`, { unit: DEGREE });
    if (!sine.missing && angle.missing) return 'no image';
    const curvature = referenceCurvature(s.pair, base, this.context);
    const distance = objectDistance(s.pair, base, this.context);
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

  private publish({ base, image, view, apart }: Shown): void {
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
    for (const cell of [apart?.cell, view.parallax, view.zone, view.opening?.place, view.opening?.width, view.opening?.height]) if (known(cell)) this.context.published.push(cell);
  }
}
