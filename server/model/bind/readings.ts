/** Readings: `measured WHAT [at PLACE] [facing beam]: VALUE [by INSTRUMENT] [on DATE]`. */
import type { Clause, Node, Span } from '../../../grammar/tree.ts';
import { bindDate } from './dates.ts';
import { bindInstrument } from './instruments.ts';
import { bindMeasured, type Around } from './measured.ts';
import { strayLegs } from './things.ts';
import type { Measured, Reading } from '../model.ts';
import { readReading } from './reading-values.ts';
import type { Scope } from '../scope.ts';

/** Binds the readings of a setup whose things, beams and values are known. */
export function bindReadings(nodes: readonly Node[], { beams, lets }: Pick<Around, 'beams' | 'lets'>, scope: Scope): Reading[] {
  const around = { beams, lets, scope, missed: new Set<string>() };
  const readings = nodes.map(node => bindReading(node, around));
  return readings.filter(r => r !== undefined);
}

function bindReading(node: Node, around: Omit<Around, 'by'>): Reading | undefined {
  const { line } = node;
  const { scope, missed } = around;
  const { sink, setup } = scope;
  strayLegs(node, sink, setup);
  if (!line.subject) {
    if (!line.issue) sink.report('value-missing', sink.place(node, line.head!), 'measured', { phrase: 'the name of what was measured', of: 'measured', prevents: '' }, setup);
    return undefined;
  }
  const end = line.colon ?? line.text.length;
  const before = line.clauses.filter(c => c.start < end);
  const words = line.text.slice(line.subject.start, Math.max(line.subject.end, ...before.filter(c => c.word.text === 'at' || c.word.text === 'facing').map(c => c.end))).replace(/\s+/g, ' ').trim();
  const by = only('by', node, words, scope);
  const on = only('on', node, words, scope);
  const measured = bindMeasured(node, words, { ...around, by: by?.value?.kind === 'phrase' ? by.value.words[0] : undefined });
  for (const c of misplaced(node, measured)) sink.report('reading-misplaced', sink.place(node, c), words, { clause: line.text.slice(c.start, c.end), word: c.word.text, where: c.start < end ? 'before' : 'behind', words }, setup);
  if (line.equals || line.compare || line.opens) odd(node, words, scope);
  if (!line.value && !line.issue && !line.equals && !line.compare) sink.report('value-missing', sink.place(node, line.subject), words, { phrase: 'what was read, behind a colon', of: `measured ${words}`, prevents: '' }, setup);
  const read = line.value && measured ? readReading(line.value, measured) : undefined;
  // Where the line could not be read to its end, the value may be cut short: that is one slip.
  if (read && 'problem' in read && !line.issue) sink.value(read.problem, node, words, setup);
  const instrument = by && bindInstrument(by, node, measured, words, scope, missed);
  const date = on && bindDate(on, node, words, scope);
  return {
    measured, words, node, at: sink.place(node, line.subject), by: instrument, on: date,
    value: read && 'ok' in read ? read.ok : undefined, valueAt: line.value && sink.place(node, line.value),
  };
}

/** The clause with that word; a second one is reported. */
function only(word: string, node: Node, words: string, { sink, setup }: Scope): Clause | undefined {
  const all = node.line.clauses.filter(c => c.word.text === word);
  const second = all[1];
  if (second) sink.report('written-twice', sink.place(node, second), words, { phrase: word, of: `measured ${words}`, line: node.at + 1 }, setup);
  return all[0];
}

/** Where the clauses of a reading belong: what is measured, and where, before the colon; with what and when, behind the value. */
const BEFORE: readonly string[] = ['at', 'facing'];
const BEHIND: readonly string[] = ['by', 'on'];

/** The first clause that does not belong where it stands. */
function misplaced({ line: { clauses, colon, subject, issue } }: Node, measured: Measured | undefined): Clause[] {
  if (issue) return [];
  const wrong = clauses.filter(c => {
    const { text } = c.word;
    if (BEHIND.includes(text)) return colon !== undefined && c.start < colon;
    if (!BEFORE.includes(text) || (colon !== undefined && c.start > colon)) return true;
    if (!measured) return false;
    return text === 'facing' ? measured.kind !== 'light' : subject?.kind === 'path' || measured.kind === 'wheel';
  });
  return wrong.slice(0, 1);
}

/** An equals sign or a comparison instead of the colon, or a block. */
function odd(node: Node, words: string, { sink, setup }: Scope): void {
  const { line } = node;
  const { equals, compare, subject } = line;
  if (line.issue) return;
  if (!equals && !compare) {
    // A brace that is never closed is reported as such.
    if (node.end > node.at) sink.report('block-below-fact', sink.place(node, subject!), words, { phrase: `measured ${words}`, lines: node.children.length }, setup);
    return;
  }
  const span: Span = compare ?? { start: line.text.lastIndexOf('=', equals!.start), end: equals!.end };
  sink.report('reading-unclear', sink.place(node, span), words, { words: line.text.slice(span.start, compare?.value?.end ?? span.end), why: 'what was read stands behind a colon' }, setup);
}
