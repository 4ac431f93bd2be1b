/** Readings of lengths as cells: what was read, corrected for what is known of the string or tape. */
import { checkDim, checkSign } from '../../model/literal.ts';
import type { Sign } from '../../model/things/kind.ts';
import type { Reading } from '../../model/model.ts';
import { within } from '../../model/place.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cell, Graph } from '../graph.ts';
import { weighted } from '../rules/lengths.ts';
import type { Values } from '../values.ts';
import { STRETCHED, TAPE, tapeLimit } from '../rules/readings.ts';

/** A reading of a length that counts, or would. */
export interface Taken {
  readonly reading: Reading;
  /** what was read */
  readonly read: Cell;
  /** the length that this tells, after what is known of the instrument */
  readonly length: Cell;
  /** standard uncertainty of this reading alone, without what it shares with others by the same instrument, m */
  readonly own: number;
}

/** Undefined where the value cannot be read; that is reported. `difference`: it is one, of either sign, −1 where it was taken the other way round. */
export function taken(reading: Reading, name: string, words: string, values: Values, difference?: 1 | -1): Taken | undefined {
  const { graph } = values;
  const read = inputOf(reading, name, words, values, difference ? 'any' : 'positive');
  if (!read || read.missing) return undefined;
  const thing = reading.by?.thing;
  const string = thing?.kind.word === 'string' ? thing : undefined;
  const grade = string?.facts.has('class') ? values.words(string, 'class') : undefined;
  let length = difference !== -1 ? read : graph.derive(`${name} turned round`, weighted('turned round', '− reading', [-1]), [read], LENGTH, `${words}, turned round`);
  if (grade) {
    // Each reading has an error of its own: as one shared scale it would fall out of a difference, of which nobody has tested the tape.
    const error = graph.input(`${name}.tape error`, { value: 0, dim: LENGTH, spread: { kind: 'within', amount: tapeLimit(grade, Math.abs(graph.value(read)!)) } }, 'written', `error of ${string!.id}, class ${grade}, in ${words}`, { at: string!.facts.get('class')!.at });
    length = graph.derive(`${name} by ${string!.id}`, TAPE, [length, error], LENGTH, `${words}, with the error of ${string!.id}`);
  }
  const own = graph.uncertainty(length);
  const stretch = string && values.fact(string, 'stretch');
  if (stretch && !stretch.missing && (graph.value(stretch) !== 0 || graph.uncertainty(stretch) > 0)) length = graph.derive(`${name} unstretched`, STRETCHED, [length, stretch], LENGTH, `${words}, with the stretch of ${string.id}`);
  return { reading, read, length, own };
}

function inputOf({ value, valueAt: at }: Reading, name: string, words: string, values: Values, sign: Sign): Cell | undefined {
  if (value?.kind === 'quantity') return values.graph.input(name, value.quantity, 'measured', words, at ? { at } : {});
  if (value?.kind !== 'formula' || !at) return undefined;
  const cell = values.expression(value.expr, at, name, words);
  if (!cell || cell.missing) return cell;
  const q = { dim: cell.dim, value: values.graph.value(cell)!, ...(cell.unit ? { unit: cell.unit } : {}) };
  const wrong = checkDim(value.expr, q, LENGTH) ?? checkSign(value.expr, q, sign);
  if (!wrong) return cell;
  values.report(wrong.problem.code, within(at, wrong.problem.span), name, wrong.problem.data);
  return undefined;
}

/**
 * What several readings of one thing say together: their mean, each weighted by 1/u². An error of the instrument that they share stays shared, and is no reason to
 * weigh one of them less than another: of one instrument u is that of each reading by itself, of several that of each one's mean, its own error with it.
 * One that does not say how sure it is counts as being as sure as the least sure of the others.
 */
export function together(readings: readonly Taken[], name: string, words: string, { graph }: Values): Cell {
  const [only] = readings;
  if (readings.length === 1) return only!.length;
  const worst = readings.reduce((m, t) => Math.max(m, t.own), 0);
  const all = readings.map(t => (t.own > 0 || worst === 0 ? t : { ...t, own: worst, length: asUnsure(t, worst, graph) }));
  const { unit } = only!.read;
  const mean = (of: string, cells: readonly Cell[], us: readonly number[], what: string): Cell =>
    graph.derive(of, weighted('mean of readings', 'mean of the readings, weighted by 1/u²', shares(us)), cells, LENGTH, what, unit ? { unit } : {});
  const exact = all.every(t => graph.uncertainty(t.length) === 0);
  const groups = exact ? [all] : [...new Set(all.map(instrument))].map(by => all.filter(t => instrument(t) === by));
  if (groups.length === 1) return mean(name, all.map(t => t.length), all.map(t => t.own), words);
  const means = groups.map((g, i) => (g.length === 1 ? g[0]!.length : mean(`${name}.by ${i + 1}`, g.map(t => t.length), g.map(t => t.own), `${words} by ${g[0]!.reading.by?.name ?? 'one instrument'}`)));
  return mean(name, means, means.map(cell => graph.uncertainty(cell)), words);
}

/** A reading with the error that it is taken to have. */
function asUnsure({ length, read }: Taken, u: number, graph: Graph): Cell {
  const error = graph.input(`${read.name}.error`, { value: 0, dim: LENGTH, spread: { kind: 'std', amount: u } }, 'assumed', `error of the ${read.words}`, { reason: 'it does not say how sure it is: as sure as the least sure of the other readings' });
  return graph.derive(`${read.name} with its error`, weighted('with its error', 'reading + its error', [1, 1]), [length, error], LENGTH, `${read.words}, with its error`, read.unit ? { unit: read.unit } : {});
}

/** What two readings share an error by: a string that has a page. Others have none. */
const instrument = ({ reading }: Taken): unknown => reading.by?.thing;

/** Weights 1/u², adding up to 1; where u is not known, that of the least sure. */
function shares(us: readonly number[]): number[] {
  const worst = us.reduce((m, u) => Math.max(m, u), 0);
  const raw = us.map(u => (worst === 0 ? 1 : (u > 0 ? u : worst) ** -2));
  const sum = raw.reduce((s, w) => s + w, 0);
  return raw.map(w => w / sum);
}
