// `platewright diff` and `log` as they are run, in folders and in real git repositories.
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, matched } from './folder.ts';
import { inside, type Ended } from './inside.ts';
import { bench, longer, made } from './git/made.ts';
import { bySchema } from './schema.ts';

const diff = (cwd: string, ...args: string[]): Promise<Ended> => inside(['diff', ...args], { cwd });
const words = ({ out }: Ended): string => out.replace(/\s+/g, ' ');

interface Diff { before: string; after: string; files: { file: string; before: string | null; after: string | null; headline: string[]; setups: { results: { name: string; by: number | null; sure: boolean }[]; changes: { kind: string; name: string }[] }[] }[]; unread: string[]; summary: Record<string, number> }
const json = async (cwd: string, ...args: string[]): Promise<Diff> => bySchema((await diff(cwd, ...args, '--format', 'json')).out) as Diff;

describe('two files', () => {
  const at = folder({ 'old.plate': matched(), 'new.plate': longer(), 'same.plate': `// tidied\n${matched().replaceAll('  ', '\t')}` });
  it('end with 1 where something differs, and with 0 where only the looks of the text do', async () => {
    const found = await diff(at, 'old.plate', 'new.plate');
    expect(found).toMatchObject({ code: 1, err: '' });
    expect(words(found)).toContain('Object beam +50 mm');
    expect(words(found)).toContain('object: S1 → cockle: 1171 mm → 1221 mm');
    expect(await diff(at, 'old.plate', 'same.plate')).toEqual({ code: 0, err: '', out: 'Nothing differs that changes anything: no statement, no result, no finding.\n' });
  });
  it('as JSON, by the schema', async () => {
    const { files, summary, before, after } = await json(at, 'old.plate', 'new.plate');
    expect([before, after, files.length, files[0]!.headline]).toEqual(['old.plate', 'new.plate', 1, [expect.stringMatching(/^Cockle: object beam \+50 mm/)]]);
    expect(files[0]!.setups[0]!.results.find(r => r.name === 'P1.object.length')).toMatchObject({ by: 0.05, sure: true });
    expect(summary).toMatchObject({ files: 1, setups: 1, changes: 1 });
    expect((await json(at, 'old.plate', 'same.plate')).files).toEqual([]);
  });
  it('as Markdown, and as a page of HTML that is written beside them', async () => {
    expect((await diff(at, 'old.plate', 'new.plate', '--format', 'markdown')).out).toContain('`1171 mm` → `1221 mm`');
    expect(await diff(at, 'old.plate', 'new.plate', '--format', 'html', '-o', 'review.html')).toEqual({ code: 1, err: '', out: 'review.html: written\n' });
    const page = readFileSync(join(at, 'review.html'), 'utf8');
    expect(page).toMatch(/^<!doctype html>/);
    expect(page).toContain('<del><code>1171 mm</code></del> → <ins><code>1221 mm</code></ins>');
    expect(await diff(at, 'old.plate', 'new.plate', '-o', 'page.plate')).toMatchObject({ code: 2, err: expect.stringContaining('as a setup does') as string });
  });
  it('as a picture, of places or of arms; else it says why not', async () => {
    const placed = readFileSync('examples/whelk-on-the-table.plate', 'utf8').replace('use "saltmarsh-lab.plate"', '').replaceAll(/ = lab\.[\w-]+/g, '');
    const two = folder({ 'a.plate': placed, 'b.plate': placed.replace('(400, 640) mm', '(400, 682) mm') });
    const { out, code } = await diff(two, 'a.plate', 'b.plate', '--format', 'svg');
    expect(code).toBe(1);
    expect(out).toMatch(/^<\?xml[^]*<svg[^]*before:M3[^]*moved 42 mm/);
    expect((await diff(two, 'a.plate', 'b.plate', '--format', 'html')).out).toMatch(/<figure><svg[^]*moved 42 mm[^]*<\/figure>/);
    expect(await diff(two, 'a.plate', 'a.plate', '--format', 'svg')).toMatchObject({ code: 2, err: expect.stringContaining('No setup differs') as string });
    // 1171 + 300 = 1471 mm, and 50 mm more.
    expect((await diff(at, 'old.plate', 'new.plate', '--format', 'svg')).out).toMatch(/^<\?xml[^]*object was 1471 mm, is 1521 mm/);
    const bare = folder({ 'a.plate': 'setup "Cockle" {\n  mirror M1\n}\n', 'b.plate': 'setup "Cockle" {\n  mirror M2\n}\n' });
    expect(await diff(bare, 'a.plate', 'b.plate', '--format', 'svg')).toMatchObject({ code: 3, err: expect.stringContaining('has a place') as string });
  });
  it('as a page with several pictures, of which none uses the parts of another (ids are unique in a document, HTML 3.2.6)', async () => {
    const one = readFileSync('examples/whelk-on-the-table.plate', 'utf8').replace('use "saltmarsh-lab.plate"', '').replaceAll(/ = lab\.[\w-]+/g, '');
    const both = `${one}\n${one.replace(/setup "([^"]*)"/, 'setup "$1 again"')}`;
    const { out } = await diff(folder({ 'a.plate': both, 'b.plate': both.replaceAll('(400, 640) mm', '(400, 682) mm') }), 'a.plate', 'b.plate', '--format', 'html');
    expect(out.match(/<figure>/g)).toHaveLength(2);
    const ids = [...out.matchAll(/ id="([^"]*)"/g)].map(m => m[1]!);
    expect(ids.length).toBeGreaterThan(2);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, used] of out.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(used);
  });
  it('that are not there, or one alone', async () => {
    expect(await diff(at, 'old.plate', 'none.plate')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('none.plate cannot be read') as string });
    expect(await diff(at, 'old.plate')).toMatchObject({ code: 2, err: expect.stringContaining('platewright diff --git HEAD old.plate') as string });
    expect((await diff(at, 'old.plate', 'new.plate', 'same.plate')).code).toBe(2);
    expect(await diff(at, 'old.plate', 'new.plate', '--setup', 'Whelk')).toMatchObject({ code: 2, err: expect.stringContaining('No page has a setup “Whelk”') as string });
  });
  it('one of them broken: what can be compared is, with the errors of that side', async () => {
    const broken = folder({ 'a.plate': matched(), 'b.plate': longer().replace('plate P1', 'plate P1 {') });
    const found = await diff(broken, 'a.plate', 'b.plate');
    expect(found.code).toBe(1);
    expect(words(found)).toContain('1171 mm → 1221 mm');
    expect(words(found)).toMatch(/new error/);
  });
});

