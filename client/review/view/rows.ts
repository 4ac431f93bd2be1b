/** Rows of before and after, side by side as in a notebook. One that stands somewhere is a button. */
import type { Findings, Row } from '../messages.ts';
import { made, text } from './dom.ts';

/** What a row tells of; what was written is shown in the letters of the text. */
export type Kind = 'change' | 'result' | 'goal';

/** @param of what they belong to: with its words, the name of a row */
export function rowsOf(kind: Kind, of: string, rows: readonly Row[]): HTMLElement {
  const list = made('ul', `rows ${kind}s`);
  if (rows.some(r => r.before !== undefined || r.after !== undefined)) {
    const head = made('li', 'row names');
    head.setAttribute('aria-hidden', 'true');
    head.append(text('span', ''), text('span', 'before', 'before'), text('span', 'after', 'after'));
    list.append(head);
  }
  list.append(...rows.map(r => item(r, `${of} ${kind} ${r.words}`, cells(kind, r), tellRow(r))));
  return list;
}

function cells(kind: Kind, { words, before, after, by, unsure }: Row): HTMLElement[] {
  const first = text('span', kind === 'change' && by !== undefined ? `${words}, ${by}` : words, 'words');
  const value = (side: 'before' | 'after', of: string | undefined): HTMLElement => text(kind === 'change' ? 'code' : 'span', of ?? '', of === undefined ? `${side} empty` : side);
  const more = kind === 'change' ? [] : [by ?? '', unsure === true ? 'not for sure' : ''].filter(t => t !== '');
  return [first, ...(before === undefined && after === undefined ? [] : [value('before', before), value('after', after)]), ...(more.length > 0 ? [text('span', more.join(', '), 'by')] : [])];
}

/** As it is read out. */
function tellRow({ words, before, after, by, unsure, gone }: Row): string {
  return [by === undefined ? words : `${words}, ${by}`, before === undefined ? '' : `before: ${before}`, after === undefined ? '' : `after: ${after}`, unsure === true ? 'not for sure' : '', gone === true ? 'in the earlier text' : ''].filter(t => t !== '').join('; ');
}

export function findingsOf(of: string, { cured, added, accepted, still }: Findings): HTMLElement {
  const list = made('ul', 'rows findings');
  const add = (word: string, rows: readonly Row[]): void => {
    for (const r of rows) {
      const what = text('span', [r.severity ?? '', r.code ?? ''].filter(t => t !== '').join(' · '), 'quiet');
      list.append(item(r, `${of} ${word} ${r.code ?? ''} ${r.words}`, [text('span', word, `tag ${word}`), text('span', r.words, 'words'), what], `${word}: ${r.severity ?? ''}: ${r.words}${r.gone === true ? ' In the earlier text.' : ''}`));
    }
  };
  add('new', added);
  add('cured', cured);
  add('accepted', accepted);
  if (still > 0 && list.childElementCount > 0) list.append(text('li', `${String(still)} still there`, 'quiet'));
  return list;
}

function item({ at, gone }: Row, key: string, parts: readonly HTMLElement[], label: string): HTMLElement {
  const one = made('li');
  const row = at === undefined ? made('div', 'row') : made('button', gone === true ? 'row gone' : 'row');
  if (at !== undefined) {
    (row as HTMLButtonElement).type = 'button';
    row.dataset['at'] = String(at);
    row.dataset['key'] = key;
    row.title = gone === true ? 'Show it in the earlier text' : 'Show it in the text';
    row.setAttribute('aria-label', label);
  }
  row.append(...parts);
  one.append(row);
  return one;
}
