/**
 * All that is written goes through here: beside its place first, then renamed, so that a file holds the old or the new at any time, whatever happens on the way.
 * What is no ordinary file (a pipe, a terminal) holds nothing, and is written to as it is.
 */
import { randomBytes } from 'node:crypto';
import { accessSync, chmodSync, closeSync, constants, fchmodSync, fchownSync, fsyncSync, openSync, readFileSync, readlinkSync, renameSync, statSync, unlinkSync, writeFileSync, type Stats } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { EXTENSION, Misuse, realOrPlanned, Trouble, trouble } from './files.ts';

/** Puts a text in the place of a file's, unless that is another one by now than the one which the new text was made of. */
export function replaceText(path: string, named: string, before: string, text: string): void {
  attempt(named, () => {
    const unchanged = (): void => { if (!readFileSync(path).equals(Buffer.from(before))) throw new Trouble(`${named} cannot be written: another program has changed it meanwhile, and that was kept; do it again`); };
    unchanged();
    put(path, text, unchanged);
  });
}

/** Writes a file of the program's own making, in the place of one that is there. A page that somebody has written is never overwritten. */
export function writeMade(named: string, made: string | Uint8Array): void {
  if (named.endsWith(EXTENSION)) throw new Misuse(`${named} ends in ${EXTENSION}, as a setup does: choose another name`);
  attempt(named, () => { put(target(resolve(named)), made); });
}

/** Writes a page that is not there yet; one that is there stays as it is. */
export function writeNew(named: string, text: string): void {
  attempt(named, () => {
    const path = resolve(named);
    // The name is taken first, so that of two who begin the same page one is told.
    closeSync(openSync(path, 'wx'));
    try {
      put(path, text);
    } catch (e) {
      remove(path);
      throw e;
    }
  });
}

/** @param ready called when all but the last step is done; throws where that must not be */
function put(path: string, made: string | Uint8Array, ready?: () => void): void {
  const old = statSync(path, { throwIfNoEntry: false });
  if (old) accessSync(path, constants.W_OK);
  if (old && !old.isFile()) { writeFileSync(path, made); return; }
  // By chance, not by process and time: these come again.
  const beside = join(dirname(path), `.platewright-${randomBytes(8).toString('hex')}.tmp`);
  let file = openSync(beside, 'wx', old ? 0o600 : 0o666);
  try {
    try {
      writeFileSync(file, made);
      if (old) keep(file, beside, old);
      // A disk that is full or fails says so here at the latest.
      whereAllowed(() => { fsyncSync(file); });
    } finally {
      closeSync(file);
    }
    ready?.();
    renameSync(beside, path);
  } catch (e) {
    remove(beside);
    throw e;
  }
  try {
    file = openSync(dirname(path), 'r');
    try { fsyncSync(file); } finally { closeSync(file); }
  } catch { /* not every system does that with a folder; the file is whole either way */ }
}

/** Mode, and where that is allowed owner. */
function keep(file: number, path: string, old: Stats): void {
  // Only the superuser may give a file away; for others the new file is theirs.
  try { fchownSync(file, old.uid, old.gid); } catch { /* kept by whoever writes it */ }
  const mode = old.mode & 0o7777;
  if (!whereAllowed(() => { fchmodSync(file, mode); })) chmodSync(path, mode);
}

/** Where Node is told which files it may use (`--permission`), it does nothing to files by their numbers: false then. */
function whereAllowed(act: () => void): boolean {
  try {
    act();
    return true;
  } catch (e) {
    if ((e as { code?: unknown }).code === 'ERR_ACCESS_DENIED') return false;
    throw e;
  }
}

/** Where links lead; what is not there yet may be linked to as well. */
function target(path: string, links = 40): string {
  const real = realOrPlanned(path);
  if (real === undefined || links === 0) return path;
  let to: string;
  try {
    to = readlinkSync(real);
  } catch {
    return real;
  }
  return target(resolve(dirname(real), to), links - 1);
}

function remove(path: string): void {
  try { unlinkSync(path); } catch { /* its folder is gone */ }
}

function attempt(named: string, act: () => void): void {
  try {
    act();
  } catch (e) {
    if (e instanceof Trouble) throw e;
    if (e instanceof Error && 'code' in e && e.code === 'EEXIST') throw new Trouble(`${named} is there already, and nothing was written over it: choose another name`);
    throw trouble(named, e, 'cannot be written');
  }
}
