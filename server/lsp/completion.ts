/** What can be written at the cursor. */
import { CompletionItemKind, InsertTextFormat, InsertTextMode, type CompletionItem, type CompletionList, type ServerCapabilities } from 'vscode-languageserver';
import type { Completion, Topic } from '../features/completion/completion.ts';
import type { Asks } from './asks.ts';
import { placeOf, rangeOf, type Source } from './convert.ts';
import type { Document, Documents } from './documents.ts';
import { later } from './later.ts';
import type { ListFiles } from './pages.ts';
import { canonical, pathFrom } from './uris.ts';

/**
 * Behind these something is asked for: the rest of a name (`lab.`), what light meets (`->`), a value (`:`), an item (`=`), a file (`use "`). A blank is none of
 * them: it would open a list at each word, in which the next line end takes what nobody chose. Nor does any character take an item on its way: a
 * name may be meant that is only declared later.
 */
export const COMPLETION: ServerCapabilities = { completionProvider: { triggerCharacters: ['.', '>', ':', '=', '"'], resolveProvider: true } };

const KIND: Readonly<Record<Completion['kind'], CompletionItemKind>> = {
  statement: CompletionItemKind.Keyword, kind: CompletionItemKind.Class, block: CompletionItemKind.Snippet, fact: CompletionItemKind.Property, choice: CompletionItemKind.EnumMember, value: CompletionItemKind.Value,
  unit: CompletionItemKind.Unit, word: CompletionItemKind.Keyword, thing: CompletionItemKind.Variable, beam: CompletionItemKind.Event, item: CompletionItemKind.Reference, let: CompletionItemKind.Constant,
  result: CompletionItemKind.Field, code: CompletionItemKind.Constant, file: CompletionItemKind.File,
};

/** By which the words beside an item are found when somebody looks at it. */
interface Data { readonly uri: string; readonly about: Topic }

/** What a client makes of items. */
interface Can { readonly stops: boolean; readonly details: boolean; readonly indents: boolean; readonly markdown: boolean; readonly knows: (kind: CompletionItemKind) => boolean }

export function serveCompletion({ connection, documents, can, answer }: Asks, list: ListFiles): void {
  const able = (): Can => {
    const completion = can().textDocument?.completion;
    const item = completion?.completionItem;
    const kinds = completion?.completionItemKind?.valueSet;
    return {
      stops: item?.snippetSupport === true, details: item?.labelDetailsSupport === true, indents: item?.insertTextModeSupport?.valueSet.includes(InsertTextMode.adjustIndentation) === true,
      markdown: item?.documentationFormat?.includes('markdown') === true, knows: kind => (kinds ? kinds.includes(kind) : kind <= CompletionItemKind.Reference),
    };
  };
  const wordsOf = (value: string): { documentation: CompletionItem['documentation'] & object } => ({ documentation: { kind: able().markdown ? 'markdown' : 'plaintext', value } });

  connection.onCompletion(({ textDocument: t, position }, token) => answer(t.uri, token, async (s, d): Promise<CompletionList> => {
    const { completionsAt, wantsFiles } = await later();
    const at = placeOf(d, position);
    const files = wantsFiles(s, ...at) ? await filesFor(d, documents, list) : [];
    const client = able();
    const items = completionsAt(s, ...at, { files }).filter(i => client.stops || i.stopsOnly !== true);
    return { isIncomplete: false, items: items.map(i => ({ ...itemOf(d, i, client, /^\s*/.exec(s.tree.lines[at[0]]!.text)![0]), ...(i.words === undefined ? {} : wordsOf(i.words)) })) };
  }, 'later'));

  connection.onCompletionResolve(async (item, token) => {
    const { uri, about } = (item.data ?? {}) as Partial<Data>;
    if (typeof uri !== 'string' || !about) return item;
    const words = await answer(uri, token, async s => (await later()).completionWords(about, s), 'later');
    return typeof words === 'string' ? { ...item, ...wordsOf(words) } : item;
  });
}

function itemOf(source: Source, i: Completion, client: Can, indent: string): CompletionItem {
  const { snippet } = i;
  const stops = client.stops && snippet !== undefined;
  const data: Data | undefined = i.about && { uri: source.uri, about: i.about };
  return {
    label: i.label, filterText: i.filter, sortText: i.sort, ...(client.knows(KIND[i.kind]) ? { kind: KIND[i.kind] } : {}), ...detailOf(i, client),
    // Where there are stops, the editor indents the lines below the first as it indents the first.
    textEdit: { range: rangeOf(source, i.at), newText: stops ? snippet : i.text.replaceAll('\n', `\n${indent}`) },
    ...(stops ? { insertTextFormat: InsertTextFormat.Snippet, ...(client.indents ? { insertTextMode: InsertTextMode.adjustIndentation } : {}) } : {}), ...(data ? { data } : {}),
  };
}

/** Beside the label where the editor has a place for it; then it need not stand above the words as well. */
const detailOf = ({ detail }: Completion, client: Can): Partial<CompletionItem> => (detail === undefined ? {} : client.details ? { labelDetails: { description: detail } } : { detail });

/** Paths of the pages that a page may use, those nearest to it first; not its own. Without an open folder only open pages are known. */
async function filesFor(d: Document, documents: Documents, list: ListFiles): Promise<string[]> {
  const listed = documents.inFolders.length === 0 ? [] : await list(documents.inFolders).catch(() => []);
  const uris = new Set([...[...documents.all()].map(o => o.id), ...listed.map(canonical)]);
  uris.delete(d.id);
  const paths = [...uris].flatMap(uri => pathFrom(d.id, uri) ?? []).filter(p => documents.textsFor(d).resolve(p, d.id) !== null);
  return paths.sort((a, b) => a.split('/').length - b.split('/').length || (a < b ? -1 : 1));
}
