/** The cursor in half-typed text: the word at it, what stands before it in its line, and the block that it is in. */
import { MAX_LINE, tokensIn } from '../../../grammar/parse-line.ts';
import type { Node, TokenSpan } from '../../../grammar/tree.ts';
import type { Snapshot } from '../../analysis.ts';
import { opensThing } from '../../model/bind/things.ts';
import type { Thing } from '../../model/model.ts';
import { factsOf, PROCESS_FACTS, SHOT_FACTS } from '../../model/things/index.ts';
import type { Fact } from '../../model/things/kind.ts';
import type { Results } from '../../results/plan.ts';
import { setupAt } from '../cursor.ts';

export type Block =
  | { readonly in: 'file' | 'other'; readonly node?: undefined }
  | { readonly in: 'inventory' | 'setup' | 'variant'; readonly node: Node }
  /** lines of facts; `owner` is the word of the kind, or of the block */
  | { readonly in: 'facts'; readonly node: Node; readonly facts: readonly Fact[]; readonly owner: string };

export interface Token extends TokenSpan { readonly text: string }

export interface Cursor {
  readonly snapshot: Snapshot;
  readonly line: number;
  readonly character: number;
  readonly text: string;
  /** what stands before the word at the cursor */
  readonly tokens: readonly Token[];
  /** the word at the cursor, as far as it is typed */
  readonly typed: string;
  readonly start: number;
  readonly end: number;
  /** what stands behind the word, without a comment */
  readonly rest: string;
  readonly indent: string;
  readonly block: Block;
  readonly r: Results | undefined;
  /** things that can be named here, in the order of the text: not the one that this line declares */
  readonly things: readonly Thing[];
}

// What a line that is read can hold, these are done with at once; a longer one is not asked.
/* eslint-disable regexp/no-super-linear-move */
const NAME = /\p{L}[\p{L}\p{N}_]*(?:[-.][\p{L}\p{N}_]*)*$/u;
const UNIT = /(?<=[\d)?][ \t]*)[\p{L}µ°%′″][\p{L}\p{N}µ°%²³¹⁰⁴⁻/·*^-]*$/u;
/* eslint-enable regexp/no-super-linear-move */
const NAME_ON = /^[\p{L}\p{N}_]*(?:[-.][\p{L}\p{N}_]+)*/u;
const UNIT_ON = /^[\p{L}\p{N}µ°%²³¹⁰⁴⁻]*(?:[/·*^][\p{L}\p{N}µ°%²³¹⁰⁴⁻]+)*/u;

/** Undefined where nothing can be typed that has a meaning: in a comment or a note. Inside of quotes there is no word. */
export function cursorAt(snapshot: Snapshot, line: number, asked: number): Cursor | undefined {
  const text = snapshot.tree.lines[line]?.text;
  if (text === undefined || text.length > MAX_LINE) return undefined;
  // Beyond its end is its end, as editors have it.
  const character = Math.max(0, Math.min(asked, text.length));
  const before = text.slice(0, character);
  const within = openAt(before);
  if (within === 'comment') return undefined;
  const [name, unit] = within === 'text' ? ['', ''] : [NAME.exec(before)?.[0] ?? '', UNIT.exec(before)?.[0] ?? ''];
  const typed = unit.length > name.length ? unit : name;
  const start = character - typed.length;
  const end = character + (typed === '' ? 0 : (unit.length > name.length ? UNIT_ON : NAME_ON).exec(text.slice(character))![0].length);
  const left = text.slice(0, start);
  const tokens = tokensIn(left).map(t => ({ ...t, text: left.slice(t.start, t.end) }));
  const comment = snapshot.tree.lines[line]!.comment;
  const rest = text.slice(end, comment && comment.start >= end ? comment.start : undefined).trim();
  const r = setupAt(snapshot, line);
  const block = blockAt(snapshot, line, text, r);
  return { snapshot, line, character, text, tokens, typed, start, end, rest, indent: /^\s*/.exec(text)![0], block, r, get things() { return thingsAt(r, block, line); } };
}

/** Whether a text ends in quotes that are not closed, or in a comment. */
export function openAt(before: string): 'text' | 'comment' | undefined {
  let quoted = false;
  for (let i = 0; i < before.length; i++) {
    const c = before[i];
    if (quoted && c === '\\') i++;
    else if (c === '"') quoted = !quoted;
    else if (!quoted && c === '/' && before[i + 1] === '/') return 'comment';
  }
  return quoted ? 'text' : undefined;
}

function thingsAt(r: Results | undefined, block: Block, line: number): Thing[] {
  if (!r) return [];
  const variant = r.setup.variants.find(v => v.node === block.node || v.node === block.node?.parent);
  const added = (variant?.changes ?? []).flatMap(c => (c.kind === 'thing' ? [c.thing] : []));
  return [...r.setup.things.values(), ...added].filter(t => t.at.line !== line);
}

/** The innermost block that a line is in. Where a brace is missing and the line is blank, its indent tells which one is meant. */
function blockAt({ tree }: Snapshot, line: number, text: string, r: Results | undefined): Block {
  const path: Node[] = [];
  const down = (nodes: readonly Node[]): void => {
    for (const n of nodes) {
      if (n.at >= line) return;
      if (line > n.end || (line === n.end && tree.lines[line]!.kind === 'close') || (!n.line.opens && n.children.length === 0)) continue;
      path.push(n);
      down(n.children);
      return;
    }
  };
  down(tree.nodes);
  const broken = tree.issues.some(i => i.code === 'brace-not-closed' || i.code === 'brace-not-opened');
  if (broken && text.trim() === '' && text.length > 0) while (path.length > 0 && width(path[path.length - 1]!.line.text) >= text.length) path.pop();
  return blockOf(path, r);
}
const width = (text: string): number => text.length - text.trimStart().length;

function blockOf([top, second, third, more]: readonly Node[], r: Results | undefined): Block {
  const head = top?.line.head?.text;
  if (!top) return { in: 'file' };
  if (head !== 'setup' && head !== 'inventory') return { in: 'other' };
  if (!second) return { in: head, node: top };
  if (second.line.head?.text === 'variant' && head === 'setup') return third ? (more ? { in: 'other' } : factsIn(third, r)) : { in: 'variant', node: second };
  return third ? { in: 'other' } : factsIn(second, r);
}

function factsIn(node: Node, r: Results | undefined): Block {
  const head = node.line.head?.text ?? '';
  const kind = opensThing(node) ?? r?.setup.things.get(head)?.kind;
  if (kind) return { in: 'facts', node, facts: factsOf(kind), owner: kind.word };
  if (node.parent?.line.head?.text !== 'setup') return { in: 'other' };
  return head === 'shot' ? { in: 'facts', node, facts: SHOT_FACTS, owner: head } : head === 'process' ? { in: 'facts', node, facts: PROCESS_FACTS, owner: head } : { in: 'other' };
}
