/** `platewright new`: a page to begin with, of the usual layouts; without a name their list. */
import { startOf, STARTS } from '../features/starts/starts.ts';
import { nearest } from '../model/scope.ts';
import type { Done } from './done.ts';
import { EXTENSION, Misuse } from './files.ts';
import { writeNew } from './writing.ts';

/** @param output a file that is not there yet; on standard output by default */
export function newPage(name: string | undefined, { output }: { readonly output?: string }): Done {
  if (name === undefined) {
    if (output !== undefined) throw new Misuse(`Say which layout ${output} is to begin with; platewright new lists them`);
    return { out: listed(), code: 0 };
  }
  const start = startOf(name);
  if (!start) throw new Misuse(unknown(name));
  if (output === undefined) return { out: start.text, code: 0 };
  if (!output.endsWith(EXTENSION)) throw new Misuse(`${output} does not end in ${EXTENSION}, as a page does: choose another name`);
  writeNew(output, start.text);
  return { out: `${output}: written\n`, code: 0 };
}

function listed(): string {
  const wide = Math.max(...STARTS.map(s => s.name.length));
  return `${STARTS.map(s => `${s.name.padEnd(wide)}  ${s.title}\n${' '.repeat(wide)}  ${s.words}\n`).join('')}\nplatewright new transmission -o whelk.plate writes one; no file is ever written over.\n`;
}

function unknown(name: string): string {
  const near = nearest(name, STARTS.map(s => s.name));
  return `There is no page “${name}” to begin with. ${near === undefined ? 'platewright new lists them.' : `Did you mean “${near}”?`}`;
}
