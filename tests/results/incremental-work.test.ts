/** How much an edit makes anew, by count: what it does not touch is kept. The numbers are those of the structure, derived beside each. */
import { describe, expect, test } from 'vitest';
import { LineCache } from '../../grammar/parse.ts';
import { analyse, type Library, type Snapshot, type Work } from '../../server/analysis.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

const FOLDER = 'file:///saltmarsh/';

/** Files that are open in an editor, each analysed with what was kept of its last text. */
class Notebook {
  private readonly texts = new Map<string, string>();
  private readonly caches = new Map<string, LineCache>();
  private readonly files: Library = {
    resolve: path => FOLDER + path, text: uri => this.texts.get(uri), lines: uri => this.cache(uri),
  };
  last: Snapshot | undefined;

  private cache(uri: string): LineCache {
    let cache = this.caches.get(uri);
    if (!cache) this.caches.set(uri, cache = new LineCache());
    return cache;
  }
  write(name: string, text: string): void { this.texts.set(FOLDER + name, text); }
  look(name: string): Work {
    this.last = analyse(FOLDER + name, this.texts.get(FOLDER + name)!, this.files, this.cache(FOLDER + name));
    return this.last.work;
  }
  /** Replaces what stands there once, and looks again. */
  edit(name: string, from: string, to: string, look = name): Work {
    const text = this.texts.get(FOLDER + name)!;
    if (text.split(from).length !== 2) throw new Error(`“${from}” does not stand there once`);
    this.write(name, text.replace(from, () => to));
    return this.look(look);
  }
}

const NOTHING: Work = { lines: 0, bound: 0, planned: 0, rules: 0, bands: 0 };
const pages = (...texts: string[]): Notebook => {
  const notebook = new Notebook();
  notebook.write('page.plate', texts.join('\n'));
  notebook.look('page.plate');
  return notebook;
};

const ARMS = 12;
/** A row of shells before one plate: each has an arm of two legs. The reference is 84 mm shorter than each of them, so that bands are drawn. */
const shells = (name: string): string => `setup "${name}" {
  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1
  plate P1
${Array.from({ length: ARMS }, (_, i) => `  object shell${i} {\n    depth: 35 mm\n  }\n`).join('')}
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm ± 2 mm
${Array.from({ length: ARMS }, (_, i) => `  beam key${i} from S1 reflected\n    -> shell${i}: ${1200 + i} mm ± 2 mm\n    -> P1: ${355 - i} mm ± 2 mm\n`).join('')}}
`;

/** Rules of one arm: the sum of its legs, that sum with the glass, and the mismatch; for the middle a brightness; for near, far and darkest part a mismatch and a brightness. */
const RULES_OF_ARM = 3 + 1 + 3 * 2;
/** Of an arm that is dull two parts are drawn as it stands, the darkest and the middle, and the darkest with matched paths; its far end would then be bright without a doubt. */
const BANDS_OF_ARM = 3;

describe('an edit in a setup of many arms', () => {
  test('of the length of one leg runs the rules of that arm only', () => {
    const notebook = pages(shells('Tide'));
    expect(notebook.last!.findings.filter(f => f.code === 'arms-mismatched')).toHaveLength(ARMS);
    const work = notebook.edit('page.plate', '-> shell3: 1203 mm', '-> shell3: 1204 mm');
    expect(work).toEqual({ lines: 1, bound: 1, planned: 1, rules: RULES_OF_ARM, bands: BANDS_OF_ARM });
    expect(notebook.last!.findings.filter(f => f.code === 'arms-mismatched')).toHaveLength(ARMS);
  });
  test('of the reference runs the rules of the comparisons, and no sum of another arm', () => {
    const notebook = pages(shells('Tide'));
    const work = notebook.edit('page.plate', '-> P1: 1471 mm', '-> P1: 1472 mm');
    // its own two sums; of each other arm everything but its two sums
    expect(work).toMatchObject({ rules: 2 + ARMS * (RULES_OF_ARM - 2), bands: ARMS * BANDS_OF_ARM });
  });
  test('of an arm that is added runs the rules of that arm', () => {
    const notebook = pages(shells('Tide'));
    const work = notebook.edit('page.plate', '  beam key3 from', '  beam twin from S1 reflected\n    -> shell2: 1200 mm ± 2 mm\n    -> P1: 355 mm ± 2 mm\n  beam key3 from');
    expect(work).toMatchObject({ lines: 3, rules: RULES_OF_ARM, bands: BANDS_OF_ARM });
  });
  test('of a comment, a name or a blank line runs none', () => {
    const notebook = pages(shells('Tide'));
    for (const [from, to] of [['  splitter S1\n', '  splitter S1 // the large one\n'], ['  plate P1\n', '\n  plate P1\n'], ['setup "Tide"', 'setup "Ebb"'], ['setup "Ebb"', '/// Last winter.\nsetup "Ebb"']] as const) {
      expect(notebook.edit('page.plate', from, to), to).toMatchObject({ bound: 1, planned: 1, rules: 0, bands: 0 });
    }
  });
});

