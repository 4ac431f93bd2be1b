/** What the site shows of a page, before there is a browser. */
import { describe, expect, test } from 'vitest';
import { codeOf, resultOf } from '../../client/site/result.ts';
import { isWhole, stepsOf } from '../../client/site/blocks.ts';
import { look } from '../../client/site/looked.ts';
import { markup } from '../../client/site/markup.ts';
import { EXAMPLES } from '../examples/library.ts';

const WHELK = EXAMPLES.find(e => e.name.endsWith('whelk-too-long.plate'))!.text;
/** The words of a line that are coloured as something. */
const coloured = (text: string, line: number, as: string): string[] => {
  const { texts, colours } = look('a.plate', text, {});
  return colours[line]!.filter(c => c.as === as).map(c => texts[line]!.slice(c.start, c.end));
};

test('words are coloured by what they mean, the rest by what they are', () => {
  const text = 'setup "Whelk" { // tonight\n  laser red {\n    wavelength: 632.8 nm\n  }\n}\n';
  expect(coloured(text, 0, 'keyword')).toEqual(['setup']);
  expect(coloured(text, 0, 'string')).toEqual(['"Whelk"']);
  expect(coloured(text, 0, 'comment')).toEqual(['// tonight']);
  expect(coloured(text, 1, 'type')).toEqual(['laser']);
  expect(coloured(text, 1, 'variable')).toEqual(['red']);
  expect(coloured(text, 2, 'property')).toEqual(['wavelength']);
  expect(coloured(text, 2, 'number')).toEqual(['632.8']);
  expect(coloured(text, 2, 'unit')).toEqual(['nm']);
});

test.each(EXAMPLES.map(e => [e.name, e.text]))('the text of %s is what stands in its lines in colours', (_, text) => {
  const lines = codeOf(look('a.plate', text, {}));
  const words = (marks: typeof lines): string => marks.map(m => m.text ?? words([...m.children])).join('');
  expect(words(lines)).toBe(text);
});

describe('what lies beside a page', () => {
  const page = 'use "lab.plate"\nsetup "Whelk" {\n  laser red = lab.red\n}\n';
  const codes = (files: Readonly<Record<string, string>>, text = page): string[] => look('a.plate', text, files).findings.map(f => f.code);
  test('is found', () => { expect(codes({ 'lab.plate': 'inventory lab {\n  laser red\n}\n' })).not.toContain('import-unreadable'); });
  test('is missed', () => { expect(codes({})).toContain('import-unreadable'); });
  test.each(['../lab.plate', '/lab.plate', 'https://nodejs.org/lab.plate'])('is nothing of %s', path => {
    expect(codes({ 'lab.plate': 'inventory lab {\n}\n' }, page.replace('lab.plate', path))).toContain('import-outside');
  });
});

test('a setup by string is drawn as arms, and a placed one from above', () => {
  expect(look('a.plate', WHELK, {}).picture?.view).toBe('arms');
  expect(look('a.plate', 'setup "A" {\n  mirror M1 at (100, 100) mm\n}\n', {}).picture?.view).toBe('plan');
  expect(look('a.plate', 'setup "A" {\n}\n', {}).picture?.sheet).toBeUndefined();
  expect(look('a.plate', '', {}).picture).toBeUndefined();
});

test('the first line that cannot be read is told', () => {
  expect(look('a.plate', WHELK, {}).torn).toBeUndefined();
  expect(look('a.plate', 'setup "A" {\n  mirror M1 at (\n  mirror (\n}\n', {}).torn).toBe(1);
  expect(look('a.plate', 'setup "A" {\n', {}).torn).toBe(0);
});

test('names stay text', () => {
  const looked = look('a.plate', WHELK.replaceAll('object', 'obj<b>').replace('Whelk shell', '<img src=x onerror=alert(1)>'), {});
  const html = markup([...codeOf(looked), ...resultOf(looked, '../', false)]);
  expect(html).not.toMatch(/<img|<b>/);
  expect(html).toContain('&#60;img src=x onerror=alert(1)&#62;');
});

test('a finding of the page leads to its line, one of another file names that', () => {
  const finding = { severity: 'error', code: 'unknown-word', message: 'What is it?', line: 2, start: 4, end: 7 } as const;
  const shown = (f: typeof finding & { file?: string }): string => markup(resultOf({ figures: [], findings: [f] }, '../', true));
  expect(shown(finding)).toContain('<button type="button" data-line="2" data-start="4" data-end="7">line 3</button>');
  expect(markup(resultOf({ figures: [], findings: [finding] }, '../', false))).toContain('<span class="where" data-line="2" data-start="4" data-end="7">line 3</span>');
  expect(shown({ ...finding, file: 'lab.plate' })).toContain('<span class="where">lab.plate, line 3</span>');
});

describe('blocks of Markdown', () => {
  const text = '```plate a.plate\nsetup "A" {\n}\n```\n\n```plate a.plate adds\n  laser red\n```\n\n```plate\n  laser red\n```\n';
  test('a piece stands before the last brace of its page', () => {
    expect(stepsOf(text).map(s => s.files['a.plate'])).toEqual(['setup "A" {\n}\n', 'setup "A" {\n\n  laser red\n}\n', 'setup "A" {\n\n  laser red\n}\n']);
  });
  test('only a whole page is run', () => { expect(stepsOf(text).map(s => isWhole(s.block.text))).toEqual([true, false, false]); });
});
