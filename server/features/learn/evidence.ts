/** What one shot tells of a number of its plate or its laser. */
import { standardUncertainty, type Quantity } from '../../model/quantity.ts';
import type { Thing } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import { EXPOSURE, LENGTH } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import { interval } from '../../results/sampling.ts';
import { askedOf } from '../../results/sweep.ts';
import { understand } from '../why/outcomes.ts';
import type { Shot } from './shots.ts';

export interface Evidence {
  readonly shot: Shot;
  /** the number is about this, or lies above or below it; SI */
  readonly kind: 'about' | 'above' | 'below';
  readonly value: number;
  /** relative standard uncertainty that other shots have in common with it, such as that of the meter */
  readonly u: number;
  /** in words: "42 µJ/cm², and it is bright" */
  readonly words: string;
}

/** Brightness over exposure is a broad hill: within this factor either way nobody sees a difference. Common practice, from memory. */
export const BROAD = 1.3;
/** Steps of a strip are half a stop, so that the best one is the best to a quarter. */
export const QUARTER_STOP = 2 ** 0.25;

const relative = ({ value, spread }: Quantity): number => (value === 0 ? 0 : standardUncertainty(value, spread) / Math.abs(value));

/** What an exposure tells of the exposure that the plate needs; a sentence where it tells nothing. */
export function ofSensitivity(shot: Shot): Evidence | string {
  const strip = shot.numbers.get('best exposure');
  const outcome = shot.words.get('outcome');
  const energy = energyOf(shot, strip ?? shot.numbers.get('exposure'));
  if (typeof energy === 'string') return energy;
  const { value, u, from } = energy;
  const of = show(value, EXPOSURE, 0, energy.unit);
  // A give or take that is written says how finely the strip tells; else it is counted as half a step.
  if (strip) return { shot, kind: 'about', value, u, words: `the best of the strip had ${of}${from}` };
  if (outcome === undefined) return 'it has no outcome';
  const { outcomes, well } = understand(outcome);
  if (well) return { shot, kind: 'about', value, u, words: `${of}${from}: “${outcome}”` };
  if (outcomes.includes('too thin')) return { shot, kind: 'above', value, u, words: `${of}${from} was too little: “${outcome}”` };
  if (outcomes.includes('too dense')) return { shot, kind: 'below', value, u, words: `${of}${from} was too much: “${outcome}”` };
  return `“${outcome}” does not say how the exposure was`;
}

/** The energy that came to the plate: as written, else light and time. */
function energyOf({ numbers, plate, results }: Shot, time: Quantity | undefined): { readonly value: number; readonly u: number; readonly unit: Quantity['unit']; readonly from: string } | string {
  const [dose, whole] = [numbers.get('dose'), numbers.get('exposure')];
  if (dose && dose.value <= 0) return 'its dose is nothing';
  if (dose && (time === whole || !time)) return { value: dose.value, u: relative(dose), unit: dose.unit, from: '' };
  if (!time || time.value <= 0) return 'neither dose nor exposure is written';
  const give = time === whole ? relative(time) : 0;
  if (dose && whole && whole.value > 0) return { value: (dose.value * time.value) / whole.value, u: Math.hypot(relative(dose), give), unit: dose.unit, from: '' };
  const light = plate && askedOf(results, `${plate.id}.light`);
  const now = light && !light.missing ? results.graph.value(light) : undefined;
  if (!light || now === undefined || now <= 0) return 'neither its dose nor the light at the plate is known';
  return { value: now * time.value, u: Math.hypot(wide(light, results.graph), give), unit: undefined, from: ' by the light of the page' };
}

/** A quarter of the band, of its logarithm. */
function wide(cell: Cell, graph: Shot['results']['graph']): number {
  const { low, high } = interval(graph, cell);
  return low > 0 ? Math.log(high / low) / 4 : 1;
}

/** In what an exposure is judged: a strip is as fine as its steps. */
export const finenessOf = ({ shot }: Evidence): number => {
  const strip = shot.numbers.get('best exposure');
  if (!strip) return Math.log(BROAD);
  return strip.spread ? 2 * relative(strip) : Math.log(QUARTER_STOP);
};

/**
 * What a colour tells of the layer: the share of its thickness that it lost is 1 − λ′/λ, lit from where the reference came. Of fringes that lie along the surface that is exact; of a reference at 45° with the object straight
 * before the plate it is good to 0.1 points (a layer that keeps 0.85 of its thickness gives 0.849 of the wavelength).
 */
