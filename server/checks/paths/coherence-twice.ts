import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

/** The one that counts stands first. */
const COUNTING = ['coherence length', 'linewidth', 'tube length'] as const;

export const coherenceTwice: Check = {
  code: 'coherence-twice',
  severity: 'note',
  title: 'The coherence of a laser is written in two ways',
  page: `**What you see.** One of them counts, the other changes nothing, whatever it says.

**Why.** A \`coherence length\`, a \`linewidth\` and a \`tube length\` each say how far apart the paths may be. Where a laser has several of them in one block, they count in that order. What a setup writes counts before its inventory item, and what a variant writes before both, whichever of the three it is.

**What to do.** Keep the one that you know best, and take out the other, or put it behind \`//\`.`,
  example: `setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 200 mm
    tube length: 350 mm
  }
  beam stop B1
  beam raw from red
    -> B1: 400 mm
}
`,
  message: d => `The laser ${text(d, 'laser')} has a ${quoted(d, 'counts')}, so that its ${quoted(d, 'idle')} changes nothing. Keep the one that you know best.`,
  run: ({ setup }) => [...setup.things.values()].filter(t => t.kind.light === 'source').flatMap((laser): Problem[] => {
    const own = COUNTING.flatMap(phrase => { const fact = laser.facts.get(phrase); return fact?.node.parent === laser.node ? [fact] : []; });
    return own.slice(1).map(f => ({ code: 'coherence-twice', at: f.at, subject: laser.id, setup: setup.name, data: { laser: laser.id, counts: own[0]!.fact.phrase, idle: f.fact.phrase } }));
  }),
};
