/**
 * What a holographer wants to know of a setup, on one page, as plain data: the arms leg by leg, how they compare, how brightly each
 * part records, and what that rests on. Nothing is computed here; every figure is a cell of the results.
 */
import type { Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import type { Thing } from '../../model/model.ts';
import { notesOf, type Note } from '../notes.ts';
import { factText, overridesOf } from '../../model/overrides.ts';
import type { Cell, Graph } from '../../results/graph.ts';
import type { Outcome } from '../../results/goals.ts';
import type { Solved } from '../../results/light/split.ts';
import { shortName } from '../../results/names.ts';
import { profile, type Pair, type PartName, type PlateResults } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { guessesOf, showCell } from '../chain.ts';
import { anglePages } from './angles.ts';
import { armTable, type ArmTable } from './arms.ts';
import { coherenceWords } from './coherence.ts';
import { exposurePages } from './exposures.ts';
import { fringePages } from './fringes.ts';
import { lightPages, type LightPage } from './light.ts';
import { lossPages } from './losses.ts';
import { objectPages } from './object.ts';
import { movementPages, warmings } from './movement.ts';
import { polarizationPages } from './polarization.ts';
import { readingsPage } from './readings.ts';
import { replayPages } from './replay.ts';
import { variantTable, type VariantTable } from './variants.ts';
import { beamWords, brightnessWords, comparePaths, pendingWords } from './words.ts';

export interface Report {
  readonly setup: string;
  /** the variant that the figures are those of, where they are not those of the setup as written */
  readonly variant?: string;
  /** line of the setup, from 0 */
  readonly line: number;
  readonly doc?: string;
  /** `transmission`, `reflection` */
  readonly hologram?: string;
  readonly plates: readonly PlatePage[];
  /** what was measured of lengths, and what became of it */
  readonly readings?: LightPage;
  /** what is known of the light at each plate and along the beams, of the fringes, and of what may move */
  readonly light: readonly LightPage[];
  /** what takes how much of the brightness, for each plate and object arm, where more than lengths is known */
  readonly losses: readonly LightPage[];
  /** for each laser whose light makes fringes, a sentence or two: what its coherence is known from */
  readonly coherence: readonly string[];
  readonly goals: readonly GoalLine[];
  readonly guesses?: GuessLine;
  /** what the variants change */
  readonly variants?: VariantTable;
  /** notes (`///`) above statements and legs, each with the line that it is about */
  readonly notes: readonly Note[];
  /** facts that are written otherwise than in the inventory: `power of red: 10 mW, instead of lab.red-12’s 12 mW` */
  readonly overrides: readonly string[];
  readonly findings: readonly Finding[];
  /** what is written and understood, but not computed yet */
  readonly pending?: string;
}

export interface PlatePage {
  readonly plate: string;
  /** where the arms part, from which they are measured */
  readonly from?: string;
  readonly arms: readonly ArmTable[];
  readonly pairs: readonly PairPage[];
}

export interface PairPage {
  /** name of the object arm */
  readonly arm: string;
  readonly object: string;
  readonly depth?: string;
  /** how the two paths compare, in a sentence */
  readonly comparison: string;
  /** empty where nothing is known of its brightness */
  readonly parts: readonly PartLine[];
  /** brightness from the nearest part to the farthest; where the number of modes is not known, for the fewest and for the most; empty where it is not known */
  readonly profiles: readonly { readonly label: string; readonly shares: readonly number[] }[];
}

export interface PartLine {
  readonly part: PartName;
  readonly label: string;
  /** `16 to 53 %` */
  readonly text: string;
  /** `dull to slightly dull` */
  readonly word: string;
}

export interface GoalLine {
  /** as written: `mismatch < 10 mm` */
  readonly text: string;
  readonly kind: 'expect' | 'aim';
  readonly outcome: Outcome;
  /** the result as it is shown */
  readonly shown?: string;
}

export interface GuessLine {
  /** kinds of result that rest on guesses: `brightness` */
  readonly results: readonly string[];
  /** the guessed inputs in words: `lit at of whelk` */
  readonly guesses: readonly string[];
  /** name of the result whose chain of numbers shows most of them */
  readonly opens: string;
  /** that chain shows all of them */
  readonly all: boolean;
}

/** The page of one setup of a file. */
export function reportOf(snapshot: Snapshot, r: Results): Report {
  const { setup } = r;
  const hologram = setup.facts.get('hologram')?.value;
  const guesses = guessLine(r);
  const own = findingsWithin(snapshot, r);
  const pending = own.find(f => f.code === 'not-computed-yet');
  const variants = variantTable(r);
  const readings = readingsPage(r);
  return {
    setup: setup.name, line: setup.node.at, ...(setup.variant !== undefined ? { variant: setup.variant } : {}),
    ...(setup.doc !== undefined ? { doc: setup.doc } : {}), ...(hologram?.kind === 'words' ? { hologram: hologram.text } : {}),
    plates: r.plates.map(p => platePage(p, r)), ...(readings ? { readings } : {}), light: [...lightPages(r), ...exposurePages(r), ...objectPages(r), ...fringePages(r), ...polarizationPages(r), ...movementPages(r), ...anglePages(r), ...replayPages(r)], losses: lossPages(r), coherence: coherences(r), goals: goalLines(r), ...(guesses ? { guesses } : {}), ...(variants ? { variants } : {}),
    notes: notesOf(setup), overrides: overridesOf(setup).map(o => `${o.key} of ${o.thing.id}: ${factText(o.fact)}, instead of ${o.item}’s ${o.instead}`),
    findings: own.filter(f => f !== pending), ...(pending ? { pending: pendingWords(String(pending.data['what'])) } : {}),
  };
}

/** `Whelk shell, variant “closer plate”` */
export const titleOf = ({ setup, variant }: Pick<Report, 'setup' | 'variant'>): string => `${setup === '' ? '(a setup without a name)' : setup}${variant !== undefined ? `, variant “${variant}”` : ''}`;

/** The findings that stand in a setup, or are about it. */
export function findingsWithin({ findings, uri }: Snapshot, { setup }: Results): Finding[] {
  return findings.filter(f => (f.at.uri === uri ? f.at.line >= setup.node.at && f.at.line <= setup.node.end : f.setup === setup.name));
}

/** Findings that stand outside all setups of the file: about `use`, inventories, stray lines. */
export function elsewhere(snapshot: Snapshot): Finding[] {
  const within = new Set(snapshot.results.flatMap(r => findingsWithin(snapshot, r)));
  return snapshot.findings.filter(f => !within.has(f));
}

function platePage(p: PlateResults, r: Results): PlatePage {
  const from = p.arms[0]?.partsAt?.id;
  return { plate: p.plate.id, ...(from !== undefined ? { from } : {}), arms: p.arms.map(a => armTable(a, r)), pairs: p.pairs.map(x => pairPage(x, r)) };
}

function pairPage(x: Pair, r: Results): PairPage {
  const { graph } = r;
  const depth = x.depth && !x.depth.missing ? showCell(graph, x.depth).text : undefined;
  return {
    arm: x.arm.name, object: x.arm.object!.id, comparison: comparison(x, r), ...(depth !== undefined ? { depth } : {}),
    parts: partLines(x, r),
    profiles: profiles(x, graph),
  };
}

function profiles(x: Pair, graph: Graph): PairPage['profiles'] {
  const choice = x.coherence?.inputs.find(c => c.spread?.kind === 'one of');
  const values = choice?.spread?.kind === 'one of' ? [choice.spread.values[0]!, choice.spread.values[choice.spread.values.length - 1]!] : [undefined];
  return values.map(v => ({
    label: v === undefined ? '' : `${v} modes`,
    shares: profile(graph, x, v === undefined ? undefined : new Map([[choice!, v]])).map(s => s.brightness).filter(Number.isFinite),
  })).filter(p => p.shares.length > 1);
}

const ORDER: readonly PartName[] = ['near', 'middle', 'far', 'darkest'];

/** How an object arm and its reference compare, in a sentence. */
export function comparison(x: Pair, { graph }: Results): string {
  const value = graph.value(x.mismatch);
  const [object, reference] = [beamWords(x.arm.name, 'object'), beamWords(x.reference.name, 'reference')];
  if (value === undefined) return `How ${object} and ${reference} compare cannot be told: ${x.mismatch.missing?.why ?? 'a length is unknown'}.`;
  return comparePaths(object, reference, showCell(graph, x.mismatch).text, value, graph.uncertainty(x.mismatch));
}

/** How brightly the parts of an object record, from the nearest to the farthest. */
export const partLines = (x: Pair, r: Results): PartLine[] =>
  x.parts.filter(p => p.brightness && !p.brightness.missing).sort((a, b) => ORDER.indexOf(a.part) - ORDER.indexOf(b.part)).map(p => partLine(p, x, r));

function partLine(p: Pair['parts'][number], x: Pair, { graph }: Results): PartLine {
  const shown = showCell(graph, p.brightness!);
  const { low, high } = shown.band ?? { low: shown.value!, high: shown.value! };
  return { part: p.part, label: label(p, x, graph.value(x.depth ?? p.mismatch)), text: shown.text, word: brightnessWords(low, high) };
}

const LABELS: Readonly<Record<PartName, string>> = { near: 'nearest part', middle: 'middle', far: 'farthest part', darkest: 'darkest part' };

function label(p: Pair['parts'][number], x: Pair, depth: number | undefined): string {
  if (p.part !== 'darkest') return LABELS[p.part];
  const same = x.parts.find(o => o !== p && Math.abs(o.share - p.share) < 1e-6);
  if (same) return `darkest: the ${LABELS[same.part]}`;
  const away = Math.round(Math.abs(p.share) * (depth ?? 0) * 1000);
  return `darkest: ${away} mm ${p.share < 0 ? 'before' : 'behind'} the middle`;
}

function coherences(r: Results): string[] {
  const lasers = new Map<Thing, Pair['coherence']>();
  for (const p of r.plates) for (const x of p.pairs) lasers.set(x.arm.laser, x.coherence);
  return [...lasers].map(([laser, c]) => coherenceWords(laser, c, r));
}

/** With what an aim is reached, or is not. */
const solvedWords = (s: Solved | undefined, graph: Graph): string =>
  (s ? ` with ${s.splitter.id} reflecting ${showCell(graph, s.working).text}${s.bounded ? `, the end of what is written for it, where ${showCell(graph, s.share).text} is asked for` : ''}` : '');

function goalLines({ goals, graph, light }: Results): GoalLine[] {
  return goals.map(g => {
    const { line } = g.goal.node;
    const text = line.text.slice(g.goal.at.start, line.comment?.start).trim();
    return { text, kind: g.goal.kind, outcome: g.outcome, ...(g.cell && !g.cell.missing ? { shown: `${showCell(graph, g.cell).text}${solvedWords(light.solved.find(s => g.goal.kind === 'aim' && s.ratio.name === `${g.cell!.name} as aimed`), graph)}` } : {}) };
  });
}

function guessLine(r: Results): GuessLine | undefined {
  const all = new Set<Cell>();
  const kinds = new Set<string>();
  let opens: { cell: Cell; count: number } | undefined;
  for (const cell of [...r.published, ...warmings(r).map(w => w.cell)]) {
    if (cell.missing) continue;
    const guesses = guessesOf(r.graph, cell);
    if (guesses.length === 0) continue;
    for (const g of guesses) all.add(g);
    kinds.add(cell.name.slice(cell.name.lastIndexOf('.') + 1));
    if (!opens || guesses.length >= opens.count) opens = { cell, count: guesses.length };
  }
  return opens && { results: [...kinds], guesses: [...all].sort((a, b) => a.index - b.index).map(g => g.words), opens: shortName(opens.cell, r), all: opens.count === all.size };
}
