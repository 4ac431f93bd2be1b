import { parseUnit } from '../../model/units.ts';
import { plain } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';

/** Readings that are said to be exact are not: a hand does not hold a head better than this share of the light. */
const LEAST = 0.01;
const MICRO = parseUnit('µW/cm²')!.factor;
const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(0)}°`;

export const angleDisagrees: Check = {
  code: 'angle-disagrees',
  severity: 'warning',
  title: 'Two readings of the reference imply another angle at the plate than the plan has',
  page: `**What you see.** The finished hologram is brightest under another angle of the lamp than planned; or one of the readings is wrong.

**Why.** The same beam reads less in the plane of the plate than with the head facing it, by the cosine of its angle. What two readings imply is compared with the angle of the plan; the finding is raised where they differ by more than three times their uncertainty.

**What to do.** Look whether the head faced the beam, and lay flat in the plane of the plate. If so, the plate or the last mirror is turned otherwise than planned: turn it back, or write the angle that was read.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1 {
    reference angle: 50°
  }
  meter meter-1 {
    calibration: 1 ± 5%
    dark: 0 nW
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  measured reference at P1 facing beam: 1.6 µW/cm² ± 1% by meter-1
  measured reference at P1: 1.31 µW/cm² ± 1% by meter-1
}
`,
  message: d => `Readings of ${plain(num(d, 'facing') * num(d, 'scale'), 3)} facing the beam and ${plain(num(d, 'flat') * num(d, 'scale'), 3)} in the plane mean that “${text(d, 'arm')}” arrives at ${text(d, 'plate')} at ${degrees(num(d, 'read'))}; the plan says ${degrees(num(d, 'planned'))}. See how the head was held, then how the plate and the last mirror stand.`,
  run: ({ light, graph, setup }) => light.plates.flatMap(p => [...(p.reference ? [p.reference] : [])].flatMap((a): Problem[] => {
    if (!a.angle) return [];
    const { read, quotient, planned, facing, flat } = a.angle;
    const [q, angle] = [graph.value(quotient), graph.value(planned)];
    if (q === undefined || angle === undefined) return [];
    // Compared as cosines: near 0° an angle by readings has no uncertainty of its own that means anything.
    const u = Math.hypot(graph.uncertainty(quotient), Math.sin(angle) * graph.uncertainty(planned));
    if (Math.abs(q - Math.cos(angle)) <= Math.max(3 * u, LEAST)) return [];
    const unit = flat.kind === 'bare' ? 1 : (flat.cell.unit?.factor ?? MICRO);
    return [{
      code: 'angle-disagrees', at: flat.reading.at, subject: p.plate.id, setup: setup.name,
      data: { plate: p.plate.id, arm: a.name, facing: graph.value(facing.cell)!, flat: graph.value(flat.cell)!, scale: 1 / unit, read: graph.value(read)!, planned: Math.abs(angle) },
    }];
  })),
};
