/** What plates see of the light in the room: colours as they are written, beside the colours that a plate is said to be sensitive to. How strong a light is, and how long a plate lies in it, is not reckoned. */
import type { Setup, Thing } from '../model/model.ts';
import type { Results } from './plan.ts';

/** A safelight beside a plate. */
export interface Safelight {
  readonly room: Thing;
  readonly plate: Thing;
  readonly colour: string;
  /** colours that the plate is said to be sensitive to, else the colour of its laser, which it is there to record */
  readonly to: string;
  readonly by: 'written' | 'laser';
  /** whether the plate sees the safelight; undefined where the colours do not tell */
  readonly sees: boolean | undefined;
}

/** Each plate beside the safelight, where both are told. */
export function safelights(r: Results): Safelight[] {
  const room = roomOf(r.setup);
  if (!room) return [];
  const colour = said(room, 'safelight')!;
  return r.plates.flatMap(({ plate }): Safelight[] => {
    const written = sensitiveTo(plate);
    const to = written ?? colourOf(r.arms.arms.find(a => a.plate === plate)?.laser);
    return to === undefined ? [] : [{ room, plate, colour, to, by: written === undefined ? 'laser' : 'written', sees: sees(colour, to, said(plate, 'material'), written !== undefined) }];
  });
}

/** Colour of the safelight, `none` among them; undefined where it is not written. */
export const safelightOf = (setup: Setup): string | undefined => { const room = roomOf(setup); return room && said(room, 'safelight'); };
/** Colours that a plate is said to be sensitive to. */
export const sensitiveTo = (plate: Thing): string | undefined => said(plate, 'sensitive to');

/** Whether a plate sees light of a colour, by what is written of it; undefined where that does not tell. */
export function seesColour(plate: Thing, colour: 'red' | 'green' | 'blue' | 'amber'): boolean | undefined {
  const to = sensitiveTo(plate);
  return to === undefined ? undefined : sees(colour, to, said(plate, 'material'), true);
}

const roomOf = (setup: Setup): Thing | undefined => [...setup.things.values()].find(t => t.kind.word === 'room' && said(t, 'safelight') !== undefined);
const said = (t: Thing, phrase: string): string | undefined => { const v = t.facts.get(phrase)?.value; return v?.kind === 'words' ? v.text : undefined; };

/** Colour of a laser's light, where it is plainly one of three. */
function colourOf(laser: Thing | undefined): string | undefined {
  const v = laser?.facts.get('wavelength')?.value;
  const nm = v?.kind === 'quantity' ? v.quantity.value * 1e9 : undefined;
  return nm === undefined ? undefined : nm >= 400 && nm < 500 ? 'blue' : nm >= 500 && nm < 570 ? 'green' : nm >= 610 && nm <= 700 ? 'red' : undefined;
}

/** Layers that blue light always works on, whatever they are sensitised to besides (common practice). */
const BLUE_BY_NATURE = /silver halide|gelatin|resist/;

function sees(colour: string, to: string, material: string | undefined, written: boolean): boolean | undefined {
  if (colour === 'none') return false;
  const colours = to === 'all' ? ['red', 'green', 'blue'] : to.split(' ');
  if (colours.includes(colour) || to === 'all') return true;
  // Of a layer that nobody has named, only the sensitiser is known.
  if (colour === 'blue' && (material === undefined || BLUE_BY_NATURE.test(material))) return material === undefined ? undefined : true;
  // Amber lies between red and green: what is made for red takes it in, of green alone only a data sheet tells.
  if (colour === 'amber') return colours.includes('red') ? true : colours.includes('green') ? undefined : written ? false : undefined;
  // A plate for one laser may be sensitive to other colours as well.
  return written ? false : undefined;
}
