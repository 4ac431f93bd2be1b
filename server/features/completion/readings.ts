/** A line of a reading: what can be measured in this setup, where, the units that fit, and with what. */
import { CARDS, ROLES, SPOTS } from '../../model/bind/measured.ts';
import { PLAIN, WANTED } from '../../model/bind/instruments.ts';
import type { Measured } from '../../model/model.ts';
import { NUMBER } from '../../model/units.ts';
import { FITS, PATH_OR_LIGHT } from '../../model/bind/reading-values.ts';
import { legStart } from '../../results/legs/legs.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { Cursor, Token } from './cursor.ts';
import type { Offer, Topic } from './item.ts';
import { itemNames, thingOffer } from './names.ts';
import { letOffers, numberOffers } from './numbers.ts';
import { distinct, phrases, word } from './phrases.ts';

/** Behind `measured`. */
export function readingOffers(c: Cursor, r: Results): Offer[] {
  const { tokens } = c;
  const colon = tokens.findIndex(t => t.type === 'colon');
  if (colon >= 0) return valueOffers(c, r, tokens[colon]!.end, tokens.slice(colon + 1));
  const clause = tokens.findLastIndex(t => t.type === 'clause');
  if (clause >= 0) return placeOffers(c, r, tokens[clause]!, tokens.slice(clause + 1), tokens);
  const from = tokens[0]!.end;
  const last = tokens[tokens.length - 1]!;
  const open = phrases(c, from, subjects(c, r));
  if (last.type === 'arrow') return distinct([...open, ...legTargets(c, r, tokens[tokens.length - 2]?.text ?? '')]);
  if (last.type === 'minus') return armNames(r).filter(n => n !== tokens[1]!.text).map(n => word(n, 'the other arm', { kind: 'beam' }));
  return tokens.length === 1 ? open : [...open, ...nextOffers(c, r, tokens.slice(1))];
}

/** What this setup has to measure: arms, differences of arms, legs, and what else the trade measures. */
function subjects(c: Cursor, r: Results): Offer[] {
  const { setup, graph } = r;
  const about = (name: string): { about: Topic } => ({ about: { of: 'result', setup: setup.node.at, name } });
  const arm = (name: string): Offer => ({ label: name, kind: 'beam', detail: setup.beams.has(name) ? 'a beam: its path, or its light' : 'an arm: its path, or its light', text: name });
  const pairs = r.plates.flatMap(p => p.pairs.map((x): Offer => ({ label: `${x.arm.name} - ${x.reference.name}`, kind: 'result', detail: `difference of the paths, ${showCell(graph, x.mismatch).text}`, text: `${x.arm.name} - ${x.reference.name}`, ...about(x.mismatch.name) })));
  const legs = [...r.legs].flatMap(([leg, cell]): Offer[] => {
    const [from, to] = [legStart(leg), leg.target];
    if (!from || !to) return [];
    const label = `${from.id} -> ${to.id}`;
    return [{ label, kind: 'result', detail: cell.missing ? 'a leg' : `a leg, ${showCell(graph, cell).text}`, text: label, ...about(cell.name) }];
  });
  const wheels = c.things.filter(t => t.kind.light === 'shares').map(t => word(`${t.id} wheel`, 'the mark at which its wheel stands', { kind: 'result' }));
  return distinct([
    ...armNames(r).map(arm), ...pairs, ...legs, ...[...setup.beams.keys()].map(arm), ...wheels,
    word('dark', 'the meter with its head covered', { kind: 'result' }), word('drift', 'how fast the fringes creep at a plate', { kind: 'result' }), ...(c.things.some(t => t.kind.light === 'diffracts') ? [word('real image', 'how far from its hologram an image is sharp', { kind: 'result' })] : []),
  ]);
}

/** Arms by their beams, and by their roles where that means one of them. */
function armNames({ arms, setup }: Results): string[] {
  const roles = ROLES.filter(role => !setup.beams.has(role) && arms.arms.some(a => a.role === role) && arms.arms.filter(a => a.role === role).every(a => a.name !== role));
  return [...new Set([...arms.arms.map(a => a.name), ...roles])];
}

function legTargets(c: Cursor, r: Results, from: string): Offer[] {
  const to = new Set([...r.legs].flatMap(([leg]) => (legStart(leg)?.id === from && leg.target ? [leg.target] : [])));
  return [...to].map(t => thingOffer(t, c));
}

/** What may stand behind what is measured, before the colon. */
function nextOffers(c: Cursor, r: Results, subject: readonly Token[]): Offer[] {
  const words = subject.map(t => t.text).join(' ');
  const path = subject.some(t => t.type === 'arrow');
  const arm = subject.length === 1 && (armNames(r).includes(words) || r.setup.beams.has(words));
  const others = arm ? armNames(r).filter(n => n !== words) : [];
  const subjectDone = arm || path || ['dark', 'drift', 'real image'].includes(words) || subject.some(t => t.type === 'minus');
  return [
    ...(subjectDone && !path ? [word('at', 'where', { text: 'at ' })] : []), ...(arm ? [word('facing beam', 'the meter faces the light, instead of lying in the plane of the plate')] : []),
    ...others.slice(0, 4).map(o => word(`- ${o}`, 'the difference of both paths')), ...(path ? [word('->', 'and on to', { text: '-> ' })] : []), ...(subjectDone || subject[1]?.text === 'wheel' ? colonOffer(c) : []),
  ];
}
const colonOffer = (c: Cursor): Offer[] => (c.rest === '' && c.typed === '' ? [word(':', 'what was read', { text: ': ' })] : []);

