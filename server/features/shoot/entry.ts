/** A shot as it is written down: the settings as they stood, what was read, the room and the box; one block more, and nothing else on the page is another one by it. */
import { analyse, type Library, type Snapshot } from '../../analysis.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import { plain, show } from '../../model/show.ts';
import { parseUnit, TIME } from '../../model/units.ts';
import type { Results } from '../../results/plan.ts';
import { fact, things } from '../blocks/facts.ts';
import { showCell } from '../chain.ts';
import { indentOf, linesBehind } from '../new-lines.ts';
import { readText } from '../report/readings.ts';
import { nextName, oddDays, shotsIn } from './shots.ts';
import { platesOf } from './steps.ts';

export interface Exposed {
  /** by the clock of whoever shot: `2026-02-18` */
  readonly on: string;
  /** how long the shutter was open, s; with names of a plate that gets several exposures */
  readonly exposures: readonly { readonly name?: string; readonly seconds: number }[];
  /** for how long the table was left alone, s; missing where nobody counted it */
  readonly settle?: number;
  /** which plate it was, in somebody's words */
  readonly plate?: string;
  /** what happened */
  readonly note?: string;
}

export interface Entry {
  readonly name: string;
  readonly edits: readonly Edit[];
  /** what is written */
  readonly text: string;
  readonly notes: readonly string[];
}

export function shotEntry(snapshot: Snapshot, r: Results, shot: Exposed, library: Library): Entry | { readonly refused: string } {
  const shots = shotsIn(r.setup);
  const name = nextName(shots);
  const last = shots.at(-1);
  const { node } = r.setup;
  const before = last?.node ?? node.children.at(-1);
  const indent = before ? indentOf(before) : `${indentOf(node)}  `;
  const lines = [`shot ${name} on ${shot.on} {`, ...facts(r, shot).map(f => `  ${f}`), '}'].map(l => indent + l);
  const edit = linesBehind(snapshot.tree, snapshot.uri, snapshot.text, before?.end ?? node.at, lines, last === undefined && before !== undefined);
  const after = analyse(snapshot.uri, applyEdits(snapshot.text, [edit]), library);
  const text = lines.join('\n');
  const written = after.results.some(x => x.setup.name === r.setup.name && shotsIn(x.setup).filter(s => s.name === name).length === 1);
  return written ? { name, edits: [edit], text, notes: oddDays(shots, shot.on) } : { refused: `As the page stands, the shot would not be read as one of “${r.setup.name}”: a brace is missing. Close it first; here is the entry, so that it is not lost:\n${text}` };
}

/** In the words that a shot has for them; what nobody has read or written is left out. */
function facts(r: Results, { exposures, settle, plate, note }: Exposed): string[] {
  const room = things(r.setup, 'room')[0];
  const of = (phrase: string): string | undefined => (room && fact(room, phrase)) ?? fact(r.setup, phrase);
  const plates = platesOf(r).map(p => ({ id: p.id, batch: quoteless(fact(p, 'batch')) })).filter(p => p.batch !== undefined);
  const batch = plates.length > 1 ? plates.map(p => `${p.id}: ${p.batch!}`).join(', ') : plates[0]?.batch;
  const named = exposures.filter(e => e.name !== undefined);
  const one = named.length === 0 ? exposures[0]?.seconds : undefined;
  const said: readonly (readonly [string, string | undefined])[] = [
    ['plate', noteOf([plate ?? ''])], ['batch', batch === undefined ? undefined : `"${batch}"`],
    // A shot has one line for one exposure: of several nobody knows what their sum would mean.
    ['exposure', one === undefined ? undefined : inSeconds(one)], ['settle', settle === undefined ? undefined : show(settle, TIME, 0, parseUnit(settle >= 60 && settle % 30 === 0 ? 'min' : 's'))],
    ['power', powerRead(r)], ['beam ratio', ratioRead(r)], ['temperature', of('temperature')], ['humidity', of('humidity')],
    ['note', noteOf([...named.map(e => `${e.name!} ${inSeconds(e.seconds)}`), stood(r), note ?? ''])],
  ];
  return said.flatMap(([phrase, value]) => (value === undefined ? [] : [`${phrase}: ${value}`]));
}

const inSeconds = (s: number): string => show(s, TIME, 0, parseUnit('s'));
const quoteless = (text: string | undefined): string | undefined => text?.replace(/"/g, '');
function noteOf(parts: readonly string[]): string | undefined {
  const text = parts.filter(p => p !== '').join('; ').replace(/["\r\n]/g, ' ').trim();
  return text === '' ? undefined : `"${text.slice(0, LONGEST)}"`;
}
/** Of a line there are 2,000 characters. */
const LONGEST = 1500;

/** The power of the bare beam, where it was read. */
function powerRead(r: Results): string | undefined {
  const first = r.light.readPowers.find(p => p.leg === r.arms.arms[0]?.path.find(l => l.target?.kind.word !== 'shutter'));
  const at = first?.reading.valueAt;
  return at && first.reading.node.line.text.slice(at.start, at.end);
}

/** Where both sides were metered: a ratio that is only planned is no setting. */
function ratioRead(r: Results): string | undefined {
  const [light, ...more] = r.light.plates;
  if (!light || more.length > 0 || light.predicted.ratio || !light.reference || light.objects.length === 0) return undefined;
  const value = r.graph.value(light.ratio);
  return value === undefined || !(value > 0) ? undefined : `${plain(value, 2)}:1`;
}

/** What the shot words have no line for: paths, light, wheels. */
function stood(r: Results): string {
  const paths = r.plates.flatMap(p => p.pairs.filter(x => !x.mismatch.missing).map(x => `${x.arm.name} − ${x.reference.name} ${showCell(r.graph, x.mismatch).text}${r.plates.length > 1 ? ` at ${p.plate.id}` : ''}`));
  const light = r.light.plates.flatMap(l => [
    ...(l.reference?.read.kind === 'light' ? [`${l.laser ? l.reference.name : 'reference'} ${showCell(r.graph, l.referenceLight).text} at ${l.plate.id}`] : []), ...(l.objects.some(o => o.read.kind === 'light') && !l.objectLight.missing ? [`object light ${l.laser ? `of ${l.laser.id} ` : ''}${showCell(r.graph, l.objectLight).text} at ${l.plate.id}`] : []),
  ]);
  const splitters = things(r.setup, 'splitter').flatMap(s => {
    const share = r.light.reflects(s);
    const wheel = r.setup.readings.findLast(x => x.measured?.kind === 'wheel' && x.measured.splitter === s);
    const mark = wheel ? readText(wheel, r) : fact(s, 'wheel');
    return mark !== undefined ? [`wheel of ${s.id} at ${mark}`] : share && !share.missing && fact(s, 'reflects') !== undefined ? [`${s.id} reflects ${showCell(r.graph, share).text}`] : [];
  });
  return [...paths, ...light, ...splitters].join(', ');
}
