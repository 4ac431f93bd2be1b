/** The revisions of a page, each held against the one before it. */
import { LineCache } from '../../grammar/parse.ts';
import { analyse, filesOf, type Snapshot } from '../analysis.ts';
import { reviewOf, type Review } from '../review/review.ts';
import { openFile, Trouble, type Opened, type Reach } from './files.ts';
import { openAt } from './git/pages.ts';
import type { Repository, Revision } from './git/repository.ts';
import type { Part } from './threads.ts';

export interface Step {
  /** undefined: what is on disk and not committed */
  readonly revision?: Pick<Revision, 'id' | 'date' | 'subject'>;
  /** where the page lay */
  readonly path: string;
  /** the page is not there any more */
  readonly gone: boolean;
  /** what became of the page; a sentence where it could not be read */
  readonly told: Review | string;
}

/** Analyses one text after the other; two that follow each other can be held side by side, since each second one has the same cache. */
class Reader {
  private readonly caches = [0, 1].map(() => new Map<string, LineCache>());
  private turn = 0;

  read(page: Opened): Snapshot {
    const caches = this.caches[this.turn = 1 - this.turn]!;
    const lines = (uri: string): LineCache => {
      let cache = caches.get(uri);
      if (!cache) caches.set(uri, cache = new LineCache());
      return cache;
    };
    // A page that was renamed is the same page.
    return analyse(page.uri, page.text, { ...page.texts, lines }, lines('page'));
  }
}

/**
 * Calls `step` for each of the revisions that touched a page, from the oldest to what is on disk; of a part of them only for these, the first held against the one before it.
 * @param revisions see `revisionsOf`
 */
export async function history(repository: Repository, named: string, reach: Reach, revisions: readonly Revision[], step: (s: Step) => void, { from, to }: Part = { from: 0, to: revisions.length }): Promise<void> {
  const whole = repository.reach(reach);
  const reader = new Reader();
  let before: Snapshot | undefined;
  let last: Opened | undefined;
  const open = async ({ id, path: lay, gone }: Revision): Promise<Opened | Trouble | undefined> => {
    try {
      return gone ? undefined : await openAt(repository, await repository.commit(id), lay, whole);
    } catch (e) {
      if (!(e instanceof Trouble)) throw e;
      return e;
    }
  };
  for (let i = from - 1; i >= 0; i--) {
    const page = await open(revisions[i]!);
    if (page instanceof Trouble) continue;
    [before, last] = [page && reader.read(page), page];
    break;
  }
  for await (const [revision, now] of ahead(revisions.slice(from, to), open)) {
    const lay = revision.path;
    if (now instanceof Trouble) {
      step({ revision, path: lay, gone: false, told: now.message });
      continue;
    }
    const snapshot = now && reader.read(now);
    step({ revision, path: lay, gone: now === undefined, told: reviewOf(before, snapshot) });
    [before, last] = [snapshot, now];
  }
  if (to < revisions.length) return;
  const disk = onDisk(named, whole);
  if (disk && (disk.text !== last?.text || revisions.length === 0)) step({ path: repository.pathOf(named), gone: false, told: reviewOf(before, reader.read(disk)) });
}

const AHEAD = 16;
/** Each of a list with what is found of it, which is looked for some steps ahead, so that git answers several questions at a time, and while a page is analysed. */
async function* ahead<T, F>(list: readonly T[], find: (of: T) => Promise<F>): AsyncGenerator<readonly [T, F]> {
  const found: Promise<F>[] = [];
  for (const [i, one] of list.entries()) {
    while (found.length < AHEAD && i + found.length < list.length) {
      const next = find(list[i + found.length]!);
      // What fails, fails when it is its turn.
      next.catch(() => undefined);
      found.push(next);
    }
    yield [one, await found.shift()!];
  }
}

function onDisk(named: string, reach: Reach): Opened | undefined {
  try {
    return openFile(named, reach);
  } catch (e) {
    if (!(e instanceof Trouble)) throw e;
    return undefined;
  }
}

/** The revisions that touched a page, or an inventory that it uses now, the oldest first, each with where the page lay then. */
export async function revisionsOf(repository: Repository, named: string, reach: Reach): Promise<Revision[]> {
  const path = repository.pathOf(named);
  const disk = onDisk(named, repository.reach(reach));
  const used = disk ? filesOf(disk.uri, disk.text, disk.texts).filter(uri => uri !== disk.uri).flatMap(uri => repository.withinUri(uri) ?? []) : [];
  const [ids, own, ...more] = await Promise.all([repository.order(), repository.revisions(path), ...used.map(u => repository.revisions(u))]);
  const [order, others] = [new Map(ids.map((id, i) => [id, i])), more.flat()];
  const all = new Map([...others, ...own].map(r => [r.id, r]));
  const mine = new Map(own.map(r => [r.id, r]));
  const sorted = [...all.values()].sort((a, b) => (order.get(b.id) ?? 0) - (order.get(a.id) ?? 0));
  let lay: string | undefined;
  let gone = false;
  const found: Revision[] = [];
  for (const r of sorted) {
    const page = mine.get(r.id);
    if (page) [lay, gone] = [page.path, page.gone];
    // Before there was the page, what it uses later is none of its matter.
    if (lay !== undefined && (page || !gone)) found.push({ ...r, path: lay, gone });
  }
  return found;
}
