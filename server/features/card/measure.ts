/** The next readings to take, each with what it should come to and how far off that may be. */
import type { Cell } from '../../results/graph.ts';
import type { PlateLight } from '../../results/light/plate-light.ts';
import type { PlateResults } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { told, type Entry, type Row, type Section } from './blocks.ts';
import { fact, things } from './facts.ts';
import { goalWords } from './goals.ts';


export function measure(r: Results): Section | undefined {
  if (r.plates.length === 0) return undefined;
  const paths = r.plates.flatMap(p => pathRows(p, r));
  const light = [...darkRow(r), ...laserRows(r), ...r.plates.flatMap(p => lightRows(p, r))];
  return { name: 'measure', title: 'Measure', blocks: [{
    kind: 'table', heads: ['what', 'should come to', 'read'], widths: [28, 37, 20],
    groups: [...(paths.length > 0 ? [{ title: 'Paths, by one string', rows: paths }] : []), { title: 'Light, by one meter: at a plate flat where it will be, the other beams behind a card', rows: light }],
  }] };
}

const row = (what: string, small: string, expected: Entry, unit: string): Row => ({ tick: true, entries: [told(what, small), expected, { write: 'text' in expected && expected.text !== '' ? '' : unit }] });

const UNTOLD: Entry = told('', 'nothing on the page tells');

/** A figure as it is shown, with how it is known. */
function figure(cell: Cell | undefined, r: Results, how = ''): Entry {
  return cell && r.graph.value(cell) !== undefined ? told(showCell(r.graph, cell).text, how) : UNTOLD;
}

/** One path held against the other: what decides the brightness. */
function pathRows({ plate, pairs }: PlateResults, r: Results): Row[] {
  // In one beam the reference ends where the object light begins: there is nothing to hold against each other.
  return pairs.filter(x => x.arm.beam !== x.reference.beam).map(x => {
    const difference = r.ask(`${plate.id}.${x.arm.name}.difference`);
    const known = difference && r.graph.value(difference) !== undefined ? showCell(r.graph, difference).text : undefined;
    const counts = r.graph.value(x.mismatch) === undefined ? undefined : showCell(r.graph, x.mismatch).text;
    const limits = goalWords(r, 'mismatch', plate.id, x.arm.name);
    const small = [known !== undefined && counts !== undefined && counts !== known ? `${counts} with the glass on the way` : '', limits === '' ? '' : `expected: ${limits}`].filter(Boolean).join('; ');
    return row(`${x.arm.name} − ${x.reference.name} at ${plate.id}`, 'one loop of string held against both', known === undefined ? UNTOLD : told(known, small), 'mm');
  });
}

function darkRow(r: Results): Row[] {
  const meter = things(r.setup, 'meter').find(m => fact(m, 'dark') !== undefined);
  return [row('dark, head covered', '', meter ? told(fact(meter, 'dark')!, `as ${meter.id} is written`) : told(''), '')];
}

/** The bare beam, where it is first met. */
function laserRows(r: Results): Row[] {
  const lasers = [...new Set(r.arms.arms.map(a => a.laser))];
  return lasers.map(laser => {
    const leg = r.arms.arms.find(a => a.laser === laser)!.path.find(l => l.target?.kind.word !== 'shutter');
    const cell = laser.facts.has('power') && leg ? r.light.powers.at(leg) : undefined;
    const before = leg?.target ? ` before ${leg.target.id}` : '';
    return row(`bare beam of ${laser.id}${before}`, '', figure(cell, r, cell && leg && r.light.powers.isRead(leg) ? 'as read' : ''), 'mW');
  });
}

function lightRows(p: PlateResults, r: Results): Row[] {
  const { id } = p.plate;
  r.ask(`${id}.light`);
  const light = r.light.plates.find(l => l.plate === p.plate);
  if (!light) return [];
  const objects = p.arms.filter(a => a.arm.role === 'object').map(a => a.arm);
  const single = p.pairs.some(x => x.arm.beam === x.reference.beam);
  const unit = light.referenceLight.missing && light.reference?.read.kind === 'bare' ? '' : 'µW/cm²';
  // Of a single beam a meter in the place of the plate reads the reference; what comes back from the object it shades itself.
  const rows = [row(`reference at ${id}`, '', reference(light, r), unit)];
  if (light.corners && !light.corners.missing) rows.push(row('its weakest corner', 'against its middle', figure(light.corners, r, light.reference?.corners ? 'as read' : 'by the plan'), '%'));
  if (!single) rows.push(...(objects.length > 1 ? objects.map(a => row(`${a.name} at ${id}`, '', ofBeam(light, a.name, r), unit)) : []), row(`${objects.length > 1 ? 'all object light' : 'object light'} at ${id}`, '', object(light, r), unit));
  const drift = r.light.drifts.find(d => d.plate === p.plate);
  const longest = drift && !drift.longest.missing ? `a tenth of a fringe goes by in ${showCell(r.graph, drift.longest).text}` : 'a tenth of a fringe in the exposure is the most';
  rows.push(row(`fringes that creep at ${id}`, '', drift && !drift.rate.missing ? figure(drift.rate, r, longest) : told('', longest), '/min'));
  return rows;
}

const how = (read: boolean, predicted: boolean): string => (read ? 'as metered' : predicted ? 'by the plan, not metered' : 'by the ratio');

function reference(l: PlateLight, r: Results): Entry {
  const bare = l.referenceLight.missing ? l.reference : undefined;
  return figure(bare?.cell ?? l.referenceLight, r, how(bare !== undefined || l.reference?.read.kind === 'light', l.predicted.reference));
}

function object(l: PlateLight, r: Results): Entry {
  const bare = l.objectLight.missing ? l.objects.find(o => o.name === 'object') ?? (l.objects.length === 1 ? l.objects[0] : undefined) : undefined;
  return figure(bare?.cell ?? l.objectLight, r, how(bare !== undefined || l.objects.length > 0, l.predicted.object));
}

function ofBeam(l: PlateLight, name: string, r: Results): Entry {
  const read = l.objects.find(o => o.name === name);
  return figure(read?.cell ?? r.graph.find(`${l.plate.id}.${name}.light`), r, how(read !== undefined, true));
}
