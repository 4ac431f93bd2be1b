/** A review as the protocol has it. */
import { BEFORE } from '../drawing/overlaid/ghosts.ts';
import { overlaidOf } from '../drawing/overlaid/overlaid.ts';
import type { ChangeLine, FindingLine, FindingPage, GoalLine, ResultLine, SetupPage, Where } from '../features/review/page.ts';
import { reviewPage } from '../features/review/page.ts';
import { countWords, headlineWords, NO_CHANGE, titleOf } from '../features/review/text.ts';
import { placeIn } from '../model/place.ts';
import { isSame, type Review, type SetupReview } from '../review/review.ts';
import { rangeOf, type Source } from './convert.ts';
import type { ReviewAnswer, ReviewFindings, ReviewPlace, ReviewRow, ReviewSetup } from './protocol.ts';

/** The document that a place is in, by its address. */
export type Sources = (side: Where['side'], uri: string) => Source;

export function reviewed(review: Review, sources: Sources): Omit<ReviewAnswer, 'version' | 'borrowed'> {
  const page = reviewPage(review);
  const to = (w: Where): ReviewPlace => { const source = sources(w.side, w.uri); return { side: w.side, uri: source.uri, range: rangeOf(source, w) }; };
  const change = ({ words, before, after, by, at }: ChangeLine): ReviewRow => ({ words, ...told({ before, after, by }), ...(at ? { at: to(at) } : {}) });
  const result = ({ label, before, after, by, sure, at }: ResultLine): ReviewRow => ({ words: label, ...told({ before, after, by }), unsure: !sure, at: to(at) });
  const goal = ({ text, before, after, at }: GoalLine): ReviewRow => ({ words: text, before, after, at: to(at) });
  const finding = ({ message, code, severity, at }: FindingLine): ReviewRow => ({ words: message, code, severity, at: to(at) });
  const stillThere = ({ still }: FindingPage): Pick<ReviewFindings, 'amiss' | 'still'> => { const amiss = still.filter(x => x.severity === 'error').map(finding); return { amiss, still: still.length - amiss.length }; };
  const findings = (f: FindingPage): ReviewFindings => ({ cured: f.cured.map(finding), added: f.added.map(finding), accepted: f.accepted.map(finding), ...stillThere(f) });

  const setup = (s: SetupReview, p: SetupPage): ReviewSetup => {
    const side = s.after ? 'after' : 'before';
    const whole = (s.after ?? s.before)!.setup;
    const begins = placeIn(whole.uri, whole.node, whole.node.line.subject ?? whole.node.line.head!);
    const follows = s.along.map(({ thing }, i): ReviewRow => { const at = s.after?.setup.things.get(thing)?.at; return { words: p.along[i]!, ...(at ? { at: to(placed('after', at)) } : {}) }; });
    return {
      name: s.name, title: titleOf(p), headline: headlineWords(p), unchanged: p.unchanged, at: to(placed(side, begins)),
      changes: [...p.changes.map(change), ...follows], results: p.results.map(result), goals: p.goals.map(goal), ...(s.before && s.after ? { same: countWords(p) } : {}), findings: findings(p.findings),
      ...(p.unchanged ? { items: [] } : drawn(s, to)),
    };
  };
  return {
    setups: review.setups.map((s, i) => setup(s, page.setups[i]!)), inventories: page.inventories.map(i => ({ name: i.name, changes: i.changes.map(change) })),
    rest: { changes: page.rest.changes.map(change), findings: findings(page.rest.findings) }, ...(isSame(review) ? { nothing: NO_CHANGE } : {}),
  };
}

const placed = (side: Where['side'], { uri, line, start, end }: Omit<Where, 'side'>): Where => ({ side, uri, line, start, end });
const told = (all: Readonly<Record<'before' | 'after' | 'by', string | undefined>>): Partial<ReviewRow> => Object.fromEntries(Object.entries(all).filter(([, v]) => v !== undefined));

/** A panel beside a page shows the table a third as large as paper does. */
const LETTERS = 1.6;
function drawn(s: SetupReview, to: (w: Where) => ReviewPlace): Pick<ReviewSetup, 'sheet' | 'why' | 'items'> {
  const of = overlaidOf(s, LETTERS);
  if (typeof of === 'string') return { why: of, items: [] };
  const { sheet, items = [] } = of();
  return { sheet, items: items.map(({ id, words, written }) => ({ id, words, at: to(placed(id.startsWith(BEFORE) ? 'before' : 'after', written)) })) };
}