it('two folders: page by page, what is new and what is gone', async () => {
  const at = folder({ 'then/a.plate': matched(), 'then/gone.plate': matched('', 'Gone'), 'then/deep/same.plate': matched(), 'now/a.plate': longer(), 'now/new.plate': matched('', 'New'), 'now/deep/same.plate': matched() });
  expect((await json(at, 'then', 'now')).files.map(f => [f.file, f.before, f.after])).toEqual([['now/a.plate', 'then/a.plate', 'now/a.plate'], ['then/gone.plate', 'then/gone.plate', null], ['now/new.plate', null, 'now/new.plate']]);
  expect((await diff(at, 'then', 'now/a.plate')).code).toBe(2);
  mkdirSync(join(at, 'empty'));
  expect(await diff(at, 'then', 'empty')).toMatchObject({ code: 3, err: expect.stringContaining('no .plate file') as string });
});

describe('variants', () => {
  const at = folder({ 'a.plate': matched('  variant "long" {\n    S1 -> cockle: 1221 mm\n  }\n  variant "longer" {\n    S1 -> cockle: 1231 mm\n  }\n') });
  it('against the setup as written, and against each other', async () => {
    expect(words(await diff(at, 'a.plate', '--variant', 'long'))).toContain('Cockle: as written → variant “long” a.plate');
    expect((await json(at, 'a.plate', '--variant', 'long')).files[0]!.setups[0]!.results.find(r => r.name === 'P1.object.length')!.by).toBe(0.05);
    // 1231 − 1221 = 10 mm
    expect((await json(at, 'a.plate', '--variant', 'long', '--variant', 'longer')).files[0]!.setups[0]).toMatchObject({ changes: [{ kind: 'set', name: 'object: S1 → cockle' }], results: expect.arrayContaining([expect.objectContaining({ name: 'P1.object.length', by: 0.01 })]) as unknown });
  });
  it('that there are not', async () => {
    expect(await diff(at, 'a.plate', '--variant', 'lng')).toMatchObject({ code: 2, err: expect.stringContaining('Did you mean “long”?') as string });
    expect(await diff(at, 'a.plate', '--variant', 'long', '--git')).toMatchObject({ code: 2, err: expect.stringContaining('one at a time') as string });
  });
});

