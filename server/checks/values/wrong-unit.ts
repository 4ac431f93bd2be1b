import { text, type Check } from '../check.ts';
import { also, anyOf } from '../words.ts';

export const wrongUnit: Check = {
  code: 'wrong-unit',
  severity: 'error',
  title: 'A value has a unit of another kind',
  page: `**What you see.** The value is not used, and no result rests on it.

**Why.** Units are part of a value: a length is no time, and a place on the scale of temperature is no difference of two.

**What to do.** Correct the unit, or put the value where it belongs. Units that fit are listed in the message.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 mW
}
`,
  message: d => {
    if (d['suggestion'] !== undefined) return `This is a number divided by ${text(d, 'wanted')}, which makes it ${text(d, 'found')}. Write “${text(d, 'suggestion')}”.`;
    const [unit, units] = [text(d, 'unit'), text(d, 'units')];
    return `This should be ${text(d, 'wanted')}, and it is ${text(d, 'found')}${unit ? ` (${unit})` : ''}.${also(units ? `Units that fit: ${anyOf(units)}.` : 'Correct the value or its unit.')}`;
  },
};
