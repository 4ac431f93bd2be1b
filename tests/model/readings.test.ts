/** Readings as they are bound: what they are of, where, by what, when; and what is wrong with those that cannot be understood. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { isLater } from '../../server/model/bind/dates.ts';
import { noSuchDate } from '../../server/model/calendar.ts';
import type { Measured, Reading, Setup, Thing } from '../../server/model/model.ts';

const around = (...lines: string[]): string => `inventory lab {
  string thread
  meter meter-1
  meter needle
  mirror flat-50
}
inventory shed {
  meter needle
}
setup "Whelk shell" {
  hologram: transmission
  laser red {
    coherence length: 5 m
  }
  splitter S1
  mirror M1
  polarizer sheet
  object whelk
  hologram H1
  plate P1
  string tape-2
  string twine = lab.thread
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 750 mm
    -> P1: 721 mm
  beam key from S1 reflected
    -> whelk: 1171 mm
    -> sheet: 100 mm
    -> P1: 200 mm
  let gap = 750 mm
${lines.map(l => `  ${l}\n`).join('')}}
`;
const look = (...lines: string[]): { setup: Setup; wrong: string[] } => {
  const text = around(...lines);
  const { model, findings } = analyse('file:///saltmarsh/whelk.plate', text);
  return { setup: model.setups[0]!, wrong: findings.filter(f => f.severity === 'error' || f.severity === 'warning').map(f => `${f.code} ${text.split('\n')[f.at.line]!.slice(f.at.start, f.at.end)}`) };
};
const bound = (line: string): Reading => {
  const { setup, wrong } = look(line);
  expect(wrong, line).toEqual([]);
  return setup.readings[0]!;
};
/** Things by their names. */
const plainly = (m: Measured | undefined): unknown => JSON.parse(JSON.stringify(m ?? null, (_, v: unknown) => (v !== null && typeof v === 'object' && 'reached' in v ? (v as Thing).id : v)));

describe('what is measured', () => {
  it.each<[string, object]>([
    ['S1 -> M1: 752 mm', { kind: 'legs', things: ['S1', 'M1'] }],
    ['S1 through -> M1 -> P1: 1471 mm', { kind: 'legs', things: ['S1', 'M1', 'P1'] }],
    ['reference: 1471 mm', { kind: 'arm', arm: 'reference' }],
    ['object at P1: 1474 mm', { kind: 'arm', arm: 'object', plate: 'P1' }],
    ['key: gap + 700 mm', { kind: 'arm', arm: 'key' }],
    ['key at P1: gap', { kind: 'arm', arm: 'key', plate: 'P1' }],
    ['raw: 352 mm', { kind: 'legs', things: ['red', 'S1'] }],
    ['reference at M1: 752 mm', { kind: 'legs', things: ['S1', 'M1'] }],
    ['object - reference: -3 mm', { kind: 'difference', arm: 'object', other: 'reference' }],
    ['key - reference at P1: -3 mm', { kind: 'difference', arm: 'key', other: 'reference', plate: 'P1' }],
    ['reference at P1 facing beam: 1.6 µW/cm²', { kind: 'light', arm: 'reference', at: 'P1', spot: 'centre', facing: true }],
    ['reference at P1 upper left: 0.8', { kind: 'light', arm: 'reference', at: 'P1', spot: 'upper left', facing: false }],
    ['object at P1 through polarizer: 0.31', { kind: 'light', arm: 'object', at: 'P1', spot: 'centre', facing: false, through: 'polarizer' }],
    ['object at P1 through sheet: 0.31', { kind: 'light', arm: 'object', at: 'P1', spot: 'centre', facing: false, through: 'sheet' }],
    ['reference: 62 by lab.needle', { kind: 'light', arm: 'reference', spot: 'centre', facing: false }],
    ['raw at S1: 11.4 mW', { kind: 'light', arm: 'raw', at: 'S1', spot: 'centre', facing: false }],
    ['dark: 8 nW', { kind: 'dark' }],
    ['dark at P1: 1', { kind: 'dark', at: 'P1' }],
    ['S1 wheel: 4.5', { kind: 'wheel', splitter: 'S1' }],
    ['drift at P1: 0.5 fringes/min', { kind: 'drift', plate: 'P1' }],
    ['real image at screen: 312 mm', { kind: 'image' }],
  ])('%s', (line, measured) => expect(plainly(bound(`measured ${line}`).measured)).toEqual(measured));

  it('keeps the words before the colon', () => expect(bound('measured reference  at P1   facing beam: 1.6 µW/cm²').words).toBe('reference at P1 facing beam'));
});

