/** The open documents and the files that they use, each with its newest text; and the snapshot of a document, kept as long as none of these texts changes. */
import { TextDocument, type TextDocumentContentChangeEvent } from 'vscode-languageserver-textdocument';
import { LineCache, marksOf } from '../../grammar/parse.ts';
import { analyse, type Library, type Snapshot } from '../analysis.ts';
import { isMissing, reasonOf } from '../features/unreadable.ts';
import { canonical, folderNamed, foldersFor, isInside, nameOf, resolveUse } from './uris.ts';

/** Reads a file that is not open; undefined where it is missing or cannot be read. Must not leave `folders`. */
export type ReadFile = (uri: string, folders: readonly string[]) => Promise<string | undefined>;

/** ms. A disk may be slow, or fail and come back. */
export interface Waits {
  /** how long a page waits for a file that it uses: then it is answered without */
  readonly patience: number;
  /** when a file that could not be read is tried again */
  readonly again: number;
}
export const WAITS: Waits = { patience: 5000, again: 5000 };

interface Read {
  readonly text: string | undefined;
  /** why there is none, where that may pass */
  readonly why?: string;
}

/** A text with a number that no other text of this session has. */
interface Text extends Read {
  readonly revision: number;
  readonly lines: LineCache;
}

export class Document {
  readonly lines = new LineCache();
  /** the snapshot, with the revision of each text that it rests on */
  kept: { readonly snapshot: Snapshot; readonly revisions: readonly number[]; readonly id: number } | undefined;
  /** addresses of the files that the last snapshot rested on, itself first */
  files: readonly string[] = [];

  /** the one spelling of its address */
  readonly id: string;

  /** `uri` is in the client's spelling. */
  constructor(readonly uri: string, private readonly content: TextDocument, public revision: number) {
    this.id = canonical(uri);
  }

  get version(): number { return this.content.version; }
  get text(): string { return this.content.getText(); }
  /** Editors count byte order marks as characters of the first line; the trees don't. */
  get marks(): number { return marksOf(this.text); }

  update(changes: TextDocumentContentChangeEvent[], version: number, revision: number): void {
    // A change that is no change throws half way; what is kept of the text before it is of no use then. It is let go before
    // the new one is made, so that the collector has one less to look at.
    this.revision = revision;
    this.kept = undefined;
    TextDocument.update(this.content, changes, version);
  }
}

export class Documents {
  private readonly open = new Map<string, Document>();
  private readonly files = new Map<string, Text>();
  private readonly loading = new Map<string, Promise<void>>();
  private folders: readonly string[] = [];
  private inventories: readonly string[] = [];
  private revision = 0;
  private ids = 0;

  /** `arrived` is called when a file can be read that could not before, or the other way. */
  constructor(private readonly readFile: ReadFile, private readonly arrived: (uri: string) => void = () => undefined, private readonly waits: Waits = WAITS) {}

  /** Never fails, and not before long tells that there is no answer. `late` gets one that comes then. */
  private read(uri: string, main: string, late?: (found: Read) => void): Promise<Read> {
    const found = this.readFile(uri, this.reach(main)).then((text): Read => ({ text }), (e: unknown): Read => ({ text: undefined, ...(isMissing(e) ? {} : { why: `it cannot be read: ${reasonOf(e)}` }) }));
    return new Promise(resolve => {
      let over = false;
      const timer = setTimeout(() => {
        over = true;
        resolve({ text: undefined, why: 'it cannot be read: the disk does not answer' });
      }, this.waits.patience);
      void found.then(f => {
        clearTimeout(timer);
        if (over) late?.(f);
        resolve(f);
      });
    });
  }

  /** The folders that are open, in the client's spelling. */
  setFolders(uris: readonly string[]): void {
    this.folders = uris.map(u => canonical(u).replace(/\/$/, ''));
    for (const d of this.open.values()) d.kept = undefined;
    this.changedAnywhere();
  }

