/** Legs that stand below something else than a beam. */
import type { Node } from '../../../grammar/tree.ts';
import type { Sink } from '../scope.ts';

/** Legs below what is no beam. */
export function strayLegs(node: Node, sink: Sink, setup?: string): void {
  const leg = node.legs[0];
  if (leg) sink.report('leg-without-beam', sink.place(leg, leg.line.subject ?? { start: 0, end: leg.line.text.length }), leg.line.text.trim().slice(0, 60), {}, setup);
}
