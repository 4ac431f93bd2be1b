// The least that a client has to do: tells the findings of a page.   node client.mjs PAGE
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const page = resolve(process.argv[2]);
const server = spawn('platewright', ['lsp', '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'], shell: process.platform === 'win32' });
/** Each message is JSON behind a header that counts its bytes. */
const send = message => {
  const body = JSON.stringify({ jsonrpc: '2.0', ...message });
  server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
};

let rest = Buffer.alloc(0);
server.stdout.on('data', part => {
  rest = Buffer.concat([rest, part]);
  for (let head; (head = rest.indexOf('\r\n\r\n')) >= 0;) {
    const end = head + 4 + Number(/Content-Length: (\d+)/i.exec(rest.toString('latin1', 0, head))[1]);
    if (rest.length < end) return;
    take(JSON.parse(rest.toString('utf8', head + 4, end)));
    rest = rest.subarray(end);
  }
});
function take({ id, method, params }) {
  const textDocument = { uri: pathToFileURL(page).href, languageId: 'plate', version: 1, text: readFileSync(page, 'utf8') };
  if (id === 1) { send({ method: 'initialized', params: {} }); send({ method: 'textDocument/didOpen', params: { textDocument } }); }
  if (method === 'textDocument/publishDiagnostics') {
    for (const { range, code, message } of params.diagnostics) console.log(`${range.start.line + 1}: ${code}: ${message}`);
    send({ id: 2, method: 'shutdown' });
  }
  if (id === 2) send({ method: 'exit' });
}
send({ id: 1, method: 'initialize', params: { processId: process.pid, rootUri: pathToFileURL(resolve(page, '..')).href, capabilities: {} } });
