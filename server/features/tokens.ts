/** What each word means, for colours: what cannot be told from a line alone. Numbers, texts, comments and signs are coloured by the grammar. */
import type { Snapshot } from '../analysis.ts';
import type { Bearer } from '../model/mentions/names.ts';
import type { Mention } from '../model/mentions/words.ts';
import { mentionsOf } from '../model/mentions/mentions.ts';
import type { TOKEN_MODIFIERS, TOKEN_TYPES } from './token-legend.ts';

export interface WordToken {
  readonly line: number;
  readonly start: number;
  readonly length: number;
  readonly type: (typeof TOKEN_TYPES)[number];
  readonly modifiers: readonly (typeof TOKEN_MODIFIERS)[number][];
}

/** In the order of the text, without names in quotes, which the grammar colours as texts; no two overlap. Lines outside of `from` to `to` are left out. */
export function tokensOf({ tree, model }: Snapshot, from = 0, to = Infinity): WordToken[] {
  const found = mentionsOf(tree, model, from, to).filter(m => m.named?.kind !== 'variant' && m.line >= from && m.line <= to && m.end <= tree.lines[m.line]!.text.length);
  found.sort((a, b) => a.line - b.line || a.start - b.start);
  // The word of `room { … }` is a kind and a name.
  return found.filter((m, i) => i === 0 || found[i - 1]!.line !== m.line || found[i - 1]!.end <= m.start).map(tokenOf);
}

// Of a long page there are tens of thousands, at every edit: written out, and no lists of their own.
function tokenOf(m: Mention): WordToken {
  const kind = m.named?.kind;
  const type = m.role === 'name' ? NAMED[kind as keyof typeof NAMED] : TYPE[m.role];
  const readonly = m.role === 'result' || (m.role === 'name' && kind === 'let');
  const modifiers = m.role === 'name' && m.declares === true ? (readonly ? DECLARED_READONLY : DECLARED) : readonly ? READONLY : NONE;
  return { line: m.line, start: m.start, length: m.end - m.start, type, modifiers };
}

const NONE: WordToken['modifiers'] = [];
const DECLARED: WordToken['modifiers'] = ['declaration'];
const READONLY: WordToken['modifiers'] = ['readonly'];
const DECLARED_READONLY: WordToken['modifiers'] = ['declaration', 'readonly'];
const NAMED: Readonly<Record<Exclude<Bearer['kind'], 'variant'>, WordToken['type']>> = { let: 'variable', thing: 'variable', beam: 'event', inventory: 'namespace', item: 'item' };
const TYPE = { result: 'property', kind: 'type', fact: 'property', choice: 'enumMember', port: 'enumMember', unit: 'unit', sought: 'sought', unknown: 'unknownWord' } as const;
