/** The readings of a setup: what was read beside what was planned, and what became of it. Every figure is a cell of the results. */
import { show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import type { Reading } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';
import { lightVerdict } from './light-readings.ts';
import { besidePlan, type Verdict } from './verdict.ts';
import { asWritten } from './words.ts';

/** The page of all readings that could be read; undefined where there are none. */
export function readingsPage(r: Results): LightPage | undefined {
  const rows = r.setup.readings.filter(x => r.readings.fate(x) !== undefined || r.readings.stale(x) !== undefined || r.light.fates.has(x)).map(x => row(x, r));
  return rows.length === 0 ? undefined : { title: 'What was measured', rows };
}

function row(reading: Reading, r: Results): LightRow {
  const v = verdictOf(reading, r);
  const taken = [reading.by ? `by ${reading.by.name}` : '', reading.on === undefined ? '' : `on ${reading.on}`].filter(Boolean).join(' ');
  return { label: reading.words, text: readText(reading, r), remark: [taken, [planText(v), v.words].filter(Boolean).join('; ')].filter(Boolean).join(': ') };
}

/** What was read, as it is written. */
export function readText({ value, node, valueAt }: Reading, r: Results): string {
  if (value?.kind === 'quantity') return asWritten(value.quantity);
  const fate = r.setup.readings.map(x => (x.node === node ? r.readings.fate(x) : undefined)).find(f => f?.kind === 'counts');
  return fate?.kind === 'counts' ? showCell(r.graph, fate.taken.read).text : valueAt ? node.line.text.slice(valueAt.start, valueAt.end) : '';
}

/** `4 mm more than planned (820 mm)`, and the like of light; what a stretched string makes of the reading stands before it: `754.3 mm with its stretch` */
export function planText({ length, planned, stretched, made: ofLight }: Verdict): string {
  if (ofLight !== undefined) return ofLight;
  if (length === undefined) return '';
  const made = !stretched ? '' : `${show(Math.round(length / TENTH) * TENTH, LENGTH)} with its stretch`;
  const beside = planned === undefined ? '' : besidePlan(length - planned, planned);
  return [made, beside].filter(Boolean).join(', ');
}

/** Of a millimetre: finer than this no string tells. */
const TENTH = 1e-4;

export function verdictOf(reading: Reading, r: Results): Verdict {
  const fate = r.readings.fate(reading);
  const stale = r.readings.stale(reading);
  if (stale) return { fate: 'stale', words: `no longer counts: ${stale.thing.id} was moved on ${stale.moved.on}` };
  switch (fate?.kind) {
    case 'older': return { fate: 'older', words: `counts no more: there is a newer one${fate.newest.on === undefined ? '' : ` of ${fate.newest.on}`}` };
    case 'useless': case 'unclear': return { fate: fate.kind, words: `corrects nothing: ${fate.why}` };
    case 'counts': {
      const { subject, taken } = fate;
      const planned = subject.plan && !subject.plan.missing ? r.graph.value(subject.plan) : undefined;
      const length = r.graph.value(taken.length);
      const read = r.graph.value(taken.read);
      const stretched = length !== undefined && read !== undefined && Math.abs(Math.abs(length) - Math.abs(read)) >= TENTH / 2;
      const base = { of: subject.name, ...(stretched ? { stretched: true as const } : {}), ...(length !== undefined ? { length } : {}), ...(planned !== undefined ? { planned } : {}) };
      const many = subject.readings.length;
      if (subject.lessSure) return { ...base, fate: 'less sure', words: `does not count: ${subject.target.kind === 'difference' ? 'the readings of both paths are' : 'those of its legs are'} surer` };
      const verb = planned === undefined ? 'is the length of' : 'corrects';
      return { ...base, fate: many > 1 ? 'averaged' : 'counts', words: `${verb} ${subject.words}${many > 1 ? `, as the mean with ${many - 1} ${many === 2 ? 'other' : 'others'}` : ''}` };
    }
    default: return lightVerdict(reading, r) ?? { fate: 'unclear', words: '' };
  }
}
