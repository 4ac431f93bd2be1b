/**
 * The server against a fresh one: pages are typed into, mended, formatted, renamed in, opened and closed, files that they use change on disk and go, and the
 * server is asked in between, as an editor does. At each quiet point its answers are those of a server that has only ever seen the texts as they are now.
 */
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { CodeAction, DocumentDiagnosticReport, ServerCapabilities, TextEdit, WorkspaceEdit } from 'vscode-languageserver/node';
import { LIST_FILES } from '../../server/lsp/protocol.ts';
import { EXAMPLES } from '../examples/library.ts';
import { startEditor, type Editor, type Page } from './editor.ts';

const STEPS = Number(process.env['STEPS'] ?? 2000);
/** Steps between two quiet points. */
const QUIET = 30;
const FOLDER = 'file:///saltmarsh/';
const uri = (name: string): string => FOLDER + name;

const text = (name: string): string => readFileSync(new URL(`../../examples/${name}.plate`, import.meta.url), 'utf8');
const NAMES = ['whelk-by-string.plate', 'variants.plate', 'readings.plate', 'single-beam-oyster.plate'];
const LABS = ['saltmarsh-lab.plate', 'annex.plate'];
const ANNEX = 'use "saltmarsh-lab.plate"\n\n/// The shed across the yard.\ninventory annex {\n  mirror old {\n    loss: 20% ± 5 points\n  }\n  string cord {\n    stretch: 0.5% ± 0.3 points\n  }\n}\n';

/** Lines that people might type. */
const LINES = EXAMPLES.flatMap(p => p.text.split('\n')).filter(l => l.trim() !== '');
const PIECES = ['{', '}', ' ', '-> ', '±', ' mm', '\n', '\r\n', 'µ', '😀', '"', ':', 'M1', 'S1', '12', '?', ' at (100, 200) mm', '0.5', 'lab.', 'x', '//', ' 2 mm', '  measured reference: 1470 mm ± 3 mm by string\n', 'use "annex.plate"\n'];

class Dice {
  private readonly source;
  constructor(seed: number) { this.source = xoroshiro128plus(seed); }
  below(n: number): number { return uniformInt(this.source, 0, n - 1); }
  of<T>(all: readonly T[]): T { return all[this.below(all.length)]!; }
}

class World {
  readonly disk = new Map<string, string>();
  readonly open = new Map<string, Page>();
  editor!: Editor;

  async start(): Promise<void> {
    for (const n of NAMES) this.disk.set(uri(n), text(n.replace('.plate', '')));
    this.disk.set(uri('saltmarsh-lab.plate'), text('saltmarsh-lab'));
    this.disk.set(uri('annex.plate'), ANNEX);
    this.editor = await this.server();
    for (const n of NAMES) await this.show(n);
  }

  async server(): Promise<Editor> {
    const editor = await startEditor({ folder: FOLDER.slice(0, -1), read: at => Promise.resolve(this.disk.get(at)), options: { listsFiles: true, readsFiles: true }, capabilities: CAPABILITIES });
    editor.connection.onRequest(LIST_FILES, () => [...this.disk.keys()]);
    return editor;
  }

  async show(name: string): Promise<void> { this.open.set(name, await this.editor.open(this.disk.get(uri(name)) ?? '', uri(name))); }

  async hide(name: string): Promise<void> {
    await this.open.get(name)!.close();
    this.open.delete(name);
  }

  async write(name: string, now: string | undefined): Promise<void> {
    const type = now === undefined ? 3 : this.disk.has(uri(name)) ? 2 : 1;
    if (now === undefined) this.disk.delete(uri(name));
    else this.disk.set(uri(name), now);
    await this.editor.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: uri(name), type }] });
  }

  /** An edit of several files: those that are open are typed into, the others are written. */
  async apply(edit: WorkspaceEdit): Promise<void> {
    for (const change of edit.documentChanges ?? []) {
      if (!('edits' in change)) throw new Error('no file is made or moved');
      const name = change.textDocument.uri.slice(FOLDER.length);
      const page = this.open.get(name);
      if (page) await page.apply({ documentChanges: [change] });
      else await this.write(name, replaced(this.disk.get(change.textDocument.uri)!, change.edits as TextEdit[]));
    }
  }
}

