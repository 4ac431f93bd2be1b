/** How mirrors and splitters are set: in the report, in JSON and in hovers. Angles by hand from the places, or from a worked layout. */
import { expect, test } from 'vitest';
import { analyse, type Snapshot } from '../../server/analysis.ts';
import { placeWords } from '../../server/features/hover/places.ts';
import { anglePages, mountAngles } from '../../server/features/report/angles.ts';
import { reportMarkdown } from '../../server/features/report/markdown.ts';
import { reportOf } from '../../server/features/report/report.ts';
import { reportText } from '../../server/features/report/text.ts';

const look = (...lines: string[]): Snapshot => analyse('file:///saltmarsh/setup.plate', `setup "Whelk shell" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`);
const degrees = (text: Snapshot): Record<string, readonly (number | undefined)[]> => {
  const [r] = text.results;
  const at = (v: number | undefined): number | undefined => (v === undefined ? undefined : Math.round((v * 180e4) / Math.PI) / 1e4);
  return Object.fromEntries(mountAngles(r!).map(a => [a.thing.id, [a.incidence, a.fold, a.heading, a.tilt].map(c => at(c && r!.graph.value(c)))]));
};

// Common practice, an off-axis transmission master, whose incidences were worked out by another program: S 25.7°, M1 28.2°, M2 43.5°, M3 52.8°.
const MASTER = ['laser red at (60, 100) mm heading 0°', 'splitter S1 at (350, 100) mm', 'mirror M1 at (1100, 100) mm', 'mirror M2 at (94, 420) mm', 'mirror M3 at (400, 640) mm', 'object whelk at (700, 400) mm', 'plate P1 at (700, 700) mm facing whelk',
  'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> M2', '  -> M3', '  -> whelk', '  -> P1'];

test('incidences of a worked layout, in the order of the text', () => {
  const found = degrees(look(...MASTER));
  expect(Object.keys(found)).toEqual(['S1', 'M1', 'M2', 'M3']);
  expect(Object.values(found).map(([i]) => i!.toFixed(1))).toEqual(['25.7', '28.2', '43.5', '52.8']);
  for (const [i, fold, , tilt] of Object.values(found)) { expect(fold! + 2 * i!).toBeCloseTo(180, 3); expect(tilt).toBe(0); }
});
test('square folds', () => {
  // Along +x and on along +y: incidence 45°, turned by 90°, the normal half-way between −x and +y, 135°. Then along −y: 180° sends it back; along +x and on up: half-way between −x and up.
  const page = (...to: string[]): Record<string, readonly (number | undefined)[]> => degrees(look('laser red at (0, 0, 100) mm heading 0°', 'mirror M1 at (500, 0, 100) mm', ...to, 'beam raw from red', '  -> M1', '  -> B1'));
  expect(page('beam stop B1 at (500, 400, 100) mm')['M1']).toEqual([45, 90, 135, 0]);
  expect(page('beam stop B1 at (500, -400, 100) mm')['M1']).toEqual([45, 90, 225, 0]);
  expect(page('beam stop B1 at (500, 0, 500) mm')['M1']).toEqual([45, 90, 180, 45]);
  expect(page('beam stop B1 at (900, 0, 500) mm')['M1']).toEqual([67.5, 45, 180, 67.5]);
  // Light that comes straight down and goes straight back: the mirror faces up, and heads nowhere.
  expect(degrees(look('laser red at (0, 0, 900) mm heading 0° tilted -90°', 'mirror M1 at (0, 0, 100) mm', 'beam stop B1 at (0, 0, 700) mm', 'beam raw from red', '  -> M1', '  -> B1'))['M1']).toEqual([0, 180, undefined, 90]);
});
test('a splitter that reflects nothing, and a page without places, have none', () => {
  expect(degrees(look('laser red at (0, 0) mm heading 0°', 'splitter S1 at (300, 0) mm', 'beam stop B1 at (600, 0) mm', 'beam raw from red', '  -> S1', 'beam on-axis from S1 through', '  -> B1'))).toEqual({});
  const strings = look('laser red', 'mirror M1', 'beam stop B1', 'beam raw from red', '  -> M1: 300 mm', '  -> B1: 200 mm');
  expect(anglePages(strings.results[0]!)).toEqual([]);
  expect(strings.results[0]!.graph.cells.filter(c => /mount|fold|incidence/.test(c.name))).toEqual([]);
});
test('in the report, as text and as Markdown, and in the hover of the thing', () => {
  const page = look('laser red at (0, 0, 100) mm heading 0°', 'mirror M1 at (500, 0, 100) mm', 'beam stop B1 at (500, 0, 500) mm', 'beam raw from red', '  -> M1', '  -> B1');
  const [r] = page.results;
  const report = reportOf(page, r!);
  expect(reportText([report], 'setup.plate')).toContain('How mirrors and splitters are set\n\n  M1   faces 180°, tipped up by 45°   incidence 45°, turns the light by 90°\n');
  expect(reportMarkdown([report], 'setup.plate')).toContain('| M1 | faces 180°, tipped up by 45° | incidence 45°, turns the light by 90° |');
  const words = placeWords(r!.setup.things.get('M1')!, r!);
  expect(words).toContain('Heading 180°');
  expect(words).toContain('45° upwards');
  expect(words).toContain('Light meets it at 45° from its normal and is turned by 90°.');
});
test('results that may be asked for and expected', () => {
  const page = look(...MASTER, 'expect M1.fold from 120° to 130°', 'expect M2.mount tilt < 1°');
  expect(page.results[0]!.goals.map(g => g.outcome)).toEqual(['met', 'met']);
});
test('the second spot of a splitter whose thickness is written, below it', () => {
  const at45 = (...facts: string[]): Snapshot => look('laser red at (0, 0) mm heading 0° {', '  wavelength: 632.8 nm', '  polarization: vertical', '}', 'splitter S1 at (300, 0) mm {', ...facts.map(f => `  ${f}`), '}', 'beam stop B1 at (300, 400) mm', 'beam raw from red', '  -> S1', 'beam turned from S1 reflected', '  -> B1');
  const rows = (page: Snapshot): readonly string[] => anglePages(page.results[0]!)[0]!.rows.map(r => `${r.label} | ${r.text} | ${r.remark}`);
  expect(rows(at45('reflects: 50%'))).toHaveLength(1);
  // Fused silica, n 1.45702 (handbooks, from memory): √(n² − 0.5) = 1.273934. 3 mm / 1.273934 = 2.355 mm; 1° · 1.273934 · √2 = 1.802°; R 8.187 %: 2.047 % beside 50 % is 3.93 % of both, shown in whole percent.
  expect(rows(at45('reflects: 50%', 'thickness: 3 mm', 'glass: fused silica', 'wedge: 0.5°'))[1]).toBe('S1 | second spot | 2.35 mm beside the first and 1.8° off it, 4 % of the light that is reflected if the back face is bare');
  expect(rows(at45('thickness: 3 mm', 'glass: fused silica'))[1]).toBe('S1 | second spot | 2.35 mm beside the first');
});
