/** Lines of a variant: what it may change, by name. */
import { legStart } from '../../results/legs/legs.ts';
import { show } from '../../model/show.ts';
import { factsOf, SETUP_FACTS } from '../../model/things/index.ts';
import type { Cursor } from './cursor.ts';
import { factOffers } from './facts.ts';
import type { Offer } from './item.ts';
import { thingOffer } from './names.ts';
import { variantStatements } from './statements.ts';
import { kindOffers } from './things.ts';

const MANY = 60;

/** At the start of a line. Behind `S1.` the facts of S1. */
export function variantOffers(c: Cursor): Offer[] {
  const { r } = c;
  if (!r) return [];
  const first = c.tokens[0]?.text ?? c.typed;
  const dot = first.indexOf('.');
  const owner = dot > 0 ? c.things.find(t => t.id === first.slice(0, dot)) : undefined;
  if (dot > 0) return owner ? factOffers(c, factsOf(owner.kind), owner.kind.word, undefined, `${owner.id}.`) : [];
  const gap = c.rest === '' ? ' ' : '';
  const things = c.things.map((t): Offer => ({ ...thingOffer(t, c), text: t.id + gap }));
  // What the setup says of a thing is what a variant may say otherwise. Of many things that is asked for by a dot.
  const facts = c.things.length > MANY || c.rest !== '' ? [] : c.things.flatMap(t => factOffers(c, [...new Set([...t.facts.values()].map(f => f.fact))].filter(f => f.type.type !== 'text'), t.kind.word, undefined, `${t.id}.`));
  const legs = [...r.legs].flatMap(([leg, cell]): Offer[] => {
    const [from, to] = [legStart(leg), leg.target];
    if (!from || !to) return [];
    const label = `${from.id} -> ${to.id}`;
    return [{ label, kind: 'result', detail: cell.missing ? 'a leg' : `a leg, ${show(r.graph.value(cell)!, cell.dim, 0, cell.unit)}`, text: c.rest.startsWith(':') ? label : `${label}: `, about: { of: 'result', setup: r.setup.node.at, name: cell.name } }];
  });
  return [...things, ...facts, ...legs, ...variantStatements(c), ...kindOffers(c), ...factOffers(c, SETUP_FACTS, 'setup', c.block.node)];
}
