/** The shots of a page, and why one came out as it did. */
import type { Node } from '../../../grammar/tree.ts';
import type { Snapshot } from '../../analysis.ts';
import { setupAt } from '../cursor.ts';
import { whyOf, type Why } from '../why.ts';
import { whyBrief, whyMarkdown } from './pages.ts';

/** Of a shot with an outcome at its first line, or at that of the outcome. */
export function shotAt(snapshot: Snapshot, line: number): { readonly name: string; readonly outcome: string } | undefined {
  const shots = setupAt(snapshot, line)?.setup.shots ?? [];
  for (const { name, node } of shots) {
    const said = node.children.find(isOutcome);
    const outcome = said && outcomeOf(said);
    if (outcome !== undefined && outcome !== '' && (line === node.at || line === said!.at)) return { name, outcome };
  }
  return undefined;
}

/** For an editor's list of actions. */
export const whyTitle = (shot: { readonly outcome: string }): string => `Why “${shot.outcome.length > 50 ? `${shot.outcome.slice(0, 47)}…` : shot.outcome}”?`;

/** The answer for the shot at a line, else for the setup that the line is in. */
export function whyAt(snapshot: Snapshot, line: number): { readonly title: string; readonly markdown: string } | undefined {
  const shot = shotAt(snapshot, line);
  const why = answer(snapshot, line, shot?.outcome);
  return why && { title: shot ? whyTitle(shot) : `What holds back ${why.setup || 'this setup'}`, markdown: whyMarkdown([why], snapshot.uri) };
}

/** The first suspects of a shot, in a few lines; undefined where no shot with an outcome begins. */
export function shotWords(snapshot: Snapshot, line: number): string | undefined {
  const shot = shotAt(snapshot, line);
  const why = shot && answer(snapshot, line, shot.outcome);
  return why && whyBrief(why);
}

function answer(snapshot: Snapshot, line: number, seen: string | undefined): Why | undefined {
  const r = setupAt(snapshot, line);
  return r && whyOf(snapshot, r, seen);
}

const isOutcome = ({ line }: Node): boolean => line.head?.text === 'outcome' && line.value !== undefined;

/** Words without quotes may hold such as `at`, which open clauses elsewhere. */
function outcomeOf({ line }: Node): string {
  const value = line.value!;
  return (value.kind === 'string' ? value.value : line.text.slice(value.start, line.clauses[line.clauses.length - 1]?.end ?? value.end)).trim();
}
