import * as vscode from 'vscode';
import { closeAll, mismatch, ok, open, text, until } from './whelk.ts';

/** The markdown shown over the first place where `word` stands, once there is any. */
async function over(page: vscode.TextDocument, word: string): Promise<string> {
  const at = page.positionAt(page.getText().indexOf(word) + 1);
  return await until(async () => {
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', page.uri, at);
    return hovers.flatMap(({ contents }) => contents).map((part) => (part instanceof vscode.MarkdownString ? part.value : '')).join('\n');
  }, `a hover over ${word}`);
}

describe('hovers', () => {
  let page: vscode.TextDocument;
  before(async () => {
    page = await open(text);
    await mismatch(page);
  });
  after(closeAll);

  it('explain a kind by its facts', async () => {
    const shown = await over(page, 'laser red');
    for (const fact of ['wavelength', 'tube length']) ok(shown.includes(fact), `no '${fact}' in: ${shown}`);
  });

  it('give the length of an arm', async () => {
    const shown = await over(page, 'reference from');
    ok(/1[.,  ]?471/.test(shown), `no 1471 (750 + 721 mm) in: ${shown}`);
  });
});
