/** What a page is held against, and how that is read. A further kind is a line in {@link Source}, in its guard, and in `read`. */
import { l10n, Uri, workspace, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { AS_SHOT, HAS_SHOT, USED, type AsShotAnswer, type AsShotParams, type EarlierText, type HasShotParams, type ReviewParams, type UsedParams } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { isInside, repositoryOf, revisionsOf, SHORT, textAt, textInHead, type Repository, type Revision } from './git.ts';
import type { Source } from './messages.ts';
import { FAILED, GONE_FILE, NO_SHOT, NOT_IN_HEAD, NOT_IN_REVISION, unclosed, undated } from './words.ts';

export interface Before {
  readonly before: ReviewParams['before'];
  /** what the two sides are called */
  readonly names: readonly [string, string];
  /** what the earlier text uses is told as it was then: where something of it is not, that is worth a note */
  readonly dated: boolean;
  /** of all its setups only this one */
  readonly setup?: string;
  /** it is made of the page, and another one when that changes */
  readonly ofPage?: true;
}

/** A sentence where it cannot be read; undefined where a newer text of the page has come, which is read anew. */
export async function read(client: BaseLanguageClient, page: TextDocument, source: Source): Promise<Before | string | undefined> {
  const now = nameOf(page.uri);
  switch (source.kind) {
    case 'variant': return { before: { setup: source.setup, variant: source.variant }, names: [l10n.t('“{0}” as written', source.setup), l10n.t('variant “{0}”', source.variant)], dated: false };
    case 'file': {
      const uri = Uri.parse(source.uri);
      const text = await textOf(uri);
      return text === undefined ? GONE_FILE : { before: { text, uri: client.code2ProtocolConverter.asUri(uri), files: [] }, names: [nameOf(uri), now], dated: false };
    }
    case 'shot': return shotOf(client, page, source.setup, source.shot);
    case 'commit': case 'head': {
      const repository = await repositoryOf(page.uri);
      if (typeof repository === 'string') return repository;
      const earlier = source.kind === 'head' ? await headOf(client, repository, page) : await at(client, repository, page, source.hash, Uri.parse(source.uri));
      if (earlier === undefined) return source.kind === 'head' ? NOT_IN_HEAD : NOT_IN_REVISION;
      return { before: earlier, names: [source.kind === 'head' ? l10n.t('the last commit') : source.name, now], dated: true };
    }
  }
}

/** A page and what it used, in the last commit; undefined where it is not in it. */
export async function headOf(client: BaseLanguageClient, repository: Repository, page: TextDocument): Promise<EarlierText | undefined> {
  const found = await textInHead(repository, page.uri);
  return found && withUsed(client, repository, page, 'HEAD', found.uri, found.text);
}

async function at(client: BaseLanguageClient, repository: Repository, page: TextDocument, ref: string, uri: Uri): Promise<EarlierText | undefined> {
  const text = await textAt(repository, ref, uri);
  return text === null ? undefined : withUsed(client, repository, page, ref, uri, text);
}

/** By the revision in which the shot was first written down, else by the dates on the page. */
async function shotOf(client: BaseLanguageClient, page: TextDocument, setup: string, shot: string): Promise<Before | string | undefined> {
  const params: AsShotParams = { textDocument: { uri: client.code2ProtocolConverter.asUri(page.uri) }, setup, shot };
  const cut = await ask<AsShotAnswer>(client, AS_SHOT, params, 'A page as it was shot');
  if (typeof cut === 'string') return { none: NO_SHOT, failed: FAILED, superseded: undefined }[cut];
  const called = (cut.on === undefined ? l10n.t('shot {0}', shot) : l10n.t('shot {0} on {1}', shot, cut.on));
  const repository = await repositoryOf(page.uri);
  const first = typeof repository === 'string' ? undefined : await firstWith(client, repository, page, shot);
  if (typeof repository !== 'string' && first) {
    const before = await withUsed(client, repository, page, first.revision.hash, first.revision.uri, first.text);
    return { before, names: [l10n.t('{0}, as committed in {1}', called, first.revision.hash.slice(0, SHORT)), nameOf(page.uri)], dated: true, setup };
  }
  if (cut.text === undefined) return cut.unclosed ? unclosed(setup, shot) : undated(shot);
  return { before: { text: cut.text, files: [] }, names: [l10n.t('{0}, by the dates on the page', called), nameOf(page.uri)], dated: false, setup, ofPage: true };
}

/** The oldest revision that has the shot, and has had it ever since. */
async function firstWith(client: BaseLanguageClient, repository: Repository, page: TextDocument, shot: string): Promise<{ readonly revision: Revision; readonly text: string } | undefined> {
  let found: { revision: Revision; text: string } | undefined;
  for (const revision of await revisionsOf(repository, page.uri).catch(() => [])) {
    const text = await textAt(repository, revision.hash, revision.uri);
    const params: HasShotParams = { text: text ?? '', shot };
    if (text === null || await ask<boolean>(client, HAS_SHOT, params, 'Whether a revision has a shot') !== true) break;
    found = { revision, text };
  }
  return found;
}

/** Files name files: so many times it is asked for more. */
const DEEPEST = 8;

async function withUsed(client: BaseLanguageClient, repository: Repository, page: TextDocument, ref: string, uri: Uri, text: string): Promise<EarlierText> {
  const asUri = (u: Uri): string => client.code2ProtocolConverter.asUri(u);
  const base = { text, ...(uri.toString() === page.uri.toString() ? {} : { uri: asUri(uri) }) };
  const files = new Map<string, string | null>();
  const told = (): EarlierText => ({ ...base, files: [...files].map(([u, t]) => ({ uri: u, text: t })) });
  for (let i = 0; i < DEEPEST; i++) {
    const params: UsedParams = { textDocument: { uri: asUri(page.uri) }, before: told() };
    const used = await ask<readonly string[]>(client, USED, params, 'What an earlier text uses');
    const within = typeof used === 'string' ? [] : used.map(u => [u, Uri.parse(u)] as const).filter(([u, parsed]) => !files.has(u) && isInside(repository, parsed));
    if (within.length === 0) break;
    for (const [u, parsed] of within) files.set(u, await textAt(repository, ref, parsed));
  }
  return told();
}

/** As it is in an editor, else as it stands on disk. */
async function textOf(uri: Uri): Promise<string | undefined> {
  const open = workspace.textDocuments.find(d => d.uri.toString() === uri.toString());
  if (open) return open.getText();
  try {
    return new TextDecoder().decode(await workspace.fs.readFile(uri));
  } catch {
    return undefined;
  }
}

export const nameOf = ({ path }: Uri): string => path.replace(/^.*\//, '');
