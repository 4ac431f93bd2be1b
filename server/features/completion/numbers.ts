/** What goes on behind and within a number: units that fit, `±`, what is named by `let`. */
import { dimName, NUMBER, parseUnit, TEMPERATURE, unitsFor, type Dim } from '../../model/units.ts';
import type { Sign, Within } from '../../model/things/kind.ts';
import type { Cursor, Token } from './cursor.ts';
import type { Offer } from './item.ts';
import { phrases, word } from './phrases.ts';

/** What a place takes for a number. */
export interface Numbers {
  /** with what a value begins */
  readonly starts: readonly Offer[];
  /** what may follow a whole value */
  readonly tail?: readonly Offer[];
  /** units of the value, the likeliest first; `value` is what stands before them */
  readonly units: (value: number | undefined) => readonly string[];
  /** units behind `±`, besides that of the value */
  readonly spread: readonly string[];
  /** how much either way, as it is often written behind that sign */
  readonly give?: (sign: '±' | '×÷') => readonly string[];
  /** a value says how sure it is */
  readonly tolerance: boolean;
  /** a number without a unit is a value: so it is where no unit but a share fits */
  readonly bare?: boolean;
  /** how many numbers belong together: `40 x 60 mm` */
  readonly parts?: readonly number[];
  /** each value is a place in brackets */
  readonly places?: boolean;
}

const GIVE: readonly Offer[] = [
  word('±', 'give or take', { text: '± ', words: 'Surely within so much of the value: `752 mm ± 2 mm`. A share of it is written `± 5%`.' }),
  word('×÷', 'a factor either way', { text: '×÷ ', words: 'So many times more or less: `30% ×÷ 3` is 10 % to 90 %.' }),
];
const STD = word('std', 'a standard uncertainty', { words: '`± 2 mm std` gives the standard uncertainty; without it the value lies surely within.' });
const SIZES = word('x', 'and the next size', { text: 'x ' });

/** `from`: where the value begins in the line; `tokens`: what stands of it before the word at the cursor. */
export function numberOffers(c: Cursor, from: number, tokens: readonly Token[], n: Numbers): Offer[] {
  const last = tokens[tokens.length - 1];
  if (!last) return [...n.starts];
  const depth = tokens.reduce((d, t) => d + (t.type === 'lparen' ? 1 : t.type === 'rparen' ? -1 : 0), 0);
  const lets = n.starts.filter(o => o.kind === 'let');
  if (depth > 0) return n.places || last.type === 'number' || last.type === 'unit' ? [] : lets;
  const sign = tokens.findLast(t => t.type === 'tolerance');
  const tail = n.tail ?? [];
  const sure = n.tolerance && !sign ? GIVE : [];
  const plus = sign !== undefined && signOf(sign) === '±';
  switch (last.type) {
    case 'number': case 'rparen': {
      // Nothing but a unit can touch a number.
      const apart = last.end < c.start || c.typed === '';
      const count = tokens.filter(t => t.type === 'by').length + 1;
      const bare = n.bare ?? n.units(undefined).every(u => parseUnit(u)?.dim === NUMBER);
      const next = n.parts && !sign && !n.parts.includes(count) ? [SIZES] : [];
      const whole = next.length === 0;
      const units = !whole || (n.places && last.type === 'number') || /^x\d/.test(c.typed) ? [] : sign ? (plus ? spreadUnits(tokens, n) : []) : n.units(last.type === 'number' ? Number(last.text) : undefined);
      return [...units.map(unitOffer), ...(apart ? [...next, ...(whole ? [...sure, ...(bare ? tail : [])] : [])] : [])];
    }
    case 'unit': return [...sure, ...(n.tolerance && plus ? [STD] : []), ...tail];
    case 'clause': case 'ratio': case 'date': case 'string': return [...tail];
    case 'word': return [...phrases(c, from, n.starts), ...sure, ...tail];
    case 'unknown': return [...tail];
    case 'tolerance': return (n.give?.(signOf(last)) ?? []).map(g => ({ label: g, kind: 'value', detail: 'often', text: g }));
    case 'plus': case 'minus': case 'star': case 'slash': return lets;
    case 'comma': return n.places ? [...n.starts] : [];
    default: return [];
  }
}

