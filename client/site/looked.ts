/** What the site shows of a page: the same where it is built and where somebody types. Pure. */
import type { LineCache } from '../../grammar/parse.ts';
import type { LineTree, TokenType } from '../../grammar/tree.ts';
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { pictureOf, type Picture, type Wanted } from '../../server/drawing/picture.ts';
import { figuresOf } from '../../server/features/figures.ts';
import { elsewhere, reportOf } from '../../server/features/report/report.ts';
import { reportText } from '../../server/features/report/text.ts';
import { tokensOf } from '../../server/features/tokens.ts';
import type { Coloured, Looked, Shown } from './shown.ts';

/** What a word or a sign is coloured as that means nothing by itself. */
const SIGNS: Partial<Readonly<Record<TokenType, string>>> = {
  number: 'number', ratio: 'number', date: 'number', unit: 'unit', string: 'string', comment: 'comment', doc: 'doc', clause: 'keyword', unknown: 'sought', arrow: 'sign', tolerance: 'sign', compare: 'sign', bad: 'unknownWord',
};

/** Files that lie beside a page, by their names. */
export type Files = Readonly<Record<string, string>>;

const FOLDER = 'file:///pages/';
export const uriOf = (name: string): string => new URL(name, FOLDER).href;

/** Gives a page what lies beside it; nothing outside of its folder is ever found. */
export function libraryOf(files: Files): Library {
  const texts = new Map(Object.entries(files).map(([name, text]) => [uriOf(name), text]));
  return { text: uri => texts.get(uri), resolve };
}

function resolve(path: string, from: string): string | null {
  if (!URL.canParse(path, from)) return null;
  const { href } = new URL(path, from);
  // An address leaves out how many folders up it went beyond the topmost one.
  return href.startsWith(FOLDER) && !path.includes('..') ? href : null;
}

/** @param wanted which picture, and whether the page of results as well: it takes as long as all else @param cache that of an earlier text of the same page, which this one follows */
export function look(name: string, text: string, files: Files, { report = false, ...wanted }: Wanted & { readonly report?: boolean } = {}, cache?: LineCache): Looked {
  const uri = uriOf(name);
  const snapshot = analyse(uri, text, libraryOf(files), cache);
  const { tree, results, findings } = snapshot;
  const torn = [...tree.lines.flatMap((l, at) => (l.issue ? [at] : [])), ...tree.issues.map(i => i.at)].sort((a, b) => a - b)[0];
  const picture = drawn(snapshot, wanted);
  return {
    texts: tree.lines.map(l => l.text), colours: coloursOf(snapshot), ...(torn === undefined ? {} : { torn }),
    findings: findings.filter(f => f.accepted === undefined).map(({ severity, code, message, at }) => ({ severity, code, message, line: at.line, start: at.start, end: at.end, ...(at.uri === uri ? {} : { file: at.uri.slice(FOLDER.length) }) })),
    ...(picture ? { picture: shownOf(picture), figures: figuresOf(picture.results) } : { figures: [] }),
    ...(report && results.length > 0 ? { report: reportText(results.map(r => reportOf(snapshot, r)), name, elsewhere(snapshot)) } : {}),
  };
}

/** The picture that is asked for, else the table from above, else the first that can be drawn. */
function drawn(snapshot: Snapshot, wanted: Wanted): Picture | undefined {
  const first = pictureOf(snapshot, wanted);
  if (!first || first.sheet) return first;
  const other = first.views.find(v => v.why === undefined);
  return other ? pictureOf(snapshot, { ...wanted, view: other.name }) : first;
}

function shownOf({ setup, variant, choices, view, views, plate, plates, sheet }: Picture): Shown {
  return { setup, ...(variant === undefined ? {} : { variant }), choices, view, views, ...(plate === undefined ? {} : { plate }), plates, ...(sheet ? { sheet } : {}) };
}

/** For each line, what its words are: what they mean counts before what they look like. */
function coloursOf(snapshot: Snapshot): Coloured[][] {
  const { lines } = snapshot.tree;
  const all: Coloured[][] = lines.map(() => []);
  for (const { line, start, length, type } of tokensOf(snapshot)) all[line]!.push({ start, end: start + length, as: type });
  return all.map((meant, at) => {
    const free = looksOf(lines[at]!).filter(t => meant.every(m => m.end <= t.start || m.start >= t.end));
    return [...meant, ...free].sort((a, b) => a.start - b.start);
  });
}

function looksOf({ kind, head, tokens }: LineTree): Coloured[] {
  const begins = kind === 'statement' ? head?.start : undefined;
  return tokens.flatMap(({ type, start, end }) => {
    const as = start === begins ? 'keyword' : SIGNS[type];
    return as === undefined ? [] : [{ start, end, as }];
  });
}
