// Pages that name files which are none of theirs, and what is no page at all: nothing outside is read, nothing is waited for, and one finding says so.
import { execFileSync } from 'node:child_process';
import { readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join, win32 } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it, vi } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { DISK, isOnDiskOf, libraryIn, type Source } from '../../server/cli/files.ts';
import { readInside } from '../../server/lsp/node.ts';
import { resolveUse } from '../../server/lsp/uris.ts';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const SECRET = 'inventory lab {\n  // the tide tables are under the third stone\n}\n';
const at = folder({ 'secret.plate': SECRET, 'shop/whelk.plate': '', 'shop/deep/lab.plate': 'inventory deep {\n}\n' });
const shop = join(at, 'shop');
execFileSync('mkfifo', [join(shop, 'fifo.plate')]);
symlinkSync('/dev/zero', join(shop, 'zero.plate'));
symlinkSync('/proc/self/environ', join(shop, 'environ.plate'));
symlinkSync('../secret.plate', join(shop, 'link.plate'));
writeFileSync(join(shop, 'huge.plate'), '');
truncateSync(join(shop, 'huge.plate'), 50_000_000_000);

/** What a page may write behind `use`, and which finding it then is. */
const PATHS: readonly (readonly [string, 'import-outside' | 'import-unreadable'])[] = [
  ['../secret.plate', 'import-outside'], ['../../../../../../../../etc/passwd', 'import-outside'], ['/etc/passwd', 'import-outside'], ['deep/../../secret.plate', 'import-outside'], [join(at, 'secret.plate'), 'import-outside'],
  ['link.plate', 'import-outside'], ['zero.plate', 'import-outside'], ['environ.plate', 'import-outside'], ['/dev/zero', 'import-outside'], ['/dev/stdin', 'import-outside'], ['/proc/self/environ', 'import-outside'],
  ['fifo.plate', 'import-unreadable'], ['huge.plate', 'import-unreadable'], ['deep', 'import-unreadable'], ['.', 'import-unreadable'],
  // Addresses, shares and devices of other systems are names of files here, and there is none.
  ['file:///etc/passwd', 'import-unreadable'], ['https://saltmarsh.example/lab.plate', 'import-unreadable'], ['\\\\tide.example\\share\\lab.plate', 'import-unreadable'], ['C:\\lab.plate', 'import-unreadable'], ['CON', 'import-unreadable'],
  ['%2e%2e/secret.plate', 'import-unreadable'], ['..%2fsecret.plate', 'import-unreadable'], ['~/lab.plate', 'import-unreadable'], ['$HOME/lab.plate', 'import-unreadable'], ['$(touch leaked)', 'import-unreadable'], ['| touch leaked', 'import-unreadable'],
  ['a'.repeat(1900), 'import-outside'], ['lab\0.plate', 'import-outside'],
];

describe('on the command line', () => {
  // A page with a zero byte in it is no text, and not read at all; in an editor it may be typed.
  it.each(PATHS.filter(([path]) => !path.includes('\0')))('use %j', async (path, code) => {
    writeFileSync(join(shop, 'whelk.plate'), `use "${path}"\n${matched()}`);
    const { out, err } = await inside(['check', '--format', 'json', 'whelk.plate'], { cwd: shop });
    const found = (JSON.parse(out) as { files: { findings: { code: string; severity: string }[] }[] }).files.flatMap(f => f.findings).filter(f => f.code.startsWith('import-'));
    expect(found.map(f => f.code)).toEqual([code]);
    expect(out + err).not.toMatch(/tide tables|root:/);
  });
  it.each([['fifo.plate', 'is not an ordinary file'], ['/dev/zero', 'is not an ordinary file'], ['huge.plate', 'is too large: 50000 MB, and a file holds at most 2 MB'], ['deep', '']])('%s in the place of a page', async (named, words) => {
    const { code, err } = await inside(['check', named], { cwd: shop });
    expect([code, err.includes(words)]).toEqual([words === '' ? 0 : 3, true]);
  });
  it('what git gives to compare is an ordinary file', async () => {
    const { out } = await inside(['diff', '--as-driver', 'whelk.plate', join(shop, 'fifo.plate'), '0', '100644', '/dev/zero', '0', '100644'], { cwd: shop });
    expect(out).toContain('is not an ordinary file');
  });
});

it('in the editor nothing outside of the folders is even asked for, and through links nothing is read', async () => {
  const root = pathToFileURL(shop).href;
  for (const [path] of PATHS) {
    const to = resolveUse(path, `${root}/whelk.plate`, [root]);
    if (to === null) continue;
    expect(to.startsWith(`${root}/`), path).toBe(true);
    expect(await readInside(to, [root]).catch(() => undefined), path).toBeUndefined();
  }
  expect(await readInside(`${root}/deep/lab.plate`, [root])).toBe('inventory deep {\n}\n');
});

it('a share of a network is not looked for, by which a system would show who is logged in', () => {
  const rootOf = (path: string): string => win32.parse(path).root;
  const on = (...paths: string[]): boolean[] => paths.map(p => isOnDiskOf(['C:\\shop', 'D:\\shelf'], p, rootOf));
  expect(on('\\\\tide.example\\share\\lab.plate', '//tide.example/share/lab.plate', '\\\\?\\UNC\\tide.example\\share\\lab.plate', 'E:\\lab.plate')).toEqual([false, false, false, false]);
  expect(on('C:\\shop\\lab.plate', 'c:\\elsewhere\\lab.plate', 'D:\\shelf\\lab.plate')).toEqual([true, true, true]);
});

it('of a page nothing is looked for but what it names, and all of that on the disk of its folders', () => {
  const real = vi.fn<Source['real']>(path => DISK.real(path));
  const text = `use "deep/lab.plate"\nuse "/etc/passwd"\n// use "note.plate"\nsetup "\${file}" {\n  note: "file:///etc/hostname"\n}\n`;
  const snapshot = analyse(pathToFileURL(join(shop, 'whelk.plate')).href, text, libraryIn(shop, [], { real, text: path => DISK.text(path) }));
  expect(snapshot.findings.map(f => f.code)).toContain('import-outside');
  expect([...new Set(real.mock.calls.map(([path]) => path))].sort()).toEqual(['/etc/passwd', join(shop, 'deep/lab.plate')].sort());
  expect(readFileSync(join(at, 'secret.plate'), 'utf8')).toBe(SECRET);
});
