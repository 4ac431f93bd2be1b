/** What each word means, for colours: what cannot be told from a line alone. Numbers, texts, comments and signs are coloured by the grammar. */
import type { Snapshot } from '../analysis.ts';
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

/** In the order of the text; no two overlap. Lines outside of `from` to `to` are left out. */
export function tokensOf({ tree, model }: Snapshot, from = 0, to = Infinity): WordToken[] {
  const found = mentionsOf(tree, model).filter(m => m.line >= from && m.line <= to && m.end <= tree.lines[m.line]!.text.length);
  found.sort((a, b) => a.line - b.line || a.start - b.start);
  // The word of `room { … }` is a kind and a name.
  return found.filter((m, i) => i === 0 || found[i - 1]!.line !== m.line || found[i - 1]!.end <= m.start).map(tokenOf);
}

function tokenOf(m: Mention): WordToken {
  const modifiers: WordToken['modifiers'][number][] = m.declares === true ? ['declaration'] : [];
  const at = { line: m.line, start: m.start, length: m.end - m.start };
  if (m.role === 'name') {
    const { kind } = m.named!;
    if (kind === 'let') return { ...at, type: 'variable', modifiers: [...modifiers, 'readonly'] };
    return { ...at, type: kind === 'thing' ? 'variable' : kind === 'beam' ? 'event' : kind === 'inventory' ? 'namespace' : 'item', modifiers };
  }
  if (m.role === 'result') return { ...at, type: 'property', modifiers: ['readonly'] };
  return { ...at, type: TYPE[m.role], modifiers };
}

const TYPE = { kind: 'type', fact: 'property', choice: 'enumMember', port: 'enumMember', unit: 'unit', sought: 'sought', unknown: 'unknownWord' } as const;
