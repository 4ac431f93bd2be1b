/** Asks what a page is to be held against. */
import { l10n, QuickPickItemKind, Uri, window, type QuickPickItem, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { AGAINST, type AgainstAnswer, type AgainstParams } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { repositoryOf, revisionsOf, SHORT, type Revision } from './git.ts';
import type { Source } from './messages.ts';
import { nameOf } from './source.ts';

interface Row extends QuickPickItem { readonly source?: Source | 'file' | 'none' }

/** Undefined where somebody thought better of it. */
export async function choose(client: BaseLanguageClient, page: TextDocument): Promise<Source | undefined> {
  const picked = await window.showQuickPick(rowsOf(client, page), { title: l10n.t('Compare {0} with an earlier version', nameOf(page.uri)), placeHolder: l10n.t('Held against what? The page as it is in the editor comes after it.'), matchOnDescription: true, matchOnDetail: true });
  if (picked?.source === 'none') return choose(client, page);
  if (picked?.source !== 'file') return picked?.source;
  const [file] = await window.showOpenDialog({ canSelectMany: false, ...(page.isUntitled ? {} : { defaultUri: Uri.joinPath(page.uri, '..') }), filters: { [l10n.t('Hologram Setup')]: ['plate'] }, openLabel: l10n.t('Compare'), title: l10n.t('The earlier page') }) ?? [];
  return file && { kind: 'file', uri: file.toString() };
}

async function rowsOf(client: BaseLanguageClient, page: TextDocument): Promise<Row[]> {
  const params: AgainstParams = { textDocument: { uri: client.code2ProtocolConverter.asUri(page.uri) } };
  const [{ head, revisions }, answer] = await Promise.all([revisionRows(page), ask<AgainstAnswer>(client, AGAINST, params, 'What a page can be held against')]);
  const setups = typeof answer === 'string' ? [] : answer;
  const shots = setups.flatMap(s => s.shots.map((x): Row => ({ label: x.name === '' ? l10n.t('a shot without a number') : l10n.t('shot {0}', x.name), description: [...(x.on === undefined ? [] : [l10n.t('on {0}', x.on)]), l10n.t('of “{0}”, as the page stood then', s.setup)].join(' · '), source: { kind: 'shot', setup: s.setup, shot: x.name } })));
  const variants = setups.flatMap(s => s.variants.map((v): Row => ({ label: l10n.t('variant “{0}”', v), description: l10n.t('of “{0}”, held against it as written', s.setup), source: { kind: 'variant', setup: s.setup, variant: v } })));
  return [...head, ...under(l10n.t('when a plate was shot'), shots), separator('files'), { label: l10n.t('Another file…'), description: l10n.t('as the earlier page'), source: 'file' }, ...under(l10n.t('what a variant makes of a setup'), variants), ...revisions];
}
const under = (title: string, rows: readonly Row[]): readonly Row[] => (rows.length === 0 ? [] : [separator(title), ...rows]);

/** The last commit, and all that there are, which may be many; or why there is none. */
async function revisionRows(page: TextDocument): Promise<{ readonly head: readonly Row[]; readonly revisions: readonly Row[] }> {
  const none = (why: string): Awaited<ReturnType<typeof revisionRows>> => ({ head: [], revisions: [separator(l10n.t('revisions of this page')), { label: l10n.t('No revisions'), detail: why, source: 'none' }] });
  const repository = await repositoryOf(page.uri);
  if (typeof repository === 'string') return none(repository);
  const revisions = await revisionsOf(repository, page.uri).catch(() => []);
  if (revisions.length === 0) return none(l10n.t('This page is in no commit yet.'));
  return { head: [{ label: l10n.t('the last commit'), description: l10n.t('and the next one, when there is one'), source: { kind: 'head' } }], revisions: under(l10n.t('revisions of this page'), revisions.map(r => revisionRow(r, page))) };
}

function revisionRow({ hash, subject, date, uri }: Revision, page: TextDocument): Row {
  const [short, day] = [hash.slice(0, SHORT), date?.toLocaleDateString(undefined, { dateStyle: 'medium' })];
  const renamed = uri.path === page.uri.path ? [] : [l10n.t('as {0}', nameOf(uri))];
  return { label: subject, description: [short, ...(day === undefined ? [] : [day]), ...renamed].join(' · '), source: { kind: 'commit', hash, uri: uri.toString(), name: [short, `“${subject}”`, ...(day === undefined ? [] : [day])].join(', ').replace(', “', ' “') } };
}

const separator = (label: string): Row => ({ label, kind: QuickPickItemKind.Separator });
