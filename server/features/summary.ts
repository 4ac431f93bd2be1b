/** The figures of one setup in a line: for a status bar. */
import type { Snapshot } from '../analysis.ts';
import type { Finding, Severity } from '../checks/check.ts';
import { darkest } from '../checks/paths/arms-mismatched.ts';
import type { Pair } from '../results/paths/pairs.ts';
import type { Results } from '../results/plan.ts';
import { sample } from '../results/sampling.ts';
import { showCell } from './chain.ts';
import { blocks, escaped, strong } from './markdown.ts';
import { findingsWithin } from './report/report.ts';

export interface Summary {
  readonly setup: string;
  /** plate of the figures, where the setup has several */
  readonly plate?: string;
  /** as shown: `84 ± 7 mm` */
  readonly mismatch?: string;
  /** brightness of the part that records worst, as shown: `16 to 53 %` */
  readonly brightness?: string;
  /** `darkest part of whelk` */
  readonly part?: string;
  /** the worst finding that is not accepted */
  readonly worst?: Finding;
}

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2, hint: 3 };

/** The setup that a line is in, else the last one above it, else the first. Of several arms the one that records worst is told. */
export function summaryAt(snapshot: Snapshot, line: number): Summary | undefined {
  const r = snapshot.results.findLast(x => x.setup.node.at <= line) ?? snapshot.results[0];
  if (!r) return undefined;
  const worst = findingsWithin(snapshot, r).filter(f => f.accepted === undefined && f.at.uri === snapshot.uri)
    .reduce<Finding | undefined>((w, f) => (!w || RANK[f.severity] < RANK[w.severity] ? f : w), undefined);
  return { setup: r.setup.name, ...figures(r), ...(worst ? { worst } : {}) };
}

/** The summary as Markdown, a paragraph each: the setup, its figures, its worst finding. */
export function summaryMarkdown({ setup, plate, mismatch, brightness, part, worst }: Summary): string {
  return blocks(
    strong(setup.trim() || 'Setup'),
    mismatch === undefined ? 'Its two paths cannot be compared yet.' : `Mismatch${plate === undefined ? '' : ` at ${escaped(plate)}`}: ${escaped(mismatch)}.`,
    part === undefined ? '' : `The ${escaped(part)} records at ${brightness!} of full brightness.`, worst && escaped(worst.message),
  );
}

export function figures(r: Results): Omit<Summary, 'setup'> {
  const pairs = r.plates.flatMap(p => p.pairs.map(pair => ({ pair, plate: p.plate.id })));
  const [first] = pairs.map(x => ({ ...x, rank: rank(x.pair, r) })).sort((a, b) => a.rank - b.rank);
  if (!first || first.pair.mismatch.missing) return {};
  const part = darkest(first.pair)?.brightness;
  return {
    ...(r.plates.length > 1 ? { plate: first.plate } : {}), mismatch: showCell(r.graph, first.pair.mismatch).text,
    ...(part && !part.missing ? { brightness: showCell(r.graph, part).text, part: part.words.replace(/^brightness of the /, '') } : {}),
  };
}

/** Lowest for the arm that records worst; where no brightness is known, for the largest mismatch; last where nothing is known. */
function rank(pair: Pair, { graph }: Results): number {
  const brightness = darkest(pair)?.brightness;
  const band = brightness && sample(graph, brightness);
  if (band) return band.low;
  const mismatch = graph.value(pair.mismatch);
  return mismatch === undefined ? Infinity : 2 - Math.min(1, Math.abs(mismatch));
}
