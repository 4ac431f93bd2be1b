import { show } from '../../model/show.ts';
import type { Problem, Thing } from '../../model/model.ts';
import { LENGTH } from '../../model/units.ts';
import type { Results } from '../../results/plan.ts';
import { num, text, type Check } from '../check.ts';
import { DECIDES, passesLimit } from '../eye-limits.ts';

/** Height of the eyes of people who sit, above the floor, m (common practice). */
const SEATED = { from: 1.1, to: 1.3 };
/** Eyes are this near to the height of a viewer, m. */
const ABOUT = 0.1;

export const lightAtEyeHeight: Check = {
  code: 'light-at-eye-height',
  severity: 'note',
  title: 'The laser that shows a hologram stands at the height of eyes',
  page: `**What you see.** Nothing on the plate. It is a caution: whoever sits or stands before the hologram has their eyes at the height of the laser that shows it.

**Why.** The height that is written for the lamp lies between 1.1 m and 1.3 m, where people who sit have their eyes (common practice), or within 0.1 m of the height that is written for a viewer, and a laser is what lights it. How high the table stands above the floor is not written, so that of the other beams nothing is said.

**What to do.** Bring the light from above, as a lamp would come, and end what goes past the plate on a stop. Local rules and the person responsible for laser safety decide. It is an estimate, not a hazard assessment.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
  lamp replay {
    laser: red
    height: 1.2 m
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
}
`,
  message: d => `The light of ${text(d, 'lamp')} comes from ${text(d, 'laser')}, ${show(num(d, 'height'), LENGTH)} above the floor, ${d['viewer'] === undefined ? 'where people who sit have their eyes' : `at the height of ${text(d, 'viewer')}`}. Bring it from above, and end what goes past the plate on a stop. An estimate, not a hazard assessment. ${DECIDES}`,
  run: r => things(r, 'lamp').flatMap((lamp): Problem[] => {
    const named = lamp.facts.get('laser')?.value;
    const laser = named?.kind === 'words' ? r.setup.things.get(named.text) : undefined;
    const height = heightOf(lamp, r);
    if (!laser || height === undefined || passesLimit(laser, r) === false) return [];
    const viewer = things(r, 'viewer').find(v => { const at = heightOf(v, r); return at !== undefined && Math.abs(at - height) <= ABOUT; });
    if (!viewer && (height < SEATED.from || height > SEATED.to)) return [];
    return [{ code: 'light-at-eye-height', at: lamp.at, subject: lamp.id, setup: r.setup.name, data: { lamp: lamp.id, laser: laser.id, height, ...(viewer ? { viewer: viewer.id } : {}) } }];
  }),
};

const things = (r: Results, word: string): Thing[] => [...r.setup.things.values()].filter(t => t.kind.word === word);

function heightOf(thing: Thing, r: Results): number | undefined {
  const value = thing.facts.get('height')?.value;
  const made = value?.kind === 'formula' ? r.graph.find(`${thing.id}.height`) : undefined;
  return value?.kind === 'quantity' ? value.quantity.value : made && r.graph.value(made);
}
