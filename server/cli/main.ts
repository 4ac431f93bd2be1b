/** `platewright`: the command line. Runs one command, prints what it has to say, and ends with its exit code; as a thread of itself it does a part of a command’s work. */
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { rowsOf, type Job } from './log.ts';
import { failed, run, type Ended } from './run.ts';

if (isMainThread) {
  for (const stream of [process.stdout, process.stderr]) stream.on('error', outputFailed);
  process.on('uncaughtException', e => { print(failed(e)); });
  void run(process.argv.slice(2)).then(print);
} else {
  // What fails here fails in the thread that asked.
  void rowsOf(workerData as Job).then(rows => { parentPort!.postMessage(rows); });
}

// The exit code is set, never forced: what is still on its way to a slow pipe is written first.
function print({ code, out, err }: Ended): void {
  process.exitCode = code;
  if (err !== '') process.stderr.write(err);
  if (out !== '') process.stdout.write(out);
}

/** A reader that has seen enough is no failure; a full disk is one. */
function outputFailed(e: NodeJS.ErrnoException): void {
  if (e.code === 'EPIPE' || e.code === 'ERR_STREAM_DESTROYED') process.exit();
  process.exitCode = 3;
  try { process.stderr.write(`platewright: the output could not be written: ${e.message}\n`); } catch { /* nobody hears it */ }
  process.exit();
}
