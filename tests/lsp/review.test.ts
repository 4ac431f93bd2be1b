/** What has become of a page since an earlier text, as a panel asks for it, and the line above each setup. */
import type { CodeLens } from 'vscode-languageserver';
import { afterEach, describe, expect, it } from 'vitest';
import { all } from '../drawing/all-marks.ts';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';
import type { AgainstAnswer, AsShotAnswer, EarlierText, ReviewAnswer, ReviewParams } from '../../server/lsp/protocol.ts';

let editor: Editor;
const URI = 'file:///saltmarsh/whelk.plate';
const start = async (settings: Settings = {}): Promise<Editor> => (editor = await startEditor({ options: { opensReview: true }, ...settings }));
const open = async (text: string, settings: Settings = {}): Promise<Page> => (await start(settings)).open(text, URI);
afterEach(() => { editor.close(); });

/** Arms of 500 mm and of 300 + 250 mm, as said. */
const setup = (name: string, legs: { readonly last?: string; readonly inside?: string } = {}): string => `setup "${name}" {
  laser red {
    coherence length: 500 mm
  }
  splitter S1
  object shell
  plate P1
  beam raw from red
    -> S1: 100 mm
  beam reference from S1 through
    -> P1: 500 mm
  beam object from S1 reflected
    -> shell: 300 mm
    -> P1: ${legs.last ?? '250 mm'}
${legs.inside ?? ''}}
`;
const before = (text: string, more: Partial<EarlierText> = {}): { before: ReviewParams['before'] } => ({ before: { text, files: [], ...more } });
const ask = (page: Page, params: object): Promise<ReviewAnswer | null> => page.ask('platewright/review', params);
const reviewed = async (page: Page, params: object): Promise<ReviewAnswer> => (await ask(page, params))!;

