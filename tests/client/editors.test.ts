/** What other editors are set up with: their lists of words are the program's, and the page about them names what is there. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { RESERVED } from '../../grammar/tokens.ts';
import { FILE_STATEMENTS, STATEMENTS } from '../../server/model/bind/bind.ts';
import { KINDS } from '../../server/model/things/index.ts';
import { FUNCTIONS } from '../../server/results/expression.ts';
import { coloursOf } from '../grammar/coloured.ts';

const at = (file: string): URL => new URL(`../../client/editors/${file}`, import.meta.url);
const read = (file: string): string => readFileSync(at(file), 'utf8');

/** Words by what they are coloured as. */
const WORDS = {
  statements: [...FILE_STATEMENTS, ...STATEMENTS],
  // What stands between these and a colon is no fact, but what is read or wanted.
  phrased: ['aim', 'expect', 'accept', 'measured', 'moved'],
  clauses: [...RESERVED],
  // The longer ones first: `plate` begins none of them, but a kind may begin another.
  kinds: KINDS.map(k => k.word).sort((a, b) => b.length - a.length || (a < b ? -1 : 1)),
  functions: [...FUNCTIONS.keys()],
};
const lists: Readonly<Record<string, { readonly sign: string; readonly row: (name: string, words: readonly string[]) => string }>> = {
  'syntax/plate.vim': { sign: '"', row: (name, words) => `let s:${name} = [${words.map(w => `'${w}'`).join(', ')}]` },
  'plate.el': { sign: ';;', row: (name, words) => `(defconst plate-${name} '(${words.map(w => `"${w}"`).join(' ')}))` },
};

test.each(Object.keys(lists))('the words in %s', file => {
  const { sign, row } = lists[file]!;
  const block = new RegExp(`(?<=^${sign} Words: begin.*\n)[^]*?(?=^${sign} Words: end\\.$)`, 'm');
  const text = read(file);
  expect(text).toMatch(block);
  const wanted = text.replace(block, () => `${Object.entries(WORDS).map(([name, words]) => row(name, words)).join('\n')}\n`);
  if (process.env['UPDATE']) writeFileSync(at(file), wanted);
  else expect(text).toBe(wanted);
});

test('every editor starts the same command', () => {
  const started = ['neovim.lua', 'vim.vim', 'plate.el', 'languages.toml', 'client.mjs'].map(file => [file, /platewright['"]?[^]{0,30}?lsp['"]?,? ['"]?--stdio/.test(read(file))]);
  expect(started.filter(([, starts]) => starts !== true)).toEqual([]);
});

test('the page about them names each file, and no other', () => {
  const files = readdirSync(at('.'), { recursive: true, withFileTypes: true }).filter(f => f.isFile() && f.name !== 'README.md').map(f => `${f.parentPath.replace(/\/$/, '').endsWith('syntax') ? 'syntax/' : ''}${f.name}`);
  const page = read('README.md');
  expect(files.filter(file => !page.includes(file))).toEqual([]);
  const copied = [...page.matchAll(/^cp (\S+)/gm)].map(m => m[1]!);
  expect(copied.length).toBeGreaterThan(3);
  expect(copied.filter(file => !existsSync(at(file)))).toEqual([]);
});

/** What the table of colours, by which other editors are tried, calls what VS Code colours. */
const SCOPES: Readonly<Record<string, string>> = {
  note: 'comment.line.documentation', comment: 'comment.line.double-slash', text: 'string.quoted', fact: 'variable.other.property', kind: 'entity.name.type', statement: 'keyword.(?:declaration|control|other.(?:goal|reading))',
  function: 'support.function', clause: 'keyword.other.clause', unit: 'keyword.other.unit', number: 'constant.numeric', asked: 'constant.language.unknown', name: 'variable.other.(?:plate|definition)',
};
test('other editors are held to the colours of VS Code', () => {
  const lines = readFileSync('tests/editor/colours/page.plate', 'utf8');
  const coloured = coloursOf(lines);
  const rows = readFileSync('tests/editor/colours/words.txt', 'utf8').trimEnd().split('\n');
  const apart = rows.filter(row => {
    const [line, word, as] = row.split(' ') as [string, string, string];
    const at = new RegExp(`(?<![\\p{L}\\p{N}.]|[\\p{L}\\p{N}]-)${word.replace(/[.?]/g, '\\$&')}|(?<=\\d ?)${word.replace(/[.?]/g, '\\$&')}`, 'u').exec(lines.split('\n')[Number(line) - 1]!)!.index;
    return !new RegExp(`^${SCOPES[as]!}`).test(coloured[Number(line) - 1]!.find(c => c.start <= at && c.end > at)!.scopes.find(s => !s.startsWith('punctuation'))!);
  });
  expect(apart).toEqual([]);
  expect(new Set(rows.map(row => row.split(' ')[2]))).toEqual(new Set(Object.keys(SCOPES)));
  // Each word that opens a statement is among them.
  expect(WORDS.statements.filter(word => !rows.some(row => row.endsWith(` ${word} statement`)))).toEqual([]);
});
