/** What is shown of a reading, and of a thing that was moved. */
import type { Moved, Reading } from '../model/model.ts';
import type { Results } from '../results/plan.ts';
import { figureWords } from './hover-chain.ts';
import { blocks, bullets, escaped, strong } from './markdown.ts';
import { planText, readText, verdictOf } from './report-readings.ts';

/** What was read beside the plan, what became of it, and the chain of numbers of what it corrects. */
export function readingWords(reading: Reading, r: Results): string {
  const v = verdictOf(reading, r);
  const fate = r.readings.fate(reading);
  const cell = fate?.kind === 'counts' ? (fate.subject.corrected ?? r.graph.find(v.of!)) : undefined;
  const taken = [reading.by ? `by ${reading.by.name}` : '', reading.on === undefined ? '' : `on ${reading.on}`].filter(Boolean).join(' ');
  return blocks(
    `${strong(readText(reading, r))}: ${escaped(reading.words)}${taken === '' ? '' : `, ${escaped(taken)}`}`, escaped(sentence([planText(v), v.words].filter(Boolean).join('; '))), cell && !cell.missing ? figureWords(r.graph, cell) : '',
  );
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
