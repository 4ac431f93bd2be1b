/** `platewright diff`: what a change does to the hologram. */
import { existsSync, statSync } from 'node:fs';
import { relative, sep } from 'node:path';
import { analyse, type Snapshot } from '../analysis.ts';
import { reviewHtml } from '../features/review/html.ts';
import { reviewMarkdown } from '../features/review/markdown.ts';
import { reviewPage } from '../features/review/page.ts';
import { reviewText } from '../features/review/text.ts';
import { isSame, isUnchanged, onlySetup, reviewOf, type Review } from '../review/review.ts';
import { inVariant } from './chosen.ts';
import { pairsSince, type Pair } from './git/pairs.ts';
import { Repository, type Commit } from './git/repository.ts';
import { asItWasShot } from './shot.ts';
import { driver } from './driver.ts';
import { diffJson, type Compared } from './diff-json.ts';
import { onScreen, troubled, type Done } from './done.ts';
import { Misuse, openAll, openFile, pathFrom, Trouble, type Opened, type Reach } from './files.ts';
import { writeMade } from './writing.ts';

export type DiffFormat = 'text' | 'json' | 'markdown' | 'html' | 'svg';
export interface DiffOptions extends Reach {
  readonly format: DiffFormat;
  readonly output?: string;
  /** the arguments are one or two revisions, then files and folders */
  readonly git?: boolean;
  readonly setup?: string;
  /** as the page stood when that plate was shot */
  readonly shot?: string;
  /** git starts it in the place of its own comparison */
  readonly asDriver?: boolean;
  /** one: it against the setup as written; two: the second against the first */
  readonly variant?: readonly string[];
}

export interface Asked {
  /** what each side is, in words */
  readonly sides: readonly [string, string];
  readonly pairs: readonly Pair[];
  readonly troubles: readonly Trouble[];
}

export async function diff(args: readonly string[], options: DiffOptions): Promise<Done> {
  const { variant = [], git = false, ...reach } = options;
  if (options.asDriver === true) return driver(args);
  if ([git, variant.length > 0, options.shot !== undefined].filter(Boolean).length > 1) throw new Misuse('Compare one at a time: revisions (--git), variants (--variant), or with a shot (--shot).');
  if (options.shot !== undefined) return sinceShot(args, options.shot, options);
  if (git) return revisions(args, options);
  if (variant.length > 0) return variants(args, variant, options);
  const [old, now, ...more] = args;
  if (old === undefined || now === undefined || more.length > 0) throw new Misuse(`Name two files or two folders, the older first: platewright diff OLD NEW.${old !== undefined && now === undefined ? ` What changed in ${old} since the last commit: platewright diff --git HEAD ${old}.` : ''}`);
  return told(isFolder(old) ? foldersOf(old, now, reach) : { sides: [old, now], pairs: [{ before: openFile(old, reach), after: openFile(now, reach) }], troubles: [] }, options);
}

const isFolder = (named: string): boolean => { try { return statSync(named).isDirectory(); } catch { return false; } };

/** Pages by their paths in both folders. */
function foldersOf(old: string, now: string, reach: Reach): Asked {
  if (!isFolder(now)) throw new Misuse(`${old} is a folder and ${now} is none; compare two files or two folders`);
  const troubles: Trouble[] = [];
  const [before, after] = [old, now].map(folder => {
    const all = openAll([folder], reach);
    troubles.push(...all.troubles);
    return new Map(all.opened.map(o => [relative(folder, o.name).split(sep).join('/'), o]));
  }) as [Map<string, Opened>, Map<string, Opened>];
  const names = [...new Set([...after.keys(), ...before.keys()])].sort();
  return { sides: [old, now], troubles, pairs: names.map(n => ({ ...(before.has(n) ? { before: before.get(n)! } : {}), ...(after.has(n) ? { after: after.get(n)! } : {}) })) };
}

function variants(args: readonly string[], names: readonly string[], options: DiffOptions): Promise<Done> {
  const [named, ...more] = args;
  if (named === undefined || more.length > 0) throw new Misuse('Name one file: platewright diff FILE --variant NAME, or with --variant twice for two of its variants.');
  if (names.length > 2) throw new Misuse('Two variants can be compared at a time.');
  const file = openFile(named, options);
  const snapshot = analyse(file.uri, file.text, file.texts);
  const of = (variant: string | undefined): Snapshot => inVariant(snapshot, file.name, options.setup, variant);
  const [first, second] = [names.length === 2 ? names[0] : undefined, names[names.length - 1]!];
  const after = of(second);
  // Of the setups that have it, and no others.
  const has = new Set(after.results.map(r => r.setup.name));
  const before = of(first);
  return written([first === undefined ? 'as written' : `variant “${first}”`, `variant “${second}”`], [{ file, review: reviewOf({ ...before, results: before.results.filter(r => has.has(r.setup.name)) }, after) }], [], options);
}

