import * as vscode from 'vscode';
import { closeAll, equal, mismatch, ok, open, text, until } from './whelk.ts';

const LAB = 'inventory shelf {\n  mirror flat {\n    diameter: 50 mm\n  }\n}\n';
const USER = 'use "shelf.plate"\nsetup "a" {\n  mirror M1 = shelf.flat\n}\n';

const folder = (): vscode.Uri => vscode.workspace.workspaceFolders![0]!.uri;
async function write(name: string, content: string): Promise<vscode.Uri> {
  const uri = vscode.Uri.joinPath(folder(), name);
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(content));
  return uri;
}
const read = async (uri: vscode.Uri): Promise<string> => (await vscode.workspace.openTextDocument(uri)).getText();

describe('names', () => {
  const files: vscode.Uri[] = [];
  before(async () => { files.push(await write('shelf.plate', LAB), await write('a.plate', USER), await write('b.plate', USER.replace('"a"', '"b"'))); });
  after(async () => {
    await closeAll();
    for (const uri of files) await vscode.workspace.fs.delete(uri);
  });

  it('of an inventory change in all pages of the folder', async () => {
    const page = await vscode.workspace.openTextDocument(files[1]!);
    await vscode.window.showTextDocument(page);
    const at = page.positionAt(USER.indexOf('flat') + 1);
    const found = await until(async () => {
      const places = await vscode.commands.executeCommand<vscode.Location[]>('vscode.executeReferenceProvider', page.uri, at);
      return places.length === 3 && places;
    }, 'three places of “flat”');
    equal(found.map(f => f.uri.path.split('/').at(-1)).sort().join(), 'a.plate,b.plate,shelf.plate', 'files of the references');
    const edit = await vscode.commands.executeCommand<vscode.WorkspaceEdit>('vscode.executeDocumentRenameProvider', page.uri, at, 'flat-50');
    ok(await vscode.workspace.applyEdit(edit), 'the edit was not applied');
    equal(await read(files[0]!), LAB.replace('flat', 'flat-50'), 'the inventory');
    for (const [i, name] of ['a', 'b'].entries()) equal(await read(files[i + 1]!), USER.replace('"a"', `"${name}"`).replace('flat', 'flat-50'), `the page ${name}`);
  });

  it('that cannot change say why', async () => {
    const page = await open(text);
    const refused = await vscode.commands.executeCommand('vscode.prepareRename', page.uri, page.positionAt(text.indexOf('mirror') + 1)).then(() => '', (e: unknown) => String(e));
    ok(refused.includes('is a word of the language'), `no reason in: ${refused}`);
  });
});

describe('what is shown in the text', () => {
  let page: vscode.TextDocument;
  before(async () => {
    page = await open(text);
    await mismatch(page);
  });
  after(async () => {
    await vscode.workspace.getConfiguration('platewright').update('hints.armTotals', undefined, vscode.ConfigurationTarget.Global);
    await closeAll();
  });

  it('colours words by their meaning', async () => {
    const tokens = await until(() => vscode.commands.executeCommand<vscode.SemanticTokens | undefined>('vscode.provideDocumentSemanticTokens', page.uri), 'colours');
    ok(tokens.data.length > 100, `only ${tokens.data.length / 5} words have a colour`);
  });

  it('adds lengths, until the settings say otherwise', async () => {
    const hints = async (): Promise<string[]> => {
      const found = await vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', page.uri, new vscode.Range(0, 0, page.lineCount, 0));
      return found.map(({ label }) => (typeof label === 'string' ? label : label.map(p => p.value).join('')));
    };
    await until(async () => (await hints()).some(h => h.startsWith('in all 1471')), 'the length of the reference, 750 + 721 mm');
    await vscode.workspace.getConfiguration('platewright').update('hints.armTotals', false, vscode.ConfigurationTarget.Global);
    await until(async () => { const now = await hints(); return now.length > 0 && !now.some(h => h.startsWith('in all')); }, 'no lengths of arms');
  });
});
