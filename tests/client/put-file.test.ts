/** Files that the extension writes, on disks that fail: the old file is whole or the new one is, nothing is left beside it, and what somebody else has written is kept. */
import { describe, expect, test } from 'vitest';
import { FileType, type FileStat, type Uri } from 'vscode';
import { putFile, seenAt, type Files } from '../../client/put-file.ts';

const uri = (path: string): Uri => ({ path, with: ({ path: other }: { path: string }) => uri(other) }) as Uri;
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const CARD = uri('/desk/whelk-card.html');

/** As the editor tells of it: a code, or the words of the system. */
const fault = (code: string, message = code): Error => Object.assign(new Error(message), { code });
const FULL = fault('Unknown', 'Unable to write file (Unknown (FileSystemError): Error: ENOSPC: no space left on device, write)');

interface Kept { text: string; mtime: number; mode: number; type: FileType }

/** A disk in memory that does as the interface of file systems says (`FileSystemProvider` in vscode.d.ts). */
class Disk implements Files {
  readonly files = new Map<string, Kept>();
  /** what is called before each step; throws where that fails */
  before: (step: string, path: string) => void = () => undefined;
  private time = 1000;

  put(path: string, text: string, more: Partial<Kept> = {}): void { this.files.set(path, { mode: 0o644, type: FileType.File, ...this.files.get(path), ...more, text, mtime: ++this.time }); }
  private step(name: string, { path }: Uri): Promise<void> { return Promise.resolve().then(() => { this.before(name, path); }); }
  private there({ path }: Uri): Kept {
    const file = this.files.get(path);
    if (!file) throw fault('FileNotFound');
    return file;
  }
  private free({ path }: Uri, overwrite = false): void { if (!overwrite && this.files.has(path)) throw fault('FileExists'); }

  async stat(at: Uri): Promise<FileStat> {
    await this.step('stat', at);
    const { type, mtime, text } = this.there(at);
    return { type, mtime, ctime: 0, size: text.length };
  }
  async writeFile(at: Uri, file: Uint8Array): Promise<void> {
    // Half of it is there when a disk is full.
    this.put(at.path, new TextDecoder().decode(file.slice(0, file.length >> 1)));
    await this.step('write', at);
    this.put(at.path, new TextDecoder().decode(file));
  }
  async copy(from: Uri, to: Uri, how?: { overwrite?: boolean }): Promise<void> {
    await this.step('copy', from);
    this.free(to, how?.overwrite);
    this.files.set(to.path, { ...this.there(from), mtime: ++this.time });
  }
  async rename(from: Uri, to: Uri, how?: { overwrite?: boolean }): Promise<void> {
    await this.step('rename', from);
    this.free(to, how?.overwrite);
    this.files.set(to.path, this.there(from));
    this.files.delete(from.path);
  }
  async delete(at: Uri): Promise<void> {
    await this.step('delete', at);
    this.there(at);
    this.files.delete(at.path);
  }
  get all(): Record<string, string> { return Object.fromEntries([...this.files].map(([path, { text }]) => [path, text])); }
}

const diskWith = (old?: string, more: Partial<Kept> = {}): Disk => {
  const disk = new Disk();
  if (old !== undefined) disk.put(CARD.path, old, more);
  return disk;
};
const put = async (disk: Disk, text: string, inPlace?: boolean): Promise<void> => putFile(disk, CARD, bytes(text), await seenAt(disk, CARD), inPlace);

