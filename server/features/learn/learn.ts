/** What shots teach: the exposure that a stock needs, what its layer loses in processing, and how far the light of a laser keeps step, each with how sure so few shots can make it. Plain data. */
import type { Edit } from '../../model/edits.ts';
import type { Thing } from '../../model/model.ts';
import { itemName } from '../../model/overrides.ts';
import { standardUncertainty } from '../../model/quantity.ts';
import { EXPOSURE, LENGTH, NUMBER, parseUnit, type Dim, type Unit } from '../../model/units.ts';
import { colourFineness, finenessOf, laserOf, ofCoherence, ofSensitivity, ofShrinkage, type Evidence } from './evidence.ts';
import { fitted } from './fit.ts';
import { lineFor, type Line } from './line.ts';
import type { Shot } from './shots.ts';

export type Taught = 'sensitivity' | 'shrinkage' | 'coherence length';

export interface Lesson {
  readonly about: Taught;
  /** `lab.fine-grain`, `lab.red-12` */
  readonly of: string;
  /** the box, where shots name one; of several that agree, all of them */
  readonly batches: readonly string[];
  readonly dim: Dim;
  readonly unit: Unit | undefined;
  /** SI; undefined where only limits are known */
  readonly value: number | undefined;
  /** the 95 % band, or what is known of it: at least, at most */
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** a band by a factor, where it is one */
  readonly factor: number | undefined;
  readonly evidence: readonly Evidence[];
  /** those that say something else than the rest */
  readonly against: readonly Evidence[];
  /** what it cannot tell, sentences */
  readonly limits: readonly string[];
  /** what could be written into the inventory, and how */
  readonly line: Line | undefined;
}

export interface Idle { readonly shot: Shot; readonly about: Taught; readonly why: string }

export interface Learned {
  readonly shots: number;
  readonly lessons: readonly Lesson[];
  /** shots that tell nothing of a stock's exposure, with the reason */
  readonly idle: readonly Idle[];
}

export function learn(shots: readonly Shot[]): Learned {
  const idle: Idle[] = [];
  const gather = (about: Taught, of: (s: Shot) => Evidence | string): Evidence[] => shots.flatMap(shot => {
    const found = of(shot);
    if (typeof found !== 'string') return [found];
    if (about === 'sensitivity') idle.push({ shot, about, why: found });
    return [];
  });
  const stocked = (about: Taught, all: readonly Evidence[], lesson: (of: Group) => Lesson): Lesson[] =>
    groups(all.filter(e => e.shot.plate), e => e.shot.plate!).flatMap(g => perBatch(about, g, lesson));
  return {
    shots: shots.length, idle,
    lessons: [
      ...stocked('sensitivity', gather('sensitivity', s => (s.plate ? ofSensitivity(s) : 'its setup has several plates, and it does not say which')), byFactor),
      ...stocked('shrinkage', gather('shrinkage', ofShrinkage), byPoints),
      ...groups(gather('coherence length', ofCoherence).filter(e => laserOf(e.shot)), e => laserOf(e.shot)!).map(coherence),
    ],
  };
}

interface Group { readonly thing: Thing; readonly of: string; readonly batches: readonly string[]; readonly evidence: readonly Evidence[]; /** not the one whose line is written */ readonly older?: boolean }

/** By the item of the inventory that a thing is, whatever page draws on it. */
function groups(all: readonly Evidence[], thingOf: (e: Evidence) => Thing): Group[] {
  const found = new Map<string, { thing: Thing; of: string; evidence: Evidence[] }>();
  for (const e of all) {
    const thing = thingOf(e);
    const owner = thing.item ?? thing;
    const key = `${owner.at.uri} ${owner.at.line}`;
    const group = found.get(key) ?? { thing: owner, of: itemName(thing) ?? `${thing.id} of “${e.shot.setup.name}”`, evidence: [] };
    found.set(key, group);
    group.evidence.push(e);
  }
  return [...found.values()].map(g => ({ ...g, batches: [...new Set(g.evidence.flatMap(e => e.shot.batch ?? []))] }));
}

