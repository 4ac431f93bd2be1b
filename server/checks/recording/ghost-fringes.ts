import { percent, percentBand, plain } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { ONE_DEGREE } from '../../model/units.ts';
import type { Ghost } from '../../results/polarization/polarization.ts';
import type { Results } from '../../results/plan.ts';
import { ghostsOfP } from '../../results/rules/polarization.ts';
import { num, text, type Check, type Data } from '../check.ts';

/** Contrast below which nobody sees them on the plate. */
const LEAST = 0.03;

export const ghostFringes: Check = {
  code: 'ghost-fringes',
  severity: 'note',
  title: 'The reference makes ghost fringes in the glass of the plate',
  page: `**What you see.** Wood grain: bands and rings of light and dark over the plate, and in the image.

**Why.** Both faces of the glass reflect. The reference and that part of it that was sent to and fro inside run on together, and their contrast is 2R/(1 + R²): 9 % squarely on, 19 % for s-polarized light at 45°, 2 % for p there. From one band to the next the glass is thicker by λ/(2n cos θ), so that even good glass has many. The light off the
back face runs against the reference, and with 2√R/(1 + R) makes a faint reflection hologram of it, where the stock is fine enough. s is polarized along the plate and across the plane in which the light slants, p lies in that plane: for a reference from the side vertical light is s, for one from above it is p. Below 3 % there is no note.

**What to do.** Turn the reference, and the object light with it, to p, best near Brewster's angle of 56.7°, where nothing is reflected; p costs fringes where both beams meet at a wide angle. Or put a black glass behind the plate with a liquid of the index of glass between, and write \`backing: index-matched\`. Where the bands do not matter, accept them.`,
  example: `setup "Whelk shell" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    polarization: vertical
  }
  splitter S1
  object whelk
  plate P1 {
    reference angle: 45°
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
  message: d => `The light of ${text(d, 'reference')} makes ghost fringes in the glass of ${text(d, 'plate')}, with a contrast of ${percentBand(num(d, 'low'), num(d, 'high'))} (wood grain)${d['many'] === true ? '; on other plates as well' : ''}. ${cure(d)}`,
  run: r => {
    const all = r.polarization.ghosts.flatMap(g => figures(g, r)).filter(g => g.high >= LEAST);
    const worst = all.reduce<(typeof all)[number] | undefined>((w, g) => (!w || g.high > w.high ? g : w), undefined);
    if (!worst) return [];
    const { ghost, low, high, angle } = worst;
    return [{
      code: 'ghost-fringes', at: ghost.plate.at, subject: ghost.plate.id, setup: r.setup.name,
      data: { plate: ghost.plate.id, reference: ghost.arm.name, low: round(low), high: round(high), back: round(r.graph.value(ghost.backFace) ?? 0), angle: round(angle / ONE_DEGREE), p: round(ghostsOfP(angle, r.graph.value(ghost.index)!)), many: all.length > 1 },
    } satisfies Problem];
  },
};

const round = (v: number): number => Number(v.toPrecision(3));

/** Where nobody has told how the laser is polarized, both ways in which it may be. */
function figures(ghost: Ghost, { graph }: Results): { readonly ghost: Ghost; readonly low: number; readonly high: number; readonly angle: number }[] {
  const angle = graph.value(ghost.angle);
  if (ghost.fringes.missing || angle === undefined) return [];
  const found = ghost.laser.known ? [graph.value(ghost.fringes)!] : [1, 0].map(share => graph.evaluate(ghost.fringes, new Map([[ghost.laser.share, share]])));
  return [{ ghost, angle: Math.abs(angle), low: Math.min(...found), high: Math.max(...found) }];
}

function cure(d: Data): string {
  const [angle, p] = [num(d, 'angle'), num(d, 'p')];
  const backing = 'a black backing in a liquid of the index of glass takes them away';
  if (p > 0.7 * num(d, 'high')) return `At ${plain(angle)}° ${backing}; p-polarized light does near 56.7°.`;
  return `p-polarized light leaves ${percent(p)} at ${plain(angle)}°${Math.abs(angle - 56.7) > 5 ? ', and none at 56.7°' : ''}; or ${backing}.`;
}
