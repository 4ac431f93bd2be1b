/** Why a file could not be read or written, in words, by the code that the system gives. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder', ENOTDIR: 'there is no such file or folder', EACCES: 'permission is missing', EPERM: 'permission is missing', EROFS: 'the disk is read-only',
  ELOOP: 'its links lead in a circle', ENAMETOOLONG: 'its name is too long', ENOSPC: 'the disk is full', EDQUOT: 'the disk is full', EFBIG: 'it would be larger than a file may be there', EIO: 'the disk failed', EBUSY: 'another program uses it', EISDIR: 'it is a folder',
  EMFILE: 'too many files are open', ENFILE: 'too many files are open', ETIMEDOUT: 'the disk does not answer',
};

export const codeOf = (e: unknown): string => (e instanceof Error && 'code' in e ? String(e.code) : '');
export const reasonOf = (e: unknown): string => REASONS[codeOf(e)] ?? (e instanceof Error ? e.message : String(e));
/** True where there is nothing that could be read, however often it is tried. */
export const isMissing = (e: unknown): boolean => ['ENOENT', 'ENOTDIR'].includes(codeOf(e));
