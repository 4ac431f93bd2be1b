/**
 * What a change does to the hologram: one typed difference of two evaluated pages, computed once. Command line, editor and pull requests only render it.
 * Both snapshots must have been made with caches of their own, since a snapshot ends with the next one of its cache.
 */
import type { Node } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';
import type { Finding } from '../checks/check.ts';
import { fixed, placeIn } from '../model/place.ts';
import type { Inventory } from '../model/model.ts';
import { differenceOf, goalText, type GoalDifference, type ResultDifference } from '../results/difference.ts';
import type { Results } from '../results/plan.ts';
import { changesOf, type Change } from './changes.ts';
import { findingsBetween, type FindingsChange } from './findings.ts';
import { lineMeaning, meaningOf, nameNow, renamed, SAME_NAMES, type Names } from './meaning.ts';
import { shiftOf, type Shift } from './moves.ts';
import { ALIKE, alike, renamesOf } from './renames.ts';
import { saidIn, saidInInventory, type Said } from './statements.ts';
import { isSure } from './sure.ts';

export interface ResultChange extends ResultDifference {
  /** false: it may as well be as it was, so unsure are both. Found out when it is asked for. */
  readonly sure: boolean;
}

/** A setup on both pages, or on one of them only. */
export interface SetupReview {
  /** as it is called now, or was when it is gone */
  readonly name: string;
  /** as it was called before, where that is another name */
  readonly formerly?: string;
  readonly before: Results | undefined;
  readonly after: Results | undefined;
  /** what things and beams of before are called now */
  readonly names: Names;
  readonly changes: readonly Change[];
  /** things that stand elsewhere although nothing was written about them: they follow others */
  readonly along: readonly Shift[];
  readonly results: readonly ResultChange[];
  /** how many results are the same */
  readonly same: number;
  readonly goals: readonly GoalDifference[];
  readonly findings: FindingsChange;
}

export interface InventoryReview {
  readonly name: string;
  readonly changes: readonly Change[];
}

export interface Review {
  readonly setups: readonly SetupReview[];
  readonly inventories: readonly InventoryReview[];
  /** what stands beside setups and inventories */
  readonly rest: { readonly changes: readonly Change[]; readonly findings: FindingsChange };
}

/** `before` or `after` is undefined where there was no such page. */
export function reviewOf(before: Snapshot | undefined, after: Snapshot | undefined): Review {
  const setups = pairsOf((before?.results ?? []).map(sideOf(before)), (after?.results ?? []).map(sideOf(after))).map(([a, b]) => setupReview(a, b, before, after));
  const inventories = pairsOf(inventoriesOf(before), inventoriesOf(after)).map(([a, b]): InventoryReview => {
    const names = a && b ? renamesOf(a.said, b.said) : SAME_NAMES;
    return { name: (b ?? a)!.name, changes: [...wholeChange('inventory', a, b), ...(a && b ? changesOf(a.said, b.said, names) : [])] };
  });
  const outside = (s: Snapshot | undefined): readonly Finding[] => s?.findings.filter(f => f.setup === undefined || !s.results.some(r => r.setup.name === f.setup)) ?? [];
  return { setups, inventories, rest: { changes: restChanges(before, after), findings: findingsBetween(outside(before), outside(after)) } };
}

/** One setup of a page, by its name now or before, and nothing else. */
export function onlySetup({ setups }: Review, setup: string): Review {
  const none = { cured: [], added: [], accepted: [], still: [] };
  return { setups: setups.filter(s => s.name === setup || s.formerly === setup), inventories: [], rest: { changes: [], findings: none } };
}

/** True where nothing differs that anybody could see. */
export const isSame = ({ setups, inventories, rest }: Review): boolean =>
  rest.changes.length === 0 && moves(rest.findings) === 0 && inventories.every(i => i.changes.length === 0) && setups.every(isUnchanged);
export const isUnchanged = (s: SetupReview): boolean => s.changes.length + s.results.length + s.goals.length + s.along.length + moves(s.findings) === 0;
const moves = (f: FindingsChange): number => f.cured.length + f.added.length + f.accepted.length;

interface Side { readonly name: string; readonly said: Said; readonly node: Node; readonly uri: string; readonly results?: Results }

// A page of a history is first the newer one and then the older one.
const known = new WeakMap<Results, Side>();

const sideOf = (s: Snapshot | undefined) => (results: Results): Side => {
  const { setup } = results;
  const found = known.get(results);
  if (found) return found;
  const variant = setup.variant === undefined ? undefined : s!.model.setups.find(x => x.name === setup.name)?.variants.find(v => v.name === setup.variant);
  const side = { name: setup.name, said: saidIn(setup, variant), node: setup.node, uri: setup.uri, results };
  known.set(results, side);
  return side;
};

const inventoriesOf = (s: Snapshot | undefined): Side[] => (s?.model.inventories ?? []).flatMap((inventory: Inventory) => {
  const node = s!.tree.nodes.find(n => n.at === inventory.at.line);
  return node ? [{ name: inventory.name, said: saidInInventory(inventory, node), node, uri: inventory.at.uri }] : [];
});

/** Those of one name, then those that say mostly the same; in the order of the newer page, what is gone behind it. */
function pairsOf(before: readonly Side[], after: readonly Side[]): [Side | undefined, Side | undefined][] {
  const left = [...before];
  const take = (which: (s: Side) => boolean): Side | undefined => { const i = left.findIndex(which); return i < 0 ? undefined : left.splice(i, 1)[0]; };
  const partner = new Map(after.map(b => [b, take(a => a.name === b.name)] as const));
  for (const b of after) if (!partner.get(b)) partner.set(b, take(a => alike(signsOf(a.said), signsOf(b.said)) >= ALIKE));
  return [...after.map((b): [Side | undefined, Side] => [partner.get(b), b]), ...left.map((a): [Side, undefined] => [a, undefined])];
}
const signsOf = ({ statements }: Said): string[] => statements.map(s => `${s.key(SAME_NAMES)} is ${s.meaning(SAME_NAMES)}`);

