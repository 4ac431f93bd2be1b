import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createMessageConnection, IPCMessageReader, IPCMessageWriter, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { whelk } from '../features/source.ts';
import { Editor, introduce } from './editor.ts';

let folder: string;
let server: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'platewright-'));
  server = join(folder, 'server.cjs');
  await build({ entryPoints: ['server/lsp/node.ts'], outfile: server, bundle: true, platform: 'node', target: 'node20', format: 'cjs', logLevel: 'error' });
});
afterAll(() => rm(folder, { recursive: true }));

async function works(editor: Editor, child: ChildProcess): Promise<void> {
  await introduce(editor, {});
  const page = await editor.open(whelk);
  expect(await page.codes()).toEqual(['arms-mismatched']);
  await editor.connection.sendRequest('shutdown');
  const gone = once(child, 'exit');
  await editor.connection.sendNotification('exit');
  expect(await gone).toEqual([0, null]);
  editor.close();
}

it('serves over standard input and output, writes nothing else, and ends when asked to', async () => {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  let said = '';
  child.stderr.on('data', text => { said += String(text); });
  await works(new Editor(createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin))), child);
  expect(said).toBe('');
});

it('serves over the channel of a parent process', async () => {
  const child = spawn(process.execPath, [server, '--node-ipc'], { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] });
  await works(new Editor(createMessageConnection(new IPCMessageReader(child), new IPCMessageWriter(child))), child);
});

it('ends with its editor', async () => {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'ignore', 'inherit'] });
  const gone = once(child, 'exit');
  child.stdin.end();
  await gone;
});

it('outlives what is no message', async () => {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'ignore'] });
  for (const body of ['not json!', 'null', '7', '[]', '{}', '{"jsonrpc":"2.0","method":"$/cancelRequest"}', '{"jsonrpc":"2.0","method":7,"id":{}}']) child.stdin.write(`Content-Length: ${body.length}\r\n\r\n${body}`);
  await works(new Editor(createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin))), child);
});