describe('a review', () => {
  it('is of the newest text, and says what was written, what comes of it, and where', async () => {
    const page = await open(setup('Whelk'));
    await page.type('250 mm', '290 mm');
    const { version, setups, nothing } = await reviewed(page, before(setup('Whelk')));
    expect(version).toBe(2);
    expect(nothing).toBeUndefined();
    const [whelk] = setups;
    expect(whelk!.changes).toEqual([{ words: 'object: shell → P1', before: '250 mm', after: '290 mm', at: { side: 'after', uri: URI, range: page.range('290 mm') } }]);
    // 290 − 250
    expect(whelk!.headline).toBe('Object beam +40 mm.');
    expect(whelk!.results.find(r => r.words === 'mismatch')).toMatchObject({ before: '50 mm', after: '90 mm', by: '+40 mm', unsure: false });
    expect(whelk!.same).toMatch(/results? (?:are|is) the same/);
    // The arms, since nothing has a place: object, over how it was.
    expect(all(whelk!.sheet!.marks).filter(m => m.attributes['data-item'] === 'before:object.2')).not.toEqual([]);
    expect(whelk!.items.find(i => i.id === 'before:object.2')!.at).toMatchObject({ side: 'before' });
  });
  it('of the same text says that nothing differs', async () => {
    const page = await open(setup('Whelk'));
    expect(await reviewed(page, before(setup('Whelk')))).toMatchObject({ nothing: expect.stringMatching(/^Nothing differs/) as unknown, setups: [{ unchanged: true, changes: [], results: [] }] });
  });
  it('shows what is gone in the earlier text', async () => {
    const page = await open(setup('Whelk'));
    const { setups } = await reviewed(page, before(`\ufeff// first\n${setup('Cockle')}${setup('Whelk', { inside: '  mirror M9\n' })}`));
    const cockle = setups.find(s => s.name === 'Cockle');
    expect(cockle).toMatchObject({ headline: 'This setup is gone.', at: { side: 'before', range: { start: { line: 1 } } } });
    const gone = setups.find(s => s.name === 'Whelk')!.changes.find(c => c.words.includes('M9'))!;
    // A line above both setups; the first has 15, of the second 14 stand above M9. What stands there is its kind, “mirror”.
    expect(gone.at).toEqual({ side: 'before', uri: URI, range: { start: { line: 30, character: 2 }, end: { line: 30, character: 8 } } });
  });
  it('draws a setup that differs, and says where what is drawn stands', async () => {
    const placed = (x: number): string => `setup "Table" {\n  table: 1200 x 900 mm\n  laser red at (60, 100) mm heading 0°\n  mirror M1 at (${String(x)}, 100) mm\n  beam stop B1 at (1000, 700) mm\n  beam raw from red\n    -> M1\n    -> B1\n}\n`;
    const page = await open(placed(1000));
    const [table] = (await reviewed(page, before(placed(900)))).setups;
    expect(all(table!.sheet!.marks).length).toBeGreaterThan(20);
    expect(table!.items.find(i => i.id === 'M1')!.at).toMatchObject({ side: 'after', uri: URI, range: { start: { line: 3 } } });
    expect((await reviewed(page, before(placed(1000)))).setups[0]!.sheet).toBeUndefined();
  });
  it('lists the errors of both, which keep figures from both', async () => {
    const page = await open(setup('Whelk', { last: '290 mm', inside: '  mirrr M8\n' }));
    const [whelk] = (await reviewed(page, before(setup('Whelk', { inside: '  mirrr M8\n' })))).setups;
    expect(whelk!.results.find(r => r.words === 'mismatch')).toMatchObject({ before: '50 mm', after: '90 mm' });
    expect(whelk!.findings.amiss).toMatchObject([{ severity: 'error', at: { side: 'after', range: page.range('mirrr') } }]);
    expect(whelk!.findings.added.concat(whelk!.findings.cured).filter(f => f.severity === 'error')).toEqual([]);
  });
  it('holds a variant against its setup as written', async () => {
    const page = await open(setup('Whelk', { inside: '  variant "longer" {\n    beam object from S1 reflected\n      -> shell: 300 mm\n      -> P1: 290 mm\n  }\n' }) + setup('Cockle'));
    expect(await page.ask<AgainstAnswer>('platewright/against')).toEqual([{ setup: 'Whelk', variants: ['longer'], shots: [] }, { setup: 'Cockle', variants: [], shots: [] }]);
    const { setups, rest } = await reviewed(page, { before: { setup: 'Whelk', variant: 'longer' } });
    expect(setups.map(s => s.title)).toEqual(['Whelk: as written → variant “longer”']);
    expect(setups[0]!.results.find(r => r.words === 'mismatch')).toMatchObject({ before: '50 mm', after: '90 mm' });
    expect(rest).toEqual({ changes: [], findings: { cured: [], added: [], accepted: [], amiss: [], still: 0 } });
    expect(await ask(page, { before: { setup: 'Whelk', variant: 'shorter' } })).toBeNull();
  });
});

