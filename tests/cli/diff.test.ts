// `platewright diff` and `log` as they are run, in folders and in real git repositories.
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command, folder, matched, platewright, type Ended } from './command.ts';
import { made, type Made } from './git/made.ts';
import { bySchema } from './schema.ts';

// S1–cockle 1171 mm + cockle–P1 300 mm = 1471 mm, as the reference; 1221 mm makes the object beam 50 mm longer.
const longer = (page = matched()): string => page.replace('1171 mm', '1221 mm');
const diff = (cwd: string, ...args: string[]): Ended => platewright(['diff', ...args], { cwd });
const words = ({ out }: Ended): string => out.replace(/\s+/g, ' ');

interface Diff { before: string; after: string; files: { file: string; before: string | null; after: string | null; headline: string[]; setups: { results: { name: string; by: number | null; sure: boolean }[]; changes: { kind: string; name: string }[] }[] }[]; unread: string[]; summary: Record<string, number> }
const json = (cwd: string, ...args: string[]): Diff => bySchema(diff(cwd, ...args, '--format', 'json').out) as Diff;

describe('two files', () => {
  const at = folder({ 'old.plate': matched(), 'new.plate': longer(), 'same.plate': `// tidied\n${matched().replaceAll('  ', '\t')}` });
  it('end with 1 where something differs, and with 0 where only the looks of the text do', () => {
    const found = diff(at, 'old.plate', 'new.plate');
    expect(found).toMatchObject({ code: 1, err: '' });
    expect(words(found)).toContain('Object beam +50 mm');
    expect(words(found)).toContain('object: S1 → cockle: 1171 mm → 1221 mm');
    expect(diff(at, 'old.plate', 'same.plate')).toEqual({ code: 0, err: '', out: 'Nothing differs that changes anything: no statement, no result, no finding.\n' });
  });
  it('as JSON, by the schema', () => {
    const { files, summary, before, after } = json(at, 'old.plate', 'new.plate');
    expect([before, after, files.length, files[0]!.headline]).toEqual(['old.plate', 'new.plate', 1, [expect.stringMatching(/^Cockle: object beam \+50 mm/)]]);
    expect(files[0]!.setups[0]!.results.find(r => r.name === 'P1.object.length')).toMatchObject({ by: 0.05, sure: true });
    expect(summary).toMatchObject({ files: 1, setups: 1, changes: 1 });
    expect(json(at, 'old.plate', 'same.plate').files).toEqual([]);
  });
  it('as Markdown, and as a page of HTML that is written beside them', () => {
    expect(diff(at, 'old.plate', 'new.plate', '--format', 'markdown').out).toContain('`1171 mm` → `1221 mm`');
    expect(diff(at, 'old.plate', 'new.plate', '--format', 'html', '-o', 'review.html')).toEqual({ code: 1, err: '', out: 'review.html: written\n' });
    const page = readFileSync(join(at, 'review.html'), 'utf8');
    expect(page).toMatch(/^<!doctype html>/);
    expect(page).toContain('<del><code>1171 mm</code></del> → <ins><code>1221 mm</code></ins>');
    expect(diff(at, 'old.plate', 'new.plate', '-o', 'page.plate')).toMatchObject({ code: 2, err: expect.stringContaining('as a setup does') as string });
  });
  it('as a picture, of the table or of the arms; else it says why not', () => {
    const placed = readFileSync('examples/whelk-on-the-table.plate', 'utf8').replace('use "saltmarsh-lab.plate"', '').replaceAll(/ = lab\.[\w-]+/g, '');
    const two = folder({ 'a.plate': placed, 'b.plate': placed.replace('(400, 640) mm', '(400, 682) mm') });
    const { out, code } = diff(two, 'a.plate', 'b.plate', '--format', 'svg');
    expect(code).toBe(1);
    expect(out).toMatch(/^<\?xml[^]*<svg[^]*before:M3[^]*moved 42 mm/);
    expect(diff(two, 'a.plate', 'b.plate', '--format', 'html').out).toMatch(/<figure><svg[^]*moved 42 mm[^]*<\/figure>/);
    expect(diff(two, 'a.plate', 'a.plate', '--format', 'svg')).toMatchObject({ code: 2, err: expect.stringContaining('No setup differs') as string });
    // By strings alone: the arms.
    expect(diff(at, 'old.plate', 'new.plate', '--format', 'svg')).toMatchObject({ code: 1, err: '', out: expect.stringMatching(/^<\?xml[^]*before:object\.1/) as string });
    const bare = folder({ 'a.plate': 'setup "Bare" {\n  laser red\n}\n', 'b.plate': 'setup "Bare" {\n  laser red\n  mirror M1\n}\n' });
    expect(diff(bare, 'a.plate', 'b.plate', '--format', 'svg')).toMatchObject({ code: 3, err: expect.stringContaining('has a place') as string });
  });
  it('that are not there, or one alone', () => {
    expect(diff(at, 'old.plate', 'none.plate')).toMatchObject({ code: 3, out: '', err: expect.stringContaining('none.plate cannot be read') as string });
    expect(diff(at, 'old.plate')).toMatchObject({ code: 2, err: expect.stringContaining('platewright diff --git HEAD old.plate') as string });
    expect(diff(at, 'old.plate', 'new.plate', 'same.plate').code).toBe(2);
    expect(diff(at, 'old.plate', 'new.plate', '--setup', 'Whelk')).toMatchObject({ code: 2, err: expect.stringContaining('No page has a setup “Whelk”') as string });
  });
  it('one of them broken: what can be compared is, with the errors of that side', () => {
    const broken = folder({ 'a.plate': matched(), 'b.plate': longer().replace('plate P1', 'plate P1 {') });
    const found = diff(broken, 'a.plate', 'b.plate');
    expect(found.code).toBe(1);
    expect(words(found)).toContain('1171 mm → 1221 mm');
    expect(words(found)).toMatch(/new error/);
  });
});

