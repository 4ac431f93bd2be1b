// The steps of the action and of the hook, run by bash as a runner does, in real repositories. Only the code host's own program is a stand-in, which writes
// down what it is asked.
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Log } from 'sarif';
import { describe, expect, it } from 'vitest';
import { command, type Ended } from './command.ts';
import { folder, matched } from './folder.ts';
import { made, type Made } from './git/made.ts';

const SCRIPTS = resolve('server/cli/ci');
const aim = '  expect mismatch < 10 mm\n';
const long = (mm: number): string => matched(aim).replace('1171 mm', `${mm} mm`);

function run(script: string, cwd: string, env: Record<string, string> = {}, ...args: string[]): Ended {
  const { status, stdout, stderr, error } = spawnSync(join(SCRIPTS, script), args, { cwd, encoding: 'utf8', env: { ...process.env, PLATEWRIGHT_CLI: command(), ...env } });
  if (error) throw error;
  return { code: status, out: stdout, err: stderr };
}

/** A folder with a `gh` that writes its arguments, and the text of a `body=@FILE`, into `asked`, and answers a question for comments with `answer`. */
function host(answer = '', code = 0): { path: string; asked(): { args: string[]; body?: string }[] } {
  const bin = folder();
  const log = join(bin, 'asked');
  writeFileSync(join(bin, 'gh'), `#!${process.execPath}
const fs = require('node:fs'); const args = process.argv.slice(2); const file = args.map(a => /^body=@(.*)$/s.exec(a)?.[1]).find(Boolean);
fs.appendFileSync(${JSON.stringify(log)}, JSON.stringify({ args, ...(file ? { body: fs.readFileSync(file, 'utf8') } : {}) }) + '\\n');
if (!file) process.stdout.write(${JSON.stringify(answer)}); process.exit(${code});
`);
  chmodSync(join(bin, 'gh'), 0o755);
  return { path: `${bin}:${process.env['PATH']!}`, asked: () => (existsSync(log) ? readFileSync(log, 'utf8').trim().split('\n').map(l => JSON.parse(l) as { args: string[]; body?: string }) : []) };
}

/** A repository whose present branch has one commit more than `main`, and one on `main` that it does not have. */
function request(before: Record<string, string>, after: Record<string, string>): { of: Made; base: string; review: string; summary: string } {
  const of = made(before);
  of.commit('one');
  of.git('checkout', '-q', '-b', 'work');
  of.write(after).commit('two');
  of.git('checkout', '-q', 'main');
  of.write({ 'meanwhile.plate': matched('', 'Meanwhile') });
  const base = of.commit('meanwhile');
  of.git('checkout', '-q', 'work');
  const out = folder();
  return { of, base, review: join(out, 'review.md'), summary: join(out, 'summary.md') };
}

