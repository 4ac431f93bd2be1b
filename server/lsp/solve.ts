/** Values for what is written `?`: looked for in steps, between which other questions are answered, and kept as long as the text is the same. */
import type { CodeAction, InlayHint, Range } from 'vscode-languageserver';
import { CodeActionKind } from 'vscode-languageserver';
import type { Snapshot } from '../analysis.ts';
import type { Answer } from '../features/solve/answer.ts';
import { position, workspaceEditOf } from './convert.ts';
import type { Document, Documents } from './documents.ts';
import { later } from './later.ts';
import { inSteps } from './steps.ts';

export class Solving {
  private readonly known = new WeakMap<Snapshot, Promise<readonly Answer[]>>();
  private readonly done = new WeakMap<Snapshot, readonly Answer[]>();

  constructor(private readonly documents: Documents) {}

  /** True where the page asks for a value. */
  private asks(s: Snapshot): boolean {
    return s.results.some(r => r.graph.opens.length > 0 || r.light.solved.length > 0);
  }

  /** The answers, where they are there already; else `ready` is called when they are. */
  now(s: Snapshot, d: Document, ready: () => void): readonly Answer[] {
    if (!this.asks(s)) return [];
    const done = this.done.get(s);
    if (!done) void this.answers(s, d).then(a => { if (a.length > 0) ready(); });
    return done ?? [];
  }

  /** The answers; none once the text has moved on. */
  async answers(s: Snapshot, d: Document): Promise<readonly Answer[]> {
    if (!this.asks(s)) return [];
    let known = this.known.get(s);
    if (!known) this.known.set(s, known = this.work(s, d));
    return known;
  }

  private async work(s: Snapshot, d: Document): Promise<readonly Answer[]> {
    const { answering } = await later();
    const answers: Answer[] = [];
    for (const r of s.results) {
      if (r.graph.opens.length === 0 && r.light.solved.length === 0) continue;
      const answer = await inSteps(goOn => answering(s, r, { goOn }), () => d.kept?.snapshot === s);
      if (!answer) return [];
      answers.push(answer);
    }
    this.done.set(s, answers);
    return answers;
  }

  /** What was found behind each `?` of these lines. */
  async hints(s: Snapshot, d: Document, range: Range, ready: () => void, waits: boolean): Promise<InlayHint[]> {
    const answers = waits ? await this.answers(s, d) : this.now(s, d, ready);
    if (answers.length === 0 || d.kept?.snapshot !== s) return [];
    const { foundHints } = await later();
    return foundHints(answers, s).filter(h => h.at.line >= range.start.line && h.at.line <= range.end.line).map(h => ({
      position: position(d, h.at.line, h.at.end), label: h.text, paddingLeft: true, tooltip: { kind: 'markdown' as const, value: h.words },
      ...(h.edits.length > 0 ? { textEdits: h.edits.map(e => ({ range: { start: position(d, e.at.line, e.at.start), end: position(d, e.at.line, e.at.end) }, newText: e.newText })) } : {}),
    }));
  }

  /** Actions that write the values in. */
  async actions(s: Snapshot, d: Document, range: Range, versioned: boolean): Promise<CodeAction[]> {
    const asked = s.results.some(r => r.graph.opens.some(o => near(o.at.line, range)) || r.light.solved.some(x => near(x.splitter.facts.get('reflects')?.at.line ?? -1, range)));
    if (!asked) return [];
    const answers = await this.answers(s, d);
    if (d.kept?.snapshot !== s) return [];
    const { writeActions } = await later();
    return writeActions(answers, s, [range.start.line, range.end.line], this.documents.textsFor(d)).map((a, i) => ({
      title: a.title, kind: CodeActionKind.QuickFix, isPreferred: i === 0, edit: workspaceEditOf([{ source: d, open: true, edits: a.edits }], versioned),
    }));
  }
}

const near = (line: number, { start, end }: Range): boolean => line >= start.line && line <= end.line;
