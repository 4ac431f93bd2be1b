import type { Setup } from '../../model/model.ts';
import { text, type Check } from '../check.ts';

export const armMissing: Check = {
  code: 'arm-missing',
  severity: 'warning',
  title: 'A plate gets light from the object only, or from the reference only',
  page: `**What you see.** Nothing on the plate but grey: there are no fringes.

**Why.** A hologram needs two beams of one laser on the plate, light from the object and a reference. This plate gets only one of them.

**What to do.** Add the missing beam. An arm carries object light when it meets an object (or a diffracting hologram, a ground glass) on its way; else it is a reference.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 200 mm
  }
  object whelk
  plate P1
  beam object from red
    -> whelk: 900 mm
    -> P1: 300 mm
}
`,
  message: d => `${text(d, 'plate')} gets ${d['missing'] === 'reference' ? 'light from the object, but no reference' : 'a reference, but no light from an object'} of ${text(d, 'laser')}, so that there are no fringes. Add a beam that brings it.`,
  run: ({ plates, arms, setup }) => (arms.broken.size > 0 || arms.problems.length > 0 || unfinished(setup) ? [] : plates.flatMap(p => {
    const lasers = new Map(p.arms.map(a => [a.arm.laser, new Set<string>()]));
    for (const a of p.arms) lasers.get(a.arm.laser)!.add(a.arm.role);
    return [...lasers].filter(([, roles]) => roles.size === 1).map(([laser, roles]) => (
      { code: 'arm-missing', at: p.plate.at, subject: p.plate.id, setup: setup.name, data: { plate: p.plate.id, laser: laser.id, missing: roles.has('reference') ? 'object light' : 'reference' } }));
  })),
};

/** A beam with a line that cannot be read, or a name that is nothing, may well be the missing one. */
const unfinished = (setup: Setup): boolean => setup.unsure || [...setup.beams.values()].some(b => !b.from || b.node.line.issue !== undefined || b.legs.some(l => !l.target || l.node.line.issue !== undefined));
