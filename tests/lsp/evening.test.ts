/** The evening as an editor asks for it: what to read, the line of a reading, the entry of a shot, its outcome. Nothing is written by the server. */
import { afterEach, describe, expect, it, test } from 'vitest';
import type { EnterAnswer, LossesAnswer, OutcomeAnswer, ReadingsAnswer, ShootAnswer, ShotAnswer } from '../../server/lsp/protocol.ts';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor, type Page } from './editor.ts';

let editor: Editor;
afterEach(() => editor.close());
const opened = async (text = whelk): Promise<Page> => (editor = await startEditor()).open(text);
const also = (more: string): string => whelk.replace(/\}\s*$/, `${more}}\n`);
const two = whelk + whelk.replace('"Whelk shell"', '"Cockle"');
const second = whelk.split('\n').length + 2;

describe('readings', () => {
  it('are listed with what they should come to, in what unit, and what the page has of them', async () => {
    const page = await opened(also('  measured S1 -> M1: 752 mm ± 2 mm by string on 2026-02-18T21:30\n'));
    const answer = await page.ask<ReadingsAnswer>('platewright/readings', { line: 3, day: '2026-02-18' });
    expect(answer.setup).toBe('Whelk shell');
    expect(answer.readings.find(r => r.subject === 'S1 -> M1')).toMatchObject({ what: 'S1 → M1', unit: 'mm', by: 'string', read: '752 mm ± 2 mm, on 2026-02-18 at 21:30', today: true });
    expect(answer.readings.find(r => r.subject === 'M1 -> P1')).toMatchObject({ expected: '721 ± 2 mm', today: false });
  });
  it('are those of the setup with the cursor, or of the one that is named', async () => {
    const page = await opened(two);
    expect((await page.ask<ReadingsAnswer>('platewright/readings', { line: second, day: '2026-02-18' })).setup).toBe('Cockle');
    expect((await page.ask<ReadingsAnswer>('platewright/readings', { line: 0, setup: 'Cockle', day: '2026-02-18' })).setup).toBe('Cockle');
  });
  it('of a page without a setup there are none', async () => { expect(await (await opened('// a note\n')).ask('platewright/readings', { line: 0, day: '2026-02-18' })).toBeNull(); });
  it('are entered one after the other, each of the page as it is then', async () => {
    const page = await opened();
    for (const [subject, value] of [['S1 -> M1', '751 ± 2'], ['M1 -> P1', '720 ± 2']] as const) {
      const answer = await page.ask<EnterAnswer>('platewright/enterReading', { setup: 'Whelk shell', subject, value, on: '2026-02-18T21:40' });
      if ('refused' in answer) throw new Error(answer.refused);
      expect(answer.agrees).toBe(true);
      await page.apply({ documentChanges: [{ textDocument: { uri: page.uri, version: answer.version }, edits: [...answer.edits] }] });
    }
    expect(page.text).toBe(whelk.replace(/\}\s*$/, '\n  measured S1 -> M1: 751 ± 2 mm on 2026-02-18T21:40\n  measured M1 -> P1: 720 ± 2 mm on 2026-02-18T21:40\n}\n'));
  });
  it('writes behind a mark at the start of the file as well', async () => {
    const page = await opened(`\ufeff${whelk}`);
    const answer = await page.ask<EnterAnswer>('platewright/enterReading', { subject: 'S1 -> M1', value: '751', on: '2026-02-18T21:40' });
    expect('edits' in answer && answer.edits[0]!.newText).toContain('measured S1 -> M1: 751 mm');
  });
  test.each([
    ['what nobody asks for', { subject: 'M7 -> M8', value: '3', on: '2026-02-18T21:40' }, /The page has changed/], ['a value that is no text', { subject: 'S1 -> M1', value: 7, on: '2026-02-18T21:40' }, /The page has changed/],
    ['a day that is none', { subject: 'S1 -> M1', value: '7', on: '2026-02-31T21:40' }, /gives no day/], ['no day', { subject: 'S1 -> M1', value: '7' }, /gives no day/], ['a day with more behind it', { subject: 'S1 -> M1', value: '7', on: '2026-02-18T21:40\n}' }, /gives no day/],
  ])('refuses %s', async (_, more, why) => { expect(await (await opened()).ask('platewright/enterReading', more)).toMatchObject({ refused: expect.stringMatching(why) as string }); });
});

describe('losses', () => {
  it('come as edits, and what is open as sentences', async () => {
    const page = await opened(also('  measured object at M2: 7.6 mW ± 1%\n  measured object at M3: 6.84 mW ± 1%\n'));
    const answer = await page.ask<LossesAnswer>('platewright/losses', { line: 0 });
    expect(answer.losses.map(l => l.words)).toEqual(['M2 loses 10.0 % ± 1.5 points']);
    await page.apply({ documentChanges: [{ textDocument: { uri: page.uri, version: answer.version }, edits: [...answer.losses[0]!.edits] }] });
    expect(page.text).toContain('  mirror M2 {\n    loss: 10.0% ± 0.7 points std\n  }\n');
    expect(answer.open.join(' ')).toMatch(/read the bare beam/);
  });
});

