/** Pages beside what they were in a revision. */
import { existsSync } from 'node:fs';
import { EXTENSION, Misuse, NoPage, openAll, Trouble, type Opened, type Reach } from '../files.ts';
import { openAt } from './pages.ts';
import type { Commit, Repository } from './repository.ts';

/** A page as it was in a revision and as it is on disk; without the one it is new, without the other it is gone. */
export interface Pair {
  readonly before?: Opened;
  readonly after?: Opened;
}

/**
 * Every page that arguments name, files or folders, each with what it was in a revision, also where it was renamed since in a revision of its own; `now` is
 * another revision, by default what is on disk. In the order of their paths.
 */
export async function pairsSince(repository: Repository, commit: Commit, args: readonly string[], reach: Reach = {}, now?: Commit): Promise<{ pairs: Pair[]; troubles: Trouble[] }> {
  const whole = repository.reach(reach);
  const troubles: Trouble[] = [];
  const before = new Pages(repository, commit, whole, troubles);
  const after = new Map<string, Opened>();
  const isThere = async (path: string): Promise<boolean> => (now ? await repository.kindOf(now, path) === 'file' : existsSync(repository.placeOf(path)));
  const later = now && new Pages(repository, now, whole, troubles);
  for (const arg of args) {
    const path = repository.pathOf(arg);
    const known = await before.all(path);
    if (later) {
      const found = await later.all(path);
      if (known.length + found.length === 0) throw new Misuse(`${arg} is neither in ${commit.named} nor in ${now.named}`);
      for (const p of found) { const page = later.opened.get(p); if (page) after.set(p, page); }
      continue;
    }
    // What the revision alone has is no trouble on disk.
    if (known.length > 0 && !existsSync(arg)) continue;
    const { opened, troubles: told } = openAll([arg], whole);
    for (const o of opened) after.set(repository.within(o.path), o);
    troubles.push(...told.filter(t => known.length === 0 || !(t instanceof NoPage)));
  }
  const pairs: Pair[] = [];
  const renamed = new Set<string>();
  for (const [path, page] of after) {
    const earlier = before.opened.has(path) ? path : await repository.pathAt(commit, path, now);
    if (earlier !== path && !await isThere(earlier)) {
      await before.open(earlier);
      renamed.add(earlier);
    }
    // It cannot be told what became of a page that cannot be read.
    if (before.lost.has(earlier)) continue;
    const old = earlier === path || renamed.has(earlier) ? before.opened.get(earlier) : undefined;
    pairs.push({ ...(old ? { before: old } : {}), after: page });
  }
  for (const [path, old] of before.opened) if (!renamed.has(path) && !after.has(path) && !await isThere(path)) pairs.push({ before: old });
  const nameOf = (p: Pair): string => (p.after ?? p.before)!.path;
  return { pairs: pairs.sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1)), troubles };
}

/** The pages of a revision that were opened; what could not be read is told. */
class Pages {
  readonly opened = new Map<string, Opened>();
  readonly lost = new Set<string>();

  constructor(private readonly repository: Repository, private readonly commit: Commit, private readonly reach: Reach, private readonly troubles: Trouble[]) {}

  /** Opens the page of a path, or all pages in its folder; those that there are, opened or lost. */
  async all(path: string): Promise<string[]> {
    const kind = await this.repository.kindOf(this.commit, path);
    const found = kind === 'folder' ? await this.repository.files(this.commit, path, EXTENSION) : kind === 'file' ? [path] : [];
    for (const p of found) await this.open(p);
    return found.filter(p => this.opened.has(p) || this.lost.has(p));
  }

  async open(path: string): Promise<void> {
    if (this.opened.has(path)) return;
    try {
      const opened = await openAt(this.repository, this.commit, path, this.reach);
      if (opened) this.opened.set(path, opened);
    } catch (e) {
      if (!(e instanceof Trouble)) throw e;
      this.lost.add(path);
      this.troubles.push(e);
    }
  }
}
