import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { TOKEN_MODIFIERS, TOKEN_TYPES } from '../../server/features/token-legend.ts';
import { tokensOf } from '../../server/features/tokens.ts';
import { FILE, whelk } from './source.ts';

/** Each word with what it means behind it, as in `M1·variable+declaration`; words without a meaning of their own are left out. */
function words(source: string, from?: number, to?: number): string[] {
  const s = analyse(FILE, source);
  const rows: string[] = [];
  for (const t of tokensOf(s, from, to)) rows[t.line] = `${rows[t.line] ?? ''} ${s.tree.lines[t.line]!.text.slice(t.start, t.start + t.length)}·${[t.type, ...t.modifiers].join('+')}`.trim();
  return rows;
}
/** Meanings in one line of a setup that has the things of the whelk. */
const check = (line: string, wanted: string): void => {
  const text = whelk.replace(/\n\}\s*$/, `\n  let gap = 300 mm\n  ${line}\n}\n`);
  expect(words(text)[text.split('\n').indexOf(`  ${line}`)] ?? '').toBe(wanted);
};

describe('words by their meaning', () => {
  it('in declarations', () => {
    check('half-wave plate HW1 at (gap, 0) mm', 'half-wave·type plate·type HW1·variable+declaration gap·variable+readonly mm·unit');
    check('mirror M9 on S1 -> M1 by 60 mm', 'mirror·type M9·variable+declaration S1·variable M1·variable mm·unit');
    check('let half = gap / 2', 'half·variable+declaration+readonly gap·variable+readonly');
    check('room {', 'room·type');
  });
  it('in facts', () => {
    check('beam height: 120 mm', 'beam·property height·property mm·unit');
    check('hologram: transmission', 'hologram·property transmission·enumMember');
    check('exposure: ? s', 'exposure·property ?·sought s·unit');
    check('hologrm: transmission', 'hologrm·unknownWord');
  });
  it('in beams', () => {
    check('beam more from S1 through', 'more·event+declaration S1·variable through·enumMember');
    check('beam more from S1 thrugh', 'more·event+declaration S1·variable thrugh·unknownWord');
    check('beam more from M9', 'more·event+declaration M9·unknownWord');
  });
  it('in goals and readings', () => {
    check('expect P1.reference.coherence path < 2 * gap', 'P1·variable reference·event coherence·property+readonly path·property+readonly gap·variable+readonly');
    check('expect beam ratio from 3:1 to 6:1', 'beam·property+readonly ratio·property+readonly');
    check('expect whelk.depth < 5 cm', 'whelk·variable depth·property cm·unit');
    check('measured object - reference: -3 mm ± 3 mm by string', 'object·event reference·event mm·unit mm·unit string·enumMember');
    check('measured dark: 1 nW', 'dark·property+readonly nW·unit');
  });
  it('that mean nothing', () => {
    check('miror M9', 'miror·unknownWord M9·variable+declaration');
    check('mirror M9 facing M8', 'mirror·type M9·variable+declaration M8·unknownWord');
  });
  it('of inventories and their items', () => {
    expect(words('inventory lab {\n  laser red-12\n}\nsetup "a" {\n  laser red = lab.red-12\n  laser odd = lab.nothing\n}')).toEqual([
      'lab·namespace+declaration', 'laser·type red-12·item+declaration', , , 'laser·type red·variable+declaration lab·namespace red-12·item', 'laser·type odd·variable+declaration lab·namespace nothing·unknownWord',
    ]);
  });
});

it('only of some lines, where only these are seen', () => {
  const all = words(whelk);
  expect(words(whelk, 8, 10)).toEqual(all.map((row, i) => (i >= 8 && i <= 10 ? row : undefined)).slice(0, 11));
});

it('every own type of colour falls back to one that themes know', () => {
  const { contributes } = JSON.parse(readFileSync('package.json', 'utf8')) as { contributes: { semanticTokenTypes: { id: string }[]; semanticTokenScopes: { scopes: Record<string, string[]> }[] } };
  // Language Server Protocol 3.17, SemanticTokenTypes and SemanticTokenModifiers.
  const STANDARD = ['namespace', 'type', 'class', 'enum', 'interface', 'struct', 'typeParameter', 'parameter', 'variable', 'property', 'enumMember', 'event', 'function', 'method', 'macro', 'keyword', 'modifier', 'comment', 'string', 'number', 'regexp', 'operator', 'decorator'];
  const own = TOKEN_TYPES.filter(t => !STANDARD.includes(t));
  expect(contributes.semanticTokenTypes.map(t => t.id)).toEqual(own);
  // Beams have a colour of their own: themes show events as they show things.
  expect(Object.keys(contributes.semanticTokenScopes[0]!.scopes)).toEqual(['event', ...own]);
  expect(['declaration', 'definition', 'readonly', 'static', 'deprecated', 'abstract', 'async', 'modification', 'documentation', 'defaultLibrary']).toEqual(expect.arrayContaining([...TOKEN_MODIFIERS]));
});
