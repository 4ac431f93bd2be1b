/** Every question that an editor asks, of pages of any shape, at places all over them: an answer or none, no defect, and every range within the page. */
import { TextDocument } from 'vscode-languageserver-textdocument';
import { ASKS } from '../asks.ts';
import { PAGE } from '../library.ts';
import { randomBy } from '../random.ts';
import { ABLE, Server, type Answer } from '../server.ts';
import { hash, none, unfit, type Target } from '../target.ts';
import { DICTIONARY, likelyPage } from '../texts.ts';

/** How many questions a page is asked. */
const MANY = 10;
/** LSP 3.17, ErrorCodes: a refusal in words, which an editor shows. */
const REFUSED = -32803;

export const features: Target = {
  name: 'features', share: 20, few: 12, inputs: likelyPage, words: DICTIONARY,
  run: async text => {
    const server = new Server();
    try {
      await server.ask('initialize', { processId: null, rootUri: null, workspaceFolders: [{ uri: 'file:///saltmarsh', name: 'notebook' }], initializationOptions: { opensWhy: true, opensReview: true }, capabilities: ABLE });
      server.tell('initialized', {});
      server.tell('textDocument/didOpen', { textDocument: { uri: PAGE, languageId: 'plate', version: 1, text } });
      const document = TextDocument.create(PAGE, 'plate', 1, text);
      const lines = Array.from({ length: document.lineCount }, (_, i) => document.getText({ start: { line: i, character: 0 }, end: { line: i + 1, character: 0 } }).replace(/[\r\n]+$/, ''));
      const ask = async (method: string, params: unknown): Promise<Answer> => {
        const answer = await server.ask(method, params);
        if (answer.error && !(answer.error.code === REFUSED && answer.error.message.endsWith('.'))) throw new Error(`${method}: ${answer.error.message}`);
        none(`${method} answers`, [...outside(answer.result, lines), ...unfit(text, stringsOf(answer.result))]);
        return answer;
      };
      const random = randomBy(hash(text));
      const place = (): { line: number; character: number } => { const line = random.below(lines.length); return { line, character: random.below(lines[line]!.length + 1) }; };
      for (let n = 0; n < MANY; n++) {
        const [a, b] = [place(), place()].sort((x, y) => x.line - y.line || x.character - y.character) as [ReturnType<typeof place>, ReturnType<typeof place>];
        const method = random.of(Object.keys(ASKS));
        await ASKS[method]!({ uri: PAGE, text, lines, position: a, range: { start: a, end: b }, chance: random.below(2 ** 30), ask });
      }
      none('the server tells of a defect', server.logged);
    } finally {
      server.close();
    }
  },
};

const isPosition = (v: unknown): v is { line: number; character: number } => typeof v === 'object' && v !== null && typeof (v as { line?: unknown }).line === 'number' && typeof (v as { character?: unknown }).character === 'number';

/** Numbers that are none, and ranges that are not within the page. Those of an earlier text, or of another file, are left out. */
function outside(answer: unknown, lines: readonly string[]): string[] {
  const wrong: string[] = [];
  const walk = (v: unknown, way: string): void => {
    if (typeof v === 'number' && !Number.isFinite(v)) wrong.push(`${way}: ${v}`);
    if (typeof v !== 'object' || v === null) return;
    const { side, uri, targetUri, textDocument, start, end } = v as Record<string, unknown>;
    if (side === 'before' || [uri, targetUri, (textDocument as { uri?: unknown } | undefined)?.uri].some(u => typeof u === 'string' && u !== PAGE)) return;
    if (isPosition(v) && !(v.line >= 0 && v.line < lines.length && v.character >= 0 && v.character <= lines[v.line]!.length)) wrong.push(`${way}: ${JSON.stringify(v)} of ${lines.length} lines, ${String(lines[v.line]?.length)} long`);
    if (isPosition(start) && isPosition(end) && (end.line < start.line || (end.line === start.line && end.character < start.character))) wrong.push(`${way} ends before it starts: ${JSON.stringify(v)}`);
    for (const [name, of] of Object.entries(v)) walk(of, `${way}.${name}`);
  };
  walk(answer, '');
  return wrong;
}

function stringsOf(v: unknown): string[] {
  if (typeof v === 'string') return [v];
  return typeof v === 'object' && v !== null ? Object.values(v).flatMap(stringsOf) : [];
}
