/**
 * How the extension writes a file: beside its place first, then renamed, so that a file holds the old or the new at any time, whatever happens on the way; and what another
 * program or another window has written there meanwhile is kept. All else that it changes are texts of pages, which the editor keeps and saves.
 */
import { FileType, l10n, type FileStat, type FileSystem, type Uri } from 'vscode';

export type Files = Pick<FileSystem, 'stat' | 'writeFile' | 'copy' | 'rename' | 'delete'>;

/** A file as it was when somebody chose its place. */
export type Seen = Pick<FileStat, 'type' | 'mtime' | 'size'>;

/** undefined: there is none. What cannot be looked at counts as none, and is not written over either. */
export const seenAt = async (files: Files, at: Uri): Promise<Seen | undefined> => files.stat(at).then(s => s, () => undefined);

/**
 * @param before what somebody gave up; undefined: nothing may be there
 * @param inPlace whether this is a browser that lets a page at single files only: it writes beside and renames by itself
 * @throws Error with the reason, and what to do, in words
 */
export async function putFile(files: Files, at: Uri, file: Uint8Array, before: Seen | undefined, inPlace = false): Promise<void> {
  const unchanged = async (): Promise<void> => {
    const now = await seenAt(files, at);
    if (now?.mtime !== before?.mtime || now?.size !== before?.size) throw new Error(changed());
  };
  // Where a link leads, nobody here can tell; renamed onto it, a file would take its place.
  if (inPlace || (before && (before.type & FileType.SymbolicLink) !== 0)) {
    await unchanged();
    await told(() => files.writeFile(at, file), '');
    return;
  }
  const random = [...crypto.getRandomValues(new Uint32Array(2))].map(n => n.toString(16).padStart(8, '0')).join('');
  const beside = at.with({ path: `${at.path.slice(0, at.path.lastIndexOf('/') + 1)}.platewright-${random}.tmp` });
  try {
    await told(async () => {
      // A copy may be read and written by whom the old one may.
      if (before) await files.copy(at, beside, { overwrite: false });
      await files.writeFile(beside, file);
    }, before ? l10n.t('The file that was there is as it was.') : '');
    await unchanged();
    await told(() => files.rename(beside, at, { overwrite: before !== undefined }), '');
  } catch (e) {
    await files.delete(beside).then(undefined, () => undefined);
    throw e;
  }
}

const changed = (): string => l10n.t('another program or window has written there meanwhile, and that was kept. Do it again.');

async function told(act: () => PromiseLike<void>, more: string): Promise<void> {
  try {
    await act();
  } catch (e) {
    throw new Error(`${reasonOf(e)} ${more}`.trim(), { cause: e });
  }
}

/** The editor gives a code, or passes on what the system says. */
function reasonOf(e: unknown): string {
  const said = e instanceof Error ? e.message : String(e);
  const code = (e as { readonly code?: unknown } | undefined)?.code;
  if (code === 'FileExists') return changed();
  if (/ENOSPC|EDQUOT|quota/i.test(said)) return l10n.t('the disk is full. Make room, or choose another place.');
  if (code === 'NoPermissions' || /EACCES|EPERM|EROFS|locked/i.test(said)) return l10n.t('it is write-protected, or its folder is. Choose another place.');
  if (code === 'FileNotFound') return l10n.t('its folder is not there any more. Choose another place.');
  return said;
}
