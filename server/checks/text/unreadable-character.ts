import { text, type Check } from '../check.ts';

export const unreadableCharacter: Check = {
  code: 'unreadable-character',
  severity: 'error',
  title: 'A character has no meaning in a setup',
  page: `**What you see.** The line is read up to this character; what stands behind it is not.

**Why.** Outside of quotes and comments only letters, digits, units and the signs of the language mean something. Some characters come with copied text and cannot be seen at all: the message then gives their number.

**What to do.** Delete it. In a text in quotes and in a comment any character may stand.

\`\`\`plate
setup "Whelk shell" {
  beam height: 120 mm
}
\`\`\``,
  example: `setup "Whelk shell" {
  beam height: 120 mm;
}
`,
  message: d => `${named(text(d, 'found'))} no meaning here, so the rest of the line is not read. Delete it, or put the text into quotes if it is a note.`,
};

/** The character itself where it can be seen, else its number. */
function named(found: string): string {
  const seen = [...found].slice(0, 12);
  const visible = (c: string): boolean => !/[\p{C}\p{Z}\p{M}]/u.test(c);
  const one = (c: string): string => (visible(c) ? c : `U+${c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`);
  return seen.length === 1 ? `The character ${visible(seen[0]!) ? `“${seen[0]!}”` : one(seen[0]!)} has` : `The characters “${seen.every(visible) ? seen.join('') : seen.map(one).join(' ')}” have`;
}
