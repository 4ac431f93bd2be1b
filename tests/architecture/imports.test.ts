/** Imports point one way. Read from the import statements of all sources by TypeScript's own scanner, types and dynamic imports among them. */
import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const ROOT = new URL('../../', import.meta.url);
const sources = ['client', 'grammar', 'server'].flatMap(folder => readdirSync(new URL(folder, ROOT), { recursive: true, encoding: 'utf8' })
  .filter(name => /\.[cm]?tsx?$/.test(name)).map(name => `${folder}/${name.replaceAll('\\', '/')}`));
const text = new Map(sources.map(file => [file, readFileSync(new URL(file, ROOT), 'utf8')]));

interface Import { readonly from: string; readonly to: string }
const imports: readonly Import[] = sources.flatMap(from => ts.preProcessFile(text.get(from)!, true, true).importedFiles
  .map(({ fileName }) => ({ from, to: fileName.startsWith('.') ? posix.join(posix.dirname(from), fileName) : fileName })));

/** What files below a path may import: paths of the project, and packages by the start of their names. The longest path that fits a file counts. */
const MAY: Readonly<Record<string, readonly string[]>> = {
  'grammar/': ['grammar/', 'chevrotain'],
  'server/optics/': ['server/optics/'],
  'server/model/': ['server/model/', 'grammar/', 'fastest-levenshtein'],
  'server/results/': ['server/results/', 'server/model/', 'grammar/', 'pure-rand/'],
  // Rules are where numbers of the model meet the functions of optics. A laser's coherence is known in several ways, and the number of
  // modes is a choice that has to be listed before there is a cell: so this one file asks optics as well.
  'server/results/rules/': ['server/results/', 'server/optics/'],
  // The tree that finds what lies near a place is one of a package.
  'server/results/near.ts': ['flatbush'],
  // Linear algebra and the small quadratic programs of a step are made by packages.
  'server/results/solve/': ['server/results/', 'server/model/', 'grammar/', 'pure-rand/', 'ml-matrix', 'quadprog'],
  'server/results/coherence.ts': ['server/results/', 'server/model/', 'server/optics/'],
  'server/checks/': ['server/checks/', 'server/results/', 'server/model/', 'grammar/'],
  'server/analysis.ts': ['server/checks/', 'server/results/', 'server/model/', 'grammar/'],
  'server/review/': ['server/review/', 'server/analysis.ts', 'server/checks/', 'server/results/', 'server/model/', 'grammar/'],
  'server/features/': ['server/features/', 'server/review/', 'server/analysis.ts', 'server/checks/', 'server/results/', 'server/model/', 'grammar/'],
  // Mean and variance of what shots tell are those of a package.
  'server/features/learn/': ['server/features/', 'server/analysis.ts', 'server/results/', 'server/model/', 'server/review/', 'grammar/', 'simple-statistics'],
  // The drawing is a sibling of the features.
  'server/drawing/': ['server/drawing/', 'server/review/', 'server/analysis.ts', 'server/checks/', 'server/results/', 'server/model/', 'grammar/', 'd3-array', 'd3-contour', 'd3-interpolate'],
  // Lays out what the features say; the packages that make a file of it are given to it.
  'server/pdf/': ['server/pdf/', 'server/drawing/', 'server/features/'],
  'server/lsp/': ['server/lsp/', 'server/review/', 'server/drawing/', 'server/features/', 'server/analysis.ts', 'server/checks/', 'server/results/', 'server/model/', 'grammar/', 'vscode-languageserver'],
  'server/lsp/node.ts': ['server/lsp/', 'vscode-languageserver', 'node:'],
  // What is printed is made by packages, with fonts from a file.
  'server/lsp/press.ts': ['server/pdf/', 'server/drawing/', 'server/features/', 'pdfkit', 'svg-to-pdfkit', 'node:'],
  'server/cli/': ['server/cli/', 'server/review/', 'server/drawing/', 'server/features/', 'server/analysis.ts', 'server/checks/', 'server/results/', 'server/model/', 'grammar/', 'commander', 'node:'],
  // Pictures for printers and letters are made by packages.
  'server/cli/pictures.ts': ['server/cli/', 'server/drawing/', '@resvg/resvg-wasm', 'pdfkit', 'svg-to-pdfkit', 'node:'],
  // As are cards.
  'server/cli/card/': ['server/cli/', 'server/pdf/', 'server/drawing/', 'server/features/', 'server/analysis.ts', 'pdfkit', 'svg-to-pdfkit', 'node:'],
  // The types of a published format, and the version of the package.
  'server/cli/sarif.ts': ['server/cli/', 'server/features/', 'server/analysis.ts', 'server/checks/', 'server/model/', 'package.json', 'sarif', 'node:'],
  // One command starts the language server, one names papers, and the version stands in the package.
  'server/cli/program.ts': ['server/cli/', 'server/lsp/node.ts', 'server/features/card/paper.ts', 'package.json', 'commander', 'node:'],
  'client/': ['client/', 'vscode', 'vscode-languageclient', 'server/lsp/protocol.ts', 'server/lsp/stamp.ts'],
  // The page in the panel runs in a browser, and knows the panel by its messages only.
  'client/plan/view/': ['client/plan/view/', 'client/plan/messages.ts', 'server/lsp/protocol.ts', 'd3-selection', 'd3-zoom'],
  // This one sounds as that does, and counts with what the panel keeps.
  'client/shoot/view/': ['client/shoot/view/', 'client/shoot/messages.ts', 'client/shoot/clock.ts', 'client/shoot/run.ts', 'client/plan/view/sound.ts', 'client/plan/view/tones.ts', 'client/review/view/dom.ts'],
  // The site shows what the core says of a page: without a protocol between, as the command line does.
  'client/site/': ['client/site/', 'server/drawing/', 'server/features/', 'server/analysis.ts', 'server/checks/', 'server/lsp/protocol.ts', 'grammar/'],
  // Its pages draw as the panels do; only the worker has the core.
  'client/site/view/': ['client/site/view/', 'client/site/shown.ts', 'client/site/result.ts', 'client/plan/view/patch.ts', 'client/plan/view/svg.ts', 'client/review/view/dom.ts', 'server/lsp/protocol.ts', 'minisearch'],
  'client/site/view/worker.ts': ['client/site/looked.ts', 'client/site/shown.ts', 'grammar/'],
  // This one draws a picture as that does.
  'client/review/view/': ['client/review/view/', 'client/review/messages.ts', 'client/plan/view/patch.ts', 'client/plan/view/svg.ts', 'server/lsp/protocol.ts'],
};
const startsAs = (name: string, allowed: string): boolean => (/[/:]$/.test(allowed) ? name.startsWith(allowed) : name === allowed || name.startsWith(`${allowed}/`) || (allowed === 'vscode-languageserver' && name.startsWith(`${allowed}-`)));
const rulesOf = (file: string): readonly string[] | undefined => {
  const fits = Object.keys(MAY).filter(path => file === path || (path.endsWith('/') && file.startsWith(path)));
  return fits.length === 0 ? undefined : MAY[fits.reduce((a, b) => (b.length > a.length ? b : a))];
};

