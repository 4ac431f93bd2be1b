import { didYouMean, text, type Check } from '../check.ts';

export const unknownResult: Check = {
  code: 'unknown-result',
  severity: 'error',
  title: 'No result has this name',
  page: `**What you see.** The \`expect\` or \`aim\` line is not checked.

**Why.** Its name is not that of a result, such as \`mismatch\`, \`P1.object.mismatch\`, \`brightness\` or \`beam ratio\`.

**What to do.** Correct the name. The report lists all results of a setup with their names.`,
  example: `setup "Whelk shell" {
  expect mismach < 10 mm
}
`,
  message: d => `No result is called “${text(d, 'name')}”.${didYouMean(d)} The report lists the results with their names.`,
};
