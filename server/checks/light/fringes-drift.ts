import { percentBand, plain, show } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { TIME } from '../../model/units.ts';
import { sample } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';
import { NOTE, WARN } from '../paths/arms-mismatched.ts';

export const fringesDrift: Check = {
  code: 'fringes-drift',
  severity: 'warning',
  title: 'The fringes creep too far during the exposure',
  page: `**What you see.** A dull image, or none, on a plate that is well exposed. It is dull all over, not by depth.

**Why.** Fringes that creep evenly while the shutter is open are smeared: with m fringes going by, the brightness falls to (sin(πm)/(πm))². A tenth of a fringe costs 3 %, a quarter a fifth, a half more than a half, a whole fringe all of it. The rate is the one that was read, the exposure the one that is written for the setup, else the one that follows from the light at the plate. A note below 70 %, a warning below 40 %.

**What to do.** Wait until the table has settled, and read the drift again; find what warms or creeps (a lamp, a draught, glue, a hand’s warmth, film in its holder). A shorter exposure with more light helps in the same measure.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  exposure: 60 s
  measured drift at P1: 0.6 fringes/min
}
`,
  severityOf: d => (num(d, 'brightness') < WARN ? 'warning' : 'note'),
  message: d => `At ${text(d, 'plate')} the fringes creep by ${fringes(num(d, 'moved'))} in an exposure of ${show(num(d, 'exposure'), TIME)}, which leaves ${percentBand(num(d, 'low'), num(d, 'high'))} of full brightness. Let the table settle and read again, or expose for at most ${show(num(d, 'longest'), TIME)}.`,
  run: ({ light, graph, setup }) => light.drifts.flatMap((d): Problem[] => {
    const brightness = graph.value(d.brightness);
    if (brightness === undefined || brightness >= NOTE) return [];
    const { low, high } = sample(graph, d.brightness)!;
    const [rate, exposure] = [graph.value(d.rate)!, graph.value(d.exposure)!];
    return [{
      code: 'fringes-drift', at: d.reading.at, subject: d.plate.id, setup: setup.name,
      data: { plate: d.plate.id, moved: Number(Math.abs(rate * exposure).toPrecision(2)), exposure: Number(exposure.toPrecision(2)), brightness, low, high, longest: Number(graph.value(d.longest)!.toPrecision(2)) },
    }];
  }),
};

/** Parts of a fringe that have a word of their own. */
const PARTS: readonly (readonly [number, string])[] = [[1 / 10, 'a tenth'], [1 / 8, 'an eighth'], [1 / 4, 'a quarter'], [1 / 3, 'a third'], [1 / 2, 'half'], [2 / 3, 'two thirds'], [3 / 4, 'three quarters']];

/** `a third of a fringe`, `0.6 of a fringe`, `1 fringe`, `3 fringes`. */
function fringes(moved: number): string {
  if (moved === 1) return '1 fringe';
  if (moved > 1) return `${plain(moved, 2)} fringes`;
  const word = PARTS.find(([part]) => Number(part.toPrecision(2)) === moved)?.[1];
  return word === 'half' ? 'half a fringe' : `${word ?? plain(moved, 2)} of a fringe`;
}