test.each(EXAMPLES.map(({ name, uri, text }) => [name, uri, text] as const))('a comment in the setups of %s runs nothing anew', (_, uri, text) => {
  // Rules that are made afresh for each cell say what they are made with (`of`), or they show up here.
  const caches = new Map<string, LineCache>();
  const lines = (of: string): LineCache => {
    if (!caches.has(of)) caches.set(of, new LineCache());
    return caches.get(of)!;
  };
  const before = analyse(uri, text, { ...disk, lines }, lines(uri));
  // They are looked for when somebody asks, as the editor does before anybody types on.
  expect(before.findings).toBeDefined();
  const { work } = analyse(uri, text.replace(/^(?=\}$)/gm, '  // low water\n'), { ...disk, lines }, lines(uri));
  expect(work.planned).toBe(before.results.length);
  expect(work).toMatchObject({ rules: 0, bands: 0 });
});

describe('an edit in a setup with variants', () => {
  const VARIANTS = 4;
  /** Each variant makes one leg longer; the last asks for more than it has, which is found by planning it. */
  const varied = (name: string): string => shells(name).replace(/\}\n$/, () => `${Array.from({ length: VARIANTS }, (_, i) => `  variant "trial ${i}" {\n    shell${i}.depth: ${i === VARIANTS - 1 ? 'depths' : `${30 + i} mm`}\n  }\n`).join('')}}\n`);
  const WRONG = ['unknown-name depths'];
  const wrong = (n: Notebook): string[] => n.last!.findings.filter(f => f.severity === 'error').map(f => `${f.code} ${f.subject}`);

  test('plans all of them at first', () => {
    const notebook = new Notebook();
    notebook.write('page.plate', varied('Tide'));
    expect(notebook.look('page.plate')).toMatchObject({ planned: 1 + VARIANTS });
    expect(wrong(notebook)).toEqual(WRONG);
  });
  test('that is in one of them plans that one beside the setup', () => {
    const notebook = pages(varied('Tide'));
    expect(notebook.edit('page.plate', 'shell1.depth: 31 mm', 'shell1.depth: 35 mm')).toMatchObject({ bound: 1, planned: 1 + 1 });
    expect(notebook.edit('page.plate', 'shell1.depth: 35 mm', 'shell1.depth: depth')).toMatchObject({ planned: 1 + 1 });
    expect(wrong(notebook)).toEqual(['unknown-name depth', ...WRONG]);
    expect(notebook.edit('page.plate', 'shell1.depth: depth', 'shell1.depth: 35 mm\n    shell2.depth: 20 mm')).toMatchObject({ planned: 1 + 1 });
    expect(wrong(notebook)).toEqual(WRONG);
    // What is wrong in the last has moved on by a line.
    expect(notebook.last!.findings.find(f => f.severity === 'error')!.at.line).toBe(notebook.last!.text.split('\n').findIndex(l => l.includes('depths')));
  });
  test('that adds one, renames one or takes one away plans at most that one', () => {
    const notebook = pages(varied('Tide'));
    expect(notebook.edit('page.plate', '  variant "trial 0"', '  variant "wide" {\n    shell0.depth: 90 mm\n  }\n  variant "trial 0"')).toMatchObject({ planned: 1 + 1 });
    expect(notebook.edit('page.plate', 'variant "wide"', 'variant "wider"')).toMatchObject({ planned: 1 + 1 });
    expect(notebook.edit('page.plate', '  variant "wider" {\n    shell0.depth: 90 mm\n  }\n', '')).toMatchObject({ planned: 1 });
    expect(wrong(notebook)).toEqual(WRONG);
  });
  test('that is outside of them plans all of them again', () => {
    for (const [from, to] of [['-> shell3: 1203 mm', '-> shell3: 1204 mm'], ['tube length: 350 mm', 'tube length: 360 mm'], ['  splitter S1\n', '  splitter S1\n  let depths = 12 mm\n']] as const) {
      const notebook = pages(varied('Tide'));
      expect(notebook.edit('page.plate', from, to), to).toMatchObject({ planned: 1 + VARIANTS });
      expect(wrong(notebook), to).toEqual(to.includes('let') ? [] : WRONG);
    }
  });
  test('that is beside the setup plans nothing, also when one of its variants is edited next', () => {
    const notebook = pages(varied('Tide'), varied('Ebb'));
    expect(notebook.edit('page.plate', 'setup "Tide"', '// low water\n\nsetup "Tide"')).toMatchObject({ planned: 0 });
    const text = varied('Ebb');
    expect(notebook.edit('page.plate', text, text.replace('shell1.depth: 31 mm', 'shell1.depth: 35 mm'))).toMatchObject({ planned: 1 + 1 });
    expect(wrong(notebook)).toEqual([...WRONG, ...WRONG]);
    expect(notebook.last!.findings.filter(f => f.severity === 'error').map(f => f.at.line)).toEqual(notebook.last!.text.split('\n').flatMap((l, i) => (l.includes('depths') ? [i] : [])));
  });
  test('that changes an item of an inventory plans those again that may draw on it', () => {
    const notebook = new Notebook();
    const lab = (loss: string): string => `inventory lab {\n  mirror flat {\n    loss: ${loss}\n  }\n  mirror small {\n    loss: 1%\n  }\n}\n`;
    notebook.write('lab.plate', lab('2%'));
    notebook.write('page.plate', `use "lab.plate"\n${varied('Tide').replace('shell0.depth: 30 mm', 'mirror M9 = lab.flat').replace('shell1.depth: 31 mm', 'mirror M9 = lab.small')}`);
    notebook.look('page.plate');
    expect(wrong(notebook)).toEqual(WRONG);
    notebook.write('lab.plate', lab('3%'));
    expect(notebook.look('page.plate')).toMatchObject({ planned: 1 + 1 });
  });
});

