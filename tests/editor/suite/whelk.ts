// The page of the notebook that the suite works on, and short words for what a test does with it.
import * as vscode from 'vscode';
import text from '../notebook/whelk.plate';

export { text };

/** Opens `content` in an editor, as a new page. */
export async function open(content: string): Promise<vscode.TextDocument> {
  const page = await vscode.workspace.openTextDocument({ language: 'plate', content });
  await vscode.window.showTextDocument(page);
  return page;
}

export async function closeAll(): Promise<void> {
  while (vscode.window.tabGroups.all.some(({ tabs }) => tabs.length > 0)) {
    await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  }
}

export function findings(page: vscode.TextDocument, code?: string): vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(page.uri).filter((found) => code === undefined || codeOf(found) === code);
}

export function codeOf(found: vscode.Diagnostic): string {
  return String(typeof found.code === 'object' ? found.code.value : found.code);
}

/** The finding about the arms, once it is there. */
export async function mismatch(page: vscode.TextDocument): Promise<vscode.Diagnostic> {
  return await until(() => findings(page, 'arms-mismatched')[0], 'a finding arms-mismatched');
}

export async function matched(page: vscode.TextDocument): Promise<void> {
  await until(() => findings(page, 'arms-mismatched').length === 0, 'no finding arms-mismatched');
}

/** Replaces the one place where `from` stands, as typing does. */
export async function type(page: vscode.TextDocument, from: string, to: string): Promise<void> {
  const at = page.getText().indexOf(from);
  if (at < 0) throw new Error(`'${from}' is not on the page`);
  const edit = new vscode.WorkspaceEdit();
  edit.replace(page.uri, new vscode.Range(page.positionAt(at), page.positionAt(at + from.length)), to);
  await vscode.workspace.applyEdit(edit);
}

/** Sum of the legs written below `beam NAME`, in mm: read from the text by this test, not by the extension. */
export function writtenLength(text: string, beam: string): number {
  const legs = new RegExp(`^ *beam ${beam} .*\\n((?: *->.*\\n)+)`, 'm').exec(text)?.[1] ?? '';
  return [...legs.matchAll(/: *([\d.]+) mm/g)].reduce((sum, [, length]) => sum + Number(length), 0);
}

/** Polls: most of what an extension does has no event that says it is done. */
export async function until<T>(look: () => T | false | undefined | Thenable<T | false | undefined>, what: string, limit = 30_000): Promise<T> {
  const end = Date.now() + limit;
  for (;;) {
    const seen = await look();
    if (seen) return seen;
    if (Date.now() > end) throw new Error(`${what}: not within ${limit / 1000} s`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

export function equal<T>(actual: T, expected: T, what: string): void {
  if (actual !== expected) throw new Error(`${what}: expected ${JSON.stringify(expected)}, found ${JSON.stringify(actual)}`);
}

export function ok(held: boolean, what: string): asserts held {
  if (!held) throw new Error(what);
}
