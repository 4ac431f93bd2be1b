/** The length of a leg: as written, else the distance of its ends. */
import type { Leg } from '../../model/model.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cell, Label } from '../graph.ts';
import { legStart } from '../places/light-ways.ts';
import type { Places } from '../places/places.ts';
import { DISTANCE } from '../rules/lengths.ts';
import type { Values } from '../values.ts';

export { legStart } from '../places/light-ways.ts';
export const legWords = (leg: Leg): string => `${legStart(leg)?.id ?? '?'} → ${leg.to || '?'}`;

class LegLabel implements Label {
  constructor(private readonly leg: Leg, private readonly suffix: string) {}
  get name(): string { return `${this.leg.id}.length${this.suffix}`; }
  get words(): string { return `leg ${legWords(this.leg)}${this.suffix === '' ? '' : ' as planned'}`; }
  get at(): Label['at'] { return this.leg.lengthAt; }
}

/** `suffix` is `.plan` where a reading corrects it. */
export function legLength(leg: Leg, values: Values, places: Places, suffix = ''): Cell {
  if (leg.length?.kind === 'quantity') return values.graph.written(new LegLabel(leg, suffix), leg.length.quantity);
  const { name, words } = new LegLabel(leg, suffix);
  if (leg.length) {
    const cell = values.bound(leg.length, leg.lengthAt!, name, words, LENGTH);
    if (cell) return cell;
  }
  if (leg.lengthAt || leg.node.line.issue) return values.missing(name, LENGTH, words, { code: 'unreadable', why: `the length of ${words} cannot be read`, at: leg.lengthAt ?? leg.at });
  const [a, b] = [legStart(leg), leg.target];
  if (!a || !b) return values.missing(name, LENGTH, words, { code: 'unknown-name', why: `${words} does not lead anywhere`, at: leg.at });
  const [pa, pb] = [places.of(a), places.of(b)];
  if (pa && pb) return values.graph.derive(name, DISTANCE, [...pa, ...pb], LENGTH, words, { at: leg.at });
  if ([a, b].some(t => !places.of(t) && (t.node.line.issue !== undefined || places.isPlaced(t)))) return values.missing(name, LENGTH, words, { code: 'unreadable', why: `the place of an end of ${words} cannot be read`, at: leg.at });
  return values.missing(name, LENGTH, words, { code: 'value-missing', why: `${words} has no length`, at: leg.at });
}
