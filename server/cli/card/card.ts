/** `platewright card`: the setups of a file as cards for the bench, as a page of HTML or a PDF, to be printed. */
import { analyse } from '../../analysis.ts';
import { cardPictures, cardSheets } from '../../drawing/on-card.ts';
import { cardOf } from '../../features/card/card.ts';
import { cardHtml } from '../../features/card/html.ts';
import type { Paper } from '../../features/card/paper.ts';
import { findingsWithin } from '../../features/report/report.ts';
import type { Press } from '../../pdf/card.ts';
import { inVariant, setupsNamed } from '../chosen.ts';
import type { Done } from '../done.ts';
import { Misuse, openFile, Trouble, type Reach } from '../files.ts';
import { exitFor } from '../../features/listed.ts';
import { writeMade } from '../writing.ts';

export async function card(named: string, { output, setup, variant, paper, ...reach }: { output?: string; setup?: string; variant?: string; paper: Paper } & Reach): Promise<Done> {
  const kind = kindOf(output);
  const file = openFile(named, reach);
  const snapshot = inVariant(analyse(file.uri, file.text, file.texts), file.name, setup, variant);
  const results = setupsNamed(snapshot.results, file.name, setup);
  if (results.length === 0) throw new Trouble(`There is no setup in ${file.name}.`);
  const cards = results.map(r => cardOf(snapshot, r, file.name));
  const title = cards.length === 1 ? cards[0]!.title : file.name;
  const made = kind === 'pdf' ? await (await import('../../pdf/card.ts')).cardPdf(cards, title, paper, results.map(r => cardSheets(r)), await press()) : cardHtml(cards, title, paper, results.map((r, i) => cardPictures(r, `card-${i + 1}-`)));
  const code = exitFor(results.flatMap(r => findingsWithin(snapshot, r)));
  if (output === undefined) return { out: made as string, code };
  writeMade(output, made);
  return { out: `${output}: written\n`, code };
}

async function press(): Promise<Press> {
  const { letters, needed } = await import('../pictures.ts');
  const { default: Document } = await needed(async () => import('pdfkit'), 'a PDF', '.html');
  const { default: draw } = await needed(async () => import('svg-to-pdfkit'), 'a PDF', '.html');
  return { Document, draw, letters };
}

function kindOf(output: string | undefined): 'html' | 'pdf' {
  const [, end = 'html'] = /\.([^./\\]*)$/.exec(output ?? '') ?? [];
  const kind = end.toLowerCase();
  if (kind === 'htm' || kind === 'html') return 'html';
  if (kind === 'pdf') return 'pdf';
  throw new Misuse(`Cards are written as .html or .pdf, not as .${end}: choose another name for ${output!}.`);
}
