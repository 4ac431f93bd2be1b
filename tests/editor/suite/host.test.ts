import * as vscode from 'vscode';
import { closeAll, equal, ok, until } from './whelk.ts';

/** Put in when the suite is bundled: where it is meant to run. */
declare const EXPECTED_HOST: 'node' | 'worker';

describe('the extension', () => {
  after(closeAll);

  it(`runs in the ${EXPECTED_HOST} host of VS Code ${vscode.version}`, () => {
    equal('WorkerGlobalScope' in globalThis ? 'worker' : 'node', EXPECTED_HOST, 'the host');
  });

  it('starts with the first .plate file, and takes it as the language plate', async () => {
    const extension = vscode.extensions.getExtension('platewright.platewright');
    ok(extension !== undefined, 'the extension is not there');
    ok(!extension.isActive, 'the extension was active before a .plate file was opened');
    const folder = vscode.workspace.workspaceFolders?.[0];
    ok(folder !== undefined, 'no folder is open');
    const page = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(folder.uri, 'whelk.plate'));
    await vscode.window.showTextDocument(page);
    equal(page.languageId, 'plate', 'language');
    await until(() => extension.isActive, 'active');
    await until(() => vscode.languages.getDiagnostics(page.uri).length > 0, 'findings of the file');
  });
});
