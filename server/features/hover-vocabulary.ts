/** What the words of the language mean, for hovers: kinds of things, their facts, units. */
import { oneOf } from '../model/literal.ts';
import { show } from '../model/show.ts';
import { factsOf } from '../model/things/index.ts';
import type { Fact, FactType, Kind } from '../model/things/kind.ts';
import { dimName, NUMBER, parseUnit, TEMPERATURE, unitsFor, type Unit } from '../model/units.ts';
import { blocks, bullets, strong } from './markdown.ts';

/** A kind, its ports and the facts that it takes. */
export function kindWords(kind: Kind): string {
  const ports = kind.ports.map(p => `\`${p}\``);
  const [first, ...more] = kind.doc.split(/(?<=\.) /);
  return blocks(
    `**${kind.word}**: ${first!}`, more.join(' '), ports.length > 0 ? `A beam may start at ${oneOf(ports)}.` : '',
    bullets(factsOf(kind).map(f => `\`${f.phrase}\` (${values(f.type)}): ${f.doc}${assumed(f)}${f.used ? '' : ' Not computed with yet.'}`)),
  );
}

/** A fact, and how it stands with its owner: a line such as `whelk: 35 mm`. */
export const factWords = (fact: Fact, own?: string): string =>
  blocks(`**${fact.phrase}**: ${fact.doc}`, own, `Takes ${values(fact.type)}.${assumed(fact)}`, fact.used ? '' : 'It is read and kept; no result uses it yet.');

const assumed = (f: Fact): string => (f.assumed ? ` Where nothing is written, ${f.assumed.text} is assumed: ${f.assumed.why}.` : '');

function values(type: FactType): string {
  const or = (words: readonly string[] | undefined): string => (words ? `, or ${oneOf(words)}` : '');
  switch (type.type) {
    case 'quantity': return quantity(type) + or(type.words);
    case 'count': return `a whole number${or(type.words)}`;
    case 'choice': return oneOf(type.words);
    case 'sizes': return `${oneOf(type.numbers.map(String))} sizes such as ${type.numbers[0] === 3 ? '40 x 60 x 35 mm' : '40 x 60 mm'}`;
    case 'ratio': return 'a ratio such as 4:1';
    case 'points': return 'places such as (10, 0, 5) mm';
    case 'text': return 'words, or a text in quotes';
    case 'date': return 'a date such as 2026-02-11';
    case 'name': return 'the name of a thing';
  }
}

function quantity({ dim, sign, within }: FactType & { type: 'quantity' }): string {
  if (dim === NUMBER) return within?.words ?? (sign === 'share' ? 'a share, 0 % to 100 %' : 'a number');
  const name = dimName(dim);
  if (within) return `${name}, ${within.words}`;
  return `${name.startsWith('a quantity') ? 'a value' : name} in ${oneOf(unitsFor(dim).slice(0, 4))}`;
}

/** A unit: what it measures, and its size in a unit that is used more often. */
export function unitWords(text: string): string | undefined {
  const unit = parseUnit(text);
  if (!unit) return undefined;
  return blocks(`${strong(text)}: ${meaning(unit)}`, size(unit));
}

function meaning(unit: Unit): string {
  if (unit.points) return 'percentage points, behind ±: `85% ± 2 points` is 83 % to 87 %';
  if (unit.percent) return 'a share. Behind ± it is a share of the value: `85% ± 2%` is 83.3 % to 86.7 %';
  if (unit.dim === TEMPERATURE) return unit.offset === 0 ? 'a difference of temperature; a temperature itself is in °C' : 'a temperature; a difference is in K';
  return unit.dim === NUMBER ? 'a number' : dimName(unit.dim);
}

function size(unit: Unit): string {
  if (unit.dim === NUMBER || unit.offset !== 0) return '';
  const usual = parseUnit(unitsFor(unit.dim)[0]!) ?? unit;
  const [own, other] = [`1 ${unit.text}`, show(unit.factor, unit.dim, 0, usual)];
  return own === other || other.startsWith('0 ') ? '' : `1 ${strong(unit.text)} is ${other}.`;
}
