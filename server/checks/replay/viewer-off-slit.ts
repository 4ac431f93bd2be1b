import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { figure, mm, nm, recording } from '../shown-words.ts';

/** From so wide a band on it is no longer one colour, and from which it runs through all of them; handbooks’ colours, from memory. */
const NOTED = 40e-9;
const ALL = 150e-9;

export const viewerOffSlit: Check = {
  code: 'viewer-off-slit',
  severity: 'note',
  title: 'The viewer stands nearer or farther than where the slit of a rainbow hologram is imaged',
  page: `**What you see.** Bands of colours over the image, from red to violet, and not the whole of it in one colour; with a narrow slit only a band of it at all.

**Why.** One looks at a rainbow hologram through the image of its slit. With the eye in it, all of the plate sends the same colour. Nearer or farther, each height of the plate is seen through another height there, and so in another colour: over a plate of height H, with the slit imaged at S and the eye at V, as many of them as a slit H · |1 − S/V| wide would pass.

**What to do.** Look from where the slit is imaged, and write that as the \`distance\` of the viewer. Before the plate is shot: bring the master as far from it as the viewer will stand; a lamp farther off brings the slit’s image nearer, one that is nearer moves it away.`,
  example: `setup "Winkles, rainbow" {
  hologram: rainbow
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  slit mask {
    width: 4 mm
  }
  hologram H1 {
    image: real
    image distance: 300 mm
  }
  plate P2 {
    size: 100 x 100 mm
    reference angle: 45°
    reference from: above
    reference distance: parallel
    object angle: 0°
  }
  lamp spot {
    distance: 3 m
    angle: 45°
  }
  viewer visitor {
    distance: 700 mm
    angle: 0°
  }
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P2: 1500 mm
  beam master from S1 reflected
    -> mask: 1199 mm
    -> H1: 1 mm
  beam image from H1 diffracted
    -> P2: 300 mm
}
`,
  severityOf: d => (num(d, 'colours') >= ALL ? 'warning' : 'note'),
  message: d => `${capital(text(d, 'viewer'))} looks from ${mm(d, 'distance')}, and the slit of ${text(d, 'hologram')} is imaged ${mm(d, 'slit')} before ${text(d, 'plate')}: from edge to edge the image runs through about ${nm(d, 'colours')} of colours, in bands. From ${mm(d, 'slit')} all of it has one colour.`,
  run: ({ replay, graph, setup }) => replay.all.flatMap((s): Problem[] => {
    const { colours, distance, viewer, opening } = s.view;
    const [band, away, slit] = [colours, distance, opening?.place].map(c => c && graph.value(c));
    if (!s.image || !viewer || band === undefined || away === undefined || slit === undefined || band < NOTED) return [];
    return [{ code: 'viewer-off-slit', at: viewer.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { viewer: viewer.id, ...recording(s), lamp: s.lamp.id, hologram: s.pair.pair.arm.object!.id, distance: figure(away), slit: figure(Math.abs(slit)), colours: figure(band) } }];
  }),
};