it('two folders: page by page, what is new and what is gone', () => {
  const at = folder({ 'then/a.plate': matched(), 'then/gone.plate': matched('', 'Gone'), 'then/deep/same.plate': matched(), 'now/a.plate': longer(), 'now/new.plate': matched('', 'New'), 'now/deep/same.plate': matched() });
  expect(json(at, 'then', 'now').files.map(f => [f.file, f.before, f.after])).toEqual([['now/a.plate', 'then/a.plate', 'now/a.plate'], ['then/gone.plate', 'then/gone.plate', null], ['now/new.plate', null, 'now/new.plate']]);
  expect(diff(at, 'then', 'now/a.plate').code).toBe(2);
  mkdirSync(join(at, 'empty'));
  expect(diff(at, 'then', 'empty')).toMatchObject({ code: 3, err: expect.stringContaining('no .plate file') as string });
});

describe('variants', () => {
  const at = folder({ 'a.plate': matched('  variant "long" {\n    S1 -> cockle: 1221 mm\n  }\n  variant "longer" {\n    S1 -> cockle: 1231 mm\n  }\n') });
  it('against the setup as written, and against each other', () => {
    expect(words(diff(at, 'a.plate', '--variant', 'long'))).toContain('Cockle: as written → variant “long” a.plate');
    expect(json(at, 'a.plate', '--variant', 'long').files[0]!.setups[0]!.results.find(r => r.name === 'P1.object.length')!.by).toBe(0.05);
    // 1231 − 1221 = 10 mm
    expect(json(at, 'a.plate', '--variant', 'long', '--variant', 'longer').files[0]!.setups[0]).toMatchObject({ changes: [{ kind: 'set', name: 'object: S1 → cockle' }], results: expect.arrayContaining([expect.objectContaining({ name: 'P1.object.length', by: 0.01 })]) as unknown });
  });
  it('that there are not', () => {
    expect(diff(at, 'a.plate', '--variant', 'lng')).toMatchObject({ code: 2, err: expect.stringContaining('Did you mean “long”?') as string });
    expect(diff(at, 'a.plate', '--variant', 'long', '--git')).toMatchObject({ code: 2, err: expect.stringContaining('one at a time') as string });
  });
});