const CAPABILITIES = {
  textDocument: { diagnostic: {}, documentSymbol: { hierarchicalDocumentSymbolSupport: true }, definition: { linkSupport: true }, completion: { completionItem: { snippetSupport: true } }, rename: { prepareSupport: true } },
  workspace: { diagnostics: { refreshSupport: true }, workspaceEdit: { documentChanges: true } },
};

function replaced(before: string, edits: readonly TextEdit[]): string {
  const starts = [0];
  for (const m of before.matchAll(/\r\n|\n|\r/g)) starts.push(m.index + m[0].length);
  const offset = (p: { line: number; character: number }): number => starts[p.line]! + p.character;
  return [...edits].sort((a, b) => offset(b.range.start) - offset(a.range.start)).reduce((t, e) => t.slice(0, offset(e.range.start)) + e.newText + t.slice(offset(e.range.end)), before);
}

const positions = (page: string, dice: Dice): { line: number; character: number } => {
  const lines = page.split(/\r\n|\n|\r/);
  const line = dice.below(lines.length);
  return { line, character: dice.below(lines[line]!.length + 1) };
};

/** What an editor asks of a page, with what the server says it can answer. */
function questions(can: ServerCapabilities, dice: Dice, page: string): [string, object][] {
  const position = positions(page, dice);
  const whole = { range: { start: { line: 0, character: 0 }, end: { line: page.split(/\r\n|\n|\r/).length, character: 0 } } };
  const all: [unknown, string, object][] = [
    [can.hoverProvider, 'hover', { position }], [can.definitionProvider, 'definition', { position }], [can.documentSymbolProvider, 'documentSymbol', {}],
    [can.documentFormattingProvider, 'formatting', { options: { tabSize: 2, insertSpaces: true } }], [can.completionProvider, 'completion', { position }],
    [can.semanticTokensProvider, 'semanticTokens/full', {}], [can.referencesProvider, 'references', { position, context: { includeDeclaration: true } }],
    [can.documentHighlightProvider, 'documentHighlight', { position }], [can.documentLinkProvider, 'documentLink', {}], [can.foldingRangeProvider, 'foldingRange', {}],
    [can.inlayHintProvider, 'inlayHint', whole], [can.renameProvider, 'prepareRename', { position }],
    [can.codeActionProvider, 'codeAction', { ...whole, context: { diagnostics: [] } }],
  ];
  return all.filter(([provider]) => provider !== undefined && provider !== false).map(([, method, params]) => [`textDocument/${method}`, params]);
}

/** An answer, or why there is none; names of results and of versions do not count. */
const answer = (page: Page, method: string, params: object): Promise<unknown> => page.ask<unknown>(method, params).then(a => (method.includes('semanticTokens') ? (a as { data: unknown } | null)?.data : a), (e: unknown) => String(e));
const findings = async (page: Page): Promise<unknown> => {
  const report = await page.ask<DocumentDiagnosticReport>('textDocument/diagnostic');
  return report.kind === 'full' ? report.items : report;
};

/** Versions differ between the two servers, as their edits did. */
const plain = (a: unknown): unknown => JSON.parse(JSON.stringify(a ?? null, (key, value: unknown) => (key === 'version' ? 0 : value))) as unknown;

