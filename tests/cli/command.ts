// Runs the command line as people run it: a bundle of server/cli/main.ts in a process of its own.
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { build, type BuildOptions } from 'esbuild';
import { BUILD } from './build.ts';
import { afterAll, inject, vi } from 'vitest';

// Each test starts one process or more, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const made: string[] = [];
afterAll(() => { for (const folder of made) rmSync(folder, { recursive: true, force: true }); });

/** A folder that is gone after the tests of the file, with these files in it. */
export function folder(files: Readonly<Record<string, string | Buffer>> = {}): string {
  const path = mkdtempSync(join(tmpdir(), 'platewright-'));
  chmodSync(path, 0o755);
  made.push(path);
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), content);
  }
  return path;
}

const options = (): BuildOptions & { outfile: string; } => ({ ...BUILD, outfile: join(folder(), 'cli.cjs') });

/** The program, built once for all tests. */
export const command = (): string => inject('cli');

/** The command line with other text in the place of a module's. */
export async function changed(module: RegExp, contents: string): Promise<string> {
  const how = options();
  await build({ ...how, plugins: [{ name: 'changed', setup: b => { b.onLoad({ filter: module }, () => ({ contents, loader: 'ts' })); } }] });
  return how.outfile;
}

export interface Ended {
  code: number | null;
  out: string;
  err: string;
}
export interface How {
  cwd?: string;
  input?: string | Buffer;
  env?: Record<string, string>;
  /** as a user who is not the superuser */
  ordinary?: boolean;
  cli?: string;
}

export const FIXTURES = resolve('tests/cli/fixtures');

export function platewright(args: readonly string[], { cwd = FIXTURES, input = '', env = {}, ordinary = false, cli: file = command() }: How = {}): Ended {
  const nobody = ordinary && process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [file, ...args], { cwd, input, encoding: 'utf8', env: { ...process.env, ...env }, maxBuffer: 1e9, ...nobody });
  if (error) throw error;
  return { code: status, out: stdout, err: stderr };
}

/** Starts the command line with its output in a pipe that the test reads, or doesn't. */
export const start = (args: readonly string[], cwd = FIXTURES): ReturnType<typeof spawn> => spawn(process.execPath, [command(), ...args], { cwd, stdio: ['pipe', 'pipe', 'pipe'] });

/** A setup of a laser with a known coherence and two arms that match, with more lines in it. */
export function matched(more = '', name = 'Cockle'): string {
  return `setup "${name}" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    coherence contrast: 50%
  }
  splitter S1
  object cockle
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> cockle: 1171 mm
    -> P1: 300 mm
${more}}
`;
}
