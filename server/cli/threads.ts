/** Long work of the command line that is parted among the processors: each part is a thread of the same program. */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';

/** From the first to before the last of a list. */
export interface Part { readonly from: number; readonly to: number }

/** More threads than that read one disk. */
const MOST = 8;

/** The engine compiles and clears away beside the program: with one processor for that, two threads on two processors take longer than one. */
const FREE = Math.max(1, availableParallelism() - 1);

/** As many even parts of a list as there are free processors; none shorter than `least`, as a thread has to start first. */
export function partsOf(count: number, least: number, processors = FREE): Part[] {
  const parts = Math.max(1, Math.min(processors, MOST, Math.floor(count / least)));
  return Array.from({ length: parts }, (_, i) => ({ from: Math.round((count * i) / parts), to: Math.round((count * (i + 1)) / parts) }));
}

/** What a thread answers to a job. The program that is started sees by `workerData` that it is one. */
export async function inThread<T>(job: unknown): Promise<T> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: job });
    worker.once('message', resolve).once('error', reject).once('exit', code => { reject(new Error(`a thread ended with ${code} and no answer`)); });
  });
}
