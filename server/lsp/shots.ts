/** Answers what all shots teach, and lists them: those of the pages in the open folders, and of those that are open. */
import { LSPErrorCodes, ResponseError, type CancellationToken } from 'vscode-languageserver';
import { analyse } from '../analysis.ts';
import type { Lesson } from '../features/learn/learn.ts';
import type { Shot } from '../features/learn/shots.ts';
import { applyEdits } from '../model/edits.ts';
import type { Asks } from './asks.ts';
import { rangeOf } from './convert.ts';
import type { Documents } from './documents.ts';
import { later } from './later.ts';
import type { ListFiles } from './pages.ts';
import { HISTORY, LEARN, MAX_LISTED, type HistoryAnswer, type LearnAnswer, type Update } from './protocol.ts';
import { canonical, isInside, nameOf } from './uris.ts';

export function serveShots({ connection, documents }: Asks, list: ListFiles): void {
  const naming = (uri: string): string => {
    const folder = documents.inFolders.find(f => isInside(uri, f));
    return folder === undefined ? nameOf(uri) : uri.slice(folder.length + 1).split('/').map(nameOf).join('/');
  };
  connection.onRequest(LEARN, async (_: object, token: CancellationToken): Promise<LearnAnswer> => {
    const { shots, pages, notes } = await read(documents, list, token);
    const { learn, learnedMarkdown, learnedPage } = await later();
    const learned = learn(shots);
    const updates = (await Promise.all(learned.lessons.map(l => updateOf(l, documents)))).flatMap(u => u ?? []);
    return { shots: shots.length, pages, markdown: paged(`What ${counted(shots.length, 'shot')} on ${counted(pages, 'page')} teach${shots.length === 1 ? 'es' : ''}`, learnedMarkdown(learnedPage(learned, naming)), notes), updates };
  });
  connection.onRequest(HISTORY, async (_: object, token: CancellationToken): Promise<HistoryAnswer> => {
    const { shots, pages, notes } = await read(documents, list, token);
    const { historyMarkdown, historyOf } = await later();
    return { shots: shots.length, pages, markdown: paged(`${counted(shots.length, 'shot')} on ${counted(pages, 'page')}`, historyMarkdown(historyOf(shots), naming), notes) };
  });
}

const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
const paged = (title: string, body: string, notes: readonly string[]): string => [`# ${title}`, body.trimEnd(), ...notes].join('\n\n') + '\n';

interface Read { readonly shots: readonly Shot[]; /** that have a shot */ readonly pages: number; /** sentences */ readonly notes: readonly string[] }

/** A page that names no shot has none: most are read no further. */
const MAY = /\bshot\b/;

async function read(documents: Documents, list: ListFiles, token: CancellationToken): Promise<Read> {
  const { shotsTold } = await later();
  const listed = await list(documents.inFolders).catch(() => []);
  const uris = new Set([...[...documents.all()].map(d => d.id), ...listed.slice(0, MAX_LISTED).map(canonical)]);
  const shots: Shot[] = [];
  let [pages, unread] = [0, 0];
  for (const uri of [...uris].sort()) {
    if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'It is not wanted any more.');
    const page = await documents.page(uri);
    if (!page) unread++;
    if (!page || !MAY.test(page.text)) continue;
    const found = shotsTold(await documents.snapshot(page));
    if (found.length > 0) pages++;
    shots.push(...found);
  }
  return { shots, pages, notes: [
    ...(unread > 0 ? [`${counted(unread, 'page')} could not be read.`] : []), ...(listed.length > MAX_LISTED ? [`The open folders hold more than ${MAX_LISTED} pages, and the rest was not looked at. Open a smaller folder.`] : []),
  ] };
}

/** What can be written: tried on a copy, as all that is offered. */
async function updateOf({ line, of, evidence, limits }: Lesson, documents: Documents): Promise<Update | undefined> {
  const edit = line?.edit;
  const page = edit && await documents.page(edit.at.uri);
  if (!line || !edit || !page) return undefined;
  const { SURER } = await later();
  const errors = (text: string): Promise<number> => documents.reading(page.id, library => analyse(page.id, text, library).findings.filter(f => f.severity === 'error').length);
  const text = page.text.slice(page.marks);
  if (await errors(applyEdits(text, [edit])) > await errors(text)) return undefined;
  return {
    uri: documents.spelling(page.id), range: rangeOf(page, edit.at), newText: edit.newText, line: page.text.split(/\r\n|\n|\r/)[edit.at.line] ?? '', words: `${of}: ${line.text}`,
    detail: `${counted(evidence.length, 'shot')}; ${line.was === undefined ? 'a line of its own' : `there stands ${line.was}${limits.includes(SURER) ? ', which is surer' : ''}`}`,
  };
}