/** Boxes that agree are one; of boxes that differ each has its own, and the newest is what is written. */
function perBatch(about: Taught, group: Group, lesson: (of: Group) => Lesson): Lesson[] {
  const named = [...new Set(group.evidence.map(e => e.shot.batch ?? ''))];
  if (named.length < 2) return [lesson(group)];
  const parts = named.map((batch): Group => ({ ...group, batches: batch === '' ? [] : [batch], evidence: group.evidence.filter(e => (e.shot.batch ?? '') === batch) })).sort((a, b) => (lastDay(a) < lastDay(b) ? -1 : 1));
  const each = parts.map((p, i) => lesson({ ...p, older: i < parts.length - 1 }));
  const apart = each.some((a, i) => each.slice(i + 1).some(b => (a.low ?? -Infinity) > (b.high ?? Infinity) || (b.low ?? -Infinity) > (a.high ?? Infinity)));
  // What only contradicts itself between boxes is a difference of the boxes.
  const whole = lesson(group);
  if (!apart && (whole.against.length === 0 || each.some(l => l.against.length > 0))) return [whole];
  return each.map((l, i) => ({ ...l, limits: [...l.limits, i < each.length - 1 ? `Its boxes differ by more than one shot from the next: each has its own ${about}.` : `Its boxes differ by more than one shot from the next: each has its own ${about}, and the line is that of the newest.`] }));
}
const lastDay = (g: Group): string => g.evidence.reduce((d, e) => ((e.shot.on ?? '') > d ? e.shot.on! : d), '');

const FEW: Readonly<Record<number, string>> = {
  1: 'One shot: it does not tell how plates of this stock differ from one another.',
  2: 'Two shots: how plates differ is told by no more than the difference of the two.',
};

/** A number of which only factors are known: by its logarithm. */
function byFactor({ thing, of, batches, evidence, older }: Group): Lesson {
  const about = evidence.filter(e => e.kind === 'about');
  // An exposure that is off by less than nobody sees is none that was too short.
  const fine = (e: Evidence): number => Math.exp(2 * e.u + finenessOf(e));
  const floors = evidence.filter(e => e.kind === 'above').map(e => ({ e, at: e.value / Math.exp(2 * e.u) }));
  const ceilings = evidence.filter(e => e.kind === 'below').map(e => ({ e, at: e.value * Math.exp(2 * e.u) }));
  const head = { about: 'sensitivity', of, batches, dim: EXPOSURE, unit: writtenUnit(thing, 'sensitivity') ?? parseUnit('µJ/cm²'), evidence } as const;
  if (about.length === 0) {
    const [low, high] = [floors.length > 0 ? Math.max(...floors.map(f => f.at)) : undefined, ceilings.length > 0 ? Math.min(...ceilings.map(c => c.at)) : undefined];
    return bounds({ ...head, low, high, against: low !== undefined && high !== undefined && low > high ? evidence : [], thing, phrase: 'sensitivity', older });
  }
  const fit = fitted(about.map(e => ({ x: Math.log(e.value), u: e.u })), Math.max(...about.map(finenessOf)));
  const [value, factor] = [Math.exp(fit.mean), Math.exp(fit.give)];
  const [low, high] = [value / factor, value * factor];
  const against = [...floors.filter(f => f.at > high).map(f => f.e), ...ceilings.filter(c => c.at < low).map(c => c.e), ...(about.length > 1 ? about.filter(e => about.some(x => e.value / x.value > fine(e) * fine(x) || x.value / e.value > fine(e) * fine(x))) : [])];
  return { ...head, value, low, high, factor, against, limits: [...few(about.length), ...(against.length > 0 ? [CONTRADICTED] : surer(thing, 'sensitivity', fit.give))], line: older || against.length > 0 ? undefined : lineFor(thing, 'sensitivity', { value, factor, unit: head.unit }) };
}
const CONTRADICTED = 'These shots do not go together: something else than this number was otherwise in one of them, such as the developer, the meter or the plate.';
/** Said where a value that is written has a narrower band than so few shots can give it. */
export const SURER = 'What stands there is surer than so few shots can make it: shoot more before it is written.';

