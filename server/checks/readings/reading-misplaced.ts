import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

const HOME: Readonly<Record<string, string>> = {
  at: 'Where it was measured stands before the colon', facing: 'How the meter was held stands before the colon', by: 'What it was measured with stands behind the value', on: 'The day stands behind the value',
};

export const readingMisplaced: Check = {
  code: 'reading-misplaced',
  severity: 'error',
  title: 'A part of a reading stands where it does not belong',
  page: `**What you see.** That part of the line is not used, or not in the way that was meant.

**Why.** A reading is written in one order: what was measured, \`at\` a place, \`facing beam\`, then the colon and the value, then \`by\` an instrument, \`on\` a day. A run of legs and a wheel have no \`at\`, and only light is met \`facing beam\`.

**What to do.** Move that part of the line to where it belongs, or take it out.

\`\`\`plate
setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  beam raw from red
    -> S1: 350 mm
  beam spare from S1 through
    -> B1: 500 mm
  measured red -> S1: 352 mm by tape on 2026-02-11
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  beam raw from red
    -> S1: 350 mm
  beam spare from S1 through
    -> B1: 500 mm
  measured red -> S1 on 2026-02-11: 352 mm by tape
}
`,
  message: d => {
    const word = text(d, 'word');
    const home = (word === 'at' || word === 'facing') && d['where'] === 'before' ? `That says nothing about ${quoted(d, 'words')}` : (HOME[word] ?? 'A reading has no such part');
    return `${quoted(d, 'clause')} does not belong here. ${home}: ${home.includes('stands') ? 'move it there' : 'take it out'}.`;
  },
};
