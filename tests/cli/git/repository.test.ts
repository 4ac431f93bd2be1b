// What a repository says of its revisions, held against what was put in by git itself.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Misuse, Trouble } from '../../../server/cli/files.ts';
import { Repository, type Commit } from '../../../server/cli/git/repository.ts';
import { folder } from '../folder.ts';
import { made, type Made } from './made.ts';

/** The texts of files in a revision. */
const texts = (of: Made, rev: string, ...paths: string[]): Promise<(string | undefined)[]> =>
  Repository.with(of.at, async r => { const at = await r.commit(rev); return Promise.all(paths.map(p => r.text(at, p))); });
const ask = <T>(of: Made, act: (r: Repository, head: Commit) => Promise<T>): Promise<T> => Repository.with(of.at, async r => act(r, await r.commit('HEAD')));
const history = (of: Made, path: string): Promise<string[]> => Repository.with(of.at, async r => (await r.revisions(path)).map(v => `${v.subject}: ${v.gone ? 'gone ' : ''}${v.path}`));

const NAMES = ['plain.plate', 'with blanks.plate', '"quoted".plate', "it's.plate", 'Käfer-ß-貝.plate', 'line\nend.plate', '-leading.plate', '--output=x.plate', '*.plate', '[a].plate', ':(top)x.plate', ':!x.plate', '\\back\\slash.plate', '$(touch x).plate', 'a\tb.plate', 'HEAD', 'sub/-x/y z.plate'];

describe('names', () => {
  const at = made(Object.fromEntries(NAMES.map(n => [n, `${n} one`])));
  at.commit('one');
  at.write(Object.fromEntries(NAMES.map(n => [n, `${n} two`]))).commit('two');
  it('of any letters are found', async () => {
    expect(await texts(at, 'HEAD~1', ...NAMES)).toEqual(NAMES.map(n => `${n} one`));
    expect(await texts(at, 'HEAD', ...NAMES)).toEqual(NAMES.map(n => `${n} two`));
  });
  it.each(NAMES)('%j has its history', async name => { expect(await history(at, name)).toEqual([`two: ${name}`, `one: ${name}`]); });
  it('are listed, those of pages by name', async () => {
    const pages = NAMES.filter(n => n.endsWith('.plate') && !n.includes('/')).sort();
    expect(await ask(at, (r, head) => r.files(head, '', '.plate'))).toEqual([...pages, 'sub/-x/y z.plate'].sort());
    expect(await ask(at, (r, head) => r.files(head, 'sub', '.plate'))).toEqual(['sub/-x/y z.plate']);
    expect(await ask(at, (r, head) => r.files(head, 'nowhere', '.plate'))).toEqual([]);
  });
  it('nothing was run or written by them', () => { expect(existsSync(at.path('x'))).toBe(false); });
});

it('no hidden folder, no package', async () => {
  const at = made({ '.kept/a.plate': '', 'node_modules/p/b.plate': '', 'c.plate': '', 'd.txt': '' });
  at.commit('one');
  expect(await ask(at, (r, head) => r.files(head, '', '.plate'))).toEqual(['c.plate']);
});

describe('what is not there is told apart from what fails', () => {
  const at = made({ 'a.plate': 'a', 'sub/b.plate': 'b', 'latin.plate': Buffer.from('Caf\xe9', 'latin1'), 'binary.plate': Buffer.from([1, 0, 2]) });
  at.commit('one');
  it('a path: nothing', async () => { expect(await texts(at, 'HEAD', 'none.plate', 'sub/none.plate', 'a.plate/b', '../a.plate', 'A.PLATE')).toEqual(Array(5).fill(undefined)); });
  it.each([['sub', 'is a folder'], ['latin.plate', 'not UTF-8 text'], ['binary.plate', 'is not text']])('%s: trouble', async (path, words) => {
    await expect(texts(at, 'HEAD', path)).rejects.toThrow(Trouble);
    await expect(texts(at, 'HEAD', path)).rejects.toThrow(words);
  });
  it('an object that is lost, or spoilt: trouble', async () => {
    const torn = made({ 'a.plate': 'lost', 'b.plate': 'spoilt', 'c.plate': 'kept' });
    torn.commit('one');
    const object = (name: string): string => { const id = torn.git('rev-parse', `HEAD:${name}`).trim(); return `.git/objects/${id.slice(0, 2)}/${id.slice(2)}`; };
    torn.remove(object('a.plate'));
    await expect(texts(torn, 'HEAD', 'a.plate')).rejects.toThrow(/damaged or not complete: object [0-9a-f]{40} is missing/);
    expect(await texts(torn, 'HEAD', 'c.plate')).toEqual(['kept']);
    const spoilt = object('b.plate');
    torn.remove(spoilt).write({ [spoilt]: 'no object' });
    await expect(texts(torn, 'HEAD', 'b.plate')).rejects.toThrow(Trouble);
    // Whoever asks behind it is not left waiting.
    await expect(texts(torn, 'HEAD', 'b.plate', 'c.plate')).rejects.toThrow(Trouble);
  });
  it('a file longer than a page can be: trouble, and those behind it are read', async () => {
    const big = made({ 'big.plate': 'x'.repeat(9_000_000), 'small.plate': 's' });
    big.commit('one');
    const [long, short] = await ask(big, (r, head) => Promise.allSettled([r.text(head, 'big.plate'), r.text(head, 'small.plate')]));
    expect(long).toMatchObject({ status: 'rejected', reason: { message: 'big.plate of HEAD is too large: 9 MB, and a file holds at most 2 MB' } });
    expect(short).toEqual({ status: 'fulfilled', value: 's' });
  });
});

