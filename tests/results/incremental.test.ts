/** What is kept from one text to the next never shows: after any edits the answers are those of an analysis that has kept nothing. A failure prints the edits. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LineCache } from '../../grammar/parse.ts';
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { reportJson } from '../../server/cli/json.ts';
import { ALL_HINTS } from '../../server/features/hint-kinds.ts';
import { hintsOf } from '../../server/features/hints.ts';
import { hoverAt } from '../../server/features/hover/hover.ts';
import { usesIn } from '../../server/features/references.ts';
import { reportOf } from '../../server/features/report/report.ts';
import { reportText } from '../../server/features/report/text.ts';
import { summaryAt } from '../../server/features/summary.ts';
import { symbolsOf } from '../../server/features/symbols.ts';
import { tokensOf } from '../../server/features/tokens.ts';
import { sample } from '../../server/results/sampling.ts';
import { EXAMPLES } from '../examples/library.ts';

const FOLDER = 'file:///saltmarsh/';
const LAB = `${FOLDER}saltmarsh-lab.plate`;
const example = (name: string): string => EXAMPLES.find(e => e.name.endsWith(`${name}.plate`))!.text;

/** Pages with several setups each, so that there is something to keep; with inventories of their own, of another file, or none. */
const PAGES: readonly string[] = [
  ['whelk-on-the-table', 'variants', 'whelk-by-string'], ['readings', 'whelk-too-long', 'single-beam-oyster'], ['two-plates', 'walk-the-beam', 'key-and-fill'], ['shots', 'split-beam-reflection', 'collimated-reference'],
  ['image-plane-transfer', 'rainbow-transfer', 'back-lit-leaf'],
].map(names => names.map(example).join('\n')).concat(`${example('saltmarsh-lab')}\n${example('whelk-on-the-table').replace(/^use .*\n/m, '')}\n${example('readings').replace(/^use .*\n/m, '')}`);

/** The files of a notebook: the page, and the inventory that it may use. */
interface Files { readonly page: string; readonly lab: string }
const PAGE = `${FOLDER}page.plate`;
const libraryOf = (files: Files, lines?: Library['lines']): Library => ({
  resolve: path => FOLDER + path, text: uri => (uri === LAB ? files.lab : uri === PAGE ? files.page : undefined), ...(lines ? { lines } : {}),
});

/** All that is shown of a snapshot. */
function shown(s: Snapshot, places: readonly number[]): Record<string, unknown> {
  const file = { name: 'page.plate', path: '/saltmarsh/page.plate', uri: s.uri, text: s.text, texts: { resolve: (path: string) => path, text: () => '' } };
  const at = (n: number): [number, number] => {
    const line = n % s.tree.lines.length;
    return [line, n % (s.tree.lines[line]!.text.length + 1)];
  };
  // One setup in full, since that takes time.
  const one = s.results.length === 0 ? [] : [s.results[places[0]! % s.results.length]!];
  return {
    findings: s.findings, problems: JSON.stringify([s.model.problems, s.results.map(r => r.problems)]), outline: JSON.stringify(symbolsOf(s)), nodes: outlineOf(s),
    cells: s.results.map(({ graph }) => graph.planned.map(c => `${c.name} ${String(graph.value(c))} ${c.missing?.code ?? ''} ${c.at ? JSON.stringify(c.at) : ''}`)),
    report: reportText(one.map(r => reportOf(s, r)), 'page.plate'), json: reportJson(file, s, one, s.findings), bands: one.map(({ graph, published }) => published.map(c => [graph.uncertainty(c), sample(graph, c)])),
    words: JSON.stringify([usesIn(s), tokensOf(s), hintsOf(s, ALL_HINTS), s.model.uses]),
    hovers: places.map(n => hoverAt(s, ...at(n))?.markdown), summary: JSON.stringify(summaryAt(s, at(places[1]!)[0])),
  };
}

/** The first difference in short: a comparison of the whole would be pages long, and take minutes. */
function expectSame(kept: Record<string, unknown>, fresh: Record<string, unknown>): void {
  for (const key of Object.keys(fresh)) {
    const [a, b] = [kept, fresh].map(of => JSON.stringify(of[key])) as [string, string];
    if (a === b) continue;
    const at = [...b].findIndex((c, i) => c !== a[i]);
    const from = Math.max(0, at - 150);
    expect(`${key}: … ${a.slice(from, at + 150)} …`).toBe(`${key}: … ${b.slice(from, at + 150)} …`);
  }
}

