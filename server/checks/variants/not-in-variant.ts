import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const notInVariant: Check = {
  code: 'not-in-variant',
  severity: 'error',
  title: 'A variant holds a line that changes nothing of the setup',
  page: `**What you see.** The line has no effect.

**Why.** A variant holds changes: of places, facts, lengths, values, things and beams. Readings, expectations, aims, accepted findings and shots are those of the setup; its expectations are held against each variant as well.

**What to do.** Move the line out of the variant, into the setup.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
  expect mismatch < 10 mm
  variant "higher" {
    beam height: 150 mm
  }
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 mm
  variant "higher" {
    beam height: 150 mm
    expect mismatch < 10 mm
  }
}
`,
  message: d => `A variant holds changes, and ${quoted(d, 'word')} is none. Move the line into the setup: ${text(d, 'word').startsWith('measured') || text(d, 'word').startsWith('moved') ? 'a reading of it corrects each variant as well' : 'what is expected of it is held against each variant as well'}.`,
};
