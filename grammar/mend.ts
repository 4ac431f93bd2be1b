/**
 * Where braces do not pair, the indents tell how they were meant: so that one brace too few or too many is one finding at
 * its place, and every other line keeps its meaning. Where all braces pair, indents have no meaning at all.
 */
import type { LineTree, NestingIssue } from './tree.ts';

/** What is to be read otherwise than it is written; lines are counted from zero. */
export interface Mend {
  /** how many blocks end before a line, without a brace */
  readonly closes: ReadonlyMap<number, number>;
  /** lines that open a block without a brace */
  readonly opens: ReadonlySet<number>;
  /** lines that open a block with a brace, and should not: legs, and beams with legs below them */
  readonly shut: ReadonlySet<number>;
  /** braces that close nothing, with the lines of a block whose first line is lost */
  readonly ignored: ReadonlySet<number>;
  readonly issues: readonly NestingIssue[];
}

export function mendByIndents(lines: readonly LineTree[]): Mend {
  const closes = new Map<number, number>();
  const opens = new Set<number>();
  const shut = new Set<number>();
  const ignored = new Set<number>();
  const issues: NestingIssue[] = [];
  const open: { at: number; indent: number; brace: boolean }[] = [];
  let previous: { at: number; indent: number } | undefined;
  // Of lines that count; counted once, since a line is looked at by every block that might reach it.
  const indents = lines.map(l => (l.kind === 'blank' || l.kind === 'comment' || l.kind === 'doc' ? Infinity : indentOf(l.text)));

  const close = (at: number, from: number): void => {
    for (let top = open[open.length - 1]; top && top.indent >= from; top = open[open.length - 1]) {
      open.pop();
      closes.set(at, (closes.get(at) ?? 0) + 1);
      if (top.brace) issues.push({ code: 'brace-not-closed', at: top.at });
    }
  };
  lines.forEach((line, at) => {
    if (line.kind === 'blank' || line.kind === 'comment' || line.kind === 'doc' || line.kind === 'leg') {
      // A leg with a brace has a finding of its own.
      if (line.opens) shut.add(at);
      return;
    }
    const indent = indents[at]!;
    if (line.kind === 'close') {
      close(at, indent + 1);
      previous = undefined;
      const top = open[open.length - 1];
      if (top?.indent === indent) open.pop();
      else {
        // Deeper lines above a brace that closes nothing are what is left of its block. Legs are those of a beam.
        const lost = runAbove(indents, at, indent);
        for (const k of lost.length > 0 && lines[lost[lost.length - 1]!]!.kind !== 'leg' ? [at, ...lost] : [at]) {
          ignored.add(k);
          closes.delete(k);
          opens.delete(k);
          shut.delete(k);
        }
      }
      if (!top?.brace || top.indent !== indent) issues.push({ code: 'brace-not-opened', at });
      return;
    }
    close(at, indent);
    if (previous && indent > previous.indent && mayOpen(lines[previous.at]!) && closesAt(lines, indents, at, previous.indent)) {
      opens.add(previous.at);
      open.push({ ...previous, brace: false });
    }
    if (line.opens && lines[at + 1]?.kind === 'leg' && !closesAt(lines, indents, at + 1, indent)) {
      shut.add(at);
      issues.push({ code: 'brace-not-closed', at });
      previous = undefined;
      return;
    }
    previous = line.opens ? undefined : { at, indent };
    if (line.opens) open.push({ at, indent, brace: true });
  });
  close(lines.length, 0);
  return { closes, opens, shut, ignored, issues };
}

/** The lines above one that are indented deeper than it, the nearest first; without those that do not count. */
function runAbove(indents: readonly number[], from: number, indent: number): number[] {
  const run: number[] = [];
  for (let at = from - 1; at >= 0 && indents[at]! > indent; at--) if (indents[at] !== Infinity) run.push(at);
  return run;
}

/** Statements that never have a block. */
const WITHOUT: readonly string[] = ['beam', 'let', 'expect', 'aim', 'accept', 'measured', 'use'];
const mayOpen = (line: LineTree): boolean => line.colon === undefined && line.compare === undefined && !WITHOUT.includes(line.head?.text ?? '');

/** True where the lines that are indented deeper end in a brace at that indent. */
function closesAt(lines: readonly LineTree[], indents: readonly number[], from: number, indent: number): boolean {
  for (let at = from; at < lines.length; at++) {
    if (indents[at]! > indent) continue;
    return lines[at]!.kind === 'close' && indents[at] === indent;
  }
  return false;
}

function indentOf(text: string): number {
  let columns = 0;
  for (const c of text) {
    if (c === '\t') columns += 4 - (columns % 4);
    else if (c.trim() === '') columns++;
    else break;
  }
  return columns;
}
