/** Bench cards as a page of HTML: black on white, made for paper, without a script and without a network. */
import { escaped, htmlPage } from '../html.ts';
import { FRONT, type Blank, type Block, type Card, type Entry, type Row, type Section, type Step, type Table } from '../blocks/blocks.ts';
import { MARGIN, SIZES, type Paper } from './paper.ts';
import { whole } from './whole.ts';

const LETTERS = "Georgia, 'DejaVu Serif Condensed', 'DejaVu Serif', serif";
/** The hues of the picture stand beside dashes; all else is black, and sizes are those of paper that hangs an arm's length away. */
const style = (paper: Paper): string => `
@page { size: ${paper === 'a4' ? 'A4' : 'letter'}; margin: ${MARGIN}mm; @bottom-right { content: counter(page) ' of ' counter(pages); font: 9pt ${LETTERS}; } }
:root { color-scheme: only light; }
* { box-sizing: border-box; }
html { background: #fff; }
body { font: 10pt/1.25 ${LETTERS}; color: #000; background: #fff; width: ${SIZES[paper][0] - 2 * MARGIN}mm; max-width: 100%; margin: 0 auto; font-variant-numeric: lining-nums tabular-nums; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
h1 { font-size: 20pt; line-height: 1.15; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: 13pt; line-height: 1.2; margin: 0 0 1.2mm; padding-top: 0.8mm; border-top: 0.7mm solid #000; break-after: avoid; }
p { margin: 0 0 1.4mm; }
p, td, th, li, dd { overflow-wrap: anywhere; }
.kinds { float: right; margin-left: 5mm; text-align: right; font-size: 10pt; }
.doc { margin-top: 0.6mm; }
.light { border: 0.3mm solid #000; padding: 0.8mm 2mm; font-size: 9pt; margin-top: 1.4mm; }
section { margin-top: 3mm; }
.key { font-weight: bold; font-size: 11pt; } .blanks + .key { margin-top: 3mm; }
.caution { border-left: 1.6mm solid #000; padding-left: 2mm; font-size: 9pt; }
.plan { display: flex; gap: 4mm; margin: 0 0 1.4mm; } .plan.wide { display: block; }
figure { margin: 0; flex: 2.3; min-width: 0; } .plan ul { flex: 1; } .plan.wide ul { margin-top: 2mm; }
figure svg { display: block; width: 100%; height: auto; max-height: 84mm; } .hung svg { max-height: 122mm; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; margin: 0 0 1.6mm; }
th { font-weight: normal; font-size: 8.6pt; text-align: left; vertical-align: bottom; padding: 0 2mm 0.2mm 0; }
th.group { font-size: 9pt; font-style: italic; padding-top: 1.2mm; border-bottom: 0.3mm solid #000; break-after: avoid; }
td { vertical-align: top; padding: 0.5mm 1.6mm 0.5mm 0; border-bottom: 0.15mm solid #777; }
td.box { padding-right: 0; }
tr.sum + tr.sum { break-before: avoid; } tr.sum td { font-weight: bold; font-size: 9.4pt; } tr.sum small, tr.sum .write { font-weight: normal; }
small { display: block; font-size: 8.6pt; line-height: 1.22; } td > small:first-child { padding-top: 0.3mm; }
.tick { display: inline-block; width: 3.3mm; height: 3.3mm; border: 0.35mm solid #000; vertical-align: -0.5mm; }
.write { display: flex; align-items: flex-end; gap: 1mm; white-space: nowrap; font-size: 8.5pt; line-height: 1; }
.write::before { content: ''; flex: 1; min-width: 4mm; border-bottom: 0.25mm solid #000; height: 4.4mm; }
ul { list-style: none; margin: 0 0 1.6mm; padding: 0; }
li { display: flex; gap: 2mm; padding: 0.4mm 0; } li > .tick { flex: none; margin-top: 0.7mm; } li > div { flex: 1; min-width: 0; display: flex; flex-wrap: wrap; column-gap: 2mm; } li small { flex-basis: 100%; }
li .write { flex: 1 1 14mm; max-width: 46mm; }
.blanks { display: flex; gap: 4mm; margin: 0.6mm 0 1.2mm; } .blanks > div { display: flex; align-items: flex-end; gap: 1.4mm; white-space: nowrap; min-width: 0; } .blanks .write { flex: 1 0 9mm; min-width: 0; } .blanks div > span:first-child { overflow: hidden; text-overflow: ellipsis; min-width: 0; } .blanks .write::before { height: 4.6mm; }
.large { display: grid; grid-template-columns: fit-content(24mm) 1fr; column-gap: 4mm; row-gap: 1mm; margin: 0; font-size: 14pt; line-height: 1.15; } .large dt { overflow-wrap: anywhere; font-size: 10pt; padding-top: 1.1mm; } .large dd { margin: 0; font-weight: bold; min-width: 0; } .large .write { min-height: 7mm; font-weight: normal; font-size: 10pt; }
.strip { display: flex; flex-wrap: wrap; gap: 1.3mm; margin: 1mm 0 2mm; } .strip span { border: 0.35mm solid #000; min-width: 11mm; min-height: 10mm; padding: 0.4mm 0.8mm; font-weight: bold; font-size: 9.4pt; white-space: nowrap; }
.line { border-bottom: 0.25mm solid #000; height: 7.4mm; }
.columns { columns: 2; column-gap: 7mm; }
.columns section:not(.long) { break-inside: avoid; } .columns section { margin-top: 0; padding-top: 2.6mm; }
.file { margin: 2mm 0 0; font-size: 8.5pt; text-align: right; overflow-wrap: anywhere; }
@media print { article + article { break-before: page; } tr, li, figure, .plan, .caution, .blanks, .strip, .light { break-inside: avoid; } thead { display: table-row-group; } }
@media screen { body { padding: 8mm 4mm; box-sizing: content-box; } article + article { border-top: 0.3mm dashed #000; margin-top: 12mm; padding-top: 8mm; } }
@media screen and (max-width: 170mm) { .columns { columns: 1; } .plan { display: block; } }
`;

