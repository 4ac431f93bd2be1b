// How long a folder of 500 pages takes from the start of the server to the findings of all: the examples, again and again under other names, each opened.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';

export const PAGES = 500;
const RUNS = 3;

/** Median milliseconds. They lie beside the examples, so that files that they use are found. */
export async function timeWorkspace(median) {
  const folder = resolve('examples');
  const files = readdirSync(folder).filter((f) => f.endsWith('.plate'));
  const pages = Array.from({ length: PAGES }, (_, n) => ({ uri: pathToFileURL(`${folder}/${n}-${files[n % files.length]}`).href, text: readFileSync(`${folder}/${files[n % files.length]}`, 'utf8') }));
  const times = [];
  for (let n = 0; n < RUNS; n++) times.push(await openAll(folder, pages));
  return median(times);
}

async function openAll(folder, pages) {
  const start = performance.now();
  const child = spawn(process.execPath, [resolve('dist/server.cjs'), '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  const waiting = new Set(pages.map(({ uri }) => uri));
  const checked = new Promise((done) => {
    connection.onNotification('textDocument/publishDiagnostics', ({ uri }) => { waiting.delete(uri); if (waiting.size === 0) done(); });
  });
  connection.onRequest(() => null);
  connection.listen();
  const folders = [{ uri: pathToFileURL(folder).href, name: 'examples' }];
  await connection.sendRequest('initialize', { processId: process.pid, rootUri: null, workspaceFolders: folders, capabilities: { textDocument: { publishDiagnostics: {} }, workspace: { workspaceFolders: true } } });
  await connection.sendNotification('initialized', {});
  for (const { uri, text } of pages) await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'plate', version: 1, text } });
  await checked;
  const ms = performance.now() - start;
  connection.dispose();
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
  return ms;
}
