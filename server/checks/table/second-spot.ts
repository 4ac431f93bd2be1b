import type { Problem } from '../../model/model.ts';
import { millimetres, percentBand, plain, show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check, type Data } from '../check.ts';
import { quoted } from '../words.ts';

/** Fringes of a weaker contrast nobody sees; common practice. */
const LEAST = 0.03;
/** Of two beams, the weaker of which has that share of both. */
const contrast = (share: number): number => 2 * Math.sqrt(share * (1 - share));

export const secondSpot: Check = {
  code: 'second-spot',
  severity: 'note',
  title: 'The second spot of a splitter travels on with its beam',
  page: `**What you see.** A ghost of the setup: a doubled image, or shadows with a second edge. Where the second spot overlaps the first, fringes across the beam, which the plate records.

**Why.** A splitter is glass of a thickness t, and its back face throws light back too. That leaves beside the beam that the front reflects: parallel to it, 2t sin θ cos θ / √(n² − sin²θ) to its side, 2.3 mm for 3 mm of glass at 45°. A \`wedge\` α between the faces turns it off by 2α √(n² − sin²θ) / cos θ, 1.9° for half a degree at 45°.
The spot is followed along the beam, by the middle of its light: it is stopped by an aperture or a slit that is too narrow, by the edge of a face, by a pinhole for which its angle is too large, and behind a lens that spreads the beam it mostly goes past what is lit. A pinhole does not stop a spot that runs parallel to the beam: both come to the same focus.
Told only where the \`thickness\` is written and places tell the angle, and where the spot, were the back face bare, makes fringes of 3 % contrast or more.

**What to do.** Where both spots stand apart, let a card or an iris behind the splitter stop the second. Else take a splitter whose faces make a wedge, and catch its second spot on a card. A coating on the back face weakens it. Where nothing of it is seen, accept it.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 20 m
    beam diameter: 0.8 mm
    polarization: vertical
  }
  splitter S1 at (300, 0) mm {
    reflects: 50% ± 5 points
    thickness: 3 mm
    wedge: 0.5°
  }
  aperture iris at (300, 120) mm {
    diameter: 3 mm
  }
  spreader R1 at (300, 240) mm {
    focal length: -10 mm
  }
  mirror M1 at (900, 0) mm
  spreader R2 on M1 -> P1 by 60 mm {
    focal length: -10 mm
  }
  object whelk at (300, 640) mm {
    size: 40 x 60 x 35 mm
  }
  plate P1 at (600, 500) mm facing whelk
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> R2
    -> P1
  beam object from S1 reflected
    -> iris
    -> R1
    -> whelk
    -> P1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 20 m
    beam diameter: 0.8 mm
    polarization: vertical
  }
  spreader R1 at (200, 0) mm {
    focal length: -10 mm
  }
  splitter S1 at (300, 0) mm {
    reflects: 50% ± 5 points
    thickness: 3 mm
  }
  mirror M1 at (900, 0) mm {
    diameter: 150 mm
  }
  object whelk at (300, 640) mm {
    size: 40 x 60 x 35 mm
  }
  plate P1 at (600, 500) mm facing whelk
  beam raw from red
    -> R1
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> whelk
    -> P1
}
`,
  message: d => {
    const light = d['high'] === undefined ? '' : `, with ${percentBand(num(d, 'low'), num(d, 'high'))} of the light that is reflected, if that face is bare`;
    const turned = d['angle'] === undefined ? 'parallel to it' : `${show(num(d, 'angle'), ANGLE)} off it`;
    return `The back face of ${text(d, 'splitter')} throws a second spot beside ${quoted(d, 'beam')}, ${millimetres(num(d, 'offset'))} off and ${turned}${light}. It goes on to ${text(d, 'lit')}${d['pinhole'] === undefined ? '' : `, through the pinhole of ${text(d, 'pinhole')} as well`}, and ${apart(d) ? 'a ghost of the setup or a doubled image is recorded' : 'fringes across the beam and a ghost of the setup are recorded'}. ${cure(d)}`;
  },
  run: ({ table, graph, setup }) => table.look.spots.flatMap((s): Problem[] => {
    const { low, high } = s.share ? interval(graph, s.share) : { low: undefined, high: undefined };
    if (high !== undefined && contrast(Math.min(0.5, high)) < LEAST) return [];
    return [{
      code: 'second-spot', at: s.splitter.at, subject: s.splitter.id, setup: setup.name,
      data: {
        splitter: s.splitter.id, beam: s.beam.id, lit: s.lit.id, offset: round(graph.value(s.offset)!), wedged: round(s.wedged), ...(s.angle ? { angle: round(graph.value(s.angle)!) } : {}), ...(s.width === undefined ? {} : { width: round(s.width) }),
        ...(high === undefined ? {} : { low: round(Math.max(0, low)), high: round(Math.min(1, high)) }), ...(s.pinhole ? { pinhole: s.pinhole.id } : {}),
      },
    }];
  }),
};

const round = (v: number): number => Number(v.toPrecision(3));

/** Both spots have all of their width for themselves. */
const apart = (d: Data): boolean => d['width'] !== undefined && num(d, 'offset') >= num(d, 'width');

function cure(d: Data): string {
  const wedge = `a splitter with ${d['angle'] === undefined ? 'a wedge' : 'a steeper wedge'} (0.5° turns the spot off by ${plain((num(d, 'wedged') * 180) / Math.PI, 2)}°)`;
  if (apart(d)) return `Stop it with a card or an iris behind ${text(d, 'splitter')}, where the beam is ${millimetres(num(d, 'width'))} wide and both stand apart; or take ${wedge} and catch the spot on a card.`;
  const where = d['width'] === undefined ? '' : `At ${text(d, 'splitter')} the beam is ${millimetres(num(d, 'width'))} wide, and the spots overlap, so that no card parts them there: `;
  const take = `take ${wedge} and catch the spot on a card${d['width'] === undefined ? ', or stop it with an iris where it stands beside the beam' : ', or split the beam before it is spread'}.`;
  return where ? where + take : `${take.charAt(0).toUpperCase()}${take.slice(1)}`;
}
