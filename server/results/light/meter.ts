/** What a light meter said, as cells: without its dark reading, times its calibration, as light on its head. */
import { checkFit, FITS } from '../../model/bind/reading-values.ts';
import type { Reading, Thing } from '../../model/model.ts';
import { within } from '../../model/place.ts';
import { LIGHT, NUMBER, POWER, AREA, LENGTH, parseUnit, type Dim, type Unit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { CALIBRATED, CAUGHT, ON_HEAD, ROUND_HEAD, SQUARE_HEAD, WITHOUT_DARK } from '../rules/light.ts';
import type { LightContext } from './context.ts';
import { counting } from './fates.ts';

/** A reading of light, ready to be compared. */
export interface Metered {
  readonly reading: Reading;
  readonly cell: Cell;
  /** light on the head in W/m²; else a bare number, or a power on a head whose size is not known: of one meter these make a ratio, and nothing else */
  readonly kind: 'light' | 'bare' | 'power';
  /** what it was taken with */
  readonly meter: string;
}

const MICRO = parseUnit('µW/cm²')!;

export class Meters {
  private readonly inputs = new Map<Reading, Cell | undefined>();
  private readonly areas = new Map<Thing, Cell | undefined>();
  private readonly told = new Set<string>();

  constructor(private readonly context: LightContext) {}

  /** The number itself, as an input that was measured. Undefined where it cannot be read; that is reported. */
  input(reading: Reading): Cell | undefined {
    if (!this.inputs.has(reading)) this.inputs.set(reading, this.make(reading));
    return this.inputs.get(reading);
  }

  private make({ value, valueAt, words, on, by, measured }: Reading): Cell | undefined {
    if (!value || !valueAt || !measured) return undefined;
    const { graph, values } = this.context;
    const name = ['reading of', words, ...(by ? [`by ${by.name}`] : []), ...(on !== undefined ? [`on ${on}`] : [])].join(' ');
    switch (value.kind) {
      case 'quantity': return graph.input(name, value.quantity, 'measured', `reading of ${words}`, { at: valueAt });
      case 'ratio': return graph.input(name, { value: value.value, dim: NUMBER }, 'measured', `reading of ${words}`, { at: valueAt });
      case 'formula': {
        const cell = values.expression(value.expr, valueAt, name, `reading of ${words}`);
        if (!cell || cell.missing) return cell;
        const wrong = checkFit(value.expr, { value: graph.value(cell)!, dim: cell.dim, ...(cell.unit ? { unit: cell.unit } : {}) }, FITS[measured.kind]);
        if (!wrong) return cell;
        values.report(wrong.problem.code, within(valueAt, wrong.problem.span), words, wrong.problem.data);
        return undefined;
      }
      case 'unknown': return graph.missing(name, NUMBER, `reading of ${words}`, { code: 'unknown-asked', why: `the reading of ${words} is written ?`, at: valueAt });
      default: return undefined;
    }
  }

  /** What the head caught; `at` is where it was held. Undefined where the reading is none of light. */
  light(reading: Reading, at: Thing): Metered | undefined {
    const raw = this.input(reading);
    if (!raw || (raw.dim !== LIGHT && raw.dim !== POWER && raw.dim !== NUMBER)) return undefined;
    const area = raw.dim === POWER ? this.area(reading.by?.thing) : undefined;
    if (raw.dim === POWER && !area) this.headUnknown(reading);
    const own = area ? this.context.graph.derive(`${this.name(reading)} on the head`, ON_HEAD, [raw, area], LIGHT, `light on the head at ${reading.words}`, { unit: MICRO }) : raw;
    const net = this.withoutDark(reading, own, at);
    const kind = own.dim === LIGHT ? 'light' : own.dim === POWER ? 'power' : 'bare';
    return { reading, kind, meter: reading.by?.name ?? '', cell: this.above(reading, kind === 'light' ? this.calibrated(reading, net) : net) };
  }

  /** The power in a beam that was caught whole by the head. */
  power(reading: Reading, at: Thing): Cell | undefined {
    const raw = this.input(reading);
    return raw?.dim === POWER ? this.above(reading, this.calibrated(reading, this.withoutDark(reading, raw, at))) : undefined;
  }

  private calibrated(reading: Reading, cell: Cell): Cell {
    const meter = reading.by?.thing;
    const factor = meter?.kind.word === 'meter' ? this.context.values.fact(meter, 'calibration') : undefined;
    return factor ? this.context.graph.derive(`${this.name(reading)} calibrated`, CALIBRATED, [cell, factor], cell.dim, `calibrated reading of ${reading.words}`, unitOf(cell)) : cell;
  }

  /** One meter without a head is one slip, however often it was read. */
  private headUnknown(reading: Reading): string {
    const by = reading.by?.name ?? '';
    if (!this.told.has(by)) this.context.report('head-size-missing', reading, by === '' ? reading.words : by, { words: reading.words, meter: by });
    this.told.add(by);
    return `how large the head of ${by === '' ? 'the meter' : by} is, is not written`;
  }

  private area(meter: Thing | undefined): Cell | undefined {
    if (!meter) return undefined;
    if (!this.areas.has(meter)) this.areas.set(meter, this.areaOf(meter));
    return this.areas.get(meter);
  }

  private areaOf(meter: Thing): Cell | undefined {
    const { graph, values } = this.context;
    const sizes = meter.facts.get('head size');
    const words = `area of the head of ${meter.id}`;
    if (sizes?.value.kind === 'sizes' && sizes.value.parts.length === 2) {
      const sides = sizes.value.parts.map((q, i) => graph.input(`${meter.id}.head ${i === 0 ? 'width' : 'height'}`, q, 'written', `${i === 0 ? 'width' : 'height'} of the head of ${meter.id}`, { at: sizes.at }));
      return graph.derive(`${meter.id}.head area`, SQUARE_HEAD, sides, AREA, words);
    }
    const head = values.fact(meter, 'head');
    return head?.dim === LENGTH ? graph.derive(`${meter.id}.head area`, ROUND_HEAD, [head], AREA, words) : undefined;
  }

  /** The newest dark reading of the same meter that says the same kind of thing, else what the meter's page says. */
  private withoutDark(reading: Reading, cell: Cell, at: Thing): Cell {
    const { graph } = this.context;
    const dark = this.darkFor(reading, at, cell.dim);
    return dark ? graph.derive(`${this.name(reading)} without dark`, WITHOUT_DARK, [cell, dark], cell.dim, `reading of ${reading.words} without the dark reading`, unitOf(cell)) : cell;
  }

  private darkFor(reading: Reading, at: Thing, dim: Dim): Cell | undefined {
    const { readings, values, graph, fates } = this.context;
    const meter = reading.by?.name;
    const isAlike = (r: Reading): boolean => { const own = this.input(r)?.dim; return own !== undefined && (own === NUMBER) === (dim === NUMBER); };
    const read = counting(readings.filter(r => r.measured?.kind === 'dark' && r.by?.name === meter && (!r.measured.at || r.measured.at === at) && isAlike(r)), fates);
    const thing = reading.by?.thing;
    const dark = (read && this.input(read)) ?? (thing?.kind.word === 'meter' ? values.fact(thing, 'dark') : undefined);
    if (read && dark) fates.set(read, { kind: 'counts', of: dark, says: dark });
    if (!dark || dark.dim === dim) return dark;
    if (dim === NUMBER || dark.dim === NUMBER) return undefined;
    if (graph.value(dark) === 0 && graph.uncertainty(dark) === 0) return undefined;
    const words = `dark reading of ${meter ?? 'the meter'}`;
    const area = this.area(thing);
    if (!area) return this.context.values.missing(`${dark.name} in the unit of the reading`, dim, words, { code: 'value-missing', why: `the dark reading and the reading of ${reading.words} differ in kind, and ${this.headUnknown(reading)}`, at: reading.at });
    return dim === LIGHT ? graph.derive(`${dark.name} as light`, ON_HEAD, [dark, area], LIGHT, words, { unit: MICRO }) : graph.derive(`${dark.name} as power`, CAUGHT, [dark, area], POWER, words);
  }

  /** What is not above the dark reading says nothing. */
  private above(reading: Reading, cell: Cell): Cell {
    if (cell.missing || this.context.graph.value(cell)! > 0) return cell;
    return this.context.values.missing(`${this.name(reading)} above dark`, cell.dim, `reading of ${reading.words}`, { code: 'no-light', why: `the reading of ${reading.words} is not above the dark reading`, at: reading.valueAt ?? reading.at });
  }

  private name(reading: Reading): string {
    return this.input(reading)!.name;
  }
}

const unitOf = (cell: Cell): { unit?: Unit } => (cell.unit ? { unit: cell.unit } : {});
