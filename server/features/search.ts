/** Names of many pages, for whoever looks for one: setups, inventories and their items, things, beams, variants and shots. Of a page no more is made for that than its names. */
import { parse } from '../../grammar/parse.ts';
import { bind } from '../model/bind/bind.ts';
import type { Place } from '../model/model.ts';
import { fixed } from '../model/place.ts';
import type { OutlineItem } from './symbols.ts';

export interface Declared {
  readonly kind: Exclude<OutlineItem['kind'], 'leg'>;
  readonly name: string;
  /** the setup or inventory that it is declared in */
  readonly inside?: string;
  readonly at: Place;
}

/** What a page declares, in the order of the text. What it uses of other files is not looked at. */
export function declaredIn(uri: string, text: string): Declared[] {
  const { setups, inventories } = bind(uri, parse(text), path => ({ code: 'import-unreadable', uri: '', data: { path } }));
  const found: Declared[] = [];
  const add = (kind: Declared['kind'], name: string, at: Place, inside?: string): void => {
    // Half-typed declarations have no name yet.
    if (name.trim() !== '') found.push({ kind, name, at: fixed(at), ...(inside === undefined ? {} : { inside }) });
  };
  for (const i of inventories) {
    if (i.at.uri !== uri) continue;
    add('inventory', i.name, i.at);
    for (const t of i.things.values()) add('thing', t.id, t.at, i.name);
  }
  for (const s of setups) {
    add('setup', s.name, s.at);
    for (const t of s.things.values()) add('thing', t.id, t.at, s.name);
    for (const b of s.beams.values()) add('beam', b.id, b.at, s.name);
    for (const v of s.variants) add('variant', v.name, v.at, s.name);
    for (const x of s.shots) add('shot', x.name, x.at, s.name);
  }
  return found.sort((a, b) => a.at.line - b.at.line || a.at.start - b.at.start);
}

/** Those whose names have the letters of what is looked for, in that order; the nearest first, and none left out where nothing is looked for. */
export function matching<T extends { readonly name: string }>(all: readonly T[], query: string): T[] {
  const sought = query.toLowerCase().replace(/\s/g, '');
  const ranked = all.flatMap(of => {
    const rank = rankOf(of.name.toLowerCase(), sought);
    return rank === undefined ? [] : [{ of, rank }];
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(r => r.of);
}

/** 0 for what begins with it, 1 for what holds it, 2 for what has its letters. */
function rankOf(name: string, sought: string): number | undefined {
  const tight = name.replace(/\s/g, '');
  if (tight.startsWith(sought)) return 0;
  if (tight.includes(sought)) return 1;
  let from = 0;
  for (const c of sought) {
    const at = tight.indexOf(c, from);
    if (at < 0) return undefined;
    from = at + c.length;
  }
  return 2;
}
