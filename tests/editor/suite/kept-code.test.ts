import * as vscode from 'vscode';
import { servers } from './servers.ts';
import { closeAll, equal, mismatch, ok, open, text, until } from './whelk.ts';

declare const EXPECTED_HOST: 'node' | 'worker';

// A worker is started by the browser, which keeps what it likes.
if (EXPECTED_HOST === 'node') {
  describe('compiled code of the server', () => {
    after(closeAll);

    it('is kept for the next start where Node.js can, in the folder of the extension; damaged it is compiled again', async () => {
      const { existsSync, readFileSync, readdirSync, statSync, writeFileSync } = await import('node:fs');
      const path = await import('node:path');
      const page = await open(text);
      await mismatch(page);
      const [pid] = await servers();
      const folder = readFileSync(`/proc/${pid}/environ`, 'utf8').split('\0').find((v) => v.startsWith('NODE_COMPILE_CACHE='))?.slice('NODE_COMPILE_CACHE='.length) ?? '';
      ok(folder.includes(path.join(path.sep, 'globalStorage', path.sep)) && folder.includes(path.join(path.sep, 'compiled', path.sep)), `kept in ${folder}`);
      const kept = (): string[] => (existsSync(folder) ? readdirSync(folder, { recursive: true }).map((name) => path.join(folder, String(name))).filter((file) => statSync(file).isFile()) : []);
      // It is written when the server ends.
      await vscode.commands.executeCommand('platewright.restartServer');
      await mismatch(page);
      if (Number(process.versions.node.split('.')[0]) < 22) {
        equal(kept().length, 0, 'files that an older Node.js keeps');
        return;
      }
      const files = await until(() => { const all = kept(); return all.length > 0 && all; }, 'compiled code that is kept');
      ok(files.some((file) => statSync(file).size > 100_000), 'the code of the server is not among what is kept');
      for (const file of files) {
        const bytes = readFileSync(file);
        for (let i = bytes.length >> 1; i < bytes.length; i++) bytes[i]! ^= 0x55;
        writeFileSync(file, bytes);
      }
      await vscode.commands.executeCommand('platewright.restartServer');
      await mismatch(page);
      equal(page.getText(), text, 'the text');
    });
  });
}
