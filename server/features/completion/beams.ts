/** Beams and legs: where light can start, what it can meet next, and whole beams. */
import type { Beam, Thing } from '../../model/model.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cursor, Token } from './cursor.ts';
import { shown, template, type Offer, type Piece } from './item.ts';
import { letOffers, numberOffers, unitsOf } from './numbers.ts';
import { meets, takenNames, thingOffer } from './names.ts';
import { phrases, word } from './phrases.ts';

/** A place at which a beam can start. */
interface Start { readonly thing: Thing; readonly port: string | undefined; readonly beam: Beam | undefined }
const startText = ({ thing, port }: Start): string => (port === undefined ? thing.id : `${thing.id} ${port}`);

/** Places that no beam starts from come first, ports before what only scatters. */
function startsOf(c: Cursor): Start[] {
  const beams = [...c.r?.setup.beams.values() ?? []].filter(b => b.at.line !== c.line);
  const starts = c.things.flatMap((thing): Start[] => {
    const { kind } = thing;
    const ports = kind.light === 'shares' || kind.light === 'diffracts' ? kind.ports : kind.light === 'source' || kind.light === 'scatters' ? [undefined] : [];
    return ports.map(port => ({ thing, port, beam: beams.find(b => b.from === thing && b.port === port) }));
  });
  const rank = ({ thing, port, beam }: Start): number => (beam ? 10 : 0) + (thing.kind.light === 'source' ? 0 : port !== undefined ? (thing.reached > 0 ? 1 : 2) : 5);
  return starts.sort((a, b) => rank(a) - rank(b));
}

/** Where beams can start, the likeliest first. */
export const startNames = (c: Cursor): string[] => startsOf(c).map(startText);

/** Behind `beam NAME`: `from`, and where it can start. */
export function beamOffers(c: Cursor): Offer[] {
  const from = c.tokens.findIndex(t => t.type === 'clause' && t.text === 'from');
  if (from < 0) return c.tokens.length === 2 && c.rest === '' ? [word('from', 'where the beam starts', { text: 'from ' })] : [];
  const starts = startsOf(c);
  return phrases(c, c.tokens[from]!.end, starts.map((s): Offer => ({
    ...thingOffer(s.thing, c, s.beam ? `starts ${s.beam.id} already` : s.thing.kind.article), label: startText(s), text: startText(s),
  })));
}

/** The ports of a thing, behind its name. */
function portOffers(c: Cursor, name: string): Offer[] {
  const thing = c.things.find(t => t.id === name);
  const ports = thing?.kind.light === 'ends' ? ['through'] : thing?.kind.ports ?? [];
  return ports.map(p => word(p, `the light goes on ${p === 'through' ? 'through it' : `where it is ${p}`}`));
}

/** In a line that begins with an arrow. */
export function legOffers(c: Cursor): Offer[] {
  const { tokens } = c;
  const colon = tokens.findIndex(t => t.type === 'colon');
  if (colon >= 0) return lengthOffers(c, tokens[colon]!.end, tokens.slice(colon + 1));
  if (tokens.length === 1) return metOffers(c, nameBefore(c));
  return tokens.length === 2 && (c.rest === '' || c.rest.startsWith(':')) ? portOffers(c, tokens[1]!.text) : [];
}

/** A length of a leg: what it is has to be measured, so that only names of values are offered. */
export function lengthOffers(c: Cursor, from: number, tokens: readonly Token[]): Offer[] {
  return numberOffers(c, from, tokens, { starts: letOffers(c, [LENGTH]), ...unitsOf({ dim: LENGTH, sign: 'positive' }), tolerance: true });
}

/** What light can meet next: what no beam meets yet comes first. Not where it comes from. */
export function metOffers(c: Cursor, before?: string): Offer[] {
  const things = c.things.filter(t => meets(t) && t.id !== before);
  return [...things.filter(t => t.reached === 0), ...things.filter(t => t.reached > 0)].map(t => thingOffer(t, c));
}

/** The thing of the leg above, or where the beam starts. */
function nameBefore({ snapshot, line }: Cursor): string | undefined {
  for (let at = line - 1; at >= 0; at--) {
    const above = snapshot.tree.lines[at]!;
    if (above.kind === 'blank' || above.kind === 'comment') continue;
    const e = above.kind === 'leg' ? above.subject : above.clauses.find(k => k.word.text === 'from')?.value;
    return e?.kind === 'phrase' ? e.words[0]!.text : undefined;
  }
  return undefined;
}

const MOST_WHOLE = 6;

/** Whole beams, from where no beam starts yet: from a laser, from the ports of what it meets. */
export function wholeBeams(c: Cursor): Offer[] {
  const taken = takenNames(c);
  const free = startsOf(c).filter(({ thing: { kind, reached }, port, beam }) => !beam && (kind.light === 'source' || (reached > 0 && (kind.light === 'shares' || port === 'diffracted')))).slice(0, MOST_WHOLE);
  return free.flatMap(s => {
    const pieces = wholeBeam(s, c, taken);
    if (!pieces) return [];
    const { text, snippet } = template(pieces);
    return [{ label: `beam from ${startText(s)} …`, filter: `beam from ${startText(s)}`, kind: 'block', detail: 'a beam with its legs', text, snippet, words: shown(text) }];
  });
}

/** The legs are a guess at what comes next: to a splitter from a laser, else by a mirror, and the object where the reference is taken, to the plate. */
function wholeBeam(start: Start, c: Cursor, taken: Set<string>): Piece[] | undefined {
  const { thing } = start;
  const find = (light: Thing['kind']['light']): Thing | undefined => c.things.find(t => t.kind.light === light && t !== thing && t.reached === 0) ?? c.things.find(t => t.kind.light === light && t !== thing);
  const plate = find('recorded');
  const splitter = thing.kind.light === 'source' ? find('shares') : undefined;
  const names = splitter ? ['raw'] : start.port !== undefined && thing.kind.light === 'diffracts' ? ['image', 'object'] : ['reference', 'object'];
  const name = names.find(n => !taken.has(n)) ?? [...Array(99).keys()].map(n => `${names[0]!}-${n + 2}`).find(n => !taken.has(n));
  if (name === undefined) return undefined;
  taken.add(name);
  const mirror = c.things.find(t => t.kind.word === 'mirror' && t.reached === 0);
  const legs = (splitter ? [splitter] : [mirror, name === 'object' && start.port !== 'diffracted' ? find('scatters') : undefined, plate]).filter(t => t !== undefined);
  if (legs.length === 0) return undefined;
  const placed = c.things.some(t => t.placement !== undefined);
  return ['beam ', { stop: name }, ` from ${startText(start)}`, ...legs.flatMap((t): Piece[] => ['\n  -> ', { stop: t.id }, ...(placed ? [] : [': ', { stop: '300 mm' }])])];
}
