// Git itself, told to show pages by `platewright diff --as-driver`.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { command, platewright } from '../command.ts';
import { matched } from '../folder.ts';
import { bench, longer } from './made.ts';

const shop = bench();
shop.git('config', 'diff.platewright.command', `"${process.execPath}" "${command()}" diff --as-driver`);
shop.write({ '.gitattributes': '*.plate diff=platewright\n' }).commit('git tells what changes do');

it('shows a change by what it does, of the working folder, of a revision, and in a log', () => {
  shop.write({ 'cockle.plate': readFileSync(shop.path('cockle.plate'), 'utf8').replace('1221', '1171') });
  expect(shop.git('diff').replace(/\s+/g, ' ')).toContain('Object beam −50 mm');
  shop.git('checkout', '-q', 'cockle.plate');
  expect(shop.git('show', '--ext-diff', 'HEAD~3').replace(/\s+/g, ' ')).toContain('Object beam +50 mm');
  expect(shop.git('log', '-p', '--ext-diff', '--', 'cockle.plate').replace(/\s+/g, ' ')).toContain('object: S1 → cockle: 1171 mm → 1221 mm');
  expect(shop.git('show', '--ext-diff', '-M', 'HEAD~4')).toContain('Nothing differs that changes anything');
});
it('goes on over new, deleted and unreadable pages: the driver always ends with 0', () => {
  shop.write({ 'new.plate': longer(matched('', 'New')), 'latin.plate': Buffer.from('Caf\xe9 {\n', 'latin1'), 'broken.plate': '}{ §§ "\n' }).remove('cockle.plate');
  shop.git('add', '-A');
  const shown = shop.git('diff', '--cached', '--no-renames');
  for (const part of ['setup New is new', 'setup Cockle is gone', 'latin.plate is not UTF-8 text', 'broken.plate']) expect(shown).toContain(part);
  expect(platewright(['diff', '--as-driver', 'a.plate'], { cwd: shop.at })).toMatchObject({ code: 0, out: expect.stringContaining('not merged') as string });
  expect(platewright(['diff', '--as-driver', 'a.plate', 'x'], { cwd: shop.at })).toMatchObject({ code: 2 });
});
