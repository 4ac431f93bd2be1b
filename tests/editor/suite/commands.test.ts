import * as vscode from 'vscode';
import { closeAll, matched, mismatch, ok, open, text, type, until } from './whelk.ts';

describe('commands', () => {
  afterEach(closeAll);

  it('are there', async () => {
    await open(text);
    const known = await vscode.commands.getCommands(true);
    for (const name of ['platewright.showOutput', 'platewright.restartServer', 'platewright.why', 'platewright.showPlan', 'platewright.darkenPlan', 'platewright.compare', 'platewright.writeCard', 'platewright.learn', 'platewright.showShots']) ok(known.includes(name), `${name} is not there`);
  });

  it('show what the server says', async () => {
    await open(text);
    await vscode.commands.executeCommand('platewright.showOutput');
  });

  it('open one bench plan beside the page, which keeps the keyboard', async () => {
    await open(text);
    const plans = (): vscode.Tab[] => vscode.window.tabGroups.all.flatMap(g => g.tabs).filter(t => t.input instanceof vscode.TabInputWebview && t.input.viewType.endsWith('platewright.plan'));
    await vscode.commands.executeCommand('platewright.showPlan');
    await until(() => plans().length === 1, 'the plan');
    ok(vscode.window.activeTextEditor?.document.languageId === 'plate', 'the text is not active any more');
    await vscode.commands.executeCommand('platewright.showPlan');
    await new Promise(resolve => { setTimeout(resolve, 300); });
    ok(plans().length === 1, 'there are two plans');
  });

  it('open one comparison beside the page, which keeps the keyboard, where there is no commit too', async () => {
    const page = await open(text);
    const comparisons = (): vscode.Tab[] => vscode.window.tabGroups.all.flatMap(g => g.tabs).filter(t => t.input instanceof vscode.TabInputWebview && t.input.viewType.endsWith('platewright.review'));
    await vscode.commands.executeCommand('platewright.sinceLastCommit', page.uri.toString());
    await until(() => comparisons().length === 1, 'the comparison');
    await until(() => comparisons()[0]?.label === `Comparison: ${page.uri.path.replace(/^.*\//, '')}`, 'its title');
    ok(vscode.window.activeTextEditor?.document.languageId === 'plate', 'the text is not active any more');
    await vscode.commands.executeCommand('platewright.sinceLastCommit', page.uri.toString());
    ok(comparisons().length === 1, 'there are two comparisons');
  });

  it('open why a shot came out dull', async () => {
    const page = await open(text.replace(/\}\s*$/, '  shot 7 on 2026-02-11 {\n    outcome: "dull at the back"\n  }\n}\n'));
    await mismatch(page);
    const line = page.positionAt(page.getText().indexOf('shot 7')).line;
    const actions = (at: vscode.Range): Thenable<vscode.CodeAction[]> => vscode.commands.executeCommand('vscode.executeCodeActionProvider', page.uri, at);
    // Asked for while the editor is busy with something else, there is none.
    const action = await until(async () => (await actions(new vscode.Range(line, 2, line, 2)))[0], 'an action at the shot').catch(async (e: unknown) => {
      // Which text the server has, it tells by what it knows of other places.
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', page.uri, new vscode.Position(line, 3));
      throw new Error(`${String(e)}; ${hovers.length} hovers there, ${(await actions((await mismatch(page)).range)).length} actions at the finding, version ${page.version} of ${page.uri.toString()}`);
    });
    ok(action.command?.command === 'platewright.why', 'another action at the shot');
    await vscode.commands.executeCommand(action.command.command, ...action.command.arguments as unknown[]);
    const answer = await until(() => vscode.workspace.textDocuments.find(d => d.uri.scheme === 'platewright-why'), 'the answer');
    ok(answer.getText().includes('The paths of the reference and the object beam differ'), answer.getText());
  });

  it('show what the shots teach, and all shots by date', async () => {
    // A host may give a new page the address of one that was closed just before; this one has an address of its own.
    const page = await vscode.workspace.openTextDocument(vscode.Uri.parse('untitled:evening.plate'));
    await vscode.window.showTextDocument(page);
    const edit = new vscode.WorkspaceEdit();
    edit.insert(page.uri, new vscode.Position(0, 0), text.replace(/\}\s*$/, '  shot 7 on 2026-02-11 {\n    dose: 42 µJ/cm²\n    outcome: "bright"\n  }\n}\n'));
    await vscode.workspace.applyEdit(edit);
    await mismatch(page);
    for (const [command, title, says] of [['learn', 'What the shots teach', 'One shot: it does not tell how plates of this stock differ'], ['showShots', 'The shots by date', '2026-02-11']] as const) {
      // What it offers waits for its answer.
      void vscode.commands.executeCommand(`platewright.${command}`);
      const shown = await until(() => vscode.workspace.textDocuments.find(d => d.uri.scheme === 'platewright-shots' && d.uri.path.includes(title)), title);
      ok(shown.getText().includes(says), shown.getText());
      await vscode.window.showTextDocument(page, vscode.ViewColumn.One);
    }
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