  /** Folders that are looked in besides those that are open: absolute paths or addresses. */
  setInventories(named: readonly unknown[]): void {
    this.inventories = named.flatMap(n => (typeof n === 'string' ? (folderNamed(n) ?? []) : []));
    for (const d of this.open.values()) d.kept = undefined;
    this.changedAnywhere();
  }

  /** The folders whose files a file may use. */
  private reach(main: string): readonly string[] { return [...foldersFor(main, this.folders), ...this.inventories]; }

  get(uri: string): Document | undefined { return this.open.get(canonical(uri)); }
  all(): Iterable<Document> { return this.open.values(); }

  opened(uri: string, language: string, version: number, text: string): Document {
    const document = new Document(uri, TextDocument.create(uri, language, version, text), ++this.revision);
    this.open.set(document.id, document);
    return document;
  }

  changed(uri: string, changes: TextDocumentContentChangeEvent[], version: number): Document | undefined {
    const document = this.get(uri);
    document?.update(changes, version, ++this.revision);
    return document;
  }

  /** Behind it the text on disk counts again, whatever it is by now. */
  closed(uri: string): void {
    const id = canonical(uri);
    const files = this.open.get(id)?.files ?? [];
    this.open.delete(id);
    this.forget(id);
    this.dropped(files);
  }

  /** Open pages no longer use these files: whoever types a name, or works through many pages, leaves nothing behind. */
  private dropped(files: readonly string[]): void {
    for (const f of files) if (![...this.open.values()].some(d => d.files.includes(f))) this.forget(f);
  }

  /** Files changed outside of the editor. */
  changedOutside(uris: readonly string[]): void {
    for (const u of uris) this.forget(canonical(u));
  }

  /** Any file may have changed outside of the editor. */
  changedAnywhere(): void {
    for (const u of [...this.files.keys(), ...this.loading.keys()]) this.forget(u);
  }

  private forget(uri: string): void {
    this.files.delete(uri);
    // What is being read may be the old text.
    this.loading.delete(uri);
  }

  /** Open documents whose last snapshot rests on one of these files, themselves not counted. */
  resting(on: readonly string[]): Document[] {
    const names = new Set(on.map(canonical));
    return [...this.open.values()].filter(d => d.files.some((f, i) => i > 0 && names.has(f)));
  }

  /** The spelling of an address that the client uses. */
  spelling(uri: string): string { return this.open.get(uri)?.uri ?? uri; }

  /** True for a file that other open pages may name: it lies in an open folder, or was never saved. */
  isOpen(uri: string): boolean { return !uri.includes('/') || this.folders.some(f => isInside(uri, f)); }

  /** A page by its address: as it is open, else as it stands on disk now. Undefined where it cannot be read. */
  async page(uri: string): Promise<Document | undefined> {
    const id = canonical(uri);
    const open = this.open.get(id);
    if (open) return open;
    const { text } = await this.read(id, id);
    if (this.open.has(id)) return this.open.get(id);
    // Whatever rests on the file sees this text from now on.
    if (this.textOf(id) ? this.textOf(id)!.text !== text : this.loading.has(id)) this.forget(id);
    return text === undefined ? undefined : new Document(uri, TextDocument.create(uri, 'plate', 0, text), ++this.revision);
  }

  /** The open folders. */
  get inFolders(): readonly string[] { return this.folders; }
  /** The folders of inventories. */
  get besideFolders(): readonly string[] { return this.inventories; }

  /** What is known of the newest text. Files that it uses are read first. */
  async snapshot(document: Document): Promise<Snapshot> {
    for (;;) {
      const { snapshot, missing } = this.now(document);
      if (missing.length === 0) return snapshot;
      await Promise.all(missing.map(uri => this.load(uri, document.id)));
    }
  }

  /** A name for the snapshot: the same as long as nothing has changed that it rests on. */
  idOf(document: Document): string { return String(document.kept?.id ?? 0); }

