import type { Check } from '../check.ts';

export const legWithoutBeam: Check = {
  code: 'leg-without-beam',
  severity: 'error',
  title: 'A leg stands below no beam',
  page: `**What you see.** The leg counts in no path.

**Why.** A line that starts with \`->\` is a leg of the beam above it. Above this one there is no beam, or another statement or a brace stands between them.

**What to do.** Write the beam's line above its legs, or move the leg up to its beam.

\`\`\`plate
setup "Whelk shell" {
  laser red
  beam stop B1
  beam raw from red
    -> B1: 400 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam stop B1
  -> B1: 400 mm
}
`,
  message: () => 'This leg belongs to no beam, so no path counts it. Write a line such as “beam reference from S1 through” above it, or move it to its beam.',
};
