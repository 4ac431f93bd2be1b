/**
 * What panels and their pages say to each other: any value is taken or dropped, and nothing throws; a message of which one member has the wrong type is dropped; what is
 * taken can be used, and of the bench plan nothing is written but a drag that was let go.
 * An input names the guard, and either a value or a good message with a place in it and what is to stand there.
 */
import fc from 'fast-check';
import { follow } from '../../../client/plan/dragging.ts';
import * as plan from '../../../client/plan/messages.ts';
import * as review from '../../../client/review/messages.ts';
import { digits, look, spoken } from '../../../client/shoot/clock.ts';
import * as shoot from '../../../client/shoot/messages.ts';
import { end, expose, field, later, open, rest, settle, stop, tick, turn, written, type Run } from '../../../client/shoot/run.ts';
import type { DragAnswer } from '../../../server/lsp/protocol.ts';
import * as good from '../../client/samples.ts';
import { randomBy } from '../random.ts';
import { hash, none, unfit, type Target } from '../target.ts';
import { anyJson, placesIn, revived, spoiled, withAt } from '../wild.ts';

const { PICTURE, PROBE, DRAG, NOTHING, PAGE, SOURCES, SHOWN, REMEMBER, RUN, EVENING } = good;
const GUARDS: Readonly<Record<string, { readonly takes: (v: unknown) => boolean; readonly good: readonly unknown[] }>> = {
  'plan to page': { takes: plan.isToPage, good: [{ ...PICTURE, probe: PROBE, variant: 'closer', plate: 'P1', kept: 'from before', old: true }, { ...NOTHING, example: 'x', setup: 'Whelk', choices: PICTURE.choices }, { kind: 'marked', ids: ['M1'] }, { kind: 'would', n: 1, words: 'M1 stays' }, { kind: 'would', n: 1, would: { sheet: PICTURE.sheet, items: PICTURE.items, figures: PICTURE.figures } }] },
  'plan from page': { takes: plan.isFromPage, good: [{ kind: 'show', id: 'M1', focus: false }, { kind: 'choose', setup: 'Whelk', variant: 'closer' }, { kind: 'look', look: 'object', plate: 'P2', from: { x: -0.5, y: 1 } }, DRAG, { ...DRAG, dropped: true, stepped: true }] },
  'plan remembered': { takes: plan.isRemembered, good: [{ page: PAGE, setup: 'Whelk', variant: 'closer', look: 'object', plate: 'P1', from: { x: 0, y: 0.5 }, view: { x: 1, y: 2, k: 0.5 }, dark: true }] },
  'review to page': { takes: review.isToPage, good: [SHOWN, ...SOURCES.map(source => ({ ...SHOWN, remember: { page: PAGE, source } })), { kind: 'nothing', words: 'none', remember: REMEMBER }] },
  'review from page': { takes: review.isFromPage, good: [{ kind: 'other' }, { kind: 'show', n: 1, at: 0, focus: false }] },
  'review remembered': { takes: review.isRemembered, good: SOURCES.map(source => ({ page: PAGE, source })) },
  'shoot to page': { takes: shoot.isToPage, good: [EVENING, { kind: 'nothing', words: 'none' }, { kind: 'written', shot: '8', saved: true, notes: ['x'] }, { kind: 'not written', words: 'none' }] },
  'shoot from page': { takes: shoot.isFromPage, good: [{ kind: 'run', run: RUN, over: 'exposed' }, { kind: 'write', run: RUN, on: '2026-02-18' }] },
  'shoot kept': { takes: shoot.isRun, good: [RUN] },
};
const NAMES = Object.keys(GUARDS);

/** One of another type stands there: neither the same, nor left out. */
const OTHERS: readonly unknown[] = [null, true, 7, 'x', [], {}, '$NaN', '$Infinity', '$bigint', '$date'];
const typeOf = (v: unknown): string => (v === null ? 'null' : Array.isArray(v) ? 'list' : typeof v === 'number' && !Number.isFinite(v) ? 'no number' : typeof v);

