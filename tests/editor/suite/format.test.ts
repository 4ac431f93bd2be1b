import * as vscode from 'vscode';
import { closeAll, equal, mismatch, ok, open, text } from './whelk.ts';

/** What the formatter would change; VS Code answers nothing at all where that is nothing. */
async function changes(page: vscode.TextDocument): Promise<vscode.TextEdit[]> {
  const options = { tabSize: 2, insertSpaces: true };
  return await vscode.commands.executeCommand<vscode.TextEdit[] | undefined>('vscode.executeFormatDocumentProvider', page.uri, options) ?? [];
}

describe('the formatter', () => {
  afterEach(closeAll);

  it('brings an untidy page back to what it was, then finds nothing more to do', async () => {
    const untidy = text.replace('hologram: transmission', 'hologram :   transmission').replaceAll('    ->', '->   ').replace('mirror M1', 'mirror    M1   ');
    const page = await open(untidy);
    await mismatch(page);
    const edit = new vscode.WorkspaceEdit();
    edit.set(page.uri, await changes(page));
    ok(await vscode.workspace.applyEdit(edit), 'the edits were refused');
    equal(page.getText(), text, 'text');
    equal((await changes(page)).length, 0, 'number of changes to the tidy page');
  });
});
