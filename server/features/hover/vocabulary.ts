/** What the words of the language mean, for hovers: kinds of things, their facts, units. */
import { oneOf } from '../../model/literal.ts';
import { show } from '../../model/show.ts';
import { factsOf } from '../../model/things/index.ts';
import type { Fact, Kind } from '../../model/things/kind.ts';
import { assumedByWords, factHead, typeWords } from '../../model/things/words.ts';
import { dimName, NUMBER, parseUnit, TEMPERATURE, unitsFor, type Unit } from '../../model/units.ts';
import { blocks, bullets, strong } from '../markdown.ts';

/** A kind, its ports and the facts that it takes. */
export function kindWords(kind: Kind): string {
  const ports = kind.ports.map(p => `\`${p}\``);
  const [first, ...more] = kind.doc.split(/(?<=\.) /);
  return blocks(
    `**${kind.word}**: ${first!}`, more.join(' '), ports.length > 0 ? `A beam may start at ${oneOf(ports)}.` : '',
    bullets(factsOf(kind).map(f => `\`${factHead(f)}\` (${typeWords(f.type)}): ${f.doc}${briefly(f)}${f.used ? '' : ' Not computed with yet.'}`)),
  );
}

/** A fact, and how it stands with its owner: a line such as `whelk: 35 mm`. */
export const factWords = (fact: Fact, own?: string): string =>
  blocks(`**${factHead(fact)}**: ${fact.doc}`, own, `Takes ${typeWords(fact.type)}.${usual(fact)}`, assumed(fact).trim(), assumedBy(fact), fact.used ? '' : 'It is read and kept; no result uses it yet.');

const assumed = (f: Fact): string => (f.assumed ? ` Where nothing is written, ${f.assumed.text} is assumed: ${f.assumed.why}.` : '');
const briefly = (f: Fact): string => `${assumed(f)}${f.assumedBy ? ` What is assumed depends on \`${f.assumedBy.phrase}\`.` : ''}`;
const usual = (f: Fact): string => (f.usual && f.type.type !== 'text' && f.type.type !== 'choice' ? ` Often ${f.usual.map(u => `\`${u}\``).join(', ')}.` : '');

function assumedBy(f: Fact): string {
  const by = assumedByWords(f);
  return by.length === 0 ? '' : `${f.assumed ? 'Instead' : 'Where nothing is written'}, there is assumed\n\n${bullets(by.map(([where, a]) => `with \`${where}\` ${a.text}: ${a.why}`))}`;
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