describe('a shot', () => {
  const shots = '  shot 1 on 2026-02-01 {\n    outcome: "dull"\n  }\n  measured object at P1: 560 mm on 2026-02-03\n  shot 2\n';
  it('is offered, and tells by its date how the page stood then', async () => {
    const page = await open(setup('Cockle') + setup('Whelk', { inside: shots }));
    expect((await page.ask<AgainstAnswer>('platewright/against'))[1]).toEqual({ setup: 'Whelk', variants: [], shots: [{ name: '1', on: '2026-02-01' }, { name: '2' }] });
    const then = await page.ask<AsShotAnswer>('platewright/asShot', { setup: 'Whelk', shot: '1' });
    // What was measured two days later was not known yet.
    expect(then).toEqual({ on: '2026-02-01', text: page.text.replace('  measured object at P1: 560 mm on 2026-02-03\n', '') });
    const { setups } = await reviewed(page, { ...before(then.text!), setup: 'Whelk' });
    expect(setups.map(s => s.name)).toEqual(['Whelk']);
    expect(setups[0]!.changes).toMatchObject([{ words: expect.stringContaining('measured') as unknown }]);
    // The same text, and all that there is: the other setup is the same.
    expect((await reviewed(page, before(then.text!))).setups.map(s => s.name)).toEqual(['Cockle', 'Whelk']);
  });
  it('without a date tells nothing by itself, and one that is not there is none', async () => {
    const page = await open(setup('Whelk', { inside: shots }));
    expect(await page.ask('platewright/asShot', { setup: 'Whelk', shot: '2' })).toEqual({});
    for (const asked of [{ setup: 'Whelk', shot: '3' }, { setup: 'Cockle', shot: '1' }, {}, { setup: 7, shot: null }]) expect(await page.ask('platewright/asShot', asked)).toBeNull();
  });
  it('is found in a text, whatever else stands there', async () => {
    const page = await open('');
    const has = (text: unknown, shot: unknown): Promise<boolean> => page.ask('platewright/hasShot', { text, shot });
    expect(await has(setup('Whelk', { inside: shots }), '2')).toBe(true);
    expect(await has(setup('Whelk', { inside: shots }), '3')).toBe(false);
    expect(await has(`}{"\n${setup('Whelk', { inside: shots })}`, '1')).toBe(true);
    for (const [text, shot] of [[undefined, '1'], [7, '1'], ['', '1'], [setup('Whelk', { inside: shots }), undefined]]) expect(await has(text, shot)).toBe(false);
  });
});

describe('what an earlier text used', () => {
  const LAB = 'file:///saltmarsh/lab.plate';
  const lab = (length: number): string => `inventory lab {\n  laser red-12 {\n    coherence length: ${String(length)} mm\n  }\n}\n`;
  const text = `use "lab.plate"\n${setup('Whelk').replace('laser red {\n    coherence length: 500 mm\n  }', 'laser red = lab.red-12')}`;
  const now: Settings = { read: uri => Promise.resolve(uri === LAB ? lab(500) : undefined), folder: 'file:///saltmarsh' };

  it('is named until all of it is known', async () => {
    const page = await open(text, now);
    expect(await page.ask('platewright/used', before(text))).toEqual([LAB]);
    expect(await page.ask('platewright/used', before(text, { files: [{ uri: LAB, text: lab(200) }] }))).toEqual([]);
  });
  it('is read as it was; what is not told is read as it is now, and the answer says so', async () => {
    const page = await open(text, now);
    const then = await reviewed(page, before(text, { files: [{ uri: LAB, text: lab(200) }] }));
    expect(then.borrowed).toEqual([]);
    expect(then.setups[0]!.changes).toMatchObject([{ before: '200 mm', after: '500 mm', at: { uri: LAB } }]);
    expect(await reviewed(page, before(text))).toMatchObject({ borrowed: ['lab.plate'], nothing: expect.any(String) as unknown });
    // It was not there.
    expect((await reviewed(page, before(text, { files: [{ uri: LAB, text: null }] }))).rest.findings.cured).toMatchObject([{ code: 'import-unreadable' }]);
  });
  it('is what another file names from where that is', async () => {
    const page = await open(text, now);
    expect(await page.ask('platewright/used', before(text, { uri: 'file:///saltmarsh/last%20year/whelk.plate' }))).toContain('file:///saltmarsh/last%20year/lab.plate');
  });
});