describe('an edit beside a setup', () => {
  test('leaves it whole', () => {
    const notebook = pages(shells('Tide'), shells('Ebb'), shells('Spring'));
    const [tide, ebb, spring] = notebook.last!.results;
    const text = shells('Ebb');
    expect(notebook.edit('page.plate', text, text.replace('-> shell3: 1203 mm', '-> shell3: 1204 mm'))).toEqual({ lines: 1, bound: 1, planned: 1, rules: RULES_OF_ARM, bands: BANDS_OF_ARM });
    expect(notebook.last!.results[0]).toBe(tide);
    expect(notebook.last!.results[1]).not.toBe(ebb);
    expect(notebook.last!.results[2]).toBe(spring);
  });
  test('above it moves it, and what is said of it', () => {
    const notebook = pages(shells('Tide'), shells('Ebb'));
    const before = notebook.last!.findings.map(f => f.at.line);
    const lines = notebook.last!.model.setups.map(s => s.at.line);
    expect(notebook.edit('page.plate', 'setup "Tide"', '// low water\n\nsetup "Tide"')).toEqual({ ...NOTHING, lines: 2 });
    expect(notebook.last!.findings.map(f => f.at.line)).toEqual(before.map(l => l + 2));
    expect(notebook.last!.model.setups.map(s => s.at.line)).toEqual(lines.map(l => l + 2));
  });
  test('that moves it to the end of the page leaves it whole as well', () => {
    const notebook = pages(shells('Tide'), shells('Ebb'));
    const ebb = notebook.last!.results[1];
    notebook.write('page.plate', `${shells('Ebb')}\n${shells('Neap')}`);
    expect(notebook.look('page.plate')).toMatchObject({ bound: 1, planned: 1, rules: 0 });
    expect(notebook.last!.results[0]).toBe(ebb);
  });
  test('while a brace is missing in it, too', () => {
    const notebook = pages(shells('Tide'), shells('Ebb'), shells('Spring'));
    const [tide, , spring] = notebook.last!.results;
    const text = shells('Ebb');
    notebook.edit('page.plate', text, text.replace(/\}\n$/, '\n'));
    expect(notebook.last!.findings.map(f => f.code)).toContain('brace-not-closed');
    expect(notebook.last!.results[0]).toBe(tide);
    expect(notebook.last!.results[2]).toBe(spring);
  });
  test('that changes nothing makes nothing', () => {
    const notebook = pages(shells('Tide'));
    expect(notebook.look('page.plate')).toEqual(NOTHING);
  });
});

