/** What the numbers of a setup say for or against a cause. Nothing is computed here; every figure is a result. */
import type { Thing } from '../../model/model.ts';
import { percent, percentBand, show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import type { Cause } from '../../results/losses/losses.ts';
import { profile, type Pair } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { sample } from '../../results/sampling.ts';
import { safelights } from '../../results/safelight.ts';
import { darkest } from '../../checks/paths/arms-mismatched.ts';
import { showCell } from '../chain.ts';
import type { Outcome } from './outcomes.ts';
import { comparison } from '../report/report.ts';
import { stepsOf, type Step } from '../report/losses.ts';

/** For or against a cause. */
export interface Clue {
  /** by how many stops it may darken what records, at the worse end of what is unsure; undefined where that cannot be said in stops */
  readonly stops?: number;
  /** the facts alone speak for it, whatever it costs */
  readonly speaks?: boolean;
  /** what the page says of it, a whole sentence */
  readonly words: string;
}

export type ClueName = keyof typeof CLUES;

/** Undefined where the page says nothing of it. */
export const CLUES = {
  mismatch: (r, outcomes) => worst(pairsOf(r).map(x => byPaths(r, x, 'mismatch', outcomes))),
  depth: (r, outcomes) => worst(pairsOf(r).map(x => byPaths(r, x, 'depth', outcomes))),
  modes: r => pairsOf(r).flatMap((x): Clue[] => {
    const over = profile(r.graph, x).map(s => s.brightness);
    if (over.length === 0) return [];
    const words = `Over the depth of ${x.arm.object!.id} the brightness ${dips(over) ? 'comes and goes' : 'has no dark band between brighter parts'}.`;
    return [dips(over) ? { speaks: true, words } : { stops: 0, words }];
  })[0],
  light: r => light(r),
  ratio: r => rung(r, 'ratio'),
  // Below 2:1 the object light makes fringes with itself that show as noise; how much of it is seen has no figure.
  objectLight: r => metered(r, (k, text) => (k < 2 ? { speaks: true, words: `The reference is only ${text} to the object light.` } : { stops: 0, words: `The reference is ${text} to the object light.` })),
  singleBeam: r => (single(r) ? rung(r, 'ratio') : { stops: 0, words: 'Its object light has a beam of its own.' }),
  polarization: r => rung(r, 'polarization'),
  fringes: r => rung(r, 'fringes'),
  drift: r => rung(r, 'drift'),
  corner: r => rung(r, 'corner'),
  long: r => rung(r, 'exposure', (time, needed) => time > needed),
  short: r => rung(r, 'exposure', (time, needed) => time < needed),
  lit: r => worst(r.plates.flatMap(p => p.pairs.map(x => of(r, r.ask(`${p.plate.id}.${x.arm.name}.lit side`), left => left, (_, left) => `Of what ${p.plate.id} sees of ${x.arm.object!.id}, ${percent(left)} is lit.`)))),
  delicate: r => delicate(r),
  longExposure: r => exposures(r).flatMap((time): Clue[] => (r.graph.value(time)! > LONG ? [{ speaks: true, words: `The exposure is ${showCell(r.graph, time).text}, and the formula for it leaves out that long exposures of many materials need more.` }] : []))[0],
  shutter: r => things(r, 'shutter').flatMap((t): Clue[] => (said(t, 'mounted') === 'table' || said(t, 'mounted') === undefined ? [{ speaks: said(t, 'mounted') === 'table', words: said(t, 'mounted') === 'table' ? `${t.id} stands on the table, which it shakes when it opens.` : `Nothing says where ${t.id} is mounted.` }] : [{ stops: 0, words: `${t.id} does not stand on the table.` }]))[0],
  edges: r => plates(r).flatMap((t): Clue[] => { const e = said(t, 'edges'); return [e === 'masked' || e === 'index-matched' ? { stops: 0, words: `The edges of ${t.id} are ${e}.` } : { speaks: e === 'bare', words: e === 'bare' ? `The edges of ${t.id} are bare.` : `Nothing says that the edges of ${t.id} are masked.` }]; })[0],
  safelight: r => safelight(r),
  shrinkage: r => plates(r).flatMap((t): Clue[] => { const q = t.facts.get('shrinkage')?.value; return q?.kind === 'quantity' && q.quantity.value !== 0 ? [{ speaks: true, words: `The layer of ${t.id} ${q.quantity.value > 0 ? 'loses' : 'gains'} ${percent(Math.abs(q.quantity.value))} of its thickness in processing.` }] : []; })[0],
  warm: r => things(r, 'object').flatMap((t): Clue[] => { const w = said(t, 'warmth'); return w === undefined ? [] : [w === 'cold' ? { stops: 0, words: `${t.id} is said to be cold.` } : { speaks: true, words: `${t.id} is said to be ${w}, and creeps while it cools.` }]; })[0],
  film: r => plates(r).flatMap((t): Clue[] => (said(t, 'base')?.startsWith('film') ? [{ speaks: true, words: `${t.id} is film, which creeps in its holder.` }] : []))[0],
  oneBeam: r => (r.plates.some(p => p.pairs.length === 1) ? { speaks: true, words: 'One beam alone lights the object.' } : undefined),
  gloss: r => things(r, 'object').flatMap((t): Clue[] => { const q = t.facts.get('gloss')?.value; return q?.kind === 'quantity' && q.quantity.value >= 0.2 ? [{ speaks: true, words: `${t.id} gives back ${percent(q.quantity.value)} of its light mirror-like.` }] : []; })[0],
  lasers: r => (new Set(r.arms.arms.map(a => a.laser)).size > 1 ? { speaks: true, words: `${[...new Set(r.arms.arms.map(a => a.laser.id))].join(', ')} each have paths of their own.` } : { stops: 0, words: 'There is one laser only.' }),
  transfer: r => (things(r, 'hologram').length > 0 ? { speaks: true, words: 'The object of this plate is another hologram.' } : { stops: 0, words: 'No other hologram is copied here.' }),
} as const satisfies Readonly<Record<string, (r: Results, outcomes: readonly Outcome[]) => Clue | undefined>>;

/** Clues that speak for some outcomes, and so against any other. */
export const SPEAKS_FOR: Readonly<Partial<Record<ClueName, readonly Outcome[]>>> = {
  long: ['too dense', 'fogged', 'dull everywhere'], short: ['too thin', 'nothing at all', 'dull everywhere'],
};

/** From this exposure on, s, the law of reciprocity is no longer taken for granted (common practice). */
const LONG = 30;

/** The clue that speaks most for its cause. */
const worst = (clues: readonly (Clue | undefined)[]): Clue | undefined => clues.reduce<Clue | undefined>((w, c) => (c && (!w || (c.stops ?? 0) > (w.stops ?? 0)) ? c : w), undefined);

/** By a result that leaves a share of the brightness. */
function of(r: Results, cell: Cell | undefined, left: (v: number) => number, words: (text: string, left: number) => string): Clue | undefined {
  if (!cell || cell.missing) return undefined;
  const { value, band, u, text } = showCell(r.graph, cell);
  const low = band ? band.low : value! - 2 * (u ?? 0);
  return { stops: -Math.log2(Math.max(1e-3, Math.min(1, left(low)))), words: words(text, left(value!)) };
}

/** What the mismatch takes of the part that was seen dark, else of the one that records worst, and what the depth would still take if the paths matched. */
function byPaths(r: Results, x: Pair, what: 'mismatch' | 'depth', outcomes: readonly Outcome[]): Clue | undefined {
  const dark = darkSeen(x, outcomes);
  const cell = dark?.brightness;
  if (!cell || cell.missing || x.mismatch.missing || (what === 'depth' && !x.depth)) return undefined;
  const [now, matched] = [sample(r.graph, cell)!, sample(r.graph, cell, new Map([[x.mismatch, 0]]))!];
  const [stopsNow, stopsMatched] = [now, matched].map(b => -Math.log2(Math.max(1e-3, b.low))) as [number, number];
  const where = partName(x, dark);
  if (what === 'depth') return { stops: stopsMatched, words: `Even with matched paths the ${where} would record at ${percentBand(matched.low, matched.high)} of full brightness.` };
  return { stops: Math.max(0, stopsNow - stopsMatched), words: `${comparison(x, r)} The ${where} records at ${percentBand(now.low, now.high)} of full brightness, matched at ${percentBand(matched.low, matched.high)}.` };
}

/** The part that somebody saw dark, as far as the words name one. */
function darkSeen(x: Pair, outcomes: readonly Outcome[]): Part | undefined {
  const [back, front] = [outcomes.includes('dark at the back'), outcomes.includes('dark at the front')];
  const seen = back === front ? undefined : x.parts.find(p => p.part === (back ? 'far' : 'near') && p.brightness && !p.brightness.missing);
  return seen ?? darkest(x);
}
type Part = Pair['parts'][number];

/** `farthest part of whelk`, where the darkest part is one that has a name. */
function partName(x: Pair, dark: Part): string {
  const named = x.parts.find(p => p.part !== 'darkest' && Math.abs(p.share - dark.share) < 1e-6) ?? dark;
  return named.brightness!.words.replace(/^brightness of the /, '');
}

/** Whether something dark lies between brighter parts. */
function dips(over: readonly number[]): boolean {
  return over.some((b, i) => i > 0 && i < over.length - 1 && b + 0.1 < Math.min(Math.max(...over.slice(0, i)), Math.max(...over.slice(i + 1))));
}

const pairsOf = (r: Results): Pair[] => r.plates.flatMap(p => p.pairs);

/** By a rung of the ladder; `when` it only counts for what it is reckoned from. */
function rung(r: Results, cause: Cause, when?: (a: number, b: number) => boolean): Clue | undefined {
  return worst(r.losses.ladders.map(l => {
    const s = stepsOf(l, r).find(x => x.cause === cause);
    // Without light there is no ratio: that is a clue of its own.
    if (!s?.stops || s.rung.dark) return undefined;
    const inputs = s.rung.loss?.inputs.map(c => r.graph.value(c)!) ?? [];
    if (when && !when(inputs[0]!, inputs[1]!)) return undefined;
    return { stops: s.stops.high, words: stepWords(s) };
  }));
}
/** Whether both beams bring light, as far as the page tells. */
function light(r: Results): Clue | undefined {
  const dark = r.losses.ladders.flatMap(l => stepsOf(l, r).filter(s => s.rung.dark));
  if (dark.length > 0) return { stops: Math.max(...dark.map(s => s.stops!.high)), words: dark.map(s => `No light reaches ${s.rung.dark!.arm.plate.id} by ${s.rung.dark!.arm.name}: ${s.rung.dark!.why}.`)[0]! };
  const lit = r.light.plates.filter(p => r.graph.value(p.ratio) !== undefined);
  return lit.length === 0 ? undefined : { stops: 0, words: `Both beams bring light to ${lit[0]!.plate.id}, as far as the page tells.` };
}
const stepWords = ({ label, text, remark }: Step): string => `${label.charAt(0).toUpperCase()}${label.slice(1)} costs ${text}: ${remark}.`.replace(/\.\.$/, '.');

function metered(r: Results, say: (ratio: number, text: string) => Clue): Clue | undefined {
  for (const p of r.plates) r.ask(`${p.plate.id}.beam ratio`);
  return r.light.plates.flatMap(({ ratio }) => { const k = r.graph.value(ratio); return k === undefined ? [] : [say(k, showCell(r.graph, ratio).text)]; })[0];
}

/** What on the table may move least, where that can be told. It says where to look, not that it moved. */
function delicate(r: Results): Clue | undefined {
  const found = [...r.setup.things.values()].flatMap(t => {
    const cell = r.ask(`${t.id}.allowed movement`);
    const value = cell && r.graph.value(cell);
    return value === undefined ? [] : [{ t, value }];
  }).sort((a, b) => a.value - b.value)[0];
  return found && { words: `Most delicate is ${found.t.id}: it may move by ${show(Number(found.value.toPrecision(2)), LENGTH)} only.` };
}

const exposures = (r: Results): Cell[] => {
  const written = r.values.setupFact('exposure');
  return written && !written.missing ? [written] : r.plates.flatMap(p => { const c = r.graph.find(`${p.plate.id}.exposure time`); return c && !c.missing ? [c] : []; });
};
const things = (r: Results, word: string): Thing[] => [...r.setup.things.values()].filter(t => t.kind.word === word);
const plates = (r: Results): Thing[] => r.plates.map(p => p.plate);
/** A choice of words as it is written. */
const said = (t: Thing, phrase: string): string | undefined => { const v = t.facts.get(phrase)?.value; return v?.kind === 'words' ? v.text : undefined; };
const single = (r: Results): boolean => r.plates.some(p => p.pairs.some(x => x.arm.beam === x.reference.beam));

function safelight(r: Results): Clue | undefined {
  const [seen] = safelights(r);
  if (!seen) return undefined;
  const { colour, plate, to, sees } = seen;
  return sees ? { speaks: true, words: `The safelight is ${colour}, and ${plate.id} is sensitive to ${to}.` } : sees === undefined ? undefined : { stops: 0, words: colour === 'none' ? 'There is no safelight.' : `The safelight is ${colour}, and ${plate.id} is sensitive to ${to} only.` };
}