describe('revisions', () => {
  const at = made({ 'a.plate': 'one' });
  const first = at.commit('one');
  at.git('tag', '-a', '-m', 'as exposed', 'exposed');
  at.write({ 'a.plate': 'two' }).commit('two');
  at.git('checkout', '-q', '-b', 'side', first);
  at.write({ 'b.plate': 'side' }).commit('side');
  it.each([['main', 'two'], ['main~1', 'one'], ['exposed', 'one'], [first.slice(0, 8), 'one'], ['main...', 'one'], ['...main', 'one'], ['side...main', 'one'], ['HEAD@{0}', 'one']])('%s', async (rev, text) => { expect(await texts(at, rev, 'a.plate')).toEqual([text]); });
  it.each(['none', '', 'main:a.plate', '--help', '--output=leaked', 'main\nmain', 'main..side', '0'.repeat(40), 'none...', '-'])('%j is none', async rev => {
    await expect(texts(at, rev, 'a.plate')).rejects.toThrow(Misuse);
    expect(existsSync(at.path('leaked'))).toBe(false);
  });
  it('says what there is, and where only the newest part is here, how to get the rest', async () => {
    await expect(texts(at, 'none', 'a.plate')).rejects.toThrow(`There is no revision “none” in ${at.at}. git log lists those that there are.`);
    const near = folder();
    execFileSync('git', ['clone', '-q', '--depth', '1', '--branch', 'main', `file://${at.at}`, near]);
    const shallow = { at: near } as Made;
    await expect(texts(shallow, 'HEAD~1', 'a.plate')).rejects.toThrow('Only the newest part of the history is here; get the rest with git fetch --unshallow.');
    expect(await history(shallow, 'a.plate')).toEqual(['two: a.plate']);
  });
  it('branches that have nothing in common part nowhere', async () => {
    const two = made({ 'a.plate': '' });
    two.commit('one');
    two.git('checkout', '-q', '--orphan', 'other');
    two.commit('other');
    await expect(texts(two, 'main...', 'a.plate')).rejects.toThrow('“main...” have no revision in common.');
  });
});

