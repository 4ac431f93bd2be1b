/**
 * What the powers that were read along the beams tell of the things between them. A power is that of the laser times what each thing on the way lets pass, so that logarithms add up: the losses are fitted
 * to all readings at once, by least squares. What lies between two readings is only told as a whole. Nothing is written: each value comes as an edit.
 */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import { decimalsFor, plain } from '../../model/show.ts';
import { standardUncertainty } from '../../model/quantity.ts';
import type { Leg, Thing } from '../../model/model.ts';
import type { PowerReading } from '../../results/light/powers.ts';
import { fit, type Fit, type Row } from '../../results/solve/fit.ts';
import type { Results } from '../../results/plan.ts';
import { fact, listed } from '../blocks/facts.ts';
import { intoBlock } from '../new-lines.ts';

export interface Loss {
  /** `M1 loses 11.2% ± 0.8 points` */
  readonly words: string;
  /** what is written of it now */
  readonly detail: string;
  /** empty where it is no value that can be written */
  readonly edits: readonly Edit[];
}
export interface Losses {
  readonly losses: readonly Loss[];
  /** what the readings leave open, and what they contradict, sentences */
  readonly open: readonly string[];
}

/** Something that light goes through or off, which way. */
interface Passage { readonly thing: Thing; readonly port: string | undefined; readonly key: string }

export function lossesOf(snapshot: Snapshot, r: Results, library: Library): Losses {
  const readings = r.light.readPowers.filter(p => (r.graph.value(p.read) ?? 0) > 0);
  if (readings.length < 2) return { losses: [], open: [readings.length === 0 ? 'No power was read along the beams. Read it before and behind each thing of which you want the loss, the whole beam on the head.' : `One power alone, “${readings[0]!.reading.words}”, tells no loss: read it before and behind a thing.`] };
  const ways = readings.map(p => wayTo(p.leg, r));
  const passages = [...new Map(ways.flatMap(w => w.passages).map(p => [p.key, p])).values()];
  const sources = [...new Set(ways.map(w => w.source))];
  const { us, sure } = uncertaintiesOf(readings);
  const meters = [...new Set(readings.map(p => p.reading.by?.name ?? ''))];
  const extra = meters.length > 1 ? meters : [];
  const unknowns = [...sources, ...extra.map(m => `meter ${m}`), ...passages.map(p => p.key)];
  const by = (keys: readonly string[], minus: readonly string[] = []): number[] => unknowns.map(k => (keys.includes(k) ? 1 : minus.includes(k) ? -1 : 0));
  const rows: Row[] = readings.map((p, i) => ({ by: by([ways[i]!.source, ...(extra.length > 0 ? [`meter ${p.reading.by?.name ?? ''}`] : [])], ways[i]!.passages.map(x => x.key)), value: Math.log(r.graph.value(p.read)!), u: us[i]! }));
  // Each meter may be off by its calibration, by which alone its readings are held against those of another.
  for (const m of extra) rows.push({ by: by([`meter ${m}`]), value: 0, u: calibrationOf(m, readings, r) });
  const found = fit(rows);
  const told = (keys: readonly string[]): ReturnType<Fit['told']> => found.told(by(keys));
  const things = [...new Set(passages.map(p => p.thing))];
  const losses = things.flatMap(t => ofThing(t, passages.filter(p => p.thing === t), told, sure, r, snapshot, library));
  return { losses, open: [...gains(things, passages, told), ...contradictions(found, sure), ...together(readings, ways, told, sure), ...(sure ? [] : ['None of these readings says how sure it is, so that nothing tells how sure the losses are. Write ± behind them.'])] };
}

/** From the laser on: what light passes before it arrives at the end of a leg, and which laser it is. A power that no way leads back from starts a way of its own. */
function wayTo(leg: Leg, r: Results): { readonly passages: readonly Passage[]; readonly legs: readonly Leg[]; readonly source: string } {
  const passages: Passage[] = [];
  const legs: Leg[] = [leg];
  let at: Leg | undefined = leg;
  for (let n = 0; at && n < MOST; n++) {
    const before: Leg | undefined = r.light.powers.before(at);
    const from: Thing | undefined = at.n > 1 ? before?.target : at.beam.from;
    if (!from || from.kind.light === 'source') return { passages, legs, source: `laser ${from?.id ?? at.beam.id}` };
    const port = from.kind.light === 'shares' ? (at.n > 1 ? before?.port : at.beam.port) : undefined;
    if (from.kind.word !== 'shutter') passages.unshift({ thing: from, port, key: `${from.id} ${port ?? ''}` });
    if (before) legs.unshift(before);
    at = before;
  }
  return { passages, legs, source: `beam ${leg.beam.id}` };
}
const MOST = 5000;