describe('revisions', () => {
  const shop = bench();
  it('one, against what is on disk', async () => {
    expect((await diff(shop.at, '--git', 'HEAD', '.')).code).toBe(0);
    expect(words(await diff(shop.at, '--git', 'HEAD~1', 'cockle.plate'))).toContain('P1.sensitivity: 40 µJ/cm² → 80 µJ/cm²');
    expect(await json(shop.at, '--git', 'HEAD~4', 'cockle.plate')).toMatchObject({ before: expect.stringMatching(/^HEAD~4 \([0-9a-f]{7}\)$/) as string, files: [{ before: 'old.plate', after: 'cockle.plate', headline: [expect.stringMatching(/^Cockle: object beam \+50 mm/)] }] });
  });
  it('two, against each other', async () => {
    expect((await json(shop.at, '--git', 'HEAD~3', 'HEAD~1', 'cockle.plate')).files[0]!.setups[0]!.changes.map(c => c.name)).toEqual(['object: S1 → cockle']);
    expect((await diff(shop.at, '--git', 'HEAD~2', 'HEAD~1', 'cockle.plate')).code).toBe(0);
  });
  it('a folder: a change of the inventory shows in it and in the page that uses it', async () => {
    expect((await json(shop.at, '--git', 'HEAD~1', '.')).files.map(f => f.file)).toEqual(['cockle.plate', 'lab.plate']);
  });
  it('that there are not, or no repository', async () => {
    expect(await diff(shop.at, '--git', 'nowhere', '.')).toMatchObject({ code: 2, err: expect.stringContaining('There is no revision “nowhere”') as string });
    expect((await diff(shop.at, '--git', '--output=x', '.')).code).toBe(2);
    expect(await diff(folder({ 'a.plate': matched() }), '--git', 'HEAD', 'a.plate')).toMatchObject({ code: 3, err: expect.stringContaining('lies in no git repository') as string });
    expect((await diff(shop.at, '--git', 'HEAD')).code).toBe(2);
  });
});

