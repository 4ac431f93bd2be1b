/** How often the shutter is opened for a plate, and for how long: once, or once for each of its exposures, between which the table changes. The bench card and the panel that counts down both take it from here. */
import type { Exposure } from '../../results/exposures/exposures.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import type { Step } from '../blocks/blocks.ts';
import { showCell } from '../chain.ts';
import { exposedAs } from '../report/exposures.ts';
import { stripTimes } from '../report/light.ts';
import { exposures, platesOf, timeOf } from './steps.ts';

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

/** All openings of the shutter until the plates are shut away: one, but for a plate that gets several exposures. */
export function openings(r: Results): readonly Opening[] {
  const several = r.exposures.plates.flatMap(p => (p.all.length > 1 ? p.all : []));
  const rest = exposures(r).filter(e => !several.some(x => x.plate === e.of));
  const last = { text: `Shutter closed; ${platesOf(r).length > 1 ? 'the plates' : 'the plate'} shut away before the light goes on.` };
  const all = [...(several.length === 0 || rest.length > 0 ? [once(r, rest)] : []), ...several.map((e, i) => oneOf(r, e, several[i - 1]))];
  return all.map((o, i) => ({ ...o, close: i === all.length - 1 ? last : BETWEEN }));
}

const BETWEEN: Step = { text: 'Shutter closed, the card back in the beam; the plate stays where it is, and the light stays out.' };

type Open = Omit<Opening, 'close'>;

function once(r: Results, all: ReturnType<typeof exposures>): Open {
  const { text, seconds } = timeOf(r, 'exposure');
  const byPage = all.map(e => `${e.plate === '' ? '' : `${e.plate} `}${e.text}`).join(', ');
  const [one, ...more] = all;
  return { change: [], byPage, written: text, strips: all.flatMap(e => stripOf(e.cell, e.plate, r)), ...opened(undefined, text, byPage), ...secondsOf(seconds, one && more.length === 0 ? r.graph.value(one.cell) : undefined) };
}

function oneOf(r: Results, e: Exposure<Results>, before: Exposure<Results> | undefined): Open {
  const standing = e.results ?? r;
  // Written for the page it is not known to be that of each.
  const own = standing === r || standing.setup.facts.get('exposure') !== r.setup.facts.get('exposure') ? timeOf(standing, 'exposure') : { text: '' };
  const byPage = e.time.missing ? '' : showCell(r.graph, e.time).text;
  const change: Step[] = before?.variant === e.variant && before?.laser === e.laser ? [] : e.variant || e.laser || before ? [tableFor(e)] : [];
  return { name: e.thing.id, change, byPage, written: own.text, strips: e.time.missing ? [] : stripOf(e.time, '', r), ...opened(e.thing.id, own.text, byPage), ...secondsOf(own.seconds, e.time.missing ? undefined : r.graph.value(e.time)) };
}

/** How the table stands for an exposure, with the lines of its variant. */
function tableFor(e: Exposure<Results>): Step {
  // Its time is told by itself.
  const lines = (e.variant?.node.children ?? []).filter(c => c.line.kind !== 'doc').map(c => c.line.text.slice(0, c.line.comment?.start).trim().replace(/\{$/, '').trim()).filter(l => l !== '' && !/^exposure\s*:/.test(l));
  return { text: `The table ${exposedAs(e)}.`, ...(lines.length > 0 ? { small: lines.join('; ') } : {}) };
}

function opened(name: string | undefined, written: string, byPage: string): { readonly open: Step } {
  const open = name === undefined ? 'Open' : `Open, ${name}`;
  if (written === '') return { open: { text: byPage === '' ? `${name === undefined ? open : `${open},`} for:` : `${open}: ${byPage} by the page. Tonight:`, write: 's' } };
  return { open: { text: `${name === undefined ? open : `${open},`} for ${written}.`, ...(byPage === '' ? {} : { small: `By light and sensitivity: ${byPage}.` }) } };
}

function stripOf(cell: Cell, of: string, r: Results): Opening['strips'] { const times = stripTimes(cell, r); return times.length > 0 ? [{ of, times }] : []; }

/** A figure that comes out is a proposal: whoever stands there says how long. */
const secondsOf = (written: number | undefined, out: number | undefined): { readonly seconds?: number } => { const s = written ?? (out === undefined ? undefined : Number(out.toPrecision(2))); return s === undefined ? {} : { seconds: s }; };
