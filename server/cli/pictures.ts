/** Pictures as other programs want them: dots for a screen or a letter, and a page for a printer. What makes them is loaded when it is asked for. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Sheet } from '../drawing/marks.ts';
import { PALETTES } from '../drawing/style.ts';
import { inkedSvg, svgOf } from '../drawing/svg.ts';
import { Misuse, Trouble } from './files.ts';

/** On white, or on black. */
export type Ground = 'light' | 'dark';
type Maker = (sheet: Sheet, ground: Ground) => Promise<string | Uint8Array>;

const MAKERS: Readonly<Record<string, Maker>> = {
  svg: async (sheet, ground) => Promise.resolve(ground === 'dark' ? inkedSvg(sheet, PALETTES.dark) : svgOf(sheet)), png, pdf,
};

/** The maker of a file, by the end of its name. Without an end it is SVG. */
export function makerFor(output: string | undefined): Maker {
  const [, end = 'svg'] = /\.([^./\\]*)$/.exec(output ?? '') ?? [];
  const maker = MAKERS[end.toLowerCase()];
  if (!maker) throw new Misuse(`Pictures are written as .svg, .png or .pdf, not as .${end}: choose another name for ${output!}.`);
  return maker;
}

/** Dots across; high enough for a page of A4 at 200 to the inch. */
const ACROSS = 2400;
/** So many dots fit into memory with ease; a taller picture has fewer across. */
const MOST_DOTS = 36e6;
/** A side of fewer shows nothing. */
const LEAST_DOTS = 16;
const require = createRequire(import.meta.url);

/** The renderer is set up once in a process, and refuses to be so again. */
let ready: Promise<void> | undefined;

async function png(sheet: Sheet, ground: Ground): Promise<Uint8Array> {
  const { initWasm, Resvg } = await needed(async () => import('@resvg/resvg-wasm'), 'a PNG');
  await (ready ??= initWasm(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm'))));
  const { w, h } = sheet.box;
  const across = Math.floor(Math.min(ACROSS, Math.sqrt((MOST_DOTS * w) / h)));
  if (Math.min(across, (across * h) / w) < LEAST_DOTS) throw new Trouble(`${sheet.title} is ${Math.round(Math.max(w / h, h / w))} times as long as it is wide, which dots do not show: name a .svg or .pdf file instead`);
  const picture = new Resvg(inkedSvg(sheet, PALETTES[ground]), { fitTo: { mode: 'width', value: across }, font: { fontBuffers: [letters()], defaultFontFamily: 'DejaVu Serif', serifFamily: 'DejaVu Serif' } });
  return picture.render().asPng();
}

/** A4, upright or across as the picture is; its margin is one that printers keep, in points of 1/72 inch. */
const [SHORT, LONG, MARGIN] = [595.28, 841.89, 28];

async function pdf(sheet: Sheet, ground: Ground): Promise<Uint8Array> {
  const { default: PDFDocument } = await needed(async () => import('pdfkit'), 'a PDF');
  const { default: draw } = await needed(async () => import('svg-to-pdfkit'), 'a PDF');
  const across = sheet.box.w > sheet.box.h;
  const [w, h] = across ? [LONG, SHORT] : [SHORT, LONG];
  // Without a time, so that the same picture gives the same file.
  const doc = new PDFDocument({ size: [w, h], margin: MARGIN, info: { Title: sheet.title, Creator: 'Platewright', CreationDate: new Date(0), ModDate: new Date(0) } });
  const parts: Buffer[] = [];
  doc.on('data', (part: Buffer) => parts.push(part));
  const ended = new Promise<void>(resolve => { doc.on('end', resolve); });
  doc.registerFont('letters', letters());
  if (ground === 'dark') doc.rect(0, 0, w, h).fill(PALETTES.dark.paper);
  draw(doc, inkedSvg(sheet, PALETTES[ground]), MARGIN, MARGIN, { width: w - 2 * MARGIN, height: h - 2 * MARGIN, preserveAspectRatio: 'xMidYMid meet', assumePt: true, fontCallback: () => 'letters' });
  doc.end();
  await ended;
  return Buffer.concat(parts);
}

/** @param cut `Serif`, `SerifCondensed-Bold` and so on */
export const letters = (cut = 'Serif'): Buffer => readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/DejaVu${cut}.ttf`));

/** @param instead what can be written without them */
export async function needed<T>(load: () => Promise<T>, what: string, instead = '.svg'): Promise<T> {
  try {
    return await load();
  } catch {
    throw new Trouble(`${what} needs packages that are installed beside platewright, and they are not there: install it with npm, or write an ${instead}.`);
  }
}