test('all sources are read', () => {
  expect(sources.length).toBeGreaterThan(100);
  expect(imports.length).toBeGreaterThan(300);
  for (const file of ['grammar/tokens.ts', 'server/analysis.ts', 'server/lsp/node.ts', 'client/extension.ts']) expect(sources).toContain(file);
  expect(imports).toContainEqual({ from: 'server/cli/program.ts', to: 'server/lsp/node.ts' });
});

test('every source has its place', () => { expect(sources.filter(file => !rulesOf(file))).toEqual([]); });

describe('imports point one way', () => {
  test.each(Object.keys(MAY).map(path => [path]))('%s', path => {
    const own = imports.filter(i => rulesOf(i.from) === MAY[path]);
    expect(own.filter(i => !MAY[path]!.some(allowed => startsAs(i.to, allowed))).map(i => `${i.from} imports ${i.to}`)).toEqual([]);
  });
  test('imports within the project name files that exist', () => {
    expect(imports.filter(i => /^(?:client|grammar|server)\//.test(i.to) && !text.has(i.to)).map(i => `${i.from} imports ${i.to}`)).toEqual([]);
  });
  test('only server/lsp knows the protocol of editors', () => {
    expect([...new Set(imports.filter(i => i.to.startsWith('vscode-languageserver')).map(i => i.from))].filter(f => !f.startsWith('server/lsp/'))).toEqual([]);
  });
  test('only the command line and the server\'s start on Node.js know files', () => {
    const bare = new Set(['fs', 'path', 'url', 'os', 'process', 'child_process', 'v8', 'crypto', 'util', 'worker_threads']);
    const node = imports.filter(i => i.to.startsWith('node:') || bare.has(i.to.split('/')[0]!));
    expect([...new Set(node.map(i => i.from))].filter(f => !f.startsWith('server/cli/') && f !== 'server/lsp/node.ts' && f !== 'server/lsp/press.ts')).toEqual([]);
  });
  test('only rules and coherence join optics with the rest', () => {
    expect([...new Set(imports.filter(i => i.to.startsWith('server/optics/') && !/^server\/(?:optics|results\/rules)\//.test(i.from)).map(i => i.from))].sort())
      .toEqual(['server/results/coherence.ts']);
  });
});

/** Rings that names run in, each as its way round. */
function ringsOf(edges: readonly (readonly [string, string])[]): string[] {
  const to = new Map<string, string[]>();
  for (const [a, b] of edges) to.set(a, [...(to.get(a) ?? []), b]);
  const rings: string[] = [];
  const done = new Set<string>();
  const walk = (name: string, way: readonly string[]): void => {
    if (way.includes(name)) { rings.push([...way.slice(way.indexOf(name)), name].join(' → ')); return; }
    if (done.has(name)) return;
    for (const next of to.get(name) ?? []) walk(next, [...way, name]);
    done.add(name);
  };
  for (const name of to.keys()) walk(name, []);
  return rings;
}
test('rings are found', () => { expect(ringsOf([['a', 'b'], ['b', 'c'], ['c', 'b'], ['a', 'c']])).toEqual(['b → c → b']); });

test('no files import each other in a ring, not even for types', () => { expect(ringsOf(imports.map(i => [i.from, i.to]))).toEqual([]); });

test('no folders that stand beside each other import each other in a ring', () => {
  // What both have above them in common, and the folders below it that they are in: files that stand there by themselves tie folders together.
  const beside = imports.filter(i => text.has(i.to)).flatMap(({ from, to }): [string, string][] => {
    const [a, b] = [from.split('/'), to.split('/')];
    const n = a.findIndex((part, k) => part !== b[k]);
    return n >= a.length - 1 || n >= b.length - 1 ? [] : [[a.slice(0, n + 1).join('/'), b.slice(0, n + 1).join('/')]];
  });
  expect(beside).toContainEqual(['server/results/paths', 'server/results/legs']);
  expect(ringsOf(beside)).toEqual([]);
});