/** Of each reading, as a share of it. One that does not say how sure it is counts as the least sure of the others. */
function uncertaintiesOf(readings: readonly PowerReading[]): { readonly us: readonly number[]; readonly sure: boolean } {
  const own = readings.map(({ reading: { value } }) => (value?.kind === 'quantity' && value.quantity.value > 0 ? standardUncertainty(value.quantity.value, value.quantity.spread) / value.quantity.value : 0));
  const worst = Math.max(...own);
  return { us: own.map(u => (u > 0 ? u : worst > 0 ? worst : 1)), sure: worst > 0 };
}

function calibrationOf(meter: string, readings: readonly PowerReading[], r: Results): number {
  const thing = readings.find(p => (p.reading.by?.name ?? '') === meter)?.reading.by?.thing;
  const cell = thing && r.values.fact(thing, 'calibration');
  const u = cell && !cell.missing ? r.graph.uncertainty(cell) / Math.abs(r.graph.value(cell)!) : UNKNOWN;
  return Math.max(u, 1e-6);
}
/** A head of which nothing is written is right to 10 %, as of those that have a page without a calibration. */
const UNKNOWN = 0.1 / Math.sqrt(3);

interface Share { readonly value: number; readonly u: number }
/** A negative logarithm of what passes. */
type Sum = Share;
/** What passes, of a sum of negative logarithms. */
const passed = (t: Sum): Share => ({ value: Math.exp(-t.value), u: Math.exp(-t.value) * t.u });
const lost = (t: Sum): Share => { const p = passed(t); return { value: 1 - p.value, u: p.u }; };

type Told = (keys: readonly string[]) => Sum | undefined;

/** Loss and share of a splitter from what it reflects and lets through, to first order; both rest on the reading before it, so that their errors hang together: cov(a, b) = (var(a + b) − var(a) − var(b)) / 2. */
function shared(a: Sum, b: Sum, both: Sum): { readonly loss: Share; readonly part: Share } {
  const [p, q] = [passed(a).value, passed(b).value];
  const cov = (both.u ** 2 - a.u ** 2 - b.u ** 2) / 2;
  const spread = (ga: number, gb: number): number => Math.sqrt(Math.max(0, (ga * a.u) ** 2 + (gb * b.u) ** 2 + 2 * ga * gb * cov));
  const part = p / (p + q);
  return { loss: { value: 1 - p - q, u: spread(p, q) }, part: { value: part, u: spread(part * (1 - part), -part * (1 - part)) } };
}

function ofThing(thing: Thing, passages: readonly Passage[], told: Told, sure: boolean, r: Results, snapshot: Snapshot, library: Library): Loss[] {
  const written = (phrase: string): string => fact(thing, phrase) ?? 'not written';
  if (thing.kind.light !== 'shares') {
    const one = told([passages[0]!.key]);
    if (!one) return [];
    const loss = lost(one);
    const name = thing.kind.word === 'attenuator' || thing.kind.word === 'polarizer' || thing.kind.word === 'slit' || thing.kind.word === 'aperture' || thing.kind.word === 'hologram' ? undefined : 'loss';
    if (loss.value < 0) return [];
    return [{ words: `${thing.id} ${name ? 'loses' : 'keeps back'} ${share(loss, sure, ' ')}`, detail: name ? `loss on the page: ${written('loss')}` : 'not its loss alone, so that there is nothing to write', edits: name ? tried(thing, [['loss', share(loss, sure, '')]], snapshot, library) : [] }];
  }
  const [a, b] = ['reflected', 'through'].map(port => { const p = passages.find(x => x.port === port); return p && told([p.key]); }) as [Sum | undefined, Sum | undefined];
  if (!a || !b) return [];
  const { loss, part } = shared(a, b, told(passages.map(p => p.key))!);
  if (loss.value < 0) return [];
  const open = ['wheel', 'graduations'].some(p => thing.facts.has(p)) || thing.facts.get('reflects')?.value.kind === 'unknown' || r.setup.readings.some(x => x.measured?.kind === 'wheel' && x.measured.splitter === thing);
  const facts: [string, string][] = [...(open ? [] : [['reflects', share(part, sure, '')] as [string, string]]), ['loss', share(loss, sure, '')]];
  return [{ words: `${thing.id} loses ${share(loss, sure, ' ')} and reflects ${share(part, sure, ' ')} of the rest`, detail: `on the page: loss ${written('loss')}, reflects ${open ? 'by its wheel or left open, and stays so' : written('reflects')}`, edits: tried(thing, facts, snapshot, library) }];
}

