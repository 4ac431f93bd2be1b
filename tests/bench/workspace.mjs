// How long 500 pages take from the start of the server to the findings of all: the setup of 100 lines, in as many files, beside both peers; and the examples, again
// and again under other names, by ours alone.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { setup } from './setups.mjs';

export const PAGES = 500;
const RUNS = 5;
const LINES = 100;

/** Median milliseconds by server; no two pages are the same text. */
export async function timePages(servers, median) {
  const times = new Map(servers.map(({ name }) => [name, []]));
  for (let n = 0; n < RUNS; n++) {
    for (const server of servers) {
      const { text } = setup(LINES, server.format);
      const pages = Array.from({ length: PAGES }, (_, k) => ({ uri: `file:///notebook/page-${k}.${server.format}`, text: text.replace('A table', `Table ${k + 1}`) }));
      times.get(server.name).push(await openAll(server, 'file:///notebook', pages, server.found));
    }
  }
  return new Map([...times].map(([name, all]) => [name, median(all)]));
}

/** Median milliseconds. They lie beside the examples, so that files that they use are found. */
export async function timeExamples(server, median) {
  const folder = resolve('examples');
  const files = readdirSync(folder).filter((f) => f.endsWith('.plate'));
  const pages = Array.from({ length: PAGES }, (_, n) => ({ uri: pathToFileURL(`${folder}/${n}-${files[n % files.length]}`).href, text: readFileSync(`${folder}/${files[n % files.length]}`, 'utf8') }));
  const times = [];
  for (let n = 0; n < RUNS; n++) times.push(await openAll(server, pathToFileURL(folder).href, pages, () => true));
  return median(times);
}

/** Milliseconds until each page has findings for which `found` holds. */
async function openAll(server, folder, pages, found) {
  const start = performance.now();
  const child = spawn(process.execPath, server.command, { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  const waiting = new Set(pages.map(({ uri }) => uri));
  let done;
  const checked = new Promise((resolve) => { done = resolve; });
  const told = (uri, findings) => {
    if (found(findings)) waiting.delete(uri);
    if (waiting.size === 0) done();
  };
  connection.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }) => told(uri, diagnostics));
  connection.onRequest((method, params) => (method === 'workspace/configuration' ? params.items.map(({ section }) => server.settings[section] ?? null) : null));
  connection.listen();
  const capabilities = {
    textDocument: { publishDiagnostics: {}, ...(server.pull ? { diagnostic: {} } : {}) },
    workspace: { workspaceFolders: true, configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
  };
  await connection.sendRequest('initialize', { processId: process.pid, rootUri: null, workspaceFolders: [{ uri: folder, name: 'notebook' }], capabilities, initializationOptions: server.options ?? {} });
  await connection.sendNotification('initialized', {});
  await connection.sendNotification('workspace/didChangeConfiguration', { settings: server.settings });
  for (const { uri, text } of pages) await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: server.languageId, version: 1, text } });
  if (server.pull) for (const { uri } of pages) void connection.sendRequest('textDocument/diagnostic', { textDocument: { uri } }).then(({ items }) => told(uri, items));
  await checked;
  const ms = performance.now() - start;
  connection.dispose();
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
  return ms;
}
