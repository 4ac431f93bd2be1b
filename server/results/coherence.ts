/** How a laser's coherence is known: from a coherence length, a linewidth, or the tube of a gas laser. */
import { gainLineAt } from '../optics/coherence/gain-widths.ts';
import type { LineShape } from '../optics/coherence/line-shapes.ts';
import { plausibleModeCounts } from '../optics/coherence/unknown-modes.ts';
import { factPhrase } from '../model/bind/facts.ts';
import type { Thing } from '../model/model.ts';
import { nearest } from '../model/scope.ts';
import { FREQUENCY, LENGTH, NUMBER, parseUnit } from '../model/units.ts';
import type { Cell, Graph, Rule } from './graph.ts';
import { halfContrast, lineBrightness, linewidthFrom, MODE_SPACING, MODES_BRIGHTNESS, REVIVAL } from './rules/coherence.ts';
import type { Values } from './values.ts';

/** Brightness of a part as a rule of its mismatch and some cells of the laser. */
export interface Coherence {
  readonly laser: Thing;
  readonly known: 'coherence length' | 'linewidth' | 'tube length';
  /** takes the mismatch first, then `inputs` */
  readonly rule: Rule;
  readonly inputs: readonly Cell[];
  /** numbers of modes that are plausible, when they are not known */
  readonly modes?: readonly number[];
}

const MM = parseUnit('mm')!;
const MHZ = parseUnit('MHz')!;

/** What is known of a laser's coherence; undefined where nothing is written. Publishes the laser's own results. */
export function coherenceOf(laser: Thing, values: Values, published: Cell[]): Coherence | undefined {
  const { graph } = values;
  const shape = (values.words(laser, 'line shape') ?? 'gaussian') as LineShape;
  const length = values.fact(laser, 'coherence length');
  if (length) {
    const contrast = values.fact(laser, 'coherence contrast');
    if (!contrast) return undefined;
    const width = graph.derive(`${laser.id}.linewidth`, linewidthFrom(shape), [length, contrast], FREQUENCY, `linewidth of ${laser.id}`, { unit: MHZ });
    published.push(width);
    return { laser, known: 'coherence length', rule: lineBrightness(shape), inputs: [width] };
  }
  const width = values.fact(laser, 'linewidth');
  if (width) {
    published.push(graph.derive(`${laser.id}.coherence length`, halfContrast(shape), [width], LENGTH, `coherence length of ${laser.id}`, { unit: MM }));
    return { laser, known: 'linewidth', rule: lineBrightness(shape), inputs: [width] };
  }
  const tube = values.fact(laser, 'tube length');
  if (!tube) return undefined;
  const revival = graph.derive(`${laser.id}.revival distance`, REVIVAL, [tube], LENGTH, `revival distance of ${laser.id}`, { unit: MM });
  published.push(graph.derive(`${laser.id}.mode spacing`, MODE_SPACING, [tube], FREQUENCY, `mode spacing of ${laser.id}`, { unit: MHZ }), revival);
  const known = laser.facts.get('modes')?.value.kind === 'words' ? undefined : values.fact(laser, 'modes');
  if (known) return { laser, known: 'tube length', rule: MODES_BRIGHTNESS, inputs: [revival, known] };
  return tube.missing ? undefined : unknownModes(laser, values, revival);
}

/** The facts of which each by itself tells the coherence. */
const TELLS = ['coherence length', 'linewidth', 'tube length'] as const;
const ABOUT: readonly string[] = [...TELLS, 'coherence contrast'];

/** Why nothing is known of a laser's coherence: what stands there about it and could not be read has a finding of its own, so it is not said to be missing. */
export function coherenceUntold(laser: Thing, values: Values): string {
  const asked = TELLS.map(f => values.fact(laser, f)?.missing).find(m => m !== undefined);
  if (asked) return asked.why;
  // Only formulas can fail later, and the cells of all formulas are there already.
  const isRead = (fact: string): boolean => { const kind = laser.facts.get(fact)?.value.kind; return kind === 'formula' ? values.fact(laser, fact) !== undefined : kind !== undefined; };
  const isUnread = (phrase: string): boolean => {
    const meant = phrase === '' ? undefined : nearest(phrase, ABOUT);
    return meant !== undefined && (meant === phrase ? !isRead(meant) : !laser.facts.has(phrase));
  };
  const [own, items] = [laser.node, laser.item?.node].map(node => (node?.children ?? []).map(c => factPhrase(c.line) ?? '').filter(isUnread));
  // By its words and not by its line, which moves when something is written above.
  if (own!.length > 0) return `what is written about the coherence of ${laser.id} could not be read (${own!.map(phrase => `“${phrase}”`).join(' and ')})`;
  if (items!.length > 0) return `what ${laser.item!.id} says about the coherence of ${laser.id} could not be read`;
  if (laser.node.line.equals && !laser.item) return `the item that ${laser.id} is was not found, and nothing else is written about its coherence`;
  return `nothing is written about the coherence of ${laser.id}`;
}

function unknownModes(laser: Thing, values: Values, revival: Cell): Coherence | undefined {
  const { graph } = values;
  const written = values.fact(laser, 'gain width');
  const wavelength = values.fact(laser, 'wavelength');
  const line = wavelength && !wavelength.missing ? gainLineAt(graph.value(wavelength)!) : undefined;
  const gain = written && !written.missing ? reach(written, graph) : line?.plausible;
  const name = `${laser.id}.modes`;
  const words = `modes of ${laser.id}`;
  if (!gain) {
    // What is written and cannot be read has its own finding.
    const lost = (['wavelength', 'gain width', 'modes'] as const).some(f => values.isWritten(laser, f) && !values.fact(laser, f));
    const cell = values.missing(name, NUMBER, words, { code: lost ? 'unreadable' : 'value-missing', why: `${laser.id} has neither a number of modes nor a gain width, and its wavelength is no gas line that is known`, at: laser.at });
    return { laser, known: 'tube length', rule: MODES_BRIGHTNESS, inputs: [revival, cell] };
  }
  const { fewest, most } = plausibleModeCounts(gain, graph.value(revival)!);
  const counts = Array.from({ length: Math.min(most - fewest + 1, 50) }, (_, i) => fewest + i);
  const middle = counts[Math.floor((counts.length - 1) / 2)]!;
  const cell = graph.input(name, { value: middle, dim: NUMBER, ...(counts.length > 1 ? { spread: { kind: 'one of', values: counts } } : {}) }, 'assumed', words, {
    reason: `${fewest === most ? fewest : `${fewest} to ${most}`} modes fit under the gain of ${line ? `a ${line.laser} tube` : 'the tube'} of that length; which of them run is not known`,
  });
  return { laser, known: 'tube length', rule: MODES_BRIGHTNESS, inputs: [revival, cell], modes: counts };
}

/** The values that a cell may well have: all within its bounds, or within two standard uncertainties. */
function reach(cell: Cell, graph: Graph): { from: number; to: number } {
  const value = graph.value(cell)!;
  if (cell.spread?.kind === 'factor') return { from: value / cell.spread.amount, to: value * cell.spread.amount };
  const give = cell.spread?.kind === 'within' ? cell.spread.amount : 2 * graph.uncertainty(cell);
  return { from: value - give, to: value + give };
}
