/** What a laser's coherence is known from, in words. */
import type { Thing } from '../../model/model.ts';
import { coherenceUntold, type Coherence } from '../../results/coherence.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';

export function coherenceWords(laser: Thing, coherence: Coherence | undefined, r: Results): string {
  const lost = coherence?.inputs.find(c => c.missing);
  if (!coherence || lost) return `How brightly ${laser.id} records cannot be told: ${lost?.missing?.why ?? coherenceUntold(laser, r.values)}.`;
  const text = (fact: string): string => {
    const cell = r.graph.find(`${laser.id}.${fact}`);
    return cell ? showCell(r.graph, cell).text : 'unknown';
  };
  const known = `The coherence of ${laser.id} is known from its ${coherence.known}, ${text(coherence.known)}`;
  switch (coherence.known) {
    case 'coherence length': return `${known} at ${text('coherence contrast')} of the fringe contrast: a linewidth of ${text('linewidth')}.`;
    case 'linewidth': return `${known}: half of the fringe contrast is left where the paths differ by ${text('coherence length')}.`;
    case 'tube length': return `${known}: its modes are ${text('mode spacing')} apart, and fringes come back where the paths differ by ${text('revival distance')}, or a multiple of it. ${modes(coherence, text('modes'))}`;
  }
}

function modes({ modes: plausible }: Coherence, text: string): string {
  return plausible && plausible.length > 1 ? `How many modes run is not known; it may be ${text}.` : `Modes that run: ${text}.`;
}
