/** JSON of any shape, near to what is expected; and what JSON has no words for. */
import fc, { type Arbitrary } from 'fast-check';
import type { Random } from './random.ts';

/** What another side can send although JSON cannot write it, as it stands in an input. */
const NAMED: Readonly<Record<string, () => unknown>> = {
  $undefined: () => undefined, $NaN: () => NaN, $Infinity: () => Infinity, $bigint: () => 10n ** 30n, $date: () => new Date(0), $map: () => new Map([['kind', 'ready']]), $bytes: () => new Uint8Array(3), $sparse: () => Array<unknown>(3), $bare: () => Object.create(null) as unknown,
  $ring: () => { const ring: Record<string, unknown> = { kind: 'picture' }; ring['children'] = [ring]; ring['sheet'] = ring; return ring; },
  $deep: () => Array.from({ length: 3000 }).reduce<unknown>(made => ({ tag: 'g', attributes: {}, children: [made] }), null),
};
/** The value of an input; undefined where it is no JSON. */
export function revived(input: string): unknown {
  const walk = (v: unknown): unknown => {
    if (typeof v === 'string') return Object.hasOwn(NAMED, v) ? NAMED[v]!() : v;
    if (Array.isArray(v)) return v.map(walk);
    return typeof v === 'object' && v !== null ? Object.fromEntries(Object.entries(v).map(([k, of]) => [k, walk(of)])) : v;
  };
  try {
    return walk(JSON.parse(input));
  } catch {
    return undefined;
  }
}

const ODD: readonly unknown[] = [null, true, false, 0, -1, 1.5, 1e9, 4294967296, 9007199254740993, -1e308, '', 'x', 'P1', '🐚', '__proto__', [], {}, [null], [[]], { uri: 7 }, { line: -1, character: 1e9 }, { line: 0.5, character: null }, 'file:///saltmarsh/whelk.plate', '%zz:%', 'file:///%00', ...Object.keys(NAMED)];
/** Any JSON. */
export const anyJson: Arbitrary<string> = fc.oneof({ weight: 3, arbitrary: fc.json({ maxDepth: 3 }) }, fc.constantFrom(...ODD).map(v => JSON.stringify(v)));

type Path = readonly (string | number)[];
/** Every place in a value, from the outside inwards. */
export function placesIn(v: unknown, way: Path = []): { readonly way: Path; readonly value: unknown }[] {
  const inner = typeof v === 'object' && v !== null ? Object.entries(v).flatMap(([k, of]) => placesIn(of, [...way, Array.isArray(v) ? Number(k) : k])) : [];
  return [{ way, value: v }, ...inner];
}
/** A copy with another value at a place; without it where that is `undefined`. */
export function withAt(v: unknown, [first, ...rest]: Path, by: unknown): unknown {
  if (first === undefined) return by;
  const made = (Array.isArray(v) ? [...v as unknown[]] : { ...v as object }) as Record<string | number, unknown>;
  made[first] = withAt(made[first], rest, by);
  if (made[first] === undefined && !Array.isArray(made)) Reflect.deleteProperty(made, first);
  return made;
}
/** Changes some places of a value into what does not belong there. */
export function spoiled(v: unknown, random: Random, times = 1 + random.below(3)): unknown {
  if (times === 0) return v;
  const { way } = random.of(placesIn(v));
  return spoiled(withAt(v, way, random.below(4) === 0 ? undefined : random.of(ODD)), random, times - 1);
}
