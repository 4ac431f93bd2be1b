import { percent } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';

/** Of its full brightness: an image that gets less hardly shows beside a bright one; common practice. */
const SHOWS = 0.1;

export const exposuresMixed: Check = {
  code: 'exposures-mixed',
  severity: 'note',
  title: 'One lamp shows the images of two exposures at once',
  page: `**What you see.** Both images stand in each other, as in a photograph that was exposed twice.

**Why.** Fringes answer light that comes as their reference came. How far it may be turned before they go dark follows from the thickness of the layer and from how fine they are: a thin layer, or references that came from nearly the same side, cannot tell one from the other.

**What to do.** If both shall be seen together, let it stand, and say so by \`accept\`. Else bring the references farther apart, take a thicker layer, or let the second reference come from another side.`,
  example: `setup "Limpet, twice" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  object limpet {
    size: 40 x 30 x 20 mm
  }
  plate P1 {
    size: 63 x 63 mm
    layer: 7 µm
    reference angle: 45°
    object angle: 0°
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1300 mm
  beam object from S1 reflected
    -> limpet: 1100 mm
    -> P1: 200 mm
  variant "lamp moved up" {
    P1.reference angle: 47°
  }
  exposure first
  exposure second {
    variant: "lamp moved up"
  }
  lamp bench {
    distance: 1300 mm
    angle: 45°
    laser: red
  }
}
`,
  message: d => `Under ${text(d, 'lamp')} both the image of ${text(d, 'first')}, with ${percent(num(d, 'one'))} of its full brightness, and that of ${text(d, 'other')}, with ${percent(num(d, 'two'))}, are seen at once: in so thin a layer their references came from too nearly the same side. Bring them farther apart, or accept it where both shall be seen.`,
  run: r => r.registers.flatMap((s): Problem[] => {
    if (!s.oneColour) return [];
    const [one, two] = [s.first, s.other].map(x => (x.shown.image?.brightness ? x.graph.value(x.shown.image.brightness) : undefined));
    if (one === undefined || two === undefined || one < SHOWS || two < SHOWS) return [];
    const [first, other] = [s.first.exposure.thing, s.other.exposure.thing];
    return [{ code: 'exposures-mixed', at: other.at, subject: `${other.id}.${s.lamp.id}`, setup: r.setup.name, data: { lamp: s.lamp.id, first: first.id, other: other.id, one, two } }];
  }),
};
