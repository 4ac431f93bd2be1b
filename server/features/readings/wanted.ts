/** What there is to read of a setup, in the order in which it is set up, each with what it should come to. The bench card and the editor that asks for readings both take it from here. */
import { LEAST } from '../../checks/light/corners-dark.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import type { Cell } from '../../results/graph.ts';
import { CORNERS } from '../../results/light/arm-light.ts';
import type { PlateLight } from '../../results/light/plate-light.ts';
import { legStart, legWords } from '../../results/legs/legs.ts';
import { byLaser, type PlateResults } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { interval } from '../../results/sampling.ts';
import { fact, things } from '../blocks/facts.ts';
import { goalWords } from '../blocks/goals.ts';
import { showCell } from '../chain.ts';
import { asWritten } from '../report/words.ts';

export interface Wanted {
  readonly group: 'legs' | 'sums' | 'paths' | 'light' | 'wheels' | 'powers';
  /** what a line says of it between `measured` and the colon; missing where no single line can: that is for paper only */
  readonly subject?: string;
  /** for people, and how it is taken */
  readonly what: string;
  readonly how: string;
  /** as it is shown, and how that is known; both empty where nothing on the page tells */
  readonly expected: Expected;
  /** in which a bare number is meant; empty for one that has none */
  readonly unit: string;
  readonly by: 'string' | 'meter' | 'eye';
  /** one of several that stand on paper as one */
  readonly each?: true;
}

export interface Expected { readonly text: string; readonly known: string; /** of light that was not read yet: what says so */ readonly cell?: Cell }

/** All of them; of a leg or a path by string, of light by meter. */
export function wantedOf(r: Results): Wanted[] {
  return [...legsInOrder(r).flatMap(l => ofLeg(l, r)), ...r.plates.flatMap(p => [...ofArms(p, r), ...ofPaths(p, r)]), ...lightOf(r), ...wheelsOf(r), ...powersOf(r)];
}

/** The legs as light goes along them; those that it reaches first come first, and those of beams that end on no plate last. */
export function legsInOrder(r: Results): Leg[] {
  const order = new Set<Leg>([...r.arms.arms].sort((a, b) => Number(a.role === 'object') - Number(b.role === 'object')).flatMap(a => a.path));
  for (const beam of r.setup.beams.values()) for (const leg of beam.legs) order.add(leg);
  return [...order];
}

/** How long a leg should be, as far as the page tells; empty else. */
export function legLength(leg: Leg, r: Results): string {
  const cell = r.legs.get(leg);
  if (!cell || r.graph.value(cell) === undefined) return '';
  return leg.length?.kind === 'quantity' && !cell.rule ? asWritten(leg.length.quantity) : showCell(r.graph, cell).text;
}

function ofLeg(leg: Leg, r: Results): Wanted[] {
  const [from, to] = [legStart(leg), leg.target];
  if (!from || !to) return [];
  return [{ group: 'legs', subject: `${from.id} -> ${to.id}`, what: legWords(leg), how: 'string from middle to middle', expected: { text: legLength(leg, r), known: '' }, unit: 'mm', by: 'string' }];
}

/** In one beam the reference ends where the object light begins: there is nothing to hold against each other. */
const isSingle = (p: PlateResults): boolean => p.pairs.some(x => x.arm.beam === x.reference.beam);
const at = (plate: Thing, r: Results): string => (r.plates.length > 1 ? ` at ${plate.id}` : '');

/** Each path as a whole, from where the arms part. */
function ofArms(p: PlateResults, r: Results): Wanted[] {
  if (isSingle(p) || p.arms.length < 2) return [];
  const from = p.arms[0]!.partsAt?.id;
  return p.arms.map(a => ({
    group: 'sums', subject: `${a.arm.name}${at(p.plate, r)}`, what: `${a.arm.name}, ${from === undefined ? '' : `from ${from} `}to ${p.plate.id}`, how: 'the whole path in one run', unit: 'mm', by: 'string',
    expected: { text: r.graph.value(a.length) === undefined ? '' : showCell(r.graph, a.length).text, known: '' },
  }));
}

