/** How often the shutter is opened for a plate, and for how long: once, or once for each of its exposures, between which the table changes. The bench card and the panel that counts down both take it from here. */
import type { Exposure } from '../../results/exposures/exposures.ts';
import type { Results } from '../../results/plan.ts';
import type { Step } from '../blocks/blocks.ts';
import { showCell } from '../chain.ts';
import { exposedAs } from '../report/exposures.ts';
import { stripTimes } from '../report/light.ts';
import { exposures, platesOf, timeOf, type Time } from './steps.ts';

/** One opening of the shutter. */
export interface Opening {
  /** of a plate that gets several exposures, the one that it is */
  readonly name?: string;
  /** what becomes of the table before it */
  readonly change: readonly Step[];
  readonly open: Step;
  /** s; missing where nothing on the page tells one figure */
  readonly seconds?: number;
  /** what it comes to by the page: `13 to 55 s`; empty where that does not tell */
  readonly byPage: string;
  /** as it is written on the page; empty where it is not */
  readonly written: string;
  /** times of test strips, s, by plate where there are several */
  readonly strips: readonly { readonly of: string; readonly times: readonly string[] }[];
  /** once it is over */
  readonly close: Step;
}

/** All openings of the shutter until the plates are shut away: one, but for a plate that gets several exposures. One exposure is of all plates that stand there for it. */
export function openings(r: Results): readonly Opening[] {
  const several = r.exposures.plates.flatMap(p => (p.all.length > 1 ? p.all : []));
  const others = [...new Set(r.plates.map(p => p.plate))].filter(p => !several.some(e => e.plate === p));
  const once = exposures(r).filter(e => others.includes(e.of));
  const each = [...new Set(several.map(e => e.thing))].map(thing => several.filter(e => e.thing === thing));
  const last = { text: `Shutter closed; ${platesOf(r).length > 1 ? 'the plates' : 'the plate'} shut away before the light goes on.` };
  const all = [
    ...(several.length === 0 ? [opening(r, timeOf(r, 'exposure'), once, [])] : others.length > 0 ? [opening(r, timeOf(r, 'exposure'), once, [], others.map(p => p.id).join(' and '))] : []),
    ...each.map((of, i) => opening(r, timeFor(r, of[0]!), of.flatMap(e => neededFor(r, e)), tableFor(of[0]!, each[i - 1]?.[0]), of[0]!.thing.id)),
  ];
  return all.map((o, i) => ({ ...o, close: i === all.length - 1 ? last : BETWEEN }));
}

const BETWEEN: Step = { text: 'Shutter closed, the card back in the beam; the plate stays where it is, and the light stays out.' };

type Needed = Omit<ReturnType<typeof exposures>[number], 'of'>;

function opening(r: Results, { text: written, seconds }: Time, all: readonly Needed[], change: readonly Step[], name?: string): Omit<Opening, 'close'> {
  const byPage = all.map(e => `${e.plate === '' ? '' : `${e.plate} `}${e.text}`).join(', ');
  const [one, ...more] = all;
  // A figure that comes out is a proposal: whoever stands there says how long.
  const out = one && more.length === 0 ? r.graph.value(one.cell) : undefined;
  const open = seconds ?? (out === undefined ? undefined : Number(out.toPrecision(2)));
  return {
    ...(name === undefined ? {} : { name }), change, open: openStep(name, written, byPage), ...(open === undefined ? {} : { seconds: open }), byPage, written,
    strips: all.flatMap(e => { const times = stripTimes(e.cell, r); return times.length > 0 ? [{ of: e.plate, times }] : []; }),
  };
}

/** The time that is written for an exposure. Written for the page it is not known to be that of each. */
function timeFor(r: Results, { results: standing = r }: Exposure<Results>): Time {
  return standing === r || standing.setup.facts.get('exposure') !== r.setup.facts.get('exposure') ? timeOf(standing, 'exposure') : { text: '' };
}

const neededFor = (r: Results, { time: cell, plate }: Exposure<Results>): Needed[] => (cell.missing ? [] : [{ cell, plate: r.plates.length > 1 ? plate.id : '', text: showCell(r.graph, cell).text }]);

/** How the table stands for an exposure, with the lines of its variant; nothing where it stands so already. */
function tableFor(e: Exposure<Results>, before: Exposure<Results> | undefined): readonly Step[] {
  if (e.variant === before?.variant && e.laser === before?.laser) return [];
  // Its time is told by itself.
  const lines = (e.variant?.node.children ?? []).filter(c => c.line.kind !== 'doc').map(c => c.line.text.slice(0, c.line.comment?.start).trim().replace(/\{$/, '').trim()).filter(l => l !== '' && !/^exposure\s*:/.test(l));
  return [{ text: `The table ${exposedAs(e)}.`, ...(lines.length > 0 ? { small: lines.join('; ') } : {}) }];
}

function openStep(name: string | undefined, written: string, byPage: string): Step {
  const [open, comma] = name === undefined ? ['Open', ''] : [`Open, ${name}`, ','];
  if (written !== '') return { text: `${open}${comma} for ${written}.`, ...(byPage === '' ? {} : { small: `By light and sensitivity: ${byPage}.` }) };
  return { text: byPage === '' ? `${open}${comma} for:` : `${open}: ${byPage} by the page. Tonight:`, write: 's' };
}
