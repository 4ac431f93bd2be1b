/** The server on Node: over standard input and output, or over the channel that an editor opens. */
// By this way they are loaded when a file is first read.
import { promises as fs } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { join, relative, isAbsolute, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createConnection, IPCMessageReader, IPCMessageWriter, ProposedFeatures, StreamMessageReader, StreamMessageWriter, type MessageReader, type MessageWriter } from 'vscode-languageserver/node';
import { Arrivals } from './arrivals.ts';
import type { Print } from './card.ts';
import { serve } from './connection.ts';
import { MAX_LISTED } from './protocol.ts';
import { STRATEGY } from './strategy.ts';

// An edit makes a model anew and drops the old one. Left alone, Node sometimes lets such garbage grow the heap to several times what is in use; with this
// it collects a little more often.
setFlagsFromString('--heap-growing-percent=20');

/** The space for what is new grows no more: a quarter less memory on 10,000 lines, where that matters; on a usual page it would cost a quarter of an edit's time. */
const keepSmall = (): void => { setFlagsFromString('--semi-space-growth-factor=1'); };

/** A file holds at most 2 million characters; more bytes than these cannot be that few. */
const MAX_BYTES = 8_000_000;

/** What the library of the protocol says of a header. */
const BROKEN_HEADER = /^(?:Header must|Content-Length value|Message header)/;

/** Serves an editor over standard input and output, until it closes them. */
export function startStdio(): void {
  const quit = (): void => { process.exit(0); };
  process.stdin.once('end', quit).once('close', quit);
  const reader = new StreamMessageReader(process.stdin);
  reader.onError(e => {
    // Of a message whose body is none the end is known, and the next one is read. Behind a broken header nobody knows where one begins: silence would leave the editor waiting.
    if (!BROKEN_HEADER.test(e.message)) return;
    process.stderr.write(`platewright: the server ends, since it cannot tell where a message begins (${e.message.split('\n', 1)[0]!.replace(/[^\x20-\x7e]/g, '?').slice(0, 200)}). It is started by an editor, which speaks the Language Server Protocol with it.\n`);
    process.exit(1);
  });
  start(reader, new StreamMessageWriter(process.stdout));
}

function start(reader: MessageReader, writer: MessageWriter): void {
  const arrivals = new Arrivals(reader);
  serve(createConnection(ProposedFeatures.all, arrivals, writer, STRATEGY), arrivals, readInside, listInside, keepSmall, print);
}

/** What prints is large, and a file of its own: it is loaded when a card is asked for. */
export const print: Print = async (...of) => (await import('./press.ts')).print(...of);

/** The text of a file, unless links lead it out of the folders. Throws where it cannot be read. */
export async function readInside(uri: string, folders: readonly string[]): Promise<string | undefined> {
  const path = await fs.realpath(fileURLToPath(uri));
  const roots = await Promise.all(folders.filter(f => f.startsWith('file:')).map(f => fs.realpath(fileURLToPath(f)).catch(() => undefined)));
  if (!roots.some(r => r !== undefined && lies(path, r))) return undefined;
  const found = await fs.stat(path);
  return found.isFile() && found.size <= MAX_BYTES ? fs.readFile(path, 'utf8') : undefined;
}

/** Folders deeper than this hold no pages. */
const MAX_DEPTH = 12;

/** Addresses of the pages in some folders: at most {@link MAX_LISTED}, and one more where there are more. Links are not followed; folders of packages, and those whose name begins with a dot, are left out. */
export async function listInside(folders: readonly string[]): Promise<string[]> {
  const found = new Set<string>();
  let level = folders.filter(f => f.startsWith('file:')).map(f => fileURLToPath(f));
  for (let depth = 0; depth <= MAX_DEPTH && level.length > 0; depth++) {
    const next: string[] = [];
    for (const folder of level) {
      const entries = await fs.readdir(folder, { withFileTypes: true }).catch(() => []);
      for (const e of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
        if (e.isFile() && e.name.endsWith('.plate')) found.add(pathToFileURL(join(folder, e.name)).href);
        else if (e.isDirectory() && !e.name.startsWith('.') && e.name !== 'node_modules') next.push(join(folder, e.name));
        if (found.size > MAX_LISTED) return [...found];
      }
    }
    level = next;
  }
  return [...found];
}

function lies(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

// The command line brings this file along and calls startStdio(); as a file of its own it is what an editor starts.
if (/(?:^|[\\/])server\.cjs$/.test(process.argv[1] ?? '')) {
  if (process.argv.includes('--node-ipc')) start(new IPCMessageReader(process), new IPCMessageWriter(process));
  else startStdio();
}
