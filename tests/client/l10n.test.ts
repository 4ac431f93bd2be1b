/** Words of the extension can be had in other languages: each is asked for by what it is, and German has them all. What the server says stays English, as the language of pages is. */
import { readdirSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { RAW, read, wordsIn } from './manifest.ts';

/** The pages in the panels run in a browser of their own. What is fixed in these, and what is counted there, is English as the figures beside it, and so are notes that come onto a page. The site is none of the extension. */
const IN_PANELS = /^site\/|\/view\/|^panel-page\.ts$|^(?:plan|review|shoot)\/html\.ts$|^shoot\/(?:clock|run)\.ts$/;
const files = readdirSync(new URL('../../client', import.meta.url), { recursive: true, encoding: 'utf8' }).map(f => f.replaceAll('\\', '/')).filter(f => f.endsWith('.ts') && !IN_PANELS.test(f));

/** What is nothing to be read: names of commands, files, sections, what a log says, and what is written in the language of pages. */
const NOT_READ: Readonly<Record<string, readonly string[]>> = {
  'what a log says': ['A card: ', 'Pages to begin with', 'A task', 'An outcome', 'A reading', 'A shot', 'What there is to read', 'Losses', 'The picture', 'What a page can be held against', 'The comparison', 'A page as it was shot', 'Whether a revision has a shot', 'What an earlier text uses', 'What there is to do for a shot'],
  'asked of the server, or said to it': ['the last commit'],
  'between panel and page': ['not written'],
  'what tasks are called in tasks.json': ['check all pages'],
  'lines of a page': ['setup "Whelk shell" {\n  table: 1200 x 900 mm\n  laser red at (60, 100) mm heading 0°\n}', 'laser red at (60, 100) mm heading 0°\nmirror M1 at (1100, 100) mm\nplate P1 at (700, 700) mm facing whelk', 'shot ', ' on 2026-02-11', 'dull at the back'],
};
const known = new Set(Object.values(NOT_READ).flat());

interface Words { readonly asked: readonly string[]; readonly loose: readonly string[] }
function wordsOf(file: string): Words {
  const source = ts.createSourceFile(file, read(`client/${file}`), ts.ScriptTarget.ES2022, true);
  const [asked, loose]: [string[], string[]] = [[], []];
  const say = (node: ts.Node, text: string): void => {
    // Two words, or one that begins a sentence.
    if (/\p{L}{2,}[ ,.:…’]+\p{L}|\p{L}{2,} | \p{L}{2,}/u.test(text) && !known.has(text) && !ts.isLiteralTypeNode(node.parent) && !/^[\w.-]+\.[\w.]+$/.test(text) && !/^[\w/.#-]+$/.test(text)) loose.push(`${file}: ${text}`);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isCallExpression(node) && node.expression.getText(source) === 'l10n.t') {
      const [words, ...values] = node.arguments;
      if (words && ts.isStringLiteral(words)) asked.push(words.text);
      else loose.push(`${file}: ${node.getText(source)}`);
      values.forEach(visit);
      return;
    }
    if (ts.isStringLiteralLike(node)) say(node, node.text);
    else if (ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) say(node, node.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { asked, loose };
}
const all = files.map(wordsOf);
const asked = new Set(all.flatMap(w => w.asked));
const placeholders = (words: string): string[] => [...words.matchAll(/\{\d+\}/g)].map(m => m[0]).sort();
const links = (words: string): string[] => [...words.matchAll(/command:[^)]+|`[^`]+`/g)].map(m => m[0]).sort();

test('no words of the extension are out of reach of a translator', () => {
  expect(files.length).toBeGreaterThan(30);
  expect(all.flatMap(w => w.loose)).toEqual([]);
  expect(asked.size).toBeGreaterThan(120);
});

describe('German', () => {
  const bundle = JSON.parse(read('l10n/bundle.l10n.de.json')) as Record<string, string>;
  test('has all words of the client, and none left over', () => { expect(Object.keys(bundle).sort()).toEqual([...asked].sort()); });
  test.each(Object.entries(bundle))('%s', (english, german) => {
    expect(german.trim()).not.toBe('');
    expect(placeholders(german)).toEqual(placeholders(english));
    expect(german.endsWith('.')).toBe(english.endsWith('.'));
    expect(german).not.toMatch(/^\s|\s$|“[^“”]*”|"/);
  });
  const [english, german] = [wordsIn(), wordsIn('de')];
  test('has all words of the manifest, and none left over; each is asked for once', () => {
    expect(Object.keys(german)).toEqual(Object.keys(english));
    const keys = [...RAW.matchAll(/"%([^%"]+)%"/g)].map(m => m[1]!);
    expect(keys.sort()).toEqual(Object.keys(english).sort());
  });
  test.each(Object.keys(english))('%s leads to the same commands', key => { expect(links(german[key]!)).toEqual(links(english[key]!)); });
  test('calls commands as its manifest does', () => {
    const titles = Object.entries(german).filter(([key]) => key.startsWith('command.')).map(([, title]) => title);
    const called = [...Object.values(bundle), ...Object.values(german)].flatMap(w => [...w.matchAll(/(?:„|\*)Platewright: ([^“*]+)(?:“|\*)/g)].map(m => m[1]!));
    expect(called.length).toBeGreaterThan(10);
    expect(called.filter(c => !titles.includes(c))).toEqual([]);
  });
});
