/** Whether what binding has made of two texts is the same, so that the same is computed from it. */
import type { Node } from '../../grammar/tree.ts';
import type { Setup, Variant } from '../model/model.ts';

/** Compares two setups without their variants, and then variants of them. Statements are the same where they read the same and stand in the same line of their setup or variant. */
export class SameBound {
  // What is compared already, or in the middle of it: beams and their legs know each other.
  private readonly met = new Map<unknown, unknown>();
  readonly setups: boolean;

  constructor(a: Setup, b: Setup) {
    this.setups = this.same({ ...a, variants: [] }, { ...b, variants: [] });
  }

  /** Its lines must be kept as they are, too: what was said of them stands there. */
  variants(a: Variant, b: Variant): boolean {
    return this.setups && a.node === b.node && this.same(a, b);
  }

  private same(a: unknown, b: unknown): boolean {
    if (a === b) return true;
    if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return typeof a === 'number' && typeof b === 'number' && Number.isNaN(a) && Number.isNaN(b);
    if (this.met.has(a)) return this.met.get(a) === b;
    this.met.set(a, b);
    if (isNode(a) || isNode(b)) return isNode(a) && isNode(b) && sameNode(a, b);
    if (Object.getPrototypeOf(a) !== Object.getPrototypeOf(b)) return false;
    if (a instanceof Map || a instanceof Set) return this.sameLists([...a], [...(b as Map<unknown, unknown> | Set<unknown>)]);
    if (Array.isArray(a)) return this.sameLists(a, b as unknown[]);
    const [x, y] = [a, b] as Record<string, unknown>[] as [Record<string, unknown>, Record<string, unknown>];
    const keys = Object.keys(x);
    return keys.length === Object.keys(y).length && keys.every(k => k in y && this.same(x[k], y[k]));
  }

  private sameLists(a: readonly unknown[], b: readonly unknown[]): boolean {
    return a.length === b.length && a.every((x, i) => this.same(x, b[i]));
  }
}

const isNode = (x: object): x is Node => 'line' in x && 'legs' in x && 'children' in x;
const sameNode = (a: Node, b: Node): boolean => a.line.text === b.line.text && a.doc === b.doc && a.at - ownerOf(a).at === b.at - ownerOf(b).at;

/** The variant that a statement stands in, else its setup. */
function ownerOf(node: Node): Node {
  let at = node;
  while (at.parent && at.line.head?.text !== 'variant') at = at.parent;
  return at;
}
