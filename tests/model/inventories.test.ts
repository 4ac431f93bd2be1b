/** What inventories say of things: across files, one from another, and what a batch shares. */
import { describe, expect, test } from 'vitest';
import { analyse, type Library } from '../../server/analysis.ts';
import { findings, look, serious } from '../checks/library.ts';

const codes = (text: string, files?: Readonly<Record<string, string>>): string[] => findings(look(text, files).findings.filter(serious));
const LAB = 'inventory lab {\n  laser red-12 {\n    power: 12 mW\n  }\n  mirror flat-50 {\n    loss: 11% ± 3 points\n    diameter: 50 mm\n  }\n}\n';

describe('a chain of files', () => {
  const files = { 'lab.plate': `use "drawer.plate"\ninventory lab {\n  mirror flat-50b = drawer.flat {\n    diameter: 40 mm\n  }\n}\n`, 'drawer.plate': 'inventory drawer {\n  mirror flat {\n    loss: 5%\n    diameter: 50 mm\n  }\n}\n' };
  test('an item may derive from that of a file further on', () => {
    const { model, findings: found } = look('use "lab.plate"\nsetup "Whelk" {\n  mirror M1 = lab.flat-50b\n}\n', files);
    expect(found.filter(serious)).toEqual([]);
    const { facts } = model.setups[0]!.things.get('M1')!;
    const value = (fact: string): unknown => { const v = facts.get(fact)!.value; return v.kind === 'quantity' ? v.quantity.value : undefined; };
    expect([value('loss'), value('diameter')]).toEqual([0.05, 0.04]);
    expect([facts.get('loss')!.at.uri, facts.get('diameter')!.at.uri].map(u => u.slice(u.lastIndexOf('/') + 1))).toEqual(['drawer.plate', 'lab.plate']);
  });
  test('what a file uses is known to it alone', () => expect(codes('use "lab.plate"\nsetup "Whelk" {\n  mirror M1 = drawer.flat\n}\n', files)).toEqual(['3 unknown-name']));
  test('a ring is one error, wherever it closes', () => {
    expect(codes('use "a.plate"\n', { 'a.plate': 'use "b.plate"\n', 'b.plate': 'use "a.plate"\n' })).toEqual(['1 import-ring']);
    const { data } = look('use "a.plate"\n', { 'a.plate': 'use "b.plate"\n', 'b.plate': 'use "a.plate"\n' }).findings[0]!;
    expect(data['ring']).toBe('a.plate → b.plate → a.plate');
    expect(look('use "setup.plate"\n').findings[0]!.data['ring']).toBe('setup.plate → setup.plate');
  });
});

describe('an item that derives from another of its inventory', () => {
  test.each(['lab.flat', 'flat'])('by the name %s', name => expect(codes(`inventory lab {\n  mirror flat {\n    diameter: 50 mm\n  }\n  mirror small = ${name} {\n    diameter: 25 mm\n  }\n}\n`)).toEqual([]));
  test('stands below it', () => expect(codes('inventory lab {\n  mirror small = lab.flat\n  mirror flat\n}\n')).toEqual(['2 unknown-name']));
  test('is of its kind', () => expect(codes('inventory lab {\n  mirror flat\n  splitter half = lab.flat\n}\n')).toEqual(['3 wrong-value']));
});

test('what a setup says in another way than its item counts as well', () => {
  const kept = (own: string): string[] => [...look(`inventory lab {\n  laser red-12 {\n    tube length: 350 mm\n    power: 12 mW\n  }\n}\nsetup "Whelk" {\n  laser red = lab.red-12 {\n    ${own}\n  }\n}\n`).model.setups[0]!.things.get('red')!.facts.keys()];
  expect(kept('linewidth: 5 MHz')).toEqual(['power', 'linewidth']);
  expect(kept('coherence length: 200 mm')).toEqual(['power', 'coherence length']);
  expect(kept('wavelength: 632.8 nm')).toEqual(['tube length', 'power', 'wavelength']);
});

test('what is wrong with light at an item is said where the setup names it, not in the inventory', () => {
  const text = 'use "lab.plate"\nsetup "Whelk" {\n  laser red\n  object whelk\n  beam raw from red\n    -> lab.fine through: 400 mm\n    -> whelk: 100 mm\n    -> lab.finer: 100 mm\n}\n';
  const { findings: found, uri } = look(text, { 'lab.plate': 'inventory lab {\n  plate fine\n  plate finer\n}\n' });
  expect(found.filter(serious).map(f => [f.at.uri === uri, f.at.line + 1, f.code, f.subject])).toEqual([[true, 6, 'arm-missing', 'fine'], [true, 8, 'arm-missing', 'finer']]);
});

test('an item of another kind is one finding', () => {
  const [f] = look(`${LAB}setup "Whelk" {\n  mirror M1 = lab.red-12\n}\n`).findings.filter(serious);
  expect([f!.code, f!.data['found'], f!.data['wanted']]).toEqual(['wrong-value', 'a laser', 'a mirror']);
});

