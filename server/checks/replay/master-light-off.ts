import type { Problem } from '../../model/model.ts';
import { ONE_DEGREE } from '../../model/units.ts';
import type { Lit } from '../../results/masters/lit.ts';
import type { Results } from '../../results/plan.ts';
import { slipped, type Slipped } from '../../results/rules/masters.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';
import { degrees, figure, mm, nm, times } from '../shown-words.ts';

/** Nearer than this a beam is not set by hand; lines of two lasers of one sort lie nearer than that; and an image wider by less is not seen to be. Common practice. */
const NOTED = { angle: 3 * ONE_DEGREE, colour: 2e-9, width: 1.1 };
/** From here on a plate sends little light, or its image does not fit on the next. Common practice. */
const GRAVE = { angle: 10 * ONE_DEGREE, width: 1.5 };

export const masterLightOff: Check = {
  code: 'master-light-off',
  severity: 'warning',
  title: 'A master is lit by other light than the reference that recorded it, run backwards',
  page: `**What you see.** The image stands elsewhere than the page of the transfer counts on, turned aside, wider or deeper; it gets dull, and lines one way are sharp at another distance than those across.

**Why.** A master gives its object back, undistorted and where it stood, only in its own colour, at the angle of its reference, and, flipped, in light that runs together where the reference spread from: 1/R_image = m μ (1/R_object − 1/R_reference) + 1/R_light, sin θ_image = μ (sin θ_object − sin θ_reference) + sin θ_light. The page of the recording, which \`from\` and \`recorded as\` name, says how it was.

**What to do.** Light it with the laser that recorded it, at the angle of its reference. Record masters with parallel light, which plays them back too. Where another colour or beam is meant, write \`image distance\` as a card shows it.`,
  example: `setup "Winkles, transfer" {
  laser red {
    wavelength: 633 nm
    coherence length: 5 m
  }
  splitter S1
  hologram H1 {
    recorded as: "Winkles, master"
    turned: flipped
    image: real
  }
  plate P2
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P2: 1500 mm
  beam master from S1 reflected
    -> H1: 1300 mm
  beam image from H1 diffracted
    -> P2: 200 mm
}
setup "Winkles, master" {
  hologram: transmission
  laser green {
    wavelength: 532 nm
    coherence length: 5 m
  }
  splitter S1
  object winkles
  plate P1 {
    reference angle: 45°
    object angle: 0°
    reference distance: parallel
  }
  beam raw from green
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> winkles: 1300 mm
    -> P1: 200 mm
}
`,
  severityOf: d => (d['what'] === 'angle' ? (num(d, 'off') >= GRAVE.angle ? 'warning' : 'note') : d['what'] === 'colour' ? 'warning' : Math.max(num(d, 'size'), 1 / num(d, 'size')) >= GRAVE.width || d['none'] === true ? 'warning' : 'note'),
  message: d => `${text(d, 'hologram')} ${SAID[text(d, 'what')]!(d)}`,
  run: r => r.masters.flatMap(l => [...colour(l, r), ...angle(l, r), ...distance(l, r)]),
};

const stands = (d: Problem['data']): string => (d['none'] === true ? 'its image never comes to a focus' : `its image stands ${mm(d, 'place')} from it and not ${mm(d, 'object')}, ${times(d, 'size')} as wide as the object and ${times(d, 'depth')} as deep`);
const SAID: Readonly<Record<string, (d: Problem['data']) => string>> = {
  colour: d => `was recorded in ${nm(d, 'recorded')} and is lit in ${nm(d, 'now')}: ${d['place'] === undefined ? '' : `${stands(d)}, `}${d['turned'] === undefined ? 'at its angle it sends no image out of the plate' : `turned aside by ${degrees(d, 'turned')}`}. Light it with the laser that recorded it.`,
  angle: d => `is lit at ${degrees(d, 'now')} from its normal, and its reference came at ${degrees(d, 'recorded')}: its image is ${d['turned'] === undefined ? 'lost' : `turned aside by ${degrees(d, 'turned')}`}, and dull. Turn ${text(d, 'hologram')} by ${degrees(d, 'off')}.`,
  distance: d => `is lit by ${d['now'] === undefined ? 'parallel light' : `light that ${num(d, 'now') > 0 ? 'spreads from' : 'runs together at'} ${mm(d, 'now')}`}, and its reference ${d['recorded'] === undefined ? 'was parallel' : `spread from ${mm(d, 'recorded')}`}: ${stands(d)}. ${d['flipped'] !== true ? 'Let the light spread as its reference did.' : d['recorded'] === undefined ? 'Make the light parallel.' : `The light has to run together ${mm(d, 'recorded')} behind it.`}`,
};