describe('a shot', () => {
  const timed = also('  settle: 90 s\n  exposure: 20 s\n');
  it('is gone through with what the page has', async () => {
    const answer = await (await opened(timed)).ask<ShootAnswer>('platewright/shoot', { line: 0, day: '2026-02-18' });
    expect(answer).toMatchObject({ setup: 'Whelk shell', shot: '1', settle: 90, openings: [{ seconds: 20 }], dim: { hue: 'black' }, notes: [] });
  });
  it('tells of a clock that is before the last shot', async () => { expect(await (await opened(also('  shot 4 on 2026-03-01 {\n  }\n'))).ask('platewright/shoot', { line: 0, day: '2026-02-18' })).toMatchObject({ shot: '5', notes: [expect.stringMatching(/see whether the clock of this computer is right/)] }); });
  it('needs a setup, and a plate in it', async () => {
    const page = await opened('setup "A" {\n  laser red\n}\n');
    expect(await page.ask('platewright/shoot', { line: 0, day: '2026-02-18' })).toEqual({ refused: '“A” has no plate, so that there is nothing to shoot.' });
    expect(await (await editor.open('', 'file:///saltmarsh/b.plate')).ask('platewright/shoot', { line: 0, day: '2026-02-18' })).toEqual({ refused: 'There is no setup on the page.' });
  });
  it('is written as it went', async () => {
    const page = await opened(timed);
    const answer = await page.ask<ShotAnswer>('platewright/shot', { setup: 'Whelk shell', on: '2026-02-18', exposures: [{ seconds: 7 }], settle: 95, note: 'the shutter was closed after 7 s of 20 s' });
    if ('refused' in answer) throw new Error(answer.refused);
    await page.apply({ documentChanges: [{ textDocument: { uri: page.uri, version: answer.version }, edits: [...answer.edits] }] });
    expect(page.text).toMatch(/\n {2}shot 1 on 2026-02-18 \{\n {4}exposure: 7 s\n {4}settle: 95 s\n {4}note: "object − reference 84 ± 7 mm; the shutter was closed after 7 s of 20 s"\n {2}\}\n\}\n$/);
    expect((await page.findings()).filter(d => d.severity === 1)).toEqual([]);
  });
  test.each([
    ['in a setup that is gone', { setup: 'Cockle', on: '2026-02-18', exposures: [{ seconds: 7 }] }, /is not on the page any more/], ['of no length', { setup: 'Whelk shell', on: '2026-02-18', exposures: [{ seconds: 0 }] }, /is not known/], ['of an odd length', { setup: 'Whelk shell', on: '2026-02-18', exposures: [{ seconds: 'x' }] }, /is not known/],
    ['of none', { setup: 'Whelk shell', on: '2026-02-18', exposures: [] }, /is not known/], ['by a name that is none', { setup: 'Whelk shell', on: '2026-02-18', exposures: [{ name: 7, seconds: 7 }] }, /is not known/],
    ['without a day', { setup: 'Whelk shell', exposures: [{ seconds: 7 }] }, /gives no day/],
  ])('%s is refused', async (_, more, why) => { expect(await (await opened()).ask('platewright/shot', more)).toMatchObject({ refused: expect.stringMatching(why) as string }); });
  it('is not written into another setup of the page', async () => { expect(await (await opened(two)).ask('platewright/shot', { setup: 'Limpet', on: '2026-02-18', exposures: [{ seconds: 7 }] })).toHaveProperty('refused'); });
});

describe('an outcome', () => {
  const shot = also('  shot 1 on 2026-02-11 {\n    exposure: 20 s\n  }\n');
  it('is asked for, and written', async () => {
    const page = await opened(shot);
    const open = await page.ask<OutcomeAnswer>('platewright/outcome', { line: 2 });
    expect(open).toMatchObject({ setup: 'Whelk shell', shot: '1', on: '2026-02-11', more: 0, known: expect.arrayContaining(['wood grain']) as string[] });
    const answer = await page.ask<OutcomeAnswer>('platewright/outcome', { setup: 'Whelk shell', shot: '1', words: 'dull at the back' });
    if (!('edits' in answer)) throw new Error(JSON.stringify(answer));
    await page.apply({ documentChanges: [{ textDocument: { uri: page.uri, version: answer.version }, edits: [...answer.edits] }] });
    expect(page.text).toBe(shot.replace('exposure: 20 s\n', 'exposure: 20 s\n    outcome: "dull at the back"\n'));
    expect(await page.ask('platewright/outcome', { line: 2 })).toEqual({ refused: expect.stringMatching(/has its outcome already/) as string });
  });
  it('without a shot is said to be one', async () => { expect(await (await opened()).ask('platewright/outcome', { line: 2 })).toEqual({ refused: expect.stringMatching(/^There is no shot in “Whelk shell” yet/) as string }); });
});
