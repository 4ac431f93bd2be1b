/** Pictures of setups, as a panel asks for them. */
import { afterEach, describe, expect, it } from 'vitest';
import { all } from '../drawing/all-marks.ts';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor, type Page } from './editor.ts';
import type { DragAnswer, PictureAnswer } from '../../server/lsp/protocol.ts';

let editor: Editor;
const open = async (text: string): Promise<Page> => (editor = await startEditor()).open(text);
afterEach(() => editor.close());

const setup = (name: string, ...more: string[]): string => `setup "${name}" {\n  table: 1200 x 900 mm\n  laser red at (60, 100) mm heading 0°\n  mirror M1 at (1000, 100) mm\n  beam stop B1 at (1000, 700) mm\n  beam raw from red\n    -> M1\n    -> B1\n${more.map(l => `  ${l}\n`).join('')}}\n`;
const BALL = `setup "Ball of clay" {
  laser red at (1000, 600) mm heading 180° {
    coherence length: 500 mm
  }
  splitter S1 at (700, 600) mm
  mirror M1 at (300, 600) mm
  mirror M2 at (700, 0) mm
  object ball at (0, 0) mm {
    shape: sphere
    diameter: 40 mm
  }
  plate P1 at (0, 300) mm facing ball {
    size: 100 x 80 mm
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> ball
    -> P1
}
`;
const ask = (page: Page, params: object = {}): Promise<PictureAnswer> => page.ask<PictureAnswer>('platewright/picture', params);

describe('a picture', () => {
  it('is of the setup that the line is in, and says which others there are', async () => {
    const page = await open(setup('Cockle') + setup('Whelk', 'variant "farther" {', '  M1 at (1100, 100) mm', '}'));
    const answer = await ask(page, { line: 12 });
    expect(answer).toMatchObject({ version: 1, setup: 'Whelk', choices: [{ setup: 'Cockle', variants: [] }, { setup: 'Whelk', variants: ['farther'] }] });
    expect((await ask(page, { line: 12, setup: 'Cockle' })).setup).toBe('Cockle');
    expect((await ask(page, { line: 0 })).setup).toBe('Cockle');
  });
  it('of a variant shows what that changes', async () => {
    const page = await open(setup('Whelk', 'variant "farther" {', '  M1 at (1100, 100) mm', '}'));
    const titles = (a: PictureAnswer): string[] => all(a.sheet!.marks).flatMap(m => (m.tag === 'title' ? [m.text!] : []));
    expect(titles(await ask(page))).toContain('mirror M1, (1000, 100) mm');
    expect(titles(await ask(page, { variant: 'farther' }))).toContain('mirror M1, (1100, 100) mm');
    // A variant that is gone: the setup itself.
    expect(titles(await ask(page, { variant: 'nearer' }))).toContain('mirror M1, (1000, 100) mm');
  });
  it('tells where its things and legs stand in the text', async () => {
    const page = await open(setup('Whelk'));
    const answer = await ask(page);
    const items = new Map(answer.items.map(i => [i.id, i]));
    expect(items.get('M1')).toMatchObject({ words: 'mirror M1 at (1000, 100) mm', range: page.range('M1') });
    expect(items.get('raw.2')!.range!.start.line).toBe(7);
    const drawn = new Set(all(answer.sheet!.marks).flatMap(m => m.attributes['data-item'] ?? []));
    expect([...items.keys()].filter(id => !drawn.has(id))).toEqual([]);
  });
  it('of a page without places has no sheet, of a page without setups there is none', async () => {
    const page = await open('setup "String" {\n  laser red\n  mirror M1\n  beam raw from red\n    -> M1: 100 mm\n}\n');
    expect((await ask(page)).sheet).toBeUndefined();
    editor.close();
    expect(await ask(await open('// nothing yet\n'))).toBeNull();
  });
  it('is of the view that is asked for, and says which can be drawn, and why the others cannot', async () => {
    const page = await open(setup('Whelk'));
    const answer = await ask(page, { view: 'object' });
    expect(answer.view).toBe('object');
    expect(answer.sheet).toBeUndefined();
    expect(answer.plates).toEqual([]);
    expect(answer.views[0]).toEqual({ name: 'plan', words: 'the table from above' });
    expect(answer.views.find(v => v.name === 'object')).toEqual({ name: 'object', words: 'the object as the plate sees it', why: 'No light reaches a plate.' });
    // Of a view that there is not the first is drawn.
    expect(await ask(page, { view: 'attic' })).toMatchObject({ view: 'plan', sheet: { title: 'Whelk' } });
  });
  it('of the object is seen from the point of the plate that is asked for, and nothing in it can be dragged', async () => {
    const page = await open(BALL);
    const answer = await ask(page, { view: 'object', viewpoint: { x: 1, y: 0 } });
    expect(all(answer.sheet!.marks).some(m => m.text?.includes('100 % of the way to the right edge'))).toBe(true);
    expect(answer).toMatchObject({ plate: 'P1', plates: ['P1'], items: [{ id: 'ball', drags: [], range: page.range('ball') }] });
    for (const viewpoint of [{ x: 'far' }, { x: 1e9, y: -1e9 }, null]) expect((await ask(page, { view: 'object', viewpoint })).sheet).toBeDefined();
  });
  it('of a map has its figures for a pointer', async () => {
    const { probe } = await ask(await open(BALL), { view: 'brightness' });
    expect(probe).toMatchObject({ columns: 25, rows: 25, words: 'brightness with which the middle of ball records at P1' });
    expect(probe!.values).toHaveLength(625);
    expect(probe!.texts.every(t => /^\d+(?:\.\d)? %$/.test(t))).toBe(true);
  });
  it('holds text as text', async () => {
    const page = await open(setup('<img src=x onerror=alert(1)>'));
    const { sheet } = await ask(page);
    expect(sheet!.title).toBe('<img src=x onerror=alert(1)>');
    expect(new Set(all(sheet!.marks).map(m => m.tag)).has('img')).toBe(false);
  });
});

