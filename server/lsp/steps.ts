/** Long work in steps, between which other questions are answered. */

/** Longer than this, ms, nothing is worked at. */
const LONGEST = 2000;

/**
 * What the steps come to; undefined where it is of no use any more.
 * @param work makes the steps, and may ask how long it may go on
 * @param wanted false: nobody waits for it, as the text has moved on
 */
export async function inSteps<T>(work: (goOn: () => boolean) => Generator<void, T>, wanted: () => boolean): Promise<T | undefined> {
  let spent = 0;
  let begun = performance.now();
  const steps = work(() => spent + performance.now() - begun < LONGEST);
  for (;;) {
    if (!wanted()) return undefined;
    begun = performance.now();
    const step = steps.next();
    spent += performance.now() - begun;
    if (step.done) return step.value;
    await new Promise(resolve => { setTimeout(resolve, 0); });
  }
}
