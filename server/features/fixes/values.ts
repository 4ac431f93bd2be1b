/** Other values of facts: words that a fact may have, the same number in another unit, and what another place of the page says. */
import type { Snapshot } from '../../analysis.ts';
import { num, text } from '../../checks/check.ts';
import type { Finding } from '../../checks/check.ts';
import type { BoundFact, Place } from '../../model/model.ts';
import { within } from '../../model/place.ts';
import { unitsFor } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { intoBlock } from '../new-lines.ts';
import type { Candidate } from './candidate.ts';
import { writtenOf } from './numbers.ts';
import { shownOf } from './replay.ts';

/** A fact that a finding may go with, if it has another value, and whose it is; "" of the setup itself. */
type Facts = (f: Finding, r: Results) => readonly { readonly of: string; readonly phrase: string }[];

const WORDS: Readonly<Record<string, Facts>> = {
  'shutter-shakes': f => [{ of: f.subject, phrase: 'mounted' }],
  'film-flexes': f => [{ of: f.subject, phrase: 'base' }],
  'safelight-fogs': (_, r) => [...r.setup.things.values()].filter(t => t.facts.has('safelight')).map(t => ({ of: t.id, phrase: 'safelight' })),
  'sides-disagree': () => [{ of: '', phrase: 'hologram' }],
  'reference-from-disagrees': f => [{ of: text(f.data, 'plate'), phrase: 'reference from' }],
  'edge-light': f => [{ of: f.subject, phrase: 'edges' }],
  'slit-along-reference': (f, r) => [...slitsBefore(text(f.data, 'hologram'), r).map(of => ({ of, phrase: 'direction' })), { of: text(f.data, 'plate'), phrase: 'reference from' }],
  'lamp-from-other-side': f => [{ of: text(f.data, 'lamp'), phrase: 'from' }],
  'image-inside-out': f => [{ of: text(f.data, 'lamp'), phrase: 'hung' }],
  'image-astigmatic': f => [{ of: text(f.data, 'lamp'), phrase: 'beam' }],
  'master-in-diverging-beam': (f, r) => { const s = shownOf(f, r); return s ? [{ of: s.lamp.id, phrase: 'beam' }] : []; },
  'master-turned': f => [{ of: text(f.data, 'hologram'), phrase: f.data['what'] === 'layer' ? 'emulsion' : 'up' }],
  'ghost-fringes': (_, r) => [...r.setup.things.values()].filter(t => t.kind.light === 'source').map(t => ({ of: t.id, phrase: 'polarization' })),
};
const UNITS: Readonly<Record<string, Facts>> = {
  'lens-too-steep': f => [{ of: f.subject, phrase: 'focal length' }],
  'sensitivity-unlikely': f => [{ of: f.subject, phrase: 'sensitivity' }],
};

export function* valuesFor(finding: Finding, r: Results, snapshot: Snapshot): Generator<Candidate> {
  const { uri, tree } = snapshot;
  for (const { of, phrase } of WORDS[finding.code]?.(finding, r) ?? []) {
    const fact = factOf(r, of, phrase, uri);
    const thing = r.setup.things.get(of);
    const known = fact?.fact ?? (thing && !thing.facts.has(phrase) && thing.at.uri === uri ? thing.kind.facts.find(x => x.phrase === phrase) : undefined);
    const type = known?.type;
    if ((fact && fact.value.kind !== 'words') || (type?.type !== 'choice' && type?.type !== 'quantity')) continue;
    const before = fact?.value.kind === 'words' ? fact.value.text : undefined;
    const words = finding.data['way'] === undefined ? type.words ?? [] : [text(finding.data, 'way')];
    for (const word of words) {
      if (fact && before !== undefined && word !== before) yield { edits: [{ at: wholeOf(fact.at, before, tree), newText: word }], title: () => `Write “${phrase}: ${word}”${of === '' ? '' : ` of ${of}`} instead of “${before}”` };
      if (!fact && thing && word !== known?.assumed?.text) yield { edits: intoBlock(thing.node, [`${phrase}: ${word}`], snapshot), title: () => `Write “${phrase}: ${word}” of ${of}: ${known?.assumed?.text === undefined ? 'nothing is said of it' : `“${known.assumed.text}” is assumed`}` };
    }
  }
  for (const { of, phrase } of UNITS[finding.code]?.(finding, r) ?? []) {
    const fact = factOf(r, of, phrase, uri);
    const unit = fact?.value.kind === 'quantity' ? fact.value.quantity.unit : undefined;
    const whole = fact && tree.lines[fact.at.line]!.text.slice(fact.at.start, fact.at.end);
    if (!unit || !whole?.includes(unit.text)) continue;
    for (const other of unitsFor(unit.dim)) if (other !== unit.text) yield { edits: [{ at: fact!.at, newText: whole.replaceAll(unit.text, other) }], title: () => `Write ${whole.replaceAll(unit.text, other)} instead of ${whole}: “${phrase}” of ${of}` };
  }
  for (const { cell, value, why } of twice(finding, r)) {
    const written = cell.at?.uri === uri ? writtenOf(cell, tree) : undefined;
    if (!written) continue;
    const edit = written.edit(value, written.decimals);
    yield { edits: [edit], title: () => `Write ${edit.newText}${written.unitText} instead of ${written.text}${written.unitText}: ${why}` };
  }
}

