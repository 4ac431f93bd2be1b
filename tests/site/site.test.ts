/** The documentation site: it is built once, and looked at as it lies on the disk. What a browser makes of it, the run in editors tries. */
import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { parse, type DefaultTreeAdapterTypes } from 'parse5';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inside } from '../cli/inside.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const BUILD = join(ROOT, 'client/site/build.mjs');
const run = promisify(execFile);
/** A script of the build, which has no types. */
const { troublesOf } = await import(new URL('../../client/site/check.mjs', import.meta.url).href) as { troublesOf: (folder: string) => string[] };

type Element = DefaultTreeAdapterTypes.Element;
const folder = mkdtempSync(join(tmpdir(), 'platewright-site-'));
const pages = new Map<string, readonly Element[]>();

beforeAll(async () => {
  await run(process.execPath, [BUILD, folder], { cwd: ROOT });
  for (const file of listed(folder).filter(f => f.endsWith('.html'))) pages.set(file, elements(readFileSync(join(folder, file), 'utf8')));
});
afterAll(() => { rmSync(folder, { recursive: true }); });

const listed = (of: string): string[] => readdirSync(of, { recursive: true, encoding: 'utf8' }).map(f => f.replaceAll('\\', '/'));
function elements(html: string): Element[] {
  const found: Element[] = [];
  const walk = (node: DefaultTreeAdapterTypes.Node): void => {
    if ('tagName' in node) found.push(node);
    if ('childNodes' in node) node.childNodes.forEach(walk);
  };
  walk(parse(html));
  return found;
}
const attribute = (e: Element, name: string): string | undefined => e.attrs.find(a => a.name === name)?.value;
const has = (e: Element, name: string): boolean => attribute(e, 'class')?.split(' ').includes(name) ?? false;
const words = (node: DefaultTreeAdapterTypes.Node): string => ('value' in node ? node.value : 'childNodes' in node ? node.childNodes.map(words).join('') : '');
const inner = (e: Element): Element[] => e.childNodes.flatMap(c => ('tagName' in c ? [c, ...inner(c)] : []));
/** The texts that can be run in a page of the site. */
const running = (of: readonly Element[]): string[] => of.filter(e => has(e, 'page')).map(e => words(inner(e).find(c => c.tagName === 'code')!));

/** The project's own pages: all of Markdown but those of the tests. */
const own = [...readdirSync(ROOT).filter(f => f.endsWith('.md')), ...['client', 'grammar', 'server', 'examples'].flatMap(f => listed(join(ROOT, f)).filter(g => g.endsWith('.md')).map(g => `${f}/${g}`))];
const heading = (markdown: string): string => /^# (.+)$/m.exec(markdown)![1]!.replaceAll('`', '');
const pageOf = (file: string): readonly Element[] => {
  const title = heading(readFileSync(join(ROOT, file), 'utf8'));
  const found = [...pages.values()].filter(p => p.some(e => e.tagName === 'h1' && words(e) === title));
  expect(found.length, file).toBe(1);
  return found[0]!;
};

