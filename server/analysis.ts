/**
 * The snapshot of a file: everything that is known about it at one version of its text and of the files that it uses.
 *
 * This is the only place that strings the stages together. The editor, the command line and the tests all ask here, so
 * none of them can disagree. Pure: texts come in through a {@link Library}; nothing is read, no clock is asked.
 */
import { LineCache, parse } from '../grammar/parse.ts';
import type { Tree } from '../grammar/tree.ts';
import type { Finding } from './checks/check.ts';
import { figuresOf, type Made } from './checks/figures.ts';
import { findingsOf } from './checks/run.ts';
import { bind } from './model/bind/bind.ts';
import type { Found } from './model/bind/found.ts';
import type { Model } from './model/model.ts';
import { fileName } from './model/scope.ts';
import type { Results } from './results/plan.ts';

/** The stages that a document passes through; each holds all before it. */
export interface Snapshot {
  readonly uri: string;
  readonly text: string;
  /** lines parsed and nested */
  readonly tree: Tree;
  /** names bound */
  readonly model: Model;
  /** one for each setup, in the order of the text */
  readonly results: readonly Results[];
  readonly findings: readonly Finding[];
  /** all files whose text this snapshot rests on, itself first */
  readonly files: readonly string[];
  readonly work: Work;
}

/** How much of a snapshot was made for it; the rest is kept from the text before it. */
export interface Work extends Made {
  /** lines parsed */
  readonly lines: number;
  /** setups, inventories and items of inventories of which the names were bound */
  readonly bound: number;
}

/** Gives texts to the core. `resolve` turns the path of a `use` into an address; null: not allowed (outside the open folder). */
export interface Library {
  text(uri: string): string | undefined;
  resolve(path: string, from: string): string | null;
  /** where else a file of that path may be, in the order in which it is looked for: in the folders that are open, then in those that were named */
  elsewhere?(path: string): readonly Candidate[];
  /** where a file is kept from one analysis to the next, by whoever analyses it often */
  lines?(uri: string): LineCache | undefined;
  /** why there is no text, where something is there that cannot be read: a sentence without its end */
  why?(uri: string): string | undefined;
}

/** A file that a `use` may mean; `where` completes “looked in …”. */
export interface Candidate {
  readonly uri: string;
  readonly where: string;
}

export const MAX_FILES = 64;

/** A library that has one file and finds no other. */
export const alone: Library = { text: () => undefined, resolve: path => path };

/**
 * With a `cache` that has seen an earlier text of the same file, what the edit has not touched is taken from the snapshot of that text, which is of no use any
 * more: its places are those of the newer text. The answers are the same as without.
 */
export function analyse(uri: string, text: string, library: Library = alone, cache: LineCache = library.lines?.(uri)?.copy() ?? new LineCache()): Snapshot {
  const { tree, model, files, lines, bound } = read(uri, text, library, cache);
  const { figures, anew } = figuresOf(model.setups, cache);
  let findings: readonly Finding[] | undefined;
  return {
    uri, text, tree, model, results: figures.map(f => f.results), files,
    // What is pointed at behind an edit is told before everything is looked through for what is wrong.
    get findings() { return findings ??= findingsOf(tree, model, figures); },
    get work() {
      findings ??= findingsOf(tree, model, figures);
      const made = anew.map(f => f.made);
      const sum = (of: keyof Made): number => made.reduce((n, m) => n + m[of], 0);
      return { lines, bound, planned: sum('planned'), rules: sum('rules'), bands: sum('bands') };
    },
  };
}

/** All files that a snapshot of this text would rest on, itself first: nothing is computed for that. */
export const filesOf = (uri: string, text: string, library: Library): readonly string[] => read(uri, text, library, new LineCache()).files;

/** A ring of masters is no affair of who only takes an inventory from there. */
function foundIn({ inventories, setups, problems }: Model, uri: string): Found {
  const ring = problems.find(p => p.code === 'master-ring')?.data['ring'];
  return { inventories, setups, uri, ...(ring === undefined ? {} : { masterRing: String(ring) }) };
}

interface Read {
  readonly tree: Tree;
  readonly model: Model;
  readonly files: readonly string[];
  /** how many lines were parsed, and how much was bound anew */
  readonly lines: number;
  readonly bound: number;
}

/** A text with the files that it uses, up to where names are bound. */
function read(uri: string, text: string, library: Library, cache: LineCache): Read {
  const files = new Set([uri]);
  let asked = 0;
  const caches = new Map([[cache, cache.parsed]]);
  const tree = parse(text, cache);
  const bound = new Map<string, Model>();
  const fetched = (of: string): string | undefined => { files.add(of); return library.text(of); };
  const find = (from: string, ring: readonly string[]) => (path: string): Found => {
    const beside = library.resolve(path, from);
    const places = beside === null ? [] : [{ uri: beside, where: 'the folder of this file' }];
    for (const c of library.elsewhere?.(path) ?? []) if (!places.some(p => p.uri === c.uri)) places.push(c);
    if (places.length === 0) return { code: 'import-outside', uri: '', data: { path } };
    const to = places.find(({ uri: u }) => ring.includes(u) || bound.has(u) || (asked < MAX_FILES && fetched(u) !== undefined))?.uri;
    if (to === undefined) {
      const why = places.map(p => library.why?.(p.uri)).find(w => w !== undefined) ?? 'it is missing or cannot be read';
      return asked++ < MAX_FILES ? { code: 'import-unreadable', uri: places[0]!.uri, data: { path, why, looked: places.map(p => p.where).join(', ') } }
        : { code: 'too-many-files', uri: places[0]!.uri, data: { limit: String(MAX_FILES) } };
    }
    if (ring.includes(to)) return { code: 'import-ring', uri: to, data: { ring: [...ring.slice(ring.indexOf(to)), to].map(fileName).join(' → ') } };
    const known = bound.get(to);
    if (known) return foundIn(known, to);
    asked++;
    const other = fetched(to)!;
    const lines = library.lines?.(to) ?? new LineCache();
    if (!caches.has(lines)) caches.set(lines, lines.parsed);
    const model = bind(to, parse(other, lines), find(to, [...ring, to]));
    bound.set(to, model);
    // A ring is found at the file that closes it, but is said where this file enters it.
    const inner = model.problems.find(p => p.code === 'import-ring' || p.code === 'too-many-files');
    if (inner) return { code: inner.code, uri: to, data: { ring: String(inner.data['ring'] ?? ''), limit: String(MAX_FILES) } };
    return foundIn(model, to);
  };
  const model = bind(uri, tree, find(uri, [uri]));
  let lines = 0;
  for (const [c, before] of caches) lines += c.parsed - before;
  return { tree, model, files: [...files], lines, bound: [model, ...bound.values()].reduce((n, m) => n + m.bound, 0) };
}
