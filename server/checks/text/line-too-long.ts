import { MAX_LINE } from '../../../grammar/parse-line.ts';
import type { Check } from '../check.ts';
import { whole } from '../words.ts';

export const lineTooLong: Check = {
  code: 'line-too-long',
  severity: 'error',
  title: 'A line is too long',
  page: `**What you see.** The line is not read; every other line is.

**Why.** A line holds at most ${whole(MAX_LINE)} characters, so that an edit stays quick. A longer one is mostly a file whose line ends were lost, or not a setup at all.

**What to do.** Write one fact a line. A long note takes several lines that start with \`///\`.`,
  example: `setup "Whelk shell" {
  note: "${'wet sand '.repeat(Math.ceil(MAX_LINE / 9))}"
}
`,
  message: () => `This line has more than ${whole(MAX_LINE)} characters and is not read. Write one fact a line, and long notes as several lines that start with “///”.`,
};