test('each page of the project is one of the site, with all its headings', () => {
  expect(own.length).toBeGreaterThan(10);
  for (const file of own) {
    const text = readFileSync(join(ROOT, file), 'utf8').replace(/^```[^]*?^```$/gm, '');
    const shown = pageOf(file).filter(e => /^h[1-6]$/.test(e.tagName)).map(words);
    const written = [...text.matchAll(/^#+ (.+)$/gm)].map(m => m[1]!.replace(/[`*\\]/g, ''));
    expect(shown, file).toEqual(expect.arrayContaining(written));
  }
});

test('each setup that stands whole in a page can be run there, and each example', () => {
  let count = 0;
  for (const file of own) {
    const blocks = [...readFileSync(join(ROOT, file), 'utf8').matchAll(/^```plate([^\n]*)\n([^]*?)^```$/gm)].filter(m => !m[1]!.endsWith(' adds') && /^setup\b/m.test(m[2]!)).map(m => m[2]!);
    count += blocks.length;
    expect(blocks.length === 0 ? [] : running(pageOf(file)), file).toEqual(expect.arrayContaining(blocks));
  }
  expect(count).toBeGreaterThan(200);
  for (const name of readdirSync(join(ROOT, 'examples'))) expect(running(pages.get(`examples/${name.replace('.plate', '')}/index.html`)!), name).toEqual([readFileSync(join(ROOT, 'examples', name), 'utf8')]);
});

test('without a script there are the picture that the command line draws, the figures and the findings', async () => {
  const placed = pages.get('examples/whelk-on-the-table/index.html')!;
  const picture = attribute(placed.find(e => e.tagName === 'img' && attribute(e, 'src')!.endsWith('.svg') && attribute(e, 'loading') === 'lazy')!, 'src')!;
  const { out } = await inside(['draw', 'examples/whelk-on-the-table.plate'], { cwd: ROOT });
  expect(readFileSync(join(folder, 'examples/whelk-on-the-table', picture), 'utf8')).toBe(out);
  // 1555 mm of object beam and 1471 mm of reference, as the page says.
  const long = pages.get('examples/whelk-too-long/index.html')!;
  expect(words(long.find(e => e.tagName === 'dd')!)).toMatch(/^84 ± /);
  const { out: checked } = await inside(['check', 'examples/whelk-too-long.plate'], { cwd: ROOT });
  expect(checked).toContain(words(long.find(e => e.tagName === 'li' && has(e, 'warning'))!).replace(/^warning line \d+ /, '').replace(/ [a-z-]+$/, ''));
});

test('every page has a policy that lets nothing in but the site itself, and loads nothing else', () => {
  const policy = "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'";
  for (const [file, all] of pages) {
    const head = all.filter(e => e.tagName === 'meta' || e.tagName === 'script' || e.tagName === 'link');
    const at = head.findIndex(e => attribute(e, 'http-equiv') === 'Content-Security-Policy');
    expect(attribute(head[at]!, 'content'), file).toBe(policy);
    expect(head.slice(0, at).filter(e => e.tagName !== 'meta'), file).toEqual([]);
    const loaded = all.flatMap(e => (e.tagName === 'a' ? [] : ['src', 'href', 'data-beside', 'srcset'].map(a => attribute(e, a)))).filter(a => a !== undefined);
    expect(loaded.length).toBeGreaterThan(3);
    expect(loaded.filter(a => /^(?:[a-z]+:|\/)/i.test(a)), file).toEqual([]);
  }
  for (const file of listed(folder).filter(f => /\.(?:js|css)$/.test(f))) expect(readFileSync(join(folder, file), 'utf8'), file).not.toMatch(/\beval\(|new Function\b|@import|url\(["']?(?:https?:)?\/\//);
});

test('the caution of the first page stands below each', () => {
  for (const [file, all] of pages) expect(words(all.find(e => e.tagName === 'footer')!), file).toMatch(/^It advises;.*local rules.*responsible/s);
});

test('whose work is in its scripts is told', () => {
  const notices = readFileSync(join(folder, 'NOTICES.txt'), 'utf8');
  for (const name of ['chevrotain', 'd3-contour', 'flatbush', 'minisearch']) expect(notices).toMatch(new RegExp(`^${name} [\\d.]+$`, 'm'));
  for (const name of ['commander', 'vscode-languageserver', '@11ty', 'parse5']) expect(notices).not.toContain(`\n${name}`);
});

test('what is searched leads to each heading', () => {
  const sections = JSON.parse(readFileSync(join(folder, 'search.json'), 'utf8')) as { at: string; title: string }[];
  const places = new Set([...pages].flatMap(([file, all]) => all.flatMap(e => ['', `#${attribute(e, 'id') ?? ''}`].map(id => file.replace(/index\.html$/, '') + id))));
  expect(sections.filter(s => !places.has(s.at))).toEqual([]);
  expect(sections.map(s => s.title)).toEqual(expect.arrayContaining(['arms-mismatched', 'half-wave plate', 'Ten lines', 'Neovim']));
});

describe('a fault fails the building', () => {
  const made = (files: Readonly<Record<string, string>>): string => {
    const at = mkdtempSync(join(folder, 'made-'));
    for (const [file, text] of Object.entries(files)) { mkdirSync(dirname(join(at, file)), { recursive: true }); writeFileSync(join(at, file), text); }
    return at;
  };
  const page = (body: string): string => `<!DOCTYPE html>\n<html lang="en"><head><title>A page</title></head><body>${body}</body></html>\n`;
  test.each([
    ['<p id="here"><a href="#here">a</a> <a href="b/#there">b</a> <a href="https://nodejs.org">c</a></p>', []],
    ['<a href="c/">a</a>', ['index.html: a leads to c/, where nothing is']],
    ['<a href="b/#nowhere">a</a>', ['index.html: a leads to b/#nowhere, but nothing is called “nowhere” there']],
    ['<a href="#nowhere">a</a>', ['index.html: a leads to #nowhere, but nothing is called “nowhere” there']],
    ['<img src="a.png" alt="">', ['index.html: img leads to a.png, where nothing is']],
    ['<img src="https://nodejs.org/a.png" alt="">', ['index.html: img loads https://nodejs.org/a.png from elsewhere']],
    ['<p id="a"></p><p id="a"></p>', ['index.html: two elements are called “a”']],
    ['<p style="color: red">a</p>', ['index.html: p has style, which the content policy refuses']],
    ['<script>1</script>', ['index.html: a script stands in the page, which the content policy refuses']],
    ['<p>a</b></p>', ['index.html: not well formed: 1 ends belong to nothing']],
    ['<div><p>a</div>', ['index.html: not well formed: line 2: p is not closed']],
    ['<table><tr><td>a</td></tr></table>', ['index.html: not well formed: tbody is not opened']],
    ['<p id="a" id="b"></p>', ['index.html: not well formed: line 2: duplicate-attribute']],
  ])('%s', (body, troubles) => {
    const found = troublesOf(made({ 'index.html': page(body), 'b/index.html': page('<p id="there"></p>') }));
    expect(found).toEqual(troubles);
  });
  test('a folder with something else in it is left as it is', async () => {
    const at = made({ 'whelk.plate': 'setup "Whelk" {\n}\n' });
    await expect(run(process.execPath, [BUILD, at], { cwd: ROOT })).rejects.toThrow('holds something else than the site');
    expect(readdirSync(at)).toEqual(['whelk.plate']);
  });
});
