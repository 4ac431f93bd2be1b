/** Bench cards as a PDF, laid out from the same card as the page of HTML: what has to be known first and the table across the sheet, all else in two columns. */
import type { Sheet } from '../drawing/marks.ts';
import { isWide, type OnCard } from '../drawing/on-card.ts';
import { PALETTES } from '../drawing/style.ts';
import { inkedSvg } from '../drawing/svg.ts';
import { FRONT, type Card } from '../features/blocks/blocks.ts';
import { MARGIN, SIZES, type Paper } from '../features/card/paper.ts';
import { GAP, Pieces, type Picture, type Piece } from './pieces.ts';
import { MM, type Doc } from './pen.ts';

/** Between the columns, and for what stands below them. */
const [BETWEEN, FOOT] = [7 * MM, 5 * MM];
/** Less height than that is no room for a part of a section. */
const LEAST = 90 * MM;

/** What makes a PDF: packages, which whoever runs this has beside it, and the fonts. */
export interface Press {
  readonly Document: new (options: PDFKit.PDFDocumentOptions) => Doc;
  readonly draw: (doc: Doc, svg: string, x: number, y: number, options: { readonly width: number; readonly height: number; readonly preserveAspectRatio: string; readonly assumePt: boolean; readonly fontCallback: () => string }) => void;
  readonly letters: (cut: Cut) => Buffer;
}
/** How the letters of a font are cut. */
export type Cut = 'Serif' | 'SerifCondensed' | 'SerifCondensed-Bold' | 'SerifCondensed-Italic';

/** @param pictures one for each card */
export async function cardPdf(cards: readonly Card[], title: string, paper: Paper, pictures: readonly OnCard<Sheet>[], { Document, draw, letters }: Press): Promise<Uint8Array> {
  const [width, height] = SIZES[paper].map(v => v * MM) as [number, number];
  // Without a time, so that the same card gives the same file; pages are kept until all of them can be counted.
  // Without a font of its own, which would be looked for on a disk.
  const doc: Doc = new Document({ size: [width, height], margin: 0, bufferPages: true, font: '', info: { Title: title, Creator: 'Platewright', CreationDate: new Date(0), ModDate: new Date(0) } });
  const parts: Buffer[] = [];
  doc.on('data', (part: Buffer) => parts.push(part));
  const ended = new Promise<void>(resolve => { doc.on('end', resolve); });
  for (const [name, cut] of [['plain', 'SerifCondensed'], ['bold', 'SerifCondensed-Bold'], ['slanted', 'SerifCondensed-Italic'], ['letters', 'Serif']] as const) doc.registerFont(name, letters(cut));
  const place = (sheet: Sheet): Picture => ({
    aspect: sheet.box.w / sheet.box.h, wide: isWide(sheet),
    draw: (x, y, w, h) => { draw(doc, inkedSvg(sheet, PALETTES.light), x, y, { width: w, height: h, preserveAspectRatio: 'xMidYMin meet', assumePt: true, fontCallback: () => 'letters' }); },
  });
  cards.forEach((card, i) => {
    if (i > 0) doc.addPage();
    const { plan, hung } = pictures[i]!;
    lay(doc, card, { width, height }, { ...(plan ? { plan: place(plan) } : {}), hung: new Map([...hung].map(([lamp, sheet]) => [lamp, place(sheet)])) });
  });
  numbered(doc, { width, height });
  doc.end();
  await ended;
  return Buffer.concat(parts);
}

interface Size { readonly width: number; readonly height: number }

