/**
 * In which colour a picture may be shown on a screen while plates lie open, by what is written: one of the three that screens have a lamp or a
 * filter of their own for, in which no plate of the page is said to be sensitive, and that goes with the safelight; else black. Where something
 * is not known it is black. It is no promise: the screen's red, green and blue have skirts, and what is black still glows a little.
 *
 * Source: what plates of a sort are sensitised to is on their data sheets, and here only what is written as `sensitive to`; that silver halide, gelatin
 * and resist take blue whatever they are sensitised to besides, and that screens mix every other colour, amber among them, is common practice.
 */
import type { Setup, Thing } from '../model/model.ts';
import type { Results } from '../results/plan.ts';
import { safelightOf, seesColour, sensitiveTo } from '../results/safelight.ts';

export type Hue = 'red' | 'green' | 'blue';

export interface Dim {
  readonly hue: Hue | 'black';
  /** why, a whole sentence or two */
  readonly why: string;
}

/**
 * @param shown the setup in the picture, in its variant: its safelight counts
 * @param others the other setups of the page: nobody knows which box of plates is open
 */
export function dimOf({ setup }: Results, others: readonly Results[]): Dim {
  const black = (why: string): Dim => ({ hue: 'black', why: `${why}, so the panel is black.` });
  const colour = safelightOf(setup);
  if (colour === undefined) return { hue: 'black', why: `The colour of the safelight is not written in “${setup.name}”, so the panel is black. If you work by one, write a room with it, such as “safelight: green”.` };
  if (colour === 'none') return black('There is no safelight');
  const setups = [setup, ...others.map(r => r.setup)];
  if (setups.some(s => s.unsure)) return black('A line of the page cannot be read, and a plate may stand in it');
  const plates = setups.flatMap(s => platesOf(s).map(plate => ({ plate, to: sensitiveTo(plate), name: s === setup ? plate.id : `${plate.id} of “${s.name}”` })));
  if (plates.length === 0) return black('No plate is on the page, and nothing is known of what it would see');
  const light = colour as Hue | 'amber';
  const hue = light === 'amber' ? 'red' : light;
  for (const { plate, to, name } of plates) {
    if (to === undefined) return { hue: 'black', why: `What ${name} is sensitive to is not written, so the panel is black. Write what its data sheet says, such as “sensitive to: red”.` };
    // The screen's colour is not always that of the safelight.
    const sees = [seesColour(plate, light), seesColour(plate, hue)];
    const of = to === 'all' ? 'all colours' : to;
    if (sees.includes(true)) return black(`The safelight is ${light}, and ${name} ${light === 'blue' && !/blue|all/.test(to) ? 'takes blue light as all layers of its sort do' : `is sensitive to ${of}`}`);
    if (sees.includes(undefined)) return black(`Whether ${name}, sensitive to ${of}, takes ${light} light does not follow from the page`);
  }
  const [first] = plates as [typeof plates[0]];
  const who = plates.length === 1 ? `${first.name} is said to be sensitive to ${first.to!} only` : `of the ${plates.length} plates on the page none is said to be sensitive to ${light === 'amber' ? 'amber or red' : hue}`;
  return { hue, why: light === 'amber' ? `The safelight is amber, and ${who}. A screen would mix amber from red and green, so the panel is red alone, on black.` : `The safelight is ${hue}, and ${who}, so the panel is ${hue} alone, on black.` };
}

const platesOf = (setup: Setup): Thing[] => [...setup.things.values()].filter(t => t.kind.word === 'plate');
