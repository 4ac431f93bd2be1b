/** Asks what a page is to be held against. */
import { QuickPickItemKind, Uri, window, type QuickPickItem, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { AGAINST, type AgainstAnswer, type AgainstParams } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { repositoryOf, revisionsOf, SHORT, type Revision } from './git.ts';
import type { Source } from './messages.ts';
import { nameOf } from './source.ts';

interface Row extends QuickPickItem { readonly source?: Source | 'file' | 'none' }

/** Undefined where somebody thought better of it. */
export async function choose(client: BaseLanguageClient, page: TextDocument): Promise<Source | undefined> {
  const picked = await window.showQuickPick(rowsOf(client, page), { title: `Compare ${nameOf(page.uri)} with an earlier version`, placeHolder: 'Held against what? The page as it is in the editor comes after it.', matchOnDescription: true, matchOnDetail: true });
  if (picked?.source === 'none') return choose(client, page);
  if (picked?.source !== 'file') return picked?.source;
  const [file] = await window.showOpenDialog({ canSelectMany: false, ...(page.isUntitled ? {} : { defaultUri: Uri.joinPath(page.uri, '..') }), filters: { 'Hologram Setup': ['plate'] }, openLabel: 'Compare', title: 'The earlier page' }) ?? [];
  return file && { kind: 'file', uri: file.toString() };
}

async function rowsOf(client: BaseLanguageClient, page: TextDocument): Promise<Row[]> {
  const params: AgainstParams = { textDocument: { uri: client.code2ProtocolConverter.asUri(page.uri) } };
  const [{ head, revisions }, answer] = await Promise.all([revisionRows(page), ask<AgainstAnswer>(client, AGAINST, params, 'What a page can be held against')]);
  const setups = typeof answer === 'string' ? [] : answer;
  const shots = setups.flatMap(s => s.shots.map((x): Row => ({ label: x.name === '' ? 'a shot without a number' : `shot ${x.name}`, description: [...(x.on === undefined ? [] : [`on ${x.on}`]), `of “${s.setup}”, as the page stood then`].join(' · '), source: { kind: 'shot', setup: s.setup, shot: x.name } })));
  const variants = setups.flatMap(s => s.variants.map((v): Row => ({ label: `variant “${v}”`, description: `of “${s.setup}”, held against it as written`, source: { kind: 'variant', setup: s.setup, variant: v } })));
  return [...head, ...under('when a plate was shot', shots), separator('files'), { label: 'Another file…', description: 'as the earlier page', source: 'file' }, ...under('what a variant makes of a setup', variants), ...revisions];
}
const under = (title: string, rows: readonly Row[]): readonly Row[] => (rows.length === 0 ? [] : [separator(title), ...rows]);

/** The last commit, and all that there are, which may be many; or why there is none. */
async function revisionRows(page: TextDocument): Promise<{ readonly head: readonly Row[]; readonly revisions: readonly Row[] }> {
  const none = (why: string): Awaited<ReturnType<typeof revisionRows>> => ({ head: [], revisions: [separator('revisions of this page'), { label: 'No revisions', detail: why, source: 'none' }] });
  const repository = await repositoryOf(page.uri);
  if (typeof repository === 'string') return none(repository);
  const revisions = await revisionsOf(repository, page.uri).catch(() => []);
  if (revisions.length === 0) return none('This page is in no commit yet.');
  return { head: [{ label: 'the last commit', description: 'and the next one, when there is one', source: { kind: 'head' } }], revisions: under('revisions of this page', revisions.map(r => revisionRow(r, page))) };
}

function revisionRow({ hash, subject, date, uri }: Revision, page: TextDocument): Row {
  const [short, day] = [hash.slice(0, SHORT), date?.toLocaleDateString(undefined, { dateStyle: 'medium' })];
  const renamed = uri.path === page.uri.path ? [] : [`as ${nameOf(uri)}`];
  return { label: subject, description: [short, ...(day === undefined ? [] : [day]), ...renamed].join(' · '), source: { kind: 'commit', hash, uri: uri.toString(), name: [short, `“${subject}”`, ...(day === undefined ? [] : [day])].join(', ').replace(', “', ' “') } };
}

const separator = (label: string): Row => ({ label, kind: QuickPickItemKind.Separator });
