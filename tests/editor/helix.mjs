// Reads the file for Helix as that does, and starts the server that it names. Helix itself is not run: Debian has no package of it.
//   node tests/editor/helix.mjs HOME PAGE
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { parse } from 'smol-toml';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { end, step } from '../packages/steps.mjs';

const [home, page] = process.argv.slice(2);
let language, server;
await step('the file is TOML, and has a language for pages', () => {
  const read = parse(readFileSync(join(home, '.config/helix/languages.toml'), 'utf8'));
  language = read.language.find(l => l['file-types'].includes(extname(page).slice(1)));
  assert.equal(language.name, 'plate');
  assert.deepEqual({ ...language.indent }, { 'tab-width': 2, unit: '  ' });
  server = language['language-servers'].map(name => read['language-server'][name])[0];
});
await step('the server that it names answers', async () => {
  const child = spawn(server.command, server.args, { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  connection.listen();
  const { serverInfo } = await connection.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
  assert.equal(serverInfo.name, 'platewright');
  child.stdin.end();
  await once(child, 'close');
});
end('');
