import { didYouMean, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const readingUnclear: Check = {
  code: 'reading-unclear',
  severity: 'error',
  title: 'What was measured cannot be understood',
  page: `**What you see.** The reading corrects nothing.

**Why.** A reading says what it is a reading of: a run of legs by the things along it, an arm, one arm minus another, light at a place, \`dark\`, the wheel of a splitter, \`drift\`, a \`real image\`. What stands here is none of them, or means several of them, or no light goes that way.

**What to do.** Correct the words before the colon. The page of the language lists all forms.

\`\`\`plate
setup "Whelk shell" {
  splitter S1
  measured S1 wheel: 4.5
}
\`\`\``,
  example: `setup "Whelk shell" {
  splitter S1
  measured S1 whel: 4.5
}
`,
  message: d => `${quoted(d, 'words')} cannot be understood as what was measured: ${text(d, 'why')}.${didYouMean(d)} Correct it, or the reading corrects nothing.`,
};
