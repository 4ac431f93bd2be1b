/** The one vocabulary: all kinds of things, and the facts of a setup itself. */
import { ANGLE, EXPOSURE, LENGTH, NUMBER, POWER, TIME, TEMPERATURE } from '../units.ts';
import { exposure } from './exposure.ts';
import { hologram } from './hologram.ts';
import { choice, COMMON, date, quantity, ratio, sizes, text, type Assumed, type Fact, type Kind } from './kind.ts';
import { laser } from './laser.ts';
import { collimator, lens } from './lens.ts';
import { TABLE_MATERIALS } from './materials.ts';
import { mirror } from './mirror.ts';
import { object } from './object.ts';
import { plate } from './plate.ts';
import { halfWavePlate, polarizer } from './polarization.ts';
import { lamp, meter, room, screen, string, viewer, wall } from './room.ts';
import { diffuser, groundGlass } from './screens.ts';
import { splitter } from './splitter.ts';
import { spreader } from './spreader.ts';
import { aperture, attenuator, beamStop, blackCard, fillCard, shutter, slit } from './stops.ts';

export const KINDS: readonly Kind[] = [
  laser, shutter, splitter, mirror, spreader, lens, collimator, polarizer, halfWavePlate, diffuser, groundGlass, fillCard, blackCard, beamStop, attenuator,
  aperture, slit, screen, object, plate, exposure, hologram, lamp, viewer, wall, room, meter, string,
];
const byWord = new Map(KINDS.map(k => [k.word, k]));
/** First words of the kinds that have two. */
const firstOfTwo = new Set(KINDS.filter(k => k.word.includes(' ')).map(k => k.word.split(' ')[0]!));

/** The kind whose words open a statement: `half-wave plate HW1` gives the kind and the number of its words. */
export function kindOf(first: string, second?: string): { kind: Kind; length: number } | undefined {
  const two = second !== undefined && firstOfTwo.has(first) ? byWord.get(`${first} ${second}`) : undefined;
  if (two) return { kind: two, length: 2 };
  const one = byWord.get(first);
  return one && { kind: one, length: 1 };
}
export const kindNamed = (word: string): Kind | undefined => byWord.get(word);

/** Facts of the setup itself. */
export const SETUP_FACTS: readonly Fact[] = [
  choice('hologram', ['transmission', 'reflection', 'rainbow'], 'What is to be made.', { used: true }),
  sizes('table', [2], 'Length and width of the table.', { used: true, usual: ['1200 x 900 mm', '900 x 600 mm', '2400 x 1200 mm'] }),
  choice('table material', TABLE_MATERIALS, 'What the top of the table is made of; decides how much warmth moves what stands on it.', { used: true, usual: ['steel', 'granite', 'aluminium'] }),
  quantity('hole spacing', LENGTH, 'Distance between the holes of the table.', { used: true, usual: ['25 mm', '1 in'] }),
  quantity('beam height', LENGTH, 'Height of the beams above the table.', { used: true, usual: ['120 mm', '150 mm', '200 mm'] }),
  ratio('beam ratio', 'Reference to object light at the plate, when it is known.', { used: true, usual: ['4:1', '2:1', '1:1'] }),
  quantity('exposure', TIME, 'How long the shutter is open.', { used: true, usual: ['20 s', '5 s', '60 s'] }),
  quantity('settle', TIME, 'How long the room rests before the shutter opens.', { usual: ['3 min', '90 s', '15 min'] }),
  quantity('temperature', TEMPERATURE, 'Temperature of the room.', { sign: 'any', usual: ['20 °C ± 0.5 K'] }),
  text('note', 'Anything worth keeping.'),
  text('workshop', 'Whose setup it is.', ['"Saltmarsh workshop"']),
  date('date', 'When it was set up.'),
];

