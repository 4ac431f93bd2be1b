/** Words of the language that were meant as names. */
import { RESERVED } from '../../grammar/tokens.ts';
import type { LineTree, Span } from '../../grammar/tree.ts';
import { kindNamed } from '../model/things/index.ts';

/** What else a name follows than a kind of thing. */
const DECLARING: ReadonlySet<string> = new Set(['beam', 'let', 'inventory']);
/** Words of the language that names follow. */
const NAMING: ReadonlySet<string> = new Set(['from', 'facing', 'on', 'beyond']);

export interface ReservedName extends Span {
  readonly word: string;
  /** it stands where something is given its name */
  readonly declared: boolean;
}

/** The word with a meaning of its own that stands where a name belongs, and at which the line could not be read any more. */
export function reservedName({ text, tokens, issue, kind }: LineTree): ReservedName | undefined {
  if (issue?.code !== 'value-expected' && issue?.code !== 'unexpected-text') return undefined;
  const at = tokens.findIndex(t => t.start >= issue.start);
  // The line stops at the word itself, or at what follows it.
  for (const i of [at - 1, at]) {
    const [token, before] = [tokens[i], tokens[i - 1]];
    if (!token || !before || !RESERVED.has(text.slice(token.start, token.end))) continue;
    const opening = tokens.slice(0, i);
    const words = text.slice(0, token.start).trim();
    const declared = opening.every(t => t.type === 'word') && (DECLARING.has(words) || kindNamed(words.replace(/\s+/g, ' ')) !== undefined);
    const named = before.type === 'arrow' ? kind === 'leg' : before.type === 'clause' && NAMING.has(text.slice(before.start, before.end));
    if (declared || named) return { word: text.slice(token.start, token.end), declared, start: token.start, end: token.end };
  }
  return undefined;
}
