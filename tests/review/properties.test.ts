/** What holds of any two pages: held against the examples, with every name of them, many numbers and lines changed. */
import { describe, expect, it } from 'vitest';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { format } from '../../grammar/format.ts';
import type { Node } from '../../grammar/tree.ts';
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { usesIn } from '../../server/features/references.ts';
import { rename } from '../../server/features/rename.ts';
import { applyEdits } from '../../server/model/edits.ts';
import { namedByKind } from '../../server/model/mentions/names.ts';
import type { Change } from '../../server/review/changes.ts';
import { isSame, reviewOf, type Review } from '../../server/review/review.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

const read = (uri: string, text: string, library: Library = disk): Snapshot => analyse(uri, text, library);
const changes = (r: Review): Change[] => [...r.rest.changes, ...r.inventories.flatMap(i => i.changes), ...r.setups.flatMap(s => s.changes)];
const said = (r: Review): string[] => changes(r).map(c => `${c.kind} ${c.what} ${c.name}: ${c.before?.text ?? ''} → ${c.after?.text ?? ''}`);

describe.each(EXAMPLES.map(p => [p.name, p] as const))('%s', (_, { uri, text }) => {
  const page = read(uri, text);

  it('is the same as itself, reformatted, with other ends of lines, comments and blanks, and in other units', () => {
    const crowded = text.split('\n').map(line => (/^\s*(?:$|\/\/)/.test(line) || line.includes('//') ? line : `  ${line.replace(/: /, ':   ')}   // as before`)).join('\r\n');
    for (const other of [text, format(text).text, crowded, `// new\n\n${text}`]) expect(said(reviewOf(page, read(uri, other)))).toEqual([]);
    expect(isSame(reviewOf(page, read(uri, text)))).toBe(true);
    // A tenth of the number before a centimetre is the same length; brackets and sizes lend their unit to all numbers in them, so that only single numbers are taken.
    let count = 0;
    const metric = text.split('\n').map(line => (/^\s*(?:\/\/|let|measured|expect)|"|\(| x |\+|\*/.test(line) ? line : line.replace(/(?<![\d.])(\d+)(?= mm$)/, n => { count++; return `${n}0e-1`; }))).join('\n');
    const centimetres = text.split('\n').map(line => (/^\s*(?:\/\/|let|measured|expect)|"|\(| x |\+|\*|±/.test(line) ? line : line.replace(/(?<![\d.])(\d+) mm(?=\s*$)/, (_m, n: string) => { count++; return `${Number(n) / 10} cm`; }))).join('\n');
    for (const other of [metric, centimetres]) expect(said(reviewOf(page, read(uri, other)))).toEqual([]);
    if (/: \d+ mm$/m.test(text)) expect(count).toBeGreaterThan(0);
  });

  it('a name that is changed everywhere is one row, and changes no result', () => {
    const declared = usesIn(page).filter(u => u.declares && !namedByKind(u.named) && u.named.at.uri === uri);
    expect(declared.length).toBeGreaterThan(2);
    for (const { named } of declared) {
      const edits = rename([{ snapshot: page, library: disk }], named, 'quite-Another_1');
      if (!(edits instanceof Map)) throw new Error(`${named.name}: ${edits.refused}`);
      const r = reviewOf(page, read(uri, applyEdits(text, edits.get(uri)!)));
      expect(said(r), named.name).toHaveLength(1);
      expect(changes(r)[0], named.name).toMatchObject({ kind: 'renamed', before: { text: named.name }, after: { text: 'quite-Another_1' } });
      expect(r.setups.flatMap(s => [...s.results.map(x => x.name), ...s.goals.map(g => g.text), ...s.along.map(m => m.thing), ...s.findings.added.map(f => f.message), ...s.findings.cured.map(f => f.message)]), named.name).toEqual([]);
    }
  });

  it('the order of declarations is no change', () => {
    const lines = text.split('\n');
    for (const setup of page.tree.nodes.filter(n => n.line.head?.text === 'setup')) {
      const first = setup.children.filter(n => n.doc === undefined && n.line.colon === undefined && n.line.clauses.length > 0);
      const [a, b] = [first[0], first.at(-1)];
      if (!a || !b || a === b) continue;
      const part = (n: Node): string[] => lines.slice(n.at, Math.max(n.end, ...n.legs.map(l => l.at)) + 1);
      const [enda, endb] = [a, b].map(n => n.at + part(n).length) as [number, number];
      const other = [...lines.slice(0, a.at), ...part(b), ...lines.slice(enda, b.at), ...part(a), ...lines.slice(endb)].join('\n');
      expect(other).not.toBe(text);
      expect(said(reviewOf(page, read(uri, other)))).toEqual([]);
    }
  });

  it('seen the other way round, what was added is removed and every figure stands on the other side', () => {
    const random = xoroshiro128plus(20260211);
    const lines = text.split('\n');
    const pick = (n: number): number => uniformInt(random, 0, n - 1);
    let seen = 0;
    for (let n = 0; n < 12; n++) {
      const at = pick(lines.length);
      const line = lines[at]!;
      const changed = n % 2 === 0 ? line.replace(/(?<![\w.-])(\d+)(?= ?(?:mm|%|°|s\b))/, d => String(Number(d) + 1)) : undefined;
      if (changed === line || /^\s*(?:\/\/|$|\})|\{$/.test(line)) continue;
      const other = read(uri, [...lines.slice(0, at), ...(changed === undefined ? [] : [changed]), ...lines.slice(at + 1)].join('\n'));
      const [there, back] = [reviewOf(page, other), reviewOf(other, page)];
      expect(changes(there).length, line).toBeGreaterThan(0);
      seen++;
      expect(changes(back).map(turned).sort(), line).toEqual(changes(there).map(sign).sort());
      for (const [i, s] of there.setups.entries()) {
        const o = back.setups[i]!;
        expect(o.results.map(r => [r.name, r.after && o.after!.graph.value(r.after), r.before && o.before!.graph.value(r.before)].join()).sort())
          .toEqual(s.results.map(r => [r.name, r.before && s.before!.graph.value(r.before), r.after && s.after!.graph.value(r.after)].join()).sort());
        expect([o.findings.cured.map(f => f.message), o.findings.added.map(f => f.message), o.same]).toEqual([s.findings.added.map(f => f.message), s.findings.cured.map(f => f.message), s.same]);
        expect(o.along.map(m => m.thing).sort()).toEqual(s.along.map(m => m.thing).sort());
      }
    }
    expect(seen).toBeGreaterThan(2);
  });
});

const sign = (c: Change): string => `${c.kind} ${c.what} ${c.name}: ${c.before?.text ?? ''} → ${c.after?.text ?? ''}${c.by ? ` by ${c.by.map(d => d.toFixed(9).replace('-0.000000000', '0.000000000')).join()}` : ''}`;
/** The change as it is from the other side. */
const turned = (c: Change): string => sign({
  ...c, kind: c.kind === 'added' ? 'removed' : c.kind === 'removed' ? 'added' : c.kind, ...(c.kind === 'renamed' ? { name: c.before!.text } : {}), ...(c.by ? { by: c.by.map(d => -d) as unknown as [number, number, number] } : {}),
  ...swap(c),
});
const swap = ({ before, after }: Change): Pick<Change, 'before' | 'after'> => ({ before: undefined!, after: undefined!, ...(after ? { before: after } : {}), ...(before ? { after: before } : {}) });
