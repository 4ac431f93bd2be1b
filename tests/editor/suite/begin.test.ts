// Pages to begin with, and tasks, in the host of the extension.
import * as vscode from 'vscode';
import { closeAll, equal, ok, text, until } from './whelk.ts';

const begun = (): vscode.TextDocument | undefined => vscode.workspace.textDocuments.find(d => d.languageId === 'plate' && d.isUntitled && d.getText().includes('// Change first: '));

describe('a new setup', () => {
  afterEach(closeAll);

  it('is a page of its own, with nothing to say against it', async () => {
    await vscode.commands.executeCommand('platewright.newSetup', 'by-string');
    const page = await until(() => begun(), 'the page');
    ok(page.getText().includes('setup "Cockle, by string"'), page.getText());
    const symbols = await until(async () => {
      const found = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', page.uri);
      return found.length > 0 ? found : undefined;
    }, 'its symbols');
    equal(symbols[0]!.name, 'Cockle, by string', 'the setup');
    equal(vscode.languages.getDiagnostics(page.uri).length, 0, 'findings');
  });
});

describe('a new setup in a folder', () => {
  afterEach(closeAll);

  it('has a name there that nothing has yet, and no file before somebody saves it', async () => {
    const folder = vscode.workspace.workspaceFolders![0]!.uri;
    void vscode.commands.executeCommand('platewright.newSetup', folder);
    const page = await until(async () => {
      await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
      return begun();
    }, 'the page');
    if (folder.scheme === 'file') equal(page.uri.path, vscode.Uri.joinPath(folder, 'by-string.plate').path, 'its name');
    ok(!(await vscode.workspace.fs.stat(vscode.Uri.joinPath(folder, 'by-string.plate')).then(() => true, () => false)), 'a file was written');
  });
});

describe('a task', () => {
  afterEach(closeAll);

  it('prints the findings of the page in front, and ends as the command line does', async () => {
    // An address that no page before had: a host may give it before the server knows that the page before is closed.
    const page = await vscode.workspace.openTextDocument(vscode.Uri.parse('untitled:for-the-task.plate'));
    await vscode.window.showTextDocument(page);
    const edit = new vscode.WorkspaceEdit();
    edit.insert(page.uri, new vscode.Position(0, 0), text.replace('mirror M1', 'miror M1'));
    await vscode.workspace.applyEdit(edit);
    await until(() => (vscode.languages.getDiagnostics(page.uri).some(d => d.severity === vscode.DiagnosticSeverity.Error) ? true : undefined), 'its finding');
    const tasks = await vscode.tasks.fetchTasks({ type: 'platewright' });
    equal(tasks.map(t => t.name).sort().join(', '), 'check all pages, check this page', 'the tasks');
    const code = new Promise<number | undefined>(resolve => { const own = vscode.tasks.onDidEndTaskProcess(e => { own.dispose(); resolve(e.exitCode); }); });
    await vscode.tasks.executeTask(tasks.find(t => t.name === 'check this page')!);
    equal(await code, 1, 'it ended with');
  });
});
