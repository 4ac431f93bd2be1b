/** The servers that this host has started, by their numbers in /proc. */
export async function servers(): Promise<number[]> {
  const { readdirSync, readFileSync } = await import('node:fs');
  return readdirSync('/proc').filter((name) => /^\d+$/.test(name)).map(Number).filter((pid) => {
    try {
      // Behind the name, which is in brackets: state, then the number of the parent.
      const parent = Number(readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)!.split(' ')[1]);
      return parent === process.pid && readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('server.cjs');
    } catch {
      return false; // it has ended in the meantime
    }
  });
}
