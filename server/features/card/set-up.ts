/** Building the table: the plan, and each leg in the order in which light goes along it, with how long it is by string, where its spot has to land and how what it lands on is set. */
import type { Leg, Thing } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import { legWords } from '../../results/legs/legs.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { mountAngles, type MountAngles } from '../report/angles.ts';
import { armTable } from '../report/arms.ts';
import { legLength, legsInOrder } from '../readings/wanted.ts';
import { told, type Block, type Entry, type Row, type Section, type Step } from '../blocks/blocks.ts';
import { fact, listed, things } from '../blocks/facts.ts';
import { heightWords, placeWords } from './places.ts';

export function setUp(r: Results): Section {
  const mounts = new Map(mountAngles(r).map(m => [m.thing.id, m]));
  const placed = r.table.look.things.size > 0;
  const groups = [...beamGroups(r, mounts, placed), ...r.plates.flatMap(p => sums(p.plate, r, placed))];
  const blocks: Block[] = [{ kind: 'picture', steps: first(r) }];
  if (groups.length > 0) blocks.push({ kind: 'table', heads: ['leg', 'by string', ...(placed ? ['spot lands at'] : []), 'how it is set', 'read'], widths: placed ? [22, 31, 35, 62, 20] : [28, 32, 62, 26], groups });
  return { name: 'set up', title: 'Set up', blocks };
}

function first(r: Results): Step[] {
  const stands = [...things(r.setup, 'plate'), ...things(r.setup, 'object'), ...things(r.setup, 'hologram')].map(t => t.id);
  const lenses = things(r.setup, 'spreader').map(t => t.id);
  const height = fact(r.setup, 'beam height');
  const { step, small } = { step: height === undefined ? 'All beams run at one height above the table:' : `All beams run ${height} above the table.`, small: heightWords(r) };
  return [
    { text: step, ...(height === undefined ? { write: 'mm' } : {}), ...(small === '' ? {} : { small }) },
    ...(stands.length > 0 ? [{ text: `${listed(stands)} stand${stands.length > 1 ? '' : 's'} first: every path ends there.`, ...(things(r.setup, 'plate').length > 0 ? { small: 'Glass of the same thickness stands for the plate until the room is dark.' } : {}) }] : []),
    { text: 'Leg by leg, as light goes.', small: `The string runs from middle to middle, and there the spot lands${ends(r)}.` },
    ...(lenses.length > 0 ? [{ text: `${listed(lenses)} come${lenses.length > 1 ? '' : 's'} last, when each spot of the bare beam is where it has to be.` }] : []),
  ];
}

/** Where the middle is of what is no flat thing. */
function ends({ setup }: Results): string {
  const said = [[...setup.things.values()].some(t => t.kind.light === 'shares') ? 'of a splitter on its coated face' : '', things(setup, 'object').length > 0 ? 'of an object on its lit front' : ''].filter(Boolean);
  return said.length === 0 ? '' : `: ${said.join(', ')}`;
}

/** The legs of each beam; those that light reaches first come first, and beams that end on no plate last. */
function beamGroups(r: Results, mounts: ReadonlyMap<string, MountAngles>, placed: boolean): { title: string; rows: Row[] }[] {
  const order = legsInOrder(r);
  const beams = new Set(order.map(l => l.beam));
  const row = (leg: Leg): Row => ({ tick: true, entries: [told(legWords(leg)), lengthOf(leg, r), ...(placed ? [landing(leg, r)] : []), told('', leg.target ? [...setting(leg.target, r, mounts.get(leg.target.id)), ...widthOf(leg, r)].join(', ') : ''), { write: 'mm' }] });
  return [...beams].map(beam => ({ title: `Beam ${beam.id}${beam.from ? `, from ${beam.from.id}${beam.port === undefined ? '' : ` ${beam.port}`}` : ''}`, rows: order.filter(l => l.beam === beam).map(row) }));
}

function lengthOf(leg: Leg, r: Results): Entry {
  const text = legLength(leg, r);
  return text === '' ? { write: 'mm' } : told(text);
}

