/** Layouts of setups without places: looked for where somebody asks at the line of the setup, in steps, and kept as long as the text is the same. */
import { CodeActionKind, type CodeAction, type Range } from 'vscode-languageserver';
import type { Snapshot } from '../analysis.ts';
import type { Layouts } from '../features/layout/layouts.ts';
import { workspaceEditOf } from './convert.ts';
import type { Document, Documents } from './documents.ts';
import { later } from './later.ts';
import { inSteps } from './steps.ts';

export class Laying {
  private readonly known = new WeakMap<Snapshot['results'][number], Promise<Layouts | undefined>>();

  constructor(private readonly documents: Documents) {}

  /** Actions that write the places in. */
  async actions(s: Snapshot, d: Document, { start, end }: Range, versioned: boolean): Promise<CodeAction[]> {
    const r = s.results.find(x => x.setup.node.at >= start.line && x.setup.node.at <= end.line);
    if (!r || r.arms.arms.length === 0 || !r.places.none) return [];
    const { laying, layoutWords } = await later();
    let known = this.known.get(r);
    if (!known) this.known.set(r, known = inSteps(() => laying(s, r, this.documents.textsFor(d)), () => d.kept?.snapshot === s));
    const layouts = await known;
    if (!layouts || d.kept?.snapshot !== s) return [];
    return layouts.found.map((l, i) => ({ title: `Lay it out${layouts.found.length > 1 ? ` (${i + 1})` : ''}: ${layoutWords(l)}`, kind: CodeActionKind.QuickFix, edit: workspaceEditOf([{ source: d, open: true, edits: l.edits }], versioned) }));
  }
}
