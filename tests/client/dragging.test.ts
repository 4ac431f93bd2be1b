/** What the panel does with a drag: once let go it is one change of the text that the picture was of, or nothing and a reason. */
import { describe, expect, test } from 'vitest';
import { follow, type Change, type Page } from '../../client/plan/dragging.ts';
import type { Drag } from '../../client/plan/messages.ts';
import type { DragAnswer, DragParams, PictureAnswer } from '../../server/lsp/protocol.ts';

const range = (from: number, to: number): Change['range'] => ({ start: { line: 2, character: from }, end: { line: 2, character: to } });
const TEXT = '  mirror M1 at (1100, 100) mm';
const [X, Y] = [range(16, 20), range(22, 25)];
const picture: PictureAnswer = {
  version: 7, setup: 'Whelk', choices: [], view: 'plan', views: [], plates: [], sheet: { title: 'Whelk', box: { x: 0, y: 0, w: 1, h: 1 }, marks: [] }, figures: [{ label: 'mismatch', text: '3 mm' }], dim: { hue: 'black', why: 'There is no safelight.' }, errors: 0,
  items: [{ id: 'M1', words: 'mirror M1 at (1000, 100) mm', range: X, drags: ['move'], x: 1000, y: -100 }],
};
const MOVED: DragAnswer = { version: 7, edits: [{ range: Y, newText: '100' }, { range: X, newText: '1000' }], picture };
const DRAG: Drag = { kind: 'drag', n: 3, item: 'M1', gesture: 'move', x: 1003, y: -99, stepped: false, free: false, dropped: true };

function desk({ answer = MOVED, versions = [7], takes = true }: { answer?: DragAnswer | undefined; versions?: number[]; takes?: boolean } = {}) {
  const asked: DragParams[] = [];
  const written: (readonly Change[])[] = [];
  const page: Page = {
    version: () => (versions.length > 1 ? versions.shift()! : versions[0]!),
    textAt: ({ start, end }) => TEXT.slice(start.character, end.character),
    ask: params => { asked.push(params); return Promise.resolve(answer); },
    write: changes => { written.push(changes); return Promise.resolve(takes); },
  };
  return { page, asked, written };
}
const seen = { wanted: { textDocument: { uri: 'file:///saltmarsh/whelk.plate' }, setup: 'Whelk', view: 'plan' }, version: 7 };

describe('a drag', () => {
  test('that goes on shows what would be, and writes nothing', async () => {
    const { page, asked, written } = desk();
    expect(await follow(page, seen, { ...DRAG, dropped: false })).toEqual({
      kind: 'would', n: 3, would: { sheet: picture.sheet, figures: picture.figures, items: [{ id: 'M1', words: 'mirror M1 at (1000, 100) mm', written: true, drags: ['move'], stays: undefined, x: 1000, y: -100 }] },
    });
    expect(asked).toEqual([{ ...seen.wanted, version: 7, item: 'M1', gesture: 'move', x: 1003, y: -99, stepped: false, free: false, dropped: false }]);
    expect(written).toEqual([]);
  });
  test('that is let go is one change, of what differs', async () => {
    const { page, written } = desk();
    expect(await follow(page, seen, DRAG)).toEqual({ kind: 'would', n: 3 });
    expect(written).toEqual([[{ range: X, newText: '1000' }]]);
  });
  test('that ends where it began writes nothing', async () => {
    const { page, written } = desk({ answer: { ...MOVED, edits: [{ range: X, newText: '1100' }] } });
    expect(await follow(page, seen, DRAG)).toEqual({ kind: 'would', n: 3 });
    expect(written).toEqual([]);
  });
  test.each([
    ['of another text than the picture', { versions: [8] }, 0, /has changed meanwhile/], ['whose text moves on while it is asked', { versions: [7, 8] }, 1, /has changed meanwhile/],
    ['that the server answers of another text', { answer: { ...MOVED, version: 6 } }, 1, /has changed meanwhile/], ['that is refused', { answer: { refused: 'M1 cannot go that far.' } }, 1, /^M1 cannot go that far\.$/],
  ])('%s writes nothing and says so', async (_, of, questions, words) => {
    const { page, asked, written } = desk(of);
    expect((await follow(page, seen, DRAG)).words).toMatch(words);
    expect([asked.length, written]).toEqual([questions, []]);
  });
  test('without an answer writes nothing and says so', async () => {
    const { page, written } = desk();
    expect((await follow({ ...page, ask: () => Promise.resolve(undefined) }, seen, DRAG)).words).toMatch(/has changed meanwhile/);
    expect(written).toEqual([]);
  });
  test('that the editor does not take says so', async () => { expect((await follow(desk({ takes: false }).page, seen, DRAG)).words).toMatch(/did not take/); });
});
