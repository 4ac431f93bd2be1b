import * as vscode from 'vscode';
import { closeAll, matched, mismatch, ok, open, text, type, until } from './whelk.ts';

describe('commands', () => {
  afterEach(closeAll);

  it('are there', async () => {
    await open(text);
    const known = await vscode.commands.getCommands(true);
    for (const name of ['platewright.showOutput', 'platewright.restartServer']) ok(known.includes(name), `${name} is not there`);
  });

  it('show what the server says', async () => {
    await open(text);
    await vscode.commands.executeCommand('platewright.showOutput');
  });

  it('restart the server, which then knows the open pages', async () => {
    const page = await open(text);
    await mismatch(page);
    await vscode.commands.executeCommand('platewright.restartServer');
    await until(async () => {
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', page.uri, page.positionAt(text.indexOf('laser red')));
      return hovers.length > 0;
    }, 'a hover after the restart');
    await mismatch(page);
    await type(page, '468 mm', '384 mm');
    await matched(page);
  });
});
