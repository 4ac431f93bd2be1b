/** `platewright layout`: places for the things of a setup that has none, shown, or written into the file. */
import { analyse } from '../analysis.ts';
import { layoutsOf, layoutWords } from '../features/layout/layouts.ts';
import { layoutsMarkdown, layoutsText } from '../features/layout/text.ts';
import { applyEdits } from '../model/edits.ts';
import { setupsNamed } from './chosen.ts';
import { onScreen, type Done, type Format } from './done.ts';
import { Misuse, openFile, Trouble, type Reach } from './files.ts';
import { beside, document } from './json.ts';
import { replaceText } from './writing.ts';

export interface LayoutOptions extends Reach { readonly format: Format; readonly write: boolean; readonly choice: number; readonly setup?: string }

export function layoutCommand(named: string, { format, write, choice, setup, ...reach }: LayoutOptions): Done {
  const file = openFile(named, reach);
  const snapshot = analyse(file.uri, file.text, file.texts);
  const results = setupsNamed(snapshot.results, file.name, setup);
  if (results.length === 0) throw new Trouble(`There is no setup in ${file.name}.`);
  const all = results.map(r => ({ name: r.setup.name, layouts: layoutsOf(snapshot, r, file.texts) }));
  const err: string[] = [];
  if (write) {
    const few = all.find(a => a.layouts.found.length > 0 && a.layouts.found.length < choice);
    if (few) throw new Misuse(`“${few.name}” has ${few.layouts.found.length === 1 ? 'one layout' : `${few.layouts.found.length} layouts`} only: --choice ${choice} is none of them`);
    const edits = all.flatMap(a => a.layouts.found[choice - 1]?.edits ?? []);
    if (edits.length > 0) replaceText(file.path, file.name, file.text, applyEdits(file.text, edits));
    err.push(edits.length === 0 ? `${file.name}: nothing was written` : `${file.name}: places of ${edits.length} things written`);
  }
  const naming = beside(file);
  const out = format === 'json'
    ? document('layout', { file: naming(file.uri), setups: all.map(({ name, layouts: l }) => ({ name, table: [...l.table], holes: l.holes, why: l.why ?? null, tried: l.tried, layouts: l.found.map(f => ({ words: layoutWords(f), places: [...f.written].map(([thing, place]) => ({ thing, place })), notes: [...f.notes] })) })) })
    : onScreen(format === 'markdown' ? layoutsMarkdown(all) : layoutsText(all, file.name));
  return { out, ...(err.length > 0 ? { err } : {}), code: all.some(a => a.layouts.found.length === 0) ? 1 : 0 };
}
