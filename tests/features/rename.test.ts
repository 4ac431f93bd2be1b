import { describe, expect, it } from 'vitest';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { LineCache, parse } from '../../grammar/parse.ts';
import { alone, analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { applyEdits, type Edit } from '../../server/model/edits.ts';
import { isShared, useAt, usesIn } from '../../server/features/references.ts';
import { rename, renamable, type Page } from '../../server/features/rename.ts';
import { namedByKind } from '../../server/model/mentions/names.ts';
import { EXAMPLES } from '../examples/library.ts';
import { marked } from './source.ts';

const anywhere = (): boolean => true;
const page = (source: string): { pages: Page[]; at: [number, number] } => {
  const { snapshot, line, character } = marked(source);
  return { pages: [{ snapshot, library: alone }], at: [line, character] };
};

/** The cursor is `|`; the text as it is after the rename, or why there is none. */
function renamed(source: string, name: string): string {
  const { pages, at } = page(source);
  const { snapshot } = pages[0]!;
  const found = renamable(snapshot, ...at, anywhere);
  const edits = 'refused' in found ? found : rename(pages, found.named, name);
  return edits instanceof Map ? applyEdits(snapshot.text, edits.get(snapshot.uri) ?? []) : edits.refused;
}

const SETUP = 'setup "a" {\n  laser red\n  splitter S1\n  mirror M1\n  object shell\n  plate P1\n  let gap = 300 mm\n  room {\n    temperature: 20 °C\n  }\n  beam raw from red\n    -> S1: gap\n  beam key from S1 through\n    -> M1: 1 m\n    -> P1: 1 m\n  beam other from S1 reflected\n    -> shell: 1.7 m\n    -> P1: 300 mm\n  measured reference: 2 m by string\n  expect mismatch < 1 m\n}\n';
const at = (piece: string, cursor = 0): string => {
  if (SETUP.split(piece).length !== 2) throw new Error(`“${piece}” does not stand there once`);
  return SETUP.replace(piece, () => `${piece.slice(0, cursor)}|${piece.slice(cursor)}`);
};

describe('a rename', () => {
  it('changes the names and not a byte besides', () => {
    expect(renamed(at('-> M1: 1 m', 3), 'Mx-2')).toBe(SETUP.replaceAll('M1', 'Mx-2'));
    expect(renamed(at('let gap', 5), 'µ-gap_1')).toBe(SETUP.replace('let gap', 'let µ-gap_1').replace('S1: gap', 'S1: µ-gap_1'));
    const odd = '\ufeff// 😀 M1\r\nsetup "M1" {\r\n  mirror|  M1\t// M1\r\n\tplate P1   facing   M1\r\n}'.replace('mirror|  M1', 'mirror  |M1');
    expect(renamed(odd, 'Ä')).toBe('\ufeff// 😀 M1\r\nsetup "M1" {\r\n  mirror  Ä\t// M1\r\n\tplate P1   facing   Ä\r\n}');
  });
  it('of a variant follows to the exposures in it, and keeps the quotes', () => {
    const page = (name: string): string => `setup "a" {\n  laser red\n  plate P1\n  variant "${name}" {\n    P1 at (1, 2) mm\n  }\n  variant "other" {\n  }\n  exposure first {\n    variant: "${name}"\n  }\n  exposure second {\n    variant: "other"\n  }\n}\nsetup "green" {\n  variant "green" {\n  }\n}\n`;
    const declared = page('green').replace('variant "gr', 'variant "gr|');
    expect(renamed(declared, 'by the window, 2 µ')).toBe(page('by the window, 2 µ'));
    expect(renamed(page('green').replace('variant: "green', 'variant: "green|'), 'P1')).toBe(page('P1'));
    for (const name of ['', 'a"b', 'a\nb']) expect(renamed(declared, name)).toMatch(/at least one letter|cannot stand in quotes/);
    expect(renamed(declared, 'other')).toBe('“other” is already the name of a variant, in line 7.');
  });
  it('of a variant without quotes gives it some where the new name needs them', () => {
    const page = (...[declared, used]: readonly [string, string]): string => `setup "a" {\n  laser red\n  plate P1\n  variant ${declared} {\n    P1 at (1, 2) mm\n  }\n  exposure first {\n    variant: ${used}\n  }\n  exposure second\n}\n`;
    const declared = page('gr|een', 'green');
    expect(renamed(declared, 'blue')).toBe(page('blue', 'blue'));
    expect(renamed(declared, 'by the window, 2 µ')).toBe(page('"by the window, 2 µ"', '"by the window, 2 µ"'));
    expect(renamed(page('"green"', 'gre|en'), 'by 2 m')).toBe(page('"by 2 m"', '"by 2 m"'));
    expect(renamed(page('clos|er plate 2', '"closer plate 2"'), 'near')).toBe(page('near', '"near"'));
  });
  it('to the same name, with blanks round it, changes nothing', () => expect(renamed(at('mirror M1', 7), ' M1 ')).toBe(SETUP));
  it('of what is in the way of an error still works', () => expect(renamed('setup "a" {\n  mirror |M1\n  plate P1 facing M1 §§\n  beam b from M1', 'M2')).toBe('setup "a" {\n  mirror M2\n  plate P1 facing M2 §§\n  beam b from M2'));
});

describe('it is refused, with the reason,', () => {
  const refuses = (source: string, name: string, reason: RegExp): void => { expect(renamed(source, name)).toMatch(reason); };
  it('where there is no name', () => {
    refuses(at('mirror M1', 2), 'x1', /^“mirror” is a word of the language: only names can be changed\.$/);
    refuses(at('300 mm\n  room', 5), 'x1', /^“mm” is a unit/);
    refuses(at('expect mismatch', 9), 'x1', /^“mismatch” is the name of a result/);
    refuses(at('temperature', 1), 'x1', /^“temperature” is a word of the language/);
    refuses(at('S1 through', 5), 'x1', /^“through” is a word of the language/);
    refuses(at('"a"', 1), 'x1', /^A text in quotes is no name/);
    refuses(at('room {', 1), 'x1', /^“room” is called by the word of its kind/);
    refuses(at('beam key', 1), 'x1', /^There is no name here/);
    refuses('setup "a" {\n  plate P1 facing M|9\n}', 'x1', /^“M9” is not declared/);
    refuses('|', 'x1', /^There is no name here/);
  });
  it('where the new name is none', () => {
    refuses(at('mirror M1', 7), '', /^A name has at least one letter/);
    for (const name of ['at', 'for', 'std', 'x']) refuses(at('mirror M1', 7), name, /is a word of the language that cannot be a name/);
    for (const name of ['a b', '1a', 'a-', '-a', 'a//', 'a "b"', 'a = 1', '😀', 'a\nb', '(a)', 'a:', '"a"', '{']) refuses(at('mirror M1', 7), name, /cannot be a name: a name is one word/);
    refuses(at('mirror M1', 7), 'lab.M1', /^A name has no dot/);
  });
  it('where it is taken', () => {
    refuses(at('mirror M1', 7), 'P1', /^“P1” is already the name of a plate, in line 6\.$/);
    refuses(at('mirror M1', 7), 'gap', /^“gap” is already the name of a value, in line 7\.$/);
    refuses(at('let gap', 5), 'raw', /^“raw” is already the name of a beam, in line 11\.$/);
    refuses(at('beam raw', 6), 'M1', /^“M1” is already the name of a mirror, in line 4\.$/);
    refuses(`inventory lab {\n}\n${at('mirror M1', 7)}`, 'lab', /^“lab” is already the name of an inventory, in line 1\.$/);
    refuses('inventory lab {\n  laser |a\n  laser b\n}', 'b', /^“b” is already the name of a laser, in line 3\.$/);
    refuses(at('mirror M1', 7).replace('}\n', '}\n  variant "v" {\n    mirror M9\n  }\n'), 'M9', /^“M9” is already the name of a mirror/);
  });
  it('where another line would then mean something else', () => {
    // `reference` is a role here: a beam of that name would take the reading.
    refuses(at('beam other', 6), 'reference', /line 19 would then mean something else/);
    refuses(at('let gap', 5), 'mismatch', /line 20 would then mean something else/);
    refuses('inventory lab {\n  string |a\n}\ninventory shed {\n  string b\n}\nsetup "s" {\n  laser red\n  plate P1\n  beam r from red\n    -> P1: 1 m\n  measured r: 1 m by b\n}', 'b', /line 12 would then mean something else/);
  });
  it('where it is declared outside of the open folder', () => {
    const { snapshot, line, character } = marked('inventory |lab {\n}');
    expect(renamable(snapshot, line, character, () => false)).toEqual({ refused: '“lab” is declared in whelk.plate, which is outside of the open folder: other pages there may name it.' });
    const thing = marked('setup "a" {\n  mirror |M1\n}');
    expect(renamable(thing.snapshot, thing.line, thing.character, () => false)).toMatchObject({ named: { name: 'M1' } });
  });
});

/** All examples, each as text that a rename may change. Their lines are known, as an editor's server knows them: most stay. */
const TEXTS = new Map(EXAMPLES.map(p => [p.uri, p.text]));
const LINES = new Map([...TEXTS].map(([uri, text]) => {
  const lines = new LineCache();
  parse(text, lines);
  return [uri, lines];
}));
const library = (texts: ReadonlyMap<string, string>): Library => ({ resolve: (path, from) => new URL(path, from).href, text: uri => texts.get(uri), lines: uri => LINES.get(uri)?.copy() });
const PAGES: readonly Page[] = EXAMPLES.map(p => ({ snapshot: analyse(p.uri, p.text, library(TEXTS)), library: library(TEXTS) }));

/** What a page says, with the old and the new name alike. */
function sayings(s: Snapshot, names: readonly string[]): unknown {
  const alike = (text: string): string => text.replace(/[\p{L}\p{N}_]+(?:-[\p{L}\p{N}_]+)*/gu, w => (names.includes(w) ? '§' : w));
  return {
    findings: s.findings.map(f => [f.at.line, f.code, f.severity, alike(f.subject), alike(f.message.replace(/Did you mean.*$|known are.*$/i, '')), f.accepted]),
    results: s.results.map(r => [r.published.map(c => [alike(c.name), c.missing?.code ?? r.graph.value(c), c.missing ? 0 : r.graph.uncertainty(c)]), r.goals.map(g => [g.goal.node.at, g.outcome, g.value])]),
    problems: s.model.problems.length,
  };
}

/** Applies a rename to copies of all pages and compares. */
function holds(edits: ReadonlyMap<string, readonly Edit[]>, from: string, to: string, touched: readonly Page[]): void {
  const after = new Map(TEXTS);
  for (const [uri, list] of edits) {
    const text = applyEdits(TEXTS.get(uri)!, list);
    after.set(uri, text);
    // Only the spans of the name have changed.
    const lines = TEXTS.get(uri)!.split('\n');
    for (const e of list) expect(lines[e.at.line]!.slice(e.at.start, e.at.end)).toBe(from);
    const back = list.map(e => ({ e, shift: list.filter(o => o.at.line === e.at.line && o.at.start < e.at.start).length * (to.length - from.length) }));
    const undone = back.sort((a, b) => b.e.at.line - a.e.at.line || b.e.at.start - a.e.at.start).reduce((t, { e, shift }) => {
      const rows = t.split('\n');
      const row = rows[e.at.line]!;
      rows[e.at.line] = row.slice(0, e.at.start + shift) + from + row.slice(e.at.start + shift + to.length);
      return rows.join('\n');
    }, text);
    expect(undone).toBe(TEXTS.get(uri));
  }
  for (const { snapshot } of touched) {
    const now = analyse(snapshot.uri, after.get(snapshot.uri)!, library(after));
    expect(sayings(now, [from, to]), `${from} → ${to} in ${snapshot.uri}`).toEqual(sayings(snapshot, [from, to]));
  }
}

const users = (first: Page): Page[] => [first, ...PAGES.filter(p => p !== first && p.snapshot.text.includes('saltmarsh-lab'))];

describe.each(EXAMPLES.map(p => [p.name, p.uri] as const))('%s', (_, uri) => {
  it('says the same under any other name of everything that has one', () => {
    const own = PAGES.find(p => p.snapshot.uri === uri)!;
    // What is called by the word of its kind has no name of its own.
    const declared = usesIn(own.snapshot).filter(u => u.declares && !namedByKind(u.named));
    expect(declared.length).toBeGreaterThan(5);
    for (const { named } of declared) {
      const touched = isShared(named) ? users(own) : [own];
      const edits = rename(touched, named, 'quite-Another_1');
      if (!(edits instanceof Map)) throw new Error(`${named.name}: ${edits.refused}`);
      expect(edits.get(uri)!.length).toBeGreaterThan(0);
      // Of a shared name only the pages that say it can have changed.
      holds(edits, named.name, 'quite-Another_1', touched.filter(p => edits.has(p.snapshot.uri)));
    }
  });
});

it('whatever name is tried, the page says the same or it is refused', () => {
  const random = xoroshiro128plus(20260211);
  const of = <T>(all: readonly T[]): T => all[uniformInt(random, 0, all.length - 1)]!;
  const WORDS = ['reference', 'object', 'mismatch', 'brightness', 'far', 'dark', 'drift', 'beam', 'plate', 'mirror', 'card', 'screen', 'left', 'string', 'meter', 'tape-2', 'meter-1', 'lab', 'wheel', 'polarizer', 'through', 'room', 'setup', 'let', 'ground', 'P1', 'Zz'];
  let [done, refused] = [0, 0];
  for (const name of ['readings', 'variants', 'single-beam-oyster', 'whelk-on-the-table', 'image-plane-transfer']) {
    const own = PAGES.find(p => p.snapshot.uri.endsWith(`/${name}.plate`))!;
    for (const { named } of usesIn(own.snapshot).filter(u => u.declares && !namedByKind(u.named))) {
      for (let n = 0; n < 3; n++) {
        const to = of(WORDS);
        const edits = rename([own], named, to);
        if (!(edits instanceof Map)) { refused++; continue; }
        done++;
        if (edits.size > 0) holds(edits, named.name, to, [own]);
      }
    }
  }
  expect(done).toBeGreaterThan(50);
  expect(refused).toBeGreaterThan(20);
});

it('names the same thing afterwards as before, at every place', () => {
  const { pages, at: [line, character] } = page(at('mirror M1', 7));
  const edits = rename(pages, useAt(pages[0]!.snapshot, line, character)!.named, 'Mirror') as Map<string, Edit[]>;
  const after = analyse(pages[0]!.snapshot.uri, applyEdits(pages[0]!.snapshot.text, [...edits.values()][0]!));
  expect(usesIn(after).filter(u => u.named.name === 'Mirror').map(u => u.at.line)).toEqual(usesIn(pages[0]!.snapshot).filter(u => u.named.name === 'M1').map(u => u.at.line));
});
