/** What Node.js has compiled of the server is kept from one start to the next, where it can (22 and later): the code, which is large, is then read and not compiled. */
import type { FileSystem, Uri } from 'vscode';

type Files = Pick<FileSystem, 'readDirectory' | 'delete'>;

/**
 * What the server is given for that. Where nothing is kept yet, where it is damaged or nobody can write there, Node.js compiles as it always does, and says nothing.
 *
 * @param storage the folder that the editor gives this extension of this user: whoever could write to it could run code as this user, as with the folder of the extension itself. No page and no workspace has a say in it
 * @param version of the extension; what was kept of others goes
 */
export function keptCode(files: Files, storage: Uri, version: string): { readonly NODE_COMPILE_CACHE: string } {
  const all = within(storage, 'compiled');
  void forgetOthers(files, all, version);
  return { NODE_COMPILE_CACHE: within(all, version).fsPath };
}

/** What cannot be removed stays, and is tried again at the next start. */
export async function forgetOthers(files: Files, all: Uri, version: string): Promise<void> {
  const kept = await Promise.resolve(files.readDirectory(all)).catch(() => []);
  await Promise.all(kept.filter(([name]) => name !== version).map(([name]) => Promise.resolve(files.delete(within(all, name), { recursive: true, useTrash: false })).catch(() => undefined)));
}

const within = (folder: Uri, name: string): Uri => folder.with({ path: `${folder.path}/${name}` });
