/** Behind the name of a thing: its inventory item, where it stands and which way it faces, clause by clause in the order in which they are written. */
import { SAYS, TURNS } from '../../model/bind/placement.ts';
import type { Kind, Within } from '../../model/things/kind.ts';
import { show } from '../../model/show.ts';
import { ANGLE, LENGTH, type Dim } from '../../model/units.ts';
import type { Cursor, Token } from './cursor.ts';
import { GO_ON, template, type Offer, type Piece } from './item.ts';
import { factsInShort, itemNames, thingOffer } from './names.ts';
import { letOffers, numberOffers, unitsOf } from './numbers.ts';
import { distinct, phrases, word } from './phrases.ts';

const MEANING: Readonly<Record<string, readonly [string, string]>> = {
  at: ['a place on the table', '`at (350, 100) mm`: x and y; a third number is the height.'],
  on: ['on a leg', '`on M1 -> P1 by 60 mm`: on that leg, 60 mm after M1.'],
  beyond: ['some way behind a thing', '`beyond M1 by 500 mm turning left`: on from M1, a quarter turn to the left of the light that arrives there.'],
  by: ['how far', '`by 60 mm`'],
  turning: ['how it turns the light', `\`turning left\`, as one looks along the light: ${TURNS.join(', ')}, or an angle.`],
  heading: ['its direction as an angle', '`heading 30°`'],
  facing: ['toward a thing', '`facing whelk`, or `facing beam`'],
  tilted: ['out of the level', '`tilted 5°`'],
};
const DIMS: Readonly<Record<string, Dim>> = { at: LENGTH, by: LENGTH, heading: ANGLE, tilted: ANGLE, turning: ANGLE };
const PLACE: readonly Piece[] = ['(', { stop: '350' }, ', ', { stop: '100' }, ') mm'];

/** `tokens`: what stands behind the name of the thing. In an inventory a thing stands nowhere. */
export function placementOffers(c: Cursor, kind: Kind, tokens: readonly Token[], inInventory = false): Offer[] {
  const equals = tokens.findIndex(t => t.type === 'equals');
  const clauses = tokens.flatMap((t, i) => (t.type === 'clause' && SAYS.has(t.text) && i > equals ? [i] : []));
  const at = clauses[clauses.length - 1];
  if (at === undefined && equals >= 0 && tokens.length === equals + 1) return itemNames(c, i => i.kind === kind, factsInShort);
  const next = inInventory ? (at === undefined ? brace(c) : []) : nextOffers(c, clauses.map(i => tokens[i]!.text));
  if (at === undefined) return tokens.length === 0 && equals < 0 && itemNames(c, i => i.kind === kind).length > 0 ? [...next.filter(o => o.kind !== 'block'), EQUALS, ...next.filter(o => o.kind === 'block')] : next;
  return clauseOffers(c, tokens.slice(0, at), tokens[at]!, tokens.slice(at + 1), next);
}

const EQUALS = word('=', 'an item of an inventory', { text: '= ', words: '`laser red = lab.red-12`: facts in the block override those of the item.' });
const brace = (c: Cursor): Offer[] => (c.rest === '' ? [{ label: '{ … }', filter: '{', kind: 'block', detail: 'a block of facts', ...template(['{\n  ', GO_ON, '\n}']), stopsOnly: true }] : []);

