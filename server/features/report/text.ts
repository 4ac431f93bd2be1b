/** A report as a page of plain text: for a terminal, a pipe, a printer. */
import type { Finding } from '../../checks/check.ts';
import { armRows, type ArmTable } from './arms.ts';
import { alignValues, padEnd, strip, WIDTH, width, wrap } from '../plain-text.ts';
import { lightText } from './light.ts';
import { bandLegend } from './words.ts';
import { variantHeads, variantNumber, variantText, type VariantTable } from './variants.ts';
import { titleOf, type GoalLine, type GuessLine, type PairPage, type PlatePage, type Report } from './report.ts';

/** `file` is the name under which the reader knows the file, `others` are findings that stand outside all setups. */
export function reportText(reports: readonly Report[], file: string, others: readonly Finding[] = []): string {
  const pages = reports.map(r => page(r, file));
  if (reports.length === 0) pages.push([file, ...wrap('There is no setup in this file.', { first: '  ' })]);
  if (others.length > 0) pages.push(findings(others, 'Findings outside the setups'));
  return pages.map(p => `${p.join('\n')}\n`).join('\n\n');
}

function page(r: Report, file: string): string[] {
  const title = titleOf(r);
  const where = `${file}, line ${r.line + 1}`;
  const gap = WIDTH - width(title) - width(where);
  const head = gap >= 3 ? [title + ' '.repeat(gap) + where] : [title, where];
  const lines = [...head, '─'.repeat(WIDTH), ...(r.doc !== undefined ? r.doc.split(/\n\s*\n/).flatMap(d => wrap(d)) : [])];
  if (r.hologram !== undefined) lines.push(`Hologram: ${r.hologram}.`);
  const sections = [
    ...r.plates.flatMap(p => plate(p)), r.plates.some(p => p.pairs.some(x => x.parts.length > 0)) ? indented(`${bandLegend()}.`) : [], r.coherence.flatMap(c => indented(c)), ...(r.readings ? [lightText(r.readings)] : []), ...r.light.map(lightText), ...r.losses.map(lightText), goals(r.goals), variants(r.variants), r.guesses ? indented(guessWords(r.guesses, file)) : [],
    r.notes.length > 0 ? ['Notes', '', ...r.notes.flatMap(n => wrap(`${n.about}: ${n.text}`, { first: '  ', rest: '    ' }))] : [],
    r.overrides.length > 0 ? ['Otherwise than in the inventory', '', ...r.overrides.flatMap(o => wrap(o, { first: '  ', rest: '    ' }))] : [],
    r.findings.length === 0 ? [r.pending === undefined ? 'Findings: none' : 'Findings: none in what is computed'] : findings(r.findings, 'Findings'), r.pending !== undefined ? indented(`Not computed yet: ${r.pending}.`) : [],
  ];
  if (r.plates.length === 0) sections.unshift(indented('No beam reaches a plate, so that there are no paths to compare.'));
  for (const s of sections) if (s.length > 0) lines.push('', ...s);
  if (r.plates.some(p => p.arms.length > 0)) lines.push('', ...wrap('± of a number that you wrote: surely within. ± of a result: twice the standard uncertainty, 95 of 100 times within.', { first: '  ' }));
  return lines;
}

const indented = (text: string): string[] => wrap(text, { first: '  ' });

function plate(p: PlatePage): string[][] {
  return [[...wrap(`${pathsWords(p)}, as string measures them`), '', ...arms(p.arms), ...p.pairs.flatMap(x => ['', ...indented(x.comparison)])], ...p.pairs.map(x => brightness(x, p))];
}

/** `Paths to P1, from S1`; in a single-beam setup the arms part at the plate itself. */
export const pathsWords = (p: PlatePage): string => `Paths to ${p.plate}${p.from === p.plate ? ', from where the light first meets it' : p.from !== undefined ? `, from ${p.from}` : ''}`;

function arms(tables: readonly ArmTable[]): string[] {
  const rows = tables.flatMap(armRows);
  const values = alignValues(rows.map(r => r[2]));
  const [names, legs] = [0, 1].map(i => Math.max(...rows.map(r => width(r[i]!)))) as [number, number];
  return rows.map((r, i) => `  ${padEnd(r[0], names)}   ${padEnd(r[1], legs)}   ${values[i]!}`);
}

