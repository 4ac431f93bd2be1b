/** Pages as they were in a revision, opened as those on disk are, so that `diff` and `log` work on either. */
import { resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parse } from '../../../grammar/parse.ts';
import { MAX_FILES, type Library } from '../../analysis.ts';
import { DISK, isInside, libraryIn, realOrPlanned, shownPath, Trouble, type Opened, type Reach, type Source } from '../files.ts';
import type { Commit, Repository } from './repository.ts';

/**
 * A page as it was in a revision, with the files that it used as they were there; undefined where there was none. Its address is that of the page on disk, so
 * that places of both compare. What it uses may lie anywhere in the repository, unless `folder` says less: open the page on disk with the repository's root as
 * its `folder`, and both reach the same. A folder of inventories outside of the repository has no revisions, and is read as it is now.
 */
export async function openAt(repository: Repository, commit: Commit, path: string, { folder = repository.root, inventory = [] }: Reach = {}): Promise<Opened | undefined> {
  const text = await repository.text(commit, path);
  if (text === undefined) return undefined;
  const place = repository.placeOf(path);
  const uri = pathToFileURL(place).href;
  const read = new Map<string, string | undefined>([[place, text]]);
  const source: Source = { real: at => (isInside(repository.root, at) ? at : DISK.real(at)), text: at => (isInside(repository.root, at) ? read.get(at) : DISK.text(at)) };
  const real = (named: string): string => realOrPlanned(resolve(named)) ?? resolve(named);
  const library = (): Library => libraryIn(real(folder), inventory.map(f => ({ named: f, path: real(f) })), source);
  let count = 0;
  await readUsed(uri, text);
  return { name: shownPath(place), path: place, uri, text, texts: library() };

  /** The core does not wait for a file, so that all that a `use` may mean are read before. */
  async function readUsed(from: string, of: string): Promise<void> {
    const texts = library();
    for (const used of usesOf(of)) {
      for (const found of [texts.resolve(used, from), ...texts.elsewhere!(used).map(c => c.uri)]) {
        const at = found === null ? undefined : fileURLToPath(found);
        if (at === undefined || read.has(at) || count >= MAX_FILES || !isInside(repository.root, at)) continue;
        const other = await repository.text(commit, repository.within(at)).catch(unreadable);
        read.set(at, other);
        if (other === undefined) continue;
        count++;
        await readUsed(found!, other);
      }
    }
  }
}

// In a history the same inventory is met again and again.
const known = new Map<string, readonly string[]>();
const MOST_KNOWN = 256;

/** The paths behind `use` in a text. */
function usesOf(text: string): readonly string[] {
  let found = known.get(text);
  if (!found) {
    if (known.size >= MOST_KNOWN) known.clear();
    // Most lines are none, and need not be read.
    const lines = text.split(/\r\n|\n|\r/).filter(l => /^[\s\ufeff]*use\b/.test(l)).join('\n');
    known.set(text, found = parse(lines).nodes.flatMap(({ line: { head, subject } }) => (head?.text === 'use' && subject?.kind === 'string' ? [subject.value] : [])));
  }
  return found;
}

/** A file that is used and cannot be read is a finding of the page, as on disk. */
function unreadable(e: unknown): undefined {
  if (!(e instanceof Trouble)) throw e;
}
