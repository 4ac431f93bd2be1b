/** What is shown of a reading, and of a thing that was moved. */
import type { Moved, Reading } from '../../model/model.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { figureWords } from './chain.ts';
import { blocks, bullets, escaped, strong } from '../markdown.ts';
import { planText, readText, verdictOf } from '../report/readings.ts';

const MOST = 5;

/** What was read beside the plan, what became of it, and the chain of numbers of what it corrects; of light the results that rest on it. */
export function readingWords(reading: Reading, r: Results): string {
  const v = verdictOf(reading, r);
  const fate = r.readings.fate(reading);
  const cell = fate?.kind === 'counts' ? (fate.subject.corrected ?? r.graph.find(v.of!)) : undefined;
  const taken = [reading.by ? `by ${reading.by.name}` : '', reading.on === undefined ? '' : `on ${reading.on}`].filter(Boolean).join(' ');
  return blocks(
    `${strong(readText(reading, r))}: ${escaped(reading.words)}${taken === '' ? '' : `, ${escaped(taken)}`}`, escaped(sentence([planText(v), v.words].filter(Boolean).join('; '))),
    cell && !cell.missing ? `---\n\n${figureWords(r.graph, cell)}` : '', r.light.fates.has(reading) ? restingOn(reading, r) : '',
  );
}

/** The results that a reading goes into, each with its figure. */
function restingOn({ valueAt }: Reading, r: Results): string {
  const own = valueAt && r.graph.planned.find(c => c.origin === 'measured' && c.at?.uri === valueAt.uri && c.at.line === valueAt.line && c.at.start === valueAt.start);
  if (!own) return '';
  const resting = new Set<Cell>([own]);
  // A cell stands behind those that it is made of.
  for (const c of r.graph.planned) if (c.inputs.some(i => resting.has(i))) resting.add(c);
  const results = r.published.filter(c => resting.has(c) && !c.missing);
  if (results.length === 0) return '';
  const rows = results.slice(0, MOST).map(c => `${escaped(c.words)}: ${escaped(showCell(r.graph, c).text)}`);
  return `What rests on it:\n\n${bullets([...rows, ...(results.length > MOST ? [`and ${results.length - MOST} more`] : [])])}`;
}

/** What was moved, and which readings no longer hold for it. */
export function movedWords(moved: Moved, r: Results): string {
  const names = moved.things.map(t => t.id).join(', ');
  const stale = r.setup.readings.filter(x => r.readings.stale(x)?.moved.node === moved.node);
  return blocks(
    `${strong(names)}: moved on ${escaped(moved.on)}${moved.what === undefined ? '' : `, “${escaped(moved.what)}”`}`,
    stale.length === 0 ? 'No reading is older that went by there.' : `These readings no longer count:\n\n${bullets(stale.map(x => `${escaped(x.words)}, line ${x.at.line + 1}`))}`,
  );
}

const sentence = (s: string): string => (s === '' ? '' : `${s.charAt(0).toUpperCase()}${s.slice(1)}.`);
