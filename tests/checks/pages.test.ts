/** The page of the findings is what the checks say. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { allPages, pageParts, shownExample } from '../../server/checks/pages.ts';
import { CHECK_GROUPS, CHECKS } from '../../server/checks/registry.ts';

const PAGE = new URL('../../server/checks/FINDINGS.md', import.meta.url);

it('is as committed; UPDATE=1 writes it anew', () => {
  if (process.env['UPDATE'] === '1') writeFileSync(PAGE, allPages());
  expect(readFileSync(PAGE, 'utf8')).toBe(allPages());
});

it('has every code once as a heading, by group, in it the gravest first', () => {
  const headings = [...allPages().matchAll(/^### (.*)$/gm)].map(m => m[1]!);
  expect([...headings].sort()).toEqual(CHECKS.map(c => c.code).sort());
  const rank = headings.map(code => {
    const group = CHECK_GROUPS.findIndex(g => g.checks.some(c => c.code === code));
    return 10 * group + ['error', 'warning', 'note', 'hint'].indexOf(CHECKS.find(c => c.code === code)!.severity);
  });
  expect(rank).toEqual([...rank].sort((a, b) => a - b));
});

it('says on each page what will be seen, why, and what to do', () => {
  for (const { code, page } of CHECKS) {
    const parts = pageParts(page);
    expect(parts.filter(p => p.kind === 'text').map(p => /^\*\*(.*?)\.\*\*/.exec(p.text)?.[1]), code).toEqual(['What you see', 'Why', 'What to do']);
    expect(parts.filter(p => p.kind === 'setup').every(p => !p.text.includes('```')), code).toBe(true);
  }
});

it('shortens an example that is there to be too long, and no other', () => {
  expect(shownExample('setup "Whelk" {\n}\n')).toBe('setup "Whelk" {\n}');
  const long = shownExample(`a {\n${'  b\n'.repeat(100)}}\n`).split('\n');
  expect(long).toEqual(['a {', '  b', '  b', '  b', '  b', '// … 95 more lines …', '  b', '}']);
  expect(shownExample('x'.repeat(2000)).length).toBeLessThan(200);
});
