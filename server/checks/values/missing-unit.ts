import { text, type Check } from '../check.ts';
import { anyOf, capital, quote } from '../words.ts';

export const missingUnit: Check = {
  code: 'missing-unit',
  severity: 'error',
  title: 'A number has no unit',
  page: `**What you see.** The value is not used, and no result rests on it.

**Why.** Units are part of a value. Whether 120 means millimetres or inches is never guessed.

**What to do.** Write the unit directly behind the number or the bracket.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120
}
`,
  message: d => {
    const [written, unit] = [text(d, 'written'), text(d, 'suggestion')];
    const gap = /^[°%]/.test(unit) ? '' : ' ';
    return `${capital(text(d, 'wanted'))} needs a unit${written ? `, and ${quote(written)} has none` : ''}. Write ${anyOf(text(d, 'units'))}${written && unit ? `, for instance ${quote(written + gap + unit)}` : ''}.`;
  },
};
