/** Work is done once at a time, and the newest question is answered last. */
import { expect, test } from 'vitest';
import { oneAtATime } from '../../client/one-at-a-time.ts';

/** Work that waits until it is let go, and writes down when it began and ended. */
function slow(): { readonly said: string[]; ask(): Promise<void>; let(): Promise<void> } {
  const said: string[] = [];
  const waiting: (() => void)[] = [];
  let count = 0;
  const ask = oneAtATime(async () => {
    const own = ++count;
    said.push(`begins ${own}`);
    await new Promise<void>(go => waiting.push(go));
    said.push(`ends ${own}`);
  });
  return { said, ask, async let() { waiting.shift()!(); for (let i = 0; i < 5; i++) await Promise.resolve(); } };
}

test('what is asked meanwhile is done once more, however often it was asked', async () => {
  const w = slow();
  const done = w.ask();
  for (let i = 0; i < 5; i++) void w.ask();
  expect(w.said).toEqual(['begins 1']);
  await w.let();
  expect(w.said).toEqual(['begins 1', 'ends 1', 'begins 2']);
  await w.let();
  await done;
  expect(w.said).toEqual(['begins 1', 'ends 1', 'begins 2', 'ends 2']);
});

test('what was done is done anew when it is asked again', async () => {
  const w = slow();
  for (const n of [1, 2]) {
    const done = w.ask();
    await w.let();
    await done;
    expect(w.said.at(-1)).toBe(`ends ${n}`);
  }
});

test('work that fails does not stand in the way of the next', async () => {
  let count = 0;
  const ask = oneAtATime(() => (++count === 1 ? Promise.reject(new Error('the first')) : Promise.resolve()));
  await expect(ask()).rejects.toThrow('the first');
  await ask();
  expect(count).toBe(2);
});