describe('above each setup', () => {
  const tell = (base: object | null): Promise<void> => editor.connection.sendNotification('platewright/base', { textDocument: { uri: URI }, base });
  const lenses = (page: Page): Promise<CodeLens[]> => page.ask('textDocument/codeLens');
  const refreshes = (): { count: number; settings: Settings } => {
    const told = { count: 0, settings: { capabilities: { workspace: { codeLens: { refreshSupport: true } } }, answers: { 'workspace/codeLens/refresh': () => { told.count++; return null; } } } };
    return told;
  };

  it('it says what has changed since the last commit, and nothing where nothing has', async () => {
    const page = await open(setup('Cockle') + setup('Whelk'));
    expect(await lenses(page)).toEqual([]);
    await tell({ text: setup('Cockle') + setup('Whelk'), files: [], since: 'the last commit' });
    expect(await lenses(page)).toEqual([]);
    await page.edit([{ range: page.range('250 mm', page.text.indexOf('Whelk')), newText: '329 mm' }]);
    // 329 − 250
    expect(await lenses(page)).toEqual([{ range: { start: { line: 15, character: 0 }, end: { line: 15, character: 0 } }, command: { title: expect.stringMatching(/^since the last commit: object beam \+79 mm/) as unknown, command: 'platewright.sinceLastCommit', arguments: [URI] } }]);
  });
  it('goes when it is not wanted any more, and the editor is asked to ask again', async () => {
    const told = refreshes();
    const page = await open(setup('Whelk', { last: '329 mm' }), told.settings);
    await tell({ text: setup('Whelk'), files: [], since: 'the last commit' });
    expect(await lenses(page)).toHaveLength(1);
    await tell(null);
    expect(await lenses(page)).toEqual([]);
    expect(told.count).toBe(2);
    // A page that is closed is forgotten.
    await tell({ text: setup('Whelk'), files: [], since: 'the last commit' });
    await page.close();
    expect(await lenses(await editor.open(setup('Whelk', { last: '329 mm' }), URI))).toEqual([]);
  });
  it('is only told to an editor that can show the whole', async () => {
    const page = await open(setup('Whelk', { last: '329 mm' }), { options: {} });
    expect(editor.initialized!.capabilities.codeLensProvider).toBeUndefined();
    await tell({ text: setup('Whelk'), files: [], since: 'the last commit' });
    expect(await lenses(page)).toEqual([]);
  });
});

describe('whatever is sent', () => {
  it.each([
    ['nothing', undefined], ['a word', 'HEAD'], ['a text that is none', { text: 7, files: [] }], ['an address that is none', { text: '', uri: {}, files: [] }], ['half a variant', { setup: 'Whelk' }], ['null', null],
  ])('%s is answered by nothing', async (_, given) => {
    const page = await open(setup('Whelk'));
    expect(await ask(page, { before: given })).toBeNull();
    expect(await page.ask('platewright/used', { before: given })).toEqual([]);
    await editor.connection.sendNotification('platewright/base', { textDocument: { uri: URI }, base: given });
    await editor.connection.sendNotification('platewright/base', { base: given });
    expect(await page.ask('textDocument/codeLens')).toEqual([]);
  });
  it.each([
    ['an empty text', ''], ['letters', '\ufeff\u0000}{{{"\n\r\n setup'], ['half a setup', setup('Whelk').slice(0, 150)], ['markup', setup('<img src=x onerror=alert(1)>')], ['a ring', `use "whelk.plate"\n${setup('Whelk')}`], ['no number', setup('Whelk', { last: '1e999 mm' })],
  ])('%s is compared both ways', async (_, text) => {
    const page = await open(setup('Whelk'));
    const [there, back] = [await reviewed(page, before(text, { files: [{ uri: 'nowhere', text: '}' }] })), await reviewed(await editor.open(text, 'file:///saltmarsh/other.plate'), before(setup('Whelk')))];
    expect(there.nothing).toBeUndefined();
    expect(back.nothing).toBeUndefined();
    expect(JSON.stringify([there, back])).not.toMatch(/NaN|Infinity/);
  });
  it('a page that is not open has no answer, and an answer to a text that has moved on is none', async () => {
    const page = await open(setup('Whelk'));
    const [asked] = [ask(page, before(setup('Cockle'))).then(() => 'answered', (e: unknown) => (e as { code: number }).code)];
    await page.type('250 mm', '260 mm');
    // LSP 3.17, LSPErrorCodes.RequestCancelled
    expect(await asked).toBe(-32800);
    await page.close();
    expect(await ask(page, before(''))).toBeNull();
  });
});
