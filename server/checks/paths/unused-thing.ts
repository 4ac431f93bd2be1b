import { text, type Check } from '../check.ts';

export const unusedThing: Check = {
  code: 'unused-thing',
  severity: 'note',
  title: 'A thing stands in the setup, but no beam meets it',
  page: `**What you see.** Nothing; the thing has no effect on any figure.

**Why.** It is declared, but no beam goes to it or starts from it. Mostly a leg was forgotten, for instance a spreading lens that stands on a leg without being named among the legs.

**What to do.** Add a leg to it in the beam that meets it, or take the thing out. Things in an inventory are never reported.`,
  example: `setup "Whelk shell" {
  laser red
  mirror M1
  mirror M2
  beam stop B1
  beam raw from red
    -> M1: 300 mm
    -> B1: 200 mm
}
`,
  message: d => `No beam meets ${text(d, 'article')} ${text(d, 'thing')}. Name it in a leg (“-> ${text(d, 'thing')}: …”), or take it out.`,
  run: ({ setup }) => {
    if (setup.beams.size === 0) return [];
    const starts = new Set([...setup.beams.values()].map(b => b.from));
    // A polarizer through which a meter looks, a card on which an image is sharp.
    const held = new Set<unknown>(setup.readings.flatMap(({ measured: m }) => [m && 'through' in m ? m.through : undefined, m && 'at' in m ? m.at : undefined]));
    return [...setup.things.values()].filter(t => t.kind.expectsLight && t.reached === 0 && !starts.has(t) && !held.has(t))
      .map(t => ({ code: 'unused-thing', at: t.at, subject: t.id, setup: setup.name, data: { thing: t.id, article: `the ${t.kind.word}` } }));
  },
};
