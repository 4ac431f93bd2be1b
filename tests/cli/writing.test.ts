// What is written on a disk that is full, beside another writer, through links, and where a file has changed meanwhile: the old is whole, or the new is.
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { buildSync } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { replaceText, writeMade, writeNew } from '../../server/cli/writing.ts';
import { folder } from './folder.ts';

const linux = process.platform === 'linux';
let writers: string;
beforeAll(() => {
  writers = join(folder(), 'writers.mjs');
  buildSync({ entryPoints: ['tests/cli/writers.ts'], outfile: writers, bundle: true, platform: 'node', target: 'node20', format: 'esm', logLevel: 'error' });
});
const text = (...path: string[]): string => readFileSync(join(...path), 'utf8');

describe.runIf(linux)('a disk that takes no more', () => {
  const OLD = { 'page.plate': 'old\n', 'plan.svg': '<svg/>\n' };
  const full = (command: string, args: readonly string[], why: string, advice: string): void => {
    const { stdout, stderr, status } = spawnSync(command, args, { encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const { said, left } = JSON.parse(stdout) as { said: string[]; left: Record<string, string> };
    expect(said).toEqual(['page.plate', 'plan.svg', 'none.svg', 'new.plate', 'link.svg'].map(f => expect.stringMatching(new RegExp(`${f.replace('.', '\\.')} cannot be written: ${why}${advice}$`)) as string));
    // No half of anything, and nothing beside it.
    expect(left).toEqual({ ...OLD, 'link.svg': OLD['plan.svg'] });
  };
  it('leaves all as it was: a process that may write no more than 1024 bytes', () => {
    const at = folder(OLD);
    full('bash', ['-c', 'trap "" XFSZ; ulimit -f 1; exec "$0" "$1" full "$2" x', process.execPath, writers, at], 'it would be larger than a file may be there', '');
  });
  // A disk of its own, which is gone with the process. Not everybody may make one.
  const own = (script: string, ...args: string[]): [string, string[]] => ['unshare', ['--mount', ...(process.getuid?.() === 0 ? [] : ['--map-root-user']), 'bash', '-c', script, ...args]];
  it.runIf(linux && spawnSync(...own('mount -t tmpfs -o size=64k none /mnt')).status === 0)('leaves all as it was: a disk of 64 kB', () => {
    const files = Object.entries(OLD).map(([name, content]) => `printf '${content.replace('\n', '\\n')}' > /mnt/${name}`).join('; ');
    full(...own(`mount -t tmpfs -o size=64k none /mnt; ${files}; exec "$0" "$1" full /mnt x`, process.execPath, writers), 'the disk is full', '; make room, and do it again');
  });
  it('is said of what holds nothing as well', () => {
    expect(() => { writeMade('/dev/full', 'x'); }).toThrow('/dev/full cannot be written: the disk is full; make room, and do it again');
    writeMade('/dev/null', 'x');
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true);
  });
});

describe('two writers', () => {
  const run = (what: string, at: string, letter: string): ReturnType<typeof spawn> => spawn(process.execPath, [writers, what, at, letter], { stdio: ['ignore', 'pipe', 'inherit'] });
  it('of one file leave that of either, and whoever reads meanwhile reads one of them', async () => {
    const at = folder({ 'plan.svg': 'a'.repeat(1_000_000) });
    const both = ['a', 'b'].map(l => once(run('again', at, l), 'exit'));
    const going = new Set(['a', 'b']);
    const ends = Promise.all(both).finally(() => { going.clear(); });
    const seen = new Set<string>();
    while (going.size > 0) {
      const now = text(at, 'plan.svg');
      seen.add(now.length === 1_000_000 && now === now[0]!.repeat(1_000_000) ? now[0]! : `a mixture of ${now.length}`);
      await new Promise(go => { setImmediate(go); });
    }
    expect(await ends).toEqual([[0, null], [0, null]]);
    expect([...seen].filter(s => s !== 'a' && s !== 'b')).toEqual([]);
    expect(readdirSync(at)).toEqual(['plan.svg']);
  });
  it('of one new page: one writes it, the other is told', async () => {
    const at = folder();
    const said = await Promise.all(['a', 'b'].map(async l => {
      const child = run('new', at, l);
      let out = '';
      child.stdout!.on('data', part => { out += String(part); });
      await once(child, 'close');
      return out.trim();
    }));
    expect(said.sort()).toEqual([expect.stringMatching(/new\.plate is there already, and nothing was written over it: choose another name$/), 'written']);
    const now = text(at, 'new.plate');
    expect([now.length, new Set(now).size]).toEqual([1_000_000, 1]);
  });
  it('of whom one has changed the file since the other read it: that is kept', () => {
    const at = folder({ 'a.plate': 'theirs\n' });
    expect(() => { replaceText(join(at, 'a.plate'), 'a.plate', 'read\n', 'ours\n'); }).toThrow('a.plate cannot be written: another program has changed it meanwhile, and that was kept; do it again');
    expect([readdirSync(at), text(at, 'a.plate')]).toEqual([['a.plate'], 'theirs\n']);
  });
  it('of whom one has deleted it: it is not made anew', () => {
    const at = folder();
    expect(() => { replaceText(join(at, 'a.plate'), 'a.plate', 'read\n', 'ours\n'); }).toThrow('a.plate cannot be written: there is no such file or folder');
    expect(readdirSync(at)).toEqual([]);
  });
});

describe('what is written', () => {
  it('keeps the mode of what was there, byte order marks too', () => {
    const at = folder({ 'a.plate': '\ufeffold\n', 'plan.svg': 'old' });
    for (const f of ['a.plate', 'plan.svg']) chmodSync(join(at, f), 0o640);
    replaceText(join(at, 'a.plate'), 'a.plate', '\ufeffold\n', '\ufeffnew\n');
    writeMade(join(at, 'plan.svg'), 'new');
    expect(['a.plate', 'plan.svg'].map(f => [text(at, f), statSync(join(at, f)).mode & 0o777])).toEqual([['\ufeffnew\n', 0o640], ['new', 0o640]]);
  });
  it('goes where a link leads, also to what is not there yet; not into a ring of them', () => {
    const at = folder({ 'there/plan.svg': 'old' });
    for (const [to, name] of [['there/plan.svg', 'plan.svg'], ['plan.svg', 'twice.svg'], ['there/new.svg', 'new.svg'], ['ring.svg', 'ring.svg']] as const) symlinkSync(to, join(at, name));
    writeMade(join(at, 'twice.svg'), 'now');
    writeMade(join(at, 'new.svg'), 'new');
    expect([text(at, 'there/plan.svg'), text(at, 'there/new.svg')]).toEqual(['now', 'new']);
    for (const name of ['plan.svg', 'twice.svg', 'new.svg']) expect(lstatSync(join(at, name)).isSymbolicLink(), name).toBe(true);
    expect(() => { writeMade(join(at, 'ring.svg'), 'x'); }).toThrow(/ring\.svg cannot be written: its links lead in a circle$/);
    // A page by a link that leads nowhere is there already.
    symlinkSync('none.plate', join(at, 'a.plate'));
    expect(() => { writeNew(join(at, 'a.plate'), 'x'); }).toThrow('is there already');
  });
  it('is no folder', () => {
    const at = folder({ 'plan.svg/x': '' });
    expect(() => { writeMade(join(at, 'plan.svg'), 'x'); }).toThrow(/plan\.svg cannot be written: it is a folder$/);
  });
  it('stands beside its place for a moment only, also where somebody else has left something there', () => {
    const at = folder({ '.platewright-0000000000000000.tmp': 'left', 'plan.svg': 'old' });
    for (let i = 0; i < 3; i++) writeMade(join(at, 'plan.svg'), `new ${i}`);
    expect(readdirSync(at).sort()).toEqual(['.platewright-0000000000000000.tmp', 'plan.svg']);
  });
});
