/** How lines come onto a page, and how readings are asked for: with an editor that is made up. */
import { describe, expect, it, test } from 'vitest';
import { add, MOVED_ON, NOT_ASKED, NOT_TAKEN, type Paper } from '../../client/evening/adding.ts';
import { enterReadings, firstOf, NO_ANSWER, NO_SETUP, NOTHING, type Desk, type Entered, type Question, type Reading } from '../../client/evening/readings-asked.ts';
import { dayOf, minuteOf } from '../../server/lsp/stamp.ts';
import { isFromPage, isRun, isToPage } from '../../client/shoot/messages.ts';
import { fresh, open, settle } from '../../client/shoot/run.ts';

const LINE = { version: 3, edits: [] };

describe('a line', () => {
  function paper(of: Partial<Paper<typeof LINE>> = {}) {
    const did: string[] = [];
    return { did, paper: { version: () => 3, ask: () => { did.push('ask'); return Promise.resolve(LINE); }, write: () => { did.push('write'); return Promise.resolve(true); }, save: () => { did.push('save'); return Promise.resolve(true); }, ...of } satisfies Paper<typeof LINE> };
  }
  it('is asked for, written and saved', async () => { const { did, paper: p } = paper(); expect(await add(p)).toEqual({ kind: 'written', answer: LINE, saved: true }); expect(did).toEqual(['ask', 'write', 'save']); });
  it('is made anew for a text that has moved on, and never written into another', async () => {
    const versions = [4, 4, 3];
    const { did, paper: p } = paper({ version: () => versions.shift() ?? 3 });
    expect(await add(p)).toMatchObject({ kind: 'written' });
    expect(did).toEqual(['ask', 'ask', 'ask', 'write', 'save']);
  });
  it('is asked for again when a newer text overtakes the question', async () => { const answers = ['superseded', LINE] as const; let n = 0; expect(await add(paper({ ask: () => Promise.resolve(answers[n++]!) }).paper)).toMatchObject({ kind: 'written' }); });
  it('is given up on a page that never rests, and that is said', async () => { const { did, paper: p } = paper({ version: () => 9 }); expect(await add(p)).toEqual({ kind: 'not', words: MOVED_ON }); expect(did).not.toContain('write'); });
  it('on a full disk stands on the page, and is said to be unsaved', async () => {
    expect(await add(paper({ save: () => Promise.resolve(false) }).paper)).toEqual({ kind: 'written', answer: LINE, saved: false });
    expect(await add(paper({ save: () => Promise.reject(new Error('no space left on device')) }).paper)).toMatchObject({ kind: 'written', saved: false });
  });
  test.each([['none', NOT_ASKED], ['failed', NOT_ASKED], [{ refused: 'A brace is missing.' }, 'A brace is missing.']] as const)('%j: is not written, and that is said', async (answer, words) => { const { did, paper: p } = paper({ ask: () => Promise.resolve(answer) }); expect(await add(p)).toEqual({ kind: 'not', words }); expect(did).toEqual([]); });
  it('that the editor does not take is said not to be written', async () => { expect(await add(paper({ write: () => Promise.resolve(false) }).paper)).toEqual({ kind: 'not', words: NOT_TAKEN }); });
});

