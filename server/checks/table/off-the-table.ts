import type { Problem } from '../../model/model.ts';
import { millimetres } from '../../model/show.ts';
import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';

export const offTheTable: Check = {
  code: 'off-the-table',
  severity: 'warning',
  title: 'A thing stands beside the table',
  page: `**What you see.** There is no room for it; on a stand beside the table it moves against all that stands on it, and the fringes with it.

**Why.** The table goes from (0, 0) to its \`table\` size, and the place lies outside. Legs run straight between things, so that none leaves the table where all things stand on it. Cards, stops, screens and shutters may stand elsewhere, and nothing is said of them.

**What to do.** Fold the beam once more, or turn the layout; correct the place or the size of the table where one is a slip.

\`\`\`plate
setup "Whelk shell" {
  table: 1200 x 900 mm
  laser red at (60, 100) mm heading 0°
  mirror M1 at (1150, 100) mm
  beam stop B1 at (1150, 800) mm
  beam raw from red
    -> M1
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  table: 1200 x 900 mm
  laser red at (60, 100) mm heading 0°
  mirror M1 at (1250, 100) mm
  beam stop B1 at (1250, 800) mm
  beam raw from red
    -> M1
    -> B1
}
`,
  severityOf: d => (text(d, 'kind') === 'laser' ? 'note' : 'warning'),
  message: d => `${capital(text(d, 'kind'))} ${text(d, 'thing')} stands ${millimetres(num(d, 'by'))} beside the table. ${text(d, 'kind') === 'laser' ? 'On a stand of its own the laser moves against the table; a beam that shifts costs light, and fringes only where the paths differ.' : 'What turns light there moves against the table, and the fringes with it.'} Correct its place, or fold the beam so that it stays on the table.`,
  run: ({ table, setup }) => table.look.off.map((o): Problem => ({ code: 'off-the-table', at: o.thing.at, subject: o.thing.id, setup: setup.name, data: { thing: o.thing.id, kind: o.thing.kind.word, by: o.by } })),
};