describe('log', () => {
  interface Log { revisions: { id: string | null; subject: string | null; file: string; same: boolean; told: { setup: string | null; words: string }[] }[] }
  const shop = bench();
  const log = async (...args: string[]): Promise<Log> => bySchema((await inside(['log', 'cockle.plate', '--format', 'json', ...args], { cwd: shop.at })).out) as Log;
  it('tells each revision by its effect, the newest first, back through the renaming, and those of the inventory', async () => {
    expect((await log()).revisions.map(r => [r.subject, r.file, r.told.map(t => t.words)])).toEqual([
      ['another box of plates', 'cockle.plate', [expect.stringMatching(/^1 change, no result/)]], ['tidied', 'cockle.plate', []], ['object further back', 'cockle.plate', [expect.stringMatching(/^object beam \+50 mm/)]],
      ['another name', 'cockle.plate', []], ['as set up', 'old.plate', ['a new setup', 'outside the setups: 1 change']],
    ]);
    expect((await log()).revisions.map(r => r.same)).toEqual([false, true, false, true, false]);
    expect((await log('--max', '2')).revisions).toHaveLength(2);
  });
  it('of more revisions than are read at a time has each in its place', async () => {
    const shop = made();
    // One millimetre more each time.
    for (let n = 0; n < 20; n++) shop.write({ 'a.plate': matched().replace('1171 mm', `${1171 + n} mm`) }).commit(`step ${n}`);
    const { revisions } = bySchema((await inside(['log', 'a.plate', '--format', 'json'], { cwd: shop.at })).out) as Log;
    expect(revisions.map(r => r.subject)).toEqual(Array.from({ length: 20 }, (_, n) => `step ${19 - n}`));
    expect(revisions.slice(0, -1).map(r => r.told[0]!.words.split(';')[0])).toEqual(Array.from({ length: 19 }, () => 'object beam +1 mm'));
  });
  it('begins with what is not committed yet', async () => {
    const kept = readFileSync(shop.path('cockle.plate'), 'utf8');
    shop.write({ 'cockle.plate': kept.replace('1221', '1231') });
    expect((await log()).revisions[0]).toMatchObject({ id: null, subject: null, told: [{ setup: 'Cockle', words: expect.stringMatching(/^object beam \+10 mm/) as string }] });
    shop.write({ 'cockle.plate': kept });
  });
  it('as text and Markdown', async () => {
    const { out, code } = await inside(['log', 'cockle.plate'], { cwd: shop.at });
    expect(code).toBe(0);
    expect(out).toMatch(/2026-02-14 21:02 [0-9a-f]{7} object further back\n {4}Cockle: object beam \+50 mm/);
    expect((await inside(['log', 'cockle.plate', '--format', 'markdown'], { cwd: shop.at })).out).toMatch(/- 2026-02-14 21:03 `[0-9a-f]{7}` tidied\n {2}- nothing that changes anything/);
  });
  it('goes over a revision that cannot be read, and over one without the page', async () => {
    const rough = made({ 'a.plate': matched() });
    rough.commit('one');
    rough.write({ 'a.plate': Buffer.from([0, 1, 2]) }).commit('no text');
    rough.remove('a.plate').commit('gone');
    rough.write({ 'a.plate': longer() }).commit('back');
    const { revisions } = bySchema((await inside(['log', 'a.plate', '--format', 'json'], { cwd: rough.at })).out) as Log;
    expect(revisions.map(r => r.told[0]!.words)).toEqual(['a new setup', 'the page is gone', expect.stringContaining('cannot be read'), 'a new setup']);
  });
  it('without a repository, or of nothing', async () => {
    expect(await inside(['log', 'a.plate'], { cwd: folder({ 'a.plate': matched() }) })).toMatchObject({ code: 3, err: expect.stringContaining('no git repository') as string });
    expect((await inside(['log', 'none.plate'], { cwd: shop.at })).code).toBe(3);
    expect((await inside(['log', 'cockle.plate', '--max', '0'], { cwd: shop.at })).code).toBe(2);
  });
});

describe('a shot', () => {
  const shots = '  shot 3 on 2026-02-11 {\n    outcome: "bright"\n  }\n';
  const later = '  measured S1 -> cockle: 1190 mm ± 2 mm by string on 2026-02-20\n  shot 4 on 2026-02-21 {\n    outcome: "dull"\n  }\n';
  it('by the dates on the page, where there is no git', async () => {
    const at = folder({ 'a.plate': matched(shots + later) });
    const found = await json(at, 'a.plate', '--shot', '3');
    expect(found.before).toBe('shot 3 on 2026-02-11, by the dates on the page');
    expect(found.files[0]!.setups[0]!.changes.map(c => [c.kind, c.name])).toEqual([['added', 'S1 -> cockle'], ['added', 'shot 4']]);
    // The string says 1190 mm where the page says 1171 mm.
    expect(found.files[0]!.setups[0]!.results.find(r => r.name === 'P1.object.length')!.by).toBeCloseTo(0.019, 9);
    expect((await diff(at, 'a.plate', '--shot', '4')).code).toBe(0);
  });
  it('by the revision in which it was first written down', async () => {
    const shop = made({ 'a.plate': matched() });
    shop.commit('set up');
    shop.write({ 'a.plate': matched(shots) }).commit('three shot');
    shop.write({ 'a.plate': longer(matched(shots)) }).commit('further back');
    const found = await json(shop.at, 'a.plate', '--shot', '3');
    expect(found.before).toMatch(/^shot 3 on 2026-02-11, as committed in [0-9a-f]{7}$/);
    expect(found.files[0]!.setups[0]!.results.find(r => r.name === 'P1.object.length')!.by).toBe(0.05);
  });
  it('that there is not, or that nothing dates', async () => {
    const at = folder({ 'a.plate': matched('  shot 5 {\n    outcome: "bright"\n  }\n') });
    expect(await diff(at, 'a.plate', '--shot', '3')).toMatchObject({ code: 2, err: expect.stringContaining('Its shots: 5.') as string });
    expect(await diff(at, 'a.plate', '--shot', '5')).toMatchObject({ code: 2, err: expect.stringContaining('has no date') as string });
  });
});