describe('readings', () => {
  const reading = (subject: string, more: Partial<Reading> = {}): Reading => ({ subject, group: 'legs', what: subject.replace('->', '→'), how: 'string from middle to middle', expected: '750 ± 2 mm', known: '', unit: 'mm', today: false, ...more });
  const LIST = [reading('S1 -> M1'), reading('M1 -> P1', { by: 'thread', read: '721 mm, on 2026-02-11' }), reading('raw at S1', { group: 'light', unit: 'mW', expected: '', known: 'nothing on the page tells' })];
  const made = (line: string, agrees = true, findings: string[] = []): Awaited<ReturnType<Desk['enter']>> => ({ kind: 'written', saved: true, answer: { version: 1, edits: [], line, says: `${line}.`, agrees, findings } satisfies Entered });
  /** Answers each question in turn; what is left over ends it. */
  async function asked(answers: (string | { to: 'back' | 'list' } | undefined)[], of: Partial<Desk> = {}) {
    const did: string[] = [];
    const questions: Question[] = [];
    await enterReadings({
      list: () => Promise.resolve({ setup: 'Whelk', readings: LIST }), choose: (_, first) => { did.push(`choose ${first}`); return Promise.resolve(first); }, ask: q => { questions.push(q); return Promise.resolve(answers.shift()); },
      enter: (setup, subject, value) => { did.push(`${setup}: ${subject} = ${value}`); return Promise.resolve(made(`${subject} = ${value}`)); }, unsaved: line => { did.push(`unsaved ${line}`); }, say: (words, kind) => { did.push(`${kind}: ${words}`); },
      done: (n, disagree, losses) => { did.push(`done ${n}, ${disagree.length} disagree${losses ? ', losses' : ''}`); }, ...of,
    });
    return { did, questions };
  }
  it('are asked for one after the other, each written at once', async () => {
    const { did, questions } = await asked(['751', '', '12']);
    expect(did).toEqual(['choose 0', 'Whelk: S1 -> M1 = 751', 'Whelk: raw at S1 = 12', 'done 2, 0 disagree']);
    expect(questions.map(q => q.title)).toEqual(['S1 → M1 (1 of 3)', 'M1 → P1 (2 of 3)', 'raw at S1 (3 of 3)']);
  });
  it('say what to measure, from where to where, what it should come to, by what, and how it goes on', async () => {
    const { questions: [, q] } = await asked(['', undefined]);
    expect(q!.prompt).toBe('String from middle to middle. Should come to 750 ± 2 mm. On the page: 721 mm, on 2026-02-11. By thread unless you say otherwise. A bare number is in mm. Empty goes on; Escape ends, and what is written stays.');
  });
  it('keep what is written when somebody stops', async () => { expect((await asked(['751', undefined])).did).toEqual(['choose 0', 'Whelk: S1 -> M1 = 751', 'done 1, 0 disagree']); });
  it('write nothing where nobody begins', async () => { expect((await asked(['751'], { choose: () => Promise.resolve(undefined) })).did).toEqual([]); });
  it('ask again for what cannot be taken, with what was typed and why', async () => {
    const { did, questions } = await asked(['752,5', undefined], { enter: () => Promise.resolve({ kind: 'not', words: 'Write a point.' }) });
    expect(questions[1]).toMatchObject({ title: 'S1 → M1 (1 of 3)', value: '752,5', said: { words: 'Write a point.', kind: 'error' } });
    expect(did).toEqual(['choose 0']);
  });
  it('warn where one disagrees, and go on', async () => {
    const { did, questions } = await asked(['770', undefined], { enter: (_, subject, value) => Promise.resolve(made(`${subject} = ${value}`, false, ['Shorten it.'])) });
    expect(did).toEqual(['choose 0', 'warning: S1 -> M1 = 770. Shorten it.', 'done 1, 1 disagree']);
    expect(questions[1]).toMatchObject({ title: 'M1 → P1 (2 of 3)', said: { kind: 'warning' } });
  });
  it('go back, and to any other', async () => { expect((await asked(['', { to: 'back' }, { to: 'list' }, undefined])).questions.map(q => q.title[0])).toEqual(['S', 'M', 'S', 'S']); });
  it('on a full disk say so, and go on', async () => { expect((await asked(['751', undefined], { enter: () => Promise.resolve({ ...made('a line'), saved: false } as Awaited<ReturnType<Desk['enter']>>) })).did).toContain('unsaved a line'); });
  it('end where the page has no such setup any more', async () => { let n = 0; expect((await asked(['751', '1'], { list: () => Promise.resolve(n++ === 0 ? { setup: 'Whelk', readings: LIST } : { setup: 'Cockle', readings: LIST }) })).did).toEqual(['choose 0', 'Whelk: S1 -> M1 = 751', 'done 1, 0 disagree']); });
  it('offer losses where two powers were read', async () => { expect((await asked(['751'], { list: () => Promise.resolve({ setup: 'Whelk', readings: [reading('a'), reading('raw at S1', { group: 'light', unit: 'mW', read: '12 mW' }), reading('b at M2', { group: 'powers', unit: 'mW', read: '9 mW' })] }) })).did.at(-1)).toBe('done 1, 0 disagree, losses'); });
  test.each([[null, `note: ${NO_SETUP}`], [undefined, `warning: ${NO_ANSWER}`], [{ setup: 'Whelk', readings: [] }, `note: ${NOTHING}`]])('of %j there are none, and that is said', async (list, said) => { expect((await asked([], { list: () => Promise.resolve(list) })).did).toEqual([said]); });
  it('begin behind what was read today', () => {
    const [a, b] = [reading('a'), reading('b', { today: true })];
    expect([firstOf([a, a]), firstOf([b, a, a]), firstOf([a, b, a]), firstOf([b, b]), firstOf([])]).toEqual([0, 1, 2, 0, 0]);
  });
});