describe('the history of a page', () => {
  const text = (leg: number): string => `setup "Limpet" {\n${Array.from({ length: 20 }, (_, i) => `  // line ${i}\n`).join('')}  beam b from S1\n    -> P1: ${leg} mm\n}\n`;
  const at = made({ 'limpet.plate': text(100), 'other.plate': 'other' });
  at.commit('First plan – „Napfschnecke“\n\nMore words.');
  at.write({ 'limpet.plate': text(110) }).commit('');
  it('goes back through renames, with dates and first lines', async () => {
    at.git('mv', 'limpet.plate', 'shells limpet.plate');
    at.commit('renamed');
    at.write({ 'other.plate': 'not of this page' }).commit('another page');
    at.write({ 'tide/limpet.plate': text(120) }).remove('shells limpet.plate').commit('moved and changed');
    const all = await Repository.with(at.at, r => r.revisions('tide/limpet.plate'));
    expect(all.map(({ date, subject, path, before }) => [date, subject, path, before])).toEqual([
      ['2026-02-14T21:04:00+01:00', 'moved and changed', 'tide/limpet.plate', 'shells limpet.plate'],
      ['2026-02-14T21:02:00+01:00', 'renamed', 'shells limpet.plate', 'limpet.plate'],
      ['2026-02-14T21:01:00+01:00', '', 'limpet.plate', undefined],
      ['2026-02-14T21:00:00+01:00', 'First plan – „Napfschnecke“', 'limpet.plate', undefined],
    ]);
    expect(all.map(v => v.id)).toEqual([0, 2, 3, 4].map(n => at.git('rev-parse', `HEAD~${n}`).trim()));
    // Each says where the page is to be read.
    expect(await Repository.with(at.at, async r => Promise.all(all.map(async v => /\d+ mm/.exec(((await r.text(await r.commit(v.id), v.path))!))![0])))).toEqual(['120 mm', '110 mm', '110 mm', '100 mm']);
    expect(await Repository.with(at.at, async r => Promise.all(['HEAD', 'HEAD~1', 'HEAD~3', 'HEAD~4'].map(async rev => r.pathAt(await r.commit(rev), 'tide/limpet.plate'))))).toEqual(['tide/limpet.plate', 'shells limpet.plate', 'limpet.plate', 'limpet.plate']);
  });
  it('tells where the page went, and came back', async () => {
    const back = made({ 'a.plate': 'one' });
    back.commit('one');
    back.remove('a.plate').write({ 'x.txt': '' }).commit('gone');
    back.write({ 'a.plate': 'two' }).commit('back');
    expect(await history(back, 'a.plate')).toEqual(['back: a.plate', 'gone: gone a.plate', 'one: a.plate']);
  });
  it('names a merge only where it made something new of both', async () => {
    const both = made({ 'a.plate': text(100) });
    both.commit('one');
    both.git('checkout', '-q', '-b', 'side');
    both.write({ 'a.plate': text(200) }).commit('side');
    both.git('checkout', '-q', 'main');
    both.write({ 'b.plate': '' }).commit('main');
    both.git('merge', '-q', '--no-edit', 'side');
    expect(await history(both, 'a.plate')).toEqual(['side: a.plate', 'one: a.plate']);
    both.git('checkout', '-q', 'side');
    both.write({ 'a.plate': text(300) }).commit('side again');
    both.git('checkout', '-q', 'main');
    both.write({ 'a.plate': text(200).replace('line 0', 'line zero') }).commit('main again');
    both.git('merge', '-q', '-m', 'both', 'side');
    expect(await history(both, 'a.plate')).toEqual(['both: a.plate', 'main again: a.plate', 'side again: a.plate', 'side: a.plate', 'one: a.plate']);
  });
  it('is empty where there is none', async () => {
    expect(await history(at, 'none.plate')).toEqual([]);
    expect(await history(made({ 'a.plate': '' }), 'a.plate')).toEqual([]);
  });
});

describe('as it is stored', () => {
  const at = made({ '.gitattributes': '*.plate text eol=crlf filter=boil\n', 'a.plate': 'one\ntwo\n' });
  it('line ends are those of the repository, and no program of somebody’s settings is run', async () => {
    at.git('config', 'filter.boil.smudge', 'touch boiled; cat');
    at.git('config', 'filter.boil.clean', 'cat');
    at.commit('one');
    // git itself makes the one, and runs the other:
    expect(at.git('cat-file', '--filters', 'HEAD:a.plate')).toBe('one\r\ntwo\r\n');
    expect(existsSync(at.path('boiled'))).toBe(true);
    at.remove('boiled');
    expect(await texts(at, 'HEAD', 'a.plate')).toEqual(['one\ntwo\n']);
    await history(at, 'a.plate');
    expect(existsSync(at.path('boiled'))).toBe(false);
  });
});

it('links within the repository are followed, others lead nowhere', async () => {
  const at = made({ 'shelf/lab.plate': 'lab', 'pages/x.txt': '' });
  symlinkSync('../shelf/lab.plate', at.path('pages/lab.plate'));
  symlinkSync('../shelf', at.path('pages/shelf'));
  symlinkSync('/etc/hostname', at.path('pages/out.plate'));
  symlinkSync('../../../x', at.path('pages/up.plate'));
  symlinkSync('ring.plate', at.path('pages/ring.plate'));
  at.commit('one');
  expect(await texts(at, 'HEAD', 'pages/lab.plate', 'pages/shelf/lab.plate', 'pages/out.plate', 'pages/up.plate', 'pages/ring.plate')).toEqual(['lab', 'lab', undefined, undefined, undefined]);
});

it('answers come to those who asked, however many ask at once', async () => {
  const names = Array.from({ length: 400 }, (_, i) => `p${i}.plate`);
  const at = made(Object.fromEntries(names.map((n, i) => [n, `${i} `.repeat(i * 40)])));
  at.commit('one');
  expect((await texts(at, 'HEAD', ...names, 'none.plate')).map(t => t?.split(' ').length)).toEqual([...names.map((_, i) => i * 40 + 1), undefined]);
});

