// Repositories that mean harm, unpacked from anywhere: nothing that their settings, names or texts say is run, written, or read from outside.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Misuse, Trouble } from '../../../server/cli/files.ts';
import { Repository } from '../../../server/cli/git/repository.ts';
import { folder, matched } from '../folder.ts';
import { inside } from '../inside.ts';
import { longer, made, type Made } from './made.ts';

/** Leaves a mark, and answers like no program that git waits for. */
const trap = (at: Made, name: string): string => `touch ${at.path(`sprung-${name}`)}; false`;
const sprung = (at: Made, ...names: string[]): string[] => names.filter(n => existsSync(at.path(`sprung-${n}`)));
/** A page in two revisions. */
const shop = (): Made => {
  const at = made({ 'whelk.plate': matched() });
  at.commit('as set up');
  at.write({ 'whelk.plate': longer() }).commit('further back');
  return at;
};
const ALL = [['log', 'whelk.plate'], ['diff', '--git', 'HEAD~1', 'whelk.plate'], ['diff', '--git', 'HEAD~1', 'HEAD', 'whelk.plate']];
/** All commands that read revisions; each ends as it does for a repository that means no harm. */
async function readAll(at: Made): Promise<void> {
  for (const args of ALL) {
    const { code, out, err } = await inside(args, { cwd: at.at });
    expect([args[0], code, err]).toEqual([args[0], args[0] === 'diff' ? 1 : 0, '']);
    expect(out.length, args.join(' ')).toBeGreaterThan(20);
  }
}

describe('settings of the repository name programs', () => {
  it('for comparing, showing, watching, hooks and signatures: none is started', async () => {
    const at = shop();
    at.write({ '.git/info/attributes': '*.plate diff=boil filter=boil\n' });
    const settings = {
      'diff.external': 'external', 'diff.boil.command': 'command', 'diff.boil.textconv': 'textconv', 'filter.boil.smudge': 'smudge', 'filter.boil.clean': 'clean', 'filter.boil.process': 'process', 'core.fsmonitor': 'fsmonitor',
      'core.pager': 'pager', 'pager.log': 'pager-log', 'core.editor': 'editor', 'core.sshCommand': 'ssh', 'gpg.program': 'gpg', 'credential.helper': 'credential', 'core.askPass': 'askpass', 'core.alternateRefsCommand': 'refs',
    };
    for (const [name, mark] of Object.entries(settings)) at.git('config', name, `${name === 'credential.helper' ? '!' : ''}${trap(at, mark)}`);
    at.git('config', 'log.showSignature', 'true');
    at.git('config', 'alias.log', `!${trap(at, 'alias')}`);
    at.git('config', 'core.hooksPath', at.path('.git/traps'));
    mkdirSync(at.path('.git/traps'));
    for (const hook of ['post-index-change', 'reference-transaction', 'fsmonitor-watchman', 'pre-auto-gc']) writeFileSync(at.path(`.git/traps/${hook}`), `#!/bin/sh\n${trap(at, hook)}\n`, { mode: 0o755 });
    // The traps work: git itself falls into them.
    try { at.git('diff', 'HEAD~1', '--', 'whelk.plate'); } catch { /* it was told to compare by a program that fails */ }
    const all = [...Object.values(settings), 'alias'];
    expect(sprung(at, ...all)).not.toEqual([]);
    at.remove(...sprung(at, ...all).map(n => `sprung-${n}`));
    await readAll(at);
    expect(sprung(at, ...all, 'post-index-change', 'reference-transaction', 'fsmonitor-watchman', 'pre-auto-gc')).toEqual([]);
  });

  it('for fetching what is missing: nothing is fetched, and it is said what is missing', async () => {
    const at = shop();
    const blob = at.git('rev-parse', 'HEAD~1:whelk.plate').trim();
    at.git('config', 'remote.origin.url', at.at);
    at.git('config', 'remote.origin.uploadpack', trap(at, 'uploadpack'));
    at.git('config', 'remote.origin.promisor', 'true');
    at.git('config', 'core.repositoryFormatVersion', '1');
    at.git('config', 'extensions.partialClone', 'origin');
    at.git('config', 'protocol.allow', 'always');
    at.remove(`.git/objects/${blob.slice(0, 2)}/${blob.slice(2)}`);
    try { at.git('cat-file', '-p', blob); } catch { /* it was to be fetched by a program that fails */ }
    expect(sprung(at, 'uploadpack')).toEqual(['uploadpack']);
    at.remove('sprung-uploadpack');
    const text = (rev: string): Promise<string | undefined> => Repository.with(at.at, async r => r.text(await r.commit(rev), 'whelk.plate'));
    await expect(text('HEAD~1')).rejects.toThrow(Trouble);
    expect(await text('HEAD')).toBe(longer());
    expect(sprung(at, 'uploadpack')).toEqual([]);
  });
});