/** Of a choice of several words the place of a fact is that of its first. */
const wholeOf = (at: Place, words: string, tree: Snapshot['tree']): Place => (tree.lines[at.line]!.text.startsWith(words, at.start) ? within(at, { start: at.start, end: at.start + words.length }) : at);

/** Slits on the last leg before a hologram. */
const slitsBefore = (hologram: string, { setup }: Results): string[] => [...setup.beams.values()].flatMap(b => b.legs.flatMap((l, i) => { const before = b.legs[i - 1]?.target; return l.target?.id === hologram && before?.kind.word === 'slit' ? [before.id] : []; }));

const factOf = ({ setup }: Results, of: string, phrase: string, uri: string): BoundFact | undefined => {
  const fact = (of === '' ? setup.facts : setup.things.get(of)?.facts)?.get(phrase);
  return fact?.at.uri === uri ? fact : undefined;
};

/** Numbers that another place of the page contradicts, with what that says, SI. */
function twice(f: Finding, r: Results): readonly { readonly cell: Cell; readonly value: number; readonly why: string }[] {
  const of = (cell: Cell | undefined, value: number | undefined, why: string): { cell: Cell; value: number; why: string }[] => (cell && value !== undefined ? [{ cell, value, why }] : []);
  switch (f.code) {
    case 'two-lengths': return of([...r.legs].find(([leg]) => leg.id === f.subject)?.[1], num(f.data, 'other'), f.data['places'] === true ? 'as the places say' : 'as the other place says');
    case 'two-angles': return r.plates.flatMap(p => [...p.arms.map(a => a.angle), ...p.pairs.map(x => x.litAt)]).flatMap(a => (a?.written?.name === f.subject ? of(a.written, num(f.data, 'places') * (num(f.data, 'written') < 0 ? -1 : 1), 'as the places say') : []));
    case 'wheel-disagrees': return r.light.wheels.flatMap(w => (w.splitter.id === f.subject ? of(w.written, w.byWheel && r.graph.value(w.byWheel), 'as its wheel says') : []));
    case 'plate-turned-round': return of(r.graph.find(`${f.subject}.heading`), f.data['heading'] === undefined ? undefined : num(f.data, 'heading'), 'it then faces the object');
    case 'polarization-crossed': return text(f.data, 'things').split(' and ').flatMap(id => [Math.PI / 2, 0].flatMap(value => of(r.graph.find(`${id}.axis`), value, `the axis of ${id} is then ${value === 0 ? 'level' : 'upright'}`)));
    case 'lamp-angle-off': case 'no-image': case 'lamp-impossible': case 'lamp-behind': return lampAngle(f, r).flatMap(a => of(a.cell, a.value, a.why));
    // Twice as wide a face reaches twice as far.
    case 'beam-clipped': { const face = r.graph.find(`${text(f.data, 'thing')}.face width`); return text(f.data, 'kind') === 'reach' ? of(face, face && Math.ceil((r.graph.value(face)! / num(f.data, 'value')) * 1000) / 1000, 'all of its light then gets on') : []; }
    case 'beam-rises': { const [from, to] = text(f.data, 'leg').split(' → ').map(id => r.graph.find(`${id}.z`)); return of(to, from && r.graph.value(from), 'the beam then stays level'); }
    default: return [];
  }
}

/** The angle of a lamp as it would have to be: that of the reference, on the side on which it is written; of a lamp behind a reflection hologram the same before it. */
function lampAngle(f: Finding, r: Results): readonly { readonly cell: Cell; readonly value: number; readonly why: string }[] {
  const s = shownOf(f, r);
  const cell = s && r.graph.find(`${s.lamp.id}.angle`);
  const now = cell && r.graph.value(cell);
  const angle = s && r.plates.find(p => p.plate === s.plate)?.arms.find(a => a.arm === s.pair.pair.reference)?.angle;
  const reference = angle && r.graph.value(angle.cell);
  if (now === undefined || reference === undefined) return [];
  const side = now < 0 ? -1 : 1;
  if (f.code === 'lamp-behind') return [{ cell: cell!, value: side * (Math.PI - Math.abs(now)), why: 'it then lights it from the front' }];
  return [{ cell: cell!, value: side * (Math.abs(now) > Math.PI / 2 ? Math.PI - Math.abs(reference) : Math.abs(reference)), why: 'that is the angle of the reference' }];
}
