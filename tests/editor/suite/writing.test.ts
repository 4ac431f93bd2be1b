import * as vscode from 'vscode';
import inventory from '../../../examples/saltmarsh-lab.plate';
import readings from '../../../examples/readings.plate';
import variants from '../../../examples/variants.plate';
import { closeAll, equal, ok, open, until } from './whelk.ts';

const folder = (): vscode.Uri => vscode.workspace.workspaceFolders![0]!.uri;
const DIMMED = 'use "saltmarsh-lab.plate"\nsetup "Dimmed" {\n  laser red = lab.red-12 {\n    power: 5 mW\n  }\n}\n';
const PAGES = { 'saltmarsh-lab.plate': inventory, 'readings.plate': readings, 'variants.plate': variants, 'dimmed.plate': DIMMED };

async function page(name: keyof typeof PAGES): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(folder(), name));
  await vscode.window.showTextDocument(document);
  return document;
}
const place = (document: vscode.TextDocument, words: string, after = 1): vscode.Position => {
  const at = document.getText().indexOf(words);
  ok(at >= 0, `'${words}' is not on the page`);
  return document.positionAt(at + after);
};
async function told(document: vscode.TextDocument, at: vscode.Position, words: string): Promise<void> {
  await until(async () => {
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', document.uri, at);
    return hovers.flatMap(({ contents }) => contents).some(c => c instanceof vscode.MarkdownString && c.value.replaceAll('\\', '').includes(words));
  }, `a hover with “${words}”`);
}
/** Labels of what is offered at the end of `words`. */
async function offered(document: vscode.TextDocument, words: string): Promise<string[]> {
  const at = place(document, words, words.length);
  return until(async () => {
    const { items } = await vscode.commands.executeCommand<vscode.CompletionList>('vscode.executeCompletionItemProvider', document.uri, at);
    return items.length > 0 && items.map(({ label }) => (typeof label === 'string' ? label : label.label));
  }, `a list behind “${words}”`);
}

describe('pages of the workshop', () => {
  before(async () => { for (const [name, text] of Object.entries(PAGES)) await vscode.workspace.fs.writeFile(vscode.Uri.joinPath(folder(), name), new TextEncoder().encode(text)); });
  afterEach(closeAll);
  after(async () => { for (const name of Object.keys(PAGES)) await vscode.workspace.fs.delete(vscode.Uri.joinPath(folder(), name)); });

  it('tell over a reading what became of it', async () => {
    const document = await page('readings.plate');
    await told(document, place(document, 'measured object - reference'), '6 mm less than planned (0 mm)');
    await told(document, place(document, 'measured object at P1:'), 'What rests on it:');
  });
  it('tell over the name of a variant what comes of it', async () => {
    const document = await page('variants.plate');
    await told(document, place(document, '"closer plate"', 3), 'mismatch: −1.6 → −9.3 mm');
  });
  it('tell over a fact what it stands in for', async () => {
    const document = await page('dimmed.plate');
    await told(document, place(document, 'power'), '**5 mW** for red, instead of lab.red-12’s 12 mW ± 10%.');
  });
  it('lead from an item to the inventory, and from a beam to its first line', async () => {
    const document = await page('readings.plate');
    const found = async (words: string, after: number): Promise<string> => until(async () => {
      const [to] = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>('vscode.executeDefinitionProvider', document.uri, place(document, words, after));
      if (!to) return undefined;
      const [uri, range] = 'targetUri' in to ? [to.targetUri, to.targetSelectionRange ?? to.targetRange] : [to.uri, to.range];
      return `${uri.path.split('/').at(-1)!}: ${(await vscode.workspace.openTextDocument(uri)).lineAt(range.start.line).text.trim()}`;
    }, `the declaration of “${words}”`);
    equal(await found('lab.red-12', 5), 'saltmarsh-lab.plate: laser red-12 {', 'of an item');
    equal(await found('object - reference', 10), 'readings.plate: beam reference from S1 through', 'of a beam');
  });
  it('link to the files that they use, and fold', async () => {
    const document = await page('readings.plate');
    const [link] = await until(async () => { const found = await vscode.commands.executeCommand<vscode.DocumentLink[]>('vscode.executeLinkProvider', document.uri); return found.length > 0 && found; }, 'a link');
    ok(link!.target?.path.endsWith('/saltmarsh-lab.plate') === true, `the link leads to ${String(link!.target)}`);
    const folds = await vscode.commands.executeCommand<vscode.FoldingRange[]>('vscode.executeFoldingRangeProvider', document.uri);
    const line = place(document, 'beam object').line;
    ok(folds.some(f => f.start === line && f.end === line + 5), 'the beam of the object does not fold over its five legs');
  });
});

describe('what is offered', () => {
  after(closeAll);
  it('in a torn page: facts, values, units and whole things', async () => {
    const document = await open('setup "Torn" {\n  miror M1\n  spl\n  laser red {\n    wavelength: 632,8 nm\n  spreader R1 {\n    focal le\n    pinhole:\n    diameter: 8 m\n');
    ok((await offered(document, 'focal le')).includes('focal length'), 'no focal length');
    ok((await offered(document, 'pinhole:')).includes('10 µm'), 'no pinhole of 10 µm');
    ok((await offered(document, '8 m')).includes('mm'), 'no mm');
    const whole = await offered(document, '  spl');
    ok(whole.includes('splitter') && whole.includes('splitter { … }'), `no whole splitter in ${whole.join(', ')}`);
  });
});
