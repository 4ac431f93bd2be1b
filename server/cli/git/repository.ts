/** A git repository, read only: which revisions there are, and what a page said in one of them. */
import { existsSync, statSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { decode, isInside, Misuse, realOrPlanned, Trouble, type Reach } from '../files.ts';
import { Folders } from './folders.ts';
import { Objects } from './objects.ts';
import { git } from './run.ts';

/** A revision that was asked for. */
export interface Commit {
  readonly id: string;
  /** the folder that it holds */
  readonly tree: string;
  /** as it was asked for */
  readonly named: string;
}

/** A revision that touched a page. */
export interface Revision {
  readonly id: string;
  /** when it was written, by its author's clock and zone: `2026-02-14T21:40:00+01:00` */
  readonly date: string;
  /** the first line of what its author says of it */
  readonly subject: string;
  /** where the page lay then */
  readonly path: string;
  /** where it had lain, if this revision renamed it */
  readonly before?: string;
  /** the page is not in this revision any more */
  readonly gone: boolean;
}

export class Repository {
  private readonly objects: Objects;
  private readonly folders: Folders;

  /** `root`: its working folder, links followed. `shallow`: it holds only the newest part of its history. */
  private constructor(readonly root: string, readonly shallow: boolean) {
    this.objects = new Objects(root);
    this.folders = new Folders(this.objects);
  }

  /** Opens the repository in which a file or folder lies, or lay, while something is done with it. */
  static async with<T>(named: string, act: (repository: Repository) => Promise<T>): Promise<T> {
    const folder = folderOf(named);
    // The folder comes last, as it may hold line ends itself.
    const [, shallow, root] = /^(\w+)\n([^]*)\n$/.exec(await git(['rev-parse', '--is-shallow-repository', '--show-toplevel'], folder))!;
    // By its settings a repository may call any folder its own, such as that of all of the disk; a page may use what lies in it.
    if (!existsSync(resolve(root!, '.git'))) throw new Trouble(`the repository of ${folder} says that its working folder is ${root!}, which is not where it lies; compare files instead of revisions`);
    const repository = new Repository(realOrPlanned(resolve(root!)) ?? resolve(root!), shallow === 'true');
    try {
      return await act(repository);
    } finally {
      repository.objects.close();
    }
  }

  /** The path of a file or folder in the repository, with `/`; it need not exist. */
  pathOf(named: string): string {
    const path = realOrPlanned(resolve(named));
    if (path === undefined || !isInside(this.root, path)) throw new Misuse(`${named} does not lie in the repository ${this.root}`);
    return this.within(path);
  }

  /** The path in the repository of one on this disk that lies in it. */
  within(path: string): string {
    return relative(this.root, path).split(sep).join('/');
  }

  /** The same of an address; undefined where it is none of a file in it. */
  withinUri(uri: string): string | undefined {
    const path = uri.startsWith('file:') ? fileURLToPath(uri) : undefined;
    return path !== undefined && isInside(this.root, path) ? this.within(path) : undefined;
  }

  /** What a page uses may lie anywhere in the repository, unless somebody says less. */
  reach(reach: Reach): Reach {
    return { ...reach, folder: reach.folder ?? this.root };
  }

  /** Where a path of the repository lies on this disk, or would. */
  placeOf(path: string): string {
    return resolve(this.root, ...path.split('/'));
  }

  /** The revision of a name that git knows, such as `HEAD~3`, a tag, or the start of an id; `main...` is where the present one and `main` parted. */
  async commit(named: string): Promise<Commit> {
    const at = named.indexOf('...');
    if (at < 0 && named !== '') return this.one(named, named);
    if (at < 0) throw new Misuse('Name a revision, such as HEAD, HEAD~3, main or a tag.');
    const [a, b] = [await this.one(named.slice(0, at), named), await this.one(named.slice(at + 3), named)];
    const base = (await git(['merge-base', '--all', a.id, b.id], this.root).catch(() => '')).split('\n')[0]!;
    if (base === '') throw new Misuse(`“${named}” have no revision in common.${this.moreHistory()}`);
    return this.one(base, named);
  }

  private async one(name: string, named: string): Promise<Commit> {
    const found = await this.objects.get(`${name === '' ? 'HEAD' : name}^{commit}`);
    const tree = found?.data && /^tree ([0-9a-f]+)\n/.exec(found.data.toString('latin1'))?.[1];
    if (!found || tree === undefined) throw new Misuse(`There is no revision “${name}” in ${this.root}.${this.moreHistory() || ' git log lists those that there are.'}`);
    return { id: found.id, tree, named };
  }

  private moreHistory(): string {
    return this.shallow ? ' Only the newest part of the history is here; get the rest with git fetch --unshallow.' : '';
  }

  /** What a file said; undefined where there was none. Throws a Trouble where it cannot be read. */
  async text({ tree, named }: Commit, path: string): Promise<string | undefined> {
    const found = await this.folders.find(tree, path);
    if (!found || found.kind === 'repository') return undefined;
    if (found.kind === 'folder') throw new Trouble(`${path} of ${named} is a folder`);
    const { data, size } = await this.objects.known(found.id);
    if (!data) throw new Trouble(`${path} of ${named} is too large: ${Math.round(size / 1e6)} MB, and a file holds at most 2 MB`);
    return decode(data, `${path} of ${named}`);
  }

  /** What stood at a path. */
  async kindOf({ tree }: Commit, path: string): Promise<'file' | 'folder' | undefined> {
    const kind = (await this.folders.find(tree, path))?.kind;
    return kind === 'file' || kind === 'folder' ? kind : undefined;
  }

  /** The files in a folder and in its folders that a name ends so, as on disk: no hidden folders, no packages, by name. None where there was no such folder. */
  async files({ tree }: Commit, folder: string, ending: string): Promise<string[]> {
    const walk = async (id: string, way: string): Promise<string[]> => {
      const found: string[] = [];
      for (const { name, kind, id: of } of [...await this.folders.list(id)].sort((a, b) => (a.name < b.name ? -1 : 1))) {
        if (kind === 'folder' && !name.startsWith('.') && name !== 'node_modules') found.push(...await walk(of, `${way}${name}/`));
        if (kind === 'file' && name.endsWith(ending)) found.push(way + name);
      }
      return found;
    };
    const top = await this.folders.find(tree, folder);
    return top?.kind === 'folder' ? walk(top.id, folder === '' ? '' : `${folder}/`) : [];
  }

  /**
   * The revisions that changed a file, newest first, back through its renames. A merge is among them where it is like none of what it joins. Where branches
   * renamed the file differently, git follows the newer name.
   */
  async revisions(path: string, until?: Commit, from?: Commit): Promise<Revision[]> {
    if (!await this.objects.get('HEAD^{commit}')) return [];
    const range = [from?.id ?? 'HEAD', ...(until ? [`^${until.id}`] : [])];
    const out = await git(['log', '--follow', '-M', '--date-order', '-c', '--name-status', '-z', '--no-color', '--no-ext-diff', '--no-textconv', '--encoding=UTF-8', '--format=%H%x00%aI%x00%s', ...range, '--', path], this.root);
    return revisionsIn(out);
  }

  /** All revisions of the present branch, the newest first, none before one that it rests on. */
  async order(): Promise<string[]> {
    if (!await this.objects.get('HEAD^{commit}')) return [];
    return (await git(['rev-list', '--date-order', 'HEAD'], this.root)).split('\n').filter(Boolean);
  }

  /** Where a file lay in an earlier revision, by its renames since; of the present branch, or of `later`. */
  async pathAt(earlier: Commit, path: string, later?: Commit): Promise<string> {
    return (await this.revisions(path, earlier, later)).reduce((at, r) => r.before ?? at, path);
  }
}

/**
 * Reads `id 0 date 0 subject 0`, behind it a line end or, of a merge, a zero byte, and what is said of the file: `M 0 path 0` or `R100 0 before 0 path 0`. Of a
 * merge that took the file from one of those that it joins nothing is said, and it is left out.
 */
function revisionsIn(out: string): Revision[] {
  const words = out.split('\0');
  const found: Revision[] = [];
  for (let i = 0; i + 2 < words.length;) {
    const [id, date, subject] = words.slice(i, i += 3) as [string, string, string];
    if (words[i] === '') i++;
    const status = /^\n?([A-Z]+)\d*$/.exec(words[i] ?? '')?.[1];
    if (status === undefined) continue;
    const before = /^[RC]/.test(status) ? words[++i] : undefined;
    found.push({ id, date, subject, path: words[++i]!, ...(before === undefined ? {} : { before }), gone: /^D+$/.test(status) });
    i++;
  }
  return found;
}

/** The nearest folder that there is: of a page that was deleted, where it lay. */
function folderOf(named: string): string {
  for (let at = realOrPlanned(resolve(named)) ?? resolve(named); ; at = dirname(at)) {
    if (statSync(at, { throwIfNoEntry: false })?.isDirectory()) return at;
    if (dirname(at) === at) throw new Trouble(`${named} cannot be read: there is no such file or folder`);
  }
}
