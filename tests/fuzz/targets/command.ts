/**
 * The command line, with pages of any shape and arguments in any order: it ends with one of its codes, nothing went wrong inside, and the page stays as it was unless the command is
 * one that writes. It reads no other files than pages. An input is a line of arguments and below it the page.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { program } from '../../../server/cli/program.ts';
import { run } from '../../../server/cli/run.ts';
import { none, same, unfit, type Target } from '../target.ts';
import { DICTIONARY, likelyPage } from '../texts.ts';

/** All but the server, which goes on until its client goes, and those that ask git, which is another program. */
const COMMANDS = program(() => undefined, { out: () => undefined, err: () => undefined }).commands.map(c => c.name()).filter(c => !['lsp', 'log', 'help', 'merge-driver'].includes(c));
const WRITING = ['format', '--write', '-o', '--output'];
const OPTIONS = ['--format', 'json', 'text', 'markdown', 'csv', 'svg', 'html', 'sarif', '--strict', '--folder', '.', '--setup', 'Whelk shell', '--variant', 'closer', '--choice', '1', '0', '-1', '1e9', '--over', 'S1.reflects from 10% to 90% by 10%', 'gap from 0 mm to 1e9 m by 1e-9 m', '--show', 'mismatch, beam ratio', '--variants', '--view', 'plan', 'light', 'object', '--plate', 'P1', '--from', '-0.5,0', 'x,y', '--lamp', 'bulb', '--paper', 'a4', '--check', '--inventory', 'no/where', '--help', '--version', '--', '-', '', '🐚', 'dull', 'nothing at all', 'mismatch', 'arms-mismatched', 'beam ratio', 'page.plate', 'no.plate', '\u001b[2J', '--unheard'];
const args = fc.tuple(fc.constantFrom(...COMMANDS), fc.array(fc.constantFrom(...OPTIONS), { maxLength: 3 }), fc.boolean()).map(([c, more, first]) => JSON.stringify(first ? [c, 'page.plate', ...more] : [c, ...more, 'page.plate']));

export const command: Target = {
  name: 'command', share: 4, few: 5, words: [...DICTIONARY, ...OPTIONS.map(o => JSON.stringify(o)), ...COMMANDS.map(c => JSON.stringify(c))],
  inputs: fc.tuple(args, likelyPage).map(both => both.join('\n')),
  run: async input => {
    const [head, ...lines] = input.split('\n');
    const [given, text] = [wordsOf(head!), lines.join('\n')];
    if (!given || !COMMANDS.includes(given[0] ?? '')) return;
    const before = process.cwd();
    const folder = mkdtempSync(join(tmpdir(), 'platewright-args-'));
    try {
      writeFileSync(join(folder, 'page.plate'), text);
      process.chdir(folder);
      const { code, out, err } = await run(given);
      if (![0, 1, 2, 3].includes(code)) throw new Error(`ended with ${code}`);
      none('inside of the program', err.includes('went wrong inside') ? [err] : []);
      none('it prints', unfit(input, [out, err]));
      if (!given.some(g => WRITING.includes(g))) same('the page', readFileSync('page.plate', 'utf8'), Buffer.from(text, 'utf8').toString('utf8'));
    } finally {
      process.chdir(before);
      rmSync(folder, { recursive: true, force: true });
    }
  },
};

/** Arguments that lead out of the folder of the test are none. */
function wordsOf(line: string): string[] | undefined {
  try {
    const all: unknown = JSON.parse(line);
    return Array.isArray(all) && all.every(w => typeof w === 'string' && !w.includes('\0') && !/^[/~]|\.\./.test(w) && !/=[/~]/.test(w)) ? all as string[] : undefined;
  } catch {
    return undefined;
  }
}
