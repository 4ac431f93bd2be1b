/** Cards of ordinary source text. */
import { readdirSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { join, resolve } from 'node:path';
import { alone, analyse, type Library, type Snapshot } from '../../../server/analysis.ts';
import { cardOf } from '../../../server/features/card/card.ts';
import type { Block, Card, Entry, Row, SectionName } from '../../../server/features/blocks/blocks.ts';

export const EXAMPLES = readdirSync('examples').filter(f => f.endsWith('.plate') && f !== 'saltmarsh-lab.plate');

const beside: Library = { ...alone, text: uri => readFileSync(new URL(uri), 'utf8'), resolve: (path, from) => new URL(path, from).href };

export const example = (name: string): Snapshot => analyse(pathToFileURL(resolve(join('examples', name))).href, readFileSync(join('examples', name), 'utf8'), beside);
export const cardsOf = (s: Snapshot): Card[] => s.results.map(r => cardOf(s, r, 'a.plate'));
/** The card of the only setup of a text. */
export const card = (text: string): Card => cardsOf(analyse('file:///saltmarsh/a.plate', text, alone))[0]!;

export const blocks = (c: Card, name: SectionName): readonly Block[] => c.sections.find(s => s.name === name)?.blocks ?? [];
export const rows = (c: Card, name: SectionName): Row[] => blocks(c, name).flatMap(b => (b.kind === 'table' ? b.groups.flatMap(g => g.rows) : []));
const entryText = (e: Entry): string => ('write' in e ? `____${e.write === '' ? '' : ` ${e.write}`}` : [e.text, e.small].filter(Boolean).join(' | '));
/** A row as one line; `____ mm` is a line to write on. */
export const line = (r: Row): string => r.entries.map(entryText).join(' / ');

/** All that stands in a section, a line each. */
export function lines(c: Card, name: SectionName): string[] {
  return blocks(c, name).flatMap(b => {
    const steps = (all: readonly { text: string; small?: string; write?: string }[]): string[] => all.map(s => [s.text, ...(s.write === undefined ? [] : [`____${s.write === '' ? '' : ` ${s.write}`}`]), ...(s.small === undefined ? [] : [`| ${s.small}`])].join(' '));
    switch (b.kind) {
      case 'words': case 'caution': return [b.text];
      case 'picture': case 'steps': return steps(b.steps);
      case 'table': return b.groups.flatMap(g => [...(g.title === undefined ? [] : [g.title]), ...g.rows.map(line)]);
      case 'blanks': return [b.blanks.map(x => `${x.label} ____${x.write === '' ? '' : ` ${x.write}`}`).join(', ')];
      case 'large': return b.rows.map(r => `${r.label}: ${entryText(r.entry)}`);
      case 'strip': return [b.times.join(', ')];
      case 'lines': case 'hung': return [];
    }
  });
}
export const all = (c: Card): string => [c.title, ...c.kinds, c.doc ?? '', c.light, ...c.sections.flatMap(s => [s.title, ...lines(c, s.name)])].join('\n');
