/** Several setups in a file, several plates in a setup, and the notes above their lines. */
import { describe, expect, test } from 'vitest';
import { hoverAt } from '../../server/features/hover/hover.ts';
import { reportMarkdown } from '../../server/features/report/markdown.ts';
import { reportText } from '../../server/features/report/text.ts';
import { reportOf } from '../../server/features/report/report.ts';
import { findings, look, serious } from '../checks/library.ts';

const names = (...lines: string[]): string[] => look(`setup "Oyster" {\n  laser red {\n    coherence length: 5 m\n  }\n  splitter S1\n  object shell\n  plate P1\n${lines.map(l => `  ${l}\n`).join('')}}\n`).results[0]!.published.map(c => c.name).filter(n => n.startsWith('P1.') && n.endsWith('.length'));

const SINGLE = ['beam all from S1 through', '  -> P1 through: 900 mm', '  -> shell: 12 mm', '  -> P1: 12 mm'];
const raw = ['beam raw from red', '  -> S1: 400 mm'];

describe('the arms of a beam that meets its plate twice', () => {
  test('are its reference and its object', () => expect(names(...raw, ...SINGLE)).toEqual(['P1.reference.length', 'P1.object.length']));
  test('carry its name where another beam to that plate is called so', () => {
    expect(names(...raw, ...SINGLE, 'beam object from S1 reflected', '  -> shell: 800 mm', '  -> P1: 100 mm')).toEqual(['P1.reference.length', 'P1.all.object.length', 'P1.object.length']);
    expect(names(...raw, 'beam reference from S1 reflected', '  -> P1: 800 mm', ...SINGLE)).toEqual(['P1.reference.length', 'P1.all.reference.length', 'P1.object.length']);
  });
  test('keep their names where a beam of that name goes elsewhere', () => expect(names(...raw, ...SINGLE, 'beam object from S1 reflected', '  -> shell: 800 mm')).toEqual(['P1.reference.length', 'P1.object.length']));
  test('never share a name, however often and by however many beams it is met', () => {
    const all = names(...raw, ...SINGLE.map((l, i) => (i === 3 ? '  -> P1 through: 12 mm' : l)), '  -> shell: 5 mm', '  -> P1: 6 mm', 'beam more from S1 reflected', '  -> P1 through: 900 mm', '  -> shell: 12 mm', '  -> P1: 12 mm');
    expect(new Set(all).size).toBe(all.length);
    expect(all).toHaveLength(5);
  });
});

const shot = (name: string, plate: string, length: number): string => `  splitter S-${plate}\n  object o-${plate}\n  plate ${plate}\n  beam ${name} from S1 through\n    -> S-${plate}: 100 mm\n  beam reference-${plate} from S-${plate} through\n    -> ${plate}: ${length} mm\n  beam object-${plate} from S-${plate} reflected\n    -> o-${plate}: 600 mm\n    -> ${plate}: 300 mm\n`;
const two = (goal: string): ReturnType<typeof look> => look(`setup "Two shells" {\n  laser red {\n    coherence length: 5 m\n  }\n  splitter S1\n  beam raw from red\n    -> S1: 300 mm\n${shot('first', 'P1', 900)}${shot('second', 'P2', 905).replace('S1 through', 'S1 reflected')}  ${goal}\n}\n`);

describe('an expectation in a setup of two plates', () => {
  test('names its plate', () => {
    // 600 + 300 − 900 = 0 mm and 600 + 300 − 905 = −5 mm.
    expect(two('expect P1.mismatch < 1 mm').results[0]!.goals.map(g => g.outcome)).toEqual(['met']);
    expect(two('expect P2.mismatch < 1 mm').results[0]!.goals.map(g => g.outcome)).toEqual(['not met']);
    expect(two('expect P2.object-P2.mismatch: 5 mm').results[0]!.goals.map(g => g.outcome)).toEqual(['met']);
    expect(two('expect P2.mismatch = 5 mm').results[0]!.goals.map(g => g.outcome)).toEqual(['met']);
  });
  test('is ambiguous where it does not, and says which there are', () => {
    const f = two('expect mismatch < 1 mm').findings.find(x => x.code === 'ambiguous-result')!;
    expect(f.data['candidates']).toBe('P1.object-P1.mismatch, P2.object-P2.mismatch');
  });
});

test('two setups of one name are a finding, and each has its own results and findings', () => {
  const one = (length: number): string => `setup "Whelk" {\n  laser red {\n    coherence length: 5 m\n  }\n  splitter S1\n  object whelk\n  plate P1\n  beam raw from red\n    -> S1: 300 mm\n  beam reference from S1 through\n    -> P1: ${length} mm\n  beam object from S1 reflected\n    -> whelk: 600 mm\n    -> P1: 300 mm\n  expect mismatch < 1 mm\n}\n`;
  const s = look(one(900) + one(950));
  expect(findings(s.findings.filter(serious))).toEqual(['17 name-taken', '31 expectation-failed']);
  expect(s.results.map(r => reportOf(s, r).goals.map(g => g.outcome))).toEqual([['met'], ['not met']]);
  expect(s.results.map(r => reportOf(s, r).findings.map(f => f.code))).toEqual([[], ['name-taken', 'expectation-failed']]);
});

describe('notes above a line', () => {
  const text = `/// Lit from the left.\nsetup "Whelk" {\n  /// Wobbles.\n  mirror M1\n  laser red {\n    /// From the label.\n    power: 12 mW\n  }\n  /// What fits.\n  let gap = 300 mm\n  beam stop B1\n  /// By the wall.\n  beam raw from red\n    /// Past the door.\n    -> M1: gap\n    -> B1: 100 mm\n  /// Or it is too dull.\n  expect mismatch < 10 mm\n}\n`;
  const s = look(text);
  const lines = text.split('\n');
  test.each([['Lit from the left.', 'setup'], ['Wobbles.', 'M1'], ['From the label.', 'power'], ['What fits.', 'gap'], ['By the wall.', 'raw'], ['Past the door.', '->'], ['Or it is too dull.', 'mismatch']])('“%s” is shown by a hover', (note, on) => {
    const at = lines.findIndex(l => l.includes(note)) + 1;
    expect(hoverAt(s, at, lines[at]!.indexOf(on))?.markdown).toContain(`*${note.replace('.', '')}`);
  });
  test('stand in the report, as text and as Markdown', () => {
    const page = reportOf(s, s.results[0]!);
    expect(page.notes.map(n => `${n.line + 1} ${n.about}: ${n.text}`)).toEqual(['4 mirror M1: Wobbles.', '7 power: 12 mW: From the label.', '10 let gap = 300 mm: What fits.', '13 beam raw from red: By the wall.', '15 -> M1: gap: Past the door.', '18 expect mismatch < 10 mm: Or it is too dull.']);
    for (const shown of [reportText([page], 'whelk.plate'), reportMarkdown([page], 'whelk.plate')]) for (const n of ['Lit from the left', ...page.notes.map(x => x.text)]) expect(shown).toContain(n);
  });
});
