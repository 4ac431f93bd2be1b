/** What the report and hovers say of the fringes on a plate and of what may move. */
import { expect, test } from 'vitest';
import { analyse, type Snapshot } from '../../server/analysis.ts';
import { thingWords } from '../../server/features/hover/figures.ts';
import { reportOf } from '../../server/features/report/report.ts';

const TABLE = `setup "Whelk shell" {
  hologram: transmission
  laser red at (0, 0) mm {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (400, 0) mm
  mirror M1 at (1000, 0) mm
  object whelk at (400, 500) mm {
    size: 40 x 60 x 30 mm
    warmth: handled
  }
  plate P1 at (700, 500) mm facing whelk {
    material: fine-grain silver halide
    base: film
  }
  mirror M2 at (400, 200) mm
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> M2
    -> P1
  beam object from S1 reflected
    -> whelk
    -> P1
}
`;
const look = (text: string): { s: Snapshot; rows: (title: string) => readonly string[][] | undefined } => {
  const s = analyse('file:///a.plate', text);
  const report = reportOf(s, s.results[0]!);
  return { s, rows: title => report.light.find(p => p.title.startsWith(title))?.rows.map(x => [x.label, x.text, x.remark]) };
};

// The reference comes from M2 at 45°, the finest fringes with light of the corner of the whelk that is nearest and farthest from it: 285 mm before the plate, 20 mm aside, 30 mm up,
// √((sin 45° + 20 / 287.27)² + (30 / 287.27)²) / 632.8 nm = 1238.5 lines/mm.
test('the fringes of a plate', () => {
  const rows = look(TABLE).rows('Fringes on P1')!;
  expect(rows.map(r => r[0])).toEqual(['finest', 'the stock resolves', 'needed of that', 'fringe planes']);
  expect(rows[0]![2]).toBe('at the middle of P1 with light from a corner of whelk');
  expect(rows[0]![1]).toBe('1240 lines/mm');
  expect(rows[1]!.slice(1)).toEqual(['3000 ± 600 lines/mm', 'as its sort does']);
});

test('what may move, the most delicate first, with what loosens it', () => {
  const rows = look(TABLE).rows('What may move')!;
  const figures = rows.map(r => Number.parseFloat(r[1]!));
  expect(figures).toEqual([...figures].sort((a, b) => a - b));
  expect(rows.find(r => r[0] === 'P1')![2]).toMatch(/film creeps in its holder/);
  expect(rows.find(r => r[0] === 'whelk')![2]).toMatch(/creeps while it cools/);
  // 632.8 nm / (20 cos 45°), the light of S1 goes up at a right angle
  expect(rows.find(r => r[0] === 'S1')).toEqual(['S1', '44.7 nm', 'along its normal']);
});

test('hovers say the same', () => {
  const { s } = look(TABLE);
  const words = (id: string): string => thingWords(s.results[0]!.setup.things.get(id)!, s.results[0]);
  expect(words('S1')).toMatch(/Delicate: 2\.23 fringes\/µm\. 44\.7 nm along its normal cost a tenth of a fringe\./);
  expect(words('P1')).toMatch(/Fringes up to 1\d{3} lines\/mm, \d+% ± \d+ points of what its stock resolves\./);
});

test('nothing on a page that names lengths only', () => {
  const { rows } = look('setup "Whelk" {\n  laser red {\n    wavelength: 632.8 nm\n    coherence length: 5 m\n  }\n  splitter S1\n  object whelk\n  plate P1\n  beam raw from red\n    -> S1: 350 mm\n  beam reference from S1 through\n    -> P1: 1500 mm\n  beam object from S1 reflected\n    -> whelk: 1200 mm\n    -> P1: 300 mm\n}\n');
  expect(rows('Fringes')).toBeUndefined();
  expect(rows('What may move')).toBeUndefined();
});

test('what the table is made of is a guess, and said to be one where its warmth is on the page', () => {
  const drifting = TABLE.replace('coherence length: 5 m', 'coherence length: 5 m\n    drift: 0.2 nm/K');
  const page = (text: string): { guesses: readonly string[]; remark: string | undefined } => {
    const s = analyse('file:///saltmarsh/a.plate', text);
    const r = reportOf(s, s.results[0]!);
    return { guesses: r.guesses?.guesses ?? [], remark: r.light.flatMap(p => p.rows).find(x => x.label === 'warming of the table')?.remark };
  };
  expect(page(drifting).remark).toBe('as the arms of P1 are not equally long; what the table is made of is not written');
  expect(page(drifting).guesses).toContain('expansion of the table');
  const steel = page(drifting.replace('hologram: transmission', 'hologram: transmission\n  table material: steel'));
  expect(steel.remark).toBe('as the arms of P1 are not equally long');
  expect(steel.guesses).toContain('expansion of the table');
  expect(page(TABLE).guesses).not.toContain('expansion of the table');
});

test('creeping fringes are told as one speaks of them', () => {
  const creeping = (rate: string): string | undefined => analyse('file:///saltmarsh/a.plate', TABLE.replace('hologram: transmission', `hologram: transmission\n  exposure: 60 s\n  measured drift at P1: ${rate} fringes/min`)).findings.find(f => f.code === 'fringes-drift')?.message.replace(/ in an exposure.*/, '');
  expect(['0.33', '0.5', '0.6', '1', '3', '2.5'].map(creeping)).toEqual(['a third of a fringe', 'half a fringe', '0.6 of a fringe', '1 fringe', '3 fringes', '2.5 fringes'].map(w => `At P1 the fringes creep by ${w}`));
});

test('the page says that a reference comes from above', () => {
  const page = (from: string): string[] => {
    const s = analyse('file:///saltmarsh/a.plate', `setup "Whelk" {\n  laser red {\n    coherence length: 5 m\n  }\n  splitter S1\n  object whelk\n  plate P1 {\n    reference angle: 45°\n    reference from: ${from}\n  }\n  beam raw from red\n    -> S1: 350 mm\n  beam reference from S1 through\n    -> P1: 1500 mm\n  beam object from S1 reflected\n    -> whelk: 1200 mm\n    -> P1: 300 mm\n}\n`);
    return reportOf(s, s.results[0]!).plates[0]!.arms.flatMap(a => a.angle ?? []);
  };
  expect(page('above')).toEqual(['45°, from above']);
  expect(page('the side')).toEqual(['45°']);
});
