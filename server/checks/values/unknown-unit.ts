import { didYouMean, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

const FAHRENHEIT = 'Write °C: take 32 off, then five ninths of the rest.';
const LUX = 'It weighs light as the eye sees it, which a plate does not: set the meter to µW/cm², or read bare numbers for a ratio.';
/** Units that no other can take the place of without another number. */
const OTHERWISE: ReadonlyMap<string, string> = new Map([['°F', FAHRENHEIT], ['F', FAHRENHEIT], ['degF', FAHRENHEIT], ['lux', LUX], ['lx', LUX]]);

export const unknownUnit: Check = {
  code: 'unknown-unit',
  severity: 'error',
  title: 'A unit is not known',
  page: `**What you see.** The value is not used, and no result rests on it.

**Why.** What stands directly behind a number is its unit, and this is none that is known. Capitals matter: \`mW\` is a thousandth of a watt, \`MW\` a million.

**What to do.** Correct the unit. Powers and quotients are one word without blanks: \`mW/cm²\` or \`mW/cm2\`, \`lines/mm\`.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 MM
}
`,
  message: d => OTHERWISE.has(text(d, 'unit')) ? `${quoted(d, 'unit')} is no unit that is known, so the value cannot be used. ${OTHERWISE.get(text(d, 'unit'))!}` : `${quoted(d, 'unit')} is no unit that is known, so the value cannot be used.${didYouMean(d) || ' Write a unit such as mm, nm, mW or s; capitals matter.'}`,
};
