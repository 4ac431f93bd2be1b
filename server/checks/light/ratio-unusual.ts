import { plain } from '../../model/show.ts';
import type { Problem, Thing } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';

interface Usual { readonly from: number; readonly to: number; readonly what: string; readonly single: boolean }

/** Between which ratios such a plate is usually shot (common practice). */
function rangeOf(plate: Thing, laser: Thing | undefined, { arms, setup }: Results): Usual {
  const own = arms.arms.filter(a => a.plate === plate && (!laser || a.laser === laser));
  const reference = own.find(a => a.role === 'reference');
  const objects = own.filter(a => a.role === 'object');
  if (objects.some(a => a.object?.kind.light === 'diffracts')) return { from: 1, to: 3, what: 'a transfer', single: false };
  const hologram = setup.facts.get('hologram')?.value;
  const reflection = hologram?.kind === 'words' && hologram.text === 'reflection';
  const single = reference !== undefined && objects.some(a => a.beam === reference.beam);
  return { from: reflection || single ? 1 : 2, to: 10, what: reflection ? 'a reflection hologram' : 'a master', single };
}

export const ratioUnusual: Check = {
  code: 'ratio-unusual',
  severity: 'note',
  title: 'The beam ratio is outside the range in which such holograms are usually shot',
  page: `**What you see.** With too little reference light: a hazy halo around the image, and noise. With too much: a clean but weak image.

**Why.** The ratio is the reference light at the plate to the object light. Masters are usually shot at 2:1 to 10:1, split-beam reflection holograms at 1:1 to 10:1, transfers at 1:1 to 3:1 (common practice; books differ). What nobody has metered is judged by the plan, and only where all that it may be lies outside. In a single-beam setup the ratio follows from how light the object is, and nothing on the table changes it.

**What to do.** Set the splitter so that more or less goes to the object, or weaken one of the beams, and read both again. In a single-beam setup a lighter object, or one that is painted, brings the ratio down.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
  meter needle {
    head: 8 mm
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  measured reference at P1: 80 by needle
  measured object at P1: 5 by needle
}
`,
  message: d => {
    const predicted = d['predicted'] === true;
    const ratio = predicted ? `${plain(num(d, 'low'), 2)}:1 to ${plain(num(d, 'high'), 2)}:1, by the plan,` : `${plain(num(d, 'ratio'), 2)}:1`;
    const range = `${num(d, 'from')}:1 to ${num(d, 'to')}:1`;
    const much = num(d, 'ratio') > num(d, 'to');
    const seen = much ? 'the image will be clean but weak' : 'a haze around the image and noise are to be expected';
    if (d['single'] === true) return `The reference is ${ratio} to the object light at ${text(d, 'plate')}, where ${range} is usual: ${seen}. In a single-beam setup only the tone of the object changes that: ${much ? 'a lighter or painted object helps' : 'a darker object helps'}.`;
    return `The reference is ${ratio} to the object light at ${text(d, 'plate').replace(/,$/, '')}; ${text(d, 'what')} is usually shot at ${range}, and ${seen}. Send ${much ? 'more' : 'less'} light to the object, then ${predicted ? 'meter both' : 'read both again'}.`;
  },
  run: r => r.light.plates.flatMap((p): Problem[] => {
    const ratio = r.graph.value(p.ratio);
    if (ratio === undefined) return [];
    const { from, to, what, single } = rangeOf(p.plate, p.laser, r);
    if (ratio >= from && ratio <= to) return [];
    const { low, high } = interval(r.graph, p.ratio);
    // Only where its uncertainty does not reach back into the range.
    if (low <= to && high >= from) return [];
    const reading = p.objects[0]?.read.reading ?? p.reference?.read.reading;
    return [{ code: 'ratio-unusual', at: reading?.at ?? r.setup.facts.get('beam ratio')?.at ?? p.plate.at, subject: p.name, setup: r.setup.name, data: { plate: p.laser ? `${p.plate.id}, in the light of ${p.laser.id},` : p.plate.id, ratio, from, to, what, single, ...(p.predicted.ratio ? { predicted: true, low, high } : {}) } }];
  }),
};