describe('an edit of an inventory', () => {
  const LAB = `inventory lab {
  laser red-12 {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  laser green-30 {
    wavelength: 532 nm
    coherence length: 200 mm
  }
  mirror flat-50
}
`;
  const own = (name: string, laser: string): string => `setup "${name}" {
  laser one = lab.${laser}
  splitter S1
  object shell {
    depth: 35 mm
  }
  plate P1
  beam raw from one
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> shell: 1200 mm
    -> P1: 355 mm
}
`;
  const notebook = (...texts: string[]): Notebook => {
    const n = new Notebook();
    n.write('lab.plate', LAB);
    n.write('page.plate', `use "lab.plate"\n${texts.join('\n')}`);
    n.look('page.plate');
    return n;
  };

  test('item plans the setups that draw on it', () => {
    const n = notebook(own('Tide', 'red-12'), own('Ebb', 'green-30'), own('Spring', 'red-12'));
    const [tide, ebb, spring] = n.last!.results;
    const work = n.edit('lab.plate', 'tube length: 350 mm', 'tube length: 360 mm', 'page.plate');
    // the inventory, its item, and two setups
    expect(work).toMatchObject({ lines: 1, bound: 2 + 2, planned: 2 });
    expect(n.last!.results.map((r, i) => r === [tide, ebb, spring][i])).toEqual([false, true, false]);
    // In each of the two: revival distance and mode spacing of the laser, and of each of the four parts the brightness; that of the darkest part may lie elsewhere, and has a mismatch.
    expect(work.rules).toBeLessThanOrEqual(2 * (2 + 4 + 1));
    expect(work.rules).toBeGreaterThanOrEqual(2 * (2 + 4));
  });
  test('item on which nothing draws, its order, its notes and comments plan none', () => {
    const n = notebook(own('Tide', 'red-12'), own('Ebb', 'green-30'));
    for (const [from, to] of [['mirror flat-50', 'mirror flat-75'], ['inventory lab {', '// what we own\ninventory lab {'], ['  mirror flat-75\n', '  // bench\n  mirror flat-75\n  mirror flat-100\n'], ['inventory lab {\n', 'inventory lab {\n\n  mirror round-25\n']] as const) {
      expect(n.edit('lab.plate', from, to, 'page.plate'), to).toMatchObject({ planned: 0, rules: 0, bands: 0 });
    }
    // The items have moved, and are found where they stand now.
    const reference = n.last!.model.references.find(r => r.name === 'lab.red-12')!;
    expect(reference.target).toMatchObject({ uri: `${FOLDER}lab.plate`, line: 4 });
  });
  test('item that was missing is found when it comes', () => {
    const n = notebook(own('Tide', 'blue-5'), own('Ebb', 'green-30'));
    expect(n.last!.findings.map(f => f.code)).toContain('unknown-name');
    expect(n.edit('lab.plate', 'laser red-12', 'laser blue-5', 'page.plate')).toMatchObject({ planned: 1 });
    expect(n.last!.findings.map(f => f.code)).not.toContain('unknown-name');
  });
  test('item that goes is missed', () => {
    const n = notebook(own('Tide', 'red-12'), own('Ebb', 'green-30'));
    expect(n.edit('lab.plate', 'laser red-12', 'laser red-13', 'page.plate')).toMatchObject({ planned: 1 });
    expect(n.last!.findings.find(f => f.code === 'unknown-name')?.data).toMatchObject({ name: 'lab.red-12', suggestion: 'lab.red-13' });
    // What is suggested depends on all names.
    n.edit('lab.plate', 'laser red-13', 'laser red-1', 'page.plate');
    expect(n.last!.findings.find(f => f.code === 'unknown-name')?.data).toMatchObject({ suggestion: 'lab.red-1' });
  });
  test('reaches all pages that use it', () => {
    const n = notebook(own('Tide', 'red-12'));
    n.write('other.plate', `use "lab.plate"\n${own('Ebb', 'red-12')}\n${own('Neap', 'green-30')}`);
    n.look('other.plate');
    expect(n.edit('lab.plate', 'tube length: 350 mm', 'tube length: 360 mm', 'page.plate')).toMatchObject({ lines: 1, bound: 3, planned: 1 });
    // The inventory itself was bound for the first page.
    expect(n.look('other.plate')).toMatchObject({ lines: 0, bound: 1, planned: 1 });
    expect(n.look('lab.plate')).toEqual(NOTHING);
  });
});

test('a snapshot does not hold the setup before the edit, nor its cells', () => {
  const notebook = pages(shells('Tide'));
  const { graph: old, setup } = notebook.last!.results[0]!;
  const before = new Set<object>([old, setup, ...old.cells]);
  notebook.edit('page.plate', '-> shell3: 1203 mm', '-> shell3: 1204 mm');
  const seen = new Set<unknown>();
  const reaches = (v: unknown): boolean => {
    if (typeof v !== 'object' || v === null || seen.has(v)) return false;
    seen.add(v);
    if (before.has(v)) return true;
    return v instanceof Map ? [...v].some(([k, x]) => reaches(k) || reaches(x)) : v instanceof Set ? [...v].some(reaches) : Object.values(v).some(reaches);
  };
  expect(reaches(notebook.last)).toBe(false);
  expect(seen.size).toBeGreaterThan(500);
});
