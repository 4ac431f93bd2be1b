/** Variants: named changes of a setup. */
import type { Node } from '../../grammar/tree.ts';
import { checkPlacement } from './bind-placement.ts';
import { opensThing } from './bind-things.ts';
import type { Scope } from './scope.ts';

/** A variant's lines begin with the name of a thing: `P1 at (700, 650) mm`, `S1 { … }`, `S1.reflects: 90%`. */
export function checkVariant(node: Node, scope: Scope): void {
  for (const child of node.children) {
    const head = child.line.head;
    if (!head || opensThing(child) || head.text === 'beam') continue;
    const dot = head.text.indexOf('.');
    scope.thing(dot > 0 ? { text: head.text.slice(0, dot), start: head.start, end: head.start + dot } : head, child);
    checkPlacement(child, scope);
  }
}
