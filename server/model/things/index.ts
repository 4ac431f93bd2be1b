/** The one vocabulary: all kinds of things, and the facts of a setup itself. */
import { ANGLE, EXPOSURE, LENGTH, NUMBER, POWER, TIME, TEMPERATURE } from '../units.ts';
import { hologram } from './hologram.ts';
import { choice, COMMON, date, quantity, ratio, sizes, text, type Fact, type Kind } from './kind.ts';
import { laser } from './laser.ts';
import { collimator, lens } from './lens.ts';
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
  aperture, slit, screen, object, plate, hologram, lamp, viewer, wall, room, meter, string,
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
  sizes('table', [2], 'Length and width of the table.'),
  quantity('hole spacing', LENGTH, 'Distance between the holes of the table.'),
  quantity('beam height', LENGTH, 'Height of the beams above the table.', { used: true }),
  ratio('beam ratio', 'Reference to object light at the plate, when it is known.'),
  quantity('exposure', TIME, 'How long the shutter is open.'),
  quantity('settle', TIME, 'How long the room rests before the shutter opens.'),
  quantity('temperature', TEMPERATURE, 'Temperature of the room.', { sign: 'any' }),
  text('note', 'Anything worth keeping.'),
  text('workshop', 'Whose setup it is.'),
  date('date', 'When it was set up.'),
];

/** Facts of a shot and of its processing, in the words of the trade. */
export const SHOT_FACTS: readonly Fact[] = [
  text('outcome', 'What was seen.'), text('note', 'Anything worth keeping.'), text('batch', 'Box of the plate.'),
  quantity('exposure', TIME, 'How long the shutter was open.'), quantity('settle', TIME, 'How long the room rested.'), quantity('temperature', TEMPERATURE, 'Of the room.', { sign: 'any' }),
  quantity('humidity', NUMBER, 'Relative humidity.', { sign: 'share' }), quantity('power', POWER, 'Power of the laser.'), quantity('dose', EXPOSURE, 'Exposure as energy.'), ratio('beam ratio', 'As metered.'),
  text('plate', 'Which plate.'), date('date', 'When.'), quantity('replay angle', ANGLE, 'At which it was looked at.', { sign: 'any' }), quantity('brightness', NUMBER, 'Share of the light that goes into the image.'),
];
export const PROCESS_FACTS: readonly Fact[] = [
  text('developer', 'Name of the developer.'), text('bleach', 'Name of the bleach.'), text('wash', 'How it was washed.'), text('drying', 'How it was dried.'), text('note', 'Anything worth keeping.'),
  quantity('develop', TIME, 'Time in the developer.'), quantity('bleaching', TIME, 'Time in the bleach.'), quantity('temperature', TEMPERATURE, 'Of the baths.', { sign: 'any' }), quantity('rinse', TIME, 'Time in the rinse.'),
  text('pre-swell', 'Bath before the exposure.'), text('shots', 'Which shots were processed together.'), quantity('density', NUMBER, 'Density that was reached.'),
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
