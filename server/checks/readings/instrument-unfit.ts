import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const instrumentUnfit: Check = {
  code: 'instrument-unfit',
  severity: 'error',
  title: 'A reading names an instrument that cannot have given it',
  page: `**What you see.** The reading counts, but nothing is known of the error of its instrument.

**Why.** Paths are measured with a string, a tape or a ruler, light with a light meter.

**What to do.** Name the instrument that was used, or leave \`by\` out.

\`\`\`plate
setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  string thread
  beam raw from red
    -> S1: 350 mm
  beam spare from S1 through
    -> B1: 500 mm
  measured red -> S1: 352 mm by thread
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  meter meter-1
  beam raw from red
    -> S1: 350 mm
  beam spare from S1 through
    -> B1: 500 mm
  measured red -> S1: 352 mm by meter-1
}
`,
  message: d => `${quoted(d, 'instrument')} is ${text(d, 'is')}, and ${quoted(d, 'measured')} is measured with ${text(d, 'wanted')}. Name the instrument that was used, or leave “by” out.`,
};
