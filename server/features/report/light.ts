/** What is known of the light: at each plate, and along the beams. Rows of a table; every figure is a cell of the results. */
import { beamLegs } from '../../model/arms.ts';
import type { Cell } from '../../results/graph.ts';
import type { Drift } from '../../results/light/drift.ts';
import type { PlateLight } from '../../results/light/plate-light.ts';
import type { Results } from '../../results/plan.ts';
import { handStrip } from '../../results/rules/object-light.ts';
import { percent, plain } from '../../model/show.ts';
import { showCell } from '../chain.ts';
import { padEnd, width, wrap } from '../plain-text.ts';

export interface LightPage {
  /** `Light at P1`, `Wheels, images, power` */
  readonly title: string;
  readonly rows: readonly LightRow[];
}

export interface LightRow {
  readonly label: string;
  /** the figure as it is shown; `unknown` where it has no value */
  readonly text: string;
  /** how it is known, or why not */
  readonly remark: string;
}

/** The pages of a setup, empty where nothing is known of its light. */
export function lightPages(r: Results): LightPage[] {
  const plates = r.plates.map(({ plate }) => plate);
  const pages = plates.flatMap(plate => {
    const drift = r.light.drifts.find(d => d.plate === plate);
    const rest = [...powerRows(plate.id, r), ...(drift ? driftRows(drift, r) : [])];
    const lights = r.light.plates.filter(p => p.plate === plate);
    if (lights.length < 2) return [{ title: `Light at ${plate.id}`, rows: [...lights.flatMap(p => plateRows(p, r)), ...rest] }];
    return [...lights.map(p => ({ title: `Light of ${p.laser!.id} at ${plate.id}`, rows: plateRows(p, r) })), { title: `All light at ${plate.id}`, rows: [...togetherRows(lights[0]!, r), ...rest] }];
  });
  return [...pages, { title: r.light.solved.length > 0 ? 'Splitters, wheels, images and powers' : 'Wheels, images and powers that were read', rows: otherRows(r) }].filter(p => p.rows.length > 0);
}

/** The page as plain text. */
export function lightText(p: LightPage): string[] {
  const [labels, texts] = [Math.max(...p.rows.map(x => width(x.label))), Math.max(...p.rows.map(x => width(x.text)))];
  return [p.title, '', ...p.rows.flatMap(x => wrap(x.remark, { first: `  ${padEnd(x.label, labels)}   ${padEnd(x.text, x.remark === '' ? 0 : texts)}   `, rest: ' '.repeat(labels + 5) })).map(l => l.trimEnd())];
}

function row(label: string, cell: Cell, r: Results, remark = ''): LightRow {
  const shown = showCell(r.graph, cell);
  return { label, text: shown.text, remark: shown.missing ?? remark };
}

function plateRows(p: PlateLight, r: Results): LightRow[] {
  const known = (cell: Cell): boolean => r.graph.value(cell) !== undefined;
  const light = [p.referenceLight, p.objectLight, p.light].some(known);
  const rows: LightRow[] = [];
  if (light) {
    rows.push(row('reference', p.referenceLight, r, p.reference?.read.kind === 'light' ? how(p.reference.read.reading.words) : p.predicted.reference ? PREDICTED : 'by the ratio'));
    const made = p.objects.filter(o => p.counting.has(o) && o.read.kind === 'light');
    rows.push(row('object light', p.objectLight, r, made.length > 0 ? [...new Set(made.map(o => how(o.read.reading.words)))].join(', ') : p.predicted.object ? `predicted: a guess until it is metered${roundedWords(p.plate.id, r)}` : 'by the ratio'));
    if (p.objects.length > 1) for (const o of p.objects) rows.push(row(`  ${o === p.both?.together ? 'all together' : o.name}`, o.cell, r, r.light.fates.get(o.read.reading)?.kind === 'less sure' ? 'less sure: does not count' : ''));
    if (known(p.light)) rows.push(row('together', p.light, r));
  }
  const read = p.reference && p.objects.length > 0;
  rows.push(row('beam ratio', p.ratio, r, p.predicted.ratio ? 'predicted: meter both' : read ? '' : 'as written'));
  for (const o of p.objects) if (o.polarized) rows.push(row('polarized like the reference', o.polarized.cell, r, `share of ${o.name}`));
  if (p.effective) rows.push(row('ratio to that share', p.effective, r));
  if (p.corners && r.published.includes(p.corners)) rows.push(row('weakest corner', p.corners, r, p.reference?.corners ? 'of the centre' : 'of the centre, predicted'));
  const over = known(p.ratio) ? r.light.over(p.plate, p.laser) : undefined;
  if (over) rows.push({ label: 'ratio over the plate', text: over.map(c => plain(r.graph.value(c)!, 2)).join(' to '), remark: 'times that of the middle, by the plan' });
  if (p.reference?.angle) rows.push(row('angle by two readings', p.reference.angle.read, r));
  if (known(p.light)) rows.push(...(p.alone ? [row('exposure alone', p.alone, r, `the whole exposure by ${p.laser!.id}`)] : [row('exposure', p.exposure, r), ...stripRow(p.exposure, r)]));
  return rows;
}