const found = ({ hologram }: Lit, { setup }: Results, what: string, data: Problem['data']): Problem[] => [{ code: 'master-light-off', at: hologram.at, subject: `${hologram.id}.${what}`, setup: setup.name, data: { hologram: hologram.id, what, ...data } }];
const image = (s: Slipped, object: number): Problem['data'] => ({ place: figure(Math.abs(s.place)), object: figure(object), size: figure(Math.abs(s.width)), depth: figure(Math.abs(s.depth)), ...(s.width <= 0 ? { none: true } : {}) });
const turned = (s: Slipped): Problem['data'] => (Number.isFinite(s.turned) ? { turned: figure(Math.abs(s.turned)) } : {});

/** Where its recording stands; undefined where its page does not tell. */
function recorded({ record: { page, pair, distance, curvature, angle, objectAngle } }: Lit): { readonly distance?: number; readonly curvature?: number; readonly angle?: number; readonly object: number } | undefined {
  if (!pair) return undefined;
  const [d, c, a, o] = [distance, curvature, angle, objectAngle].map(x => x && page.graph.value(x));
  return { ...(d !== undefined && d > 0 ? { distance: d } : {}), ...(c !== undefined ? { curvature: c } : {}), ...(a !== undefined ? { angle: a } : {}), object: o ?? 0 };
}

function colour(l: Lit, r: Results): Problem[] {
  const [now, then] = [l.wavelength && r.graph.value(l.wavelength), l.record.wavelength && l.record.page.graph.value(l.record.wavelength)];
  const of = recorded(l);
  if (now === undefined || then === undefined || Math.abs(now - then) < NOTED.colour) return [];
  const by = slipped(l.order, of?.distance ?? 1, of?.curvature ?? 0, { object: of?.object ?? 0, reference: of?.angle ?? 0 }, { ratio: now / then });
  return found(l, r, 'colour', { now: figure(now), recorded: figure(then), ...(of?.distance !== undefined && of.curvature !== undefined ? image(by, of.distance) : {}), ...(of?.angle === undefined ? {} : turned(by)) });
}

function angle(l: Lit, r: Results): Problem[] {
  const of = recorded(l);
  const lit = l.angle && r.graph.value(l.angle);
  if (lit === undefined || of?.angle === undefined) return [];
  const { low, high } = interval(r.graph, l.angle!);
  const fold = (a: number): number => Math.min(Math.abs(a), Math.PI - Math.abs(a));
  const [now, then] = [fold(lit), fold(of.angle)];
  const off = Math.abs(now - then);
  if (off < Math.max(NOTED.angle, (high - low) / 2)) return [];
  return found(l, r, 'angle', { now: figure(now), recorded: figure(then), off: figure(off), ...turned(slipped(l.order, 1, 0, { object: of.object, reference: then }, { angle: now })) });
}

/** Flipped in spreading light has a finding of its own; what a card has shown counts before all this. */
function distance(l: Lit, r: Results): Problem[] {
  const of = recorded(l);
  const now = l.curvature && r.graph.value(l.curvature);
  if (now === undefined || of?.distance === undefined || of.curvature === undefined || (l.order === -1 && now > 0) || r.light.images.some(i => i.hologram === l.hologram && i.read)) return [];
  const by = slipped(l.order, of.distance, of.curvature, { object: 0, reference: 0 }, { curvature: now });
  if (by.width > 0 && Math.max(by.width, 1 / by.width) < NOTED.width) return [];
  return found(l, r, 'distance', { ...image(by, of.distance), ...(Math.abs(now) > 1e-3 ? { now: figure(1 / now) } : {}), ...(of.curvature > 1e-3 ? { recorded: figure(1 / of.curvature) } : {}), flipped: l.order === -1 });
}
