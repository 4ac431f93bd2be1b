import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { DocumentDiagnosticReport, WorkspaceDiagnosticReport } from 'vscode-languageserver/node';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor } from './editor.ts';

let root: string;
let editor: Editor;
const uri = (name: string): string => pathToFileURL(join(root, name)).href;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'platewright-'));
  await writeFile(join(root, 'whelk.plate'), `use "lab.plate"\n${whelk}`);
  await writeFile(join(root, 'lab.plate'), 'inventory lab {\n  mirror flat\n}\n');
  editor = await startEditor({ folder: uri(''), options: { checksAllPages: true } });
});
afterEach(async () => {
  editor.close();
  await rm(root, { recursive: true });
});

type Ids = { uri: string; value: string }[];
const pull = (previousResultIds: Ids): Promise<WorkspaceDiagnosticReport> => editor.connection.sendRequest('workspace/diagnostic', { previousResultIds });
const rows = ({ items }: WorkspaceDiagnosticReport): string[] => items.map(i => `${i.uri.slice(uri('').length + 1)} ${i.kind === 'full' ? i.items.map(d => String(d.code)).join(',') || 'none' : i.kind}`).sort();
const ids = ({ items }: WorkspaceDiagnosticReport): Ids => items.map(i => ({ uri: i.uri, value: i.resultId! }));

it('findings of all pages are told, and then only what has changed', async () => {
  expect(editor.initialized!.capabilities.diagnosticProvider).toMatchObject({ workspaceDiagnostics: true });
  const first = await pull([]);
  expect(rows(first)).toEqual(['lab.plate none', 'whelk.plate arms-mismatched']);
  // Without news the answer waits.
  let answered = false;
  const second = pull(ids(first)).then(r => { answered = true; return r; });
  await editor.connection.sendRequest('workspace/symbol', { query: '' });
  expect(answered).toBe(false);
  await writeFile(join(root, 'whelk.plate'), `use "lab.plate"\n${whelk.replace('468 mm', '384 mm')}`);
  await editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: uri('whelk.plate'), type: 2 }] });
  expect(rows(await second)).toEqual(['lab.plate unchanged', 'whelk.plate none']);
});

it('an open page is told as it is typed, by the same ids as when it is asked for alone', async () => {
  const page = await editor.open(whelk.replace('468 mm', '384 mm'), uri('whelk.plate'));
  const first = await pull([]);
  expect(rows(first)).toEqual(['lab.plate none', 'whelk.plate none']);
  expect((await page.ask<DocumentDiagnosticReport>('textDocument/diagnostic', { previousResultId: first.items.find(i => i.uri === page.uri)!.resultId })).kind).toBe('unchanged');
});

it('of a page that is gone nothing is left', async () => {
  const first = await pull([]);
  await rm(join(root, 'whelk.plate'));
  expect(rows(await pull(ids(first)))).toEqual(['lab.plate unchanged', 'whelk.plate none']);
});

it('they are offered only where they are wanted', async () => {
  editor.close();
  editor = await startEditor({ folder: uri('') });
  expect(editor.initialized!.capabilities.diagnosticProvider).toMatchObject({ workspaceDiagnostics: false });
});

it('they are those of all open folders, and of one that is opened later', async () => {
  editor.close();
  await mkdir(join(root, 'shells'));
  await mkdir(join(root, 'tools'));
  await writeFile(join(root, 'shells', 'whelk.plate'), whelk);
  await writeFile(join(root, 'tools', 'adze.plate'), whelk.replace('468 mm', '384 mm'));
  let folders = ['shells'];
  const answers = { 'workspace/workspaceFolders': () => folders.map(name => ({ uri: uri(name), name })) };
  editor = await startEditor({ folder: uri('shells'), options: { checksAllPages: true }, capabilities: { workspace: { workspaceFolders: true } }, answers });
  const first = await pull([]);
  expect(rows(first)).toEqual(['shells/whelk.plate arms-mismatched']);
  folders = ['shells', 'tools'];
  const second = pull(ids(first));
  await editor.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added: [{ uri: uri('tools'), name: 'tools' }], removed: [] } });
  expect(rows(await second)).toEqual(['shells/whelk.plate unchanged', 'tools/adze.plate none']);
  folders = ['tools'];
  const third = pull(ids(await pull([])));
  await editor.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added: [], removed: [{ uri: uri('shells'), name: 'shells' }] } });
  expect(rows(await third)).toEqual(['shells/whelk.plate none', 'tools/adze.plate unchanged']);
});
