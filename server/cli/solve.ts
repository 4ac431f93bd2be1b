/** `platewright solve`: values for what is written `?`, shown, or written into the file. */
import { analyse } from '../analysis.ts';
import { answerOf, type Answer } from '../features/solve/answer.ts';
import { answersMarkdown } from '../features/solve/markdown.ts';
import { answerPage } from '../features/solve/page.ts';
import { answersText } from '../features/solve/text.ts';
import { applyEdits } from '../model/edits.ts';
import { inVariant, setupsNamed } from './chosen.ts';
import { onScreen, type Done, type Format } from './done.ts';
import { Misuse, openFile, Trouble, type Opened, type Reach } from './files.ts';
import { solveJson } from './solve-json.ts';
import { replaceText } from './writing.ts';

export interface SolveOptions extends Reach { readonly format: Format; readonly write: boolean; readonly choice: number; readonly setup?: string; readonly variant?: string }

/** Longer than this, ms, nobody is kept waiting for one setup. */
const LONGEST = 2000;

export function solve(named: string, { format, write, choice, setup, variant, ...reach }: SolveOptions): Done {
  const file = openFile(named, reach);
  const snapshot = analyse(file.uri, file.text, file.texts);
  const results = setupsNamed(inVariant(snapshot, file.name, setup, variant).results, file.name, setup);
  if (results.length === 0) throw new Trouble(`There is no setup in ${file.name}.`);
  const all = results.map(r => {
    const end = Date.now() + LONGEST;
    return answerOf(snapshot, r, { goOn: () => Date.now() < end, library: file.texts });
  });
  // Of a file with many setups only those are shown that ask for something.
  const asking = all.filter(a => a.asked.length > 0);
  const answers = asking.length > 0 ? asking : all.slice(0, 1);
  const open = answers.some(a => a.asked.length > 0 && (a.choices.length === 0 || a.left.length > 0));
  const written = write ? writeIn(file, answers, choice) : [];
  const pages = answers.map(answerPage);
  const out = format === 'json' ? solveJson(file, answers) : format === 'markdown' ? onScreen(answersMarkdown(pages, file.name)) : onScreen(answersText(pages, file.name));
  return { out, ...(written.length > 0 ? { err: written } : {}), code: open ? 1 : 0 };
}

/** Writes the values, and says what was written. */
function writeIn(file: Opened, answers: readonly Answer[], choice: number): string[] {
  const found = answers.filter(a => a.choices.length > 0);
  const few = found.find(a => a.choices.length < choice);
  if (few) throw new Misuse(`“${few.results.setup.name}” has ${few.choices.length === 1 ? 'one answer' : `${few.choices.length} answers`} only: --choice ${choice} is none of them`);
  const chosen = found.map(a => a.choices[choice - 1]!);
  const edits = chosen.flatMap(c => c.edits);
  if (edits.length === 0) return [`${file.name}: nothing was written`];
  replaceText(file.path, file.name, file.text, applyEdits(file.text, edits));
  const guessed = chosen.flatMap(c => c.values.filter(v => v.guesses && v.at.uri === file.uri).map(v => v.name));
  const count = chosen.reduce((n, c) => n + c.values.filter(v => v.at.uri === file.uri).length, 0);
  return [
    `${file.name}: ${count === 1 ? 'one value' : `${count} values`} written`,
    ...(guessed.length > 0 ? [`${file.name}: ${guessed.join(', ')} ${guessed.length === 1 ? 'is a guess' : 'are guesses'} until the light is metered: set the splitter by the meter, and write what it shows`] : []),
  ];
}