function placeOffers(c: Cursor, r: Results, clause: Token, behind: readonly Token[], all: readonly Token[]): Offer[] {
  const subject = all.slice(1, all.findIndex(t => t.type === 'clause')).map(t => t.text).join(' ');
  const light = armNames(r).includes(subject) || r.setup.beams.has(subject);
  const facing = light && !all.some(t => t.text === 'facing') ? [word('facing beam', 'the meter faces the light, instead of lying in the plane of the plate')] : [];
  if (clause.text === 'facing') return behind.length === 0 ? [word('beam', 'into the light')] : [...(all.some(t => t.text === 'at') ? [] : [word('at', 'where', { text: 'at ' })]), ...colonOffer(c)];
  if (clause.text !== 'at') return [];
  if (behind.length === 0) {
    const plates = c.things.filter(t => t.kind.light === 'recorded');
    const met = light ? c.things.filter(t => t.kind.light !== 'recorded' && t.kind.light !== 'source' && [...r.setup.beams.values()].some(b => b.id === subject && b.legs.some(l => l.target === t))) : [];
    const cards = subject === 'real image' || subject === 'dark' ? [...c.things.filter(t => t.kind.light === 'ends').map(t => thingOffer(t, c)), ...CARDS.map(w => word(w, 'a card held there', { kind: 'choice' }))] : [];
    return distinct([...(subject === 'real image' ? cards : []), ...plates.map(t => thingOffer(t, c)), ...met.map(t => thingOffer(t, c)), ...cards]);
  }
  if (!light) return colonOffer(c);
  const [, ...more] = behind;
  if (more[0]?.text === 'through') {
    const polarizers = c.things.filter(t => t.kind.word === 'polarizer').map(t => thingOffer(t, c));
    return more.length === 1 ? distinct([...polarizers, word('polarizer', 'a sheet held by hand', { kind: 'choice' })]) : [...facing, ...colonOffer(c)];
  }
  const spots = phrases(c, behind[0]!.end, [...SPOTS.map(s => word(s, 'a spot of the plate, as seen from the object', { kind: 'choice' })), word('through', 'read through a polarizer', { text: 'through ' })]);
  return more.length === 0 || spots.length > 0 ? [...spots, ...(more.length === 0 ? [...facing, ...colonOffer(c)] : [])] : [...facing, ...colonOffer(c)];
}

/** Behind the colon: the value, then with what it was read. When is only known to who read it. */
function valueOffers(c: Cursor, r: Results, from: number, tokens: readonly Token[]): Offer[] {
  const reading = r.setup.readings.find(x => x.node.at === c.line);
  const kind = reading?.measured?.kind;
  const by = tokens.some(t => t.text === 'by');
  const on = tokens.some(t => t.text === 'on');
  const clause = tokens.findLastIndex(t => t.type === 'clause' && t.text !== 'std');
  const tail = [...(by ? [] : [word('by', 'with what', { text: 'by ' })]), ...(on ? [] : [word('on', 'the day, as 2026-02-11', { text: 'on ' })])];
  if (clause >= 0) return tokens.length > clause + 1 ? tail : tokens[clause]!.text === 'by' ? instruments(c, r, kind) : [];
  // Until its unit is written, a number may be the path of an arm or its light.
  const fit = kind === 'arm' ? PATH_OR_LIGHT : kind && FITS[kind];
  const units = (fit?.units ?? '').split(', ').filter(u => u !== '');
  return numberOffers(c, from, tokens, { starts: letOffers(c, fit?.dims ?? []), tail, units: () => units, spread: kind === 'wheel' ? [] : [...units, '%'], tolerance: true, bare: fit?.dims.includes(NUMBER) ?? true });
}

/** Instruments that suit, by name: of this setup, of its inventories, and plain words of which nothing is known. */
function instruments(c: Cursor, r: Results, kind: Measured['kind'] | undefined): Offer[] {
  const wanted = kind && WANTED[kind];
  const fits = (w: string): boolean => (wanted ? w === wanted : w === 'string' || w === 'meter');
  const own = c.things.filter(t => fits(t.kind.word));
  const items = itemNames(c, i => fits(i.kind.word) && ![...r.setup.things.values()].some(t => t.item === i));
  return distinct([...own.map(t => thingOffer(t, c)), ...items, ...Object.keys(PLAIN).filter(w => fits(PLAIN[w]!)).map(w => word(w, 'nothing is known of its error', { kind: 'choice' }))]);
}
