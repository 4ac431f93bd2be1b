/** Where things stand: cells of their places. Made when first asked for. */
import type { Expr } from '../../grammar/tree.ts';
import { checkDim, describe, isLiteral, readNumber, readQuantity, readSpread } from '../model/literal.ts';
import type { Place, Thing } from '../model/model.ts';
import { within } from '../model/place.ts';
import type { Quantity, Spread } from '../model/quantity.ts';
import { dimName, LENGTH, NUMBER, parseUnit } from '../model/units.ts';
import type { Cell } from './graph.ts';
import { along, DISTANCE, weighted } from './rules/lengths.ts';
import type { Values } from './values.ts';

const MM = parseUnit('mm')!;
/** Height of the beams when nothing is written; only differences of height matter to lengths. */
const BEAM_HEIGHT = 0.12;

export type Position = readonly [Cell, Cell, Cell];

export class Places {
  private readonly positions = new Map<Thing, Position | undefined>();
  private height: Cell | undefined;

  constructor(private readonly values: Values) {}

  /** Where a thing stands, as three cells; undefined where the text doesn't say. */
  of(thing: Thing): Position | undefined {
    if (this.positions.has(thing)) return this.positions.get(thing);
    this.positions.set(thing, undefined);
    const p = thing.placement;
    const found = p?.at ? this.atPosition(thing, p.at.expr, p.at.place) : p?.on ? this.onPosition(thing) : undefined;
    this.positions.set(thing, found);
    return found;
  }

  private atPosition(thing: Thing, e: Expr, at: Place): Position | undefined {
    const group = e.kind === 'tolerance' ? e.value : e;
    if (group.kind !== 'group' || group.items.length < 2 || group.items.length > 3) {
      this.values.report('wrong-value', at, thing.id, { found: describe(e), wanted: 'a place such as (100, 200) mm' });
      return undefined;
    }
    const unit = group.unit ? parseUnit(group.unit.text) : undefined;
    if (group.unit && unit?.dim !== LENGTH) {
      this.values.report(unit ? 'wrong-unit' : 'unknown-unit', within(at, group.unit), thing.id, unit ? { found: dimName(unit.dim), wanted: 'a length', units: 'mm, cm, m', unit: unit.text } : { unit: group.unit.text, suggestion: 'mm' });
      return undefined;
    }
    if (!group.unit && group.items.every(i => i.kind === 'number' && !i.unit)) {
      const written = thing.node.line.text.slice(group.start, group.end);
      this.values.report('missing-unit', within(at, group), thing.id, { wanted: 'a place', units: 'mm, cm, m', written, suggestion: 'mm' });
      return undefined;
    }
    const spread = e.kind === 'tolerance' ? this.spreadOf(e, at) : undefined;
    if (e.kind === 'tolerance' && !spread) return undefined;
    const cells: Cell[] = [];
    for (const [i, item] of group.items.entries()) {
      const name = `${thing.id}.${'xyz'[i]!}`;
      const words = `${'xyz'[i]!} of ${thing.id}`;
      const place = within(at, item);
      if (isLiteral(item) && item.kind !== 'unknown') {
        const q = readQuantity(item, unit);
        const wrong = 'problem' in q ? q : checkDim(item, q.ok, LENGTH);
        if (wrong) { this.values.report(wrong.problem.code, place, thing.id, wrong.problem.data); return undefined; }
        cells.push(this.values.graph.input(name, { ...(spread ? { spread } : {}), ...(q as { ok: Quantity }).ok }, 'written', words, { at: place }));
        continue;
      }
      const c = this.values.expression(item, at, name, words);
      if (!c) return undefined;
      if (c.dim === NUMBER && !c.missing && unit) cells.push(this.values.graph.derive(`${name} in ${unit.text}`, weighted('in a unit', `a · ${unit.text}`, [unit.factor]), [c], LENGTH, words, { unit, at: place }));
      else if (c.dim === LENGTH || c.missing) cells.push(c);
      else {
        this.values.report(c.dim === NUMBER ? 'missing-unit' : 'wrong-unit', place, thing.id, { found: dimName(c.dim), wanted: 'a length', units: 'mm, cm, m', written: '', suggestion: 'mm' });
        return undefined;
      }
    }
    if (cells.length < 3) cells.push(this.beamHeight());
    return [cells[0]!, cells[1]!, cells[2]!];
  }

  private spreadOf(e: Expr & { kind: 'tolerance' }, at: Place): Spread | undefined {
    const by = readNumber(e.by);
    const wrong = 'problem' in by ? by : checkDim(e.by, by.ok, LENGTH);
    const read = wrong ?? readSpread(e, { value: 0, dim: LENGTH }, (by as { ok: Quantity }).ok);
    if (!('problem' in read)) return read.ok;
    this.values.report(read.problem.code, within(at, read.problem.span), 'placement', read.problem.data);
    return undefined;
  }

  private beamHeight(): Cell {
    const fact = this.values.setup.facts.get('beam height');
    return this.height ??= (fact ? this.values.bound(fact.value, fact.at, 'beam height', 'beam height', LENGTH) : undefined)
      ?? this.values.graph.input('beam height', { value: BEAM_HEIGHT, dim: LENGTH, unit: MM }, 'assumed', 'beam height', { reason: 'all beams run at one height' });
  }

  /** `on A -> B by d` */
  private onPosition(thing: Thing): Position | undefined {
    const { from, to, by } = thing.placement!.on!;
    const [a, b] = [this.values.setup.things.get(from), this.values.setup.things.get(to)];
    const [pa, pb] = [a && this.of(a), b && this.of(b)];
    const d = by && this.values.expression(by.expr, by.place, `${thing.id}.by`, `distance of ${thing.id} from ${from}`);
    const wrong = d && !d.missing && checkDim(by.expr, { dim: d.dim, ...(d.unit ? { unit: d.unit } : {}), value: this.values.graph.value(d)! }, LENGTH);
    if (wrong) this.values.report(wrong.problem.code, by.place, thing.id, wrong.problem.data);
    if (!pa || !pb || !d || wrong) return undefined;
    const span = this.values.graph.derive(`${from} → ${to}`, DISTANCE, [...pa, ...pb], LENGTH, `distance of ${from} and ${to}`);
    if (!span.missing && !d.missing && (this.values.graph.value(d)! < 0 || this.values.graph.value(d)! > this.values.graph.value(span)!)) {
      this.values.report('impossible-value', by.place, thing.id, { why: `the leg from ${from} to ${to} is only ${Math.round(this.values.graph.value(span)! * 1000)} mm long` });
      return undefined;
    }
    const axis = (i: 0 | 1 | 2): Cell => this.values.graph.derive(`${thing.id}.${'xyz'[i]!}`, along(i), [...pa, ...pb, d], LENGTH, `${'xyz'[i]!} of ${thing.id}`);
    return [axis(0), axis(1), axis(2)];
  }
}
