/** What is said of a page, and its text in colours, as trees of plain marks: written into the site where it is built, and changed in place where somebody types. */
import type { PictureMark } from '../../server/lsp/protocol.ts';
import type { Coloured, Looked, Told } from './shown.ts';

const of = (tag: string, attributes: PictureMark['attributes'], children: readonly PictureMark[]): PictureMark => ({ tag, attributes, children });
const text = (tag: string, words: string, attributes: PictureMark['attributes'] = {}): PictureMark => ({ tag, attributes, children: [], text: words });

/** A line each; their text is that of the page. */
export function codeOf({ texts, colours, findings }: Pick<Looked, 'texts' | 'colours' | 'findings'>): PictureMark[] {
  const here = findings.filter(f => f.file === undefined);
  // What ends the last line begins no other one.
  return (texts.length > 1 && texts.at(-1) === '' ? texts.slice(0, -1) : texts).map((line, at) => of('span', { class: 'line' }, [...partsOf(line, colours[at] ?? [], here.filter(f => f.line === at)), text('span', '\n')]));
}

/** A line in pieces within which nothing changes. */
function partsOf(line: string, colours: readonly Coloured[], findings: readonly Told[]): PictureMark[] {
  const cuts = [...new Set([0, line.length, ...[...colours, ...findings].flatMap(c => [c.start, c.end])])].filter(c => c <= line.length).sort((a, b) => a - b);
  return cuts.slice(1).map((end, i) => {
    const start = cuts[i]!;
    const within = (c: { readonly start: number; readonly end: number }): boolean => c.start <= start && c.end >= end;
    const names = [colours.find(within)?.as, findings.find(within)?.severity].filter(n => n !== undefined);
    return text('span', line.slice(start, end), names.length > 0 ? { class: names.map(n => `t-${n}`).join(' ') } : {});
  });
}

/** The figures of the setup, and the findings. @param root the way to the first page of the site @param live a click goes to the line; else a script may make it do so */
export function resultOf({ figures, findings, picture }: Pick<Looked, 'figures' | 'findings' | 'picture'>, root: string, live: boolean): PictureMark[] {
  const rows = figures.map(f => of('div', {}, [text('dt', f.label), text('dd', f.text)]));
  const list = findings.map(f => of('li', { class: f.severity }, [
    text('strong', f.severity), text('span', ' '), whereOf(f, live), text('span', ` ${f.message} `), text('a', f.code, { class: 'code', href: `${root}findings/#${f.code}` }),
  ]));
  return [
    ...(rows.length > 0 ? [of('dl', { class: 'figures' }, rows)] : []),
    list.length > 0 ? of('ul', { class: 'findings' }, list) : text('p', picture ? 'Nothing found.' : 'Nothing found; there is no setup in it.', { class: 'quiet' }),
  ];
}

function whereOf({ file, line, start, end }: Told, live: boolean): PictureMark {
  const words = `${file === undefined ? '' : `${file}, `}line ${line + 1}`;
  const place = { 'data-line': String(line), 'data-start': String(start), 'data-end': String(end) };
  if (file !== undefined) return text('span', words, { class: 'where' });
  return live ? text('button', words, { type: 'button', ...place }) : text('span', words, { class: 'where', ...place });
}