  /** What is made of a text at an address with the files that it uses, as they are now. They are read first. */
  async reading<T>(main: string, make: (library: Library) => T): Promise<T> {
    for (;;) {
      const missing: string[] = [];
      const made = make(this.textsAt(main, missing));
      if (missing.length === 0) return made;
      await Promise.all(missing.map(uri => this.load(uri, main)));
    }
  }

  textsFor(document: Document): Library { return this.textsAt(document.id); }

  private textsAt(main: string, missing: string[] = []): Library {
    const folders = foldersFor(main, this.folders);
    const reach = this.reach(main);
    const roots = [...folders.map(f => ({ f, where: `the folder “${nameOf(f)}”` })), ...this.inventories.map(f => ({ f, where: `the folder “${nameOf(f)}” of inventories` }))];
    return {
      resolve: (path, from) => resolveUse(path, from, reach),
      elsewhere: path => roots.flatMap(({ f, where }) => { const uri = resolveUse(path, `${f}/`, [f]); return uri === null ? [] : [{ uri, where }]; }),
      text: uri => {
        const text = this.textOf(uri);
        if (!text) missing.push(uri);
        return text?.text;
      },
      lines: uri => this.textOf(uri)?.lines,
      why: uri => this.files.get(uri)?.why,
    };
  }

  private now(document: Document): { snapshot: Snapshot; missing: readonly string[] } {
    const { kept } = document;
    if (kept?.snapshot.files.every((f, i) => this.revisionOf(f) === kept.revisions[i])) return { snapshot: kept.snapshot, missing: [] };
    const missing: string[] = [];
    const snapshot = analyse(document.id, document.text, this.textsAt(document.id, missing), document.lines);
    const before = document.files;
    document.files = snapshot.files;
    if (this.open.get(document.id) === document) this.dropped(before.filter(f => !snapshot.files.includes(f)));
    if (missing.length === 0) document.kept = { snapshot, revisions: snapshot.files.map(f => this.revisionOf(f)), id: ++this.ids };
    return { snapshot, missing };
  }

  /** The number of a text that a page used; another one when it has changed. */
  revisionOf(uri: string): number { return this.textOf(uri)?.revision ?? 0; }

  private textOf(uri: string): Text | undefined { return this.open.get(uri) ?? this.files.get(uri); }

  private load(uri: string, main: string): Promise<void> {
    const before = this.loading.get(uri);
    if (before) return before;
    const revision = ++this.revision;
    const loading = this.read(uri, main, late => { this.follow(uri, main, late); }).then(found => {
      if (this.loading.get(uri) !== loading) return;
      this.loading.delete(uri);
      this.files.set(uri, { ...found, revision, lines: new LineCache() });
      if (found.why !== undefined) this.tryAgain(uri, main);
    });
    this.loading.set(uri, loading);
    return loading;
  }

  /** As long as a page uses it. */
  private tryAgain(uri: string, main: string): void {
    const failed = this.files.get(uri);
    const timer: unknown = setTimeout(() => {
      if (this.files.get(uri) !== failed) return;
      void this.read(uri, main, late => { this.follow(uri, main, late); }).then(found => { if (this.files.get(uri) === failed) this.follow(uri, main, found); });
    }, this.waits.again);
    // Nobody stays for that alone.
    if (typeof timer === 'object' && timer !== null && 'unref' in timer) (timer as { unref(): void }).unref();
  }

  /** What was read of a file that could not be read before. */
  private follow(uri: string, main: string, found: Read): void {
    const failed = this.files.get(uri);
    if (failed?.why === undefined) return;
    if (found.why === failed.why) { this.tryAgain(uri, main); return; }
    this.files.set(uri, { ...found, revision: ++this.revision, lines: new LineCache() });
    if (found.why !== undefined) this.tryAgain(uri, main);
    this.arrived(uri);
  }
}
