import { plain } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { RESOLVING_MARGIN } from '../../results/rules/fringes.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';
import { whole } from '../words.ts';

export const fringesTooFine: Check = {
  code: 'fringes-too-fine',
  severity: 'warning',
  title: 'The fringes are finer than the stock records',
  page: `**What you see.** A plate that is well exposed, and nothing or next to nothing on it. Of a reflection hologram often a faint transmission image is there: its fringes are coarser. Where only the finest fringes are too fine, the image fails towards the edges of the plate and of the object.

**Why.** Two beams that meet from opposite sides of a plate make fringes nearly as fine as light can: 2n/λ, 4,800 lines/mm and more for red light in gelatin. Beams from one side make |sin θ₁ − sin θ₂|/λ. What a stock is rated at is where it gives out, and by then the fringes are faint: common practice keeps a third to spare, and for a reflection hologram a stock without that records weaker. A note where little is spared or where it cannot be told for sure, a warning where the fringes are too fine for certain.

**What to do.** Choose a finer stock, which needs more exposure. For a transmission hologram bring the reference nearer to the object, or stand the object farther away from the plate. A longer wavelength makes coarser fringes.`,
  example: `setup "Whelk shell" {
  hologram: reflection
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1 {
    material: fine-grain silver halide
    reference angle: 45°
    object angle: 0°
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
  severityOf: d => (num(d, 'low') > 1 ? 'warning' : 'note'),
  message: d => {
    const reflection = text(d, 'way') === 'reflection';
    const stock = `The stock of ${text(d, 'plate')} resolves ${d['about'] === true ? 'about ' : ''}${lines(num(d, 'rated'))}, this ${reflection ? 'reflection' : 'transmission'} hologram needs ${lines(num(d, 'needed'))}`;
    if (num(d, 'low') > 1) return `${stock}: ${reflection ? 'nothing will record' : `what makes the finest fringes, ${text(d, 'where')}, will not record`}. Choose a finer stock${reflection ? '' : ', or bring the reference nearer to the object'}.`;
    return `${stock}${reflection ? ': there is nothing to spare, so that it records weaker, and perhaps not at all' : `, ${text(d, 'where')}: there it may not record`}. A finer stock is surer.`;
  },
  run: ({ fringes, graph, setup }) => fringes.pairs.flatMap((f): Problem[] => {
    if (!f.share || !f.rated || f.share.missing || f.finest.missing) return [];
    const [share, { low }] = [graph.value(f.share)!, interval(graph, f.share)];
    if (share < (f.way === 'reflection' ? 1 / RESOLVING_MARGIN : 1)) return [];
    return [{
      code: 'fringes-too-fine', at: f.plate.at, subject: `${f.plate.id}.${f.pair.arm.name}`, setup: setup.name,
      data: { plate: f.plate.id, way: f.way, share: round(share), low: round(low), needed: round(graph.value(f.finest)!), rated: graph.value(f.rated)!, about: f.rated.origin === 'assumed', where: spotWords(f.spot, f.plate.id, f.pair.arm.object!.id) },
    }];
  }),
};

const round = (v: number): number => Number(v.toPrecision(3));
/** `4,800 lines/mm`; `v` in 1/m. */
const lines = (v: number): string => `${v >= 1e6 ? whole(Math.round(v / 1000)) : plain(v / 1000, 3)} lines/mm`;

/** Where on the plate, and with light from which part of the object. */
export function spotWords(spot: { readonly plate: readonly number[]; readonly object: readonly number[] }, plate: string, object: string): string {
  const part = (at: readonly number[], of: string): string => {
    const off = at.slice(0, 2).filter(v => v !== 0).length;
    return `${off === 0 ? 'the middle' : off === 1 ? 'an edge' : 'a corner'} of ${of}`;
  };
  return `at ${part(spot.plate, plate)} with light from ${part(spot.object, object)}`;
}
