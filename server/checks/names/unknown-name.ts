import { didYouMean, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const unknownName: Check = {
  code: 'unknown-name',
  severity: 'error',
  title: 'A name is used that nothing has',
  page: `**What you see.** What the line says cannot be followed; a beam ends where the unknown name stands.

**Why.** Each thing, \`let\` value and inventory is declared once, and other lines use its name letter by letter, capitals included. Items of an inventory are written with its name and a dot: \`lab.red-12\`.

**What to do.** Correct the name, or declare what it stands for. If it comes from another file, \`use\` that file.

\`\`\`plate
setup "Whelk shell" {
  laser red
  beam stop B1
  beam raw from red
    -> B1: 400 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red
  beam stop B1
  beam raw from rde
    -> B1: 400 mm
}
`,
  message: d => d['below'] === true ? `${quoted(d, 'name')} stands further down: an item derives from one that is written above it. Move its lines above this one.` : `Nothing here is called ${quoted(d, 'name')}; ${text(d, 'wanted') || 'a name'} belongs here.${didYouMean(d)} Correct the name, or declare what it stands for.`,
};