export interface CardPicture {
  /** in fixed colours, with names of parts that no other picture has */
  readonly svg: string;
  /** much wider than high: what goes with it stands below it */
  readonly wide: boolean;
}

/** What is drawn on a card. */
export interface CardPictures {
  /** undefined where it cannot be drawn */
  readonly plan?: CardPicture;
  /** of the finished hologram as it hangs, by the name of its lamp */
  readonly hung: ReadonlyMap<string, CardPicture>;
}

/** @param pictures one for each card */
export function cardHtml(cards: readonly Card[], title: string, paper: Paper, pictures: readonly CardPictures[]): string {
  return htmlPage(title, style(paper), cards.map((card, i) => article(card, pictures[i]!)));
}

function article(card: Card, pictures: CardPictures): string {
  const front = card.sections.filter(s => FRONT.includes(s.name));
  const back = card.sections.filter(s => !FRONT.includes(s.name));
  return [
    '<article>', `<div class="kinds">${[...card.kinds, 'bench card'].map(k => `${escaped(k)}<br>`).join('')}</div>`, `<h1>${escaped(card.title)}</h1>`,
    ...(card.doc === undefined ? [] : [`<p class="doc">${text(card.doc)}</p>`]), `<p class="light">${text(card.light)}</p>`,
    ...front.map(s => section(s, pictures)), '<div class="columns">', ...back.map(s => section(s, pictures)), '</div>', `<p class="file">${escaped(card.file)}</p>`, '</article>',
  ].join('\n');
}

/** Longer than most columns: it may be parted between rows. */
const isLong = (s: Section): boolean => s.blocks.some(b => b.kind === 'table' && b.groups.reduce((n, g) => n + g.rows.length, 0) > MOST_ROWS);
const MOST_ROWS = 10;

const section = (s: Section, pictures: CardPictures): string => `<section${isLong(s) ? ' class="long"' : ''}>\n<h2>${escaped(s.title)}</h2>\n${s.blocks.map(b => block(b, pictures, FRONT.includes(s.name) ? WHOLE : COLUMN)).join('\n')}\n</section>`;

const inline = ({ svg }: CardPicture): string => svg.replace(/^<\?xml[^>]*>\s*/, '');

function block(b: Block, { plan: picture, hung }: CardPictures, box: number): string {
  switch (b.kind) {
    case 'words': return `<p${b.key ? ' class="key"' : ''}>${text(b.text)}</p>`;
    case 'caution': return `<p class="caution">${text(b.text)}</p>`;
    case 'picture': return picture === undefined ? steps(b.steps) : `<div class="plan${picture.wide ? ' wide' : ''}"><figure>${inline(picture)}</figure>${steps(b.steps)}</div>`;
    case 'hung': { const of = hung.get(b.lamp); return of === undefined ? '' : `<figure class="hung">${inline(of)}</figure>`; }
    case 'table': return table(b, box);
    case 'steps': return steps(b.steps);
    case 'blanks': return `<div class="blanks">${b.blanks.map(blank).join('')}</div>`;
    case 'large': return `<dl class="large">${b.rows.map(r => `<dt>${escaped(r.label)}</dt><dd>${entry(r.entry)}</dd>`).join('')}</dl>`;
    case 'strip': return `<div class="strip">${b.times.map(t => `<span>${escaped(t)} s</span>`).join('')}</div>`;
    case 'lines': return '<div class="line"></div>'.repeat(b.count);
  }
}

const text = (words: string): string => escaped(whole(words));
const write = (behind: string): string => `<span class="write">${escaped(behind)}</span>`;
const small = (words: string | undefined): string => (words === undefined ? '' : `<small>${text(words)}</small>`);
const entry = (e: Entry): string => ('write' in e ? write(e.write) : `${text(e.text)}${small(e.small)}`);
const steps = (all: readonly Step[]): string => `<ul>\n${all.map(step).join('\n')}\n</ul>`;
const step = (s: Step): string => `<li><span class="tick"></span><div><span>${text(s.text)}</span>${s.write === undefined ? '' : write(s.write)}${small(s.small)}</div></li>`;
const blank = (b: Blank): string => `<div style="flex: ${b.width ?? 1}"><span>${text(b.label)}</span>${write(b.write)}</div>`;

/** Room for a box to tick, % of the whole width, and of a column. */
const [WHOLE, COLUMN] = [3, 6.4];

function table({ heads, widths, groups }: Table, box: number): string {
  const all = widths.reduce((a, b) => a + b, 0);
  const columns = `<colgroup><col style="width: ${box}%">${widths.map(w => `<col style="width: ${((w / all) * (100 - box)).toFixed(2)}%">`).join('')}</colgroup>`;
  const head = `<thead><tr><th></th>${heads.map(h => `<th>${escaped(h)}</th>`).join('')}</tr></thead>`;
  const body = groups.map(g => `<tbody>\n${g.title === undefined ? '' : `<tr><th class="group" colspan="${heads.length + 1}">${escaped(g.title)}</th></tr>\n`}${g.rows.map(row).join('\n')}\n</tbody>`);
  return `<table>${columns}${head}${body.join('')}</table>`;
}

const row = (r: Row): string => `<tr${r.sum ? ' class="sum"' : ''}><td class="box">${r.tick ? '<span class="tick"></span>' : ''}</td>${r.entries.map(e => `<td>${entry(e)}</td>`).join('')}</tr>`;