function brightness(x: PairPage, p: PlatePage): string[] {
  if (x.parts.length === 0) return [];
  const labels = Math.max(...x.parts.map(l => width(l.label)));
  const texts = Math.max(...x.parts.map(l => width(l.text)));
  const deep = x.depth !== undefined ? ` (${x.depth} deep)` : '';
  return [
    ...wrap(`How brightly ${x.object}${deep} records${p.pairs.length > 1 ? ` on ${p.plate} by ${x.arm}` : ''}, as a share of full brightness`), '',
    ...x.parts.map(l => `  ${padEnd(l.label, labels)}   ${padEnd(l.text, texts)}   ${l.word}`),
    ...(x.profiles.length > 0 ? ['', ...strips(x).map(s => `  ${s}`)] : []),
  ];
}

/** Brightness over the depth as rows of blocks. */
export function strips(x: PairPage): string[] {
  const labels = Math.max(...x.profiles.map(p => width(p.label)));
  return x.profiles.map(p => `${labels > 0 ? `${padEnd(p.label, labels)}   ` : ''}nearest ${strip(p.shares)} farthest`);
}

function goals(list: readonly GoalLine[]): string[] {
  if (list.length === 0) return [];
  const texts = Math.max(...list.map(g => width(`${g.kind} ${g.text}`)));
  return ['Expected and aimed for', '', ...list.flatMap(g => wrap(`${g.outcome}${g.shown !== undefined ? `: ${g.shown}` : ''}`, { first: `  ${padEnd(`${g.kind} ${g.text}`, texts)}   `, rest: ' '.repeat(texts > 45 ? 20 : texts + 5) }))];
}

/** Columns beside each other as far as they fit; each variant has a number, since its name may be long. */
function variants(table: VariantTable | undefined): string[] {
  if (!table) return [];
  const heads = variantHeads(table);
  const labels = Math.max(0, ...table.rows.map(r => width(r.label)));
  const columns = heads.map((head, i) => ({ i, wide: Math.max(width(head), ...table.rows.map(r => width(r.cells[i]!))) }));
  const lines = ['Variants, beside what is written'];
  const [written, ...rest] = columns as [(typeof columns)[0], ...typeof columns];
  const most = WIDTH - 2 - labels - 3 - written.wide;
  while (rest.length > 0 && table.rows.length > 0) {
    const group = [written];
    for (let left = most; rest.length > 0 && (group.length === 1 || left >= rest[0]!.wide + 3); ) {
      left -= rest[0]!.wide + 3;
      group.push(rest.shift()!);
    }
    const row = (label: string, cell: (i: number) => string): string => `  ${padEnd(label, labels)}   ${group.map(c => padEnd(cell(c.i), c.wide)).join('   ')}`.trimEnd();
    lines.push('', row('', i => heads[i]!), ...table.rows.map(r => row(r.label, i => r.cells[i]!)));
  }
  return [...lines, '', ...table.variants.flatMap((v, i) => wrap(`${variantNumber(i)} ${variantText(v)}`, { first: '  ', rest: '      ' }))];
}

/** `brightness rests on 2 guesses: modes of red, lit at of whelk; …` */
export function guessWords(g: GuessLine, file: string): string {
  const n = g.guesses.length;
  const name = (s: string): string => (/^[\w./+-]+$/u.test(s) ? s : `"${s.replaceAll('"', '\\"')}"`);
  return `${g.results.join(', ').replace(/, ([^,]*)$/, ' and $1')} ${g.results.length > 1 ? 'rest' : 'rests'} on ${n === 1 ? '1 guess' : `${n} guesses`}: ${g.guesses.join(', ')}; ` +
    `\`platewright explain ${name(file)} ${name(g.opens)}\` opens ${g.all ? (n === 1 ? 'it' : 'them') : 'most of them'}`;
}

function findings(list: readonly Finding[], title: string): string[] {
  const shown = list.filter(f => f.accepted === undefined);
  const accepted = list.filter(f => f.accepted !== undefined);
  return [
    title, '', ...shown.flatMap(f => wrap(`${f.message} [${f.code}]`, { first: `  ${padEnd(f.severity, 8)} line ${f.at.line + 1}: `, rest: ' '.repeat(11) })),
    ...accepted.flatMap(f => wrap(`${f.code} of ${f.subject}, accepted: “${f.accepted!}”`, { first: `  ${padEnd('accepted', 8)} line ${f.at.line + 1}: `, rest: ' '.repeat(11) })),
  ];
}
