/** Inputs that something was wrong with once. Each is a file, and a test for good. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export const FOUND = 'tests/fuzz/found';

/** Not every text survives as a file: half a letter is none in UTF-8, and line ends change with a checkout. Such a one is kept as JSON writes it. */
const survives = (input: string): boolean => Buffer.from(input, 'utf8').toString('utf8') === input && !/[\r\ufeff]/.test(input);

/** Keeps an input, unless it is there already. @returns its file */
export function keep(target: string, input: string): string {
  const folder = join(FOUND, target);
  const path = join(folder, `${createHash('sha256').update(input).digest('hex').slice(0, 10)}${survives(input) ? '.txt' : '.json'}`);
  if (existsSync(path)) return path;
  mkdirSync(folder, { recursive: true });
  // Nothing but ASCII, since not each half of a letter has a place in a file.
  writeFileSync(path, survives(input) ? input : `${JSON.stringify(input).replace(/[^ -~]/g, c => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`)}\n`);
  return path;
}

/** All that are kept of a target. */
export function keptOf(target: string): { readonly name: string; readonly input: string }[] {
  const folder = join(FOUND, target);
  if (!existsSync(folder)) return [];
  return readdirSync(folder).filter(f => /\.(?:txt|json)$/.test(f)).sort().map(name => {
    const text = readFileSync(join(folder, name), 'utf8');
    return { name, input: name.endsWith('.json') ? JSON.parse(text) as string : text };
  });
}
