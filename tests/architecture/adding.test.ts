/** The walkthroughs for contributors can be followed as they stand: what they replace is there once, what they name exists, what they write can be read. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { isPrinted, replaced, walkthroughs, type Step } from './adding.ts';

const ROOT = new URL('../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, ROOT), 'utf8');
const all = walkthroughs(read('server/adding.md'));
const scripts = Object.keys((JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts);

const isOfProject = (path: string): boolean => !path.startsWith('out/');
const stands = (path: string): string | undefined => (existsSync(new URL(path, ROOT)) ? read(path) : undefined);

/** What its steps make of the files, by their paths. In a copy in which somebody has followed them, nothing is left to do: all that they write stands there. */
function filesAfter(steps: readonly Step[]): Map<string, string> {
  const isFollowed = steps.some(s => s.kind === 'new' && isOfProject(s.path) && stands(s.path) === s.text);
  const files = new Map<string, string>();
  for (const step of steps) {
    if (step.kind === 'new') {
      expect(files.has(step.path), `${step.path} is written twice`).toBe(false);
      if (isOfProject(step.path)) expect(stands(step.path), `${step.path} is there already`).toBe(isFollowed ? step.text : undefined);
      files.set(step.path, step.text);
    }
    if (step.kind === 'edit') {
      const text = files.get(step.path) ?? read(step.path);
      if (isFollowed) for (const part of step.parts) expect(text, step.path).toContain(part.new);
      files.set(step.path, isFollowed ? text : replaced(text, step));
    }
  }
  return files;
}

it('there are three, each with a test, something to see, and a commit', () => {
  const [before, ...three] = all;
  expect(before!.steps.flatMap(s => (s.kind === 'run' ? s.commands : []))).toEqual(['npm ci', 'npm run build']);
  expect(three.map(w => w.title.split(':')[0])).toEqual(['A thing', 'A check', 'A result']);
  for (const { title, steps } of three) {
    const commands = steps.flatMap(s => (s.kind === 'run' ? s.commands : []));
    expect(steps.some(s => s.kind === 'new' && s.path.endsWith('.test.ts')), title).toBe(true);
    expect(commands.some(c => c.startsWith('node dist/cli.cjs ')), title).toBe(true);
    expect(commands.at(-1), title).toMatch(/^git commit --message "/);
  }
});

describe.each(all.slice(1).map(w => [w.title, w.steps] as const))('%s', (_, steps) => {
  it('replaces what is there once, and leaves sources that can be parsed', () => {
    const files = filesAfter(steps);
    for (const [path, text] of files) {
      if (!path.endsWith('.ts')) continue;
      const { diagnostics } = ts.transpileModule(text, { fileName: path, reportDiagnostics: true, compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext } });
      expect(diagnostics!.map(d => `${path}: ${ts.flattenDiagnosticMessageText(d.messageText, ' ')}`)).toEqual([]);
      // A file that is imported is there, or comes with a step; so does each name that is taken from it.
      for (const statement of ts.createSourceFile(path, text, ts.ScriptTarget.ES2022).statements) {
        if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier) || !statement.moduleSpecifier.text.startsWith('.')) continue;
        const from = new URL(statement.moduleSpecifier.text, new URL(path, ROOT)).href.slice(ROOT.href.length);
        const source = files.get(from) ?? read(from);
        const names = statement.importClause?.namedBindings;
        if (names && ts.isNamedImports(names)) for (const { propertyName, name } of names.elements) expect(source, `${path} takes it from ${from}`).toMatch(new RegExp(`export .*\\b${(propertyName ?? name).text}\\b`));
      }
    }
  });

  it('names only commands and files that there are', () => {
    const files = filesAfter(steps);
    const isThere = (path: string): boolean => [...files.keys()].some(f => f === path || f.startsWith(`${path}/`)) || existsSync(new URL(path, ROOT));
    for (const step of steps) {
      for (const command of step.kind === 'run' ? step.commands : []) {
        const [program, ...words] = command.replace(/^UPDATE=1 /, '').split(' ');
        expect(['npm', 'npx', 'git', 'node'], command).toContain(program);
        if (program === 'npm') expect(scripts, command).toContain(words[0] === 'run' ? words[1] : words[0]);
        if (program === 'npx') expect(words.slice(0, 2), command).toEqual(['vitest', 'run']);
        if (program === 'node') expect(words[0], command).toBe('dist/cli.cjs');
        // dist/ is built by a step before.
        for (const path of words.filter(w => /^(?:tests|server|client|grammar|out|CHANGELOG)/.test(w))) expect(isThere(path), `${command}: ${path}`).toBe(true);
      }
    }
  });

  it('adds what it changes to its commit', () => {
    const added = steps.flatMap(s => (s.kind === 'run' ? s.commands : [])).filter(c => c.startsWith('git add ')).flatMap(c => c.split(' ').slice(2));
    for (const path of filesAfter(steps).keys()) if (isOfProject(path)) expect(added, path).toContain(path.split('/')[0]);
  });
});