describe('by what and when', () => {
  it.each([
    ['tape-2', 'tape-2', 'tape-2'], ['string', 'string', undefined], ['ruler', 'ruler', undefined], ['twine', 'twine', 'twine'],
    // the item is the thing that the setup has of it, by either name
    ['lab.thread', 'twine', 'twine'], ['thread', 'twine', 'twine'],
  ])('by %s', (word, name, thing) => {
    const { by } = bound(`measured reference: 1471 mm by ${word} on 2026-02-11`);
    expect([by!.name, by!.thing?.id]).toEqual([name, thing]);
  });
  it('by an item of an inventory', () => expect(bound('measured dark: 8 nW by meter-1').by?.thing?.kind.word).toBe('meter'));
  it('on a day, or at a time of it', () => {
    expect(bound('measured reference: 1471 mm on 2026-02-11').on).toBe('2026-02-11');
    expect(bound('measured reference: 1471 mm on 2026-02-11T21:40').on).toBe('2026-02-11T21:40');
  });
  it('counts a thing that only a reading names as used', () => {
    const { setup } = look('measured dark: 8 nW by meter-1', 'measured real image at card-1: 312 mm', 'screen card-1');
    expect(setup.things.get('card-1')!.used).toBe(true);
    expect(setup.readings[0]!.by!.thing!.used).toBe(true);
  });
});