const signOf = (t: Token): '±' | '×÷' => (t.text === '±' || t.text === '+/-' ? '±' : '×÷');

const unitOffer = (unit: string): Offer => ({
  label: unit, kind: 'unit', detail: parseUnit(unit)?.points ? 'percentage points' : unit === '%' ? 'a share' : dimName(parseUnit(unit)?.dim ?? NUMBER), text: unit, about: { of: 'unit', unit },
});

/** Behind `±` the unit of the value comes first; on a scale of temperature that is none for a difference. */
function spreadUnits(tokens: readonly Token[], n: Numbers): string[] {
  const own = tokens.findLast(t => t.type === 'unit' && t.start < (tokens.findLast(s => s.type === 'tolerance')?.start ?? 0))?.text;
  const unit = own === undefined ? undefined : parseUnit(own);
  const fits = (u: string): boolean => u === '%' || !unit || parseUnit(u)?.dim === unit.dim;
  return [...new Set([...(unit?.offset === 0 && !unit.percent ? [unit.text] : []), ...n.spread.filter(fits)])];
}

/** What a quantity of one dimension is written in. */
export interface Measure {
  readonly dim: Dim;
  readonly sign?: Sign;
  readonly within?: Within;
  /** values as they are often written */
  readonly usual?: readonly string[];
}

/** The units of a quantity, and those behind its `±`. */
export function unitsOf({ dim, sign, within, usual = [] }: Measure): Pick<Numbers, 'units' | 'spread' | 'give'> {
  const written = usual.flatMap(u => [...u.matchAll(/\d\s*([\p{L}µ°%][^\s±×,)]*)/gu)].map(m => m[1]!)).filter(u => { const p = parseUnit(u); return p?.dim === dim && !p.points; });
  const share = dim === NUMBER && (sign === 'share' || written.includes('%'));
  const all = [...new Set([...written, ...(dim === NUMBER ? (share ? ['%'] : []) : unitsFor(dim))])];
  // A temperature is a place on a scale; a difference of temperatures is not.
  const values = dim === TEMPERATURE ? all.filter(u => parseUnit(u)!.offset !== 0) : all;
  const [low, high] = within ? [within.from, within.to] : sign === 'share' ? [0, 1] : [-Infinity, Infinity];
  const fits = (value: number) => (u: string): boolean => { const { factor, offset } = parseUnit(u)!; const si = value * factor + offset; return si >= low * (1 - 1e-9) && si <= high * (1 + 1e-9); };
  return {
    units: value => { const f = value === undefined ? values : values.filter(fits(value)); return f.length > 0 ? f : values; },
    spread: dim === TEMPERATURE ? all.filter(u => parseUnit(u)!.offset === 0) : share ? ['points', '%'] : [...all, '%'],
    give: sign_ => usual.flatMap(u => u.split(` ${sign_} `)[1] ?? []),
  };
}

/** Values that are named by `let`, of one of some dimensions, or of any. */
export function letOffers(c: Cursor, dims?: readonly Dim[]): Offer[] {
  if (!c.r) return [];
  const { setup, graph } = c.r;
  return [...setup.lets.values()].filter(l => l.at.line !== c.line).flatMap((l): Offer[] => {
    const cell = graph.find(l.name);
    if (dims && (!cell || !dims.includes(cell.dim))) return [];
    return [{ label: l.name, kind: 'let', detail: c.snapshot.tree.lines[l.at.line]!.text.slice(l.exprAt.start, l.exprAt.end), text: l.name, about: { of: 'result', setup: setup.node.at, name: l.name } }];
  });
}
