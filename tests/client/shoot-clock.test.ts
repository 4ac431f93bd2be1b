/** Counting by the clock on the wall, and how far a shot is: with times that are made up, the clock set back, the window gone, and stopped. All numbers are sums of the times given. */
import { describe, expect, it, test } from 'vitest';
import fc from 'fast-check';
import { begin, digits, look, spoken } from '../../client/shoot/clock.ts';
import { due, end, expose, field, fresh, isUnderWay, later, open, rest, settle, stop, tick, turn, written, type Run } from '../../client/shoot/run.ts';

const T = Date.UTC(2026, 1, 18, 21, 40);
const s = (n: number): number => T + n * 1000;
const RUN = fresh('file:///whelk.plate', 'Whelk shell', 180, [{ seconds: 20 }]);

describe('a count', () => {
  it('is the clock less its begin, however seldom it is looked at', () => {
    expect(look(begin(20, T), s(7))).toMatchObject({ gone: 7000, left: 13_000 });
    expect(look(begin(20, T), s(23))).toMatchObject({ gone: 23_000, left: -3000 });
  });
  it('does not drift: looked at often, at odd times, it says what it says when it is looked at once', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 5000 }), { maxLength: 50 }), steps => {
      let [count, now] = [begin(3600, T), T];
      for (const step of steps) ({ count } = look(count, now += step));
      expect(look(count, now).gone).toBe(now - T);
    }));
  });
  it('goes on where it was when the clock is set back, and says by how much', () => {
    const { count } = look(begin(20, T), s(7));
    // An hour less, and one second on: what had gone by, 7 s, stays.
    const set = look(count, s(8 - 3600));
    expect(set).toMatchObject({ gone: 7000, left: 13_000, back: 3599_000 });
    expect(look(set.count, s(10 - 3600))).toMatchObject({ gone: 9000, left: 11_000 });
    expect(look(set.count, s(10 - 3600))).not.toHaveProperty('back');
  });
  it('never goes back, whatever the clock does', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: -100_000, max: 100_000 }), { maxLength: 50 }), steps => {
      let [count, now, gone] = [begin(60, T), T, 0];
      for (const step of steps) {
        const l = look(count, now += step);
        expect(l.gone).toBe(gone + Math.max(0, step));
        ({ count, gone } = l);
      }
    }));
  });
  it('says nothing of a clock that is put right by a little', () => { expect(look(look(begin(20, T), s(7)).count, s(6.5))).not.toHaveProperty('back'); });
  it('says when nobody looked for long', () => {
    expect(look(begin(900, T), s(600))).toMatchObject({ gone: 600_000, away: 600_000 });
    expect(look(begin(900, T), s(60))).not.toHaveProperty('away');
  });
  test.each([[185_000, '3:05'], [7000, '0:07'], [6001, '0:07'], [1, '0:01'], [0, '0:00'], [-5000, '0:00'], [3_725_000, '1:02:05'], [60_000, '1:00']])('%i ms is %s', (ms, text) => { expect(digits(ms)).toBe(text); });
  test.each([[7500, '7.5 s'], [20_000, '20 s'], [95_000, '1 min 35 s'], [180_000, '3 min'], [3_599_000, '59 min 59 s'], [3_600_000, '1 h'], [-1, '0 s']])('%i ms is said as %s', (ms, text) => { expect(spoken(ms)).toBe(text); });
});

/** Looks each second from one time to another. */
function looked(run: Run, from: number, to: number): { run: Run; over: string[]; said: string[] } {
  const [over, said]: [string[], string[]] = [[], []];
  for (let t = from; t <= to; t++) {
    const now = turn(run, s(t));
    ({ run } = now);
    if (now.over) over.push(`${now.over} at ${t}`);
    if (now.said !== undefined) said.push(now.said);
  }
  return { run, over, said };
}

