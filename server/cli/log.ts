/** `platewright log`: what each revision of a page did to the hologram. */
import { wrap } from '../features/plain-text.ts';
import { escaped } from '../features/markdown.ts';
import { headlineOf } from '../features/review/page.ts';
import { countOf, many } from '../features/review/words.ts';
import { isSame, isUnchanged } from '../review/review.ts';
import { onScreen, type Done, type Format } from './done.ts';
import { Misuse, Trouble, type Reach } from './files.ts';
import { Repository, type Revision } from './git/repository.ts';
import { history, revisionsOf, type Step } from './history.ts';
import { document, type Members } from './json.ts';
import { inThread, partsOf, type Part } from './threads.ts';

interface Row {
  readonly id: string | undefined;
  readonly date: string | undefined;
  readonly subject: string;
  readonly path: string;
  /** what it did to each setup that it changed, and what else it did */
  readonly told: readonly { readonly setup: string | undefined; readonly words: string }[];
  readonly same: boolean;
}

/** What a thread is asked for. */
export interface Job extends Part {
  readonly named: string;
  readonly reach: Reach;
  readonly setup: string | undefined;
  readonly revisions: readonly Revision[];
}

/** A thread takes as long to start as a dozen revisions to read. */
const LEAST = 24;

export async function log(named: string, { format, max, setup, ...reach }: { format: Format; max?: number; setup?: string } & Reach): Promise<Done> {
  const revisions = await Repository.with(named, async repository => revisionsOf(repository, named, reach));
  // A name that none has is only found out by all of them.
  const first = setup === undefined && max !== undefined ? Math.max(0, revisions.length - max) : 0;
  const jobs = partsOf(revisions.length - first, LEAST).map(({ from, to }): Job => ({ named, reach, setup, revisions, from: first + from, to: first + to }));
  const rows = (await Promise.all([...jobs.slice(0, -1).map(async job => inThread<Row[]>(job)), rowsOf(jobs.at(-1)!)])).flat();
  if (rows.length === 0) throw new Trouble(`${named} is in no revision, and not on disk`);
  if (setup !== undefined && rows.every(r => r.told.every(t => t.setup !== setup))) throw new Misuse(`No revision of ${named} has a setup “${setup}”.`);
  const shown = rows.reverse().slice(0, max);
  return { out: format === 'json' ? logJson(named, shown) : onScreen(format === 'markdown' ? logMarkdown(named, shown) : logText(shown)), code: 0 };
}

/** A part of the revisions, as the rows that tell of them. */
export async function rowsOf({ named, reach, setup, revisions, ...part }: Job): Promise<Row[]> {
  return Repository.with(named, async repository => {
    const rows: Row[] = [];
    await history(repository, named, reach, revisions, s => { rows.push(rowOf(s, setup)); }, part);
    return rows;
  });
}

function rowOf({ revision, path, gone, told: review }: Step, setup: string | undefined): Row {
  const head = { id: revision?.id, date: revision?.date, subject: revision ? revision.subject : 'not committed yet', path };
  if (typeof review === 'string') return { ...head, told: [{ setup: undefined, words: `cannot be read: ${review}` }], same: false };
  if (gone) return { ...head, told: [{ setup: undefined, words: 'the page is gone' }], same: false };
  const setups = review.setups.filter(s => !isUnchanged(s) && (setup === undefined || s.name === setup || s.formerly === setup));
  const told: { setup: string | undefined; words: string }[] = setups.map(s => ({ setup: s.name, words: headlineOf(s) }));
  if (setup === undefined) {
    for (const i of review.inventories) if (i.changes.length > 0) told.push({ setup: undefined, words: `inventory ${i.name}: ${many(i.changes.length, 'change')}` });
    const rest = countOf(review.rest);
    if (rest > 0) told.push({ setup: undefined, words: `outside the setups: ${many(rest, 'change')}` });
  }
  return { ...head, told, same: isSame(review) };
}

const NOTHING = 'nothing that changes anything';
/** Day and time as the author’s clock had them. */
const when = (date: string | undefined): string => (date === undefined ? '' : date.slice(0, 16).replace('T', ' '));
const wordsOf = ({ setup, words }: Row['told'][number]): string => (setup === undefined ? words : `${setup.trim() === '' ? '(a setup without a name)' : setup}: ${words}`);

function logText(rows: readonly Row[]): string {
  return rows.map(r => [
    ...wrap([when(r.date), r.id?.slice(0, 7) ?? '', r.subject].filter(Boolean).join(' '), { rest: '  ' }),
    ...(r.told.length === 0 ? [NOTHING] : r.told.map(wordsOf)).flatMap(t => wrap(t, { first: '    ', rest: '      ' })), '',
  ].join('\n')).join('\n');
}

function logMarkdown(named: string, rows: readonly Row[]): string {
  return `# ${escaped(named)}\n\n${rows.map(r => `- ${[escaped(when(r.date)), r.id === undefined ? '' : `\`${r.id.slice(0, 7)}\``, escaped(r.subject)].filter(Boolean).join(' ')}\n${(r.told.length === 0 ? [NOTHING] : r.told.map(wordsOf)).map(t => `  - ${escaped(t)}`).join('\n')}`).join('\n')}\n`;
}

const logJson = (named: string, rows: readonly Row[]): string => document('log', {
  file: named, revisions: rows.map((r): Members => ({ id: r.id ?? null, date: r.date ?? null, subject: r.id === undefined ? null : r.subject, file: r.path, same: r.same, told: r.told.map(t => ({ setup: t.setup ?? null, words: t.words })) })),
});
