/**
 * What a reading that somebody enters makes of the page: it is tried on a copy first, as any edit is. It comes with whether it agrees with what was planned, by how many standard
 * uncertainties, and with the findings that it brings: what disagrees, the likeliest cause, what to move.
 */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import { LEAST } from '../../checks/light/corners-dark.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import type { Reading } from '../../model/model.ts';
import { millimetres, plain, show } from '../../model/show.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { interval } from '../../results/sampling.ts';
import { comparisons, FROM, PER_LEG } from '../../results/discrepancies/disagree.ts';
import { showCell } from '../chain.ts';
import { findingsWithin } from '../report/report.ts';
import { readText, verdictOf } from '../report/readings.ts';
import { instrumentFor, readingNow } from './instrument.ts';
import { linesBehind } from '../new-lines.ts';
import { placeForReading, valueText } from './line.ts';
import type { Wanted } from './wanted.ts';

export interface Entered {
  readonly edits: readonly Edit[];
  /** the line that is written */
  readonly line: string;
  /** what came of it, sentences */
  readonly says: string;
  /** missing where there was nothing to hold it against */
  readonly agrees?: boolean;
  /** findings that it brings or changes, the gravest first */
  readonly findings: readonly string[];
}

/** @param on when it was read, by the clock of whoever read it: `2026-02-18T21:40` */
export function enter(snapshot: Snapshot, r: Results, wanted: Wanted & { readonly subject: string }, typed: string, on: string, library: Library): Entered | { readonly refused: string } {
  const value = valueText(typed, wanted, instrumentFor(wanted, r), on);
  if (typeof value !== 'string') return value;
  const { after: behind, indent, blank } = placeForReading(r.setup);
  const line = `measured ${wanted.subject}: ${value}`;
  const edit = linesBehind(snapshot.tree, snapshot.uri, snapshot.text, behind, [indent + line], blank);
  const after = analyse(snapshot.uri, applyEdits(snapshot.text, [edit]), library);
  const at = behind + (blank ? 2 : 1);
  const wrong = after.findings.find(f => f.severity === 'error' && f.at.uri === snapshot.uri && f.at.line === at);
  if (wrong) return { refused: wrong.message };
  const now = after.results.find(x => x.setup.readings.some(y => y.node.at === at));
  const reading = now?.setup.readings.find(y => y.node.at === at);
  if (!now || !reading) return { refused: 'As the page stands, the line would not be read as one of its setup: see to the braces first.' };
  const plan = besidePlan(reading, now, wanted.expected.cell, r);
  const before = besideBefore(reading, wanted.subject, now, r);
  const verdict = verdictOf(reading, now);
  const useless = verdict.fate === 'useless' || verdict.fate === 'unclear' || verdict.fate === 'stale' ? `It ${verdict.words}.` : '';
  const holds = [plan, before].filter(x => x !== undefined);
  const agrees = holds.length > 0 && useless === '' ? holds.every(h => h.agrees) : undefined;
  const findings = newFindings(snapshot, after, r, now).map(f => f.message);
  const more = useless || (holds.length === 0 ? 'There was nothing to hold it against.' : agrees === false && findings.length === 0 ? 'No result that is held against anything changes by it. Look where it stands, and measure once more.' : '');
  return {
    edits: [edit], line, findings, ...(agrees === undefined ? {} : { agrees }),
    says: [`${wanted.what}: ${readText(reading, now)}${holds[0] ? `, ${holds[0].words}` : '.'}`, ...(plan && before ? [`Beside the reading before it is ${before.words}`] : []), more].filter(Boolean).join(' '),
  };
}

interface Held { readonly words: string; readonly agrees: boolean }

/** `0.8 standard uncertainties` */
const apart = (z: number): string => (Math.abs(z) > FAR ? `over ${FAR} standard uncertainties` : `${plain(Math.abs(z), 2)} standard ${Math.abs(z) === 1 ? 'uncertainty' : 'uncertainties'}`);
/** Beyond that the number tells nobody anything. */
const FAR = 100;

function held(amount: string, z: number): Held {
  const agrees = !(Math.abs(z) > FROM);
  return { agrees, words: `${amount}, ${apart(z)}: ${agrees ? 'that agrees' : 'that disagrees'}.` };
}

/** Beside what was planned, without any reading. */
function besidePlan(reading: Reading, r: Results, expected: Cell | undefined, before: Results): Held | undefined {
  const residual = comparisons(r).residuals.find(x => x.taken.reading === reading);
  if (residual) {
    const { difference, u } = residual;
    return held(difference === 0 ? 'as planned' : `${millimetres(Math.abs(difference))} ${difference > 0 ? 'more' : 'less'} than planned`, difference / u);
  }
  const wheel = r.light.wheels.find(w => w.read?.reading === reading)?.read?.difference;
  const points = wheel && r.graph.value(wheel);
  if (wheel && points !== undefined) return { words: `${plain(Math.abs(points) * 100, 2)} points ${points < 0 ? 'less' : 'more'} of the light than planned.`, agrees: Math.abs(points) <= Math.max(POINTS, FROM * r.graph.uncertainty(wheel)) };
  const fate = r.light.fates.get(reading);
  if (fate?.kind !== 'counts' || fate.says.missing) return undefined;
  const corner = besideMiddle(reading, r, before);
  if (corner) return corner;
  const { says, planned } = fate;
  if (planned && !planned.missing) return besideLight(says, planned, r, r);
  // What was read before is held against by itself.
  return expected && reading.measured?.kind === 'light' && expected.dim === says.dim && !before.setup.readings.some(x => x.words === reading.words) ? besideLight(says, expected, r, before) : undefined;
}
/** What a splitter may reflect more or less than planned before anybody sees it, as a share of the light (common practice). */
const POINTS = 0.05;

