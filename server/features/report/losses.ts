/** The ladder of a plate and object arm: what takes how much of the brightness, in stops, the largest first. Every figure is a cell of the results. */
import type { Cause, Ladder, Rung } from '../../results/losses/losses.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { percent, percentBand, plain } from '../../model/show.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';

/** What a cause takes. `low` and `high` are stops, the same where it is known. */
export interface Step {
  readonly cause: Cause;
  readonly label: string;
  readonly rung: Rung;
  /** undefined where it is not known how much */
  readonly stops?: { readonly low: number; readonly high: number };
  /** `1 1/2 stops` */
  readonly text: string;
  /** `36 % of the brightness, at 4:1`; why it is not known */
  readonly remark: string;
}

/** Fewer stops than this nobody sees. */
export const LEAST_STOPS = 0.1;
/** Beyond this many stops nothing is seen at all. */
const MOST_STOPS = 7;
/** By how much a rating should exceed what is needed (common practice). */
const MARGIN = 1.3;

const LABELS: Readonly<Record<Cause, string>> = { depth: 'depth', ratio: 'ratio', polarization: 'polarization', fringes: 'fringes against the stock', drift: 'drift', exposure: 'exposure', sharing: 'other recordings', corner: 'in the weakest corner' };

/** The ladders of a setup, where its page says more than lengths. */
export function lossPages(r: Results): LightPage[] {
  return r.losses.shown() ? r.losses.ladders.map(ladder => lossPage(ladder, r)) : [];
}

export function lossPage(ladder: Ladder, r: Results): LightPage {
  const { plate, pair, recorded } = ladder;
  const several = r.plates.some(p => p.plate === plate && p.pairs.length > 1);
  const steps = stepsOf(ladder, r);
  const rows: LightRow[] = steps.filter(s => s.stops).map(({ label, text, remark }) => ({ label, text, remark }));
  if (recorded && !recorded.missing) {
    const { low, high } = stopsOf(recorded, r, left => left);
    rows.push({ label: 'together', text: stopWords(low, high), remark: `${showCell(r.graph, recorded).text} of full brightness is left in the middle of the plate, at most${tooFine(steps) ? ', and less by whatever the fineness of the fringes takes' : ''}` });
  }
  const unknown = steps.filter(s => !s.stops).map(s => s.label);
  if (unknown.length > 0) rows.push({ label: 'unknown', text: '', remark: unknown.join(', ') });
  return { title: `What holds back the brightness of ${pair.arm.object!.id} on ${plate.id}${several ? ` by ${pair.arm.name}` : ''}`, rows };
}

/** The rungs, the largest first, behind them what is unknown. */
export function stepsOf(ladder: Ladder, r: Results): Step[] {
  return ladder.rungs.map(rung => step(rung, ladder, r)).sort((a, b) => rank(b) - rank(a));
}

const rank = ({ stops }: Step): number => (stops ? (stops.low + stops.high) / 2 : -1);

function step(rung: Rung, ladder: Ladder, r: Results): Step {
  const { cause, loss, from } = rung;
  const head = { cause, label: rung.dark ? 'light' : LABELS[cause], rung };
  if (cause === 'fringes' && from) return { ...head, ...fringes(r.graph.value(from)!) };
  if (!loss) return { ...head, text: 'unknown', remark: rung.unknown ?? '' };
  const stops = stopsOf(loss, r, lost => 1 - lost);
  const shown = showCell(r.graph, loss);
  return { ...head, stops, text: stopWords(stops.low, stops.high), remark: `${shown.band ? percentBand(Math.max(0, shown.band.low), Math.min(1, shown.band.high)) : percent(shown.value!)} ${behind(rung, ladder, r)}` };
}

/** What a figure is reckoned from, in a few words. */
function behind({ cause, from, dark, loss }: Rung, { pair, plate }: Ladder, r: Results): string {
  const text = from ? showCell(r.graph, from).text : '';
  switch (cause) {
    case 'depth': return from!.name.endsWith('.screen brightness') ? `lost${from!.words.replace(/^brightness/, '')}, by the longer ways from its rim` : `lost in the ${from!.words.replace(/^brightness of the /, '')}`;
    case 'ratio': return dark ? `lost: no light reaches ${plate.id} by ${dark.arm.name}, as ${dark.why}` : `lost at ${text}`;
    case 'polarization': return `of the ${pair.arm.name === 'object' ? 'object light' : `light of ${pair.arm.name}`} makes no fringes`;
    case 'drift': return 'lost while the fringes creep';
    case 'exposure': return `lost, open for ${showCell(r.graph, r.values.setupFact('exposure')!).text} where ${text} are needed`;
    case 'sharing': return `lost, as others record on ${plate.id} too: a share of ${rungShares(loss!, r)} leaves its square`;
    case 'corner': return `less reference light than in the middle of ${plate.id}; not in the sum, which is that of the middle`;
    case 'fringes': return '';
  }
}

const rungShares = (loss: Cell, r: Results): string => loss.inputs.map(c => showCell(r.graph, c).text).join(' of ');

/** No curve tells what is lost beyond a rating, so that only a comparison is made. */
function fringes(share: number): Pick<Required<Step>, 'text' | 'remark' | 'stops'> {
  const times = plain(share, 2);
  const words = `the finest fringes are ${times === '1' ? 'as fine as' : `${times} times what`} the plate is rated for`;
  if (share > 1) return { stops: { low: 0, high: MOST_STOPS }, text: 'perhaps all', remark: `${words}; how much is lost nobody can tell` };
  return share > 1 / MARGIN ? { stops: { low: 0, high: 1 }, text: 'perhaps some', remark: words } : { stops: { low: 0, high: 0 }, text: stopWords(0, 0), remark: words };
}

/** Whether the stock may lose some of the fringes, which nobody can put into the sum. */
const tooFine = (steps: readonly Step[]): boolean => steps.some(s => s.cause === 'fringes' && (s.stops?.high ?? 0) > 0);

/** Stops that a cell takes, as a band where it has one. `left` gives the share that it leaves. */
function stopsOf(cell: Parameters<typeof showCell>[1], r: Results, left: (v: number) => number): { low: number; high: number } {
  const { value, band, u } = showCell(r.graph, cell);
  const give = band ? 0 : 2 * (u ?? 0);
  const ends = band ? [band.low, band.high] : [value! - give, value! + give];
  const [a, b] = ends.map(v => -Math.log2(Math.max(1e-12, Math.min(1, left(v))))) as [number, number];
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

/** What is said of a loss that nobody sees. */
export const NOTHING = 'nothing to speak of';
const QUARTERS = ['', '1/4', '1/2', '3/4'] as const;

/** In quarters of a stop, as a band where both ends read otherwise: `1 1/2 stops`, `1/2 to 2 stops`, `nothing to speak of`. */
export function stopWords(low: number, high: number): string {
  const [a, b] = [low, high].map(inQuarters) as [number, number];
  const one = (q: number): string => (q === 0 ? '0' : q > 4 * MOST_STOPS ? `more than ${MOST_STOPS}` : [Math.floor(q / 4) || '', QUARTERS[q % 4]].filter(Boolean).join(' '));
  const unit = (q: number): string => (q <= 4 ? 'stop' : 'stops');
  if (b === 0) return NOTHING;
  return a === b || a > 4 * MOST_STOPS ? `${one(b)} ${unit(b)}` : b > 4 * MOST_STOPS ? `${one(a)} stops or more` : `${one(a)} to ${one(b)} ${unit(b)}`;
}
const inQuarters = (stops: number): number => Math.round(4 * Math.min(MOST_STOPS + 1, Math.max(0, stops)));
