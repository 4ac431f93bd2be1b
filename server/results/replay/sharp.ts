/** How sharp the parts of an image are: by the width of the lamp and by its colours. */
import type { Thing } from '../../model/model.ts';
import { LENGTH, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { SLIT_COLOURS } from '../rules/hang.ts';
import { ASTIGMATIC, COLOUR_SMEAR, LAMP_SMEAR, LEAST_OF, SMEARS, UNSEEN } from '../rules/replay.ts';
import { eyeOf } from './eye.ts';
import type { Image, Part, ReplayContext, Shown } from './shown.ts';

const [MM, NM] = [parseUnit('mm')!, parseUnit('nm')!];
/** White light as an eye sees it. */
const WHITE = { value: 250e-9, spread: { kind: 'within', amount: 50e-9 } } as const;
const known = (c: Cell | undefined): c is Cell => c !== undefined && !c.missing;

/** The image with what blurs its parts. */
export function sharpened(image: Image, s: Pick<Shown, 'base' | 'lamp' | 'plate' | 'pair' | 'way' | 'rainbow' | 'light'> & { readonly viewer: Thing | undefined }, context: ReplayContext): Image {
  const { values } = context;
  const { graph } = values;
  const { base, light } = s;
  const laser = values.fact(s.pair.pair.arm.laser, 'wavelength')!;
  const band = bandOf(s, image, context, laser);
  const eye = (s.viewer && values.fact(s.viewer, 'distance')) ?? eyeOf(s.plate, base, graph);
  const middle = image.parts.find(p => p.part === 'middle')!.place;
  const astigmatic = middle.missing || image.other.missing ? undefined : graph.derive(`${base}.astigmatic blur`, ASTIGMATIC, [eye, middle, image.other], LENGTH, `blur of the image of ${s.plate.id} whose upright and level lines are sharp at different distances`, { unit: MM });
  return {
    ...image, ...(astigmatic ? { astigmatic } : {}),
    parts: image.parts.map((p): Part => {
      const head = p.part === 'middle' ? base : `${base}.${p.part}`;
      const words = p.part === 'middle' ? `the image of ${s.plate.id}` : `the ${p.part} end of the image of ${s.plate.id}`;
      const far = light.distance && light.beam !== 'parallel';
      const lampBlur = known(light.size) && far && !p.place.missing ? graph.derive(`${head}.lamp blur`, LAMP_SMEAR, [light.size, light.distance, p.place, light.angle, image.angle], LENGTH, `blur of ${words} by the width of ${s.lamp.id}`, { unit: MM }) : undefined;
      const colourBlur = band && !p.place.missing ? graph.derive(`${head}.colour blur`, COLOUR_SMEAR, [laser, band, p.place, image.object, image.reference, image.angle], LENGTH, `blur of ${words} by colours`, { unit: MM }) : undefined;
      const smears = [lampBlur, colourBlur].filter(known);
      const blur = smears.length > 0 ? graph.derive(`${head}.blur`, SMEARS, smears, LENGTH, `blur of ${words}`, { unit: MM }) : undefined;
      const unseen = (blur ?? (p.part === 'middle' ? astigmatic : undefined)) && !p.place.missing ? graph.derive(`${head}.unseen blur`, UNSEEN, [eye, p.place], LENGTH, `blur of ${words} that nobody sees from there`, { unit: MM }) : undefined;
      return { ...p, ...(lampBlur ? { lampBlur } : {}), ...(colourBlur ? { colourBlur } : {}), ...(blur ? { blur } : {}), ...(unseen ? { unseen } : {}) };
    }),
  };
}

/** The band of colours that makes the image, where it makes any difference: of the lamp, of what the layer sends back, of what the slit lets come to an eye. */
function bandOf({ base, lamp, plate, pair, way, rainbow, light }: Pick<Shown, 'base' | 'lamp' | 'plate' | 'pair' | 'way' | 'rainbow' | 'light'>, image: Image, { setup, values, fringes, legs }: ReplayContext, laser: Cell): Cell | undefined {
  const { graph } = values;
  const own = lamp.facts.has('bandwidth') ? values.fact(lamp, 'bandwidth') : undefined;
  const reflected = way === 'reflection' && (light.white || own) ? fringes.asked(pair, 'bandwidth') : undefined;
  const slit = rainbow ? [...setup.things.values()].find(t => t.kind.word === 'slit' && t.facts.has('width')) : undefined;
  const [width, gap] = [slit && values.fact(slit, 'width'), legs.get(pair.pair.arm.path.at(-1)!)];
  const slits = slit && width && gap && light.white ? graph.derive(`${base}.colours through ${slit.id}`, SLIT_COLOURS, [laser, width, gap, image.reference], LENGTH, `colours that an eye sees at once through ${slit.id}`, { unit: NM }) : undefined;
  const white = light.white && way === 'transmission' && !slits && !own ? graph.input(`${base}.white light`, { dim: LENGTH, unit: NM, ...WHITE }, 'assumed', `colours of ${lamp.id}`, { reason: 'an eye sees white light from about 430 to 680 nm well; common practice' }) : undefined;
  const all = [own, reflected, slits, white].filter(known);
  return all.length > 1 ? graph.derive(`${base}.band`, LEAST_OF, all, LENGTH, `colours that make the image of ${plate.id}`, { unit: NM }) : all[0];
}
