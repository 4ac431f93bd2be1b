/** Pages as they are on disk beside what they were in a revision. */
import { existsSync } from 'node:fs';
import { EXTENSION, NoPage, openAll, Trouble, type Opened, type Reach } from '../files.ts';
import { openAt } from './pages.ts';
import type { Commit, Repository } from './repository.ts';

/** A page as it was in a revision and as it is on disk; without the one it is new, without the other it is gone. */
export interface Pair {
  readonly before?: Opened;
  readonly after?: Opened;
}

/** Every page that arguments name, files or folders, each with what it was in a revision, also where it was renamed since in a revision of its own. In the order of their paths. */
export async function pairsSince(repository: Repository, commit: Commit, args: readonly string[], reach: Reach = {}): Promise<{ pairs: Pair[]; troubles: Trouble[] }> {
  const whole: Reach = { ...reach, folder: reach.folder ?? repository.root };
  const lost = new Set<string>();
  const then = new Map<string, Opened>();
  const now = new Map<string, Opened>();
  const troubles: Trouble[] = [];
  for (const arg of args) {
    const path = repository.pathOf(arg);
    const kind = await repository.kindOf(commit, path);
    const known = kind === 'folder' ? await repository.files(commit, path, EXTENSION) : kind === 'file' ? [path] : [];
    for (const p of known) await open(p);
    // What the revision alone has is no trouble on disk.
    if (known.length > 0 && !existsSync(arg)) continue;
    const { opened, troubles: told } = openAll([arg], whole);
    for (const o of opened) now.set(repository.within(o.path), o);
    troubles.push(...told.filter(t => known.length === 0 || !(t instanceof NoPage)));
  }
  const pairs: Pair[] = [];
  const renamed = new Set<string>();
  for (const [path, after] of now) {
    const earlier = then.has(path) ? path : await repository.pathAt(commit, path);
    if (earlier !== path && !isThere(earlier)) {
      await open(earlier);
      renamed.add(earlier);
    }
    // It cannot be told what became of a page that cannot be read.
    if (lost.has(earlier)) continue;
    const before = earlier === path || renamed.has(earlier) ? then.get(earlier) : undefined;
    pairs.push({ ...(before ? { before } : {}), after });
  }
  for (const [path, before] of then) if (!isThere(path) && !renamed.has(path)) pairs.push({ before });
  const nameOf = (p: Pair): string => (p.after ?? p.before)!.path;
  return { pairs: pairs.sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1)), troubles };

  function isThere(path: string): boolean {
    return existsSync(repository.placeOf(path));
  }

  async function open(path: string): Promise<void> {
    if (then.has(path)) return;
    try {
      const opened = await openAt(repository, commit, path, whole);
      if (opened) then.set(path, opened);
    } catch (e) {
      if (!(e instanceof Trouble)) throw e;
      lost.add(path);
      troubles.push(e);
    }
  }
}
