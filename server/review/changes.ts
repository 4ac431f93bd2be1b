/** What was changed on the page: statements of two setups side by side. */
import { fixed } from '../model/place.ts';
import { SAME_NAMES, type Names } from './meaning.ts';
import type { Said, Statement, What } from './statements.ts';

/** What one side says, as its author wrote it, and where. */
export interface Words {
  readonly text: string;
  readonly at: { readonly uri: string; readonly line: number; readonly start: number; readonly end: number };
}

export interface Change {
  /** `moved` and `turned`: of a thing; `led`: a beam takes another way; `set`: a value is another one */
  readonly kind: 'added' | 'removed' | 'renamed' | 'moved' | 'turned' | 'led' | 'set';
  readonly what: What | 'setup' | 'inventory';
  /** what it is about, as it is called now, or was when it is gone: `P1.sensitivity`, `object: S1 → M1` */
  readonly name: string;
  readonly before?: Words;
  readonly after?: Words;
  /** how far a thing was moved, in metres: in the plan to the right, away, and up */
  readonly by?: readonly [number, number, number];
}

const KINDS: Partial<Record<What, Change['kind']>> = { place: 'moved', direction: 'turned', path: 'led' };
/** What is said of a thing that is new or gone goes with it. */
const PARTS: readonly What[] = ['thing', 'beam', 'shot', 'process', 'variant'];

export function changesOf(before: Said, after: Said, names: Names): Change[] {
  const rows: Change[] = [];
  const back = new Map([...names].map(([old, now]) => [now, old]));
  for (const p of before.parts) {
    const now = names.get(p.what === 'variant' ? `variant ${p.id}` : p.id);
    if (now === undefined) continue;
    const [a, b] = [headOf(before, p.what, p.id), headOf(after, p.what, now)];
    rows.push({ kind: 'renamed', what: p.what, name: now, ...(a ? { before: { text: p.id, at: fixed(a.at) } } : {}), ...(b ? { after: { text: now, at: fixed(b.at) } } : {}) });
  }
  const gone = new Set<string>();
  const come = new Set<string>();
  const pairs = paired(before.statements, after.statements, names);
  for (const [a, b] of pairs) if (PARTS.includes((a ?? b!).what) && !(a && b)) (a ? gone : come).add((a ?? b!).owner || (a ?? b!).name(SAME_NAMES));
  for (const [a, b] of pairs) {
    if (a && b) {
      if (a.meaning(names) === b.meaning(SAME_NAMES) || a.meaning(SAME_NAMES) === b.meaning(SAME_NAMES)) continue;
      const kinds = a.what === 'thing';
      rows.push({ kind: KINDS[b.what] ?? 'set', what: b.what, name: b.name(SAME_NAMES), before: wordsOf(a, kinds), after: wordsOf(b, kinds) });
      continue;
    }
    const one = (a ?? b)!;
    const whole = PARTS.includes(one.what);
    if (!whole && (a ? gone : come).has(one.owner)) continue;
    // Where the inventory is not to be had on the other side, that is one finding.
    if (one.inherited === true && unread(one.owner, a ? after : before, a ? names : back)) continue;
    const words = { ...wordsOf(one), ...(whole ? { text: textOf(one, a ? before : after) } : {}) };
    rows.push({ kind: a ? 'removed' : 'added', what: one.what, name: one.name(SAME_NAMES), ...(a ? { before: words } : { after: words }) });
  }
  return rows;
}

/** The thing is an item of an inventory, and nothing is known of that. */
const unread = (owner: string, { statements }: Said, names: Names): boolean => {
  const there = names.get(owner) ?? owner;
  return statements.some(s => s.what === 'item' && s.owner === there) && !statements.some(s => s.inherited === true && s.owner === there);
};
const headOf = (s: Said, what: What, id: string): Statement | undefined => s.statements.find(x => x.what === what && x.key(SAME_NAMES) === `${what} ${id}`);
const wordsOf = (s: Statement, kinds = false): Words => ({ text: kinds ? s.meaning(SAME_NAMES) : s.text, at: fixed(s.at) });

/** Of a thing where it stands, of a beam its way. */
const textOf = (one: Statement, { statements }: Said): string =>
  statements.filter(s => s.owner === one.owner && s !== one && ['item', 'place', 'direction', 'path'].includes(s.what)).map(s => (s.what === 'item' ? `= ${s.text}` : s.text)).join(' ');

/** Statements of the same side by side, of several the first with the first; in the order of the newer page, with what is gone where it stood. */
function paired(before: readonly Statement[], after: readonly Statement[], names: Names): [Statement | undefined, Statement | undefined][] {
  const waiting = new Map<string, Statement[]>();
  for (const b of after) {
    const key = b.key(SAME_NAMES);
    const list = waiting.get(key);
    if (list) list.push(b);
    else waiting.set(key, [b]);
  }
  const partner = new Map<Statement, Statement>();
  const lost: { readonly a: Statement; readonly behind: Statement | undefined }[] = [];
  let last: Statement | undefined;
  for (const a of before) {
    const b = waiting.get(a.key(names))?.shift() ?? waiting.get(a.key(SAME_NAMES))?.shift();
    if (b) partner.set(b, a);
    else lost.push({ a, behind: last });
    last = b ?? last;
  }
  const rows: [Statement | undefined, Statement | undefined][] = lost.filter(l => !l.behind).map(l => [l.a, undefined]);
  for (const b of after) {
    rows.push([partner.get(b), b]);
    for (const l of lost) if (l.behind === b) rows.push([l.a, undefined]);
  }
  return rows;
}
