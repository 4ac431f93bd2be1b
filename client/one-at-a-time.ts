/** Work that is asked for more often than it can be done: once at a time, and what is asked meanwhile is done once more. So the newest always wins, and nothing queues up. */
export function oneAtATime(work: () => Promise<void>): () => Promise<void> {
  let [working, again] = [false, false];
  return async () => {
    if (working) {
      again = true;
      return;
    }
    working = true;
    try {
      do {
        again = false;
        await work();
      } while (again as boolean);
    } finally {
      working = false;
    }
  };
}
