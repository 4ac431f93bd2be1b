import { coherenceUntold } from '../../results/coherence.ts';
import { text, type Check } from '../check.ts';

export const coherenceUnknown: Check = {
  code: 'coherence-unknown',
  severity: 'note',
  title: 'Nothing says how far apart the paths may be with this laser',
  page: `**What you see.** The mismatch is shown, but not how brightly the object will record.

**Why.** How far the two paths may differ depends on the coherence of the laser, and nothing is written about it.

**What to do.** Write one of: \`tube length\` (a gas laser; the length between its mirrors, roughly that of the tube), \`coherence length\`, or \`linewidth\`. For a tube whose wavelength is not that of a usual gas laser, also \`modes\` or \`gain width\`.`,
  example: `setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm
  }
  splitter S1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> whelk: 1171 mm
    -> P1: 300 mm
}
`,
  message: d => `How brightly ${text(d, 'plate')} records cannot be told: ${text(d, 'why')}. Write a “tube length”, a “coherence length” or a “linewidth” for ${text(d, 'laser')}.`,
  run: ({ plates, values, setup }) => {
    const found = new Map<string, ReturnType<NonNullable<Check['run']>>[number]>();
    for (const p of plates) {
      for (const { arm, coherence } of p.pairs) {
        const lost = coherence?.inputs.find(c => c.missing?.code === 'value-missing');
        const written = ['tube length', 'coherence length', 'linewidth'].some(f => values.isWritten(arm.laser, f));
        // An inventory item that is not found has its own finding; it may state the coherence.
        const elsewhere = arm.laser.node.line.equals !== undefined && !arm.laser.item;
        if (coherence ? !lost : written || elsewhere) continue;
        found.set(arm.laser.id, { code: 'coherence-unknown', at: arm.laser.at, subject: arm.laser.id, setup: setup.name, data: { laser: arm.laser.id, plate: p.plate.id, why: lost?.missing?.why ?? coherenceUntold(arm.laser, values) } });
      }
    }
    return [...found.values()];
  },
};
