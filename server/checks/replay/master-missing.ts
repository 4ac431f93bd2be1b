import { text, type Check } from '../check.ts';

export const masterMissing: Check = {
  code: 'master-missing',
  severity: 'error',
  title: 'The recording of a hologram cannot be found',
  page: `**What you see.** What the page of the recording would tell of the hologram, its size and its image, is not known here, and how it is lit is not held against how it was recorded.

**Why.** \`from\` names the file of the recording, counted from the folder of this page; \`recorded as\` the setup in it, or without \`from\` one of this page; \`recorded on\` the plate. One of them names nothing, or more than one thing.

**What to do.** Correct the name, or bring the file back. Where there is no page of the recording, leave these lines out, and write \`size\`, \`image distance\` and \`image size\`.`,
  example: `setup "Winkles, transfer" {
  hologram H1 {
    from: "winkles.plate"
    recorded as: "Winkles, mastr"
  }
}
`,
  files: { 'winkles.plate': 'setup "Winkles, master" {\n  plate P1\n}\n' },
  message: d => `How ${text(d, 'hologram')} was recorded is not known: ${text(d, 'why')}.`,
};
