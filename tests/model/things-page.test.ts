/** The page of things and facts is what the vocabulary says, and each of its examples is a setup without a fault. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it, test } from 'vitest';
import { KINDS, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS } from '../../server/model/things/index.ts';
import { COMMON } from '../../server/model/things/kind.ts';
import { exampleOf, thingsPage } from '../../server/model/things/pages.ts';
import { look, MASTER } from '../checks/library.ts';

const PAGE = new URL('../../server/model/things/THINGS.md', import.meta.url);

it('is as committed; UPDATE=1 writes it anew', () => {
  if (process.env['UPDATE'] === '1') writeFileSync(PAGE, thingsPage());
  expect(readFileSync(PAGE, 'utf8')).toBe(thingsPage());
});

it('has a section for each kind, and a row for each fact', () => {
  const page = thingsPage();
  const sections = page.split(/^## /m).slice(1);
  expect(sections.map(s => s.split('\n')[0])).toEqual([...KINDS.map(k => k.word), 'Every thing', 'The setup', 'A shot', 'Processing']);
  const rows = sections.map(s => s.split('\n').filter(l => l.startsWith('| `')).length);
  expect(rows).toEqual([...KINDS.map(k => k.facts), COMMON, SETUP_FACTS, SHOT_FACTS, PROCESS_FACTS].map(facts => facts.length));
  // A row has six cells: a bar inside one would shift the rest.
  for (const line of page.split('\n').filter(l => l.startsWith('|'))) expect(line.replaceAll('\\|', '').split('|'), line).toHaveLength(8);
});

const examples = [...thingsPage().matchAll(/^```plate\n(.*?)^```$/gms)].map(m => m[1]!);
it('shows an example of each kind, and of a setup', () => expect(examples).toEqual([...KINDS.map(exampleOf), examples[examples.length - 1]!]));

test.each(examples.map(e => [e.split('\n').slice(1, 3).join(' ').trim(), e] as const))('%s … has nothing but hints', (_, text) => {
  // A laser of 5 mW has its caution wherever it stands.
  expect(look(text, MASTER).findings.filter(f => f.severity !== 'hint' && f.code !== 'laser-caution').map(f => `${f.code}: ${f.message}`)).toEqual([]);
});
