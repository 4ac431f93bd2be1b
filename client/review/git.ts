/** What is asked of the editor's own git extension, which may not be there: on the web, or switched off. */
import { extensions, l10n, type Disposable, type Event, type Uri } from 'vscode';

interface Commit { readonly hash: string; readonly message: string; readonly parents: readonly string[]; readonly commitDate?: Date; readonly authorDate?: Date }
interface Change { readonly originalUri: Uri; readonly renameUri: Uri | undefined }
export interface Repository {
  readonly rootUri: Uri;
  readonly state: { readonly HEAD: { readonly commit?: string } | undefined; readonly indexChanges: readonly Change[]; readonly onDidChange: Event<void> };
  log(options: { readonly maxEntries?: number; readonly path?: string; readonly range?: string }): Promise<Commit[]>;
  show(ref: string, path: string): Promise<string>;
  diffBetween(older: string, newer: string): Promise<Change[]>;
}
interface Git {
  readonly repositories: readonly Repository[];
  readonly onDidOpenRepository: Event<Repository>;
  getRepository(uri: Uri): Repository | null;
}
interface GitExtension { readonly enabled: boolean; readonly onDidChangeEnablement: Event<boolean>; getAPI(version: 1): Git }

/** A commit in which a page is another one than before, and what the page was called there. */
export interface Revision { readonly hash: string; readonly subject: string; readonly date: Date | undefined; readonly uri: Uri }

/** So many letters of a hash tell commits apart. */
export const SHORT = 7;

/** So many commits are listed, and so many renames followed. */
const MOST = 200;
const RENAMES = 5;

async function extension(): Promise<GitExtension | undefined> {
  const found = extensions.getExtension<GitExtension>('vscode.git');
  try {
    return found && (found.isActive ? found.exports : await found.activate());
  } catch {
    return undefined;
  }
}

async function git(): Promise<Git | undefined> {
  const exports = await extension();
  return exports?.enabled ? exports.getAPI(1) : undefined;
}

/** The repository that a page is in, or why there is none, as a sentence. */
export async function repositoryOf(uri: Uri): Promise<Repository | string> {
  if (uri.scheme !== 'file') return uri.scheme === 'untitled' ? l10n.t('This page was never saved, so that there are no earlier revisions of it.') : l10n.t('No git can be asked about this page: revisions are read of files on this machine’s disk, by the editor’s git extension.');
  const found = await git();
  if (!found) return l10n.t('The editor’s git extension is not there or is switched off, so that no revisions can be read.');
  return found.getRepository(uri) ?? l10n.t('This page is in no git repository, so that there are no earlier revisions of it.');
}

/** Calls back when a repository comes, or one has another last commit. */
export function onDidChangeHead(changed: () => void): Disposable {
  const own: Disposable[] = [];
  const heads = new Map<Repository, string | undefined>();
  let gone = false;
  const watch = (r: Repository): void => {
    heads.set(r, r.state.HEAD?.commit);
    own.push(r.state.onDidChange(() => {
      if (heads.get(r) === r.state.HEAD?.commit) return;
      heads.set(r, r.state.HEAD?.commit);
      changed();
    }));
  };
  const begin = async (): Promise<void> => {
    const found = await git();
    if (!found || gone) return;
    own.push(found.onDidOpenRepository(r => { watch(r); changed(); }));
    for (const r of found.repositories) watch(r);
    changed();
  };
  void extension().then(exports => {
    if (!exports || gone) return;
    own.push(exports.onDidChangeEnablement(enabled => { if (enabled) void begin(); }));
    if (exports.enabled) void begin();
  });
  return { dispose: () => { gone = true; for (const d of own) d.dispose(); } };
}

/** The commits that changed a page, the newest first, also under the names that it had before. */
export async function revisionsOf(repository: Repository, page: Uri): Promise<Revision[]> {
  const all: Revision[] = [];
  let uri = nameIn(repository.state.indexChanges, page) ?? page;
  let range: string | undefined;
  for (let i = 0; i <= RENAMES; i++) {
    const commits = await repository.log({ path: uri.fsPath, ...(range === undefined ? { maxEntries: MOST } : { range }) });
    all.push(...commits.map(c => ({ hash: c.hash, subject: c.message.split('\n')[0]!, date: c.commitDate ?? c.authorDate, uri })));
    const first = commits.at(-1);
    const parent = first?.parents[0];
    const older = parent === undefined ? undefined : nameIn(await repository.diffBetween(parent, first!.hash), uri);
    if (!older || all.length >= MOST) break;
    [uri, range] = [older, parent];
  }
  return all.slice(0, MOST);
}

/** What a file was called on the older side, where it was called otherwise. */
const nameIn = (changes: readonly Change[], { path }: Uri): Uri | undefined => changes.find(c => c.renameUri?.path === path && c.originalUri.path !== path)?.originalUri;

/** The text of a file in a revision; null where it was not in it. */
export async function textAt(repository: Repository, ref: string, uri: Uri): Promise<string | null> {
  try {
    return await repository.show(ref, uri.fsPath);
  } catch {
    return null;
  }
}

/** The text of a page in the last commit, under the name that it has there. */
export async function textInHead(repository: Repository, page: Uri): Promise<{ readonly text: string; readonly uri: Uri } | undefined> {
  const uri = nameIn(repository.state.indexChanges, page) ?? page;
  const text = await textAt(repository, 'HEAD', uri);
  return text === null ? undefined : { text, uri };
}

export const isInside = (repository: Repository, uri: Uri): boolean => uri.scheme === repository.rootUri.scheme && uri.path.startsWith(`${repository.rootUri.path.replace(/\/$/, '')}/`);
