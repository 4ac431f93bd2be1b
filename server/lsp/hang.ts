/** On the lines of a lamp: an action that writes into its plate from where the reference is to come. */
import { CodeActionKind, type CodeAction, type Range } from 'vscode-languageserver';
import type { Snapshot } from '../analysis.ts';
import { workspaceEditOf } from './convert.ts';
import type { Document, Documents } from './documents.ts';
import { later } from './later.ts';

export async function hangActionsOf(s: Snapshot, d: Document, { start, end }: Range, documents: Documents, versioned: boolean): Promise<CodeAction[]> {
  const lamp = s.results.some(r => [...r.setup.things.values()].some(t => t.kind.word === 'lamp' && t.node.at <= end.line && t.node.end >= start.line));
  if (!lamp) return [];
  const { hangActions } = await later();
  return hangActions(s, [start.line, end.line], documents.textsFor(d)).map(a => ({ title: a.title, kind: CodeActionKind.QuickFix, edit: workspaceEditOf([{ source: d, open: true, edits: a.edits }], versioned) }));
}
