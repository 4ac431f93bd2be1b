import { createRequire } from 'node:module';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { escaped, note, strong } from '../../server/features/markdown.ts';

// The Markdown parser that @vscode/vsce brings; it follows CommonMark, and finds bare addresses as editors do.
const require = createRequire(createRequire(import.meta.url).resolve('@vscode/vsce/package.json'));
interface Token { readonly type: string; readonly content: string; readonly children: readonly Token[] | null }
const MarkdownIt = require('markdown-it') as new (options: object) => { parse(text: string, env: object): Token[] };
const parser = new MarkdownIt({ html: true, linkify: true });
/** The kinds of all pieces of a text, those inside of lines among them. */
const kinds = (markdown: string): string[] => parser.parse(markdown, {}).flatMap(t => [t.type, ...(t.children ?? []).map(c => c.type)]);

const hostile = fc.array(fc.constantFrom('*', '_', '`', '[', ']', '(', ')', '<', '>', '!', '#', '-', '+', '1.', '=', '~', '|', '\\', '&amp;', '&#35;', '\n', ' ', 'a', 'M1', 'http://x.org', 'www.x.org', 'a@b.org', 'javascript:', '<img src=x>', '](', '```', '    '), { maxLength: 12 }).map(p => p.join(''));

it('text of a file becomes no markup', () => {
  fc.assert(fc.property(hostile, text => {
    for (const kind of kinds(escaped(text))) expect(['paragraph_open', 'paragraph_close', 'inline', 'text', 'text_special']).toContain(kind);
  }), { numRuns: 2000 });
});

it('text of a file is shown as it is written', () => {
  fc.assert(fc.property(hostile, text => {
    const shown = parser.parse(escaped(text), {}).flatMap(t => t.children ?? []).map(c => c.content).join('');
    expect(shown.replace(/\s+/g, ' ').trim()).toBe(text.replace(/\s+/g, ' ').trim());
  }), { numRuns: 2000 });
});

it('a note is slanted, paragraph by paragraph, whatever it holds', () => {
  fc.assert(fc.property(hostile, hostile, (first, second) => {
    const found = kinds(`before\n\n${note(`a ${first}\n\n${second}`)}`);
    for (const kind of found) expect(['em_open', 'em_close', 'paragraph_open', 'paragraph_close', 'inline', 'text', 'text_special']).toContain(kind);
    expect(found.filter(k => k === 'em_open')).toHaveLength(found.filter(k => k === 'paragraph_open').length - 1);
  }), { numRuns: 1000 });
});

it('a name is shown strong, whatever it holds', () => expect(kinds(strong('P_1*')).filter(k => k === 'strong_open')).toHaveLength(1));
