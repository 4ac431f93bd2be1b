/** Starts git, never through a shell, and says in plain words why it failed. */
import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { Trouble } from '../files.ts';

/**
 * The repository is the one in which the page lies, also where git itself has started the command and says where its own stands. Answers in git's own English.
 * A repository may have been unpacked from anywhere, and what stands in its settings is somebody else's: an object that is missing is not fetched, by which programs are started that they name.
 */
const environment = (): NodeJS.ProcessEnv => ({
  ...process.env, GIT_DIR: undefined, GIT_WORK_TREE: undefined, GIT_INDEX_FILE: undefined, GIT_PREFIX: undefined, GIT_OPTIONAL_LOCKS: '0', GIT_NO_LAZY_FETCH: '1', GIT_ALLOW_PROTOCOL: '', LC_ALL: 'C',
});

/** Settings that count before those of the repository: no programs that it names, and no repository hidden in the files of another. */
const SETTINGS = ['core.fsmonitor=false', 'core.hooksPath=/dev/null', 'log.showSignature=false', 'safe.bareRepository=explicit'];

/** Words that come from a user stand behind `--` in the arguments, or come in later by standard input. */
export const start = (args: readonly string[], folder: string): ChildProcessWithoutNullStreams =>
  spawn('git', ['--no-pager', '--literal-pathspecs', ...SETTINGS.flatMap(s => ['-c', s]), ...args], { cwd: folder, env: environment(), windowsHide: true });

/** What it prints. */
export async function git(args: readonly string[], folder: string): Promise<string> {
  const child = start(args, folder);
  child.stdin.end();
  const [out, err] = [child.stdout, child.stderr].map(textOf) as [Promise<string>, Promise<string>];
  const code = await endOf(child);
  if (code !== 0) throw failure(await err, folder);
  return out;
}

/** Its exit code; fails where it could not be started. */
export const endOf = (child: ChildProcessWithoutNullStreams): Promise<number | null> => new Promise((done, fail) => {
  child.on('error', e => { fail('code' in e && e.code === 'ENOENT' ? new Trouble('git is not installed, or not where programs are looked for; install it, or compare files instead of revisions') : new Trouble(`git could not be started: ${e.message}`)); });
  child.on('close', done);
});

export async function textOf(stream: NodeJS.ReadableStream): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
}

export function failure(said: string, folder: string): Trouble {
  if (said.includes('not a git repository')) return new Trouble(`${folder} lies in no git repository; name a page that does, or begin one there with git init`);
  if (said.includes('dubious ownership')) return new Trouble(`git does not open the repository of ${folder}, because it belongs to somebody else; if you trust it: git config --global --add safe.directory, and the folder`);
  if (said.includes('must be run in a work tree') || said.includes('cannot use bare repository')) return new Trouble(`${folder} is a repository without a working folder; name a page in a clone of it`);
  const [first = ''] = said.trim().split('\n');
  return new Trouble(`git failed in ${folder}: ${first === '' ? 'it does not say why' : first.replace(/^(?:fatal|error): /, '')}`);
}
