/** The share that a splitter reflects: as written, or by the mark at which its wheel stands. */
import type { BoundFact, Reading, Thing } from '../../model/model.ts';
import { NUMBER, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { wheelShare } from '../rules/light.ts';
import { weighted } from '../rules/lengths.ts';
import type { LightContext } from './context.ts';
import { counting } from './fates.ts';
import type { Meters } from './meter.ts';

/** What is known of a splitter's share. */
export interface Wheel {
  readonly splitter: Thing;
  /** the share that it reflects, of what is not lost */
  readonly reflects: Cell;
  /** by its wheel, where its marks are written and it is known where it stands */
  readonly byWheel?: Cell;
  /** written as such */
  readonly written?: Cell;
  /** the reading of the wheel, and by how much the share at that mark differs from the share at the mark that is written */
  readonly read?: { readonly reading: Reading; readonly difference?: Cell };
}

const PERCENT = parseUnit('%')!;
const APART = weighted('difference', 'as read − as planned', [1, -1]);

export class Wheels {
  private readonly known = new Map<Thing, Wheel>();
  /** what to work with where the share is written `?` */
  solve: (splitter: Thing) => Cell | undefined = () => undefined;
  constructor(private readonly meters: Meters, private readonly context: LightContext) {}

  of(splitter: Thing): Wheel {
    let wheel = this.known.get(splitter);
    if (!wheel) this.known.set(splitter, wheel = this.make(splitter));
    return wheel;
  }

  /** The splitters whose wheel was read, or whose wheel and share are both written. */
  told(): Wheel[] {
    return [...this.context.setup.things.values()].filter(t => t.kind.light === 'shares' && (t.facts.has('wheel') || this.reading(t)) && marksOf(t).length > 0).map(t => this.of(t));
  }

  private reading(splitter: Thing): Reading | undefined {
    return counting(this.context.readings.filter(r => r.measured?.kind === 'wheel' && r.measured.splitter === splitter), this.context.fates);
  }

  private make(splitter: Thing): Wheel {
    const { values } = this.context;
    const reading = this.reading(splitter);
    const byWheel = this.byWheel(splitter, reading && this.meters.input(reading));
    const bound = splitter.facts.get('reflects');
    const written = bound && bound.value.kind !== 'unknown' ? values.fact(splitter, 'reflects') : undefined;
    // Where the wheel was read it tells; else what is written as such.
    const reflects = (reading && byWheel && !byWheel.missing ? byWheel : undefined) ?? written ?? byWheel ?? (bound?.value.kind === 'unknown' && !this.context.graph.found?.has(`${splitter.id}.reflects`) ? this.solve(splitter) : undefined)
      ?? (bound && values.fact(splitter, 'reflects')) ?? values.missing(`${splitter.id}.reflects`, NUMBER, `share that ${splitter.id} reflects`, { code: 'value-missing', why: `how much ${splitter.id} reflects is not written`, at: splitter.at });
    const planned = reading && byWheel && splitter.facts.has('wheel') ? this.byWheel(splitter, undefined, ' as written') : undefined;
    if (reading && byWheel) this.context.fates.set(reading, byWheel.missing ? { kind: 'useless', why: byWheel.missing.why } : { kind: 'counts', of: byWheel, says: byWheel, ...(planned && !planned.missing ? { planned } : {}) });
    const difference = planned && this.context.graph.derive(`${splitter.id}.reflects by wheel against plan`, APART, [byWheel!, planned], NUMBER, `share that ${splitter.id} reflects, beside the plan`);
    return { splitter, reflects, ...(byWheel ? { byWheel } : {}), ...(written ? { written } : {}), ...(reading ? { read: { reading, ...(difference ? { difference } : {}) } } : {}) };
  }

  /** Undefined where the splitter has no marks, or nothing says where it stands. */
  private byWheel(splitter: Thing, read: Cell | undefined, behind = ''): Cell | undefined {
    const { values, graph } = this.context;
    const marks = marksOf(splitter);
    const setting = read?.dim === NUMBER ? read : values.fact(splitter, 'wheel');
    if (marks.length === 0 || !setting) return undefined;
    const name = `${splitter.id}.reflects by wheel${behind}`;
    const words = `share that ${splitter.id} reflects by its wheel`;
    const here = graph.value(setting);
    const [first, last] = [marks[0]!.number!, marks[marks.length - 1]!.number!];
    if (here !== undefined && (here < first || here > last)) {
      return values.missing(name, NUMBER, words, { code: 'value-missing', why: `${splitter.id} stands at mark ${here}, and its wheel was metered from ${first} to ${last} only`, at: setting.at ?? splitter.at });
    }
    const cells = marks.map(m => values.fact(splitter, `${m.fact.phrase} ${m.number!}`));
    if (cells.some(c => !c)) return undefined;
    return graph.derive(name, wheelShare(marks.map(m => m.number!)), [setting, ...cells.map(c => c!)], NUMBER, words, { unit: PERCENT });
  }
}

/** The marks of a wheel that were metered, rising. */
function marksOf(splitter: Thing): BoundFact[] {
  return [...splitter.facts.values()].filter(f => f.fact.phrase === 'mark' && f.number !== undefined).sort((a, b) => a.number! - b.number!);
}
