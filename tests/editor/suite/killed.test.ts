import * as vscode from 'vscode';
import { servers } from './servers.ts';
import { closeAll, equal, matched, mismatch, ok, open, text, type, until } from './whelk.ts';

declare const EXPECTED_HOST: 'node' | 'worker';

/** How often the library starts a server again within three minutes, by its own words; once more, and it gives up. */
const RESTARTS = 4;

// A worker is no process that anybody could kill.
if (EXPECTED_HOST === 'node') {
  describe('a server that is killed', () => {
    after(closeAll);

    it('is started again, and the text that was not saved is as it was', async () => {
      const page = await open(text);
      await mismatch(page);
      await type(page, '468 mm', '384 mm');
      await matched(page);
      const before = page.getText();
      const killed = await kill();
      await until(async () => (await servers()).some((pid) => pid !== killed), 'another server');
      equal(page.getText(), before, 'the text');
      await type(page, '384 mm', '468 mm');
      await mismatch(page);
    });

    it('too often is left alone, until it is started by command', async () => {
      const page = await open(text);
      for (let n = 1; n < RESTARTS; n++) {
        const killed = await kill();
        await until(async () => (await servers()).some((pid) => pid !== killed), `server ${n + 1}`);
        // It is killed once it has begun: one that is asked how it does when it ends leaves the library with a question of its own that nobody waits for.
        await until(async () => (await vscode.commands.executeCommand<unknown[] | undefined>('vscode.executeDocumentSymbolProvider', page.uri))?.length, `an answer of server ${n + 1}`);
      }
      await kill();
      await until(() => vscode.languages.getDiagnostics(page.uri).length === 0, 'no findings of a server that is gone');
      equal((await servers()).length, 0, 'servers');
      equal(page.getText(), text, 'the text');
      await vscode.commands.executeCommand('platewright.restartServer');
      await mismatch(page);
      ok((await servers()).length === 1, 'no server, or more than one');
    });
  });
}

/** Ends the server as a system does that is out of memory; its number. */
async function kill(): Promise<number> {
  const [pid] = await until(async () => { const all = await servers(); return all.length > 0 && all; }, 'a server');
  process.kill(pid!, 'SIGKILL');
  await until(async () => !(await servers()).includes(pid!), 'the server is gone');
  return pid!;
}