/** `11.2% ± 0.8 points std`: as it is written; as people read it, without the last word and with a blank. */
function share({ value, u }: Share, sure: boolean, gap: '' | ' '): string {
  if (!sure || !(u > 0)) return `${plain(value * 100, 3).replace('−', '-')}${gap}%`;
  const decimals = decimalsFor(u * 100);
  return gap === '' ? `${(value * 100).toFixed(decimals)}% ± ${(u * 100).toFixed(decimals)} points std` : `${(value * 100).toFixed(decimals)} % ± ${(2 * u * 100).toFixed(decimalsFor(2 * u * 100))} points`;
}

/** Writes facts of a thing: over what it says of them itself, else into its block. Tried on a copy. */
function tried(thing: Thing, facts: readonly (readonly [string, string])[], snapshot: Snapshot, library: Library): Edit[] {
  const over: Edit[] = [];
  const more: string[] = [];
  for (const [phrase, value] of facts) {
    const own = thing.node.children.find(c => c.line.colon !== undefined && c.line.value !== undefined && c.line.text.slice(c.line.head?.start, c.line.colon).trim().replace(/\s+/g, ' ') === phrase);
    if (own) over.push({ at: { uri: snapshot.uri, line: own.at, start: own.line.value!.start, end: own.line.value!.end }, newText: value });
    else more.push(`${phrase}: ${value}`);
  }
  const edits = [...over, ...(more.length > 0 ? intoBlock(thing.node, more, snapshot) : [])];
  const errors = (s: Snapshot): number => s.findings.filter(f => f.severity === 'error').length;
  return errors(analyse(snapshot.uri, applyEdits(snapshot.text, edits), library)) > errors(snapshot) ? [] : edits;
}

/** Nothing gives light. */
function gains(things: readonly Thing[], passages: readonly Passage[], told: Told): string[] {
  return things.flatMap(t => {
    const own = passages.filter(p => p.thing === t);
    const all = own.map(p => told([p.key]));
    if (all.some(x => !x) || (t.kind.light === 'shares' && own.length < 2)) return [];
    const out = { value: all.reduce((s, x) => s + passed(x!).value, 0) };
    return out.value > 1 ? [`Behind ${t.id} more was read than before it: ${plain(out.value, 3)} times as much. Nothing gives light, so one of these readings is wrong, or the laser has changed between them: read both once more, one right after the other, the whole beam on the head.`] : [];
  });
}

/** From three standard uncertainties on, as elsewhere. */
const CONTRADICTS = 9;
function contradictions({ left, spare }: Fit, sure: boolean): string[] {
  return sure && spare > 0 && left / spare > CONTRADICTS ? [`No losses fit all of these powers: what is left over is ${plain(Math.sqrt(left / spare), 2)} times what the readings leave open. One of them is wrong, or the laser has changed between them. Read them once more in one go.`] : [];
}

/** What lies between two readings and is only told as a whole. */
function together(readings: readonly PowerReading[], ways: readonly ReturnType<typeof wayTo>[], told: Told, sure: boolean): string[] {
  return [...new Set(readings.flatMap((p, i) => {
    const { legs, passages } = ways[i]!;
    // The nearest reading before it on the same way.
    const before = readings.map((q, j) => ({ q, n: j === i ? -1 : legs.indexOf(q.leg), way: ways[j]! })).filter(x => x.n >= 0).sort((a, b) => b.n - a.n)[0];
    const between = passages.slice(before ? before.way.passages.length : 0);
    const names = listed([...new Set(between.map(x => x.thing.id))]);
    if (between.length === 0 || between.every(x => told([x.key]) && x.thing.kind.light !== 'shares')) return [];
    if (!before) return [`Nothing was read before ${names} on the way of “${p.reading.words}”: read the bare beam, and it can be told what is lost.`];
    const whole = told(between.map(x => x.key));
    if (between.length === 1) {
      const [{ thing, port }] = between as [Passage];
      const other = port === 'reflected' ? 'through' : 'reflected';
      const both = ways.some(w => w.passages.some(x => x.thing === thing && x.port === other && told([x.key]) !== undefined));
      return both || !whole ? [] : [`${thing.id} sends on ${share(passed(whole), sure, ' ')} ${port ?? ''} by these readings; what it loses and what it shares out cannot be told apart by one side alone: read the power of the ${other === 'through' ? 'light that goes through' : 'reflected light'} as well.`];
    }
    return whole ? [`Between “${before.q.reading.words}” and “${p.reading.words}” ${names} together lose ${share(lost(whole), sure, ' ')}. Which of them loses how much these readings cannot tell: read the power between them.`] : [];
  }))];
}
