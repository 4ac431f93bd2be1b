// A language client of the least size, over stdio, that times how long findings take.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';

/**
 * Starts `server` ({ command, settings, env }) and opens one document in it. With `pull` the client asks for findings after each change, else it waits
 * for them to come. `found` tells from the findings whether the arms are too long: an answer that does not fit the text is not counted but thrown.
 * `users`: documents that use the first, of which the findings are waited for instead of its own; only where they come by themselves.
 */
export async function open(server, { uri, languageId, text }, { pull, found }, users = []) {
  const child = spawn(process.execPath, server.command, { stdio: ['pipe', 'pipe', 'inherit'], env: { ...process.env, ...server.env } });
  const waiting = new Map();
  let lastId = 0;
  let version = 1;
  let published;

  const send = (message) => {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    child.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    child.stdin.write(body);
  };
  const notify = (method, params) => send({ method, params });
  const request = (method, params) => new Promise((resolve, reject) => {
    waiting.set(++lastId, { resolve, reject });
    send({ id: lastId, method, params });
  });

  readMessages(child.stdout, ({ id, method, params, result, error }) => {
    if (method === 'textDocument/publishDiagnostics') published?.(params);
    else if (method && id !== undefined) send({ id, result: method === 'workspace/configuration' ? params.items.map(({ section }) => server.settings[section] ?? null) : null });
    else if (!method) {
      const { resolve, reject } = waiting.get(id);
      waiting.delete(id);
      if (error) reject(new Error(`${server.name}: ${error.message}`));
      else resolve(result);
    }
  });

  /** Settles when the findings are those of a text whose arms are too long, or are not. */
  const findings = async (tooLong) => {
    if (!pull) {
      const waited = new Set(users.length > 0 ? users.map((user) => user.uri) : [uri]);
      await new Promise((resolve) => {
        published = (sent) => {
          if (waited.has(sent.uri) && found(sent.diagnostics) === tooLong) waited.delete(sent.uri);
          if (waited.size === 0) resolve();
        };
      });
      return;
    }
    const { items } = await request('textDocument/diagnostic', { textDocument: { uri } });
    if (found(items) !== tooLong) throw new Error(`${server.name}: findings that do not fit the text: ${JSON.stringify(items).slice(0, 300)}`);
  };

  const diagnostic = pull ? { diagnostic: { dynamicRegistration: false } } : {};
  const capabilities = {
    textDocument: {
      synchronization: {}, publishDiagnostics: { versionSupport: true }, ...diagnostic, completion: { completionItem: { snippetSupport: true } }, hover: {}, documentSymbol: { hierarchicalDocumentSymbolSupport: true }, formatting: {},
      semanticTokens: { requests: { full: { delta: true }, range: true }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] },
    },
    workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
  };
  await request('initialize', { processId: process.pid, rootUri: null, capabilities, initializationOptions: server.options ?? {} });
  notify('initialized', {});
  notify('workspace/didChangeConfiguration', { settings: server.settings });
  const opened = pull ? undefined : findings(true);
  for (const document of [{ uri, text }, ...users]) notify('textDocument/didOpen', { textDocument: { uri: document.uri, languageId, version, text: document.text } });
  await (opened ?? findings(true));

  return {
    /** Changes one character; milliseconds from the change to the findings that belong to it. */
    async edit({ line, character, matched, tooLong }, isTooLong) {
      const range = { start: { line, character }, end: { line, character: character + 1 } };
      const contentChanges = [{ range, text: isTooLong ? tooLong : matched }];
      const start = performance.now();
      const answer = pull ? undefined : findings(isTooLong);
      notify('textDocument/didChange', { textDocument: { uri, version: ++version }, contentChanges });
      await (answer ?? findings(isTooLong));
      return performance.now() - start;
    },
    /** Changes one character, and asks at once what stands at a place; milliseconds to that answer. */
    async hover({ line, character, text }, position) {
      const start = performance.now();
      notify('textDocument/didChange', { textDocument: { uri, version: ++version }, contentChanges: [{ range: { start: { line, character }, end: { line, character: character + 1 } }, text }] });
      await request('textDocument/hover', { textDocument: { uri }, position });
      return performance.now() - start;
    },
    /** Asks something of the document; the answer, and milliseconds to it. */
    async ask(method, params) {
      const start = performance.now();
      const answer = await request(method, { textDocument: { uri }, ...params });
      return { answer, ms: performance.now() - start };
    },
    /** Memory held by the process, in MB (10⁶ bytes). */
    residentMemory: () => Number(/VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))[1]) * 1.024e-3,
    /** Asks it to end, as an editor does: some is only written then. */
    async end() {
      const gone = once(child, 'exit');
      await request('shutdown', null);
      notify('exit');
      await gone;
    },
    async close() {
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
    },
  };
}

/** Pieces of an answer are put together once it is whole: what the client does with them is no part of what is measured. */
function readMessages(stream, receive) {
  let pieces = [];
  let held = 0;
  let wanted = 0;
  stream.on('data', (chunk) => {
    pieces.push(chunk);
    held += chunk.length;
    while (held > 0 && held >= wanted) {
      let all = pieces.length === 1 ? pieces[0] : Buffer.concat(pieces, held);
      const head = all.indexOf('\r\n\r\n');
      const end = head < 0 ? Infinity : head + 4 + Number(/Content-Length: *(\d+)/i.exec(all.toString('latin1', 0, head))[1]);
      const message = held >= end ? JSON.parse(all.toString('utf8', head + 4, end)) : undefined;
      if (message) all = all.subarray(end);
      pieces = all.length > 0 ? [all] : [];
      held = all.length;
      wanted = message || head < 0 ? 0 : end;
      if (message) receive(message);
      else return;
    }
  });
}
