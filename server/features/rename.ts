/**
 * Renames a thing, a beam, a `let`, a variant, an inventory or one of its items wherever it is named, also in other pages. The edits are tried on copies
 * of all pages first: every other word must mean what it meant before, and findings and results must stay.
 */
import { parseLine } from '../../grammar/parse-line.ts';
import { RESERVED } from '../../grammar/tokens.ts';
import { analyse, type Library, type Snapshot } from '../analysis.ts';
import { fileName } from '../model/scope.ts';
import { keyOf, namedByKind, type Bearer } from '../model/mentions/names.ts';
import type { Role } from '../model/mentions/words.ts';
import { mentionsOf } from '../model/mentions/mentions.ts';
import { placeIn } from '../model/place.ts';
import { covers, tokenAt } from './cursor.ts';
import { applyEdits, type Edit } from '../model/edits.ts';
import { isShared, usesIn, type Use } from './references.ts';

/** A page that may say the name, with what gives it the texts that it uses. */
export interface Page {
  readonly snapshot: Snapshot;
  readonly library: Library;
}

/** Why something cannot be renamed, or not so: one or two sentences. */
export interface Refused { readonly refused: string }

/** The name at a cursor, where it can be renamed. `inside`: whether a file lies in the folders that are open. */
export function renamable(snapshot: Snapshot, line: number, character: number, inside: (uri: string) => boolean): Use | Refused {
  const here = mentionsOf(snapshot.tree, snapshot.model).filter(m => m.line === line && covers(m, character));
  const name = here.find(m => m.named);
  const text = (s: { start: number; end: number }): string => snapshot.tree.lines[line]!.text.slice(s.start, s.end);
  if (!name?.named) {
    const other = here[here.length - 1];
    if (other) return { refused: `“${text(other)}” ${WHAT[other.role]}` };
    const tree = snapshot.tree.lines[line];
    return { refused: tree && tokenAt(tree, character)?.type === 'string' ? 'A text in quotes is no name: change it where it stands.' : 'There is no name here that can be changed.' };
  }
  const { named } = name;
  if (namedByKind(named)) return { refused: `“${named.name}” is called by the word of its kind and has no other name.` };
  if (isShared(named) && !inside(named.at.uri)) {
    return { refused: `“${named.name}” is declared in ${fileName(named.at.uri)}, which is outside of the open folder: other pages there may name it.` };
  }
  return { named, declares: name.declares === true, at: placeIn(snapshot.uri, name.node, name) };
}

const LANGUAGE = 'is a word of the language: only names can be changed.';
const WHAT: Readonly<Record<Role, string>> = {
  name: LANGUAGE, kind: LANGUAGE, fact: LANGUAGE, choice: LANGUAGE, port: LANGUAGE, unit: 'is a unit: only names can be changed.', result: 'is the name of a result, which the program gives.',
  sought: 'is what is to be found, and has no name.', unknown: 'is not declared anywhere, so that nothing is called so.',
};

/** The edits that give it another name, all of a page together; or why not. The first page is the one in which it was asked. */
export function rename(pages: readonly Page[], named: Bearer, name: string): Map<string, Edit[]> | Refused {
  const newText = name.trim();
  if (newText === named.name) return new Map();
  const uses = new Map(pages.map(p => [p, usesIn(p.snapshot)]));
  const refused = (named.kind === 'variant' ? unfitText(newText) : unfit(newText)) ?? taken([...uses], named, newText);
  if (refused !== undefined) return { refused };
  const edits = new Map<string, Edit[]>();
  for (const [{ snapshot }, all] of uses) {
    const own = all.filter(u => keyOf(u.named) === keyOf(named)).map(u => ({ at: u.at, newText: named.kind === 'variant' ? asText(snapshot, u, newText) : newText }));
    if (own.length > 0) edits.set(snapshot.uri, own);
  }
  const harm = tried(pages, edits);
  return harm === undefined ? edits : { refused: harm };
}

/** A text without quotes gets them where it needs them. */
const asText = ({ tree }: Snapshot, { at }: Use, text: string): string => (tree.lines[at.line]!.text[at.start - 1] === '"' || unfit(text) === undefined ? text : `"${text}"`);

/** Why a word cannot be a name at all. */
function unfit(name: string): string | undefined {
  if (name === '') return 'A name has at least one letter.';
  if (RESERVED.has(name)) return `“${name}” is a word of the language that cannot be a name.`;
  if (name.includes('.')) return `A name has no dot: in “lab.red-12” the dot parts the inventory from what it holds.`;
  const { subject, issue } = parseLine(`let ${name} = 1`);
  const word = subject?.kind === 'phrase' && subject.words.length === 1 ? subject.words[0]!.text : undefined;
  return !issue && word === name ? undefined : `“${name}” cannot be a name: a name is one word of letters, digits, _ and inner hyphens, and starts with a letter.`;
}

/** Why a text cannot stand in quotes. */
function unfitText(text: string): string | undefined {
  if (text === '') return 'A name has at least one letter.';
  const { subject, issue } = parseLine(`variant "${text}" {`);
  return !issue && !/[\r\n]/.test(text) && subject?.kind === 'string' && subject.value === text ? undefined : `“${text}” cannot stand in quotes: a name holds no quotes, and stays in its line.`;
}

