/**
 * Nesting: pairs braces, attaches legs to their beam and notes to their statement. Works on line trees only, so that it
 * costs a fraction of a microsecond a line and runs afresh on each edit.
 */
import type { LineTree, NestingIssue, Node } from './tree.ts';

export const MAX_DEPTH = 8;

export function nest(lines: readonly LineTree[]): { nodes: Node[]; issues: NestingIssue[] } {
  const nodes: Node[] = [];
  const issues: NestingIssue[] = [];
  const open: Node[] = [];
  let beam: Node | undefined;
  let doc: string[] = [];
  let tooDeep = 0;

  for (let at = 0; at < lines.length; at++) {
    const line = lines[at]!;
    switch (line.kind) {
      case 'blank':
        doc = [];
        continue;
      case 'comment':
        continue;
      case 'doc':
        doc.push(line.text.slice(line.comment!.start + 3).trim());
        continue;
      case 'close':
        beam = undefined;
        doc = [];
        if (tooDeep > 0) tooDeep--;
        else {
          const closed = open.pop();
          if (closed) closed.end = at;
          else issues.push({ code: 'brace-not-opened', at });
        }
        continue;
      case 'leg':
      case 'statement':
      case 'unreadable':
    }
    const parent = open[open.length - 1];
    const node: Node = { line, at, children: [], legs: [], end: at, ...(parent ? { parent } : {}), ...(doc.length > 0 ? { doc: doc.join('\n') } : {}) };
    doc = [];
    if (line.kind === 'leg') {
      if (beam) {
        beam.legs.push(node);
        beam.end = at;
      } else issues.push({ code: 'leg-without-beam', at });
      continue;
    }
    if (line.kind === 'statement' || line.opens) {
      if (tooDeep === 0) (parent ? parent.children : nodes).push(node);
      beam = line.head?.text === 'beam' && line.colon === undefined && !line.opens ? node : undefined;
    } else if (tooDeep === 0) (parent ? parent.children : nodes).push(node);
    if (!line.opens) continue;
    if (open.length >= MAX_DEPTH) {
      if (tooDeep++ === 0) issues.push({ code: 'nested-too-deep', at });
    } else open.push(node);
  }
  for (const node of open) {
    node.end = lines.length - 1;
    issues.push({ code: 'brace-not-closed', at: node.at });
  }
  return { nodes, issues };
}