it('what its text names is there', () => {
  const named = [...read('server/adding.md').matchAll(/`((?:server|client|grammar|tests)\/[\w./-]*)`/g)].map(m => m[1]!);
  expect(named.length).toBeGreaterThan(20);
  const made = new Set(all.flatMap(w => w.steps.flatMap(s => (s.kind === 'new' ? [s.path] : []))));
  expect(named.filter(path => !made.has(path) && !existsSync(new URL(path, ROOT)))).toEqual([]);
});

describe('how steps are read', () => {
  it('a part that is there twice, or not at all, is an error', () => {
    const edit = { kind: 'edit', path: 'a.ts', parts: [{ old: 'b', new: 'c' }] } as const;
    expect(replaced('a b', edit)).toBe('a c');
    expect(() => replaced('b b', edit)).toThrow('2 times');
    expect(() => replaced('a', edit)).toThrow('0 times');
  });
  it('what is printed is looked for in its order', () => {
    expect(isPrinted('one\n\u001B[31mtwo\u001B[39m and three\nfour', ['one', 'two … three', 'four'])).toBe(true);
    expect(isPrinted('two\none', ['one', 'two'])).toBe(false);
    expect(isPrinted('one', ['…two'])).toBe(false);
  });
});

/** Followed to the letter in a clean copy of what is committed, which takes minutes: only where somebody asks. */
if (process.env['FOLLOW'] === '1') it.each(all.slice(1).map(w => [w.title, w.steps] as const))('followed: %s', (_, steps) => {
  const folder = mkdtempSync(join(tmpdir(), 'adding-'));
  const who = Object.fromEntries(['AUTHOR', 'COMMITTER'].flatMap(r => [[`GIT_${r}_NAME`, 'Saltmarsh workshop'], [`GIT_${r}_EMAIL`, 'workshop@saltmarsh.invalid']]));
  // The switches of this run are none of the commands', each of which says its own.
  const env = { ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^(?:FOLLOW|UPDATE|VITEST.*|NODE_ENV)$/.test(name))), ...who };
  const run = (program: string, ...words: string[]): { output: string; failed: boolean } => {
    const { stdout, stderr, status } = spawnSync(program, words, { cwd: folder, env, encoding: 'utf8', maxBuffer: 2 ** 28 });
    return { output: stdout + stderr, failed: status !== 0 };
  };
  try {
    expect(run('git', 'clone', '--quiet', '--shared', fileURLToPath(ROOT), '.')).toEqual({ output: '', failed: false });
    run('git', 'switch', '--quiet', '--force-create', 'main');
    symlinkSync(fileURLToPath(new URL('node_modules', ROOT)), join(folder, 'node_modules'), 'junction');
    for (const step of steps) {
      if (step.kind === 'run') {
        const done = step.commands.map(command => ({ command, ...run('bash', '-c', command) }));
        const isToFail = step.prints?.some(line => line.includes('FAIL')) ?? false;
        expect(done.filter(d => d.failed !== isToFail).map(d => `${d.command}: ${d.output}`)).toEqual([]);
        const printed = done.map(d => d.output).join('');
        if (step.prints) expect(isPrinted(printed, step.prints), `${step.prints.join('\n')} in ${printed}`).toBe(true);
      } else {
        const path = join(folder, step.path);
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(path, step.kind === 'new' ? step.text : replaced(readFileSync(path, 'utf8'), step));
      }
    }
    expect(run('git', 'status', '--porcelain', '--untracked-files=no').output).toBe('');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}, 1_800_000);