/** @param give half of the band that was found, as a share of its value */
function surer(thing: Thing, phrase: string, give: number): string[] {
  const value = thing.facts.get(phrase)?.value;
  if (value?.kind !== 'quantity' || value.quantity.value === 0) return [];
  const { value: v, spread } = value.quantity;
  const own = spread?.kind === 'factor' ? Math.log(spread.amount) : (2 * standardUncertainty(v, spread)) / Math.abs(v);
  // A value without a give or take says nothing of how sure it is.
  return own > 0 && give > MUCH * own ? [SURER] : [];
}
/** Bands that differ by less are as good as each other. */
const MUCH = 1.25;
const few = (n: number): string[] => (FEW[n] === undefined ? [] : [FEW[n]]);

/** A share, by itself. */
function byPoints({ thing, of, batches, evidence, older }: Group): Lesson {
  const fit = fitted(evidence.map(e => ({ x: e.value, u: e.u })), Math.max(...evidence.map(colourFineness)));
  const [value, low, high] = [fit.mean, fit.mean - fit.give, fit.mean + fit.give];
  const limits = [...few(evidence.length), ...surer(thing, 'shrinkage', fit.give / Math.abs(fit.mean || 1)), 'A colour drifts with the moisture of the air, by some nanometres for days.'];
  return { about: 'shrinkage', of, batches, dim: NUMBER, unit: parseUnit('%'), value, low, high, factor: undefined, evidence, against: [], limits, line: older ? undefined : lineFor(thing, 'shrinkage', { value, give: fit.give, unit: parseUnit('%') }) };
}
function coherence({ thing, of, evidence }: Group): Lesson {
  const [above, below] = [evidence.filter(e => e.kind === 'above'), evidence.filter(e => e.kind === 'below')];
  const [low, high] = [above.length > 0 ? Math.max(...above.map(e => e.value)) : undefined, below.length > 0 ? Math.min(...below.map(e => e.value)) : undefined];
  const against = low !== undefined && high !== undefined && low > high ? evidence : [];
  return bounds({ about: 'coherence length', of, batches: [], dim: LENGTH, unit: writtenUnit(thing, 'coherence length') ?? parseUnit('mm'), evidence, low, high, against, thing, phrase: 'coherence length', older: undefined });
}

/** Where nothing says how large it is, only what it is more or less than. */
function bounds({ thing, phrase, older, ...known }: Omit<Lesson, 'value' | 'factor' | 'limits' | 'line'> & { readonly thing: Thing; readonly phrase: string; readonly older: boolean | undefined }): Lesson {
  const { low, high, against, evidence, about } = known;
  const other = about === 'coherence length' && evidence.some(e => e.kind === 'below') ? ['A plate is dull at the back for other reasons as well; this holds if it was the laser.'] : [];
  if (against.length > 0) return { ...known, low: undefined, high: undefined, value: undefined, factor: undefined, limits: [CONTRADICTED, ...other], line: undefined };
  if (low === undefined || high === undefined) return { ...known, value: undefined, factor: undefined, limits: [`${evidence.length === 1 ? 'One shot' : 'These shots'} ${evidence.length === 1 ? 'says' : 'say'} at ${high === undefined ? 'least' : 'most'} only.`, ...other], line: undefined };
  const [value, factor] = [Math.sqrt(low * high), Math.sqrt(high / low)];
  // A tube tells of revivals, too, which one number cannot.
  const tube = about === 'coherence length' && thing.facts.has('tube length');
  return { ...known, value, factor, limits: [...other, ...(tube ? ['Its tube length tells more than one number, and a coherence length beside it would count instead: count its modes first.'] : surer(thing, phrase, Math.log(factor)))], line: older || tube ? undefined : lineFor(thing, phrase, { value, factor, unit: known.unit }) };
}

function writtenUnit(thing: Thing, phrase: string): Unit | undefined {
  const value = thing.facts.get(phrase)?.value;
  return value?.kind === 'quantity' ? value.quantity.unit : undefined;
}

/** The edits of the lines that can be written. */
export const editsOf = ({ lessons }: Learned): readonly Edit[] => lessons.flatMap(l => l.line?.edit ?? []);