/** One path held against the other: what decides the brightness. */
function ofPaths({ plate, pairs }: PlateResults, r: Results): Wanted[] {
  return pairs.filter(x => x.arm.beam !== x.reference.beam).map((x): Wanted => {
    const difference = r.ask(`${plate.id}.${x.arm.name}.difference`);
    const known = difference && r.graph.value(difference) !== undefined ? showCell(r.graph, difference).text : undefined;
    const counts = r.graph.value(x.mismatch) === undefined ? undefined : showCell(r.graph, x.mismatch).text;
    const limits = goalWords(r, 'mismatch', plate.id, x.arm.name);
    const small = [known !== undefined && counts !== undefined && counts !== known ? `${counts} with the glass on the way` : '', limits === '' ? '' : `expected: ${limits}`].filter(Boolean).join('; ');
    return {
      group: 'paths', subject: `${x.arm.name} - ${x.reference.name}${at(plate, r)}`, what: `${x.arm.name} − ${x.reference.name} at ${plate.id}`, how: 'one loop of string held against both', unit: 'mm', by: 'string',
      expected: known === undefined ? UNTOLD : { text: known, known: small },
    };
  });
}

const UNTOLD: Expected = { text: '', known: 'nothing on the page tells' };

/** A figure as it is shown, with how it is known. */
const figure = (cell: Cell | undefined, r: Results, known = ''): Expected => (cell && r.graph.value(cell) !== undefined ? { text: showCell(r.graph, cell).text, known, cell } : UNTOLD);

const byMeter = (what: string, how: string, expected: Expected, unit: string, subject?: string): Wanted => ({ group: 'light', what, how, expected, unit, by: 'meter', ...(subject === undefined ? {} : { subject }) });

function lightOf(r: Results): Wanted[] {
  if (r.plates.length === 0) return [];
  const meter = things(r.setup, 'meter').find(m => fact(m, 'dark') !== undefined);
  const dark = byMeter('dark, head covered', '', meter ? { text: fact(meter, 'dark')!, known: `as ${meter.id} is written` } : { text: '', known: '' }, '', 'dark');
  return [dark, ...bareBeams(r), ...r.plates.flatMap(p => [...byLaser(p).flatMap(o => atPlate(o.results, o.laser, r)), driftOf(p, r)])];
}

/** The leg on which the bare beam of each laser is first met. */
function bareLegs(r: Results): { readonly laser: Thing; readonly leg: Leg | undefined }[] {
  return [...new Set(r.arms.arms.map(a => a.laser))].map(laser => ({ laser, leg: r.arms.arms.find(a => a.laser === laser)!.path.find(l => l.target?.kind.word !== 'shutter') }));
}

function bareBeams(r: Results): Wanted[] {
  return bareLegs(r).map(({ laser, leg }) => {
    const cell = laser.facts.has('power') && leg ? r.light.powers.at(leg) : undefined;
    const expected = figure(cell, r, cell && leg && r.light.powers.isRead(leg) ? 'as read' : '');
    return byMeter(`bare beam of ${laser.id}${leg?.target ? ` before ${leg.target.id}` : ''}`, '', expected, 'mW', leg?.target && leg.target.kind.light !== 'recorded' ? `${leg.beam.id} at ${leg.target.id}` : undefined);
  });
}

function atPlate(p: PlateResults, laser: Thing | undefined, r: Results): Wanted[] {
  const { id } = p.plate;
  r.ask(`${id}.light`);
  const light = r.light.plates.find(l => l.plate === p.plate && l.laser === laser);
  if (!light) return [];
  const objects = p.arms.filter(a => a.arm.role === 'object').map(a => a.arm);
  const referenceArm = p.arms.find(a => a.arm.role === 'reference')?.arm;
  const unit = light.referenceLight.missing && light.reference?.read.kind === 'bare' ? '' : 'µW/cm²';
  // Of a single beam a meter in the place of the plate reads the reference; what comes back from the object it shades itself.
  const of = laser ? ` of ${laser.id}` : '';
  const list = [byMeter(`reference${of} at ${id}`, '', reference(light, r), unit, referenceArm && `${referenceArm.name} at ${id}`)];
  if (light.corners && !light.corners.missing) list.push(byMeter('its weakest corner', 'against its middle', figure(light.corners, r, light.reference?.corners ? 'as read' : 'by the plan'), '%'), ...(referenceArm ? cornersOf(referenceArm.name, light, unit, r) : []));
  if (!isSingle(p)) {
    // Of several lasers each object beam goes by its own name: “object” would be all of them.
    const together = !laser || objects.length === 1;
    if (objects.length > 1) list.push(...objects.map(a => byMeter(`${a.name} at ${id}`, '', ofBeam(light, a.name, r), unit, `${a.name} at ${id}`)));
    if (together) list.push(byMeter(`${objects.length > 1 ? 'all object light' : `object light${of}`} at ${id}`, '', object(light, r), unit, `${objects.length === 1 ? objects[0]!.name : 'object'} at ${id}`));
  }
  return list;
}

