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

/** What is written, and how the server ends when nothing more comes. */
async function fed(...pieces: (string | Buffer)[]): Promise<{ code: number | null; out: string; said: string }> {
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  let [out, said] = ['', ''];
  child.stdout.on('data', part => { out += String(part); });
  child.stderr.on('data', part => { said += String(part); });
  // It may have gone by then.
  child.stdin.on('error', () => undefined);
  for (const piece of pieces) child.stdin.write(piece);
  child.stdin.end();
  const [code] = await once(child, 'close') as [number | null];
  return { code, out, said };
}
const message = (body: string | Buffer, length = Buffer.byteLength(body)): Buffer => Buffer.concat([Buffer.from(`Content-Length: ${length}\r\n\r\n`), Buffer.from(body)]);
const hello = '{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}';
const answered = '"id":1,"result"';

it.each([
  ['half a message', ['Content-Length: 1000\r\n\r\n{"jsonrpc"']], ['half a header', ['Content-Len']], ['nothing', []],
] as const)('ends when its input ends with %s', async (_, pieces) => {
  expect(await fed(message(hello), ...pieces)).toMatchObject({ code: 0, out: expect.stringContaining(answered) as string, said: '' });
});

it.each([
  ['letters that are no UTF-8', message(Buffer.from([0x7b, 0xff, 0xfe, 0xc3, 0x28, 0x7d]))], ['a length that is too small', message('{"jsonrpc":"2.0","method":"$/setTrace","params":{"value":"off"}}', 10)],
  ['a length that is no number', Buffer.from('Content-Length: many\r\n\r\n{}')], ['no length', Buffer.from('Content-Type: text\r\n\r\n')], ['what is no header', Buffer.from('GET / HTTP/1.1\r\n\r\n')], ['a length below zero', Buffer.from('Content-Length: -5\r\n\r\n{}')],
] as const)('does not hang, crash or fall silent over %s', async (_, piece) => {
  const { code, out, said } = await fed(message(hello), piece, message('{"jsonrpc":"2.0","id":2,"method":"shutdown"}'));
  // Either it goes on, or it says why not; it ends with its input.
  expect(out).toContain(answered);
  if (code === 0) expect(said).not.toContain('at ');
  else expect([code, said]).toEqual([1, expect.stringMatching(/^platewright: /)]);
});
