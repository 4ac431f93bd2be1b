/** `platewright why`: what a plate may have suffered from, by the figures of its setup. */
import { analyse } from '../analysis.ts';
import { whyOf } from '../features/why.ts';
import { whyMarkdown, whyText } from '../features/why/pages.ts';
import { OUTCOME_NAMES, understand } from '../features/why/outcomes.ts';
import { inVariant, setupsNamed } from './chosen.ts';
import { onScreen, type Done, type Format } from './done.ts';
import { Misuse, openFile, type Reach } from './files.ts';
import { whyJson } from './json.ts';

/** `words` are a file and what was seen, if anything. */
export function why(named: string, words: readonly string[], { format, setup, variant, ...reach }: { format: Format; setup?: string; variant?: string } & Reach): Done {
  const file = openFile(named, reach);
  const snapshot = inVariant(analyse(file.uri, file.text, file.texts), file.name, setup, variant);
  const given = words.join(' ').trim();
  const seen = given === '' ? undefined : given;
  const meant = seen === undefined ? undefined : understand(seen);
  if (meant && !meant.well && meant.outcomes.length === 0) {
    const among = meant.nearest.length > 0 ? `Did you mean ${meant.nearest.map(o => `“${o}”`).join(', ')}?` : `Say it like one of these: ${OUTCOME_NAMES.join(', ')}.`;
    throw new Misuse(`“${seen!}” is no outcome that is known. ${among}`);
  }
  const answers = setupsNamed(snapshot.results, file.name, setup).map(r => whyOf(snapshot, r, seen));
  const out = format === 'json' ? whyJson(file, answers) : onScreen(format === 'markdown' ? whyMarkdown(answers, file.name) : whyText(answers, file.name));
  return { out, code: 0 };
}
