import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';
import { angleOff } from './lamp-angle-off.ts';
import { isStretched } from './lamp-distance-off.ts';
import { figure, middle, mm, recording, where } from '../shown-words.ts';

/** Multiples of what an eye tells apart, from which it looks soft; common practice. */
const SOFT = 3;

export const imageAstigmatic: Check = {
  code: 'image-astigmatic',
  severity: 'note',
  title: 'Upright and level lines of the image are sharp at different distances',
  page: `**What you see.** The image looks a little soft however one steps back or forth: lines across the plane of the lamp are sharp at one distance, those along it at another. It seems to stretch and turn as the head moves.

**Why.** Across the plane of the beams 1/R_image = m μ (1/R_object − 1/R_reference) + 1/R_lamp; in that plane each term has cos² of its angle. Only light of the same colour, angle and curvature as the reference gives an image without this fault. An eye of 4 mm pupil, set between both, blurs a point by p/2 · |1/v₁ − 1/v₂|, v its distances from both; it tells one minute of arc apart.

**What to do.** Bring the lamp to the distance and angle of the reference; or, before the plate is shot, let the reference spread from as far as the lamp will be, or come at a smaller angle. An image nearer to the plate, or farther from the eye, shows less of it.`,
  example: `setup "Winkles, transfer" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  hologram H1 {
    image: real
    image distance: 150 mm
  }
  plate P2 {
    reference angle: 60°
    object angle: 0°
    reference distance: parallel
  }
  lamp spot {
    distance: 3 m
    angle: 60°
    laser: red
  }
  viewer visitor {
    distance: 300 mm
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P2: 1500 mm
  beam master from S1 reflected
    -> H1: 1200 mm
  beam image from H1 diffracted
    -> P2: 300 mm
}
`,
  severityOf: d => (num(d, 'beside') >= SOFT ? 'warning' : 'note'),
  message: d => `Lines of the image of ${text(d, 'plate')} that run across the plane of ${text(d, 'lamp')} are sharp ${where(d, 'other')}, all others ${where(d, 'place')}: no eye is sharp for both, and ${text(d, 'viewer')} sees it blurred by ${mm(d, 'blur')}, ${Number(num(d, 'beside').toPrecision(2))} times what an eye tells apart there. A lamp at the distance and angle of the reference makes both one.`,
  run: r => r.replay.all.flatMap((s): Problem[] => {
    const { graph, setup } = r;
    const part = middle(s);
    const [size, blur, unseen, place, other] = [s.image?.size, s.image?.astigmatic, part?.unseen, part?.place, s.image?.other].map(c => c && graph.value(c));
    // Of a lamp that is off by more there is a finding that says so.
    if (!s.view.viewer || size === undefined || isStretched(size) || angleOff(s, r) || blur === undefined || unseen === undefined || place === undefined || other === undefined || blur < unseen) return [];
    return [{ code: 'image-astigmatic', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { lamp: s.lamp.id, ...recording(s), viewer: s.view.viewer.id, place: figure(place), other: figure(other), blur: figure(blur), beside: figure(blur / unseen) } }];
  }),
};