type NodeLike = Snapshot['tree']['nodes'][number];
function outlineOf({ tree }: Snapshot): string {
  const one = (n: NodeLike): unknown => [n.at, n.end, n.line.text, n.doc, n.parent?.at, n.children.map(one), n.legs.map(one)];
  return JSON.stringify([tree.nodes.map(one), tree.issues]);
}

const number = fc.constantFrom('0', '1', '384', '-3', '1e300', '?', '4:1', '12.5', '750', 'gap');
const line = fc.constantFrom('', '// wet sand', '/// wet sand', '}', '{', 'setup "Tide" {', 'inventory lab {', 'use "saltmarsh-lab.plate"', 'mirror M9', '-> M1: 300 mm', 'let gap = 300 mm', 'expect mismatch < 10 mm', 'laser red = lab.red-12', 'laser red = lab.gren', 'miror M1', 'object whelk {', 'depth: 35 mm', 'accept arms-mismatched "so it is"', 'variant "b" {', 'measured S1 -> M1: 752 mm by thread', 'plate P1 = lab.fine-grain');
const edit = fc.record({
  in: fc.constantFrom('page', 'page', 'page', 'lab'),
  kind: fc.constantFrom('delete', 'insert', 'duplicate', 'swap', 'number', 'number', 'number', 'type', 'type', 'erase', 'undo', 'undo', 'block'),
  at: fc.nat(5000), to: fc.nat(5000), number, line, letter: fc.constantFrom('a', ' ', '4', '{', '}', '"', '.', '\n', '-', ':', '//'),
});
type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never;

function edited(text: string, e: Edit, before: string): string {
  const lines = text.split('\n');
  const [i, j] = [e.at % lines.length, e.to % lines.length] as [number, number];
  const place = (e.at * 37 + e.to) % (text.length + 1);
  switch (e.kind) {
    case 'delete': lines.splice(i, 1); break;
    case 'insert': lines.splice(i, 0, e.line); break;
    case 'duplicate': lines.splice(j, 0, lines[i]!); break;
    case 'swap': [lines[i], lines[j]] = [lines[j]!, lines[i]!]; break;
    case 'number': {
      const found = [...text.matchAll(/\d+(?:\.\d+)?/g)];
      const m = found[e.at % Math.max(1, found.length)];
      return m ? text.slice(0, m.index) + e.number + text.slice(m.index + m[0].length) : text;
    }
    case 'type': return text.slice(0, place) + e.letter + text.slice(place);
    case 'erase': return text.slice(0, place) + text.slice(place + 1);
    // a whole setup or inventory moves to the end of the text
    case 'block': {
      const start = lines.findIndex((l, k) => k >= i && /^(?:setup|inventory) /.test(l));
      const end = start < 0 ? -1 : lines.indexOf('}', start);
      if (end > 0) lines.push(...lines.splice(start, end - start + 1));
      break;
    }
    case 'undo': return before;
  }
  return lines.join('\n');
}

describe('a page that is edited', () => {
  test('gives the answers of a page that is read for the first time', () => {
    let kept = 0;
    let bound = 0;
    fc.assert(fc.property(fc.nat(PAGES.length - 1), fc.array(edit, { minLength: 12, maxLength: 12 }), (page, edits) => {
      const caches = new Map([[PAGE, new LineCache()], [LAB, new LineCache()]]);
      let files: Files = { page: PAGES[page]!, lab: example('saltmarsh-lab') };
      let before = files;
      analyse(PAGE, files.page, libraryOf(files, uri => caches.get(uri)), caches.get(PAGE));
      for (const e of edits) {
        const now = { ...files, [e.in]: edited(files[e.in], e, before[e.in]) };
        [before, files] = [files, now];
        const places = [e.at, e.to, e.at + e.to, e.at * 3, e.to * 5];
        const one = analyse(PAGE, files.page, libraryOf(files, uri => caches.get(uri)), caches.get(PAGE));
        const other = analyse(PAGE, files.page, libraryOf(files));
        kept += one.results.length - one.work.planned;
        bound += other.work.bound - one.work.bound;
        expectSame(shown(one, places), shown(other, places));
        // The inventory is a page as well, which is looked at between two edits of the other.
        if (e.at % 5 === 0) expectSame(shown(analyse(LAB, files.lab, libraryOf(files), caches.get(LAB)), places), shown(analyse(LAB, files.lab, libraryOf(files)), places));
      }
    }), { numRuns: 18, endOnFailure: true });
    // Else there was nothing to be wrong.
    expect(kept).toBeGreaterThan(200);
    expect(bound).toBeGreaterThan(2000);
  });
});
