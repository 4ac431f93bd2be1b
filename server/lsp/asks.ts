/** What the parts of the server that answer requests are given. */
import type { CancellationToken, ClientCapabilities, Connection } from 'vscode-languageserver';
import type { Snapshot } from '../analysis.ts';
import type { Document, Documents } from './documents.ts';

export interface Asks {
  readonly connection: Connection;
  readonly documents: Documents;
  readonly can: () => ClientCapabilities;
  /**
   * Answers from the snapshot of a document; null where it is not open. A text that has moved on is answered as cancelled, unless the answer is of use
   * then: a list that was asked for with the first letter of a word is wanted with its second.
   */
  readonly answer: <T>(uri: string, token: CancellationToken, from: (snapshot: Snapshot, document: Document) => T | Promise<T>, use?: 'now' | 'later') => Promise<T | null>;
}