function clauseOffers(c: Cursor, before: readonly Token[], { text: clause, end: from }: Token, tokens: readonly Token[], next: readonly Offer[]): Offer[] {
  const last = tokens[tokens.length - 1];
  const things = (): Offer[] => c.things.filter(t => t.kind.light !== 'none').map(t => thingOffer(t, c));
  switch (clause) {
    case 'on': {
      const arrow = tokens.findIndex(t => t.type === 'arrow');
      if (arrow >= 0 && last!.type !== 'arrow') return [...next];
      const legs = phrases(c, from, runsOf(c).map((l): Offer => ({ label: `${l.from} -> ${l.to}`, kind: 'thing', detail: l.length === undefined ? 'a leg' : `a leg, ${show(Math.round(l.length * 1e4) / 1e4, LENGTH)}`, text: `${l.from} -> ${l.to}` })));
      if (!last) return legs.length > 0 ? legs : things().map(t => ({ ...t, text: c.rest === '' ? `${t.text} -> ` : t.text }));
      const others = things().filter(t => t.label !== tokens[0]!.text);
      return distinct([...legs, ...(arrow < 0 ? [word('->', 'to the other end of the leg', { text: '-> ' })] : others)]);
    }
    case 'beyond': return last ? [...next] : things();
    case 'facing': return last ? [...next] : [...things(), word('beam', 'squarely into the light')];
    default: {
      const turns = clause === 'turning' ? TURNS.map(t => word(t, 'as one looks along the light', { kind: 'choice' })) : [];
      const place: Offer[] = clause === 'at' ? [{ label: '(x, y) mm', kind: 'value', detail: 'a place on the table', ...template(PLACE), stopsOnly: true }] : [];
      const dim = DIMS[clause];
      if (!dim) return [...next];
      return numberOffers(c, from, tokens, { starts: [...turns, ...place, ...letOffers(c, clause === 'at' ? [] : [dim])], tail: next, ...unitsOf({ dim, ...(clause === 'by' ? onLeg(c, before) : {}) }), tolerance: true, places: clause === 'at' });
    }
  }
}

interface Run { readonly from: string; readonly to: string; readonly length: number | undefined }

/** Where light goes from one thing to the next, as if the one that is being placed did not stand between them. */
function runsOf(c: Cursor): Run[] {
  const own = c.tokens[c.tokens.findIndex(t => t.type === 'clause' || t.type === 'equals') - 1]?.text;
  return [...c.r?.setup.beams.values() ?? []].flatMap(beam => {
    const runs: Run[] = [];
    let [from, length]: [string | undefined, number | undefined] = [beam.from?.id, 0];
    for (const leg of beam.legs) {
      const cell = c.r!.legs.get(leg);
      const more = cell && c.r!.graph.value(cell);
      length = length === undefined || more === undefined ? undefined : length + more;
      if (leg.to === own) continue;
      if (from !== undefined && leg.target) runs.push({ from, to: leg.to, length });
      [from, length] = [leg.target?.id, 0];
    }
    return runs;
  });
}

/** `on M1 -> P1 by 60 mm`: no further than that leg is long. */
function onLeg(c: Cursor, before: readonly Token[]): { within?: Within } {
  const [on, from, , to] = before.slice(-4);
  const length = on?.text === 'on' ? runsOf(c).find(l => l.from === from!.text && l.to === to!.text)?.length : undefined;
  return length === undefined ? {} : { within: { from: 0, to: length, words: '' } };
}

/** The clauses that may come next, where some are written: each says one thing once. */
function nextOffers(c: Cursor, written: readonly string[]): Offer[] {
  const said = new Set(written.map(w => SAYS.get(w)));
  const place = written.find(w => SAYS.get(w) === 'place');
  const clause = (w: string): Offer => word(w, MEANING[w]?.[0] ?? '', { text: `${w} `, ...(MEANING[w] ? { words: MEANING[w][1] } : {}) });
  // Without how far, nothing else makes sense yet.
  if ((place === 'on' || place === 'beyond') && !said.has('distance')) return [clause('by')];
  const last = written[written.length - 1];
  const order = (['place', 'turn', 'direction', 'tilt'] as const).filter(s => !said.has(s) && !(s === 'place' && written.length > 0) && (s !== 'turn' || (place === 'beyond' && last === 'by')));
  return [...order.flatMap(slot => [...SAYS].filter(([, s]) => s === slot).map(([w]) => clause(w))), ...brace(c)];
}
