/** What holds for every text: random sentences of the grammar, random pages, and pieces in any order. A failure prints the text. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { format } from '../../grammar/format.ts';
import { MAX_DEPTH } from '../../grammar/nest.ts';
import { LineCache, parse, parseLines } from '../../grammar/parse.ts';
import { parseLine } from '../../grammar/parse-line.ts';
import type { Node } from '../../grammar/tree.ts';
import { expectPlaces } from './check.ts';
import { meaning, tokens, written } from './kept.ts';
import { loose, page, sentence, soup } from './sentences.ts';

// Many texts, and machines differ: how long it takes is no part of what is checked.
vi.setConfig({ testTimeout: 120_000 });

const binary = fc.string({ unit: 'binary', maxLength: 60 });
const anyText = fc.oneof(page, page, soup, fc.array(soup, { maxLength: 6 }).map(lines => lines.join('\n')), binary, fc.array(binary, { maxLength: 4 }).map(lines => lines.join('\r\n')));
const always = <T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => void, numRuns = 400): void => { fc.assert(fc.property(arbitrary, holds), { numRuns }); };

describe('reading', () => {
  test('every sentence of the grammar is understood', () => {
    always(sentence, text => {
      const line = parseLine(text);
      expect(line.issue, text).toBeUndefined();
      expectPlaces(line);
    });
  });
  test('every text has its places inside its lines', () => {
    always(anyText, text => { for (const line of parse(text).lines) expectPlaces(line); });
    always(loose, text => { expectPlaces(parseLine(text)); });
  });
  test('what stands before is read alike, whatever stands behind', () => {
    always(fc.tuple(sentence, fc.constantFrom(' ;', ' ; {', ' @ 3', ' "', ' "a {')), ([text, broken]) => {
      const [whole, cut] = [parseLine(text.replace(/ \{$/, '')), parseLine(text.replace(/ \{$/, '') + broken)];
      expect(cut.issue?.start).toBe(whole.text.length + 1);
      expect({ ...cut, text: '', tokens: [], issue: undefined, opens: false }).toEqual({ ...whole, text: '', tokens: [], issue: undefined, opens: false });
      expect(cut.opens).toBe(broken.endsWith('{'));
    });
  });
  test('edits, one after the other, give what a fresh reading gives', () => {
    const edit = fc.record({ at: fc.nat(20), remove: fc.nat(3), insert: fc.array(fc.oneof(sentence, soup, fc.constant('}')), { maxLength: 3 }) });
    always(fc.tuple(page, fc.array(edit, { maxLength: 6 })), ([text, edits]) => {
      const cache = new LineCache();
      const lines = parse(text, cache).lines.map(l => l.text);
      for (const { at, remove, insert } of edits) {
        lines.splice(at, remove, ...insert);
        expect(parseLines(lines, cache)).toEqual(parseLines(lines));
      }
    }, 150);
  });
  test('a node that is kept over edits holds what it held: what was made of it still counts', () => {
    const shape = (n: Node): string => `${n.doc ?? ''}|${n.line.text}[${n.children.map(shape).join()}](${n.legs.map(shape).join()})`;
    const all = (nodes: readonly Node[]): Node[] => nodes.flatMap(n => [n, ...all(n.children)]);
    const edit = fc.record({ at: fc.nat(20), remove: fc.nat(3), insert: fc.array(fc.oneof(sentence, soup, fc.constantFrom('}', '" cut', '-> M1: 5 mm', '// wet sand', '')), { maxLength: 3 }) });
    always(fc.tuple(page, fc.array(edit, { maxLength: 6 })), ([text, edits]) => {
      const cache = new LineCache();
      const lines = parse(text, cache).lines.map(l => l.text);
      for (const { at, remove, insert } of edits) {
        for (const n of all(parseLines(lines, cache).nodes)) n.memo = shape(n);
        lines.splice(at, remove, ...insert);
        for (const n of all(parseLines(lines, cache).nodes)) if (n.memo !== undefined) expect(n.memo, lines.join('\n')).toBe(shape(n));
      }
    });
  });
  test('a thing above a line that cannot be read is made anew when the leg below that line becomes its own', () => {
    const cache = new LineCache();
    const before = parse('setup "a" {\n  plate P1\n  beam raw from red\n    -> S1\n}', cache).nodes[0]!.children[0]!;
    const after = parse('setup "a" {\n  plate P1\n "am raw from red\n    -> S1\n}', cache).nodes[0]!.children[0]!;
    expect([before.legs.length, after.legs.length, after === before]).toEqual([0, 1, false]);
  });
  test('so is a thing above such a line that opens a block by its indent, when a leg comes behind the block', () => {
    const cache = new LineCache();
    const before = parse('M1\n" cut\n  (', cache).nodes[0]!;
    const after = parse('M1\n" cut\n  (\n}\n-> M1 at 5 mm', cache).nodes[0]!;
    expect([before.legs.length, after.legs.length, after === before]).toEqual([0, 1, false]);
  });
});

describe('formatting', () => {
  test('twice is formatting once', () => {
    always(anyText, text => {
      const once = format(text).text;
      expect(format(once).text).toBe(once);
    });
  });
  test('keeps the tokens of every line, and lines that cannot be read as they are', () => {
    always(anyText, text => {
      const formatted = format(text);
      const [before, after] = [parse(text).lines, parse(formatted.text).lines];
      expect(after.filter(written).map(l => (l.issue ? l.text : tokens(l)))).toEqual(before.filter(written).map(l => (l.issue ? l.text : tokens(l))));
      expect(formatted.left).toEqual(before.flatMap((l, at) => (l.issue ? [at] : [])));
    });
  });
  test('keeps what every line means to the others', () => {
    always(anyText, text => { expect(meaning(format(text).text)).toEqual(meaning(text)); });
  });
  test('indents by nesting and nothing else, where the braces pair', () => {
    always(page, text => {
      const tree = parse(format(text).text);
      if (tree.issues.some(i => i.code.startsWith('brace'))) return;
      const walk = (node: Node, depth: number): void => {
        if (!node.line.issue) expect(/^ */.exec(node.line.text)![0].length).toBe(2 * Math.min(depth, MAX_DEPTH + 2));
        const closing = tree.lines[node.end]!;
        if (node.line.opens && !closing.issue) expect(/^ *\}/.exec(closing.text)?.[0].length).toBe(2 * depth + 1 - (node.line.kind === 'leg' ? 2 : 0));
        for (const leg of node.legs) walk(leg, depth + 1);
        for (const child of node.children) walk(child, (node.line.kind === 'leg' ? depth - 1 : depth) + 1);
      };
      for (const node of tree.nodes) walk(node, 0);
    });
  });
  test('leaves at most one empty line, none at the ends, and no blanks at line ends', () => {
    always(page, text => {
      const formatted = format(text).text;
      expect(formatted).not.toMatch(/^(?:\r?\n)(?!\ufeff)|(?:\r?\n){3}|(?:\r?\n){2}$/);
      for (const line of parse(formatted).lines) if (!line.issue) expect(line.text).toBe(line.text.trimEnd());
    });
  });
  test('keeps the kind of line end', () => {
    always(page, text => {
      const formatted = format(text).text;
      expect(new Set(formatted.match(/\r\n|\r|\n/g))).toEqual(new Set(formatted === '' ? [] : [text.includes('\r\n') ? '\r\n' : '\n']));
    });
  });
});
