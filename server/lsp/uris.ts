/** Addresses of files: one spelling for each, and what a `use` may reach. */

interface Parts {
  /** `file://`, `vscode-remote://host`, `untitled:` */
  readonly head: string;
  /** decoded, with `/` */
  readonly path: string;
}

function parts(uri: string): Parts {
  const m = /^([\w+.-]+:)(\/\/[^/?#]*)?([^?#]*)/.exec(uri);
  return m ? { head: m[1]! + (m[2] ?? ''), path: decoded(m[3]!) } : { head: '', path: decoded(uri) };
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

/** Half of a pair of UTF-16 has no address, and is in the name of no file. */
const encoded = (step: string): string => encodeURIComponent(step.replaceAll(/\p{Surrogate}/gu, '\ufffd'));
const join = ({ head, path }: Parts): string => head + path.replace(/^\/[A-Z]:/, drive => drive.toLowerCase()).split('/').map(encoded).join('/');

/** The one spelling of an address: editors differ in what they encode, and in the case of a drive letter. */
export const canonical = (uri: string): string => join(parts(uri));

/** True where a file lies in a folder, at any depth. Both are canonical. */
export const isInside = (uri: string, folder: string): boolean => uri.startsWith(folder.endsWith('/') ? folder : `${folder}/`);

export const folderOf = (uri: string): string => uri.slice(0, Math.max(0, uri.lastIndexOf('/')));

/**
 * The folders whose files a file may use: those that are open. One that lies outside of them all may use what lies in its own
 * folder; a text that was never saved has none.
 */
export function foldersFor(main: string, open: readonly string[]): readonly string[] {
  return open.some(f => isInside(main, f)) || !main.includes('/') ? open : [folderOf(main)];
}

/** The address of a folder as a setting names it: an address, or an absolute path. Undefined for anything else. */
export function folderNamed(text: string): string | undefined {
  const path = text.replaceAll('\\', '/').replace(/(?<!\/)\/+$/, '');
  if (/^[\w+.-]{2,}:\/\//.test(path)) return canonical(path);
  const rooted = /^[A-Za-z]:/.test(path) ? `/${path}` : path;
  // What stands in a path is not encoded yet.
  return rooted.startsWith('/') ? canonical(`file://${rooted.replaceAll('%', '%25')}`) : undefined;
}

/** The path of a file, as people and programs read it. */
export const pathOf = (uri: string): string => parts(uri).path.replace(/^\/(?=[A-Za-z]:)/, '');

/** The last part of an address, as people read it. */
export const nameOf = (uri: string): string => decoded(uri.slice(uri.lastIndexOf('/') + 1)) || uri;

/** The path by which a file names another one of the same place; undefined where there is none. */
export function pathFrom(from: string, to: string): string | undefined {
  const [a, b] = [parts(folderOf(from)), parts(to)];
  if (a.head !== b.head || !from.includes('/')) return undefined;
  const [up, down] = [a.path.split('/'), b.path.split('/')];
  let same = 0;
  while (same < up.length && same < down.length - 1 && up[same] === down[same]) same++;
  return [...up.slice(same).map(() => '..'), ...down.slice(same)].join('/');
}

/** The address that the path of a `use` means in the file `from`, or null where it leaves the folders. A text that was never saved counts from the first of them. */
export function resolveUse(path: string, from: string, folders: readonly string[]): string | null {
  const base = from.includes('/') ? folderOf(from) : folders[0];
  if (base === undefined) return null;
  const { head, path: folder } = parts(base);
  const steps: string[] = [];
  for (const step of [...(path.startsWith('/') ? [] : folder.split('/')), ...path.split('/')]) {
    if (step === '..') {
      if (steps.pop() === undefined) return null;
    } else if (step !== '' && step !== '.') steps.push(step);
  }
  const to = join({ head, path: `/${steps.join('/')}` });
  return folders.some(f => isInside(to, f)) ? to : null;
}
