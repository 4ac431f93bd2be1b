/**
 * What binding has made of a statement is kept with its node, and taken again as long as the node is the same and whatever was looked up outside of it, in
 * inventories, is what it was. A node is the same when its lines are; so an edit binds only the setups and items that it touches.
 */
import type { Node } from '../../grammar/tree.ts';
import { Inventories, type ByName, type Looked } from './inventories.ts';
import type { Problem, Reference, Thing } from './model.ts';
import type { Sink } from './scope.ts';

class Made {
  constructor(readonly made: unknown, readonly uri: string, readonly looked: Looked, public problems: readonly Problem[], readonly references: readonly Reference[], private at: number) {}

  moveTo(at: number): void {
    this.problems = moved(this.problems, at - this.at);
    this.at = at;
  }
}

/** What `make` makes of a setup or an inventory, or has made of it: it must look at nothing but the node and these inventories. */
export function keep<T>(node: Node, sink: Sink, byName: ByName, make: (inventories: Inventories) => T): T {
  const inventories = new Inventories(byName, sink);
  const known = node.memo;
  if (known instanceof Made && known.uri === sink.uri && inventories.holds(known.looked)) {
    known.moveTo(node.at);
    for (const p of known.problems) sink.problems.push(p);
    for (const r of known.references) sink.references.push(r);
    return known.made as T;
  }
  const [problems, references] = [sink.problems.length, sink.references.length];
  const made = make(inventories);
  sink.bound++;
  node.memo = made === undefined ? undefined : new Made(made, sink.uri, inventories.looked, sink.problems.slice(problems), sink.references.slice(references), node.at);
  return made;
}

/** The things of a setup or the items of an inventory while it is bound. */
export class Items extends Map<string, Thing> {
  last: Thing | undefined;
  override set(id: string, thing: Thing): this {
    this.last = thing;
    return super.set(id, thing);
  }
}

class MadeThing {
  constructor(readonly uri: string, readonly thing: Thing, readonly looked: Looked, readonly references: readonly Reference[]) {}
}

/**
 * Binds a thing of a setup or an item of an inventory, or takes it as it was. Kept are those in which nothing is wrong and that name none of their neighbours.
 * False where the statement is neither.
 */
export function keepThing(node: Node, things: Items, sink: Sink, inventories: Inventories, make: () => boolean): boolean {
  const known = node.memo;
  const item = node.line.equals?.kind === 'phrase' ? node.line.equals.words[0]!.text : undefined;
  if (known instanceof MadeThing && known.uri === sink.uri && !things.has(known.thing.id) && !(item !== undefined && things.has(item)) && inventories.holds(known.looked)) {
    known.thing.used = false;
    known.thing.reached = 0;
    things.set(known.thing.id, known.thing);
    for (const r of known.references) sink.references.push(r);
    return true;
  }
  node.memo = undefined;
  const [problems, references, count] = [sink.problems.length, sink.references.length, things.size];
  const { made: is, looked } = inventories.during(make);
  if (things.size === count || sink.problems.length > problems || node.line.issue || (item !== undefined && (!looked.found.has(item) || things.has(item)))) return is;
  // An item that is nothing is said once, or not at all while a file is missing: that depends on more than was looked up.
  if (item !== undefined && !things.last!.item) return is;
  // A block that only its indent gives to this line says more about the lines around it than about the thing.
  if (node.children.length > 0 && !node.line.opens) return is;
  const thing = things.last!;
  if (thing.node === node) node.memo = new MadeThing(sink.uri, thing, looked, sink.references.slice(references));
  return is;
}

/** Problems whose words name a line, some lines further down. Their places move by themselves. */
export function moved(problems: readonly Problem[], by: number): readonly Problem[] {
  return by === 0 || !problems.some(namesLine) ? problems : problems.map(p => (namesLine(p) ? { ...p, data: { ...p.data, line: Number(p.data['line']) + by } } : p));
}
export const namesLine = (p: Problem): boolean => typeof p.data['line'] === 'number';