export function ofShrinkage(shot: Shot): Evidence | string {
  const colour = shot.numbers.get('replay wavelength');
  if (!colour) return 'no replay wavelength is written';
  const laser = laserOf(shot);
  const cell = laser && shot.results.values.fact(laser, 'wavelength');
  const recorded = cell && !cell.missing ? shot.results.graph.value(cell) : undefined;
  if (recorded === undefined) return 'the wavelength of its laser is not known';
  const hologram = shot.setup.facts.get('hologram')?.value;
  if (hologram?.kind === 'words' && hologram.text !== 'reflection') return `it is a ${hologram.text} hologram, whose colour does not tell`;
  return { shot, kind: 'about', value: 1 - colour.value / recorded, u: standardUncertainty(colour.value, colour.spread) / recorded, words: `${show(colour.value, LENGTH, 0, colour.unit)} for ${show(recorded, LENGTH, 0, cell!.unit)}` };
}

/** A colour moves by 2 to 5 nm with the moisture of the air, as a share of its wavelength, and named by eye it is good to 10 nm. Common practice, from memory. */
const [MOISTURE, EYE] = [0.008, 0.016];
export const colourFineness = ({ shot }: Evidence): number => (shot.numbers.get('replay wavelength')?.spread ? MOISTURE : EYE);

/** The laser whose light reaches the plate of a shot. */
export function laserOf({ results, plate }: Shot): Thing | undefined {
  const lasers = new Set(results.arms.arms.filter(a => a.plate === plate).map(a => a.laser));
  return lasers.size === 1 ? [...lasers][0] : undefined;
}

/**
 * By how many coherence lengths a path may differ before a part is no longer bright: one that records at 70 % has a contrast of √0.7. Coherence length is the path difference d that leaves the contrast c; how contrast falls on the way depends on the
 * shape of the line, which nobody knows: c^((d/L)²) of a Gaussian line, c^(d/L) of a Lorentzian one. What either allows is told.
 *
 * @returns the coherence length for each of path, at least where it is bright there, and at most where it is not
 */
export function timesPath(contrast: number): { readonly least: number; readonly most: number } {
  const exponent = Math.log(1 / Math.sqrt(0.7)) / Math.log(1 / contrast);
  const both = [1 / exponent, 1 / Math.sqrt(exponent)];
  return { least: Math.min(...both), most: Math.max(...both) };
}

/** What the depth of an image tells of how far the laser's light keeps step. */
export function ofCoherence(shot: Shot): Evidence | string {
  const outcome = shot.words.get('outcome');
  if (outcome === undefined) return 'it has no outcome';
  if (shot.numbers.has('best exposure')) return 'a strip does not say how deep a plate is bright';
  const { outcomes, well } = understand(outcome);
  const back = outcomes.includes('dark at the back');
  if (!well && !back) return `“${outcome}” does not say how deep it is bright`;
  const pairs = shot.results.plates.filter(p => p.plate === shot.plate).flatMap(p => p.pairs);
  if (pairs.length !== 1) return 'no object beam, or several, lead to its plate';
  const { graph } = shot.results;
  const sizes = pairs[0]!.parts.filter(p => !back || p.part === 'far').flatMap(p => {
    if (p.mismatch.missing) return [];
    const { low, high } = interval(graph, p.mismatch);
    // The weakest that it may mean: of one that is bright the least, of one that is dark the most.
    return [back ? Math.max(Math.abs(low), Math.abs(high)) : low < 0 && high > 0 ? 0 : Math.min(Math.abs(low), Math.abs(high))];
  });
  if (sizes.length === 0) return 'its paths are not known';
  const d = Math.max(...sizes);
  if (d <= 0) return 'its paths match, so that any laser would do';
  const laser = laserOf(shot);
  const cell = laser && shot.results.values.fact(laser, 'coherence contrast');
  const contrast = (cell && graph.value(cell)) ?? 0.5;
  if (!(contrast > 0 && contrast < 1)) return 'the contrast that its coherence length stands for is none';
  const { least, most } = timesPath(contrast);
  const words = `“${outcome}”, ${show(Number(d.toPrecision(2)), LENGTH)} of path ${back ? 'at its farthest part' : 'at most'}`;
  return well ? { shot, kind: 'above', value: least * d, u: 0, words } : { shot, kind: 'below', value: most * d, u: 0, words };
}
