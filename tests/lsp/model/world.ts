/** An editor with open pages, a disk beneath it, folders and settings; and servers that are told of all that. */
import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver/node';
import { BASE, LIST_FILES } from '../../../server/lsp/protocol.ts';
import { startEditor, type Editor, type Page } from '../editor.ts';
import { FOLDER, LABS, NAMES, NOTEBOOK, SHED, uri } from './pages.ts';

export interface Chosen { readonly hints: Readonly<Record<string, boolean>>; readonly lenses: Readonly<Record<string, boolean>> }

/** All that a server can know, as plain data. */
export interface State {
  readonly disk: ReadonlyMap<string, string>;
  /** what is open, by name, in the order in which it was opened */
  readonly open: ReadonlyMap<string, string>;
  readonly folders: readonly string[];
  readonly chosen: Chosen;
  /** pages of which the text of the last commit was told */
  readonly bases: ReadonlySet<string>;
}
export const BEGIN: State = {
  disk: new Map(Object.entries(NOTEBOOK).map(([name, text]) => [uri(name), text])), open: new Map(NAMES.map(n => [n, NOTEBOOK[n]!])), folders: [FOLDER.slice(0, -1)], chosen: { hints: {}, lenses: {} }, bases: new Set(),
};

const CAPABILITIES = {
  textDocument: {
    diagnostic: {}, documentSymbol: { hierarchicalDocumentSymbolSupport: true }, definition: { linkSupport: true }, completion: { completionItem: { snippetSupport: true } }, rename: { prepareSupport: true }, codeLens: {}, inlayHint: {},
    semanticTokens: { requests: { full: { delta: true } } },
  },
  workspace: { diagnostics: { refreshSupport: true }, workspaceEdit: { documentChanges: true }, configuration: true, didChangeConfiguration: { dynamicRegistration: true }, didChangeWatchedFiles: { dynamicRegistration: true }, workspaceFolders: true },
};

export class World {
  readonly disk: Map<string, string>;
  readonly open = new Map<string, Page>();
  readonly past = new Map<string, string[]>();
  readonly bases: Set<string>;
  folders: readonly string[];
  chosen: Chosen;
  editor!: Editor;
  /** how many edits were told */
  edits = 0;
  /** names that nothing else has */
  names = 0;
  /** folders that the server has to ask for before it knows them */
  private moved: Promise<void> = Promise.resolve();
  private asked: () => void = () => undefined;

  private constructor(state: State) {
    this.disk = new Map(state.disk);
    this.bases = new Set(state.bases);
    this.folders = state.folders;
    this.chosen = state.chosen;
  }

  /** A world whose server was told of nothing but this. */
  static async of(state: State): Promise<World> {
    const world = new World(state);
    const { editor } = world.serving(await startEditor({
      folder: FOLDER.slice(0, -1), read: at => Promise.resolve(world.disk.get(at)), options: { listsFiles: true, readsFiles: true, opensReview: true, checksAllPages: true }, capabilities: CAPABILITIES,
      answers: {
        'workspace/configuration': p => (p as { items: { section: string }[] }).items.map(({ section }) => world.chosen[section.slice('platewright.'.length) as keyof Chosen]),
        'workspace/workspaceFolders': () => { setImmediate(() => { world.asked(); }); return world.folders.map(f => ({ uri: f, name: f })); },
      },
    }));
    editor.connection.onRequest(LIST_FILES, () => [...world.disk.keys()].filter(u => world.folders.some(f => u.startsWith(`${f}/`))).sort());
    if (state.folders.length > 1) await world.folder(state.folders);
    for (const [name, text] of state.open) await world.show(name, text);
    for (const name of state.bases) await world.base(name);
    return world;
  }

  private serving(editor: Editor): this { this.editor = editor; return this; }

  get state(): State {
    return { disk: new Map(this.disk), open: new Map([...this.open].map(([n, p]) => [n, p.text])), folders: this.folders, chosen: this.chosen, bases: new Set(this.bases) };
  }

