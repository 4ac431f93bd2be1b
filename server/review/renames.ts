/** What is called otherwise than before: a name that is gone and one that is new, of the same kind, of which the same is said. */
import type { Names } from './meaning.ts';
import type { Part, Said, Statement } from './statements.ts';

/** At least this share of what is said of the one is said of the other, where both are one thing. */
export const ALIKE = 0.5;
/** Names that lean on each other, such as a thing and the beam that starts at it, are found one behind the other. */
const ROUNDS = 2;
/** Itself, whatever it is called. */
const SELF = '•';

/** What each name of `before` that was given up is called in `after`. Of variants the key is `variant NAME`. */
export function renamesOf(before: Said, after: Said): Map<string, string> {
  const idOf = (p: Part): string => (p.what === 'variant' ? `variant ${p.id}` : p.id);
  const have = (s: Said): Set<string> => new Set(s.parts.map(p => `${p.what} ${p.id}`));
  const [old, now] = [have(before), have(after)];
  const gone = before.parts.filter(p => !now.has(`${p.what} ${p.id}`));
  const come = after.parts.filter(p => !old.has(`${p.what} ${p.id}`));
  let names = new Map<string, string>();
  if (gone.length === 0 || come.length === 0) return names;
  for (let round = 0; round < ROUNDS; round++) {
    const signs = { gone: gone.map(p => signsOf(p, before, names)), come: come.map(p => signsOf(p, after, new Map())) };
    const pairs = gone.flatMap((a, i) => come.map((b, k) => ({ a, b, i, k, alike: a.what === b.what && a.kind === b.kind ? alike(signs.gone[i]!, signs.come[k]!) : 0 })))
      .filter(p => p.alike >= ALIKE).sort((p, q) => q.alike - p.alike || p.i - q.i || p.k - q.k);
    names = new Map();
    const taken = new Set<Part>();
    for (const { a, b } of pairs) {
      if (taken.has(a) || taken.has(b)) continue;
      taken.add(a).add(b);
      names.set(idOf(a), a.what === 'variant' ? b.id : idOf(b));
    }
  }
  return names;
}

/** What is said of it, and what else names it. */
function signsOf(part: Part, { statements }: Said, names: Names): string[] {
  const own = new Set(part.statements);
  const self = new Map([...names, [part.what === 'variant' ? `variant ${part.id}` : part.id, SELF]]);
  const signs = part.statements.map(s => signOf(s, self));
  if (part.what === 'variant') return signs;
  for (const s of statements) {
    if (own.has(s) || s.owner === part.id) continue;
    const sign = signOf(s, self);
    if (sign.includes(SELF)) signs.push(...neighbours(sign));
  }
  return signs;
}
const signOf = (s: Statement, names: Names): string => `${s.key(names)} is ${s.meaning(names)}`;

/** Of a way of light only what comes right before it and right behind it. */
const neighbours = (sign: string): string[] => {
  const stops = sign.split(' -> ');
  if (stops.length < 2) return [sign];
  return stops.flatMap((stop, i) => (stop.includes(SELF) ? [`${stops[i - 1] ?? ''} ->`, `-> ${stops[i + 1] ?? ''}`] : []));
};

export function alike(a: readonly string[], b: readonly string[]): number {
  if (a.length === 0 && b.length === 0) return 1;
  const left = new Map<string, number>();
  for (const s of b) left.set(s, (left.get(s) ?? 0) + 1);
  let both = 0;
  for (const s of a) {
    const n = left.get(s) ?? 0;
    if (n > 0) { both++; left.set(s, n - 1); }
  }
  return both / Math.max(a.length, b.length);
}
