import { millimetres, percentBand } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import type { Graph } from '../../results/graph.ts';
import { profile, type Pair } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { DULL } from '../../results/discrepancies/effects.ts';
import { sample } from '../../results/sampling.ts';
import { num, text, type Check, type Data } from '../check.ts';

/** Judged by what the viewer sees: the brightness with which the darkest part records, at the dark end of its band. */
export const NOTE = DULL;
export const WARN = 0.4;
export const DARK = 0.1;

export const armsMismatched: Check = {
  code: 'arms-mismatched',
  severity: 'warning',
  title: 'The object path and the reference path differ too much for this laser',
  page: `**What you see.** Part of the object, or all of it, comes out dull or dark, while the plate is well exposed.

**Why.** Light from both paths makes fringes only as long as their lengths differ by less than the laser's coherence allows. A part that lies deeper changes its own path by up to
twice its depth, so a mismatch that the middle bears may leave the far end in the dark. The finding is judged by the brightness with which the darkest part will record: a note below 70 %, a
warning below 40 %, and “will be dark” below 10 %. Where the number of modes of the laser is not known, the dark end of the band counts.

**What to do.** Shorten the longer path or lengthen the shorter one by the mismatch. Moving a mirror that folds the beam back on itself by half the mismatch changes the path by all of it. Measure both paths again with
the same string. Where several object beams share the reference and one of them matches it, change only what the other has for itself. In one beam there is nothing to lengthen: bring the object nearer to the plate.`,
  example: `setup "Whelk shell" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1
  object whelk {
    depth: 35 mm
  }
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> whelk: 1255 mm
    -> P1: 300 mm
}
`,
  severityOf: d => (num(d, 'low') < WARN ? 'warning' : 'note'),
  message: d => {
    const longer = num(d, 'mismatch') > 0;
    const size = millimetres(Math.abs(num(d, 'mismatch')));
    const [arm, reference] = [text(d, 'arm'), text(d, 'reference')];
    return `At ${text(d, 'plate')} the beam “${arm}” is ${size} ${longer ? 'longer' : 'shorter'} than “${reference}”, too ${longer ? 'long' : 'short'} for ${text(d, 'laser')}: ${parts(d)}. ${advice(d, longer, size)}`;
  },
  run: results => results.plates.flatMap(p => {
    const judged = p.pairs.map(pair => ({ pair, problems: mismatched(pair, p.plate.id, results) }));
    return judged.flatMap(({ pair, problems }) => problems.map(x => ({ ...x, data: { ...x.data, ...keeping(pair, judged.filter(j => j.problems.length === 0).map(j => j.pair)) } })));
  }),
};

/** What to change: of one beam only how far the object stands, of an arm beside one that matches only what it has for itself. */
function advice(d: Data, longer: boolean, size: string): string {
  const [arm, reference] = [text(d, 'arm'), text(d, 'reference')];
  if (d['oneBeam'] === true) return `There is one beam, and no path to lengthen: ${longer ? `bring ${text(d, 'object')} nearer to ${text(d, 'plate')}` : `stand ${text(d, 'object')} farther from ${text(d, 'plate')}`}; each millimetre counts about twice.`;
  const change = `${longer ? 'Shorten' : 'Lengthen'} “${arm}”`;
  return d['keeps'] === undefined ? `${change} or ${longer ? 'lengthen' : 'shorten'} “${reference}” by ${size}.`
    : `${change} by ${size}${d['behind'] === undefined ? '' : ` behind ${text(d, 'behind')}`}; leave “${reference}” as it is, which “${text(d, 'keeps')}” matches.`;
}

/** An arm that matches the same reference, and the thing at which the way of this one parts from it. */
function keeping(pair: Pair, matched: readonly Pair[]): Data {
  const other = matched.find(o => o.reference === pair.reference && !o.mismatch.missing && o.parts[0]?.brightness && !o.parts[0].brightness.missing);
  if (!other) return {};
  const own = pair.arm.path.findIndex((leg, i) => leg !== other.arm.path[i]);
  const behind = pair.arm.path[own - 1]?.target;
  return { keeps: other.arm.name, ...(behind ? { behind: behind.id } : {}) };
}