describe('two inventories of one name', () => {
  test('of two files, name both; the first counts', () => {
    const s = look('use "a.plate"\nuse "b.plate"\nsetup "Whelk" {\n  mirror M1 = lab.flat\n}\n', { 'a.plate': 'inventory lab {\n  mirror flat\n}\n', 'b.plate': 'inventory lab {\n  laser red\n}\n' });
    expect(findings(s.findings.filter(serious))).toEqual(['2 inventory-twice']);
    expect([s.findings[0]!.data['first'], s.findings[0]!.data['second']]).toEqual(['a.plate', 'b.plate']);
  });
  test('of a file and of one that it uses', () => expect(codes('use "a.plate"\ninventory lab {\n}\n', { 'a.plate': 'inventory lab {\n}\n' })).toEqual(['2 inventory-twice']));
  test('in a file', () => expect(codes(`${LAB}inventory lab {\n}\n`)).toEqual(['10 name-taken']));
  test('are one where a file is used twice', () => expect(codes('use "a.plate"\nuse "./a.plate"\n', { 'a.plate': 'inventory lab {\n}\n' })).toEqual([]));
});

describe('where a file is looked for', () => {
  const at = (files: Readonly<Record<string, string>>): Library => ({
    resolve: (path, from) => new URL(path, from).href, text: uri => files[uri],
    elsewhere: path => ['file:///notebook/', 'file:///shelf/'].map(f => ({ uri: new URL(path, f).href, where: `the folder “${f.slice(8, -1)}”` })),
  });
  const inventory = (mirror: string): string => `inventory lab {\n  mirror ${mirror}\n}\n`;
  const used = (files: Readonly<Record<string, string>>): readonly string[] => [...analyse('file:///notebook/2026/whelk.plate', 'use "lab.plate"\n', at(files)).model.visible.get('lab')?.things.keys() ?? []];
  test('beside the file, then in the open folder, then in those that were named', () => {
    const [beside, root, named] = ['file:///notebook/2026/lab.plate', 'file:///notebook/lab.plate', 'file:///shelf/lab.plate'] as const;
    expect(used({ [named]: inventory('N1'), [root]: inventory('R1'), [beside]: inventory('B1') })).toEqual(['B1']);
    expect(used({ [named]: inventory('N1'), [root]: inventory('R1') })).toEqual(['R1']);
    expect(used({ [named]: inventory('N1') })).toEqual(['N1']);
  });
  test('is said where nothing is found', () => {
    const { findings: [f] } = analyse('file:///notebook/2026/whelk.plate', 'use "lab.plate"\n', at({}));
    expect([f!.code, f!.data['looked']]).toEqual(['import-unreadable', 'the folder of this file, the folder “notebook”, the folder “shelf”']);
    expect(f!.message).toContain('Looked in the folder of this file, the folder “notebook”, the folder “shelf”');
  });
});

describe('things of one batch', () => {
  const page = (first: string, second: string): string => `${LAB}setup "Whelk" {\n  mirror M1 = lab.flat-50${first}\n  mirror M2 = lab.flat-50${second}\n  let both = M1.loss + M2.loss\n}\n`;
  const u = (first: string, second: string): number => {
    const { results: [r], findings: found } = look(page(first, second));
    expect(found.filter(serious)).toEqual([]);
    const both = r!.graph.find('both')!;
    expect(r!.graph.value(both)).toBeCloseTo(0.22, 12);
    return r!.graph.uncertainty(both);
  };
  const of = (text: string): string => ` {\n    batch: "${text}"\n  }`;
  // Surely within 3 points is a standard uncertainty of 0.03/√3 = 0.017320508. Shared, it doubles to 0.034641016; of two mirrors each with its own it is √2 times as much, 0.024494897.
  const [SHARED, APART] = [0.034641016, 0.024494897];
  test('share the error of what their item says', () => expect(u(of('B7'), of('B7'))).toBeCloseTo(SHARED, 8));
  test('of two batches, or of none, do not', () => {
    expect(u(of('B7'), of('B8'))).toBeCloseTo(APART, 8);
    expect(u('', '')).toBeCloseTo(APART, 8);
    expect(u(of('B7'), '')).toBeCloseTo(APART, 8);
  });
  test('share it by a batch of the item itself', () => {
    const { results: [r] } = look(page('', '').replace('    diameter: 50 mm\n', '    diameter: 50 mm\n    batch: "B7"\n'));
    expect(r!.graph.uncertainty(r!.graph.find('both')!)).toBeCloseTo(SHARED, 8);
  });
  test('do not share what one of them says for itself', () => expect(u(of('B7'), ' {\n    batch: "B7"\n    loss: 11% ± 3 points\n  }')).toBeCloseTo(APART, 8));
});
