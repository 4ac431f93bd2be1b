import type { Arm } from '../../model/arms.ts';
import type { Problem } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { maskOf } from '../../results/places/mask.ts';
import { text, type Check } from '../check.ts';
import { figure, mm } from '../shown-words.ts';

/** From one eye to the other, m; common practice. */
const EYES = 65e-3;
/** So many times as high as wide is a slit that stands upright. */
const UPRIGHT = 3;

export const slitUpright: Check = {
  code: 'slit-upright',
  severity: 'warning',
  title: 'The slit of a rainbow hologram stands upright for whoever looks at it',
  page: `**What you see.** No depth: the image looks as flat as a picture, or one eye sees it and the other a bare plate. It looks round the object as the head nods, and its colours change as the head goes sideways.

**Why.** One looks at a rainbow hologram through the image of its slit. Along the slit the views of the object lie side by side, so it has to be level, where the eyes are: ${EYES * 1000} mm apart. An upright slit of a few millimetres has room for one of them.

**What to do.** Turn the slit by a quarter, and let the reference come from above or below, as whoever looks sees it. On a table that is most easily done with the scene on its side: the slit upright, the reference level, and \`up: left\` or \`up: right\` in the plate. Where it was so, write that.`,
  example: `setup "Rainbow" {
  hologram: rainbow
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  slit mask {
    width: 2 mm
    direction: vertical
  }
  hologram H1
  plate H2 {
    reference angle: 30°
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> H2: 1600 mm
  beam feed from S1 reflected
    -> mask: 1399 mm
    -> H1: 1 mm
  beam image from H1 diffracted
    -> H2: 200 mm
}
`,
  message: d => `What is open of ${text(d, 'hologram')} stands upright for whoever looks at ${text(d, 'plate')}, ${mm(d, 'width')} wide: their eyes are ${EYES * 1000} mm apart and look side by side, so that the image has no depth. Turn the slit by a quarter; if the scene lies on its side, write “up: left” or “up: right” in ${text(d, 'plate')}.`,
  run: r => r.plates.flatMap(p => p.pairs).flatMap(({ arm }): Problem[] => {
    // Along the reference as well it is the same slip, which has a finding.
    const width = r.fringes.pairs.some(f => f.pair.arm === arm && f.slit === 'along') ? undefined : widthSeen(arm, r);
    return width === undefined || width >= EYES ? [] : [{ code: 'slit-upright', at: (maskOf(arm, r.values)?.slit ?? arm.object!).at, subject: `${arm.plate.id}.${arm.name}`, setup: r.setup.name, data: { plate: arm.plate.id, hologram: arm.object!.id, width: figure(width) } }];
  }),
};

/** Width of what is open, as whoever looks sees it, where that is an upright slit; undefined elsewhere. */
function widthSeen(arm: Arm, { setup, values }: Results): number | undefined {
  const word = setup.facts.get('hologram')?.value;
  if (word?.kind !== 'words' || word.text !== 'rainbow' || arm.object?.kind.light !== 'diffracts') return undefined;
  const slit = maskOf(arm, values)?.slit;
  if (slit) {
    const width = slit.facts.get('width')?.value;
    return values.words(slit, 'direction') === 'vertical' && width?.kind === 'quantity' ? width.quantity.value : undefined;
  }
  const sides = values.sizes(arm.object, 'size')?.value;
  if (sides?.kind !== 'sizes') return undefined;
  const [one, other] = sides.parts.map(p => p.value);
  const [width, height] = ['left', 'right'].includes(values.words(arm.plate, 'up') ?? 'up') ? [other, one] : [one, other];
  return width !== undefined && height !== undefined && height > UPRIGHT * width ? width : undefined;
}
