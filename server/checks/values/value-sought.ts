import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';

/** How many are named in the message; all of them stand in its data. */
const SHOWN = 4;

export const valueSought: Check = {
  code: 'value-sought',
  severity: 'hint',
  title: 'A value is written “?” and waits to be found',
  page: `**What you see.** What rests on the value cannot be told yet. The answer stands beside the “?” in an editor that shows figures in the text.

**Why.** A “?” asks the program for a value that meets the goals of the setup: what is aimed at and what is expected. Until it stands on the page, the page does not say what is on the table.

**What to do.** Say what it is for, with a goal that it changes, such as \`aim mismatch: 0 mm\`. Then write it in: in the editor by the action at the “?”, on the command line with \`platewright solve FILE --write\`. Limits and steps narrow it down: \`? from 20 mm to 90 mm by 5 mm\`.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 200 mm
  }
  splitter S1
  mirror M1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: ? mm
    -> P1: 721 mm
  beam object from S1 reflected
    -> whelk: 1171 mm
    -> P1: 300 mm
  aim mismatch: 0 mm
}
`,
  message: d => {
    const names = text(d, 'names').split('; ');
    const one = names.length === 1;
    const shown = names.length > SHOWN ? `${names.slice(0, SHOWN).join(', ')} and ${names.length - SHOWN} more are` : one ? `${names[0]!} is` : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!} are`;
    return `${capital(shown)} written “?”, so that nothing that rests on ${one ? 'it' : 'them'} can be told yet. ${num(d, 'goals') === 0 ? `Say what ${one ? 'it is' : 'they are'} for, such as “aim mismatch: 0 mm”; then let` : 'Let'} ${one ? 'it' : 'them'} be found and written in: by the action at the “?”, or with “platewright solve”.`;
  },
  run: ({ setup, graph }) => {
    const names = [...new Set(graph.opens.map(o => o.words))];
    const first = graph.opens[0];
    return first && !graph.found ? [{ code: 'value-sought', at: first.at.uri === setup.uri ? first.at : setup.at, subject: first.name, setup: setup.name, data: { names: names.join('; '), goals: setup.goals.length } }] : [];
  },
};