describe('a file', () => {
  test('that is new is written', async () => {
    const disk = diskWith();
    await put(disk, 'new');
    expect(disk.all).toEqual({ [CARD.path]: 'new' });
  });
  test('takes the place of one that somebody gave up, with its mode', async () => {
    const disk = diskWith('old', { mode: 0o600 });
    await put(disk, 'new');
    expect(disk.all).toEqual({ [CARD.path]: 'new' });
    expect(disk.files.get(CARD.path)!.mode).toBe(0o600);
  });
  test('is written where a link leads, and the link stays', async () => {
    const disk = diskWith('old', { type: FileType.File | FileType.SymbolicLink });
    await put(disk, 'new');
    expect(disk.all).toEqual({ [CARD.path]: 'new' });
    expect(disk.files.get(CARD.path)!.type).toBe(65);
  });
  test('is written by a browser that knows no folder', async () => {
    const disk = diskWith('old');
    disk.before = (_, path) => { if (path !== CARD.path) throw fault('NoPermissions'); };
    await put(disk, 'new', true);
    expect(disk.all).toEqual({ [CARD.path]: 'new' });
  });
});

const FAULTS: readonly (readonly [string, Error, RegExp])[] = [
  ['is full', FULL, /^the disk is full\. Make room/], ['is full for this user', fault('Unknown', 'EDQUOT: disk quota exceeded'), /^the disk is full\. Make room/],
  ['is read-only', fault('NoPermissions'), /^it is write-protected/], ['lets nobody write', fault('Unknown', 'EROFS: read-only file system'), /^it is write-protected/],
  ['has lost the folder', fault('FileNotFound'), /^its folder is not there any more/], ['fails', fault('Unknown', 'EIO: i/o error'), /^EIO: i\/o error/],
];
describe.each(FAULTS)('a disk that %s', (_, error, words) => {
  test.each(['copy', 'write', 'rename'])('at %s', async step => {
    for (const old of ['old', undefined]) {
      // Nothing is copied where nothing is there.
      if (step === 'copy' && old === undefined) continue;
      const disk = diskWith(old);
      const before = disk.all;
      disk.before = s => { if (s === step) throw error; };
      await expect(put(disk, 'new')).rejects.toThrow(words);
      expect(disk.all, `${step}, ${String(old)}`).toEqual(before);
    }
  });
});

describe('two writers', () => {
  const KEPT = /^another program or window has written there meanwhile, and that was kept\. Do it again\.$/;
  test.each(['write', 'rename'])('what comes to stand there at %s is kept', async step => {
    const disk = diskWith();
    disk.before = s => { if (s === step) disk.put(CARD.path, 'theirs'); };
    await expect(put(disk, 'ours')).rejects.toThrow(KEPT);
    expect(disk.all).toEqual({ [CARD.path]: 'theirs' });
  });
  test('what is changed while somebody is asked, or while it is written, is kept', async () => {
    for (const step of ['copy', 'write']) {
      const disk = diskWith('old');
      disk.before = s => { if (s === step) disk.put(CARD.path, 'theirs'); };
      await expect(put(disk, 'ours')).rejects.toThrow(KEPT);
      expect(disk.all).toEqual({ [CARD.path]: 'theirs' });
    }
    const disk = diskWith('old');
    const before = await seenAt(disk, CARD);
    disk.put(CARD.path, 'old');
    await expect(putFile(disk, CARD, bytes('ours'), before)).rejects.toThrow(KEPT);
    await expect(putFile(disk, CARD, bytes('ours'), before, true)).rejects.toThrow(KEPT);
    expect(disk.all).toEqual({ [CARD.path]: 'old' });
  });
  test('of two windows that write at once one is told, and the file is one of theirs, whole', async () => {
    for (const old of ['old', undefined]) {
      const disk = diskWith(old);
      const done = await Promise.allSettled([put(disk, 'ours'), put(disk, 'theirs')]);
      const won = done.findIndex(d => d.status === 'fulfilled');
      expect(won, String(old)).toBeGreaterThanOrEqual(0);
      expect(Object.keys(disk.all)).toEqual([CARD.path]);
      expect(['ours', 'theirs']).toContain(disk.all[CARD.path]);
      if (old === undefined) expect(done.filter(d => d.status === 'rejected')).toHaveLength(1);
    }
  });
});