/** A corner is held against the middle of its plate: by the plan the weakest has so much of it, and below the least share the image fades there, whatever was planned. */
function besideMiddle(reading: Reading, r: Results, before: Results): Held | undefined {
  const light = r.light.plates.find(l => l.reference?.corners?.spots.some(s => s.read.reading === reading));
  const { spots, centre } = light?.reference?.corners ?? {};
  const [at, middle] = [spots?.find(s => s.read.reading === reading), centre && r.graph.value(centre)];
  const here = at && r.graph.value(at.cell);
  if (!light || here === undefined || !(middle! > 0)) return undefined;
  const share = here / middle!;
  const old = before.light.plates.find(l => l.plate.id === light.plate.id);
  const plan = old?.corners && !old.reference?.corners && !old.corners.missing ? old.corners : undefined;
  const low = plan && interval(before.graph, plan).low;
  const words = `${plain(share * 100, 2)}% of the middle`;
  if (low !== undefined && share < low) return { agrees: false, words: `${words}, where by the plan the weakest corner has ${showCell(before.graph, plan!).text}: that disagrees. Look first whether the middle of the beam falls on the middle of the plate.` };
  return { agrees: share >= LEAST, words: share < LEAST ? `${words}: that is too little, the image fades there.` : plan ? `${words}, where by the plan the weakest corner has ${showCell(before.graph, plan).text}: that agrees.` : `${words}: enough for an image there.` };
}

/** What is only known as a wide band agrees wherever it lies in that. */
function besideLight(says: Cell, planned: Cell, { graph }: Results, { graph: of }: Results): Held {
  const [a, b] = [graph.value(says)!, of.value(planned)!];
  const { band, text, u } = showCell(of, planned);
  const times = b === 0 ? '' : `${plain(a / b, 2)} times the ${show(Number(b.toPrecision(3)), planned.dim, 0, planned.unit)} that are planned`;
  if (band && 2 * band.std > WIDE * Math.abs(band.mean)) {
    const inside = a >= band.low && a <= band.high;
    return { agrees: inside, words: inside ? `within the ${text} that the plan leaves open.` : `beside the ${text} that the plan leaves open: that disagrees.` };
  }
  const both = Math.hypot(graph.uncertainty(says), u ?? 0);
  // What says of itself that it is exact is held against by what an exposure shows.
  return both > 0 ? held(times, (a - b) / both) : { agrees: Math.abs(a - b) <= SEEN * Math.abs(b), words: `${times}; neither says how sure it is.` };
}
const WIDE = 0.25;
/** By less than this share nobody sees it in an exposure (common practice). */
const SEEN = 0.3;

/** What stays as it is until somebody moves or turns something. */
const LASTS: ReadonlySet<string> = new Set(['legs', 'arm', 'difference', 'light']);

/** Beside what was read of it before and counted so far. The newer one counts from now on. */
function besideBefore(reading: Reading, subject: string, now: Results, before: Results): Held | undefined {
  const old = readingNow(subject, before);
  if (!old) return undefined;
  const [a, b] = [saysOf(reading, now), saysOf(old, before)];
  if (!LASTS.has(reading.measured?.kind ?? '') || a?.cell.dim !== b?.cell.dim) return undefined;
  if (!a || !b) return undefined;
  const [x, y] = [now.graph.value(a.cell), before.graph.value(b.cell)];
  if (x === undefined || y === undefined) return undefined;
  const when = old.on === undefined ? '' : ` (read on ${old.on.replace('T', ' at ')})`;
  // Light is set anew all evening: that it is another one is no slip.
  if (a.legs === 0) return { agrees: true, words: `${x === y ? 'as' : `${plain(x / y, 2)} times`} ${readText(old, before)}${when}. The newer one counts.` };
  const u = Math.max(Math.hypot(now.graph.uncertainty(a.cell), before.graph.uncertainty(b.cell)), PER_LEG * Math.sqrt(a.legs));
  const h = held(x === y ? `as ${readText(old, before)}` : `${millimetres(Math.abs(x - y))} ${x < y ? 'less' : 'more'} than ${readText(old, before)}`, (x - y) / u);
  return { agrees: h.agrees, words: `${h.words.slice(0, -1)}${when}. ${h.agrees ? '' : 'If nothing was moved between, one of the two was misread: read it once more, and write “moved” where something was. '}The newer one counts.` };
}

/** What a reading says after all that is known of its instrument, and over how many legs; 0 for light. */
function saysOf(reading: Reading, r: Results): { readonly cell: Cell; readonly legs: number } | undefined {
  const fate = r.readings.fate(reading);
  if (fate?.kind === 'counts') return { cell: fate.taken.length, legs: fate.subject.target.kind === 'path' ? fate.subject.target.legs.length : 2 };
  const light = r.light.fates.get(reading);
  return light && 'says' in light && !light.says.missing ? { cell: light.says, legs: 0 } : undefined;
}

const ORDER = ['error', 'warning', 'note', 'hint'] as const;

/** Those that were not on the page, or said something else. */
export function newFindings(before: Snapshot, after: Snapshot, r: Results, now: Results): Finding[] {
  const known = new Set(findingsWithin(before, r).map(f => f.message));
  return findingsWithin(after, now).filter(f => f.accepted === undefined && f.severity !== 'hint' && !known.has(f.message)).sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
}
