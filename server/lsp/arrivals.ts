/**
 * Watches messages as they arrive, before they wait for their turn. A request about a text that has a newer version waiting
 * behind it is superseded, and need not be computed: that keeps answers quick without delaying any.
 */
import type { DataCallback, Disposable, Event, Message, MessageReader } from 'vscode-languageserver';
import { canonical } from './uris.ts';

export class Arrivals implements MessageReader {
  private readonly versions = new Map<string, unknown>();

  constructor(private readonly reader: MessageReader) {}

  get onError(): Event<Error> { return this.reader.onError; }
  get onClose(): Event<void> { return this.reader.onClose; }
  get onPartialMessage(): MessageReader['onPartialMessage'] { return this.reader.onPartialMessage; }

  listen(callback: DataCallback): Disposable {
    return this.reader.listen(message => {
      this.note(message);
      callback(message);
    });
  }

  dispose(): void { this.reader.dispose(); }

  /** True where a newer text of the document has arrived than the one that is being looked at. */
  superseded({ id, version }: { readonly id: string; readonly version: number }): boolean {
    const newest = this.versions.get(id);
    return typeof newest === 'number' && newest > version;
  }

  private note(message: Message & { method?: unknown; params?: unknown }): void {
    const { method } = message;
    if (method !== 'textDocument/didOpen' && method !== 'textDocument/didChange' && method !== 'textDocument/didClose') return;
    const document = (message.params as { textDocument?: { uri?: unknown; version?: unknown } | null } | null)?.textDocument;
    if (typeof document?.uri !== 'string') return;
    if (method === 'textDocument/didClose') this.versions.delete(canonical(document.uri));
    // A document that is opened again may begin with a lower version.
    else this.versions.set(canonical(document.uri), document.version);
  }
}
