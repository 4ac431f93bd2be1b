import type { Problem } from '../../model/model.ts';
import { percent, plain } from '../../model/show.ts';
import { num, text, type Check } from '../check.ts';

/** The contour of 99 % lies at 1/1.3 of the one to choose. */
const SMALLEST = 1 / 1.3;
/** Pairs of objective and pinhole that are in use go up to nearly three times the one to choose (25 µm with 4.5 mm, published). */
const WIDEST = 3;

export const pinholeUnfit: Check = {
  code: 'pinhole-unfit',
  severity: 'note',
  title: 'A pinhole does not fit its lens',
  page: `**What you see.** Behind one that is too small: little light, rings round the beam, and hours of setting it. Behind one that is too wide: rings and spots of dust, printed into the image.

**Why.** The focus of a clean beam holds 99 % of its power in a circle of λ f / w, w the radius of the beam on the lens to 1/e². The pinhole to choose is 1.3 times that. One below the circle cuts the beam, and the power behind it is reckoned by what it still lets through, unless a \`loss\` of the lens is written, which has the pinhole in it; one of three times what is to be chosen lets through what it is there to stop. Where the width of the beam is assumed, it has to be
outside by more than that is unsure.

**What to do.** Take the next size that is sold, or another lens.

\`\`\`plate
setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm
    beam diameter: 0.8 mm
  }
  spreader R1 {
    focal length: 16.5 mm
    pinhole: 25 µm
  }
  beam stop B1
  beam raw from red
    -> R1: 400 mm
    -> B1: 400 mm
}
\`\`\``,
  example: `setup "Cockle, single beam" {
  hologram: reflection
  laser red {
    wavelength: 632.8 nm
    coherence length: 20 m
    beam diameter: 0.8 mm
  }
  spreader R1 {
    focal length: 16.5 mm
    pinhole: 5 µm
  }
  plate P1
  object cockle {
    depth: 20 mm
  }
  beam all from red
    -> R1: 400 mm
    -> P1 through: 900 mm
    -> cockle: 12 mm
    -> P1: 12 mm
}
`,
  message: d => {
    if (d['diverging'] === true) return `The lens of ${text(d, 'thing')} spreads the light without a focus, so that a pinhole finds no place. Take out the pinhole, or take a lens that focuses.`;
    const [hole, choose] = ['pinhole', 'choose'].map(k => plain(num(d, k) * 1e6, 2));
    const f = `${plain(num(d, 'f') * 1000, 3)} mm`;
    return num(d, 'fit') < 1 ? `The pinhole of ${text(d, 'thing')}, ${hole} µm, is too small for its lens of ${f}: ${d['share'] === undefined ? 'it costs light' : `it lets ${percent(num(d, 'share'))} of a clean beam through${d['loss'] === undefined ? '' : ` (the light behind it is reckoned by the loss that is written, ${percent(num(d, 'loss'))}, which should have that in it)`}`} and throws rings. Choose ${choose} µm or the next size above it.`
      : `The pinhole of ${text(d, 'thing')}, ${hole} µm, is ${plain(num(d, 'fit'), 2)} times the one to choose for its lens of ${f}: it lets the dirt of the beam through. Choose ${choose} µm or the next size above it.`;
  },
  run: ({ table, setup, graph }) => table.look.pinholes.flatMap(({ thing, fit, choose, share, pinhole, focalLength }): Problem[] => {
    const [value, u, f] = [graph.value(fit)!, graph.uncertainty(fit), graph.value(focalLength)!];
    const loss = thing.facts.get('loss')?.value;
    // A factor either way: what is unsure counts as a share.
    const give = Math.exp((2 * u) / value);
    if (f > 0 && value * give >= SMALLEST && value / give <= WIDEST) return [];
    return [{ code: 'pinhole-unfit', at: thing.facts.get('pinhole')!.at, subject: thing.id, setup: setup.name, data: { thing: thing.id, pinhole: graph.value(pinhole)!, choose: graph.value(choose)!, fit: value, f, ...(share ? { share: graph.value(share)! } : {}), ...(loss?.kind === 'quantity' ? { loss: loss.quantity.value } : {}), ...(f < 0 ? { diverging: true } : {}) } }];
  }),
};
