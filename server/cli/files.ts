/** The only place that reads files, as `writing.ts` is the only one that writes them; revisions of them are read in `git/`. Everything else gets texts, and gives texts back. */
import { readdirSync, readFileSync, realpathSync, statSync, type Stats } from 'node:fs';
import { basename, dirname, isAbsolute, join, parse, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Library } from '../analysis.ts';
import { codeOf, isMissing, reasonOf } from '../features/unreadable.ts';

/** A file or folder that could not be read or written; the message names it and says why. Exit code 3. */
export class Trouble extends Error {}
/** A folder without a page in it. */
export class NoPage extends Trouble {}
/** What was asked for makes no sense. Exit code 2. */
export class Misuse extends Error {}

export interface Opened {
  /** as it is shown to people: relative to the working folder, with `/` */
  readonly name: string;
  /** where it really is, links followed */
  readonly path: string;
  readonly uri: string;
  readonly text: string;
  /** gives the core the files that this one uses */
  readonly texts: Library;
}

/** A file holds at most 2 million characters; more bytes than these cannot be that few. */
export const MAX_BYTES = 8_000_000;
export const EXTENSION = '.plate';

/** Where files that a file uses may lie. */
export interface Reach {
  /** by default the working folder if it holds the file, else the folder that was named, else the file's own folder */
  readonly folder?: string;
  /** folders that are looked in besides */
  readonly inventory?: readonly string[];
}

/** What a library takes its texts from: the disk, or a revision. */
export interface Source {
  /** where a path leads, links followed; undefined: nowhere */
  real(path: string): string | undefined;
  /** undefined: there is none that can be read */
  text(path: string): string | undefined;
  /** why there is no text, where something is there */
  why?(path: string): string | undefined;
}

/** Opens a file. */
export function openFile(named: string, { folder, inventory = [] }: Reach = {}, within?: string): Opened {
  const path = realPath(named);
  const text = readText(path, named);
  const root = folder === undefined ? [process.cwd(), ...(within === undefined ? [] : [within])].map(f => realPath(f)).find(f => isInside(f, path)) ?? dirname(path) : realFolder(folder);
  if (!isInside(root, path)) throw new Misuse(`${named} does not lie in ${folder ?? root}, the folder that --folder names`);
  return { name: shownPath(resolve(named)), path, uri: pathToFileURL(path).href, text, texts: libraryIn(root, inventory.map(f => ({ named: f, path: realFolder(f) })), DISK) };
}

/** Opens all files that arguments name; a folder stands for every `.plate` file in it and in its folders. Each file once; what could not be opened is told apart. */
export function openAll(args: readonly string[], reach: Reach = {}): { opened: Opened[]; troubles: Trouble[] } {
  const opened = new Map<string, Opened>();
  const troubles: Trouble[] = [];
  const attempt = (act: () => void): void => {
    try { act(); } catch (e) {
      if (!(e instanceof Trouble)) throw e;
      troubles.push(e);
    }
  };
  const open = (named: string, within?: string): void => attempt(() => {
    const file = openFile(named, reach, within);
    if (!opened.has(file.path)) opened.set(file.path, file);
  });
  for (const arg of args) {
    attempt(() => {
      if (!statOf(arg).isDirectory()) { open(arg); return; }
      const found = walk(arg, realPath(arg), 0);
      if (found.length === 0) throw new NoPage(`${arg}: there is no ${EXTENSION} file in this folder`);
      for (const named of found) open(named, arg);
    });
  }
  return { opened: [...opened.values()], troubles };
}

/** The path as it is shown: relative to the working folder, with `/`. */
export const shownPath = (path: string): string => relative(process.cwd(), path).split(sep).join('/') || '.';
/** The path of an address relative to a folder, with `/`. */
export const pathFrom = (folder: string, uri: string): string => (uri.startsWith('file:') ? relative(folder, fileURLToPath(uri)).split(sep).join('/') : uri);
export const nameOfUri = (uri: string): string => (uri.startsWith('file:') ? shownPath(fileURLToPath(uri)) : uri);

/** Everything on standard input, as text. */
export async function readInput(): Promise<string> {
  const parts: Buffer[] = [];
  try {
    for await (const part of process.stdin) parts.push(part as Buffer);
  } catch (e) {
    throw trouble('standard input', e, 'cannot be read');
  }
  return decode(Buffer.concat(parts), 'standard input');
}