  tell(method: string, params: object): Promise<void> { return this.editor.connection.sendNotification(method, params); }

  async show(name: string, text = this.disk.get(uri(name)) ?? ''): Promise<void> { this.open.set(name, await this.editor.open(text, uri(name))); }

  async hide(name: string): Promise<void> {
    const page = this.open.get(name)!;
    for (const kept of [this.open, this.past, this.bases]) kept.delete(name);
    await page.close();
  }

  /** What was there before is kept, so that it can be taken back. */
  async edit(name: string, edits: readonly TextEdit[]): Promise<void> {
    const page = this.open.get(name)!;
    this.edits++;
    this.past.set(name, [...this.past.get(name) ?? [], page.text].slice(-10));
    await page.edit(edits);
  }

  async write(name: string, now: string | undefined): Promise<void> { await this.written([[name, now]]); }

  /** Files that another program wrote; undefined: deleted. */
  async written(all: readonly (readonly [string, string | undefined])[]): Promise<void> {
    const changes = all.map(([name, now]) => {
      const at = uri(name);
      const type = now === undefined ? 3 : this.disk.has(at) ? 2 : 1;
      if (now === undefined) this.disk.delete(at);
      else this.disk.set(at, now);
      return { uri: at, type };
    });
    await this.tell('workspace/didChangeWatchedFiles', { changes });
  }

  /** An edit of several files: those that are open are typed into, the others are written. */
  async apply(edit: WorkspaceEdit): Promise<void> {
    for (const change of edit.documentChanges ?? []) {
      if (!('edits' in change)) throw new Error('no file is made or moved');
      const at = change.textDocument.uri;
      const name = [...this.open.keys()].find(n => uri(n) === at);
      if (name !== undefined) {
        this.edits++;
        await this.open.get(name)!.apply({ documentChanges: [change] });
      } else await this.write(at, replaced(this.disk.get(at)!, change.edits as TextEdit[]));
    }
  }

  async choose(chosen: Chosen): Promise<void> {
    this.chosen = chosen;
    await this.tell('workspace/didChangeConfiguration', { settings: null });
  }

  /** Other folders are open; ends when the server knows. */
  async folder(now: readonly string[]): Promise<void> {
    const as = (f: string): { uri: string; name: string } => ({ uri: f, name: f });
    const event = { added: now.filter(f => !this.folders.includes(f)).map(as), removed: this.folders.filter(f => !now.includes(f)).map(as) };
    this.folders = now;
    this.moved = new Promise(resolve => { this.asked = resolve; });
    await this.tell('workspace/didChangeWorkspaceFolders', { event });
    await this.moved;
    // The answer is on its way; what is asked behind it is answered behind it.
    await this.turn();
  }

  async base(name: string): Promise<void> {
    this.bases.add(name);
    await this.tell(BASE, { textDocument: { uri: uri(name) }, base: { text: NOTEBOOK[name] ?? '', files: LABS.map(l => ({ uri: uri(l), text: NOTEBOOK[l]! })), since: 'the last commit' } });
  }

  /** All that was told before was heard. */
  async turn(): Promise<void> { for (let i = 0; i < 2; i++) await this.editor.connection.sendRequest('textDocument/hover', { textDocument: { uri: 'untitled:nothing' }, position: { line: 0, character: 0 } }); }

  close(): void { this.editor.close(); }
}

export const TWO_FOLDERS: readonly string[] = [FOLDER.slice(0, -1), SHED.slice(0, -1)];

function replaced(before: string, edits: readonly TextEdit[]): string {
  const starts = [0];
  for (const m of before.matchAll(/\r\n|\n|\r/g)) starts.push(m.index + m[0].length);
  const offset = (p: { line: number; character: number }): number => starts[p.line]! + p.character;
  return [...edits].sort((a, b) => offset(b.range.start) - offset(a.range.start)).reduce((t, e) => t.slice(0, offset(e.range.start)) + e.newText + t.slice(offset(e.range.end)), before);
}