/** Light of different lasers makes no fringes, but all of it exposes. */
function togetherRows({ plate, exposure }: PlateLight, r: Results): LightRow[] {
  const all = r.graph.find(`${plate.id}.light`);
  return all && !all.missing ? [row('together', all, r), row('exposure', exposure, r, 'all lasers open at once'), ...stripRow(exposure, r)] : [];
}

/** Of objects whose light was worked out patch by patch, those that nobody has told the shape of. */
function roundedWords(plate: string, r: Results): string {
  const known = (arm: string): boolean => { const each = r.graph.find(`${plate}.${arm}.light for each watt`); return each !== undefined && !each.missing; };
  const things = r.arms.arms.filter(a => a.plate.id === plate && a.object?.kind.word === 'object' && !a.object.facts.has('shape') && known(a.name)).map(a => a.object!.id);
  return things.length === 0 ? '' : `; no shape of ${[...new Set(things)].join(' and ')} is written, so it counts as rounded`;
}

const PREDICTED = 'predicted, not metered';

/** Times for a test strip round an exposure, in s, as a hand can keep them; none where no hand can, or nobody would wait for it. */
export function stripTimes(exposure: Cell, r: Results): string[] {
  const { value, band, u } = showCell(r.graph, exposure);
  if (value === undefined || value < SHORTEST || value > LONGEST) return [];
  const [low, high] = band ? [band.low, band.high] : [value - 2 * (u ?? 0), value + 2 * (u ?? 0)];
  return handStrip(value, Math.max(low, value / 16), high).map(t => plain(t));
}

function stripRow(exposure: Cell, r: Results): LightRow[] {
  const times = stripTimes(exposure, r);
  return times.length === 0 ? [] : [{ label: 'test strip', text: `${times.join(', ')} s`, remark: 'in half stops' }];
}
/** Of what a hand can time, and what anybody would wait for, s. */
const [SHORTEST, LONGEST] = [2, 3600];

const how = (words: string): string => (words.includes('facing beam') ? 'facing the beam' : 'in the plate’s plane');

/** What an arm brings, where it can be told. */
function powerRows(plate: string, r: Results): LightRow[] {
  return r.plates.filter(p => p.plate.id === plate).flatMap(p => p.arms.flatMap(({ arm }) => {
    if (!arm.laser.facts.has('power')) return [];
    const cell = r.light.powers.ofArm(arm);
    if (cell.missing) return [];
    const on = (arm.path[beamLegs(arm) - 1]?.target ?? arm.plate).id;
    const caught = r.light.caught(arm);
    const lands = caught && !caught.missing ? `; by ${caught.inputs[0] === cell ? 'the plan' : 'its reading'} ${showCell(r.graph, caught).text} of it falls on ${on}` : '';
    return [row(`power of ${arm.name}`, cell, r, `all of its beam at ${on}${lands}`)];
  }));
}

function driftRows(d: Drift, r: Results): LightRow[] {
  const rows = [row('drift', d.rate, r), row('longest exposure', d.longest, r, 'a tenth of a fringe')];
  const brightness = showCell(r.graph, d.brightness);
  if (brightness.value !== undefined) rows.push({ label: 'brightness that it leaves', text: brightness.text, remark: `in ${showCell(r.graph, d.exposure).text}` });
  return rows;
}

/** Light that was read tells of a split only where it is written at which share that was. */
const isMetered = ({ light }: Results): boolean => light.plates.some(p => p.reference !== undefined || p.objects.length > 0);

/** How far before or behind a plate an image lies. */
function offsetRow(plate: string, cell: Cell, r: Results): LightRow {
  const before = row(`image before ${plate}`, cell, r);
  return before.text.startsWith('−') ? { ...before, label: `image behind ${plate}`, text: before.text.slice(1) } : before;
}

function otherRows(r: Results): LightRow[] {
  const { graph, light } = r;
  return [
    ...light.readPowers.map(p => {
      const [read, planned] = [graph.value(p.read), graph.value(p.planned)];
      return row(`power of ${p.leg.beam.id} at ${p.leg.to}`, light.powers.at(p.leg), r, read !== undefined && planned ? `${percent(read / planned)} of the plan` : 'as read');
    }),
    ...light.wheels.flatMap(w => (w.byWheel ? [row(`${w.splitter.id} reflects by its wheel`, w.byWheel, r)] : [])),
    ...light.solved.map(s => row(`${s.splitter.id} reflects`, s.working, r, `left open: by the plan ${plain(graph.value(s.ratio)!, 3)}:1 asks for ${showCell(graph, s.share).text}${s.bounded ? ', and it is kept within what is written' : ''}${isMetered(r) ? `; write what ${s.splitter.id} reflected when the light was metered, and it follows from that` : ''}`)),
    ...light.images.flatMap(i => [row(`image of ${i.hologram.id}`, i.distance, r, `from ${i.hologram.id}`), ...i.offsets.map(o => offsetRow(o.plate.id, o.cell, r))]),
  ];
}
