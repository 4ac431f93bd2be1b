/** Makes a PDF of a bench card, for a server that runs beside its editor: with the packages for it, and with fonts from files. A file of its own when it is packed, with letters beside it. */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import Document from 'pdfkit';
import draw from 'svg-to-pdfkit';
import type { Card } from '../features/blocks/blocks.ts';
import type { Paper } from '../features/card/paper.ts';
import type { Mark, Sheet } from '../drawing/marks.ts';
import type { OnCard } from '../drawing/on-card.ts';
import { cardPdf, type Cut } from '../pdf/card.ts';
import { strange } from '../pdf/letters.ts';

export async function print(card: Card, paper: Paper, pictures: OnCard<Sheet>): Promise<{ readonly pdf: string } | { readonly refused: string }> {
  const missing = strange([...words(card), ...[...(pictures.plan ? [pictures.plan] : []), ...pictures.hung.values()].flatMap(p => p.marks).flatMap(written)]);
  if (missing.length > 0) {
    const some = missing.slice(0, SOME).map(l => `“${l}”`).join(', ');
    return { refused: `The fonts for a PDF that go along with the editor have no ${some}${missing.length > SOME ? ' and others' : ''}, so that the card would have gaps. Write it as HTML and print that; or let the command line write it, which has more letters: platewright card ${card.file} -o card.pdf` };
  }
  return { pdf: Buffer.from(await cardPdf([card], card.title, paper, [pictures], { Document, draw, letters })).toString('base64') };
}
const SOME = 3;

/** All that stands on a card, wherever in it. */
function words(of: unknown): string[] {
  if (typeof of === 'string') return [of];
  return typeof of === 'object' && of !== null ? Object.values(of).flatMap(words) : [];
}
const written = (m: Mark): string[] => [m.text ?? '', ...m.children.flatMap(written)];

const require = createRequire(import.meta.url);
/** Two cuts go along with the extension, for the sake of its size. */
const PACKED: Readonly<Record<Cut, string>> = { Serif: 'SerifCondensed', SerifCondensed: 'SerifCondensed', 'SerifCondensed-Italic': 'SerifCondensed', 'SerifCondensed-Bold': 'SerifCondensed-Bold' };

function letters(cut: Cut): Buffer {
  const packed = new URL(`./letters/${PACKED[cut]}.ttf`, import.meta.url);
  return readFileSync(existsSync(packed) ? packed : require.resolve(`dejavu-fonts-ttf/ttf/DejaVu${cut}.ttf`));
}
