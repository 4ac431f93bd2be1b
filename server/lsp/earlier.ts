/** An earlier text of a page: what was known of it, with the files that it used then. */
import { LineCache, marksOf } from '../../grammar/parse.ts';
import { analyse, type Snapshot } from '../analysis.ts';
import type { Document, Documents } from './documents.ts';
import type { EarlierText } from './protocol.ts';
import { canonical } from './uris.ts';

export interface Read {
  readonly snapshot: Snapshot;
  /** files of which nothing was said: those that were found are read as they are now */
  readonly asked: readonly { readonly uri: string; readonly found: boolean }[];
}

/** Kept as long as none of the texts changes. Each reading has caches of its own: a snapshot of an earlier text holds as long as anybody looks at it. */
export class Earlier {
  private kept: { readonly read: Read; readonly revisions: readonly number[] } | undefined;

  constructor(private readonly documents: Documents, private readonly page: Document | { readonly id: string }, private readonly said: EarlierText) {}

  is({ text, uri, files }: EarlierText): boolean {
    const { said } = this;
    return said.text === text && said.uri === uri && said.files.length === files.length && said.files.every((f, i) => f.uri === files[i]!.uri && f.text === files[i]!.text);
  }

  /** Editors count byte order marks as characters of the first line; the trees don't. */
  get marks(): number { return marksOf(this.said.text); }
  /** the one spelling of its address */
  get id(): string { return this.said.uri === undefined ? this.page.id : canonical(this.said.uri); }

  async read(): Promise<Read> {
    const { kept, documents } = this;
    if (kept?.read.asked.every(({ uri }, i) => documents.revisionOf(uri) === kept.revisions[i])) return kept.read;
    const own = new Map(this.said.files.map(f => [canonical(f.uri), f.text ?? undefined]));
    const read = await documents.reading(this.id, reads => {
      const lines = new Map<string, LineCache>();
      const asked = new Map<string, boolean>();
      const text = (uri: string): string | undefined => {
        if (own.has(uri)) return own.get(uri);
        const now = reads.text(uri);
        asked.set(uri, now !== undefined);
        return now;
      };
      const cache = (uri: string): LineCache => {
        const known = lines.get(uri) ?? new LineCache();
        lines.set(uri, known);
        return known;
      };
      const snapshot = analyse(this.id, this.said.text, { ...reads, text, lines: cache }, new LineCache());
      return { snapshot, asked: [...asked].map(([uri, found]) => ({ uri, found })) };
    });
    this.kept = { read, revisions: read.asked.map(a => documents.revisionOf(a.uri)) };
    return read;
  }
}

/** What a client says of an earlier text; undefined where it says something else. */
export function earlierOf(given: unknown): EarlierText | undefined {
  const { text, uri, files } = (typeof given === 'object' ? given ?? {} : {}) as Readonly<Record<string, unknown>>;
  if (typeof text !== 'string' || (uri !== undefined && typeof uri !== 'string')) return undefined;
  const told = (Array.isArray(files) ? files : []).flatMap((f: unknown) => {
    const file = (typeof f === 'object' ? f ?? {} : {}) as Readonly<Record<string, unknown>>;
    return typeof file['uri'] === 'string' && (typeof file['text'] === 'string' || file['text'] === null) ? [{ uri: file['uri'], text: file['text'] }] : [];
  });
  return { text, ...(uri === undefined ? {} : { uri }), files: told };
}