async function step(world: World, dice: Dice): Promise<string> {
  const { open } = world;
  const name = dice.of([...open.keys()]);
  const page = open.get(name)!;
  const lines = page.text.split('\n');
  const at = dice.below(lines.length);
  const line = { start: { line: at, character: 0 }, end: { line: at + 1, character: 0 } };
  switch (dice.below(16)) {
    case 0: case 1: case 2: case 3: {
      const position = positions(page.text, dice);
      const piece = dice.of(PIECES);
      await page.edit([{ range: { start: position, end: position }, newText: piece }]);
      return `${name}: types ${JSON.stringify(piece)} at ${position.line}:${position.character}`;
    }
    case 4: case 5: {
      await page.edit([{ range: { start: line.start, end: line.start }, newText: `${dice.of(LINES)}\n` }]);
      return `${name}: a line at ${at}`;
    }
    case 6: await page.edit([{ range: line, newText: '' }]); return `${name}: line ${at} goes`;
    case 7: {
      const numbers = [...page.text.matchAll(/\b\d+\b/g)];
      if (numbers.length === 0) return 'nothing';
      const m = dice.of(numbers);
      const from = page.range(m[0], m.index);
      const to = String(dice.below(2000));
      await page.edit([{ range: from, newText: to }]);
      return `${name}: ${m[0]} becomes ${to}`;
    }
    case 8: {
      // Back to what the notebook has: pages that are only torn say nothing any more.
      await page.edit([{ range: { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } }, newText: LABS.includes(name) ? (name === LABS[0] ? text('saltmarsh-lab') : ANNEX) : text(name.replace('.plate', '')) }]);
      return `${name}: as in the notebook`;
    }
    case 9: {
      const lab = LABS[0]!;
      const now = world.disk.get(uri(lab));
      const next = dice.below(6) === 0 ? undefined : (now ?? text('saltmarsh-lab')).replace(/\d+(?= mm)/, String(10 + dice.below(900)));
      await world.write(lab, next);
      return next === undefined ? `${lab} is deleted` : `${lab} changes on disk`;
    }
    case 10: await world.write(LABS[1]!, dice.below(4) === 0 ? undefined : dice.below(3) === 0 ? ANNEX.replace('saltmarsh-lab', 'annex') : ANNEX); return 'the annex changes on disk';
    case 11: {
      const lab = dice.of(LABS);
      if (open.has(lab)) { await world.hide(lab); return `${lab} is closed`; }
      if (!world.disk.has(uri(lab))) return 'nothing';
      await world.show(lab);
      return `${lab} is opened`;
    }
    case 12: {
      const edits = await page.ask<TextEdit[] | null>('textDocument/formatting', { options: { tabSize: 2, insertSpaces: true } });
      if (edits && edits.length > 0) await page.edit(edits);
      return `${name}: formatted`;
    }
    case 13: {
      const actions = await page.actions({ start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } });
      const [first] = actions.filter((a: CodeAction) => a.edit);
      if (first) await page.apply(first.edit!);
      return `${name}: ${first?.title ?? 'no fix'}`;
    }
    case 14: {
      const words = [...page.text.matchAll(/\b(M1|S1|P1|red|limpets|spear|lab|thread|old|flat-50|reference|object)\b/g)];
      if (words.length === 0) return 'nothing';
      const m = dice.of(words);
      const { start } = page.range(m[0], m.index);
      const newName = `${m[0]}-${dice.below(9)}`;
      const edit = await page.ask<WorkspaceEdit | null>('textDocument/rename', { position: start, newName }).catch(() => null);
      if (edit) await world.apply(edit);
      return `${name}: ${m[0]} is renamed ${newName}${edit ? '' : ' (refused)'}`;
    }
    default: {
      if (open.size < 2 || LABS.includes(name)) return 'nothing';
      await world.write(name, page.text);
      await world.hide(name);
      await world.show(name);
      return `${name}: saved, closed and opened`;
    }
  }
}

/** All answers of the server about all open pages, beside those of a fresh server. */
async function compare(world: World, seed: number, trace: readonly string[]): Promise<void> {
  const fresh = await world.server();
  try {
    const others = new Map<string, Page>();
    for (const [name, page] of world.open) others.set(name, await fresh.open(page.text, page.uri));
    for (const [name, page] of world.open) {
      const other = others.get(name)!;
      const dice = new Dice(seed);
      const where = `${name}, after:\n${trace.slice(-QUIET).join('\n')}`;
      expect(plain(await findings(page)), `findings of ${where}`).toEqual(plain(await findings(other)));
      for (const [method, params] of questions(world.editor.initialized!.capabilities, dice, page.text)) {
        expect(plain(await answer(page, method, params)), `${method} ${JSON.stringify(params)} of ${where}`).toEqual(plain(await answer(other, method, params)));
      }
    }
  } finally { fresh.close(); }
}
describe('the server', () => {
  const world = new World();
  afterAll(() => { world.editor.close(); });

  test(`answers as a fresh one after ${STEPS} steps, and at each quiet point between`, { timeout: 1_200_000 }, async () => {
    await world.start();
    const dice = new Dice(Number(process.env['SEED'] ?? 20260211));
    const trace: string[] = [];
    let renamed = 0;
    for (let n = 1; n <= STEPS; n++) {
      const done = await step(world, dice);
      trace.push(`${n} ${done}`);
      if (/ is renamed (?!.*refused)/.test(done)) renamed++;
      // Asked in the middle of things, and not waited for.
      if (n % 3 === 0) for (const page of world.open.values()) void findings(page).catch(() => undefined);
      if (n % QUIET === 0) await compare(world, n, trace);
    }
    expect(world.editor.logged).toEqual([]);
    expect(renamed).toBeGreaterThan(STEPS / 200);
  });
});
