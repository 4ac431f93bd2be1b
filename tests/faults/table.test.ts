/** The table of faults for contributors: each is held by tests that are there. */
import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

it('each fault that contributors are told of names its test, and the test is there', () => {
  const [, table = ''] = /\n## Faults\n([\s\S]*?)\n## /.exec(readFileSync('DEVELOPERS.md', 'utf8')) ?? [];
  const rows = table.split('\n').filter(l => l.startsWith('| ')).slice(1);
  expect(rows.length).toBeGreaterThan(5);
  for (const row of rows) {
    const [, fault, , tests = ''] = row.split('|').map(c => c.trim());
    const named = [...tests.matchAll(/`(tests\/[^`]+)`/g)].map(m => m[1]!);
    expect(named, fault).not.toEqual([]);
    for (const file of named) expect(existsSync(file), file).toBe(true);
  }
});