/** What is called so already, where the name would be seen. */
function taken(pages: readonly (readonly [Page, readonly Use[]])[], named: Bearer, name: string): string | undefined {
  for (const [{ snapshot }, uses] of pages) {
    const sees = snapshot.model.visible.get(named.name)?.at;
    if (named.kind === 'inventory' && !(sees && keyOf({ ...named, at: sees }) === keyOf(named))) continue;
    const block = named.kind === 'inventory' ? undefined : snapshot.tree.nodes.find(n => named.at.uri === snapshot.uri && n.at <= named.at.line && named.at.line <= n.end);
    if (named.kind !== 'inventory' && !block) continue;
    const other = uses.find(u => u.declares && u.named.name === name && (u.named.kind === 'variant') === (named.kind === 'variant') && (!block || (u.at.line >= block.at && u.at.line <= block.end)))?.named;
    const inventory = named.kind === 'item' || named.kind === 'variant' ? undefined : snapshot.model.visible.get(name);
    const [what, at] = other ? [kindWords(other), other.at] : inventory ? ['an inventory', inventory.at] : [];
    if (what !== undefined && at) return `“${name}” is already the name of ${what}, in line ${at.line + 1}${at.uri === pages[0]![0].snapshot.uri ? '' : ` of ${fileName(at.uri)}`}.`;
  }
  return undefined;
}

const kindWords = (n: Bearer): string => n.of?.article ?? { thing: 'a thing', item: 'an item', beam: 'a beam', let: 'a value', variant: 'a variant', inventory: 'an inventory' }[n.kind];

/** What the edits would change besides the name, in words; undefined where that is nothing. */
function tried(pages: readonly Page[], edits: ReadonlyMap<string, readonly Edit[]>): string | undefined {
  const texts = new Map(pages.map(({ snapshot: s }) => [s.uri, edits.has(s.uri) ? applyEdits(s.text, edits.get(s.uri)!) : s.text]));
  for (const { snapshot: before, library } of pages) {
    const after = analyse(before.uri, texts.get(before.uri)!, {
      resolve: (path, from) => library.resolve(path, from), elsewhere: path => library.elsewhere?.(path) ?? [], text: uri => texts.get(uri) ?? library.text(uri), lines: uri => library.lines?.(uri)?.copy(),
    });
    const line = otherMeaning(before, after, edits) ?? otherFindings(before, after) ?? (sameResults(before, after) ? undefined : 0);
    if (line !== undefined) {
      const where = before.uri === pages[0]!.snapshot.uri ? '' : ` of ${fileName(before.uri)}`;
      return `That name would change what else the page says: line ${line + 1}${where} would then mean something else. Choose another.`;
    }
  }
  return undefined;
}

/** The first line in which a word means something else than before. */
function otherMeaning(before: Snapshot, after: Snapshot, edits: ReadonlyMap<string, readonly Edit[]>): number | undefined {
  const moved = (at: { readonly uri: string; readonly line: number; readonly start: number }): string => {
    const here = (edits.get(at.uri) ?? []).filter(e => e.at.line === at.line);
    // Behind a quote that it gets.
    const quoted = here.some(e => e.at.start === at.start && e.newText.startsWith('"')) ? 1 : 0;
    const by = here.filter(e => e.at.start < at.start).reduce((n, e) => n + e.newText.length - (e.at.end - e.at.start), quoted);
    return `${at.uri} ${at.line} ${at.start + by}`;
  };
  const [a, b] = [mentionsOf(before.tree, before.model), mentionsOf(after.tree, after.model)];
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const [x, y] = [a[i], b[i]];
    const same = x && x.role === y?.role && moved({ uri: before.uri, line: x.line, start: x.start }) === `${after.uri} ${y.line} ${y.start}` && x.named?.kind === y.named?.kind && (!x.named || moved(x.named.at) === keyOf(y.named!));
    if (same !== true) return Math.min(x?.line ?? Infinity, y?.line ?? Infinity);
  }
  return undefined;
}

/** A rename moves nothing to another line, so that findings are the same by their codes and lines. */
function otherFindings(before: Snapshot, after: Snapshot): number | undefined {
  const rows = (s: Snapshot): string[] => s.findings.map(f => `${f.at.line} ${f.code} ${f.severity} ${String(f.accepted !== undefined)}`).sort();
  const [a, b] = [rows(before), rows(after)];
  const differs = a.length > b.length ? a.find(x => !b.includes(x)) ?? a[0] : b.find((x, i) => a[i] !== x);
  return differs === undefined ? undefined : Number(differs.split(' ')[0]);
}

function sameResults(before: Snapshot, after: Snapshot): boolean {
  const figures = (s: Snapshot): (number | undefined)[] => s.results.flatMap(r => [...r.published.map(c => r.graph.value(c)), ...r.goals.map(g => g.value)]);
  const [a, b] = [figures(before), figures(after)];
  return a.length === b.length && a.every((v, i) => v === b[i] || (v !== undefined && b[i] !== undefined && Math.abs(v - b[i]) <= 1e-9 * Math.abs(v)));
}
