/** What editors ask for at every keystroke holds on text of any shape: nothing throws, every range lies inside of its line. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { alone, analyse, type Snapshot } from '../../server/analysis.ts';
import { foldsOf } from '../../server/features/folding.ts';
import { applyEdits } from '../../server/model/edits.ts';
import { ALL_HINTS } from '../../server/features/hint-kinds.ts';
import { hintsOf, hintWords } from '../../server/features/hints.ts';
import { formatRange, formatTyped } from '../../server/features/formatting.ts';
import { lensesOf } from '../../server/features/lenses.ts';
import { linkedAt } from '../../server/features/linked.ts';
import { linksOf } from '../../server/features/links.ts';
import { highlightsAt, usesIn, usesOf } from '../../server/features/references.ts';
import { rename, renamable } from '../../server/features/rename.ts';
import { selectionsAt } from '../../server/features/selection.ts';
import { signatureAt } from '../../server/features/signature.ts';
import { tokensOf } from '../../server/features/tokens.ts';
import { goingOn, reaching, stopAt } from '../../server/features/ways.ts';
import { EXAMPLES, disk } from '../examples/library.ts';
import { PIECES } from './pieces.ts';
import { FILE } from './source.ts';

function holds(s: Snapshot): void {
  const { lines } = s.tree;
  const inside = (at: { line: number; start: number; end: number }, least = 1): void => {
    expect(at.line).toBeGreaterThanOrEqual(0);
    expect(at.start).toBeGreaterThanOrEqual(0);
    expect(at.end).toBeGreaterThanOrEqual(at.start + least);
    expect(at.end).toBeLessThanOrEqual(lines[at.line]!.text.length);
  };
  let last = { line: 0, start: 0, end: 0 };
  for (const t of tokensOf(s)) {
    const at = { line: t.line, start: t.start, end: t.start + t.length };
    inside(at);
    expect(at.line > last.line || (at.line === last.line && at.start >= last.end)).toBe(true);
    // No half of a surrogate pair is cut off.
    expect(lines[at.line]!.text.slice(at.start, at.end)).not.toMatch(/^[\udc00-\udfff]|[\ud800-\udbff]$/);
    last = at;
  }
  for (const u of usesIn(s)) {
    inside(u.at);
    expect(lines[u.at.line]!.text.slice(u.at.start, u.at.end)).toBe(u.named.name);
    expect(highlightsAt(s, u.at.line, u.at.start).length).toBeGreaterThan(0);
  }
  for (const l of linksOf(s)) inside(l.at, 0);
  for (const f of foldsOf(s)) expect(f.from >= 0 && f.to > f.from && f.to < lines.length).toBe(true);
  for (const h of hintsOf(s, ALL_HINTS)) {
    inside({ line: h.line, start: 0, end: h.character }, 0);
    expect(h.parts.map(p => p.text).join('').length).toBeLessThan(40);
    expect(hintWords(s, h.setup, h.result)).toBeDefined();
  }
  for (const l of lensesOf(s, { setups: true, arms: true, lengths: true, mismatch: true })) expect(l.line >= 0 && l.line < lines.length && l.text !== '').toBe(true);
  // At every line once, each at another place of it.
  for (let line = 0; line < lines.length; line += Math.ceil(lines.length / 12)) {
    const character = (line * 7) % (lines[line]!.text.length + 1);
    const form = signatureAt(s, line, character);
    if (form) expect(form.parts[form.active]).toBeDefined();
    let inner = { from: { line, character }, to: { line, character } };
    for (const o of selectionsAt(s, line, character)) {
      const ends = [o.from, inner.from, inner.to, o.to];
      for (const [i, e] of ends.entries()) if (i > 0) expect(e.line > ends[i - 1]!.line || (e.line === ends[i - 1]!.line && e.character >= ends[i - 1]!.character)).toBe(true);
      expect(o.to.character).toBeLessThanOrEqual(lines[o.to.line]!.text.length);
      inner = o;
    }
    for (const at of linkedAt(s, line, character)) inside(at);
    const stop = stopAt(s, line, character);
    if (stop) for (const { by } of [...reaching(s, stop.at)!, ...goingOn(s, stop.at)!]) by.forEach(at => { inside(at); });
    for (const c of [...formatTyped(s, line, '}'), ...formatTyped(s, line, '\n'), ...formatRange(s, line, line + 2)]) expect(c.newText).toMatch(/^\s*$/);
  }
}

it('token soup', () => {
  fc.assert(fc.property(fc.array(fc.constantFrom(...PIECES), { maxLength: 60 }), pieces => { holds(analyse(FILE, pieces.join(''))); holds(analyse(FILE, pieces.join('\n'))); }), { numRuns: 400 });
});

it.each(EXAMPLES.filter(p => /readings|variants|single|walk/.test(p.name)).map(p => [p.name, p] as const))('%s, cut anywhere, with other line ends', (_, page) => {
  const texts = [page.text, `\ufeff${page.text.replaceAll('\n', '\r\n')}`, page.text.replaceAll('whelk', '😀').replaceAll('M1', 'µ1')];
  for (const text of texts) for (let end = 0; end <= text.length; end += Math.ceil(text.length / 23)) holds(analyse(page.uri, text.slice(0, end), disk));
});

it('names in token soup can be changed, or it is said why not', () => {
  fc.assert(fc.property(fc.array(fc.constantFrom(...PIECES), { maxLength: 40 }), fc.nat(), fc.constantFrom('Zz', 'gap', 'raw', 'object', 'mirror', 'x'), (pieces, n, name) => {
    const snapshot = analyse(FILE, pieces.join('\n'));
    const uses = usesIn(snapshot);
    const use = uses[n % Math.max(1, uses.length)];
    if (!use) return;
    const found = renamable(snapshot, use.at.line, use.at.start, () => true);
    const edits = 'refused' in found ? found : rename([{ snapshot, library: alone }], found.named, name);
    if (!(edits instanceof Map)) { expect(edits.refused).toMatch(/\.$/); return; }
    const all = edits.get(snapshot.uri) ?? [];
    expect(all.length).toBe(name === use.named.name ? 0 : usesOf(use.named, [snapshot]).length);
    const after = analyse(FILE, applyEdits(snapshot.text, all));
    expect(after.findings.map(f => `${f.at.line} ${f.code}`).sort()).toEqual(snapshot.findings.map(f => `${f.at.line} ${f.code}`).sort());
  }), { numRuns: 300 });
});