it('repositories with long ids', async () => {
  const at = made({ 'sub/a.plate': 'one' }, '--object-format=sha256');
  expect(at.commit('one')).toHaveLength(64);
  expect(await texts(at, 'HEAD', 'sub/a.plate')).toEqual(['one']);
  expect(await history(at, 'sub/a.plate')).toEqual(['one: sub/a.plate']);
});

describe('where there is no repository to read', () => {
  const fails = (named: string): Promise<unknown> => Repository.with(named, () => Promise.resolve()).catch((e: unknown) => e);
  it('a folder outside of all', async () => {
    const none = folder({ 'a.plate': '' });
    expect(await fails(join(none, 'a.plate'))).toEqual(new Trouble(`${none} lies in no git repository; name a page that does, or begin one there with git init`));
  });
  it('one without a working folder', async () => {
    const bare = made({}, '--bare');
    expect(await fails(bare.at)).toEqual(new Trouble(`${bare.at} is a repository without a working folder; name a page in a clone of it`));
  });
  it('git is not installed', async () => {
    const before = process.env['PATH'];
    try {
      process.env['PATH'] = folder();
      expect(await fails('.')).toEqual(new Trouble('git is not installed, or not where programs are looked for; install it, or compare files instead of revisions'));
    } finally {
      process.env['PATH'] = before;
    }
  });
  it('it belongs to somebody else', async () => {
    const at = made({ 'a.plate': '' });
    try {
      // By this git itself is tested so.
      process.env['GIT_TEST_ASSUME_DIFFERENT_OWNER'] = '1';
      expect((await fails(at.at) as Error).message).toBe(`git does not open the repository of ${at.at}, because it belongs to somebody else; if you trust it: git config --global --add safe.directory, and the folder`);
    } finally {
      Reflect.deleteProperty(process.env, 'GIT_TEST_ASSUME_DIFFERENT_OWNER');
    }
  });
  it('a git that is broken', async () => {
    const before = process.env['PATH'];
    const bin = folder();
    try {
      writeFileSync(join(bin, 'git'), '#!/bin/sh\necho "fatal: the tide is in" >&2\nexit 3\n', { mode: 0o755 });
      process.env['PATH'] = `${bin}:${before}`;
      expect((await fails(bin) as Error).message).toBe(`git failed in ${bin}: the tide is in`);
    } finally {
      process.env['PATH'] = before;
    }
  });
});

describe('which repository', () => {
  it('the one in which the page lies, also when a hook of another one runs', async () => {
    const [mine, other] = [made({ 'sub/a.plate': 'mine' }), made({ 'sub/a.plate': 'other' })];
    mine.commit('one');
    other.commit('one');
    try {
      process.env['GIT_DIR'] = other.path('.git');
      process.env['GIT_INDEX_FILE'] = '.git/index';
      expect(await Repository.with(mine.path('sub/a.plate'), async r => [r.root, r.pathOf(mine.path('sub/a.plate')), await r.text(await r.commit('HEAD'), 'sub/a.plate')])).toEqual([mine.at, 'sub/a.plate', 'mine']);
    } finally {
      for (const name of ['GIT_DIR', 'GIT_INDEX_FILE']) Reflect.deleteProperty(process.env, name);
    }
  });
  it('also of a page that was deleted, with its folder', async () => {
    const at = made({ 'sub/deep/a.plate': 'one', 'b.txt': '' });
    at.commit('one');
    at.remove('sub');
    expect(await Repository.with(at.path('sub/deep/a.plate'), async r => r.text(await r.commit('HEAD'), r.pathOf(at.path('sub/deep/a.plate'))))).toBe('one');
  });
  it('a page elsewhere is none of it', async () => {
    const at = made();
    const elsewhere = folder({ 'a.plate': '' });
    await expect(Repository.with(at.at, r => Promise.resolve(r.pathOf(join(elsewhere, 'a.plate'))))).rejects.toThrow(Misuse);
  });
  it('nothing is written into it', async () => {
    const at = made({ 'a.plate': 'one' });
    at.commit('one');
    const before = readdirSync(at.path('.git'), { recursive: true }).sort();
    await texts(at, 'HEAD', 'a.plate');
    await history(at, 'a.plate');
    expect(readdirSync(at.path('.git'), { recursive: true }).sort()).toEqual(before);
  });
});