describe('a shot', () => {
  it('settles, is opened by hand, is over after its time, and says so once', () => {
    const rested = looked(settle(RUN, T), 1, 200);
    expect(rested).toMatchObject({ over: ['settled at 180'], said: [], run: { phase: 'settled' } });
    // Opened 25 s later than it had to be: it rested 205 s.
    const exposed = looked(open(rested.run, s(205)), 206, 240);
    expect(exposed).toMatchObject({ over: ['exposed at 225'], said: [], run: { phase: 'exposed', rested: 205, opened: [20], notes: [] } });
  });
  it('may be opened before the table has rested, and tells how long it did', () => { expect(open(settle(RUN, T), s(95))).toMatchObject({ phase: 'exposing', rested: 95 }); });
  it('may be opened without a rest', () => { const run = open(RUN, T); expect([run.phase, run.rested]).toEqual(['exposing', undefined]); });
  it('stopped under way has the exposure that it had', () => { expect(stop(open(settle(RUN, T), s(180)), s(187.04))).toMatchObject({ phase: 'exposed', opened: [7], notes: ['closed after 7 s of 20 s'] }); });
  it('stopped before the shutter was open is none', () => {
    expect(stop(settle(RUN, T), s(60)).phase).toBe('ready');
    expect(stop(settle(RUN, T), s(60)).opened).toEqual([]);
    expect(stop(RUN, T)).toBe(RUN);
  });
  it('needs its times', () => {
    expect(settle({ ...RUN, settle: 0 }, T).phase).toBe('ready');
    expect(open(expose(RUN, 0, 0), T).phase).toBe('ready');
    expect(open(expose(RUN, 0, NaN), T).phase).toBe('ready');
  });
  it('is not opened twice', () => { const run = open(RUN, T); expect(open(run, s(5))).toBe(run); });
  it('goes on after the window was gone, by the clock', () => {
    const kept = JSON.parse(JSON.stringify(turn(open(RUN, T), s(3)).run)) as Run;
    expect(turn(kept, s(12)).run.count).toMatchObject({ from: T });
    expect(turn(kept, s(12))).not.toHaveProperty('over');
    expect(turn(kept, s(21))).toMatchObject({ over: 'exposed', run: { phase: 'exposed', opened: [20], notes: [] } });
  });
  it('that was over while the window was gone is not sure, and says so', () => {
    expect(turn(turn(open(RUN, T), s(3)).run, s(55))).toMatchObject({
      over: 'exposed', said: 'The exposure of 20 s was over 35 s ago, and nobody was told: if the shutter is still open, close it now.',
      run: { opened: [20], notes: ['the end of the exposure was only seen 35 s late: how long the shutter was open is not sure'] },
    });
  });
  it('with the clock set back goes on, and the entry has it', () => {
    const after = turn(turn(open(RUN, T), s(7)).run, s(8 - 3600));
    expect(after).toMatchObject({ said: 'The clock of this computer was set back by 59 min 59 s. The count goes on from what had gone by before.', run: { phase: 'exposing', notes: ['the clock was set back by 59 min 59 s while the shutter was open'] } });
    // 7 s were gone at −3592 s: 13 s are left.
    expect(turn(after.run, s(20 - 3600))).not.toHaveProperty('over');
    expect(turn(after.run, s(21 - 3600))).toMatchObject({ over: 'exposed' });
  });
  it('written down leaves the times for the next plate, and nothing else', () => { expect(written(field(tick(stop(open(RUN, T), s(5)), 'a', true), 'plate', 'box 3'))).toMatchObject({ phase: 'ready', ticked: [], fields: {}, notes: [], settle: 180, exposures: [{ seconds: 20 }], opened: [] }); });
  it('keeps what is ticked and written, once each', () => {
    expect(tick(tick(tick(RUN, 'a', true), 'a', true), 'b', true).ticked).toEqual(['a', 'b']);
    expect(tick(tick(RUN, 'a', true), 'a', false).ticked).toEqual([]);
    expect(rest(expose(RUN, 0, 3), 5)).toMatchObject({ settle: 5, exposures: [{ seconds: 3 }] });
  });
  it('of two that were kept the later one counts', () => {
    const newer = tick(RUN, 'a', true);
    expect([later(RUN, newer), later(newer, RUN), later(undefined, RUN), later(RUN, undefined)]).toEqual([newer, newer, RUN, RUN]);
    const other = { ...newer, setup: 'Cockle' };
    expect(later(RUN, other)).toBe(RUN);
    const seen = turn(open(RUN, T), s(9)).run;
    expect(later(open(RUN, T), seen)).toBe(seen);
  });
});

describe('a shot of two exposures', () => {
  const TWO = fresh('file:///tile.plate', 'Tile', 180, [{ name: 'first', seconds: 60 }, { name: 'second', seconds: 12 }]);
  const between = looked(open(TWO, T), 1, 90).run;
  it('is ready for the next one when the first is over, and nobody has written it down', () => {
    expect(between).toMatchObject({ phase: 'ready', opened: [60] });
    expect(due(between)).toBe(12);
    expect([isUnderWay(TWO), isUnderWay(between)]).toEqual([false, true]);
  });
  it('rests again, and is over after the last', () => {
    const exposed = looked(open(looked(settle(between, s(100)), 101, 290).run, s(290)), 291, 310);
    expect(exposed).toMatchObject({ over: ['exposed at 302'], run: { phase: 'exposed', opened: [60, 12], rested: 190 } });
  });
  it('tells the shortest of its rests', () => {
    // 205 s before the first, 95 s before the second.
    const first = looked(open(looked(settle(TWO, T), 1, 205).run, s(205)), 206, 265).run;
    expect(open(settle(first, s(300)), s(395))).toMatchObject({ phase: 'exposing', rested: 95 });
  });
  it('stopped in the first keeps what that had, and goes on', () => { expect(stop(open(TWO, T), s(7))).toMatchObject({ phase: 'ready', opened: [7], notes: ['closed after 7 s of 1 min'] }); });
  it('stopped while it rests for the second, has had the first', () => { expect(stop(settle(between, s(100)), s(120))).toMatchObject({ phase: 'ready', opened: [60] }); });
  it('may end after the first, and says so', () => {
    expect(end(between)).toMatchObject({ phase: 'exposed', opened: [60], notes: ['ended after 1 of 2 exposures'] });
    expect(end(TWO)).toBe(TWO);
  });
  it('has a time for each', () => { expect(expose(TWO, 1, 9).exposures).toEqual([{ name: 'first', seconds: 60 }, { name: 'second', seconds: 9 }]); });
});
