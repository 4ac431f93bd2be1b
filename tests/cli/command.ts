// Runs the command line as people run it: a bundle of server/cli/main.ts in a process of its own.
import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { build, type BuildOptions } from 'esbuild';
import { inject, vi } from 'vitest';
import { BUILD } from './build.ts';
import { FIXTURES, folder } from './folder.ts';

// Each test starts one process or more, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

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

export function platewright(args: readonly string[], { cwd = FIXTURES, input = '', env = {}, ordinary = false, cli: file = command() }: How = {}): Ended {
  const nobody = ordinary && process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [file, ...args], { cwd, input, encoding: 'utf8', env: { ...process.env, ...env }, maxBuffer: 1e9, ...nobody });
  if (error) throw error;
  return { code: status, out: stdout, err: stderr };
}

/** Starts the command line with its output in a pipe that the test reads, or doesn't. */
export const start = (args: readonly string[], cwd = FIXTURES): ReturnType<typeof spawn> => spawn(process.execPath, [command(), ...args], { cwd, stdio: ['pipe', 'pipe', 'pipe'] });