describe('a slip', () => {
  it.each([
    ['measured refrence: 1471 mm', 'unknown-name refrence'], ['measured object - refernce: 3 mm', 'unknown-name refernce'], ['measured S1 -> M9: 3 mm', 'unknown-name M9'], ['measured whelk: 3 mm', 'unknown-name whelk'],
    ['measured reference at P2: 0.8', 'unknown-name P2'], ['measured reference: 1471 mm by thred', 'unknown-name thred'], ['measured dark: 8 nW by needle', 'unknown-name needle'],
    ['measured object + reference: 3 mm', 'reading-unclear object + reference'], ['measured object - object: 3 mm', 'reading-unclear object'], ['measured S1 soon -> M1: 3 mm', 'reading-unclear S1 soon'],
    ['measured S1 whel: 4.5', 'reading-unclear S1 whel'], ['measured M1 wheel: 4.5', 'reading-unclear M1'], ['measured real imge at screen: 312 mm', 'reading-unclear real imge'],
    ['measured drift at M1: 0.5 fringes/min', 'reading-unclear M1'], ['measured raw at M1: 352 mm', 'reading-unclear M1'], ['measured reference at P1 uper left: 0.8', 'reading-unclear uper left'],
    ['measured object at P1 through polariser: 0.31', 'reading-unclear polariser'], ['measured object at P1 through M1: 0.31', 'reading-unclear M1'], ['measured reference at P1 facing M1: 1.6 µW/cm²', 'reading-unclear M1'],
    ['measured object at P1 upper left: 300 mm', 'reading-unclear upper left'], ['measured "reference": 300 mm', 'reading-unclear "reference"'], ['measured reference = 1471 mm', 'reading-unclear = 1471 mm'],
    ['measured S1 -> M1: 752 mW', 'wrong-unit 752 mW'], ['measured reference: 3 s', 'wrong-unit 3 s'], ['measured S1 wheel: 4.5 mm', 'wrong-unit 4.5 mm'], ['measured S1 -> M1: 3 points', 'wrong-unit 3 points'], ['measured S1 -> M1: gap * gap', 'wrong-unit gap * gap'],
    ['measured reference: 1471', 'missing-unit 1471'], ['measured reference at P1: 1471 by tape-2', 'missing-unit 1471'], ['measured drift: 0.5', 'missing-unit 0.5'],
    ['measured reference: -1471 mm', 'impossible-value -1471 mm'], ['measured reference: ?', 'wrong-value ?'], ['measured S1 -> M1: 752 mm, 753 mm', 'wrong-value 752 mm, 753 mm'],
    ['measured reference', 'value-missing reference'], ['measured', 'value-missing measured'],
    ['measured reference: 1471 mm on 2026-02-31', 'no-such-date 2026-02-31'], ['measured reference: 1471 mm on 2026-02-11T24:10', 'no-such-date 2026-02-11T24:10'], ['measured reference: 1471 mm on Monday', 'wrong-value Monday'],
    ['measured reference on 2026-02-11: 1471 mm', 'reading-misplaced on 2026-02-11'], ['measured reference by tape-2: 1471 mm', 'reading-misplaced by tape-2'], ['measured reference: 1471 mm at P1', 'reading-misplaced at P1'],
    ['measured S1 -> M1 at P1: 752 mm', 'reading-misplaced at P1'], ['measured reference: 1471 mm for M1', 'reading-misplaced for M1'],
    ['measured reference: 1471 mm by tape-2 by twine', 'written-twice by twine'], ['measured reference: 1471 mm by lab.meter-1', 'instrument-unfit lab.meter-1'], ['measured reference: 1471 mm by M1', 'instrument-unfit M1'], ['measured dark: 8 nW by tape-2', 'instrument-unfit tape-2'],
    ['moved Q7 on 2026-02-14', 'unknown-name Q7'], ['moved M1', 'value-missing M1'], ['moved on 2026-02-14', 'value-missing moved'], ['moved M1 whelk on 2026-02-14', 'wrong-value M1 whelk'], ['moved M1 on Monday', 'wrong-value Monday'], ['moved M1 on 2026-13-01', 'no-such-date 2026-13-01'],
    ['moved M1 on 2026-02-14: cat', 'wrong-value cat'], ['moved M1 on 2026-02-14 "cat"', 'unexpected-text "cat"'],
  ])('%s', (line, found) => expect(look(line).wrong).toEqual([found]));

  it('is said once, however often the name is used', () => {
    expect(look('measured refrence: 1471 mm by thred', 'measured refrence at P1: 1471 mm by thred').wrong).toEqual(['unknown-name refrence', 'unknown-name thred']);
  });
  it('leaves the rest of the line its meaning', () => {
    const { setup } = look('measured reference on 2026-02-11: 1471 mm by thred');
    expect([setup.readings[0]!.on, setup.readings[0]!.value?.kind, setup.readings[0]!.by]).toEqual(['2026-02-11', 'quantity', undefined]);
  });
});

describe('what was moved', () => {
  it('names things, a day, and what happened', () => {
    const { setup, wrong } = look('moved M1, whelk on 2026-02-14T10:00: "the cat"', 'moved P1 on 2026-02-15');
    expect(wrong).toEqual([]);
    expect(setup.moved.map(m => [m.things.map(t => t.id), m.on, m.what])).toEqual([[['M1', 'whelk'], '2026-02-14T10:00', 'the cat'], [['P1'], '2026-02-15', undefined]]);
  });
});

describe('dates', () => {
  // ISO 8601, Gregorian calendar: 2000 and 2024 are leap years, 1900 and 2026 are not
  it.each(['2026-02-28', '2024-02-29', '2000-02-29', '2026-12-31', '2026-02-11T23:59'])('%s exists', date => expect(noSuchDate(date)).toBeUndefined());
  it.each(['2026-02-29', '1900-02-29', '2026-04-31', '2026-00-10', '2026-13-01', '2026-01-00', '2026-02-11T24:00', '2026-02-11T10:60'])('%s does not', date => expect(noSuchDate(date)).toBeDefined());
  it('follow each other by day, and within a day only by time', () => {
    expect(isLater('2026-02-12', '2026-02-11')).toBe(true);
    expect(isLater('2026-02-11', '2026-02-12')).toBe(false);
    expect(isLater('2026-02-11T10:00', '2026-02-11')).toBe(false);
    expect(isLater('2026-02-11T10:00', '2026-02-11T09:00')).toBe(true);
    expect(isLater('2026-02-12', '2026-02-11T23:00')).toBe(true);
  });
});
