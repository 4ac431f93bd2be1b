/** What a change does, as a page of its own: opens in any browser, prints on paper, asks for nothing from the network. */
import { escaped, htmlPage } from '../html.ts';
import type { ChangeLine, FindingLine, FindingPage, SetupPage } from './page.ts';
import { countWords, headlineWords, NO_CHANGE, titleOf, type Named } from './text.ts';
import { countOf } from './words.ts';

/** One ink and one colour for what is to be looked at, which is told by words too; letters as in a book, figures under each other. */
const STYLE = `
:root { color-scheme: light dark; --ink: #111; --quiet: #5a5a5a; --line: #c4c1b8; --paper: #fff; --amiss: #b00020; --well: #00566e; }
@media (prefers-color-scheme: dark) { :root { --ink: #f2f2f2; --quiet: #a8a8a8; --line: #4a4e52; --paper: #16181a; --amiss: #ff8a80; --well: #66cdea; } }
body { font: 16px/1.5 Georgia, 'DejaVu Serif', serif; color: var(--ink); background: var(--paper); max-width: 60em; margin: 2em auto; padding: 0 1em; }
h1 { font-size: 1.3em; } h2 { font-size: 1.15em; margin: 2.5em 0 0; border-bottom: 1px solid var(--line); } h3 { font-size: 1em; margin: 1.5em 0 .3em; }
.file, .count, .quiet { color: var(--quiet); } .headline { font-size: 1.1em; }
code { font: .9em 'DejaVu Sans Mono', Menlo, Consolas, monospace; overflow-wrap: anywhere; } del { text-decoration-color: var(--quiet); color: var(--quiet); } ins { text-decoration: none; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; } th, td { text-align: left; vertical-align: top; padding: .15em 1.2em .15em 0; border-bottom: 1px solid var(--line); } th { font-weight: normal; color: var(--quiet); }
ul { padding-left: 1.2em; } .cured b { color: var(--well); } .new b { color: var(--amiss); }
figure { margin: 1em 0; } figure svg { width: 100%; height: auto; max-height: 34em; }
@media print { body { margin: 0; max-width: none; } h2 { break-after: avoid; } figure, tr, li { break-inside: avoid; } }
`;

/** `pictures`: for each page and setup its overlaid plan as SVG, where there is one. */
export function reviewHtml(pages: readonly Named[], title: string, pictures: (page: number, setup: number) => string | undefined): string {
  const parts = pages.flatMap(({ file, page }, p) => [
    ...page.setups.flatMap((s, i) => (s.unchanged ? [] : setup(s, file, pictures(p, i)))),
    ...page.inventories.flatMap(i => [`<h2>inventory ${escaped(i.name)}</h2>`, `<p class="file">${escaped(file)}</p>`, list(i.changes.map(change))]),
    ...(countOf(page.rest) > 0 ? [`<h2>Outside the setups</h2>`, `<p class="file">${escaped(file)}</p>`, list(page.rest.changes.map(change)), ...findings(page.rest.findings)] : []),
  ]);
  return htmlPage(title, STYLE, [`<h1>${escaped(title)}</h1>`, ...(parts.length === 0 ? [`<p>${NO_CHANGE}</p>`] : parts)]);
}

function setup(s: SetupPage, file: string, picture: string | undefined): string[] {
  return [
    `<h2>${escaped(titleOf(s))}</h2>`, `<p class="file">${escaped(file)}</p>`, `<p class="headline">${escaped(headlineWords(s))}</p>`,
    ...(picture === undefined ? [] : [`<figure>${picture.replace(/^<\?xml[^>]*>\s*/, '')}</figure>`]),
    ...section('Changed on the page', [list([...s.changes.map(change), ...s.along.map(escaped)])]),
    ...section('What comes of it', [
      s.results.length === 0 ? '' : `<table><thead><tr><th></th><th>before</th><th>after</th><th></th></tr></thead><tbody>\n${s.results.map(r => `<tr>${[r.label, r.before, r.after].map(t => `<td>${escaped(t)}</td>`).join('')}<td class="quiet">${escaped([r.by ?? '', r.sure ? '' : 'not for sure'].filter(Boolean).join('; '))}</td></tr>`).join('\n')}\n</tbody></table>`,
      list(s.goals.map(g => `${escaped(g.text)}: ${escaped(g.before)} → <b>${escaped(g.after)}</b>`)),
    ]), `<p class="count">${escaped(countWords(s))}</p>`, ...findings(s.findings),
  ];
}

const section = (title: string, parts: readonly string[]): string[] => (parts.every(p => p === '') ? [] : [`<h3>${title}</h3>`, ...parts.filter(p => p !== '')]);
const list = (rows: readonly string[]): string => (rows.length === 0 ? '' : `<ul>\n${rows.map(r => (r.startsWith('<li') ? r : `<li>${r}</li>`)).join('\n')}\n</ul>`);

function change(c: ChangeLine): string {
  const before = c.before === undefined ? '' : `<del><code>${escaped(c.before)}</code></del>`;
  const after = c.after === undefined ? '' : `<ins><code>${escaped(c.after)}</code></ins>`;
  const values = [before, after].filter(Boolean).join(' → ');
  return `${escaped(c.words)}${c.by === undefined ? '' : `, ${escaped(c.by)}`}${values === '' ? '' : `: ${values}`}`;
}

function findings(f: FindingPage): string[] {
  const rows = (word: string, of: readonly FindingLine[]): string[] => of.map(x => `<li class="${word}"><b>${word}</b>: ${x.severity}, line ${x.at.line + 1}: ${escaped(x.message)} <code>${escaped(x.code)}</code></li>`);
  const lines = [...rows('cured', f.cured), ...rows('new', f.added), ...rows('accepted', f.accepted)];
  return section('Findings', [list([...lines, ...(lines.length > 0 && f.still.length > 0 ? [`${f.still.length} still there`] : [])])]);
}