describe('a day', () => {
  it('is that of the clock on the wall', () => { expect([dayOf(new Date(2026, 1, 3, 4, 5)), minuteOf(new Date(2026, 1, 3, 4, 5)), minuteOf(new Date(2026, 11, 31, 23, 59))]).toEqual(['2026-02-03', '2026-02-03T04:05', '2026-12-31T23:59']); });
});

describe('the panel of a shot and its page', () => {
  const RUN = fresh('file:///a.plate', 'Whelk', 180, [{ name: 'first', seconds: 20 }, { seconds: 5 }]);
  const EVENING = { setup: 'Whelk', shot: '8', cautions: ['No beam into an eye.'], before: [{ text: 'a', small: 'b' }], dark: [{ text: 'c', write: '' }], handsOff: 'd', away: 'e', settle: 180, openings: [{ change: [], close: 'f', byPage: '', strips: [] }, { name: 'second', change: [{ text: 'h', small: 'i' }], close: 'j', seconds: 3, byPage: '2 to 4 s', strips: [{ of: '', times: ['10'] }] }], notes: [], dim: { hue: 'red', why: 'g' } };
  test.each([RUN, settle(RUN, 5), open(RUN, 5)])('%j is how far somebody is', run => { expect(isRun(JSON.parse(JSON.stringify(run)))).toBe(true); });
  test.each([undefined, null, 7, {}, { ...RUN, phase: 'done' }, { ...RUN, n: NaN }, { ...RUN, count: { from: 1, lasts: 2 } }, { ...RUN, fields: { a: 7 } }, { ...RUN, ticked: [1] }, { ...RUN, page: undefined }])('%j is not', run => { expect(isRun(run)).toBe(false); });
  test.each([{ kind: 'evening', evening: EVENING, run: RUN }, { kind: 'nothing', words: 'x' }, { kind: 'written', shot: '8', saved: false, notes: [] }, { kind: 'not written', words: 'x' }])('%j goes to the page', m => { expect(isToPage(m)).toBe(true); });
  test.each([undefined, { kind: 'evening', evening: EVENING }, { kind: 'evening', evening: { ...EVENING, dim: { hue: 'white', why: '' } }, run: RUN }, { kind: 'written', shot: 8, saved: true, notes: [] }, { kind: 'ready' }])('%j does not', m => { expect(isToPage(m)).toBe(false); });
  test.each([{ kind: 'ready' }, { kind: 'run', run: RUN }, { kind: 'run', run: RUN, over: 'exposed' }, { kind: 'write', run: RUN, on: '2026-02-18' }])('%j comes from it', m => { expect(isFromPage(m)).toBe(true); });
  test.each([undefined, { kind: 'run' }, { kind: 'write', run: RUN }, { kind: 'write', run: { ...RUN, notes: '' }, on: '2026-02-18' }, { kind: 'edit' }])('%j does not', m => { expect(isFromPage(m)).toBe(false); });
});
