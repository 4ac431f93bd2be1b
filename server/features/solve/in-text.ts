/** An answer beside the text: what stands behind each `?`, and what can be written in. */
import type { Library, Snapshot } from '../../analysis.ts';
import type { Edit } from '../../model/edits.ts';
import type { Place } from '../../model/place.ts';
import { holdsOnPage, type Answer, type Choice, type Value } from './answer.ts';
import { answersMarkdown } from './markdown.ts';
import { answerPage, valueText } from './page.ts';
import { writingOf } from './writing.ts';

export interface FoundHint {
  /** it stands behind this */
  readonly at: Place;
  readonly text: string;
  /** the whole answer, in Markdown */
  readonly words: string;
  /** writes this value alone */
  readonly edits: readonly Edit[];
}

/** What was found, behind each `?` of the page; where nothing will do, that. */
export function foundHints(answers: readonly Answer[], { uri, tree }: Snapshot): FoundHint[] {
  return answers.flatMap(a => {
    const [best] = a.choices;
    const values = (best ?? a.nearest)?.values.filter(v => v.at.uri === uri) ?? [];
    const words = answersMarkdown([answerPage(a)], uri.split('/').at(-1)!);
    const places = new Map<string, Value[]>();
    for (const v of values) places.set(`${v.at.line} ${v.at.start}`, [...(places.get(`${v.at.line} ${v.at.start}`) ?? []), v]);
    return [...places.values()].flatMap((group): FoundHint[] => {
      const edits = writingOf(group, tree);
      const [edit] = edits;
      return edit ? [{ at: group[0]!.at, text: best ? `= ${edit.newText}` : 'no value will do', words, edits: best ? edits : [] }] : [];
    });
  });
}

export interface WriteAction { readonly title: string; readonly edits: readonly Edit[] }

/** What can be written in at a line, each tried on a copy of the page first. */
export function writeActions(answers: readonly Answer[], snapshot: Snapshot, lines: readonly [number, number], library: Library): WriteAction[] {
  return answers.flatMap(a => {
    if (!a.asked.some(x => x.at.uri === snapshot.uri && x.at.line >= lines[0] && x.at.line <= lines[1])) return [];
    return a.choices.filter(c => c.edits.length > 0 && holdsOnPage(c, snapshot, library, a.results)).map(c => ({ title: titleOf(c, a), edits: c.edits }));
  });
}

/** `Write in 249 mm: corner light 77% ± 8 points` */
function titleOf(c: Choice, a: Answer): string {
  const values = c.values.length === 1 ? valueText(c.values[0]!) : c.values.map(v => `${v.name} ${valueText(v)}`).join(', ');
  const { headline } = answerPage({ ...a, choices: [c] }).choices[0]!;
  const guessed = c.values.filter(v => v.guesses).map(v => v.name);
  return `Write in ${values}${headline === '' ? '' : `: ${headline}`}${guessed.length > 0 ? ` (${guessed.join(', ')} a guess until metered)` : ''}`;
}
