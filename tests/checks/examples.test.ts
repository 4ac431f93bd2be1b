/** Every check against its own page: the example raises it once and nothing else goes wrong; the cured text is clean. */
import { describe, expect, it } from 'vitest';
import { pageParts } from '../../server/checks/pages.ts';
import { CHECKS } from '../../server/checks/registry.ts';
import type { Finding } from '../../server/checks/check.ts';
import { look, serious } from './library.ts';

const shown = (fs: readonly Finding[]): string[] => fs.map(f => `${f.at.line + 1}: ${f.code} ${JSON.stringify(f.data).slice(0, 300)}`);

describe.each(CHECKS.map(c => [c.code, c] as const))('%s', (code, check) => {
  const findings = look(check.example, check.files).findings;
  const own = findings.filter(f => f.code === code);

  it('is raised once by its example, and nothing else is an error or a warning', () => {
    expect(shown(findings.filter(f => f.code === code || serious(f)))).toEqual(shown(own.slice(0, 1)));
    expect(own).toHaveLength(1);
    if (!check.severityOf) expect(own[0]!.severity).toBe(check.severity);
  });

  it('says something whole in its message', () => {
    const { message } = own[0]!;
    expect(message).toMatch(/^[\p{Lu}“].*[.?]$/su);
    expect(message).not.toMatch(/undefined|null|NaN|Infinity|\[object|!|“”|  |\n/);
    expect(message.length).toBeLessThan(500);
  });

  const cured = pageParts(check.page).filter(p => p.kind === 'setup');
  if (cured.length > 0) it('shows a cured text without an error or a warning', () => {
    for (const { text } of cured) expect(shown(look(text).findings.filter(serious))).toEqual([]);
  });
});
