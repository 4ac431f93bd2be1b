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
  list.append(...rows.map(r => item(r, `${of} ${kind} ${r.words}`, cells(kind, r))));
  return list;
}

function cells(kind: Kind, { words, before, after, by, unsure }: Row): HTMLElement[] {
  const first = text('span', kind === 'change' && by !== undefined ? `${words}, ${by}` : words, 'words');
  const value = (side: 'before' | 'after', of: string | undefined): HTMLElement => text(kind === 'change' ? 'code' : 'span', of ?? '–', side);
  const more = kind === 'change' ? [] : [by ?? '', unsure === true ? 'not for sure' : ''].filter(t => t !== '');
  return [first, ...(before === undefined && after === undefined ? [] : [unseen('; before:'), value('before', before), unseen('; after:'), value('after', after)]), ...(more.length > 0 ? [unseen(';'), text('span', more.join(', '), 'by')] : [])];
}

/** What the columns tell whoever sees them. */
const unseen = (words: string): HTMLElement => text('span', ` ${words} `, 'unseen');

export function findingsOf(of: string, { cured, added, accepted, amiss, still }: Findings): HTMLElement {
  const list = made('ul', 'rows findings');
  const add = (word: string, rows: readonly Row[]): void => {
    for (const r of rows) {
      const what = text('span', [r.severity ?? '', r.code ?? ''].filter(t => t !== '').join(' · '), 'quiet');
      list.append(item(r, `${of} ${word} ${r.code ?? ''} ${r.words}`, [text('span', word, `tag ${word.split(' ')[0]!}`), unseen(':'), text('span', r.words, 'words'), what]));
    }
  };
  add('new', added);
  add('cured', cured);
  add('accepted', accepted);
  add('still there', amiss);
  if (still > 0 && list.childElementCount > 0) list.append(text('li', `${String(still)} ${amiss.length > 0 ? 'others are' : still === 1 ? 'is' : 'are'} still there`, 'quiet'));
  return list;
}

function item({ at, gone }: Row, key: string, parts: readonly HTMLElement[]): HTMLElement {
  const one = made('li');
  const row = at === undefined ? made('div', 'row') : made('button', gone === true ? 'row gone' : 'row');
  if (at !== undefined) {
    (row as HTMLButtonElement).type = 'button';
    row.dataset['at'] = String(at);
    row.dataset['key'] = key;
    row.title = gone === true ? 'Show it in the earlier text' : 'Show it in the text';
  }
  row.append(...parts);
  one.append(row);
  return one;
}
