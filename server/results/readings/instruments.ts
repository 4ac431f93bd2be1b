/** Readings of lengths as cells: what was read, corrected for what is known of the string or tape. */
import { checkDim } from '../../model/literal.ts';
import type { Reading } from '../../model/model.ts';
import { within } from '../../model/place.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
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

/** Undefined where the value cannot be read; that is reported. `sign` is −1 where the difference was taken the other way round. */
export function taken(reading: Reading, name: string, words: string, values: Values, sign: 1 | -1 = 1): Taken | undefined {
  const { graph } = values;
  const read = inputOf(reading, name, words, values);
  if (!read || read.missing) return undefined;
  const thing = reading.by?.thing;
  const string = thing?.kind.word === 'string' ? thing : undefined;
  const grade = string?.facts.has('class') ? values.words(string, 'class') : undefined;
  let length = sign === 1 ? read : graph.derive(`${name} turned round`, weighted('turned round', '− reading', [-1]), [read], LENGTH, `${words}, turned round`);
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

function inputOf({ value, valueAt: at }: Reading, name: string, words: string, values: Values): Cell | undefined {
  if (value?.kind === 'quantity') return values.graph.input(name, value.quantity, 'measured', words, at ? { at } : {});
  if (value?.kind !== 'formula' || !at) return undefined;
  const cell = values.expression(value.expr, at, name, words);
  const wrong = cell && !cell.missing && checkDim(value.expr, { dim: cell.dim, value: values.graph.value(cell)!, ...(cell.unit ? { unit: cell.unit } : {}) }, LENGTH);
  if (!wrong) return cell;
  values.report(wrong.problem.code, within(at, wrong.problem.span), name, wrong.problem.data);
  return undefined;
}

/**
 * What several readings of one thing say together: their mean, each weighted by 1/u² (JCGM 100:2008, F.1.2.4). Errors of the instrument that they share stay shared.
 * One that does not say how sure it is weighs as the least sure of the others.
 */
export function together(all: readonly Taken[], name: string, words: string, values: Values): Cell {
  const [only] = all;
  if (all.length === 1) return only!.length;
  const worst = all.reduce((m, t) => Math.max(m, t.own), 0);
  const raw = all.map(t => (worst === 0 ? 1 : (t.own > 0 ? t.own : worst) ** -2));
  const sum = raw.reduce((s, w) => s + w, 0);
  const { unit } = only!.read;
  return values.graph.derive(name, weighted('mean of readings', 'mean of the readings, weighted by 1/u²', raw.map(w => w / sum)), all.map(t => t.length), LENGTH, words, unit ? { unit } : {});
}