describe('a working folder', () => {
  it('that a repository only claims is none: a page would reach all of the disk', async () => {
    const at = shop();
    at.git('config', 'core.worktree', '/');
    await expect(Repository.with(at.path('whelk.plate'), () => Promise.resolve())).rejects.toThrow(`the repository of ${at.at} says that its working folder is /, which is not where it lies`);
  });
  it('of its own, beside the repository, is one', async () => {
    const at = shop();
    at.git('worktree', 'add', '-q', at.path('beside'), 'HEAD~1');
    expect(await Repository.with(at.path('beside/whelk.plate'), async r => [r.root, await r.text(await r.commit('HEAD'), 'whelk.plate')])).toEqual([at.path('beside'), matched()]);
  });
  it('is not looked for in a repository that lies among the files of another', async () => {
    const inner = made({}, '--bare');
    const at = shop();
    execFileSync('cp', ['-r', inner.at, at.path('shelf')]);
    await expect(Repository.with(at.path('shelf'), () => Promise.resolve())).rejects.toThrow('is a repository without a working folder');
  });
});

describe('words', () => {
  it('of a revision are never an option', async () => {
    const at = shop();
    for (const rev of ['--output=leaked', '--upload-pack=touch leaked', '-O', '--ext-diff', '--exec=touch leaked', '--end-of-options', 'HEAD\n--output=leaked', ':/x', '@{-1}', '--all...', '...--output=leaked']) {
      const { code, err } = await inside(['diff', '--git', '--', rev, 'whelk.plate'], { cwd: at.at });
      expect([rev, code, existsSync(at.path('leaked'))]).toEqual([rev, 2, false]);
      expect(err).not.toContain('at Object');
      await expect(Repository.with(at.at, r => r.commit(rev))).rejects.toThrow(Misuse);
    }
  });
  it('of an author, and names of files, give a terminal no orders, and a page of Markdown no link and no markup', async () => {
    const at = made({ 'tide\u001b[2J\u0007.plate': matched() });
    at.commit('\u001b]0;owned\u0007 <img src=x onerror=alert(1)> [here](javascript:alert(1))');
    const told = await inside(['log', 'tide\u001b[2J\u0007.plate'], { cwd: at.at });
    expect([told.code, told.out.includes('owned')]).toEqual([0, true]);
    // These are what a terminal obeys.
    expect(told.out + told.err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
    const { out } = await inside(['log', '--format', 'markdown', 'tide\u001b[2J\u0007.plate'], { cwd: at.at });
    expect(out).not.toMatch(/(?<!\\)<img|(?<!\\)\]\(javascript/);
  });
  it('on a page as it was then run nothing and lead nowhere outside', async () => {
    const at = made({ 'whelk.plate': `use "../../../../etc/hostname"\nuse "$(touch leaked)"\nuse "|touch leaked"\n${matched()}` });
    at.commit('as set up');
    at.write({ 'whelk.plate': longer() }).commit('further back');
    await readAll(at);
    expect(existsSync(at.path('leaked'))).toBe(false);
  });
});

it('a page as it was then uses nothing outside of the repository', async () => {
  const outside = folder({ 'lab.plate': 'inventory lab {\n}\n' });
  const at = made({ 'whelk.plate': `use "${outside}/lab.plate"\n${matched()}` });
  at.commit('as set up');
  at.write({ 'whelk.plate': `use "${outside}/lab.plate"\n${longer()}` }).commit('further back');
  const { out } = await inside(['diff', '--git', 'HEAD~1', 'HEAD', 'whelk.plate', '--format', 'json'], { cwd: at.at });
  expect(out).toContain('import-outside');
});
