/** How results that differ are shown: the ones first that one looks for when something was changed. */
import { millimetres, show } from '../../model/show.ts';
import { ANGLE, LENGTH } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';

/** `1 change`, `2 changes` */
export const many = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

/** How much is other outside of setups and inventories. */
export const countOf = ({ changes, findings }: { readonly changes: readonly unknown[]; readonly findings: { readonly cured: readonly unknown[]; readonly added: readonly unknown[] } }): number => changes.length + findings.cured.length + findings.added.length;

/** What one looks for first when something was changed. */
const FIRST = ['mismatch', 'darkest.brightness', 'brightness', 'beam ratio', 'exposure'].map(n => new RegExp(`^(?:(?!near\\.|far\\.)[^.]+\\.)?${n}$`));
/** By short names: the smaller, the sooner it is told. */
export const rank = (label: string): number => (FIRST.findIndex(f => f.test(label)) + FIRST.length + 1) % (FIRST.length + 1);

/** `8 → 0.4 mm` where both are in one unit. */
export function fromTo(before: string, after: string): string {
  const unit = (s: string): string => /[  ]\S+$/u.exec(s)?.[0] ?? '';
  return unit(before) !== '' && unit(before) === unit(after) && ![before, after].some(s => s.includes(' to ')) ? `${before.slice(0, -unit(before).length)} → ${after}` : `${before} → ${after}`;
}

const signed = (text: string): string => (text.startsWith('−') ? text : `+${text}`);
const HUNDREDTH = Math.PI / 18000;

/** `+79 mm` of a way, `−2.3°` of an angle; undefined of what is better told by both values, and of what would read as nothing. */
export function changeBy(cell: Cell, before: number, after: number): string | undefined {
  const by = after - before;
  const text = cell.dim === LENGTH && /(?:length|path|mismatch|difference|offset|walk)$/.test(cell.name) ? millimetres(by) : cell.dim === ANGLE ? show(Math.round(by / HUNDREDTH) * HUNDREDTH, ANGLE) : undefined;
  return text === undefined || /^−?0(?:\.0*)?(?:\D|$)/.test(text) ? undefined : signed(text);
}

const AXES: readonly (readonly [string, string])[] = [['to the right', 'to the left'], ['further away', 'nearer'], ['up', 'down']];
/** `42 mm further away`; `52 mm (30 mm to the left, 42 mm nearer)` */
export function shiftWords(by: readonly [number, number, number]): string {
  const parts = by.flatMap((d, i) => (Math.abs(d) < 5e-5 ? [] : [`${millimetres(Math.abs(d))} ${AXES[i]![d > 0 ? 0 : 1]}`]));
  if (parts.length === 0) return 'by less than 0.1 mm';
  return parts.length === 1 ? parts[0]! : `${millimetres(Math.hypot(...by))} (${parts.join(', ')})`;
}
