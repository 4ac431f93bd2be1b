import { percent } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import type { Sight } from '../../results/object/object.ts';
import type { Results } from '../../results/plan.ts';
import { num, text, type Check } from '../check.ts';

/** Below this share of what the plate sees, it sees mostly the dark side: as of a ball lit from 108° or more. */
const MOSTLY_DARK = 0.4;
/** Without a size the angle alone tells, from here on: clearly from behind, whatever the shape. */
const BEHIND = (100 * Math.PI) / 180;
/** Light that grazes a flat thing from the side does not come from behind it. */
export const BESIDE = (93 * Math.PI) / 180;

export const darkSideLit: Check = {
  code: 'dark-side-lit',
  severity: 'warning',
  title: 'The light falls on the side of the object that the plate does not see',
  page: `**What you see.** A silhouette with a bright rim: most of what faces the plate stays black, however well the paths match.

**Why.** The last mirror of the object beam stands on the far side of the object, so that its light runs toward the plate and lights the back. Measured along the table everything is right: paths match, and the depth of the object even seems to cost less path than from the front. Only the places tell it.

**What to do.** Move the last mirror of the object beam to the plate's side of the object and match the paths again. Where the light comes from behind on purpose, write \`lit at\` with its angle on the object: then nothing is said. Light through ground glass is never warned about.`,
  example: `setup "Whelk shell, from the wrong side" {
  hologram: transmission
  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (350, 100) mm
  mirror M1 at (1100, 100) mm
  mirror M2 at (100, 420) mm
  mirror M3 at (450, 150) mm
  object whelk at (700, 400) mm {
    size: 40 x 60 x 35 mm
  }
  plate P1 at (700, 700) mm facing whelk
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> M3
    -> whelk
    -> P1
}
`,
  message: d => `The light on ${text(d, 'object')} comes from behind it${d['side'] === '' ? '' : ` and from ${text(d, 'side')}`}, at ${Math.round((num(d, 'angle') * 180) / Math.PI)}° from the line of sight of ${text(d, 'plate')}: ` +
    (d['share'] === undefined ? 'the plate sees mostly its dark side. ' : `only ${percent(num(d, 'share'))} of what the plate sees is lit. `) +
    `${d['from'] === undefined ? 'Bring the light in from' : `Move ${text(d, 'from')} to`} the side of ${text(d, 'object')} where ${text(d, 'plate')} is, or write “lit at” if it is meant to be lit from behind.`,
  run: results => results.object.sights.flatMap(s => problem(s, results) ?? []),
};

function problem(s: Sight, { object, graph, setup }: Results): Problem | undefined {
  const angle = s.pair.litAt?.byPlaces;
  if (s.object.facts.has('lit at')) return undefined;
  const [right, up, toward] = object.from(s);
  const at = angle && !angle.missing ? graph.value(angle)! : Math.acos(Math.max(-1, Math.min(1, toward)));
  const lit = object.look(s, 'lit side');
  const share = lit && !lit.missing ? graph.value(lit)! : undefined;
  if (share === undefined ? at <= BEHIND : share >= MOSTLY_DARK || at <= BESIDE) return undefined;
  const way = s.pair.arm.path.slice(0, s.pair.arm.path.indexOf(s.onto));
  const turned = way.findLast(l => l.target?.kind.word === 'mirror')?.target;
  return {
    code: 'dark-side-lit', at: s.object.at, subject: s.pair.arm.name === 'object' ? `${s.plate.id}.${s.object.id}` : `${s.plate.id}.${s.pair.arm.name}`, setup: setup.name,
    data: { plate: s.plate.id, object: s.object.id, angle: at, side: sideWords(right, up), ...(share === undefined ? {} : { share }), ...(turned ? { from: turned.id } : {}) },
  };
}

/** As the plate sees it; light that comes hardly from a side has none. */
function sideWords(right: number, up: number): string {
  if (Math.hypot(right, up) < 0.2) return '';
  return Math.abs(right) >= Math.abs(up) ? (right > 0 ? 'the right as the plate sees it' : 'the left as the plate sees it') : up > 0 ? 'above' : 'below';
}
