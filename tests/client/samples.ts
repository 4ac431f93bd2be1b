/** Messages of each kind between panels and their pages, as both know them. */
import type { Run } from '../../client/shoot/run.ts';

// of the bench plan
export const mark = (children: unknown[] = []): unknown => ({ tag: 'g', attributes: { class: 'face' }, children });
export const PICTURE = {
  kind: 'picture', page: 'file:///saltmarsh/whelk.plate', version: 3, plates: ['P1'], dim: { hue: 'green', why: 'The safelight is green.' }, errors: 0, setup: 'Whelk', choices: [{ setup: 'Whelk', variants: ['closer'] }],
  look: 'plan', looks: [{ name: 'plan', words: 'the table from above' }, { name: 'side', words: 'the table from its near side', why: 'All beams run at one height.' }], figures: [{ label: 'mismatch', text: '3 mm' }],
  sheet: { title: 'Whelk', box: { x: 0, y: 0, w: 10, h: 10 }, marks: [mark([{ tag: 'title', attributes: {}, children: [], text: 'M1' }])] },
  items: [{ id: 'M1', words: 'mirror M1', written: true, drags: ['move', 'turn'], x: 100, y: -50 }, { id: 'raw.1', words: 'leg', written: false, drags: [], stays: 'goes from thing to thing' }], marked: ['M1'],
};
export const PROBE = { box: { x: 0, y: 0, w: 10, h: 10 }, columns: 2, rows: 1, values: [1, 2], texts: ['1 µW/cm²', '2 µW/cm²'], words: 'light at P1', across: ['5 mm to the left', '5 mm to the right'], down: [''] };
export const DRAG = { kind: 'drag', n: 1, item: 'M1', gesture: 'move', x: 10, y: -20, stepped: false, free: false, dropped: false };
export const NOTHING = { kind: 'nothing', words: 'No page is open.' };

// of a comparison
export const PAGE = 'file:///saltmarsh/whelk.plate';
export const SOURCES = [{ kind: 'head' }, { kind: 'commit', hash: 'e11a0d4', uri: PAGE, name: 'e11a0d4 “laid out”' }, { kind: 'file', uri: PAGE }, { kind: 'shot', setup: 'Whelk', shot: '7' }, { kind: 'variant', setup: 'Whelk', variant: 'closer' }];
export const REMEMBER = { page: PAGE, source: SOURCES[0] };
export const ROW = { words: 'M2 was moved', before: 'at (140, 420) mm', after: 'at (94, 420) mm', by: '46 mm to the left', at: 0, gone: false };
export const FINDINGS = { cured: [{ words: 'It reads otherwise.', code: 'reading-disagrees', severity: 'note', at: 2, gone: true }], added: [], accepted: [], amiss: [], still: 2 };
export const SETUP = { name: 'Whelk', title: 'Whelk', headline: 'Object beam +63 mm.', unchanged: false, at: 1, changes: [ROW], results: [{ words: 'exposure', unsure: true }], goals: [], same: '22 results are the same.', findings: FINDINGS, items: [{ id: 'before:M2', at: 3 }], sheet: { title: 'Whelk', box: { x: 0, y: 0, w: 10, h: 10 }, marks: [] } };
export const SHOWN = { kind: 'review', n: 1, remember: REMEMBER, before: 'the last commit', after: 'whelk.plate', setups: [SETUP], inventories: [{ name: 'lab', changes: [] }], rest: { changes: [], findings: FINDINGS }, notes: [] };

// of an evening
export const RUN: Run = { page: PAGE, setup: 'Whelk', n: 3, phase: 'exposed', ticked: ['covers off'], fields: { plate: '12' }, settle: 180, exposures: [{ name: 'first', seconds: 20 }], opened: [20], count: { from: 1_771_450_800_000, lasts: 20_000, seen: 1_771_450_820_000 }, rested: 180, notes: ['closed after 20 s'] };
export const EVENING = {
  kind: 'evening', run: RUN, evening: {
    setup: 'Whelk', shot: '8', cautions: ['Mind the beam.'], before: [{ text: 'covers off', small: 'all of them', write: 'plate' }], dark: [{ text: 'lights out' }], handsOff: 'hands off', away: 'go away', settle: 180, openings: [{ name: 'first', change: [{ text: 'the table' }], close: 'close it', seconds: 20, byPage: '13 to 55 s', strips: [{ of: 'P1', times: ['5 s'] }] }], notes: ['a note'],
    dim: { hue: 'red', why: 'The safelight is red.' },
  },
};