/** A page in four revisions: renamed on the way, changed, only tidied; with an inventory that changes once. */
function bench(): Made {
  const page = `use "lab.plate"\n${matched().replace('plate P1', 'plate P1 = lab.fine')}`;
  const lab = (sensitivity: number): string => `inventory lab {\n  plate fine {\n    sensitivity: ${sensitivity} µJ/cm²\n  }\n}\n`;
  const shop = made({ 'old.plate': page, 'lab.plate': lab(40) });
  shop.commit('as set up');
  shop.git('mv', 'old.plate', 'cockle.plate');
  shop.commit('another name');
  shop.write({ 'cockle.plate': longer(page) }).commit('object further back');
  shop.write({ 'cockle.plate': `// tidied\n${longer(page)}` }).commit('tidied');
  shop.write({ 'lab.plate': lab(80) }).commit('another box of plates');
  return shop;
}

describe('revisions', () => {
  const shop = bench();
  it('one, against what is on disk', () => {
    expect(diff(shop.at, '--git', 'HEAD', '.').code).toBe(0);
    expect(words(diff(shop.at, '--git', 'HEAD~1', 'cockle.plate'))).toContain('P1.sensitivity: 40 µJ/cm² → 80 µJ/cm²');
    expect(json(shop.at, '--git', 'HEAD~4', 'cockle.plate')).toMatchObject({ before: expect.stringMatching(/^HEAD~4 \([0-9a-f]{7}\)$/) as string, files: [{ before: 'old.plate', after: 'cockle.plate', headline: [expect.stringMatching(/^Cockle: object beam \+50 mm/)] }] });
  });
  it('two, against each other', () => {
    expect(json(shop.at, '--git', 'HEAD~3', 'HEAD~1', 'cockle.plate').files[0]!.setups[0]!.changes.map(c => c.name)).toEqual(['object: S1 → cockle']);
    expect(diff(shop.at, '--git', 'HEAD~2', 'HEAD~1', 'cockle.plate').code).toBe(0);
  });
  it('a folder: a change of the inventory shows in it and in the page that uses it', () => {
    expect(json(shop.at, '--git', 'HEAD~1', '.').files.map(f => f.file)).toEqual(['cockle.plate', 'lab.plate']);
  });
  it('that there are not, or no repository', () => {
    expect(diff(shop.at, '--git', 'nowhere', '.')).toMatchObject({ code: 2, err: expect.stringContaining('There is no revision “nowhere”') as string });
    expect(diff(shop.at, '--git', '--output=x', '.').code).toBe(2);
    expect(diff(folder({ 'a.plate': matched() }), '--git', 'HEAD', 'a.plate')).toMatchObject({ code: 3, err: expect.stringContaining('lies in no git repository') as string });
    expect(diff(shop.at, '--git', 'HEAD').code).toBe(2);
  });
});

describe('git itself', () => {
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
});

