import type { Problem, Thing } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { text, type Check } from '../check.ts';

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
  const room = [...r.setup.things.values()].find(t => t.kind.word === 'room' && said(t, 'safelight') !== undefined);
  if (!room) return [];
  const colour = said(room, 'safelight')!;
  return r.plates.flatMap(({ plate }): Safelight[] => {
    const written = said(plate, 'sensitive to');
    const to = written ?? colourOf(r.arms.arms.find(a => a.plate === plate)?.laser);
    return to === undefined ? [] : [{ room, plate, colour, to, by: written === undefined ? 'laser' : 'written', sees: sees(colour, to, said(plate, 'material'), written !== undefined) }];
  });
}

const said = (t: Thing, phrase: string): string | undefined => { const v = t.facts.get(phrase)?.value; return v?.kind === 'words' ? v.text : undefined; };

/** Colour of a laser's light, where it is plainly one of three. */
function colourOf(laser: Thing | undefined): string | undefined {
  const v = laser?.facts.get('wavelength')?.value;
  const nm = v?.kind === 'quantity' ? v.quantity.value * 1e9 : undefined;
  return nm === undefined ? undefined : nm >= 400 && nm < 500 ? 'blue' : nm >= 500 && nm < 570 ? 'green' : nm >= 610 && nm <= 700 ? 'red' : undefined;
}

/** Layers that blue light always works on, whatever they are sensitised to besides (common practice). */
const isBlueByNature = (material: string | undefined): boolean => material !== undefined && /silver halide|gelatin|resist/.test(material);

function sees(colour: string, to: string, material: string | undefined, written: boolean): boolean | undefined {
  if (colour === 'none') return false;
  const colours = to === 'all' ? ['red', 'green', 'blue'] : to.split(' ');
  if (colours.includes(colour) || to === 'all' || (colour === 'blue' && isBlueByNature(material))) return true;
  // Amber lies between red and green: what is made for red takes it in, of green alone only a data sheet tells.
  if (colour === 'amber') return colours.includes('red') ? true : colours.includes('green') ? undefined : written ? false : undefined;
  // A plate for one laser may be sensitive to other colours as well.
  return written ? false : undefined;
}

export const safelightFogs: Check = {
  code: 'safelight-fogs',
  severity: 'warning',
  title: 'The plate is sensitive to the colour of the safelight',
  page: `**What you see.** A grey veil over the whole plate, the denser the longer it lay in the room: dull, noisy images, or none.

**Why.** A plate is fogged by light of the colours that it is sensitive to. They are those that \`sensitive to\` says, else that of the laser, which it is there to record. Amber works on what is made for red; blue works on silver halide, dichromated gelatin and photoresist whatever they are sensitised to besides (common practice). How strong the safelight is and how long the plate lies in it is not reckoned.

**What to do.** Take a safelight of a colour that the plate does not see: green for a plate that is for red only, red for one that is for green or blue. Else work in the dark. Test it: a coin on a piece of plate, as long as settling takes, developed: it must not show.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  room {
    safelight: red
  }
  splitter S1
  object whelk
  plate P1 {
    sensitive to: red
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
}
`,
  message: d => `The safelight is ${text(d, 'colour')}, and ${text(d, 'plate')} ${d['by'] === 'laser' ? `is there to record ${text(d, 'to')} light` : `is sensitive to ${text(d, 'to')}`}: it will be fogged while it lies open. Take a safelight of a colour that the plate does not see, or work in the dark.`,
  run: r => safelights(r).filter(s => s.sees === true).map(({ room, plate, colour, to, by }): Problem => ({ code: 'safelight-fogs', at: room.facts.get('safelight')!.at, subject: plate.id, setup: r.setup.name, data: { plate: plate.id, colour, to, by } })),
};