/** The files that lie in `root` or in a named folder. */
export function libraryIn(root: string, named: readonly { readonly named: string; readonly path: string }[], source: Source): Library {
  const realOf = (path: string, roots: readonly string[]): string | undefined => (isOnDiskOf(roots, path) ? source.real(path) : undefined);
  const at = (folder: string, path: string): string | undefined => {
    const real = realOf(resolve(folder, path), [folder]);
    return real !== undefined && isInside(folder, real) ? pathToFileURL(real).href : undefined;
  };
  const folders = [{ path: root, where: shownPath(root) === '.' ? 'the working folder' : `the folder “${shownPath(root)}”` }, ...named.map(n => ({ path: n.path, where: `the folder “${n.named}”` }))];
  const texts = new Map<string, string | undefined>();
  return {
    text(uri) {
      if (!texts.has(uri)) texts.set(uri, source.text(fileURLToPath(uri)));
      return texts.get(uri);
    },
    why: uri => source.why?.(fileURLToPath(uri)),
    resolve(path, from) {
      const roots = [root, ...named.map(n => n.path)];
      const real = realOf(resolve(dirname(fileURLToPath(from)), path), roots);
      return real !== undefined && roots.some(f => isInside(f, real)) ? pathToFileURL(real).href : null;
    },
    elsewhere: path => folders.flatMap(f => { const uri = at(f.path, path); return uri === undefined ? [] : [{ uri, where: f.where }]; }),
  };
}

export const DISK: Source = {
  real: path => realOrPlanned(path),
  text(path) {
    try {
      return readText(path, path);
    } catch {
      return undefined;
    }
  },
  why(path) {
    try {
      if (isMissing(statError(path))) return undefined;
      readText(path, 'it');
      return undefined;
    } catch (e) {
      return (e as Error).message;
    }
  },
};

function statError(path: string): unknown {
  try {
    statSync(path);
    return undefined;
  } catch (e) {
    return e;
  }
}

/** The real path; of a path that does not exist, that of the part that does, with the rest behind it. */
export function realOrPlanned(path: string): string | undefined {
  const rest: string[] = [];
  for (let at = path; ; at = dirname(at)) {
    try {
      return join(realpathSync(at), ...rest);
    } catch (e) {
      // A link in a ring, or a name that no file can have: it leads nowhere.
      if (codeOf(e) !== 'ENOENT' && codeOf(e) !== 'ENOTDIR') return undefined;
    }
    if (dirname(at) === at) return undefined;
    rest.unshift(basename(at));
  }
}

/**
 * On Windows a page may name another disk, or a share of somebody's network, to which the system shows who is logged in as soon as it is asked whether there is such a file. It can lie in none of the
 * folders, and is not asked for. `rootOf`: what a system takes for the root of a path.
 */
export const isOnDiskOf = (folders: readonly string[], path: string, rootOf = (p: string): string => parse(p).root): boolean => folders.some(f => rootOf(f).toLowerCase() === rootOf(path).toLowerCase());

export function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** The text of an ordinary file. `named`: as it is called to people. */
export function readText(path: string, named: string): string {
  const stat = statOf(path, named);
  if (stat.isDirectory()) throw new Trouble(`${named} is a folder; name a ${EXTENSION} file in it`);
  if (!stat.isFile()) throw new Trouble(`${named} is not an ordinary file`);
  if (stat.size > MAX_BYTES) throw new Trouble(`${named} is too large: ${Math.round(stat.size / 1e6)} MB, and a file holds at most 2 MB`);
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (e) {
    throw trouble(named, e, 'cannot be read');
  }
  return decode(bytes, named);
}

export function decode(bytes: Buffer, named: string): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) throw new Trouble(`${named} is UTF-16 text; save it as UTF-8`);
  if (bytes.includes(0)) throw new Trouble(`${named} is not text`);
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Trouble(`${named} is not UTF-8 text; save it as UTF-8`);
  }
}

function walk(folder: string, root: string, depth: number): string[] {
  if (depth > 32) return [];
  let entries;
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch (e) {
    throw trouble(folder, e, 'cannot be read');
  }
  return entries.sort((a, b) => (a.name < b.name ? -1 : 1)).flatMap(e => {
    const path = join(folder, e.name);
    if (e.isDirectory()) return e.name.startsWith('.') || e.name === 'node_modules' ? [] : walk(path, root, depth + 1);
    if (!e.name.endsWith(EXTENSION)) return [];
    if (!e.isSymbolicLink()) return e.isFile() ? [path] : [];
    const real = realOrPlanned(path);
    return real !== undefined && isInside(root, real) ? [path] : [];
  });
}

function realFolder(folder: string): string {
  if (!statOf(folder).isDirectory()) throw new Trouble(`${folder} is not a folder`);
  return realPath(folder);
}

function realPath(named: string): string {
  try {
    return realpathSync(named);
  } catch (e) {
    throw trouble(named, e, 'cannot be read');
  }
}

function statOf(path: string, named = path): Stats {
  try {
    return statSync(path);
  } catch (e) {
    throw trouble(named, e, 'cannot be read');
  }
}

/** What can be done where that is not plain. */
const ADVICE: Readonly<Record<string, string>> = { ENOSPC: 'make room, and do it again', EDQUOT: 'make room, and do it again', EIO: 'look after the disk before anything else', EMFILE: 'close other programs, and do it again', ENFILE: 'close other programs, and do it again' };

/** In words: the file, what could not be done with it, why, and what to do. */
export function trouble(named: string, e: unknown, what: string): Trouble {
  const advice = ADVICE[codeOf(e)];
  return new Trouble(`${named} ${what}: ${reasonOf(e)}${advice === undefined ? '' : `; ${advice}`}`);
}
