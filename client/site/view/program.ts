/** The program in its worker, started when somebody first asks it. One question of a page at a time; a newer one takes the place of one that waits. */
import type { Answer, Looked, Question } from '../shown.ts';

/** What a page is told: what was looked at, or that the program has failed. */
type Told = (looked: Looked | undefined) => void;

let worker: Worker | undefined;
const asked = new Map<number, { readonly told: Told; next?: Question | undefined; busy: boolean }>();

export function ask(root: string, question: Question, told: Told): void {
  const own = asked.get(question.from);
  if (own?.busy === true) {
    own.next = question;
    return;
  }
  asked.set(question.from, { told, busy: true });
  begun(root).postMessage(question);
}

function begun(root: string): Worker {
  if (worker) return worker;
  worker = new Worker(`${root}worker.js`);
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => { answered(data); });
  worker.addEventListener('error', failed);
  return worker;
}

function answered({ from, looked }: Answer): void {
  const own = asked.get(from)!;
  const { next } = own;
  own.next = undefined;
  own.busy = next !== undefined;
  if (next) worker!.postMessage(next);
  own.told(looked);
}

/** It could not be loaded: a page that is opened from a file has no worker. */
function failed(): void {
  worker = undefined;
  for (const [from, { told }] of asked) {
    asked.delete(from);
    told(undefined);
  }
}
