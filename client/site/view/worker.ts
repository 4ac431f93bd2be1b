/** The program in a worker, so that typing never waits for it. */
import { LineCache } from '../../../grammar/parse.ts';
import { look } from '../looked.ts';
import type { Answer, Question } from '../shown.ts';

/** What is kept of the text before, by which page it is of. */
const caches = new Map<number, LineCache>();

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  const { from, name, text, files, wanted } = data;
  const cache = caches.get(from) ?? new LineCache();
  caches.set(from, cache);
  let answer: Answer = { from };
  try {
    answer = { from, looked: look(name, text, files, wanted, cache) };
  } catch (e) {
    // A defect of the program: the page says so, and the next text begins anew.
    caches.delete(from);
    console.error(e);
  }
  postMessage(answer);
});
