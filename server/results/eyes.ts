/** What is known of each laser that a caution for eyes needs: its power beside the published limit, and the class on its label. */
import type { Setup, Thing } from '../model/model.ts';
import { NUMBER, POWER } from '../model/units.ts';
import type { Cell } from './graph.ts';
import { EYE_LIMIT, isBlue, LONG_LOOK_LIMIT, TIMES_LIMIT } from './rules/eyes.ts';
import type { Values } from './values.ts';

export interface LaserCaution {
  readonly laser: Thing;
  /** the class on its label, where that is written */
  readonly class?: string;
  readonly power?: Cell;
  /** power through a wide pupil that makes up the limit for one glance; missing for light of which the limits here do not tell */
  readonly limit?: Cell;
  /** how many times that limit its bare beam is */
  readonly times?: Cell;
  /** of blue light, which harms an eye by a long look before it does by heat: power that makes up the limit for that, and how many times that the beam is */
  readonly long?: { readonly limit: Cell; readonly times: Cell };
}

/** Lasers with a written power or class, in the order of the text. */
export function laserCautions(setup: Setup, values: Values): LaserCaution[] {
  return [...setup.things.values()].filter(t => t.kind.light === 'source' && (t.facts.has('power') || t.facts.has('class'))).map(laser => {
    const { graph } = values;
    const label = laser.facts.get('class')?.value;
    const head = { laser, ...(label?.kind === 'words' ? { class: label.text } : {}) };
    const [power, wavelength] = [laser.facts.has('power') ? values.fact(laser, 'power') : undefined, laser.facts.has('wavelength') ? values.fact(laser, 'wavelength') : undefined];
    if (!power || power.missing) return head;
    if (!wavelength || wavelength.missing) return { ...head, power };
    const limit = graph.derive(`${laser.id}.eye limit`, EYE_LIMIT, [wavelength], POWER, `published limit for a glance into the beam of ${laser.id}`);
    const times = graph.derive(`${laser.id}.times eye limit`, TIMES_LIMIT, [power, limit], NUMBER, `power of ${laser.id} beside the published limit for a glance`);
    if (!isBlue(graph.value(wavelength)!)) return { ...head, power, limit, times };
    const long = graph.derive(`${laser.id}.long look limit`, LONG_LOOK_LIMIT, [wavelength], POWER, `published limit for a long look into the beam of ${laser.id}`);
    return { ...head, power, limit, times, long: { limit: long, times: graph.derive(`${laser.id}.times long look limit`, TIMES_LIMIT, [power, long], NUMBER, `power of ${laser.id} beside the published limit for a long look`) } };
  });
}