/** Where what the leg leads to stands: there its spot lands. */
function landing({ target }: Leg, r: Results): Entry {
  const place = target ? placeWords(target, r) : '';
  return place === '' ? { write: '' } : told(place);
}

/** How a thing is set, as far as it is written or follows from the places. */
function setting(thing: Thing, r: Results, mount: MountAngles | undefined): string[] {
  const said: string[] = [];
  const [lens, pinhole] = [fact(thing, 'focal length'), fact(thing, 'pinhole')];
  if (thing.kind.word === 'spreader') said.push(`lens ${lens ?? '______ mm'}`, ...(pinhole === undefined && lens?.startsWith('-') ? [] : [`pinhole ${pinhole ?? '______ µm'}`]));
  else if (lens !== undefined) said.push(`focal length ${lens}`);
  if (thing.kind.light === 'shares') {
    const share = r.light.reflects(thing);
    const wheel = fact(thing, 'wheel');
    if (wheel !== undefined) said.push(`wheel at ${wheel}`);
    said.push(share && !share.missing ? `reflects ${showCell(r.graph, share).text}` : 'reflects ______ %');
  }
  if (mount) {
    const heading = mount.heading && showCell(r.graph, mount.heading).text;
    said.push(`${heading === undefined ? '' : `faces ${heading}, `}light turns ${showCell(r.graph, mount.fold).text}`);
  }
  for (const phrase of FACTS[thing.kind.word] ?? []) if (fact(thing, phrase) !== undefined) said.push(MOUNTED[fact(thing, phrase)!] ?? `${phrase} ${fact(thing, phrase)!}`);
  return said;
}
/** Facts that are set at the table, by the kind of thing. */
const FACTS: Readonly<Record<string, readonly string[]>> = { attenuator: ['density'], slit: ['width', 'direction'], shutter: ['mounted'], polarizer: ['axis', 'angle'], 'half-wave plate': ['axis', 'angle'] };

const MOUNTED: Readonly<Record<string, string>> = { hand: 'a card in the hand', stand: 'on a stand of its own', table: 'on the table' };

/** How wide the light is there, where the page says anything of its beam. */
function widthOf(leg: Leg, r: Results): string[] {
  const laser = r.arms.arms.find(a => a.path.includes(leg))?.laser;
  if (!laser?.facts.has('beam diameter')) return [];
  const cell = r.ask(`${leg.id}.beam diameter`);
  const { value, band, text } = cell && !cell.missing ? showCell(r.graph, cell) : {};
  // Of a spot nobody tells more than two digits.
  return value === undefined ? [] : [`${value < SPOT ? 'spot' : 'light'} ${band && text!.includes(' to ') ? text! : show(Number(value.toPrecision(2)), LENGTH)}`];
}

/** Wider than that nobody calls it a spot, m. */
const SPOT = 0.01;

/** The arms of a plate in all, and at which angle they arrive. */
function sums(plate: Thing, r: Results, placed: boolean): { title: string; rows: Row[] }[] {
  const found = r.plates.find(p => p.plate === plate);
  if (!found || found.arms.length === 0) return [];
  const from = found.arms[0]!.partsAt?.id;
  // Of a single beam only the angle at which it arrives is left.
  const single = found.pairs.some(x => x.arm.beam === x.reference.beam);
  const rows = found.arms.filter(a => !single || a.arm.role === 'reference').map((a): Row => {
    const table = armTable(a, r);
    const small = [table.withGlass === undefined ? '' : `${table.withGlass} with its glass`, table.inOneRun ? 'as read in one run' : ''].filter(Boolean).join('; ');
    const length: Entry = r.graph.value(a.length) === undefined ? { write: 'mm' } : told(table.total, small);
    return { tick: true, sum: true, entries: [told(a.arm.name), single ? told('') : length, ...(placed ? [told('')] : []), table.angle === undefined ? { write: '° from the normal' } : told('', `arrives at ${table.angle} from the normal of ${plate.id}`), single ? { write: '°' } : { write: 'mm' }] };
  });
  return [{ title: single ? `At ${plate.id}` : `In all, ${from === undefined ? '' : `from ${from} `}to ${plate.id}`, rows }];
}
