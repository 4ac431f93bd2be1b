import type { Start } from '../start.ts';

export const empty: Start = {
  name: 'empty',
  title: 'Empty page',
  words: 'Nothing but a line that says how to begin',
  text: `// Begin here with the word setup: what can be written is offered while you type.
`,
};