function lay(doc: Doc, card: Card, { width, height }: Size, pictures: OnCard<Picture>): void {
  const [left, top, inner, bottom] = [MARGIN * MM, MARGIN * MM, width - 2 * MARGIN * MM, height - MARGIN * MM - FOOT];
  const across = new Pieces(doc, inner, pictures);
  let y = top;
  const [head, ...front] = [across.head(card), ...card.sections.filter(s => FRONT.includes(s.name)).flatMap(s => across.section(s))];
  for (const run of runs([head, ...front])) {
    const high = sum(run);
    if (y > top && y + high > bottom) { doc.addPage(); y = top; }
    for (const piece of run) { piece.draw(left, y); y += piece.height; }
  }
  const column = (inner - BETWEEN) / 2;
  const narrow = new Pieces(doc, column, { hung: pictures.hung });
  let rest = card.sections.filter(s => !FRONT.includes(s.name)).map(s => narrow.section(s));
  while (rest.length > 0) {
    const room = bottom - y;
    const taken = split(rest, room);
    // What does not fit into what is left of a sheet begins the next one, unless that would leave most of this one white.
    if (taken === 0 && y > top && room < LEAST) { doc.addPage(); y = top; continue; }
    const { both, left: more } = taken === 0 ? cutInTwo(rest, room) : { both: columns(rest.slice(0, taken), room), left: rest.slice(taken) };
    const ends = both.map((pieces, i) => {
      let at = y;
      for (const piece of pieces) { piece.draw(left + i * (column + BETWEEN), at); at += piece.height; }
      return at;
    });
    y = Math.max(...ends);
    rest = more;
    if (rest.length > 0) { doc.addPage(); y = top; }
  }
  across.small(card.file, left, bottom + 1.2 * MM, inner * 0.8);
}

const sum = (pieces: readonly Piece[]): number => pieces.reduce((s, p) => s + p.height, 0);

/** Pieces that are not parted: a heading stays with what it heads. */
function runs(pieces: readonly Piece[]): Piece[][] {
  const all: Piece[][] = [[]];
  for (const p of pieces) {
    all.at(-1)!.push(p);
    if (!p.heads) all.push([]);
  }
  return all.filter(r => r.length > 0);
}

/** How many sections go into two columns of that height. */
function split(sections: readonly (readonly Piece[])[], room: number): number {
  let taken = sections.length;
  while (taken > 0 && best(sections.slice(0, taken), room) === undefined) taken--;
  return taken;
}

/** After how many sections the second column begins, so that both are as even as can be; undefined where they do not fit. */
function best(sections: readonly (readonly Piece[])[], room: number): number | undefined {
  let found: { readonly at: number; readonly most: number } | undefined;
  for (let at = sections.length; at >= 0; at--) {
    const most = Math.max(sum(sections.slice(0, at).flat()), sum(sections.slice(at).flat()));
    if (most <= room && (!found || most < found.most)) found = { at, most };
  }
  return found?.at;
}

function columns(sections: readonly (readonly Piece[])[], room: number): [readonly Piece[], readonly Piece[]] {
  const at = best(sections, room)!;
  return [sections.slice(0, at).flat(), sections.slice(at).flat()];
}

/** A section that is longer than a column, in two of them; behind it what fits. */
function cutInTwo([long, ...others]: readonly Piece[][], room: number): { readonly both: readonly [readonly Piece[], readonly Piece[]]; readonly left: Piece[][] } {
  const first = parted(long!, room);
  const second = parted(long!.slice(first.length), room);
  const cut = long!.slice(first.length + second.length);
  let fits = 0;
  while (cut.length === 0 && fits < others.length && sum(second) + sum(others[fits]!) <= room) second.push(...others[fits++]!);
  return { both: [first, second], left: [...(cut.length > 0 ? [cut] : []), ...others.slice(fits)] };
}

/** As much of a section as a column holds, and at least its first piece. */
function parted(pieces: readonly Piece[], room: number): Piece[] {
  const taken: Piece[] = [];
  for (const run of runs(pieces)) {
    if (taken.length > 0 && sum(taken) + sum(run) > room) break;
    taken.push(...run);
  }
  return taken;
}

function numbered(doc: Doc, { width, height }: Size): void {
  const { start, count } = doc.bufferedPageRange();
  for (let i = start; i < start + count; i++) {
    doc.switchToPage(i);
    doc.font('plain').fontSize(9).fillColor('#000').text(`${i + 1} of ${count}`, MARGIN * MM, height - MARGIN * MM - GAP, { width: width - 2 * MARGIN * MM, align: 'right', lineBreak: false });
  }
}