function driftOf({ plate }: PlateResults, r: Results): Wanted {
  const { id } = plate;
  const drift = r.light.drifts.find(d => d.plate === plate);
  const longest = drift && !drift.longest.missing ? `a tenth of a fringe goes by in ${showCell(r.graph, drift.longest).text}` : 'a tenth of a fringe in the exposure is the most';
  return { group: 'light', subject: `drift at ${id}`, what: `fringes that creep at ${id}`, how: '', expected: drift && !drift.rate.missing ? figure(drift.rate, r, longest) : { text: '', known: longest }, unit: 'fringes/min', by: 'eye' };
}

/** One corner after the other, against the middle. By the plan only the weakest is known, and which one that is it cannot tell. */
function cornersOf(reference: string, l: PlateLight, unit: string, r: Results): Wanted[] {
  const middle = l.referenceLight.missing ? l.reference?.cell : l.referenceLight;
  const centre = middle && r.graph.value(middle);
  const planned = l.reference?.corners ? undefined : l.corners;
  const share = planned ? interval(r.graph, planned).low : LEAST;
  const least = middle === undefined || centre === undefined ? '' : `at least ${show(Number((share * centre).toPrecision(2)), middle.dim, 0, middle.unit)}`;
  const known = planned ? `by the plan the weakest corner has ${showCell(r.graph, planned).text} of the middle; below ${percentage(LEAST)} the image fades there` : `${percentage(LEAST)} of the middle, below which the image fades there`;
  return CORNERS.map(spot => ({ group: 'light', subject: `${reference} at ${l.plate.id} ${spot}`, what: `reference at ${l.plate.id}, ${spot} corner`, how: 'the head in that corner, as seen from the object, flat where the plate will be', expected: { text: least, known }, unit, by: 'meter', each: true }));
}
const percentage = (share: number): string => `${Math.round(share * 100)}%`;

const how = (read: boolean, predicted: boolean): string => (read ? 'as metered' : predicted ? 'by the plan, not metered' : 'by the ratio');

function reference(l: PlateLight, r: Results): Expected {
  const bare = l.referenceLight.missing ? l.reference : undefined;
  return figure(bare?.cell ?? l.referenceLight, r, how(bare !== undefined || l.reference?.read.kind === 'light', l.predicted.reference));
}

function object(l: PlateLight, r: Results): Expected {
  const bare = l.objectLight.missing ? l.objects.find(o => o.name === 'object') ?? (l.objects.length === 1 ? l.objects[0] : undefined) : undefined;
  return figure(bare?.cell ?? l.objectLight, r, how(bare !== undefined || l.objects.length > 0, l.predicted.object));
}

function ofBeam(l: PlateLight, name: string, r: Results): Expected {
  const read = l.objects.find(o => o.name === name);
  return figure(read?.cell ?? r.graph.find(`${l.plate.id}.${name}.light`), r, how(read !== undefined, true));
}

/** Wheels whose marks were metered: where they stand says what they reflect. */
function wheelsOf(r: Results): Wanted[] {
  return things(r.setup, 'splitter').filter(s => [...s.facts.keys()].some(k => /^mark\b/.test(k))).map(s => ({ group: 'wheels', subject: `${s.id} wheel`, what: `wheel of ${s.id}`, how: 'the mark at which it stands', expected: { text: fact(s, 'wheel') ?? '', known: '' }, unit: '', by: 'eye' }));
}

/** Power before each thing that the bare beam meets: what lies between two of them loses the rest. */
function powersOf(r: Results): Wanted[] {
  const bare = bareLegs(r).map(b => b.leg);
  return narrowLegs(r).filter(l => !bare.includes(l)).map(leg => {
    const cell = r.light.powers.at(leg);
    return { group: 'powers', subject: `${leg.beam.id} at ${leg.target!.id}`, what: `${leg.beam.id} before ${leg.target!.id}`, how: 'the whole beam on the head', expected: figure(cell, r, r.light.powers.isRead(leg) ? 'as read' : 'by the plan'), unit: 'mW', by: 'meter' };
  });
}

/** Legs on which all of a beam fits onto the head of a meter: up to what spreads it. */
function narrowLegs(r: Results): Leg[] {
  const found = new Set<Leg>();
  for (const { path } of r.arms.arms) {
    for (const leg of path) {
      if (!leg.target || leg.target.kind.light === 'recorded') break;
      if (leg.target.kind.word !== 'shutter') found.add(leg);
      if (leg.target.kind.word === 'spreader' || leg.target.kind.word === 'fill card' || !PASSES.has(leg.target.kind.light)) break;
    }
  }
  return [...found];
}
const PASSES: ReadonlySet<string> = new Set(['turns', 'shares', 'passes']);
