import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';

export const filmFlexes: Check = {
  code: 'film-flexes',
  severity: 'note',
  title: 'Film that nothing holds flat flexes during the exposure',
  page: `**What you see.** Nothing at all, or a plate that has an even density and no image; broad dark patches where the film lay loose.

**Why.** Half a wavelength of movement takes the fringes away, and film moves by far more: held by its rim it is a drum, and between two glasses that are clipped together it touches here and there only, creeps as it warms, and air trapped between makes coloured rings.

**What to do.** Lay it on one piece of glass with a film of liquid of its index, or by water or vacuum, squeeze the air out, let it rest for half an hour (an hour where it is wet), and write \`base: film on glass\`.

\`\`\`plate
setup "Cockle" {
  laser red {
    coherence length: 200 mm
  }
  plate P1 {
    base: film on glass
  }
  object cockle
  beam all from red
    -> P1 through: 900 mm
    -> cockle: 12 mm
    -> P1: 12 mm
}
\`\`\``,
  example: `setup "Cockle" {
  laser red {
    coherence length: 200 mm
  }
  plate P1 {
    base: film between glass
  }
  object cockle
  beam all from red
    -> P1 through: 900 mm
    -> cockle: 12 mm
    -> P1: 12 mm
}
`,
  message: d => `${text(d, 'plate')} is ${text(d, 'base') === 'film' ? 'film with nothing behind it, which flexes in its holder' : 'film between clipped glass, which flexes where the glass does not touch it'}: half a wavelength of that takes the image away. Lay it on one glass with a liquid of its index, squeeze the air out, let it rest half an hour, and write “base: film on glass”.`,
  run: ({ plates, values, setup }) => plates.flatMap(({ plate }): Problem[] => {
    const base = values.words(plate, 'base');
    return base === 'film' || base === 'film between glass' ? [{ code: 'film-flexes', at: plate.facts.get('base')?.at ?? plate.at, subject: plate.id, setup: setup.name, data: { plate: plate.id, base } }] : [];
  }),
};
