import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';

export const masterTurned: Check = {
  code: 'master-turned',
  severity: 'warning',
  title: 'A master stands with its layer on the wrong side, or another edge up',
  page: `**What you see.** With the layer on the wrong side light and image pass the glass once more: the image is displaced by about a third of the thickness of the glass, and the glass throws a second, fainter one. With another edge up the reference does not meet its fringes: no image, or a faint one.

**Why.** A real image stands where the object stood, on the same side of the plate: the layer looks there as it did at the recording. Run backwards, the reference has to come to the same edge of the plate at which it came; where the transfer uses the beam from its other side, the plate is put upside down for that. The pages of recording and transfer tell which.

**What to do.** Turn the plate as the message says. Mark one corner of each plate before it is exposed.`,
  example: `setup "Winkles, transfer" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  hologram H1 {
    recorded as: "Winkles, master"
    turned: flipped
    image: real
    emulsion: away from the image
  }
  plate P2
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P2: 1500 mm
  beam master from S1 reflected
    -> H1: 1300 mm
  beam image from H1 diffracted
    -> P2: 200 mm
}
setup "Winkles, master" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  object winkles
  plate P1 {
    emulsion: toward the object
    reference angle: 45°
    object angle: 0°
    reference distance: parallel
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> winkles: 1300 mm
    -> P1: 200 mm
}
`,
  message: d => (d['what'] === 'layer'
    ? `The layer of ${text(d, 'hologram')} looks ${text(d, 'now')}; it was recorded looking ${text(d, 'recorded')}, and belongs ${text(d, 'belongs')}: so its image is displaced by about a third of the glass, and doubled by it. Turn the plate round.`
    : `Of ${text(d, 'hologram')} the edge that was up at its recording is ${SIDE[text(d, 'now')]!}; for the way in which its light comes it belongs ${SIDE[text(d, 'belongs')]!}: so its fringes are missed, and there is no image. Turn the plate in its own plane.`),
  run: r => r.masters.flatMap(({ hologram, record, up, layer }): Problem[] => {
    const found = (what: string, data: Problem['data']): Problem => ({ code: 'master-turned', at: hologram.facts.get(what === 'layer' ? 'emulsion' : 'up')!.at, subject: `${hologram.id}.${what}`, setup: r.setup.name, data: { hologram: hologram.id, what, ...data } });
    const [faces, top] = ['emulsion', 'up'].map(f => (hologram.facts.has(f) ? r.values.words(hologram, f) : undefined));
    return [
      ...(layer !== undefined && faces !== undefined && faces.startsWith('toward') !== layer ? [found('layer', { now: faces, recorded: record.page.values.words(record.master.plate, 'emulsion')!, belongs: `${layer ? 'toward' : 'away from'} the image` })] : []),
      ...(up && top !== undefined && top !== up ? [found('edge', { now: top, belongs: up })] : []),
    ];
  }),
};

const SIDE: Readonly<Record<string, string>> = { up: 'up', down: 'down', left: 'on the left', right: 'on the right' };