export const messages: Target = {
  name: 'messages', share: 366, few: 800, words: ['null', '"x"', '[]', '{}', '-1', ...['$undefined', '$NaN', '$ring', '$deep', 'kind', 'picture', 'drag', 'run', 'write', 'review', 'evening'].map(w => JSON.stringify(w))],
  inputs: fc.oneof(
    fc.tuple(fc.constantFrom(...NAMES), anyJson).map(([guard, v]) => `{"guard":${JSON.stringify(guard)},"value":${v}}`),
    { weight: 3, arbitrary: fc.tuple(fc.constantFrom(...NAMES), fc.nat(), fc.nat()).map(([guard, n, seed]) => JSON.stringify({ guard, value: spoiled(GUARDS[guard]!.good[n % GUARDS[guard]!.good.length], randomBy(seed)) })) },
    { weight: 3, arbitrary: fc.tuple(fc.constantFrom(...NAMES), fc.nat(), fc.nat(), fc.constantFrom(...OTHERS)).map(([guard, of, place, by]) => JSON.stringify({ guard, of, place, by })) },
  ),
  run: async input => {
    const said = revived(input) as { guard?: unknown; value?: unknown; of?: unknown; place?: unknown; by?: unknown } | undefined;
    const guard = typeof said?.guard === 'string' && Object.hasOwn(GUARDS, said.guard) ? GUARDS[said.guard]! : undefined;
    if (!said || !guard) {
      // What is nothing of the kind is dropped by all of them.
      const value = said ?? input;
      for (const { takes } of Object.values(GUARDS)) if (takes(value)) await used(value, input);
      return;
    }
    const { of, place, by } = said;
    if (!Number.isSafeInteger(of) || !Number.isSafeInteger(place)) {
      if (guard.takes(said.value)) await used(said.value, input);
      return;
    }
    const sample = guard.good[Math.abs(of as number) % guard.good.length];
    none('a good message is dropped', guard.takes(sample) ? [] : [sample]);
    const places = placesIn(sample);
    const { way, value } = places[Math.abs(place as number) % places.length]!;
    if (by !== undefined && typeOf(by) !== typeOf(value) && guard.takes(withAt(sample, way, by))) throw new Error(`taken with ${typeOf(by)} instead of ${typeOf(value)} at ${way.join('.')}`);
  },
};

/** What was taken is used, as the panel or the page would. */
async function used(v: unknown, input: string): Promise<void> {
  if (plan.isFromPage(v) && v.kind === 'drag') {
    let count = 0;
    const range = { start: { line: 2, character: 16 }, end: { line: 2, character: 20 } };
    const answer: DragAnswer = { version: 1, edits: [{ range, newText: '1000' }], picture: { ...PICTURE, version: 1, view: 'plan', views: [] } as never };
    await follow({ version: () => 1, textAt: () => '900', ask: () => Promise.resolve(answer), write: () => { count++; return Promise.resolve(true); } }, { wanted: { textDocument: { uri: PAGE } }, version: 1 }, v);
    if (count !== (v.dropped ? 1 : 0)) throw new Error(`written ${count} times`);
  }
  if (shoot.isRun(v)) counted(v, input);
  if (shoot.isFromPage(v) && v.kind !== 'ready') counted(v.run, input);
  if (shoot.isToPage(v) && v.kind === 'evening') counted(v.run, input);
}

/** The state of a shot, however it was kept, can go on: no time in it is none, and nothing that is said of it shows one. */
function counted(run: Run, input: string): void {
  const now = 1_771_450_800_000 + (hash(input) % 200_000) - 100_000;
  const said: string[] = [];
  const after = [settle(run, now), open(run, now), stop(run, now), tick(run, 'x', true), field(run, 'x', 'y'), rest(run, 1), expose(run, 0, 2), end(run), written(run), later(run, run)!];
  for (const r of [run, ...after]) {
    const turned = turn(r, now + 500);
    said.push(turned.said ?? '', ...turned.run.notes);
    if (turned.run.count) { const { gone, left } = look(turned.run.count, now + 700); said.push(digits(left), spoken(gone)); }
    for (const time of [...turned.run.opened, turned.run.rested]) if (time !== undefined && !Number.isFinite(time)) throw new Error(`a time is ${time}`);
  }
  none('said of a shot', unfit(input, said));
}
