/** Comma-separated values (RFC 4180). */
import type { Unit } from '../model/units.ts';

/** Rows of texts, the head first. */
export const csv = (rows: readonly (readonly string[])[]): string => rows.map(r => `${r.map(quoted).join(',')}\r\n`).join('');

/** `beam ratio low`, `P1.reference.length (mm)`: the head of a column of numbers. */
export const titled = ({ name, unit }: { readonly name: string; readonly unit: Unit | undefined }, end = ''): string => `${name}${end === '' ? '' : ` ${end}`}${unit ? ` (${unit.text})` : ''}`;

/** A number in a unit, in at most ten digits; nothing where there is none. */
export const numberIn = (si: number | undefined, unit: Unit | undefined): string => (si === undefined ? '' : String(inUnit(si, unit)));
export const inUnit = (si: number, unit: Unit | undefined): number => Number(((si - (unit?.offset ?? 0)) / (unit?.factor ?? 1)).toPrecision(10)) + 0;

/** A program that opens the file must not take a text for a formula. */
const quoted = (s: string): string => { const safe = /^[=+@\t]|^-(?!\d)/.test(s) ? `'${s}` : s; return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe; };
