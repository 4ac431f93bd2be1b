/** What became of a reading of light, of a wheel, a drift, an image or of the dark, in words. Every figure is a cell of the results. */
import { percent, plain } from '../../model/show.ts';
import type { Reading } from '../../model/model.ts';
import { LENGTH, POWER } from '../../model/units.ts';
import type { Cell, Rule } from '../../results/graph.ts';
import type { LightFate } from '../../results/light/fates.ts';
import type { Results } from '../../results/plan.ts';
import { CALIBRATED, IN_PLANE, ON_HEAD, WITHOUT_DARK } from '../../results/rules/light.ts';
import { showCell } from '../chain.ts';
import { besidePlan, type Verdict } from './verdict.ts';

/** Undefined for a reading of a length, and for one that could not be read. */
export function lightVerdict(reading: Reading, r: Results): Verdict | undefined {
  const fate = r.light.fates.get(reading);
  switch (fate?.kind) {
    case undefined: return undefined;
    case 'older': return { fate: 'older', words: `counts no more: there is a newer one${fate.newest.on === undefined ? '' : ` of ${fate.newest.on}`}` };
    case 'useless': return { fate: 'useless', words: `counts for nothing: ${fate.why}` };
    case 'less sure': return { ...told(fate, reading, r), fate: 'less sure', words: `does not count: ${fate.why}` };
    case 'counts': return { ...told(fate, reading, r), fate: 'counts', words: reading.measured?.kind === 'dark' ? `is taken off what ${reading.by?.name ?? 'the meter'} shows` : `${fate.part ? 'goes into' : fate.planned ? 'corrects' : 'gives'} ${fate.of.words}` };
  }
}

function told(fate: Extract<LightFate, { says: Cell }>, reading: Reading, r: Results): Pick<Verdict, 'of' | 'tells' | 'planned' | 'made'> {
  const { says, of } = fate;
  const [value, planned] = [r.graph.value(says), fate.kind === 'counts' && fate.planned ? r.graph.value(fate.planned) : undefined];
  return {
    of: of.name, ...(value === undefined ? {} : { tells: { value, dim: says.dim } }), ...(planned === undefined ? {} : { planned }),
    made: [held(reading), [made(says, reading, r), value !== undefined && planned !== undefined ? beside(value, planned, (fate as { planned: Cell }).planned, reading, r) : ''].filter(Boolean).join(', ')].filter(Boolean).join('; '),
  };
}

/** How the head was held. */
function held({ measured: m }: Reading): string {
  if (m?.kind !== 'light' || (m.at && m.at.kind.light !== 'recorded')) return '';
  return m.facing ? 'facing the beam' : 'in the plate’s plane';
}

const STEPS: ReadonlyMap<Rule, string> = new Map([[ON_HEAD, 'area of the head'], [WITHOUT_DARK, 'dark reading'], [CALIBRATED, 'calibration'], [IN_PLANE, 'angle of arrival']]);

/** `with dark reading and calibration 1.38 ± 0.11 µW/cm²`: what the reading says by that which is known of the meter and of how it was held; nothing where that is what was read. */
function made(says: Cell, { measured }: Reading, { graph }: Results): string {
  if (measured?.kind === 'wheel') return `which reflects ${showCell(graph, says).text}`;
  const steps: string[] = [];
  for (let c: Cell | undefined = says; c?.rule; c = c.inputs[0]) {
    const [step, before] = [STEPS.get(c.rule), c.inputs[0]!];
    const changes = c.dim !== before.dim || graph.value(c) !== graph.value(before) || graph.uncertainty(c) !== graph.uncertainty(before);
    if (step !== undefined && changes) steps.unshift(step);
  }
  return steps.length === 0 ? '' : `with ${steps.join(', ').replace(/, (?=[^,]*$)/, ' and ')} ${showCell(graph, says).text}`;
}

/** Below this share, or so many points, both read the same. */
const SAME = 0.005;

function beside(value: number, planned: number, plan: Cell, { measured }: Reading, { graph }: Results): string {
  const written = showCell(graph, plan).text;
  if (plan.dim === LENGTH) return besidePlan(value - planned, planned);
  const more = measured?.kind === 'wheel' ? value - planned : value / planned - 1;
  if (Math.abs(more) < SAME) return `as planned (${written})`;
  return `${plan.dim === POWER ? percent(Math.abs(more)) : `${plain(100 * Math.abs(more), 2)} points`} ${more > 0 ? 'more' : 'less'} than planned (${written})`;
}