describe('a drag', () => {
  const drag = (page: Page, params: object): Promise<DragAnswer | null> => page.ask<DragAnswer | null>('platewright/drag', { version: 1, item: 'M1', gesture: 'move', x: 800, y: -200, free: false, dropped: true, ...params });
  it('is answered by the edits that it would write, and the picture that they would give', async () => {
    const page = await open(setup('Whelk'));
    const answer = await drag(page, {});
    if (!answer || 'refused' in answer) throw new Error(JSON.stringify(answer));
    // A sheet has y downwards. The numbers stand in “  mirror M1 at (1000, 100) mm”, the fourth line.
    expect(answer.edits).toEqual([
      { range: { start: { line: 3, character: 22 }, end: { line: 3, character: 25 } }, newText: '200' },
      { range: { start: { line: 3, character: 16 }, end: { line: 3, character: 20 } }, newText: '800' },
    ]);
    expect(answer.picture.items.find(i => i.id === 'M1')!.words).toBe('mirror M1 at (800, 200) mm');
    // Errors are counted of what is written only.
    expect(answer.picture).not.toHaveProperty('errors');
    // nothing is written
    expect((await ask(page)).items.find(i => i.id === 'M1')!.words).toBe('mirror M1 at (1000, 100) mm');
  });
  it('says why something stays, in the picture before, and when it is tried', async () => {
    const page = await open(setup('Whelk', 'mirror M2 at (300 mm ± 2 mm, 400 mm)', 'let gap = 100 mm', 'mirror M3 at (gap, gap)'));
    const { items } = await ask(page);
    expect(items.find(i => i.id === 'M1')).toMatchObject({ drags: ['move'] });
    expect(items.find(i => i.id === 'red')).toMatchObject({ drags: ['move', 'turn'] });
    expect(items.find(i => i.id === 'M2')).toMatchObject({ drags: [], stays: 'was measured (300 mm ± 2 mm); change the figure in the text when you have moved it' });
    expect(await drag(page, { item: 'M3' })).toEqual({ refused: 'M3 stands where gap says: its place is worked out; change that in the text.' });
  });
  it('by a key goes a step from where the thing is, with y downwards', async () => {
    const answer = await drag(await open(setup('Whelk').replace('  laser', '  hole spacing: 25 mm\n  laser')), { x: 0, y: 1, stepped: true });
    if (!answer || 'refused' in answer) throw new Error(JSON.stringify(answer));
    expect(answer.edits.map(e => e.newText)).toEqual(['75']);
  });
  it('in another view is refused', async () => {
    expect(await drag(await open(BALL), { view: 'object', item: 'M1' })).toEqual({ refused: 'Things are moved on the table from above only.' });
  });
  it('of an older text is not answered', async () => {
    const page = await open(setup('Whelk'));
    expect(await drag(page, { version: 0 })).toBeNull();
  });
  it.each([{ item: 7 }, { x: 'here' }, { item: 'nobody' }, { x: 1e300 }, { gesture: 'fold' }])('with %o throws nothing', async params => {
    expect(await drag(await open(setup('Whelk')), params)).not.toBeUndefined();
  });
});

it('tells the figures that somebody watches while a thing is moved', async () => {
  // 84 mm too long, as the page of the README says; of several modes a tube of 350 mm has 3 or 4
  const { figures } = await ask(await open(whelk));
  expect(figures.map(f => f.label)).toEqual(['mismatch', 'darkest part of whelk']);
  expect(figures[0]!.text).toMatch(/^84 ± \d mm$/);
});
