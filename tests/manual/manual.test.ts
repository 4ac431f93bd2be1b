/**
 * The manual, grammar/manual.md, is run: each page in it is a file, each piece is added to the page before it, and what the program is said to
 * answer is what it answers. `UPDATE=1` writes the answers in; a changed answer is explained in the commit.
 *
 * ```plate whelk.plate         a whole file
 * ```plate whelk.plate adds    lines that stand before the last brace of that file from now on
 * ```text check whelk.plate    what the command line prints of it, as it stands by now
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { stepsOf, type Block } from '../../client/site/blocks.ts';
import { parse } from '../../grammar/parse.ts';
import { format } from '../../grammar/format.ts';
import { folder } from '../cli/folder.ts';
import { inside } from '../cli/inside.ts';

const PAGE = new URL('../../grammar/manual.md', import.meta.url);
const manual = readFileSync(PAGE, 'utf8');

/** Each block with the files as they stand behind it. */
const steps = stepsOf(manual);
const blocks = steps.map(s => s.block);

test('every block of the manual is of a kind that is run', () => {
  for (const { info, line } of blocks) expect(info, `line ${line}`).toMatch(/^(plate [\w-]+\.plate( adds)?|text (check|report|explain|why|solve|hang|layout|sweep|learn|history) .+)$/);
  expect(blocks.length).toBeGreaterThan(20);
});

describe('the pages of the manual are understood, and written as the formatter would', () => {
  // The torn page is there to show what is said of it.
  const pages = steps.filter(s => s.block.info.startsWith('plate ') && !s.block.info.includes('torn'));
  test.each(pages.map(s => [s.block.line, s] as const))('line %i', (_, { block, files: now }) => {
    const page = now[block.info.split(' ')[1]!]!;
    const tree = parse(page);
    expect(tree.lines.filter(l => l.issue).map(l => l.text)).toEqual([]);
    expect(tree.issues).toEqual([]);
    expect(format(page).text).toBe(page);
  });
});

describe('what the manual says that is answered, is answered', () => {
  const answers = steps.filter(s => s.block.info.startsWith('text '));
  const found = new Map<Block, string>();
  beforeAll(async () => {
    for (const { block, files: now } of answers) {
      const args = [...block.info.slice('text '.length).matchAll(/"([^"]*)"|(\S+)/g)].map(m => m[1] ?? m[2]!);
      const { out, err, code } = await inside(args, { cwd: folder(now) });
      expect([0, 1], err).toContain(code);
      found.set(block, out);
    }
    if (process.env['UPDATE'] !== '1') return;
    let text = manual;
    for (const { block } of [...answers].reverse()) text = text.slice(0, block.start) + found.get(block)! + text.slice(block.end);
    writeFileSync(PAGE, text);
  });
  test.each(answers.map(s => [`line ${s.block.line}: ${s.block.info}`, s.block] as const))('%s', (_, block) => {
    expect(process.env['UPDATE'] === '1' || block.text).toBe(process.env['UPDATE'] === '1' || found.get(block));
  });
});
