/** Which page a new setup begins with, and what it may be called. */
import type { StartsAnswer } from '../server/lsp/protocol.ts';

export type Start = StartsAnswer[number];

/** What a menu, a key or a guide says with the command: the name of a page to begin with, or the folder that somebody points at. */
export const namedIn = (said: unknown, starts: readonly Start[]): Start | undefined => (typeof said === 'string' ? starts.find(s => s.name === said) : undefined);

/** A name that nothing has yet: `transmission.plate`, `transmission-2.plate`. @param taken whether a name is */
export async function freeName(start: Start, taken: (name: string) => Promise<boolean>): Promise<string> {
  for (let n = 1; ; n++) {
    const name = `${start.name}${n === 1 ? '' : `-${n}`}.plate`;
    if (!(await taken(name))) return name;
  }
}
