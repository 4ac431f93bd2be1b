/** What the page is told of an answer of the server: places become numbers. */
import type { ReviewAnswer, ReviewFindings, ReviewPlace, ReviewRow } from '../../server/lsp/protocol.ts';
import type { Findings, Row, Setup, Shown } from './messages.ts';

export function shownOf({ setups, inventories, rest, nothing }: ReviewAnswer): { readonly shown: Pick<Shown, 'setups' | 'inventories' | 'rest' | 'nothing'>; readonly places: readonly ReviewPlace[] } {
  const places: ReviewPlace[] = [];
  const numbered = (p: ReviewPlace): number => places.push(p) - 1;
  const row = ({ at, ...r }: ReviewRow): Row => ({ ...r, ...(at ? { at: numbered(at), gone: at.side === 'before' } : {}) });
  const findings = (f: ReviewFindings): Findings => ({ cured: f.cured.map(row), added: f.added.map(row), accepted: f.accepted.map(row), amiss: f.amiss.map(row), still: f.still });
  return {
    shown: {
      setups: setups.map((s): Setup => ({ ...s, at: numbered(s.at), changes: s.changes.map(row), results: s.results.map(row), goals: s.goals.map(row), findings: findings(s.findings), items: s.items.map(({ id, at }) => ({ id, at: numbered(at) })) })),
      inventories: inventories.map(i => ({ name: i.name, changes: i.changes.map(row) })), rest: { changes: rest.changes.map(row), findings: findings(rest.findings) }, nothing,
    },
    places,
  };
}