function parts(d: Data): string {
  const object = text(d, 'object');
  const middle = `the middle of ${object} records at ${percentBand(num(d, 'middleLow'), num(d, 'middleHigh'))} of full brightness`;
  if (d['part'] === 'middle') return middle;
  const end = d['part'] === 'far' ? 'farthest' : d['part'] === 'near' ? 'nearest' : 'darkest';
  const dark = num(d, 'high') < DARK ? ' and will be dark' : num(d, 'low') < DARK ? ' and may be dark' : '';
  const dull = num(d, 'dullDepth') > 0 ? `, ${num(d, 'dullDepth') >= num(d, 'depth') - 1e-9 ? 'all' : millimetres(num(d, 'dullDepth'))} of its ${millimetres(num(d, 'depth'))} depth below 70 %` : '';
  return `${middle}, its ${end} part at ${percentBand(num(d, 'low'), num(d, 'high'))}${dark}${dull}`;
}

function mismatched(pair: Pair, plate: string, { graph, setup }: Results): Problem[] {
  const worst = darkest(pair);
  if (!worst?.brightness || worst.brightness.missing || pair.mismatch.missing) return [];
  if (clearlyBright(graph, pair)) return [];
  const band = sample(graph, worst.brightness)!;
  if (band.low >= NOTE) return [];
  // Would matched paths do better? If not, the object is too deep, which is another finding.
  const matched = sample(graph, worst.brightness, new Map([[pair.mismatch, 0]]))!;
  if (matched.low - band.low < 0.05) return [];
  const middle = sample(graph, pair.parts[0]!.brightness!)!;
  const over = profile(graph, pair);
  const dull = over.filter(x => x.brightness < NOTE).length;
  const depth = pair.depth ? graph.value(pair.depth)! : 0;
  return [{
    code: 'arms-mismatched', at: pair.arm.beam.at, subject: `${plate}.${pair.arm.name}`, setup: setup.name,
    data: {
      plate, arm: pair.arm.name, reference: pair.reference.name, laser: pair.arm.laser.id, ...(pair.arm.beam === pair.reference.beam ? { oneBeam: true } : {}), object: pair.arm.object!.id, part: worst.share < -0.4 ? 'near' : worst.share > 0.4 ? 'far' : worst.part === 'middle' ? 'middle' : 'inner',
      mismatch: graph.value(pair.mismatch)!, low: band.low, high: band.high, middleLow: middle.low, middleHigh: middle.high, depth, dullDepth: over.length > 1 ? (depth * dull) / over.length : 0,
    },
  }];
}

export const darkest = (pair: Pair): Pair['parts'][number] | undefined => pair.parts.find(p => p.part === 'darkest') ?? pair.parts[0];

/**
 * A cheap look before the draw: bright all the way to the end of the depth, for each choice of the laser's modes and with the mismatch three
 * standard uncertainties to the bad side. Light squarely from the front is the worst.
 */
export function clearlyBright(graph: Graph, pair: Pair, held?: number): boolean {
  const { coherence, mismatch, depth } = pair;
  if (!coherence || mismatch.missing || coherence.inputs.some(c => c.missing)) return false;
  const choices = coherence.inputs.find(c => c.spread?.kind === 'one of');
  if (coherence.inputs.some(c => c !== choices && graph.uncertainty(c) > 0)) return false;
  const away = (held ?? Math.abs(graph.value(mismatch)!) + 3 * graph.uncertainty(mismatch)) + (depth && !depth.missing ? graph.value(depth)! + 3 * graph.uncertainty(depth) : 0);
  const rest = coherence.inputs.map(c => graph.value(c)!);
  const at = choices ? coherence.inputs.indexOf(choices) : -1;
  const values = choices?.spread?.kind === 'one of' ? choices.spread.values : [0];
  return values.every(v => [0.25, 0.5, 0.75, 1].every(share => coherence.rule.compute([away * share, ...rest.map((x, i) => (i === at ? v : x))]) > NOTE + 0.02));
}
