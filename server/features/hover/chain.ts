/** The chain of numbers behind a figure, short enough for a hover; `platewright explain` shows all of it. */
import { plain } from '../../model/show.ts';
import type { Cell, Graph } from '../../results/graph.ts';
import { chainOf, type Chain, type Link } from '../chain.ts';
import { blocks, bullets, escaped, strong } from '../markdown.ts';

const MOST_ROWS = 12;
const MOST_CAUSES = 3;
const TWICE = 'The ± is twice the standard uncertainty.';

/** First line: the figure and what it is. Behind it what it is made of, what makes it unsure, and the guesses that it rests on. */
export function figureWords(graph: Graph, cell: Cell): string {
  const chain = chainOf(graph, cell);
  const { result } = chain;
  return blocks(`${strong(result.text)}: ${escaped(result.words)}`, result.missing !== undefined ? `Unknown, because ${escaped(result.missing)}.` : origin(result), made(chain), cell.rule ? unsure(chain) : spread(cell, result), guesses(chain));
}

function origin(l: Link): string {
  if (l.formula !== undefined) return `= ${escaped(l.formula)}`;
  if (l.reason !== undefined) return `${capital(l.origin)}: ${escaped(l.reason)}.`;
  return l.origin === 'written' ? '' : `${capital(l.origin)}.`;
}

/** What the figure is made of. A sum of one row is left out: it repeats that row. */
function made({ links }: Chain): string {
  const rows = links.filter((l, i) => !(links[i + 1]?.depth === l.depth + 1 && links[i + 1]!.text === l.text && !links.slice(i + 2).some((o, k, rest) => o.depth === l.depth + 1 && rest.slice(0, k).every(x => x.depth > l.depth))));
  if (rows.length === 0) return '';
  // Depths may skip a step where a row was left out.
  const open: number[] = [];
  const list = rows.slice(0, MOST_ROWS).map(l => {
    while (open.length > 0 && open[open.length - 1]! >= l.depth) open.pop();
    open.push(l.depth);
    return `${'  '.repeat(open.length - 1)}- ${escaped(l.words)}: ${escaped(l.text)}${l.formula !== undefined ? ` = ${escaped(l.formula)}` : l.origin === 'written' ? '' : `, ${l.origin}`}`;
  });
  if (rows.length > MOST_ROWS) list.push(`- and ${rows.length - MOST_ROWS} more`);
  return list.join('\n');
}

/** What the ± of an input means. */
function spread(cell: Cell, { u }: Link): string {
  switch (cell.spread?.kind) {
    case 'within': return `Surely within this; it counts as a standard uncertainty of ${escaped(plain((u ?? 0) / (cell.unit?.factor ?? 1), 2))}${cell.unit ? ` ${escaped(cell.unit.text)}` : ''}.`;
    case 'std': return TWICE;
    case 'factor': return `A factor of ${plain(cell.spread.amount)} either way.`;
    default: return '';
  }
}

function unsure({ result, links, method }: Chain): string {
  if (method === 'exact' || result.missing !== undefined) return '';
  const how = method === 'draws' ? `95 % of ${result.band!.draws} draws lie in this band.` : TWICE;
  const causes = links.filter(l => (l.share ?? 0) >= 0.05).sort((a, b) => b.share! - a.share!);
  if (causes.length === 0) return how;
  const rows = causes.slice(0, MOST_CAUSES).map(l => `${escaped(l.words)} (${(l.share! * 100).toFixed(0)} %)`);
  return `${how} Most of it comes from ${rows.join(', ')}${causes.length > MOST_CAUSES ? ' and others' : ''}.`;
}

function guesses({ guesses: list }: Chain): string {
  if (list.length === 0) return '';
  return `Rests on ${list.length === 1 ? 'a guess' : `${list.length} guesses`}:\n\n${bullets(list.map(g => `${escaped(g.words)}, ${escaped(g.text)}${g.reason !== undefined ? `: ${escaped(g.reason)}` : ''}`))}`;
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
