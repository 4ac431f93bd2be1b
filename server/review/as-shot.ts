/** A page as it stood when a plate was shot, as far as its own dates tell: what it dates later is left out. Where there are revisions, they know more. */
import { parse } from '../../grammar/parse.ts';
import type { Node, Tree } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';
import { isLater } from '../model/bind/dates.ts';
import type { Setup } from '../model/model.ts';
import { saidOfShot } from './statements.ts';

export interface Shot {
  readonly setup: Setup;
  readonly name: string;
  /** `2026-02-11`, where it says when */
  readonly on: string | undefined;
  readonly node: Node;
}

/** The shots of a page with that name: `7`, or `shot 7`. */
export const shotsNamed = (snapshot: Snapshot, name: string): Shot[] => shotsOf(snapshot).filter(s => s.name === name.trim().replace(/^shot\s+/, ''));

export const shotsOf = ({ model }: Snapshot): Shot[] => model.setups.flatMap(setup => setup.shots.map(({ node }) => ({ setup, name: saidOfShot(node), on: dayOf(node), node })));

/** Whether any setup of a page has a shot of that name; nothing is bound or computed for that. */
export const hasShot = ({ nodes }: Tree, name: string): boolean => nodes.some(n => n.line.head?.text === 'setup' && n.children.some(c => c.line.head?.text === 'shot' && saidOfShot(c) === name));

const dayOf = ({ line }: Node): string | undefined => {
  const value = line.clauses.find(c => c.word.text === 'on')?.value;
  return value?.kind === 'date' ? value.text : undefined;
};

export interface AsShot {
  readonly text: string;
  /** how many statements are left out, since they are dated later */
  readonly left: number;
}

/** `undated` where the shot has no date to go by; `unclosed` where a brace is missing, so that with what is left out others would go: the shot itself would be gone. */
export function asShot({ text }: Snapshot, { setup, name, on }: Shot): AsShot | 'undated' | 'unclosed' {
  if (on === undefined) return 'undated';
  const dated = [...setup.readings.map(r => ({ node: r.node, on: r.on })), ...setup.moved.map(m => ({ node: m.node, on: m.on })), ...setup.node.children.filter(n => ['shot', 'process'].includes(n.line.head?.text ?? '')).map(node => ({ node, on: dayOf(node) }))];
  const later = dated.filter(d => d.on !== undefined && isLater(d.on, on));
  const gone = new Set(later.flatMap(({ node }) => Array.from({ length: node.end - node.at + 1 }, (_, i) => node.at + i)));
  const left = text.split(/(?<=\n|\r(?!\n))/).filter((_, i) => !gone.has(i)).join('');
  return hasShot(parse(left), name) ? { text: left, left: later.length } : 'unclosed';
}
