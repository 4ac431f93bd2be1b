/** A server in this process. It reads from a stream, as from an editor; what it says is taken as it is, so that a NaN is not hidden by JSON. */
import { PassThrough } from 'node:stream';
import { createConnection, Emitter, ProposedFeatures, StreamMessageReader, type Message, type MessageWriter } from 'vscode-languageserver/node';
import { Arrivals } from '../../server/lsp/arrivals.ts';
import { serve } from '../../server/lsp/connection.ts';
import { STRATEGY } from '../../server/lsp/strategy.ts';
import { fileAt } from './library.ts';

export interface Answer { readonly id: string | number; readonly result?: unknown; readonly error?: { readonly code: number; readonly message: string } }
interface Said { readonly id?: string | number; readonly method?: string; readonly params?: unknown }

/** The longest that an answer may take, ms: a server that is stuck never answers. */
const PATIENCE = 20_000;

export class Server {
  /** what it told of defects of its own */
  readonly logged: string[] = [];
  readonly answers = new Map<string | number, Answer>();
  private readonly up = new PassThrough();
  private readonly waiting = new Map<string | number, () => void>();
  private readonly connection;
  private ids = 0;

  /** @param reply what its own questions are answered by */
  constructor(private readonly reply: { readonly result: unknown } | { readonly error: { readonly code: number; readonly message: string } } = { result: null }) {
    const writer: MessageWriter = { onError: new Emitter<never>().event, onClose: new Emitter<never>().event, write: m => { this.heard(m); return Promise.resolve(); }, end: () => undefined, dispose: () => undefined };
    const arrivals = new Arrivals(new StreamMessageReader(this.up));
    this.connection = createConnection(ProposedFeatures.all, arrivals, writer, STRATEGY);
    serve(this.connection, arrivals, uri => Promise.resolve(fileAt(uri)), () => Promise.resolve([]));
  }

  /** Sends a body as it is, well framed. */
  send(body: string): void {
    const bytes = Buffer.from(body, 'utf8');
    this.up.write(Buffer.concat([Buffer.from(`Content-Length: ${bytes.length}\r\n\r\n`, 'latin1'), bytes]));
  }

  say(message: Said): void { this.send(JSON.stringify({ jsonrpc: '2.0', ...message })); }
  tell(method: string, params: unknown): void { this.say({ method, params }); }

  /** Asks, and waits for the answer; throws where none comes. */
  async ask(method: string, params: unknown): Promise<Answer> {
    const id = `own ${++this.ids}`;
    this.say({ id, method, params });
    await this.answered(id, method);
    return this.answers.get(id)!;
  }

  async answered(id: string | number, what: string): Promise<void> {
    if (this.answers.has(id)) return;
    await new Promise<void>((resolve, reject) => {
      const over = setTimeout(() => { reject(new Error(`no answer to ${what}`)); }, PATIENCE);
      this.waiting.set(id, () => { clearTimeout(over); resolve(); });
    });
  }

  close(): void {
    this.connection.dispose();
    this.up.destroy();
  }

  private heard(message: Message & Said & Partial<Answer>): void {
    if (message.method === undefined) {
      if (message.id === undefined) return;
      this.answers.set(message.id, message as Answer);
      this.waiting.get(message.id)?.();
    } else if (message.id !== undefined) {
      this.send(JSON.stringify({ jsonrpc: '2.0', id: message.id, ...this.reply }));
    } else if (message.method === 'window/logMessage') this.logged.push(String((message.params as { message?: unknown } | undefined)?.message));
  }
}

/** What a client can that can everything. */
export const ABLE = {
  textDocument: {
    diagnostic: {}, codeLens: {}, inlayHint: { resolveSupport: { properties: ['tooltip'] } }, rename: { prepareSupport: true }, documentSymbol: { hierarchicalDocumentSymbolSupport: true }, definition: { linkSupport: true },
    semanticTokens: { requests: { full: { delta: true }, range: true } }, completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } }, signatureHelp: { signatureInformation: { documentationFormat: ['markdown'], parameterInformation: { labelOffsetSupport: true } } },
  },
  workspace: { workspaceEdit: { documentChanges: true }, configuration: true, workspaceFolders: true },
};