describe('what a change does', () => {
  it('is told in the file, the log and the summary, and what others did meanwhile is not', () => {
    const { of, base, review, summary } = request({ 'a.plate': long(1171), 'same.plate': long(1171) }, { 'a.plate': long(1255) });
    const { code, out } = run('review.sh', of.at, { BASE: base, REVIEW: review, GITHUB_STEP_SUMMARY: summary });
    expect(code).toBe(0);
    const text = readFileSync(review, 'utf8');
    expect(text).toContain('a.plate');
    // 1255 + 300 − 1471 = 84 mm
    expect(text).toContain('84 mm');
    expect(text).not.toMatch(/same\.plate|Meanwhile/);
    expect(readFileSync(summary, 'utf8')).toBe(text);
    expect(out).toContain(text);
  });
  it('leaves no file where nothing differs, not even an old one', () => {
    const { of, base, review, summary } = request({ 'a.plate': long(1171) }, { 'notes.txt': 'x' });
    writeFileSync(review, 'of an earlier run');
    expect(run('review.sh', of.at, { BASE: base, REVIEW: review, GITHUB_STEP_SUMMARY: summary }).code).toBe(0);
    expect([existsSync(review), existsSync(summary)]).toEqual([false, false]);
  });
  it('looks at the paths that are named, a line each', () => {
    const { of, base, review } = request({ 'my shells/a.plate': long(1171), 'b.plate': long(1171), '-c.plate': long(1171) }, { 'my shells/a.plate': long(1255), 'b.plate': long(1255), '-c.plate': long(1255) });
    expect(run('review.sh', of.at, { BASE: base, REVIEW: review, PATHS: 'my shells\r\n\n-c.plate\n' }).code).toBe(0);
    expect(readFileSync(review, 'utf8').match(/^## .*$/gm)).toHaveLength(2);
  });
  it('fails where the revision is not there, and says what the checkout needs', () => {
    const { of, review } = request({ 'a.plate': long(1171) }, { 'notes.txt': 'x' });
    const { code, err } = run('review.sh', of.at, { BASE: '0'.repeat(40), REVIEW: review });
    expect(code).toBe(2);
    expect(err).toContain('fetch-depth: 0');
    expect(existsSync(review)).toBe(false);
  });
});

describe('the comment', () => {
  const write = (gh: ReturnType<typeof host>, review: string | undefined, env: Record<string, string> = {}): Ended => {
    const there = folder(review === undefined ? {} : { 'review.md': review });
    return run('comment.sh', there, { PATH: gh.path, REVIEW: join(there, 'review.md'), NUMBER: '7', GITHUB_REPOSITORY: 'saltmarsh/bench', GH_TOKEN: 'none', ...env });
  };
  it('is written anew where there is none', () => {
    const gh = host();
    expect(write(gh, '## a.plate\n').code).toBe(0);
    const [list, post, ...more] = gh.asked();
    expect(list!.args.slice(0, 2)).toEqual(['api', 'repos/saltmarsh/bench/issues/7/comments']);
    expect(post!.args.slice(0, 4)).toEqual(['api', 'repos/saltmarsh/bench/issues/7/comments', '--method', 'POST']);
    expect(post!.body).toBe('<!-- platewright -->\n## a.plate\n');
    expect(more).toEqual([]);
  });
  it('takes the place of the one before', () => {
    const gh = host('41\n43\n');
    expect(write(gh, '## a.plate\n').code).toBe(0);
    expect(gh.asked()[1]).toMatchObject({ args: ['api', 'repos/saltmarsh/bench/issues/comments/41', '--method', 'PATCH', '--field', expect.anything(), '--silent'], body: '<!-- platewright -->\n## a.plate\n' });
  });
  it('says where nothing differs any more, and is not begun for that', () => {
    const [none, one] = [host(), host('41\n')];
    expect(write(none, undefined).code).toBe(0);
    expect(none.asked()).toHaveLength(1);
    expect(write(one, undefined).code).toBe(0);
    expect(one.asked()[1]!.body).toContain('Nothing differs any more');
  });
  it('that may not be written is no failure', () => {
    const { code, err } = write(host('', 1), '## a.plate\n');
    expect(code).toBe(0);
    expect(err).toContain('The summary of this run has the text.');
  });
  it('is cut at a line where the host takes no more, and calls nobody', () => {
    const gh = host();
    expect(write(gh, 'Käfer @keeper \n'.repeat(10_000)).code).toBe(0);
    const { body } = gh.asked()[1]!;
    // The host takes 65,536 characters.
    expect(body!.length).toBeLessThan(65_536);
    expect(body).toMatch(/^<!-- platewright -->\n(?:Käfer @\u200bkeeper \n)+\nThere is more; it was cut here, where the code host takes no more\.\n$/);
  });
  it('has a number', () => { expect(write(host(), 'x', { NUMBER: '7; touch leaked' }).code).toBe(2); });
});

describe('the check', () => {
  const at = folder({ 'fine.plate': long(1171), 'unmet.plate': long(1255), 'warned/a.plate': matched().replace('1171 mm', '1571 mm').replace('5 m\n', '300 mm\n') });
  const check = (env: Record<string, string>): Ended => run('check.sh', at, env);
  it.each([['fine.plate', 'false', 0], ['.', 'false', 1], ['warned', 'false', 0], ['warned', 'true', 1], ['none.plate', 'false', 3], ['fine.plate\nunmet.plate', 'false', 1]])('%j, strict %s: %i', (PATHS, STRICT, code) => { expect(check({ PATHS, STRICT }).code).toBe(code); });
  it('tells in the log, the summary, and as SARIF where that is wanted', () => {
    const out = folder();
    const ended = check({ PATHS: 'unmet.plate', SARIF: join(out, 'a b.sarif'), GITHUB_STEP_SUMMARY: join(out, 'summary.md') });
    expect(ended.code).toBe(1);
    expect(ended.out).toMatch(/^unmet\.plate:\d+:\d+: warning: Not met: mismatch is 84 mm/m);
    expect(readFileSync(join(out, 'summary.md'), 'utf8')).toContain('# Findings');
    expect((JSON.parse(readFileSync(join(out, 'a b.sarif'), 'utf8')) as Log).runs[0]!.results!.map(r => r.ruleId)).toContain('expectation-failed');
  });
});

describe('what a page or a request says is never run', () => {
  const nasty = ['$(touch leaked)', '`touch leaked`', '; touch leaked #', '::set-output name=x::y', '::error::x', '${{ github.token }}', '"; touch leaked; "', "'; touch leaked; '"];
  it('as a name, a text or a path', () => {
    const files = Object.fromEntries(nasty.filter(n => !n.includes('/')).map(n => [`${n}.plate`, long(1255).replace('Cockle', n.replaceAll('"', ''))]));
    const { of, base, review, summary } = request({ 'a.txt': '' }, files);
    const reviewed = run('review.sh', of.at, { BASE: base, REVIEW: review, GITHUB_STEP_SUMMARY: summary });
    const checked = run('check.sh', of.at, { PATHS: '.', GITHUB_STEP_SUMMARY: summary });
    expect([reviewed.code, checked.code]).toEqual([0, 1]);
    expect(run('check.sh', of.at, { PATHS: nasty.join('\n') }).code).toBe(3);
    for (const BASE of nasty.slice(0, 3)) expect(run('review.sh', of.at, { BASE, REVIEW: review }).code).toBe(2);
    expect(run('hook.sh', of.at, {}, ...Object.keys(files)).code).toBe(1);
    expect(existsSync(of.path('leaked'))).toBe(false);
    // All that could be a command of the runner stands between a line that stops them, and one that nobody can guess.
    for (const { out } of [reviewed, checked]) {
      const word = /^::stop-commands::([0-9a-f]{32})\n/.exec(out)![1]!;
      const rest = out.slice(out.indexOf('\n') + 1);
      expect(rest.endsWith(`\n::${word}::\n`)).toBe(true);
      expect(rest.indexOf(word)).toBe(rest.lastIndexOf(word));
    }
  });
  it('scripts take all by the environment', () => {
    const lines = readFileSync('action.yml', 'utf8').split('\n');
    const runs = lines.filter(l => /^\s*(?:- )?run:/.test(l));
    expect(runs).toHaveLength(4);
    for (const line of runs) {
      const [, name] = /^ {6}run: '"\$GITHUB_ACTION_PATH\/server\/cli\/ci\/([a-z]+\.sh)"'$/.exec(line) ?? [];
      expect(name, line).toBeDefined();
      expect(statSync(join(SCRIPTS, name!)).mode & 0o111, name).toBe(0o111);
    }
    // `run: |` and the like could hold a value in the script; there is none.
    for (const line of lines.filter(l => l.includes('${{'))) expect(line).toMatch(/^\s+(?:[A-Z_]+|default): \$\{\{ [a-z_.]+ \}\}(?:\/platewright-review\.md)?$/);
  });
});

describe('the hook', () => {
  const at = folder({ 'fine.plate': long(1171), 'unmet.plate': long(1255), '-x.plate': long(1255), 'warned.plate': matched().replace('1171 mm', '1571 mm').replace('5 m\n', '300 mm\n') });
  it.each([[['fine.plate'], 0], [['fine.plate', 'unmet.plate'], 1], [['-x.plate'], 1], [['warned.plate'], 0], [['--strict', 'warned.plate'], 1], [['--strct', 'warned.plate'], 2]] as [string[], number][])('%j: %i', (args, code) => { expect(run('hook.sh', at, {}, ...args).code).toBe(code); });
  it('is found by its definition', () => {
    const entry = /^ {2}entry: (.*)$/m.exec(readFileSync('.pre-commit-hooks.yaml', 'utf8'))![1]!;
    expect(resolve(entry)).toBe(join(SCRIPTS, 'hook.sh'));
    expect(statSync(entry).mode & 0o111).toBe(0o111);
  });
});

it('the command line is built once, in the copy that runs', () => {
  const copy = folder(Object.fromEntries(['install.sh', 'common.sh'].map(f => [`server/cli/ci/${f}`, readFileSync(join(SCRIPTS, f))])));
  const bin = folder({ npm: `#!/bin/sh\necho "$PWD: $*" >> ${copy}/asked\necho noise\nmkdir -p dist && touch dist/cli.cjs\n` });
  chmodSync(join(bin, 'npm'), 0o755);
  const install = (): Ended => { const { status, stdout, stderr } = spawnSync('bash', [join(copy, 'server/cli/ci/install.sh')], { cwd: bin, encoding: 'utf8', env: { ...process.env, PATH: `${bin}:${process.env['PATH']!}` } }); return { code: status, out: stdout, err: stderr }; };
  for (let i = 0; i < 2; i++) expect(install()).toMatchObject({ code: 0, out: '' });
  expect(readFileSync(join(copy, 'asked'), 'utf8')).toBe(`${copy}: ci --ignore-scripts --no-audit --no-fund\n${copy}: run build\n`);
});
