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

/** What the server says once it has introduced itself and then gets `piece` and a request; `end` closes its input behind it, else that is done when the request is answered. */
async function fed(piece: string | Buffer, end: boolean): Promise<{ code: number | null; out: string; said: string }> {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  let [out, said] = ['', ''];
  child.stderr.on('data', part => { said += String(part); });
  // It may have gone by then.
  child.stdin.on('error', () => undefined);
  let given = false;
  child.stdout.on('data', part => {
    out += String(part);
    if (!given && out.includes('"id":1,"result"')) {
      given = true;
      child.stdin.write(piece);
      if (end) child.stdin.end();
      else child.stdin.write(message('{"jsonrpc":"2.0","id":2,"method":"shutdown"}'));
    }
    if (out.includes('"id":2,"result"')) child.stdin.end();
  });
  child.stdin.write(message('{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}'));
  const [code] = await once(child, 'close') as [number | null];
  return { code, out, said };
}
const message = (body: string | Buffer, length = Buffer.byteLength(body)): Buffer => Buffer.concat([Buffer.from(`Content-Length: ${length}\r\n\r\n`), Buffer.from(body)]);

it('ends when its input ends within a message', async () => {
  expect(await fed('Content-Length: 1000\r\n\r\n{"jsonrpc"', true)).toMatchObject({ code: 0, said: '' });
});

it('goes on behind letters that are no UTF-8', async () => {
  expect(await fed(message(Buffer.from([0x7b, 0xff, 0xfe, 0xc3, 0x28, 0x7d])), false)).toMatchObject({ code: 0, out: expect.stringContaining('"id":2,"result":null') as string, said: '' });
});

it.each([
  ['what is no header', 'GET / HTTP/1.1\r\n\r\n'], ['a header without a length', 'Content-Type: text\r\n\r\n'], ['a length that is no number', 'Content-Length: many\r\n\r\n{}'],
  ['a length that is too small', message('{"jsonrpc":"2.0","method":"$/setTrace","params":{"value":"off"}}', 10)],
] as const)('says so and ends behind %s, since it cannot tell where the next message begins', async (_, piece) => {
  const { code, said } = await fed(piece, false);
  expect(said).toMatch(/^platewright: the server ends, since it cannot tell where a message begins \(.+\)\. It is started by an editor, [^\n]*\n$/);
  expect(code).toBe(1);
});
