/** Compiled code that is kept for the next start: by version, and no more than one. */
import { describe, expect, test } from 'vitest';
import { FileType, type Uri } from 'vscode';
import { forgetOthers, keptCode } from '../../client/kept-code.ts';

const uri = (path: string): Uri => ({ path, fsPath: path, with: ({ path: other }: { path: string }) => uri(other) }) as Uri;
const STORAGE = '/home/fern/globalStorage/platewright';
const ALL = uri(`${STORAGE}/compiled`);

/** Folders in memory that do as the interface of file systems says (`FileSystem` in vscode.d.ts): a folder that is not there, and what cannot be removed, reject. */
function disk(folders: readonly string[], stuck = ''): { readonly left: Set<string>; readonly files: Parameters<typeof forgetOthers>[0] } {
  const left = new Set(folders);
  return {
    left,
    files: {
      readDirectory: async ({ path }) => {
        const inside = [...left].filter(f => f.startsWith(`${path}/`)).map(f => f.slice(path.length + 1).split('/')[0]!);
        if (inside.length === 0) throw new Error('FileNotFound');
        return Promise.resolve(inside.map(name => [name, FileType.Directory]));
      },
      delete: async ({ path }, how) => {
        if (path === stuck || !how?.recursive || how.useTrash !== false || !left.delete(path)) throw new Error('NoPermissions');
        return Promise.resolve();
      },
    },
  };
}
const of = (...versions: readonly string[]): string[] => versions.map(v => `${ALL.path}/${v}`);

test('is that of this version, in the folder of the extension', () => {
  expect(keptCode(disk([]).files, uri(STORAGE), '1.2.3')).toEqual({ NODE_COMPILE_CACHE: `${STORAGE}/compiled/1.2.3` });
});

describe('what was kept of other versions', () => {
  test('goes, and nothing beside it', async () => {
    const { left, files } = disk([...of('1.2.2', '1.2.3', '1.2.4'), `${STORAGE}/other.json`]);
    await forgetOthers(files, ALL, '1.2.3');
    expect([...left]).toEqual([...of('1.2.3'), `${STORAGE}/other.json`]);
  });
  test('stays where it cannot be removed, and the others go', async () => {
    const { left, files } = disk(of('1.2.1', '1.2.2', '1.2.3'), of('1.2.1')[0]);
    await forgetOthers(files, ALL, '1.2.3');
    expect([...left]).toEqual(of('1.2.1', '1.2.3'));
  });
  test('may be nothing yet', async () => { await expect(forgetOthers(disk([]).files, ALL, '1.2.3')).resolves.toBeUndefined(); });
  test('is removed by two windows at once', async () => {
    const { left, files } = disk(of('1.2.1', '1.2.2'));
    await Promise.all([1, 2, 3].map(() => forgetOthers(files, ALL, '1.2.3')));
    expect([...left]).toEqual([]);
  });
});
