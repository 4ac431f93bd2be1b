/** Readings of light that differ from the plan (`reading-disagrees`) or from each other (`readings-contradict`), in words of their own. */
import { millimetres, percent, plain, show } from '../model/show.ts';
import type { Problem } from '../model/model.ts';
import { LIGHT, parseUnit, POWER } from '../model/units.ts';
import type { Results } from '../results/plan.ts';
import { num, text, type Data } from './check.ts';
import { quoted } from './words.ts';

/** By less than this share nobody sees it: an exposure that is off by 30 % looks the same (common practice). */
const SEEN = 0.3;
/** An image is found on a card to no better than this, m (common practice). */
const SHARP = 0.001;
/** A share of the light, of the splitter, that changes the ratio visibly. */
const POINTS = 0.05;

/** Beyond three standard uncertainties, and so far apart that it would be seen. */
export function lightApart({ light, graph, setup }: Results): Problem[] {
  const powers = light.readPowers.flatMap(({ leg, reading, read, planned }): Problem[] => {
    const [a, b] = [graph.value(read), graph.value(planned)];
    if (a === undefined || !b || Math.abs(a / b - 1) <= SEEN || Math.abs(a - b) <= 3 * Math.hypot(graph.uncertainty(read), graph.uncertainty(planned))) return [];
    return [{ code: 'reading-disagrees', at: reading.at, subject: reading.words, setup: setup.name, data: { of: 'power', words: reading.words, beam: leg.beam.id, read: a, planned: b, difference: a - b } }];
  });
  const wheels = light.wheels.flatMap(({ splitter, read, byWheel }): Problem[] => {
    const apart = read?.difference && graph.value(read.difference);
    if (apart === undefined || Math.abs(apart) <= Math.max(POINTS, 3 * graph.uncertainty(read!.difference!))) return [];
    const share = graph.value(byWheel!)!;
    return [{ code: 'reading-disagrees', at: read!.reading.at, subject: read!.reading.words, setup: setup.name, data: { of: 'wheel', words: read!.reading.words, splitter: splitter.id, read: share, planned: share - apart, difference: apart } }];
  });
  const images = light.images.flatMap(({ hologram, read, offsets }): Problem[] => {
    const [a, b] = [read && graph.value(read.cell), read && graph.value(read.planned)];
    // Nobody sees where an image lies that no plate takes up.
    if (a === undefined || b === undefined || offsets.length === 0 || Math.abs(a - b) <= Math.max(SHARP, 3 * Math.hypot(graph.uncertainty(read!.cell), graph.uncertainty(read!.planned)))) return [];
    const offset = graph.value(offsets[0]!.cell);
    return [{ code: 'reading-disagrees', at: read!.reading.at, subject: read!.reading.words, setup: setup.name, data: { of: 'image', words: read!.reading.words, hologram: hologram.id, read: a, planned: b, difference: a - b, plate: offsets[0]!.plate.id, ...(offset === undefined ? {} : { offset }) } }];
  });
  return [...powers, ...wheels, ...images];
}

/** Undefined for a reading of something else. */
export function lightApartWords(d: Data): string | undefined {
  if (d['of'] === 'power') {
    return `${quoted(d, 'words')} was read as ${show(num(d, 'read'), POWER)}, ${plain(num(d, 'read') / num(d, 'planned'), 2)} times the ${show(Number(num(d, 'planned').toPrecision(3)), POWER)} that are planned. ` +
      'See whether the laser is warm, the splitter stands at its mark and nothing cuts the beam, then read once more; the reading counts meanwhile.';
  }
  if (d['of'] === 'wheel') return `By ${quoted(d, 'words')} ${text(d, 'splitter')} reflects ${percent(num(d, 'read'))}, planned are ${percent(num(d, 'planned'))}. Turn the wheel back, or write the mark that was read into the plan; the reading counts meanwhile.`;
  if (d['of'] === 'image') {
    const offset = num(d, 'offset');
    return `The image of ${text(d, 'hologram')} was seen sharp ${millimetres(Math.abs(num(d, 'difference')))} ${num(d, 'difference') > 0 ? 'farther' : 'nearer'} than planned (${millimetres(num(d, 'planned'))})${d['offset'] === undefined ? '' : `, which puts its middle ${Math.abs(offset) < SHARP ? `into ${text(d, 'plate')}` : `${millimetres(Math.abs(offset))} ${offset > 0 ? 'before' : 'behind'} ${text(d, 'plate')}`}`}. Look whether the same beam lights the hologram as when it was shot, and read once more; the reading counts meanwhile.`;
  }
  return undefined;
}

/** Of readings that say how sure they are, and of others: closer than this share they agree. A head is not held better than that, nor a needle read (common practice). */
const AGREE = { sure: 0.01, unsure: 0.05 };

/** Object beams that were read one by one and all together, and do not add up. */
export function beamsApart({ light, graph, setup }: Results): Problem[] {
  return light.plates.flatMap(({ both }): Problem[] => {
    if (!both) return [];
    const { together, beams, whole, counts, sure } = both;
    const [apart, read] = [graph.value(both.apart), graph.value(together.asRead)];
    if (apart === undefined || read === undefined) return [];
    const least = Math.max(3 * graph.uncertainty(both.apart), AGREE[sure ? 'sure' : 'unsure'] * read);
    if (whole ? Math.abs(apart) <= least : apart >= -least) return [];
    const { reading } = together.read;
    return [{
      code: 'readings-contradict', at: reading.at, subject: reading.words, setup: setup.name,
      data: { of: 'light', words: reading.words, beams: beams.map(b => `“${b.read.reading.words}”`).join(', '), count: beams.length, whole, counts, read, sum: read - apart, unit: together.asRead.unit?.text ?? '', kind: together.read.kind, difference: apart, u: graph.uncertainty(both.apart) },
    }];
  });
}

/** Undefined for readings of something else. */
export function beamsApartWords(d: Data): string | undefined {
  if (d['of'] !== 'light') return undefined;
  const amount = (key: string): string => (d['kind'] === 'bare' ? plain(num(d, key), 3) : show(Number(num(d, key).toPrecision(3)), d['kind'] === 'light' ? LIGHT : POWER, 0, parseUnit(text(d, 'unit'))));
  const beams = text(d, 'beams').replace(/, (?=[^,]*$)/, ' and ');
  const many = num(d, 'count') > 1;
  const found = d['whole'] === true ? `${quoted(d, 'words')} comes to ${amount('read')}, and ${beams} ${many ? 'add up to' : 'comes to'} ${amount('sum')}.`
    : `${beams} ${many ? 'add up to' : 'comes to'} ${amount('sum')}, and ${quoted(d, 'words')}, of which that is a part, only ${amount('read')}.`;
  const counts = d['counts'] === 'beams' ? 'Those of the single beams are surer and count meanwhile' : `The reading of all together ${d['whole'] === true ? 'is surer and ' : ''}counts meanwhile`;
  return `${found} ${counts}; read them once more, each beam with the others covered, date them, and write “moved” where something was moved between.`;
}
