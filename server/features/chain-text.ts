/** A chain of numbers as a page of plain text or Markdown: each number, where it is from, and what makes the result unsure. */
import type { Place } from '../model/model.ts';
import type { Chain, Link } from './chain.ts';
import { padEnd, width, wrap } from './plain-text.ts';
import { escaped } from './markdown.ts';

/** Says where in the text a number stands, and what is written there: `line 23: 410 mm ± 2 mm`. */
export type Told = (at: Place) => string;

export function chainText(chain: Chain, told: Told): string {
  const { result, links } = chain;
  const rows = [result, ...links];
  const column = Math.min(56, Math.max(...rows.map(l => 2 * l.depth + width(l.words))));
  const lines = rows.flatMap(l => {
    const indent = ' '.repeat(2 * l.depth);
    return [`${padEnd(indent + l.words, column)}   ${l.text}`, ...origin(l, told).flatMap(o => wrap(o, { first: `${indent}    ` }))];
  });
  return `${[result.name, '', ...lines, '', ...unsure(chain).flatMap(p => wrap(p)), ...ranking(chain).map(r => `  ${r}`), '', ...guesses(chain).flatMap((g, i) => wrap(g, i === 0 ? {} : { first: '  ', rest: '    ' }))].join('\n')}\n`;
}

export function chainMarkdown(chain: Chain, told: Told): string {
  const rows = [chain.result, ...chain.links].map(l => `${'  '.repeat(l.depth)}- ${escaped(l.words)}: **${escaped(l.text)}**${origin(l, told).map(o => `  \n${'  '.repeat(l.depth + 1)}${escaped(o)}`).join('')}`);
  const ranked = ranking(chain);
  const [head, ...list] = guesses(chain);
  return `${[
    `# ${escaped(chain.result.name)}`, rows.join('\n'), ...unsure(chain).map(escaped), ...(ranked.length > 0 ? [ranked.map(r => `- ${escaped(r.trim())}`).join('\n')] : []),
    ...(head !== undefined ? [escaped(head)] : []), ...(list.length > 0 ? [list.map(g => `- ${escaped(g)}`).join('\n')] : []),
  ].join('\n\n')}\n`;
}

/** Where a number is from: its formula and source, or who said it. */
function origin(l: Link, told: Told): string[] {
  if (l.missing !== undefined && l.formula === undefined) return [`because ${l.missing}`];
  if (l.formula !== undefined) return [`= ${l.formula}`, ...(l.source !== undefined ? [`source: ${l.source}`] : [])];
  return [`${l.origin}${l.at ? `, ${told(l.at)}` : ''}${l.reason !== undefined ? `: ${l.reason}` : ''}`];
}

function unsure({ result, method }: Chain): string[] {
  if (result.missing !== undefined) return [`It has no value, because ${result.missing}.`];
  switch (method) {
    case 'exact': return ['Nothing that it rests on is said to be unsure, so that no uncertainty is shown.'];
    case 'first order': return ['Uncertainty: twice the standard uncertainty, to first order (JCGM 100:2008, 5.1.2). What makes it unsure:'];
    case 'draws': return [`Uncertainty: 95 % of ${result.band!.draws} draws of its inputs lie in the band (JCGM 101:2008). What makes it unsure, to first order:`];
  }
}

/** Inputs that make the result unsure, the one that matters most first. */
function ranking({ links, method }: Chain): string[] {
  if (method === 'exact') return [];
  const rows = links.filter(l => (l.share ?? 0) >= 0.005).sort((a, b) => b.share! - a.share!);
  return rows.map(l => `${(l.share! * 100).toFixed(0).padStart(3)} %  ${l.words}`);
}

function guesses({ guesses: list }: Chain): string[] {
  if (list.length === 0) return ['It rests on no guess.'];
  return [`It rests on ${list.length === 1 ? '1 guess' : `${list.length} guesses`}; write the value to replace ${list.length === 1 ? 'it' : 'one'}:`, ...list.map(g => `${g.words}, ${g.text}${g.reason !== undefined ? `: ${g.reason}` : ''}`)];
}
