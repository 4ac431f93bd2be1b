import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';

export const sidesDisagree: Check = {
  code: 'sides-disagree',
  severity: 'warning',
  title: 'The beams come from the wrong sides for this hologram',
  page: `**What you see.** Another hologram than you meant to make: one that shows its image in white light only as a smear, or one that needs its reference from behind.

**Why.** Beams that reach the plate from the same side record a transmission hologram, beams from opposite sides a reflection hologram. Where the places of the things tell the sides, they are what happens on the table, and the figures follow them.

**What to do.** Move what sends the reference to the plate to its other side, or correct what is written as \`hologram:\`.`,
  example: `setup "Whelk shell" {
  hologram: reflection
  laser red at (0, 0) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (300, 0) mm
  mirror M1 at (500, 0) mm
  mirror M2 at (400, 300) mm
  object whelk at (300, 400) mm
  plate P1 at (700, 400) mm facing whelk
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> M2
    -> P1
  beam object from S1 reflected
    -> whelk
    -> P1
}
`,
  message: d => `“hologram: ${text(d, 'written')}” is written, and the light of ${text(d, 'reference')} and that of ${text(d, 'object')} come to ${text(d, 'plate')} from ${text(d, 'way') === 'transmission' ? 'the same side' : 'opposite sides'}: that records a ${text(d, 'way')} hologram. ` +
    `${text(d, 'way') === 'transmission' ? 'Bring the reference to its other side' : 'Bring both to the same side'}, or write “hologram: ${text(d, 'way')}”.`,
  run: ({ fringes, setup }) => fringes.pairs.flatMap((f): Problem[] => {
    if (!f.sides?.written || f.sides.written === f.sides.byPlaces) return [];
    return [{
      code: 'sides-disagree', at: setup.facts.get('hologram')?.node.parent === setup.node ? setup.facts.get('hologram')!.at : f.plate.at, subject: f.plate.id, setup: setup.name,
      data: { plate: f.plate.id, written: writtenOf(setup), way: f.sides.byPlaces, reference: f.pair.reference.name, object: f.pair.arm.object!.id },
    }];
  }),
};

function writtenOf({ facts }: { readonly facts: ReadonlyMap<string, { readonly value: { readonly kind: string; readonly text?: string } }> }): string {
  return facts.get('hologram')?.value.text ?? '';
}
