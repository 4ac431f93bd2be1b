import type { Problem } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { num, text, type Check } from '../check.ts';
import { figure, middle, mm } from '../shown-words.ts';

/** Multiples of what an eye tells apart, from which colours beside each other are seen as coloured edges; common practice. */
const SEEN = 3;

export const coloursApart: Check = {
  code: 'colours-apart',
  severity: 'warning',
  title: 'The images that several lasers recorded on one plate do not lie on each other',
  page: `**What you see.** Edges have a rim of one colour on one side and of another on the other side; seen from elsewhere the rims differ.

**Why.** Each laser records fringes of its own. The lamp shows each of them where its reference, its colour and the thickness of the finished layer put it: where these differ, so do the places, the directions and the sizes of the images. What lies deep behind or before the plate comes apart most. It is told where an eye at the place of the viewer sees the same point of both farthest apart, and only where that is more than the blur of the image.

**What to do.** Let all references come from one place, as through one spreading lens, and hang the lamp as far off as they came. Bring the image nearer to the plate. Where a layer that shrinks turns the colours, each by another angle, swell or shrink it so that they come back.`,
  example: `setup "Glazed tile" {
  hologram: reflection
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  laser green {
    wavelength: 532.1 nm
    coherence length: 5 m
  }
  splitter SR
  splitter SG
  spreader LR {
    focal length: 5 mm
  }
  spreader LG {
    focal length: 5 mm
  }
  object tile {
    size: 40 x 40 x 10 mm
  }
  plate P1 {
    size: 63 x 63 mm
    reference angle: 45°
  }
  beam raw-red from red
    -> SR: 300 mm
  beam reference-red from SR through
    -> LR: 300 mm
    -> P1: 1000 mm
  beam object-red from SR reflected
    -> tile: 1240 mm
    -> P1: 60 mm
  beam raw-green from green
    -> SG: 300 mm
  beam reference-green from SG through
    -> LG: 500 mm
    -> P1: 500 mm
  beam object-green from SG reflected
    -> tile: 940 mm
    -> P1: 60 mm
  lamp spot {
    distance: 1000 mm
    angle: 45°
    size: 1 mm
  }
  viewer visitor {
    distance: 600 mm
  }
}
`,
  message: d => `Under ${text(d, 'lamp')} the image of ${text(d, 'plate')} by ${text(d, 'laser')} lies up to ${mm(d, 'apart')} beside that by ${text(d, 'first')}, ${Math.round(num(d, 'beside'))} times what an eye tells apart there: edges will have coloured rims. Let both references come from one place, or bring the image nearer to the plate.`,
  run: r => [...lasers(r), ...exposures(r)],
};

/** Recorded at once, each laser by itself. */
function lasers({ replay, graph, setup }: Results): Problem[] {
  return replay.all.flatMap((s): Problem[] => {
    const [apart, unseen] = [s.apart?.cell, s.apart?.unseen].map(c => c && graph.value(c));
    const blurs = [s, s.apart?.first].map(x => x && middle(x)?.blur).map(c => (c && graph.value(c)) ?? 0);
    if (apart === undefined || unseen === undefined || apart < SEEN * unseen || apart < Math.max(...blurs)) return [];
    return [{
      code: 'colours-apart', at: s.lamp.at, subject: `${s.plate.id}.${s.laser!.id}.${s.lamp.id}`, setup: setup.name,
      data: { lamp: s.lamp.id, plate: s.plate.id, laser: s.laser!.id, first: s.apart!.first.laser!.id, apart: figure(apart), beside: figure(apart / unseen) },
    }];
  });
}

/** Recorded one after the other. */
function exposures(r: Results): Problem[] {
  return r.registers.flatMap((s): Problem[] => {
    const [apart, unseen] = [s.apart, s.unseen].map(c => c && r.graph.value(c));
    const blurs = [s.first, s.other].map(x => { const c = middle(x.shown)?.blur; return (c && x.graph.value(c)) ?? 0; });
    if (s.oneColour || apart === undefined || unseen === undefined || apart < SEEN * unseen || apart < Math.max(...blurs)) return [];
    const [first, other] = [s.first.exposure.thing.id, s.other.exposure.thing.id];
    return [{ code: 'colours-apart', at: s.lamp.at, subject: `${s.plate.id}.${other}.${s.lamp.id}`, setup: r.setup.name, data: { lamp: s.lamp.id, plate: s.plate.id, laser: other, first, apart: figure(apart), beside: figure(apart / unseen) } }];
  });
}
