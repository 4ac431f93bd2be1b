/** `expect`, `aim` and `accept`: names of results with their present values, limits in units that fit, codes of findings. */
import { CHECKS } from '../../checks/registry.ts';
import { factIndex, SETUP_FACTS } from '../../model/things/index.ts';
import { isRatio } from '../../model/show.ts';
import { NUMBER } from '../../model/units.ts';
import { LATER, USUAL } from '../../results/goals.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { Cursor, Token } from './cursor.ts';
import { template, type Offer } from './item.ts';
import { letOffers, numberOffers, unitsOf } from './numbers.ts';
import { distinct, phrases, word } from './phrases.ts';

/** Behind `expect` or `aim`. */
export function goalOffers(c: Cursor, r: Results): Offer[] {
  const { tokens } = c;
  const aim = tokens[0]!.text === 'aim';
  const mark = tokens.findIndex(t => t.type === 'compare' || t.type === 'colon' || t.type === 'clause');
  if (mark < 0) {
    const name = c.text.slice(tokens[0]!.end, c.start).trim().replace(/\s+/g, ' ');
    const known = name !== '' && (r.aliases.has(name) || r.graph.find(name) !== undefined || USUAL.includes(name) || LATER.includes(name));
    return [...phrases(c, tokens[0]!.end, resultOffers(r)), ...(known && c.typed === '' && c.rest === '' ? (aim ? AIM : LIMITS) : [])];
  }
  const name = c.text.slice(tokens[0]!.end, tokens[mark]!.start).trim().replace(/\s+/g, ' ');
  const clause = tokens.findLastIndex(t => t.type === 'clause' && t.text !== 'std');
  const from = clause >= 0 ? clause : mark;
  const limit = limitOffers(c, name, r, tokens[from]!, tokens.slice(from + 1));
  return tokens[from]!.text === 'from' && from < tokens.length - 1 ? [...limit, word('to', 'the upper limit', { text: 'to ' })] : limit;
}

const LIMITS: readonly Offer[] = [
  word('<', 'below', { text: '< ' }), word('>', 'above', { text: '> ' }), word('<=', 'at most', { text: '<= ' }), word('>=', 'at least', { text: '>= ' }), word('from', 'between two limits, from … to …', { text: 'from ' }),
];
const AIM: readonly Offer[] = [word(':', 'what to solve for', { text: ': ' })];

function cellOf(name: string, r: Results): Cell | undefined {
  return r.graph.find(name) ?? r.aliases.get(name)?.[0];
}

function limitOffers(c: Cursor, name: string, r: Results, mark: Token, tokens: readonly Token[]): Offer[] {
  const cell = cellOf(name, r);
  const fact = factIndex(SETUP_FACTS).get(name.slice(name.lastIndexOf('.') + 1));
  const usual = (fact?.usual ?? []).filter(() => fact?.type.type !== 'quantity' || fact.type.dim === cell?.dim).map((u): Offer => ({ label: u, kind: 'value', detail: fact!.phrase, text: u }));
  if (!cell) return tokens.length === 0 ? usual : [];
  const share = cell.dim === NUMBER && !isRatio(name);
  return numberOffers(c, mark.end, tokens, { starts: [...usual, ...letOffers(c, [cell.dim])], ...(isRatio(name) ? { units: () => [], spread: [] } : unitsOf({ dim: cell.dim, ...(share ? { sign: 'not negative', usual: ['50%'] } : {}) })), tolerance: false });
}

/** Short names first, the usual ones before all. What a rule has not made yet has no value to show. */
function resultOffers(r: Results): Offer[] {
  const offer = (name: string, cell: Cell | undefined, detail: string): Offer => ({ label: name, kind: 'result', detail, text: name, ...(cell ? { about: { of: 'result', setup: r.setup.node.at, name } } : {}) });
  const one = (name: string): Cell | undefined => { const all = r.aliases.get(name); return all ? (all.length === 1 ? all[0] : undefined) : r.graph.find(name); };
  const usual = USUAL.filter(n => (r.aliases.get(n)?.length ?? 1) === 1).map(n => offer(n, one(n), present(r, one(n))));
  const short = [...r.aliases].filter(([, cells]) => cells.length === 1).map(([n, [cell]]) => offer(n, cell, present(r, cell)));
  const long = r.published.map(cell => offer(cell.name, cell, present(r, cell)));
  return distinct([...usual, ...short, ...long, ...LATER.map(n => offer(n, undefined, 'not computed yet'))]);
}

/** A band is drawn when somebody looks at the item: a list must not wait for it. */
function present(r: Results, cell: Cell | undefined): string {
  if (!cell || cell.missing) return 'not known yet';
  return cell.rule?.curved ? cell.words : showCell(r.graph, cell).text;
}

/** Behind `accept`: findings of this setup first, then all others; a reason; and for what. */
export function acceptOffers(c: Cursor): Offer[] {
  const { tokens, r, snapshot } = c;
  const findings = snapshot.findings.filter(f => f.setup === r?.setup.name && f.severity !== 'error');
  if (tokens.length === 1) {
    const found = findings.filter(f => f.accepted === undefined);
    const raised = new Set([...found.filter(f => f.severity === 'warning'), ...found].map(f => f.code));
    const checks = CHECKS.filter(k => k.severity !== 'error' || 'severityOf' in k);
    const codes = [...[...raised].flatMap(code => checks.find(k => k.code === code) ?? []), ...checks.filter(k => !raised.has(k.code))];
    return codes.map((k): Offer => {
      const { snippet } = template([k.code, ' "', { stop: 'reason' }, '"']);
      return { label: k.code, kind: 'code', detail: `${raised.has(k.code) ? 'found here: ' : ''}${k.title}`, text: c.rest === '' ? `${k.code} ` : k.code, ...(c.rest === '' ? { snippet } : {}), about: { of: 'check', code: k.code } };
    });
  }
  const code = tokens[1]!.text;
  const last = tokens[tokens.length - 1]!;
  if (last.type === 'clause') return last.text === 'for' ? distinct(findings.filter(f => f.code === code).map(f => word(f.subject, 'what it is about', { kind: 'result' }))) : [];
  if (tokens.length === 2) return c.typed === '' && c.rest === '' ? [{ label: '"reason"', kind: 'value', detail: 'why it is accepted', ...template(['"', { stop: 'reason' }, '"']), stopsOnly: true }] : [];
  return last.type === 'string' && c.rest === '' ? [word('for', 'only where it concerns one thing', { text: 'for ' })] : [];
}
