import * as vscode from 'vscode';
import { closeAll, equal, matched, mismatch, ok, open, text, until, writtenLength } from './whelk.ts';

/** The fixes offered for the finding about the arms; it may take the host a moment to know of the finding. */
async function fixes(page: vscode.TextDocument): Promise<vscode.CodeAction[]> {
  const { range } = await mismatch(page);
  return await until(async () => {
    // The editor drops a question when it tidies the page that it has just opened, and is asked again then.
    const asked = vscode.commands.executeCommand<vscode.CodeAction[]>('vscode.executeCodeActionProvider', page.uri, range, vscode.CodeActionKind.QuickFix.value, 10);
    const actions = await Promise.resolve(asked).catch((e: unknown) => { if (e instanceof Error && e.message === 'Canceled') return []; throw e; });
    const ours = actions.filter(({ title }) => /^(Shorten|Lengthen) /.test(title));
    return ours.length > 0 && ours;
  }, 'a quick fix that shortens or lengthens a leg');
}

describe('quick fixes', () => {
  afterEach(closeAll);

  it('each match the arms by changing one line', async () => {
    equal(writtenLength(text, 'object') - writtenLength(text, 'reference'), 84, 'mismatch of the page');
    const count = (await fixes(await open(text))).length;
    for (let i = 0; i < count; i++) {
      const page = await open(text);
      const fix = (await fixes(page))[i];
      ok(fix?.edit !== undefined, `fix ${i} has no edit`);
      ok(await vscode.workspace.applyEdit(fix.edit), `'${fix.title}' was refused`);
      await matched(page);
      const [before, after] = [text.split('\n'), page.getText().split('\n')];
      equal(after.length, before.length, 'number of lines');
      equal(after.filter((line, n) => line !== before[n]).length, 1, `lines changed by '${fix.title}'`);
      const left = writtenLength(page.getText(), 'object') - writtenLength(page.getText(), 'reference');
      ok(Math.abs(left) <= 0.5, `'${fix.title}' leaves ${left} mm`);
      await closeAll();
    }
  });

  it('are undone in one step', async () => {
    const page = await open(text);
    const edit = (await fixes(page))[0]?.edit;
    ok(edit !== undefined, 'the fix has no edit');
    await vscode.workspace.applyEdit(edit);
    await matched(page);
    await vscode.commands.executeCommand('undo');
    equal(page.getText(), text, 'text after undo');
    await mismatch(page);
  });
});