function wholeChange(what: 'setup' | 'inventory', a: Side | undefined, b: Side | undefined): Change[] {
  const words = ({ name, node, uri }: Side) => ({ text: name, at: fixed(placeIn(uri, node, node.line.subject ?? node.line.head!)) });
  if (a && b) return a.name === b.name ? [] : [{ kind: 'renamed', what, name: b.name, before: words(a), after: words(b) }];
  return b ? [{ kind: 'added', what, name: b.name, after: words(b) }] : [{ kind: 'removed', what, name: a!.name, before: words(a!) }];
}

/** Held against a variant, a setup is what is left without its variants. */
const bare = (side: Side): Side => ({ ...side, said: { statements: side.said.statements.filter(s => s.what !== 'variant' && !s.owner.startsWith('variant ')), parts: side.said.parts.filter(p => p.what !== 'variant') } });

function setupReview(old: Side | undefined, now: Side | undefined, before: Snapshot | undefined, after: Snapshot | undefined): SetupReview {
  const trial = [old, now].some(s => s?.results?.setup.variant !== undefined);
  const [a, b] = [old, now].map(s => (s && trial ? bare(s) : s)) as [Side | undefined, Side | undefined];
  return reviewed(a, b, before, after);
}

function reviewed(a: Side | undefined, b: Side | undefined, before: Snapshot | undefined, after: Snapshot | undefined): SetupReview {
  const names = a && b ? renamesOf(a.said, b.said) : SAME_NAMES;
  const own = (s: Snapshot | undefined, side: Side | undefined): readonly Finding[] => (side ? s!.findings.filter(f => f.setup === side.name) : []);
  const base = {
    name: (b ?? a)!.name, ...(a && b && a.name !== b.name ? { formerly: a.name } : {}), before: a?.results, after: b?.results, names,
    findings: findingsBetween(own(before, a), own(after, b), names),
  };
  const [old, now] = [a?.results, b?.results];
  if (!a || !b || !old || !now) return { ...base, changes: wholeChange('setup', a, b), along: [], results: [], same: 0, goals: [] };
  const results = new Set(now.published.map(c => c.name));
  const goals = new Map(now.goals.map(g => [lineMeaning(g.goal.node.line, SAME_NAMES), goalText(g)]));
  const difference = differenceOf(old, now, {
    result: name => nameNow(name, names, n => results.has(n)),
    goal: g => goals.get(lineMeaning(g.goal.node.line, names)) ?? goals.get(lineMeaning(g.goal.node.line, SAME_NAMES)) ?? goalText(g),
  });
  const changes = changesOf(a.said, b.said, names);
  const moved = shiftsOf(old, now, names);
  return {
    ...base, goals: difference.goals, same: now.published.length - difference.results.filter(r => r.after).length,
    changes: [...wholeChange('setup', a, b), ...changes.map(c => { const shift = c.what === 'place' ? moved.get(c.name) : undefined; return shift ? { ...c, by: shift.by } : c; })],
    along: [...moved.values()].filter(m => !changes.some(c => c.what === 'place' && c.name === m.thing)),
    results: difference.results.map(r => resultChange(r, old, now, names)),
  };
}

function shiftsOf(old: Results, now: Results, names: Names): Map<string, Shift> {
  const moved = new Map<string, Shift>();
  for (const thing of old.setup.things.values()) {
    const other = now.setup.things.get(renamed(thing.id, names));
    const shift = other && shiftOf(thing, old, other, now);
    if (shift) moved.set(shift.thing, shift);
  }
  return moved;
}

function resultChange(r: ResultDifference, old: Results, now: Results, names: Names): ResultChange {
  let sure: boolean | undefined;
  return { ...r, get sure() { return sure ??= !r.before || !r.after || isSure({ graph: old.graph, cell: r.before }, { graph: now.graph, cell: r.after }, names); } };
}

/** `use` lines, and what stands outside of setups and inventories. */
function restChanges(before: Snapshot | undefined, after: Snapshot | undefined): Change[] {
  const lines = (s: Snapshot | undefined): Map<string, { node: Node; uri: string }> =>
    new Map(s?.tree.nodes.filter(n => n.line.kind !== 'comment' && n.line.text.trim() !== '' && !['setup', 'inventory'].includes(n.line.head?.text ?? '')).map(node => [lineMeaning(node.line, SAME_NAMES), { node, uri: s.uri }]));
  const [old, now] = [lines(before), lines(after)];
  const words = ({ node, uri }: { node: Node; uri: string }) => ({ text: node.line.text.slice(0, node.line.comment?.start).trim(), at: fixed(placeIn(uri, node, node.line.head ?? { start: 0, end: 1 })) });
  const row = (kind: 'added' | 'removed', x: { node: Node; uri: string }): Change => {
    const { subject, head } = x.node.line;
    return { kind, what: head?.text === 'use' ? 'use' : 'line', name: head?.text === 'use' && subject ? meaningOf(subject) : '', ...(kind === 'added' ? { after: words(x) } : { before: words(x) }) };
  };
  return [...[...old].filter(([key]) => !now.has(key)).map(([, x]) => row('removed', x)), ...[...now].filter(([key]) => !old.has(key)).map(([, x]) => row('added', x))];
}
