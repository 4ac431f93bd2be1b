import { text, type Check } from '../check.ts';

export const portMissing: Check = {
  code: 'port-missing',
  severity: 'error',
  title: 'A beam does not say by which way it leaves a thing',
  page: `**What you see.** It is not clear which light the beam carries.

**Why.** A splitter sends light on in two ways, \`through\` and \`reflected\`; a hologram also in the way of its image, \`diffracted\`. A beam that starts there, or goes on there, says which.

**What to do.** Write the way behind the name. Mostly the line of the next beam was forgotten.

\`\`\`plate
setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> B1: 400 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red
  splitter S1
  beam stop B1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1
    -> B1: 400 mm
}
`,
  message: d => {
    const ways = text(d, 'ports').split(', ').map(p => `“${text(d, 'thing')} ${p}”`);
    return `Light leaves ${text(d, 'thing')} in more than one way, and this does not say which is meant. Write ${ways.join(' or ')}.`;
  },
};