describe('log', () => {
  interface Log { revisions: { id: string | null; subject: string | null; file: string; same: boolean; told: { setup: string | null; words: string }[] }[] }
  const shop = bench();
  const log = (...args: string[]): Log => bySchema(platewright(['log', 'cockle.plate', '--format', 'json', ...args], { cwd: shop.at }).out) as Log;
  it('tells each revision by its effect, the newest first, back through the renaming, and those of the inventory', () => {
    expect(log().revisions.map(r => [r.subject, r.file, r.told.map(t => t.words)])).toEqual([
      ['another box of plates', 'cockle.plate', [expect.stringMatching(/^1 change, no result/)]], ['tidied', 'cockle.plate', []], ['object further back', 'cockle.plate', [expect.stringMatching(/^object beam \+50 mm/)]],
      ['another name', 'cockle.plate', []], ['as set up', 'old.plate', ['a new setup', 'outside the setups: 1 change']],
    ]);
    expect(log().revisions.map(r => r.same)).toEqual([false, true, false, true, false]);
    expect(log('--max', '2').revisions).toHaveLength(2);
  });
  it('begins with what is not committed yet', () => {
    const kept = readFileSync(shop.path('cockle.plate'), 'utf8');
    shop.write({ 'cockle.plate': kept.replace('1221', '1231') });
    expect(log().revisions[0]).toMatchObject({ id: null, subject: null, told: [{ setup: 'Cockle', words: expect.stringMatching(/^object beam \+10 mm/) as string }] });
    shop.write({ 'cockle.plate': kept });
  });
  it('as text and Markdown', () => {
    const { out, code } = platewright(['log', 'cockle.plate'], { cwd: shop.at });
    expect(code).toBe(0);
    expect(out).toMatch(/2026-02-14 21:02 [0-9a-f]{7} object further back\n {4}Cockle: object beam \+50 mm/);
    expect(platewright(['log', 'cockle.plate', '--format', 'markdown'], { cwd: shop.at }).out).toMatch(/- 2026-02-14 21:03 `[0-9a-f]{7}` tidied\n {2}- nothing that changes anything/);
  });
  it('goes over a revision that cannot be read, and over one without the page', () => {
    const rough = made({ 'a.plate': matched() });
    rough.commit('one');
    rough.write({ 'a.plate': Buffer.from([0, 1, 2]) }).commit('no text');
    rough.remove('a.plate').commit('gone');
    rough.write({ 'a.plate': longer() }).commit('back');
    const { revisions } = bySchema(platewright(['log', 'a.plate', '--format', 'json'], { cwd: rough.at }).out) as Log;
    expect(revisions.map(r => r.told[0]!.words)).toEqual(['a new setup', 'the page is gone', expect.stringContaining('cannot be read'), 'a new setup']);
  });
  it('without a repository, or of nothing', () => {
    expect(platewright(['log', 'a.plate'], { cwd: folder({ 'a.plate': matched() }) })).toMatchObject({ code: 3, err: expect.stringContaining('no git repository') as string });
    expect(platewright(['log', 'none.plate'], { cwd: shop.at }).code).toBe(3);
    expect(platewright(['log', 'cockle.plate', '--max', '0'], { cwd: shop.at }).code).toBe(2);
  });
});

describe('a shot', () => {
  const shots = '  shot 3 on 2026-02-11 {\n    outcome: "bright"\n  }\n';
  const later = '  measured S1 -> cockle: 1190 mm ± 2 mm by string on 2026-02-20\n  shot 4 on 2026-02-21 {\n    outcome: "dull"\n  }\n';
  it('by the dates on the page, where there is no git', () => {
    const at = folder({ 'a.plate': matched(shots + later) });
    const found = json(at, 'a.plate', '--shot', '3');
    expect(found.before).toBe('shot 3 on 2026-02-11, by the dates on the page');
    expect(found.files[0]!.setups[0]!.changes.map(c => [c.kind, c.name])).toEqual([['added', 'S1 -> cockle'], ['added', 'shot 4']]);
    // The string says 1190 mm where the page says 1171 mm.
    expect(found.files[0]!.setups[0]!.results.find(r => r.name === 'P1.object.length')!.by).toBeCloseTo(0.019, 9);
    expect(diff(at, 'a.plate', '--shot', '4').code).toBe(0);
  });
  it('by the revision in which it was first written down', () => {
    const shop = made({ 'a.plate': matched() });
    shop.commit('set up');
    shop.write({ 'a.plate': matched(shots) }).commit('three shot');
    shop.write({ 'a.plate': longer(matched(shots)) }).commit('further back');
    const found = json(shop.at, 'a.plate', '--shot', '3');
    expect(found.before).toMatch(/^shot 3 on 2026-02-11, as committed in [0-9a-f]{7}$/);
    expect(found.files[0]!.setups[0]!.results.find(r => r.name === 'P1.object.length')!.by).toBe(0.05);
  });
  it('that there is not, or that nothing dates', () => {
    const at = folder({ 'a.plate': matched('  shot 5 {\n    outcome: "bright"\n  }\n') });
    expect(diff(at, 'a.plate', '--shot', '3')).toMatchObject({ code: 2, err: expect.stringContaining('Its shots: 5.') as string });
    expect(diff(at, 'a.plate', '--shot', '5')).toMatchObject({ code: 2, err: expect.stringContaining('has no date') as string });
  });
});
