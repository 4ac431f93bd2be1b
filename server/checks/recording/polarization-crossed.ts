import { percent, percentBand } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import type { PairPolarization } from '../../results/polarization/polarization.ts';
import type { Results } from '../../results/plan.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check, type Data } from '../check.ts';

/** Shares of the object light below which there is a note, and a warning. */
export const HALF = 0.5;
const FIFTH = 0.2;

export const polarizationCrossed: Check = {
  code: 'polarization-crossed',
  severity: 'warning',
  title: 'Much of the object light is polarized across the reference and makes no fringes',
  page: `**What you see.** A faint image on a well exposed plate, though ratio and paths are right.

**Why.** Only light that is polarized alike interferes. Mirrors in the plane of the table keep vertical light vertical; two mirrors that lead a beam up and across turn it, a half-wave plate turns it by twice the angle to its axis, a polarizer lets through what is along its own. A rough object gives back a part that has lost its
polarization: half of that makes fringes at most. A laser that is polarized at random makes two sets of fringes, which lie on one another where the mirrors of both arms differ by an even number, the object counted as one, and for beams from opposite sides of the plate by an odd one. Light polarized along the table loses by the angle of both beams inside the layer. A warning where less than a fifth
of the object light makes fringes, a note below a half. Mirrors are taken to be ideal; without places, all folds to lie in the table's plane.

**What to do.** Turn both beams alike: fold in the table's plane, or put a half-wave plate into one of them. A sheet of polarizer held before the plate shows what is there: read the object light through it (\`measured object at P1 through polarizer\`), and that reading counts.`,
  example: `setup "Whelk shell" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    polarization: vertical
  }
  splitter S1
  half-wave plate HW1 {
    axis: 45°
  }
  object whelk {
    depolarization: 10%
  }
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> HW1: 300 mm
    -> whelk: 900 mm
    -> P1: 300 mm
}
`,
  severityOf: d => (num(d, 'share') < FIFTH ? 'warning' : 'note'),
  message: d => `${d['wide'] === true ? percentBand(num(d, 'low'), num(d, 'high')) : `Only ${percent(num(d, 'share'))}`} of the light of ${text(d, 'arm')} makes fringes with that of ${text(d, 'reference')} on ${text(d, 'plate')}: ${cause(d)}`,
  run: r => r.polarization.pairs.flatMap((p): Problem[] => {
    if (!p.told || p.share.missing || isRead(p, r)) return [];
    const { graph } = r;
    const value = graph.value(p.share)!;
    if (value >= HALF && p.laser.known) return [];
    const { low, high } = interval(graph, p.share);
    // Where nobody has told how the laser is polarized, the better of both counts.
    const share = p.laser.known ? value : high;
    if (share >= HALF) return [];
    const { by, things } = r.polarization.cause(p);
    const [least, most] = [Math.max(0, low), Math.min(1, high)];
    return [{
      code: 'polarization-crossed', at: p.plate.at, subject: p.pair.arm.name === 'object' ? p.plate.id : `${p.plate.id}.${p.pair.arm.name}`, setup: r.setup.name,
      data: { plate: p.plate.id, arm: p.pair.arm.name, reference: p.pair.reference.name, share: round(share), low: round(least), high: round(most), wide: most - least > 0.1, by, things: things.join(' and ') },
    }];
  }),
};

const round = (v: number): number => Number(v.toPrecision(3));

/** What a sheet of polarizer has told goes before what the mirrors are thought to do. */
const isRead = (p: PairPolarization, r: Results): boolean =>
  r.light.plates.some(l => l.plate === p.plate && l.objects.some(o => o.polarized && !o.polarized.cell.missing && (o.name === p.pair.arm.name || o.name === 'object')));

function cause(d: Data): string {
  const things = text(d, 'things');
  switch (text(d, 'by')) {
    case 'half-wave plate': return `${things} turns one of them across the other. Set its axis upright or level, or put a like one into the other arm.`;
    case 'polarizer': return `${things} lets through what lies across the other beam. Turn the axes alike.`;
    case 'folds': return `${things} lead${things.includes(' and ') ? '' : 's'} the light out of the table’s plane, which turns its polarization. Fold it in the plane, or put a half-wave plate behind it.`;
    case 'random laser': return `${things} is polarized at random, and by the mirrors of both arms one half of its light makes dark fringes where the other half makes bright ones. Put a polarizer behind the laser, or one mirror more into an arm.`;
    case 'object': return `${things} takes the polarization off most of it. Reckon the ratio with the rest; a polarizer along the reference, before the plate, keeps off what only fogs.`;
    default: return 'both are polarized along the table and meet at a wide angle in the layer. Turn both upright, by half-wave plates at 45° or by the laser.';
  }
}
