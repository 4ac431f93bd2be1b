import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const masterRing: Check = {
  code: 'master-ring',
  severity: 'error',
  title: 'Holograms are masters of each other in a ring',
  page: `**What you see.** What the pages of the ring would tell of the hologram is not known here.

**Why.** Each of them was made from the next, and the last one from the first: none of them can have been the first.

**What to do.** One of the names is wrong. The first master was made from an object, and its page has no \`hologram\`.`,
  example: `setup "Winkles, transfer" {
  hologram H1 {
    recorded as: "Winkles, copy"
  }
  plate P2
}
setup "Winkles, copy" {
  hologram H2 {
    recorded as: "Winkles, transfer"
  }
  plate P3
}
`,
  message: d => `${text(d, 'hologram')} would be made from itself: ${quoted(d, 'ring')}. One of these names is wrong; the first master was made from an object.`,
};
