/** Values of placements as cells: points, distances, angles. What is wrong with them is reported at their place. */
import type { Expr, Span } from '../../../grammar/tree.ts';
import { checkDim, checkSign, describe, isLiteral, readNumber, readQuantity, readSpread, readUnit, type ValueProblem } from '../../model/literal.ts';
import type { Place, Thing, Written } from '../../model/model.ts';
import { within } from '../../model/place.ts';
import type { Quantity, Spread } from '../../model/quantity.ts';
import type { Sign } from '../../model/things/kind.ts';
import { LENGTH, NUMBER, parseUnit, type Dim, type Unit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { weighted } from '../rules/lengths.ts';
import type { Values } from '../values.ts';

const MM = parseUnit('mm')!;
/** Height of the beams when nothing is written; only differences of height matter to lengths. */
const BEAM_HEIGHT = 0.12;
const AXES = ['x', 'y', 'z'] as const;

/** Where something stands: x and y in the plan and the height, as three cells. */
export type Position = readonly [Cell, Cell, Cell];

export class PlaceValues {
  private height: Cell | undefined;

  constructor(readonly values: Values) {}

  /** A distance or an angle; undefined where it has a problem, which is reported. What is written `?` is a cell without a value. */
  value(written: Written, thing: Thing, what: string, words: string, dim: Dim, sign: Sign = 'any'): Cell | undefined {
    const { expr, at } = written;
    const { graph } = this.values;
    if (expr.kind === 'unknown') return this.values.asked(expr, written, at, `${thing.id}.${what}`, words, { dim, sign });
    const cell = this.values.expression(expr, at, `${thing.id}.${what}`, words);
    if (!cell || cell.missing) return cell;
    const value = graph.value(cell)!;
    const wrong = checkDim(expr, { dim: cell.dim, value, ...(cell.unit ? { unit: cell.unit } : {}) }, dim) ?? checkSign(expr, { value, dim }, sign);
    if (!wrong) return cell;
    this.problem(wrong.problem, at, thing);
    return undefined;
  }

  /** `(x, y) mm`, `(x, y, z) mm`, the whole or each number with its `±`; undefined where it has a problem, which is reported. */
  point(written: Written, thing: Thing): Position | undefined {
    const { expr: e, at, line } = written;
    if (e.kind === 'unknown') return this.unknown(e, written, thing);
    const group = e.kind === 'tolerance' ? e.value : e;
    if (group.kind !== 'group' || group.items.length < 2 || group.items.length > 3) {
      this.values.report('wrong-value', at, thing.id, { found: describe(e), wanted: 'a place such as (100, 200) mm' });
      return undefined;
    }
    const unit = group.unit && readUnit(group.unit);
    const wrong = unit && ('problem' in unit ? unit : checkDim(group.unit, { dim: unit.ok.dim, unit: unit.ok }, LENGTH));
    if (wrong) { this.problem(wrong.problem, at, thing); return undefined; }
    if (!unit && group.items.every(unitless)) {
      this.values.report('missing-unit', within(at, group), thing.id, { wanted: 'a place', units: 'mm, cm, m', written: line.slice(group.start, group.end), suggestion: 'mm' });
      return undefined;
    }
    const spread = e.kind === 'tolerance' ? this.give(e, at, thing) : undefined;
    if (e.kind === 'tolerance' && !spread) return undefined;
    const cells: Cell[] = [];
    for (const [i, item] of group.items.entries()) {
      const cell = this.coordinate(item, AXES[i]!, { at, thing, unit: (unit as { ok: Unit } | undefined)?.ok, spread });
      if (!cell) return undefined;
      cells.push(cell);
    }
    if (cells.length < 3) cells.push(this.beamHeight());
    return [cells[0]!, cells[1]!, cells[2]!];
  }

  /** A place that is to be found: on the table, at the height of the beams. Its limits are places too: `? from (100, 200) mm to (500, 600) mm by 25 mm`. */
  private unknown({ unit: word }: Expr & { kind: 'unknown' }, { from, to, by, at }: Written, thing: Thing): Position {
    const unit = word && readUnit(word);
    const corner = (e: Expr, i: 0 | 1): Cell | undefined => {
      const shared = e.kind === 'group' && e.items.length > 1 && e.unit ? readUnit(e.unit) : undefined;
      const item = e.kind === 'group' && e.items.length > 1 ? e.items[i]! : e;
      const cell = this.values.expression(item, at, `${thing.id}.${AXES[i]}~`, `${AXES[i]} of ${thing.id}`);
      return cell?.dim === NUMBER && shared && 'ok' in shared ? this.values.graph.derive(`${cell.name} in ${shared.ok.text}`, weighted('in a unit', `a · ${shared.ok.text}`, [shared.ok.factor]), [cell], LENGTH, cell.words) : cell;
    };
    const [x, y] = ([0, 1] as const).map(i => this.values.graph.open({
      name: `${thing.id}.${AXES[i]}`, dim: LENGTH, words: `${AXES[i]} of ${thing.id}`, at, unit: unit && 'ok' in unit ? unit.ok : MM, part: AXES[i], sign: 'any',
      limits: () => this.values.limits({ from, to, by }, e => corner(e, i)),
    }));
    return [x!, y!, this.beamHeight()];
  }

  /** The place of a thing that is not known, with the reason. */
  missing(thing: Thing, why: NonNullable<Cell['missing']>): Position {
    const [x, y, z] = AXES.map(a => this.values.missing(`${thing.id}.${a}`, LENGTH, `${a} of ${thing.id}`, why));
    return [x!, y!, z!];
  }

  problem(p: ValueProblem, at: Place, thing: Thing): void {
    this.values.report(p.code, within(at, p.span), thing.id, p.data);
  }

  private coordinate(item: Expr, axis: string, { at, thing, unit, spread }: { at: Place; thing: Thing; unit: Unit | undefined; spread: Spread | undefined }): Cell | undefined {
    const { graph } = this.values;
    const [name, words] = [`${thing.id}.${axis}`, `${axis} of ${thing.id}`];
    const place = within(at, item);
    if (isLiteral(item) && item.kind !== 'unknown') {
      const q = readQuantity(item, unit);
      const wrong = 'problem' in q ? q : checkDim(item, q.ok, LENGTH);
      if (wrong) { this.problem(wrong.problem, at, thing); return undefined; }
      return graph.input(name, { ...(spread ? { spread } : {}), ...(q as { ok: Quantity }).ok }, 'written', words, { at: place });
    }
    if (item.kind === 'unknown') return this.values.asked(item, {}, place, name, words, { dim: LENGTH, ...(unit ? { unit } : {}) });
    let cell = this.values.expression(item, at, spread ? `${name}~` : name, words);
    if (!cell || cell.missing) return cell;
    if (cell.dim === NUMBER && unit) cell = graph.derive(`${name} in ${unit.text}`, weighted('in a unit', `a · ${unit.text}`, [unit.factor]), [cell], LENGTH, words, { unit, at: place });
    const wrong = checkDim(item, { dim: cell.dim, value: graph.value(cell)!, ...(cell.unit ? { unit: cell.unit } : {}) }, LENGTH);
    if (wrong) { this.problem(wrong.problem, at, thing); return undefined; }
    if (!spread) return cell;
    const slack = graph.input(`${name}~±`, { value: 0, dim: LENGTH, spread, unit: MM }, 'written', `give or take of ${words}`, { at });
    return graph.derive(name, SUM, [cell, slack], LENGTH, words, { at: place });
  }

  /** What stands behind the `±` of a whole place: it holds for each of its numbers, so it is a length. */
  private give(e: Expr & { kind: 'tolerance' }, at: Place, thing: Thing): Spread | undefined {
    const by = readNumber(e.by);
    const wrong = 'problem' in by ? by : e.op === '±' || by.ok.dim === LENGTH ? checkDim(e.by, by.ok, LENGTH) : { problem: { code: 'wrong-value' as const, span: e.by, data: { found: 'a factor', wanted: 'a length behind ±' } } };
    const read = wrong ?? readSpread(e, { value: 0, dim: LENGTH }, (by as { ok: Quantity }).ok);
    if (!('problem' in read)) return read.ok;
    this.problem(read.problem, at, thing);
    return undefined;
  }

  private beamHeight(): Cell {
    return this.height ??= this.values.setupFact('beam height')
      ?? this.values.graph.input('beam height', { value: BEAM_HEIGHT, dim: LENGTH, unit: MM }, 'assumed', 'beam height', { reason: 'all beams run at one height' });
  }
}

const SUM = weighted('sum', 'a + b', [1, 1]);
const unitless = (e: Expr & Span): boolean => (e.kind === 'unary' ? unitless(e.arg) : e.kind === 'tolerance' ? unitless(e.value) : e.kind === 'number' && !e.unit);
