/** `platewright`: the command line. Runs one command, prints what it has to say, and ends with its exit code; as a thread of itself it does a part of a command’s work. */
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { CommanderError } from 'commander';
import { printable } from '../features/report/layout.ts';
import { Misuse, Trouble } from './files.ts';
import type { Done, ExitCode } from './done.ts';
import { rowsOf, type Job } from './log.ts';
import { program } from './program.ts';

if (isMainThread) {
  for (const stream of [process.stdout, process.stderr]) stream.on('error', outputFailed);
  process.on('uncaughtException', e => fail(e));
  void run();
} else {
  // What fails here fails in the thread that asked.
  void rowsOf(workerData as Job).then(rows => { parentPort!.postMessage(rows); });
}

async function run(): Promise<void> {
  try {
    await program(finish).parseAsync();
  } catch (e) {
    fail(e);
  }
}

// The exit code is set, never forced: what is still on its way to a slow pipe is written first.
function finish(done: Done): void {
  for (const line of done.err ?? []) complain(line);
  process.exitCode = done.code;
  if (done.out !== '') process.stdout.write(done.out);
}

function fail(e: unknown): void {
  if (e instanceof CommanderError) end(e.exitCode === 0 ? 0 : 2);
  else if (e instanceof Misuse) { complain(e.message); end(2); }
  else if (e instanceof Trouble) { complain(e.message); end(3); }
  else {
    complain(`something went wrong inside the program (${e instanceof Error ? e.message : String(e)}). Please report this, with the file that caused it.`);
    end(3);
  }
}

function end(code: ExitCode): void {
  process.exitCode = code;
}

function complain(line: string): void {
  process.stderr.write(`platewright: ${printable(line)}\n`);
}

/** A reader that has seen enough is no failure; a full disk is one. */
function outputFailed(e: NodeJS.ErrnoException): void {
  if (e.code === 'EPIPE' || e.code === 'ERR_STREAM_DESTROYED') process.exit();
  process.exitCode = 3;
  try { process.stderr.write(`platewright: the output could not be written: ${e.message}\n`); } catch { /* nobody hears it */ }
  process.exit();
}
