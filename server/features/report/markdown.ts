/** A report as Markdown: for a notebook kept in version control, or a page on the web. */
import type { Finding } from '../../checks/check.ts';
import { escaped, table } from '../markdown.ts';
import { armRows } from './arms.ts';
import { guessWords, pathsWords, strips } from './text.ts';
import { variantHeads, variantNumber, variantText, type VariantTable } from './variants.ts';
import { bandLegend } from './words.ts';
import { titleOf, type PairPage, type PlatePage, type Report } from './report.ts';

export function reportMarkdown(reports: readonly Report[], file: string, others: readonly Finding[] = []): string {
  const parts = reports.flatMap(r => page(r, file));
  if (reports.length === 0) parts.push(`# ${escaped(file)}`, 'There is no setup in this file.');
  if (others.length > 0) parts.push('## Findings outside the setups', findings(others));
  return `${parts.join('\n\n')}\n`;
}

function page(r: Report, file: string): string[] {
  return [
    `# ${escaped(titleOf(r))}`, `${escaped(file)}, line ${r.line + 1}`,
    ...(r.doc !== undefined ? [r.doc.split('\n').map(escaped).join('\n')] : []), ...(r.hologram !== undefined ? [`Hologram: ${r.hologram}.`] : []),
    ...(r.plates.length === 0 ? ['No beam reaches a plate, so that there are no paths to compare.'] : r.plates.flatMap(plate)),
    ...(r.plates.some(p => p.pairs.some(x => x.parts.length > 0)) ? [`${bandLegend()}.`] : []), ...r.coherence.map(escaped), ...(r.readings ? [`## ${escaped(r.readings.title)}`, table(['measured', 'read', 'what became of it'], r.readings.rows.map(x => [x.label, x.text, x.remark]))] : []), ...[...r.light, ...r.losses].flatMap(p => [`## ${escaped(p.title)}`, table(['', '', ''], p.rows.map(x => [x.label, x.text, x.remark]))]),
    ...(r.goals.length > 0 ? ['## Expected and aimed for', table(['', 'outcome', 'result'], r.goals.map(g => [`${g.kind} ${g.text}`, g.outcome, g.shown ?? '']))] : []),
    ...(r.variants ? variants(r.variants) : []),
    ...(r.guesses ? [guessWords(r.guesses, file).split('`').map((s, i) => (i % 2 === 0 ? escaped(s) : `\`${s}\``)).filter(p => p !== '').join(' ')] : []),
    ...(r.notes.length > 0 ? ['## Notes', r.notes.map(n => `- ${escaped(n.about)}: ${escaped(n.text)}`).join('\n')] : []),
    ...(r.overrides.length > 0 ? ['## Otherwise than in the inventory', r.overrides.map(o => `- ${escaped(o)}`).join('\n')] : []),
    '## Findings', r.findings.length === 0 && r.pending !== undefined ? 'None in what is computed.' : findings(r.findings), ...(r.pending !== undefined ? [`Not computed yet: ${escaped(r.pending)}.`] : []),
  ];
}

function plate(p: PlatePage): string[] {
  return [
    `## ${escaped(pathsWords(p))}`, table(['beam', 'leg', 'length by string'], p.arms.flatMap(armRows)),
    ...p.pairs.flatMap(x => [escaped(x.comparison), ...brightness(x, p)]),
  ];
}

function brightness(x: PairPage, p: PlatePage): string[] {
  if (x.parts.length === 0) return [];
  const by = p.pairs.length > 1 ? ` on ${p.plate} by ${x.arm}` : '';
  return [
    `## How brightly ${escaped(x.object)}${x.depth !== undefined ? ` (${escaped(x.depth)} deep)` : ''} records${escaped(by)}`, table(['part', 'of full brightness', 'looks'], x.parts.map(l => [l.label, l.text, l.word])),
    ...(x.profiles.length > 0 ? [['```', ...strips(x), '```'].join('\n')] : []),
  ];
}

function variants(t: VariantTable): string[] {
  return [
    '## Variants, beside what is written', ...(t.rows.length > 0 ? [table(['', ...variantHeads(t)], t.rows.map(r => [r.label, ...r.cells]))] : []),
    t.variants.map((v, i) => `- ${escaped(`${variantNumber(i)} ${variantText(v)}`)}`).join('\n'),
  ];
}

function findings(list: readonly Finding[]): string {
  if (list.length === 0) return 'None.';
  return list.map(f => (f.accepted === undefined ? `- **${f.severity}**, line ${f.at.line + 1}: ${escaped(f.message)} (\`${f.code}\`)` : `- accepted, line ${f.at.line + 1}: \`${f.code}\` of ${escaped(f.subject)}: “${escaped(f.accepted)}”`)).join('\n');
}
