import { createRequire } from 'node:module';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { escaped, note, strong } from '../../server/features/markdown.ts';
import { reportMarkdown } from '../../server/features/report/markdown.ts';
import { reportOf } from '../../server/features/report/report.ts';

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

it('marks stay text, and what is none stays as it is', () => {
  // CommonMark 0.31, 2.4: a backslash before punctuation takes its meaning away; 6.1: `code`
  expect(escaped('a_b *c* [d](e) <f> `g` | h &amp; i & j')).toBe('a\\_b \\*c\\* \\[d\\](e) \\<f\\> \\`g\\` \\| h \\&amp; i & j');
  expect(escaped('P1.key.mismatch = 3 mm (surely) + {2}, saltmarsh-lab.plate')).toBe('P1.key.mismatch = 3 mm (surely) + {2}, saltmarsh-lab.plate');
  expect(escaped('1) one, www.x, lab.it')).toBe('1\\) one, www\\.x, lab\\.it');
});

it('a report makes no links, pictures or marks of what its file says', () => {
  const text = (words: string): string => `/// ${words}\nsetup "${words}" {\n  /// ${words}\n  mirror M1\n  accept unused-thing "${words}"\n  variant "${words}" {\n    M1.loss: 5%\n  }\n}\n`;
  const bare = kinds(reportOfText(text('x')));
  for (const words of ['http://x.org', 'www.x.org', 'a@b.org', '<img src=x>', '![a](b)', '~~a~~ *b*', '$a$', '| a | b', '1. a', '+ a', '=== a', '# a']) expect(kinds(reportOfText(text(words))), words).toEqual(bare);
});
function reportOfText(text: string): string {
  const snapshot = analyse('file:///saltmarsh/x.plate', text);
  return reportMarkdown(snapshot.results.map(r => reportOf(snapshot, r)), 'x.plate', []);
}

it('a name is shown strong, whatever it holds', () => expect(kinds(strong('P_1*')).filter(k => k === 'strong_open')).toHaveLength(1));
