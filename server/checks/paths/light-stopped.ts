import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const lightStopped: Check = {
  code: 'light-stopped',
  severity: 'error',
  title: 'A beam goes on behind something that ends it',
  page: `**What you see.** The legs from here on are not followed.

**Why.** Light that meets a plate, a screen, a card or a stop ends there. In a single-beam reflection setup it does go on behind the plate, and then the leg says so.

**What to do.** Write \`through\` behind the name if the light goes on, else take out the legs that follow.

\`\`\`plate
setup "Cockle, single beam" {
  hologram: reflection
  laser red {
    coherence length: 200 mm
  }
  plate P1
  object cockle
  beam all from red
    -> P1 through: 900 mm
    -> cockle: 12 mm
    -> P1: 12 mm
}
\`\`\``,
  example: `setup "Cockle, single beam" {
  hologram: reflection
  laser red {
    coherence length: 200 mm
  }
  plate P1
  object cockle
  beam all from red
    -> P1: 900 mm
    -> cockle: 12 mm
    -> P1: 12 mm
}
`,
  message: d => `The light of ${quoted(d, 'beam')} ends at ${text(d, 'thing')}, so it cannot go on to ${text(d, 'next') || 'the next leg'}. Write “-> ${text(d, 'thing')} through” if it does go on behind it, else take out the legs that follow.`,
};
