/** Asks what a page is to be held against. */
import { QuickPickItemKind, Uri, window, type QuickPickItem, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { VARIANTS, type VariantsAnswer, type VariantsParams } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { repositoryOf, revisionsOf, type Revision } from './git.ts';
import type { Source } from './messages.ts';
import { nameOf } from './source.ts';

interface Row extends QuickPickItem { readonly source?: Source | 'file' }

/** So many letters of a hash tell commits apart. */
const HASH = 7;

/** Undefined where somebody thought better of it. */
export async function choose(client: BaseLanguageClient, page: TextDocument): Promise<Source | undefined> {
  const picked = await window.showQuickPick(rowsOf(client, page), { title: `Compare ${nameOf(page.uri)} with an earlier version`, placeHolder: 'Held against what? The page as it is in the editor comes after it.', matchOnDescription: true, matchOnDetail: true });
  if (picked?.source !== 'file') return picked?.source;
  const [file] = await window.showOpenDialog({ canSelectMany: false, defaultUri: page.uri.scheme === 'untitled' ? undefined : Uri.joinPath(page.uri, '..'), filters: { 'Hologram Setup': ['plate'] }, openLabel: 'Compare', title: 'The earlier page' } as Parameters<typeof window.showOpenDialog>[0]) ?? [];
  return file && { kind: 'file', uri: file.toString() };
}

async function rowsOf(client: BaseLanguageClient, page: TextDocument): Promise<Row[]> {
  const params: VariantsParams = { textDocument: { uri: client.code2ProtocolConverter.asUri(page.uri) } };
  const [revisions, setups] = await Promise.all([revisionRows(page), ask<VariantsAnswer>(client, VARIANTS, params, 'The variants of a page')]);
  const variants = (typeof setups === 'string' ? [] : setups).flatMap(s => s.variants.map((v): Row => ({ label: `variant “${v}”`, description: `of “${s.setup}”, held against it as written`, source: { kind: 'variant', setup: s.setup, variant: v } })));
  return [...revisions, separator('files'), { label: 'Another file…', description: 'as the earlier page', source: 'file' }, ...(variants.length > 0 ? [separator('variants of this page'), ...variants] : [])];
}

async function revisionRows(page: TextDocument): Promise<Row[]> {
  const repository = await repositoryOf(page.uri);
  if (typeof repository === 'string') return [separator(repository)];
  const revisions = await revisionsOf(repository, page.uri).catch(() => []);
  if (revisions.length === 0) return [separator('This page is in no commit yet.')];
  return [separator('revisions of this page'), { label: 'the last commit', description: 'whatever it is', source: { kind: 'head' } }, ...revisions.map(r => revisionRow(r, page))];
}

function revisionRow({ hash, subject, date, uri }: Revision, page: TextDocument): Row {
  const [short, day] = [hash.slice(0, HASH), date?.toLocaleDateString(undefined, { dateStyle: 'medium' })];
  const renamed = uri.path === page.uri.path ? [] : [`as ${nameOf(uri)}`];
  return { label: subject, description: [short, ...(day === undefined ? [] : [day]), ...renamed].join(' · '), source: { kind: 'commit', hash, uri: uri.toString(), name: [short, `“${subject}”`, ...(day === undefined ? [] : [day])].join(', ').replace(', “', ' “') } };
}

const separator = (label: string): Row => ({ label, kind: QuickPickItemKind.Separator });