/** `REV FILE…` or `REV REV FILE…`: a second word that is a file is none of a revision. */
async function revisions(args: readonly string[], options: DiffOptions): Promise<Done> {
  const [old, second, ...rest] = args;
  if (old === undefined || second === undefined) throw new Misuse('Name a revision and a file or folder: platewright diff --git HEAD FILE, or two revisions: platewright diff --git HEAD~1 HEAD FILE.');
  return Repository.with(rest.at(-1) ?? second, async repository => {
    const before = await repository.commit(old);
    const now = rest.length > 0 && !existsSync(second) ? await repository.commit(second) : undefined;
    const { pairs, troubles } = await pairsSince(repository, before, now ? rest : [second, ...rest], options, now);
    return told({ sides: [revisionName(before), now ? revisionName(now) : 'the working folder'], pairs, troubles }, options);
  });
}

/** Tonight against an earlier plate: by the revision in which the shot was first written down, else by the dates on the page. */
async function sinceShot(args: readonly string[], name: string, options: DiffOptions): Promise<Done> {
  const [named, ...more] = args;
  if (named === undefined || more.length > 0) throw new Misuse('Name one file: platewright diff FILE --shot 7.');
  const { file, before, words } = await asItWasShot(named, name, options);
  const setup = options.setup ?? words.setup;
  return told({ sides: [words.before, 'now'], pairs: [{ before, after: file }], troubles: [] }, { ...options, setup });
}

/** As it was asked for, with the beginning of its id where that says more. */
const revisionName = ({ named, id }: Commit): string => (id.startsWith(named) ? named : `${named} (${id.slice(0, 7)})`);

interface Reviewed { readonly file: Opened; readonly before?: Opened; readonly after?: Opened; readonly review: Review }

/** Holds the pages against each other. */
export async function told({ sides, pairs, troubles }: Asked, options: DiffOptions): Promise<Done> {
  const snapshot = (o: Opened | undefined): Snapshot | undefined => o && analyse(o.uri, o.text, o.texts);
  const reviewed = pairs.map((p): Reviewed => ({ ...p, file: (p.after ?? p.before)!, review: only(reviewOf(snapshot(p.before), snapshot(p.after)), options.setup) }));
  if (options.setup !== undefined && pairs.length > 0 && reviewed.every(r => r.review.setups.length === 0)) throw new Misuse(`No page has a setup “${options.setup}”, neither before nor after.`);
  return written(sides, reviewed, troubles, options);
}

const only = (review: Review, setup: string | undefined): Review => (setup === undefined ? review : onlySetup(review, setup));

async function written(sides: Asked['sides'], all: readonly Reviewed[], troubles: readonly Trouble[], { format, output }: DiffOptions): Promise<Done> {
  const differ = all.filter(r => !isSame(r.review));
  const out = await text(format, sides, differ, troubles);
  const code = differ.length > 0 ? 1 : 0;
  if (output === undefined) return troubled({ out, code }, troubles);
  writeMade(output, out);
  return troubled({ out: `${output}: written\n`, code }, troubles);
}

async function text(format: DiffFormat, sides: Asked['sides'], files: readonly Reviewed[], troubles: readonly Trouble[]): Promise<string> {
  if (format === 'json') return diffJson(sides, files.map(compared), troubles);
  if (format === 'svg') return picture(files);
  const pages = files.map(f => ({ file: nameOf(f), page: reviewPage(f.review) }));
  if (format !== 'html') return onScreen(format === 'markdown' ? reviewMarkdown(pages) : reviewText(pages));
  const { overlaidSvg } = await import('./overlaid.ts');
  return reviewHtml(pages, `${sides[0]} → ${sides[1]}`, (page, setup) => { const svg = overlaidSvg(files[page]!.review.setups[setup]!, `plan-${page + 1}-${setup + 1}-`); return svg.startsWith('<') ? svg : undefined; });
}

async function picture(files: readonly Reviewed[]): Promise<string> {
  const setups = files.flatMap(f => f.review.setups.filter(s => !isUnchanged(s)));
  const [s] = setups;
  if (!s) throw new Misuse('No setup differs, so that there is nothing to draw; platewright draw draws a setup as it is.');
  if (setups.length > 1) throw new Misuse(`Several setups differ; choose one with --setup: ${setups.map(x => `“${x.name}”`).join(', ')}.`);
  const svg = (await import('./overlaid.ts')).overlaidSvg(s);
  if (!svg.startsWith('<')) throw new Trouble(svg);
  return svg;
}

/** `old.plate → new.plate` where they are two. */
const nameOf = ({ file, before, after }: Reviewed): string => (before && after && before.name !== after.name ? `${before.name} → ${after.name}` : file.name);
const naming = (uri: string): string => pathFrom(process.cwd(), uri);
const compared = ({ file, before, after, review }: Reviewed): Compared => ({ before: before?.name ?? (after ? undefined : file.name), after: after?.name ?? (before ? undefined : file.name), review, named: { before: naming, after: naming } });