/** Facts of a shot and of its processing, in the words of the trade. */
export const SHOT_FACTS: readonly Fact[] = [
  text('outcome', 'What was seen.', ['"bright"', '"dull at the back"', '"nothing at all"']), text('note', 'Anything worth keeping.'), text('batch', 'Box of the plate.', ['"box 3"']),
  quantity('exposure', TIME, 'How long the shutter was open.', { usual: ['20 s'] }), quantity('settle', TIME, 'How long the room rested.', { usual: ['3 min'] }),
  quantity('temperature', TEMPERATURE, 'Of the room.', { sign: 'any', usual: ['20 °C ± 0.5 K'] }),
  quantity('humidity', NUMBER, 'Relative humidity.', { sign: 'share', usual: ['50% ± 5 points'] }), quantity('power', POWER, 'Power of the laser.', { usual: ['12 mW ± 3%'] }),
  quantity('dose', EXPOSURE, 'Exposure as energy.', { usual: ['40 µJ/cm² ± 10%'] }), ratio('beam ratio', 'As metered.', { usual: ['4:1'] }),
  quantity('best exposure', TIME, 'Of a test strip, the exposure that came out best; without a give or take it counts to a quarter stop, the half of a usual step.', { usual: ['20 s', '20 s ×÷ 1.2'] }),
  quantity('replay wavelength', LENGTH, 'Colour in which a reflection hologram is brightest, lit from where its reference came.', { usual: ['590 nm ± 5 nm'] }),
  text('plate', 'Which plate.', ['"box 3, number 5"']), date('date', 'When.'), quantity('replay angle', ANGLE, 'At which it was looked at.', { sign: 'any', usual: ['45°'] }),
  quantity('brightness', NUMBER, 'Share of the light that goes into the image.', { sign: 'share', usual: ['18% ×÷ 1.3'] }),
];
export const PROCESS_FACTS: readonly Fact[] = [
  text('developer', 'Name of the developer.', ['"the usual"']), text('bleach', 'Name of the bleach.', ['"the usual"']), text('wash', 'How it was washed.', ['"running, 10 min"']), text('drying', 'How it was dried.', ['"upright, overnight"']), text('note', 'Anything worth keeping.'),
  quantity('develop', TIME, 'Time in the developer.', { usual: ['3 min'] }), quantity('bleaching', TIME, 'Time in the bleach.', { usual: ['2 min'] }), quantity('temperature', TEMPERATURE, 'Of the baths.', { sign: 'any', usual: ['20 °C ± 0.5 K'] }),
  quantity('rinse', TIME, 'Time in the rinse.', { usual: ['2 min'] }), text('pre-swell', 'Bath before the exposure.'), text('shots', 'Which shots were processed together.', ['"5, 6"']),
  quantity('density', NUMBER, 'Density that was reached.', { sign: 'not negative', usual: ['1.9 ± 0.2'] }),
];

const withCommon = new Map<Kind, readonly Fact[]>(KINDS.map(k => [k, [...k.facts, ...COMMON]]));
/** All facts that a kind takes, those common to all things among them. */
export const factsOf = (kind: Kind): readonly Fact[] => withCommon.get(kind)!;

const indexes = new WeakMap<readonly Fact[], Map<string, Fact>>();
/** Facts by their phrase; made once for each list. */
export function factIndex(facts: readonly Fact[]): ReadonlyMap<string, Fact> {
  let m = indexes.get(facts);
  if (!m) indexes.set(facts, m = new Map(facts.map(f => [f.phrase, f])));
  return m;
}

/** What is assumed of a fact that is not written. `word` gives the choice of words that stands for another fact of the same thing. */
export function assumedFor(fact: Fact, word: (phrase: string) => string | undefined): Assumed | undefined {
  const by = fact.assumedBy && word(fact.assumedBy.phrase);
  return (by === undefined ? undefined : fact.assumedBy!.of[by]) ?? fact.assumed;
}

const BLOCKS: readonly (readonly [string, readonly Fact[]])[] = [...KINDS.map(k => [k.article, k.facts] as const), ['a setup', SETUP_FACTS], ['a shot', SHOT_FACTS], ['a process', PROCESS_FACTS]];
/** What takes a fact of that phrase, each with its article: a word that one kind doesn't take belongs to another. */
export const takersOf = (phrase: string): string[] => BLOCKS.filter(([, facts]) => factIndex(facts).has(phrase)).map(([article]) => article);
