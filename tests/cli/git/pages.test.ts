// Pages of a revision, with what they used there, and beside them the pages on disk.
import { symlinkSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../server/analysis.ts';
import { openFile, type Opened, type Reach } from '../../../server/cli/files.ts';
import { openAt } from '../../../server/cli/git/pages.ts';
import { pairsSince } from '../../../server/cli/git/pairs.ts';
import { Repository } from '../../../server/cli/git/repository.ts';
import { folder, matched } from '../folder.ts';
import { made, type Made } from './made.ts';

const lab = (coherence: string): string => `inventory lab {\n  laser red-12 {\n    wavelength: 632.8 nm\n    coherence length: ${coherence}\n    coherence contrast: 50%\n  }\n}\n`;
const uses = (path: string): string => `use "${path}"\n${matched().replace('1171 mm', '1571 mm').replace(/laser red \{[^}]*\}/, 'laser red = lab.red-12')}`;
const at = (of: Made, rev: string, path: string, reach?: Reach): Promise<Opened | undefined> => Repository.with(of.at, async r => openAt(r, await r.commit(rev), path, reach));
const codesOf = ({ uri, text, texts }: Opened): string[] => analyse(uri, text, texts).findings.filter(f => f.severity !== 'hint').map(f => f.code);
const codes = async (of: Made, rev: string, path: string, reach?: Reach): Promise<string[]> => codesOf((await at(of, rev, path, reach))!);

describe('what a page uses', () => {
  const shop = made({ 'inventories/lab.plate': lab('300 mm'), '2026/whelk.plate': uses('../inventories/lab.plate'), 'beside.plate': uses('inventories/lab.plate'), 'root.plate': 'use "2026/../beside.plate"\n' });
  shop.commit('a short coherence');
  shop.write({ 'inventories/lab.plate': lab('50 m') }).commit('a long one');
  shop.remove('inventories').commit('no inventory');
  // 400 mm too long: seen with 300 mm of coherence, not with 50 m.
  it.each([['HEAD~2', ['arms-mismatched']], ['HEAD~1', []], ['HEAD', ['import-unreadable']]])('is read as it was in %s', async (rev, found) => {
    expect(await codes(shop, rev, '2026/whelk.plate')).toEqual(found);
    expect(await codes(shop, rev, 'beside.plate')).toEqual(found);
  });
  it('is what was committed, not what lies on disk', async () => {
    shop.write({ 'inventories/lab.plate': lab('300 mm') });
    expect(await codes(shop, 'HEAD', 'beside.plate')).toEqual(['import-unreadable']);
    expect(codesOf(openFile(shop.path('beside.plate'), { folder: shop.at }))).toEqual(['arms-mismatched']);
  });
  it('has the addresses of the disk, and names as they are shown', async () => {
    const page = (await at(shop, 'HEAD~2', '2026/whelk.plate'))!;
    const disk = openFile(shop.path('2026/whelk.plate'));
    expect([page.uri, page.path, page.name, page.text]).toEqual([disk.uri, disk.path, disk.name, disk.text]);
  });
  it('is nothing where the page was not there', async () => { expect(await at(shop, 'HEAD', 'none.plate')).toBeUndefined(); });
  it('may use one that uses another, a ring, and what is no text', async () => {
    const chain = made({ 'a.plate': uses('b.plate'), 'b.plate': 'use "sub/c.plate"\n', 'sub/c.plate': `use "../d.plate"\n`, 'd.plate': lab('300 mm'), 'ring.plate': 'use "ring-2.plate"\n', 'ring-2.plate': 'use "ring.plate"\n', 'bad.plate': uses('blob.plate'), 'blob.plate': Buffer.from([0, 1]), 'to.plate': uses('link.plate') });
    symlinkSync('d.plate', chain.path('link.plate'));
    chain.commit('one');
    chain.remove('b.plate', 'sub', 'd.plate', 'ring-2.plate').commit('two');
    for (const page of ['a.plate', 'ring.plate', 'bad.plate', 'to.plate']) {
      chain.git('checkout', '-q', 'main~1');
      const disk = codesOf(openFile(chain.path(page), { folder: chain.at }));
      chain.git('checkout', '-q', 'main');
      expect(await codes(chain, 'main~1', page), page).toEqual(disk);
    }
    expect(await codes(chain, 'main~1', 'ring.plate')).toEqual(['import-ring']);
    expect(await codes(chain, 'main~1', 'to.plate')).toEqual(['arms-mismatched']);
  });
  it('lies in the folder that is named, or in a folder of inventories: of the repository as it was, of elsewhere as it is', async () => {
    expect(await codes(shop, 'HEAD~2', '2026/whelk.plate', { folder: shop.path('2026') })).toEqual(['import-outside']);
    const two = made({ 'a.plate': uses('lab.plate'), 'store/lab.plate': lab('300 mm') });
    two.commit('one');
    two.remove('store').commit('two');
    expect(await codes(two, 'HEAD~1', 'a.plate')).toEqual(['import-unreadable']);
    expect(await codes(two, 'HEAD~1', 'a.plate', { inventory: [two.path('store')] })).toEqual(['arms-mismatched']);
    expect(await codes(two, 'HEAD', 'a.plate', { inventory: [two.path('store')] })).toEqual(['import-unreadable']);
    expect(await codes(two, 'HEAD', 'a.plate', { inventory: [folder({ 'lab.plate': lab('50 m') })] })).toEqual([]);
  });
});

describe('pages beside what they were', () => {
  const text = (leg: number): string => matched(Array.from({ length: 20 }, (_, i) => `  // line ${i}\n`).join('')).replace('1171', String(leg));
  const shop = made({ 'same.plate': text(1), 'changed.plate': text(2), 'old name.plate': text(3), 'gone.plate': text(4), 'was/all.plate': text(5), 'notes.txt': '', 'latin.plate': Buffer.from('Caf\xe9', 'latin1') });
  shop.commit('one');
  shop.git('mv', 'old name.plate', 'new name.plate');
  shop.commit('renamed');
  shop.remove('gone.plate', 'was').write({ 'changed.plate': text(20), 'new.plate': text(6), 'latin.plate': text(7), 'new name.plate': text(30) });
  const pairs = async (rev: string, ...args: string[]): Promise<{ pairs: (string | undefined)[][]; troubles: string[] }> => Repository.with(shop.at, async r => {
    const { pairs: found, troubles } = await pairsSince(r, await r.commit(rev), args.map(a => shop.path(a)));
    const said = (page: Opened | undefined): string | undefined => page && `${r.within(page.path)}: ${/cockle: (\d+)/.exec(page.text)![1]!}`;
    return { pairs: found.map(p => [said(p.before), said(p.after)]), troubles: troubles.map(t => t.message) };
  });
  it('a whole folder: changed, gone, new, renamed, and one that could not be read', async () => {
    expect(await pairs('HEAD~1', '.')).toEqual({
      pairs: [['changed.plate: 2', 'changed.plate: 20'], ['gone.plate: 4', undefined], ['old name.plate: 3', 'new name.plate: 30'], [undefined, 'new.plate: 6'], ['same.plate: 1', 'same.plate: 1'], ['was/all.plate: 5', undefined]],
      troubles: ['latin.plate of HEAD~1 is not UTF-8 text; save it as UTF-8'],
    });
  });
  it('single pages, each once', async () => {
    expect(await pairs('HEAD~1', 'new name.plate')).toEqual({ pairs: [['old name.plate: 3', 'new name.plate: 30']], troubles: [] });
    expect(await pairs('HEAD', 'new name.plate')).toEqual({ pairs: [['new name.plate: 3', 'new name.plate: 30']], troubles: [] });
    expect(await pairs('HEAD', 'gone.plate', 'gone.plate', 'same.plate')).toEqual({ pairs: [['gone.plate: 4', undefined], ['same.plate: 1', 'same.plate: 1']], troubles: [] });
  });
  it('a folder that is gone, or has no page any more', async () => {
    expect(await pairs('HEAD', 'was')).toEqual({ pairs: [['was/all.plate: 5', undefined]], troubles: [] });
    shop.write({ 'was/other.txt': '' });
    expect(await pairs('HEAD', 'was')).toEqual({ pairs: [['was/all.plate: 5', undefined]], troubles: [] });
  });
  it('what never was is trouble', async () => {
    expect((await pairs('HEAD', 'none.plate')).troubles[0]).toContain('there is no such file');
  });
});
