/**
 * In which light the card can be read. Its print is black, and hues stand beside dashes only; whether a safelight may be lit at all is up to the plates, and without that nothing on
 * paper can be read beside them.
 */
import type { Thing } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { safelightOf, safelights, seesColour, sensitiveTo } from '../../results/safelight.ts';
import { listed, things } from './facts.ts';

const LIT = 'Read this card, and write on it, with the room light on and the plates shut away.';
const HEART = 'What is needed in the dark is to be known by heart: it stands under “In the dark”.';

/** The colour of the safelight that no plate of the setup is said to take; undefined where that does not follow from the page. */
export function safeColour(r: Results): string | undefined {
  const colour = safelightOf(r.setup);
  const plates = things(r.setup, 'plate');
  if (colour === undefined || colour === 'none' || plates.length === 0 || r.setup.unsure) return undefined;
  return plates.every(p => seesColour(p, colour as Colour) === false) ? colour : undefined;
}
type Colour = Parameters<typeof seesColour>[1];

export function lightWords(r: Results): string {
  const colour = safelightOf(r.setup);
  const safe = safeColour(r);
  const plates = things(r.setup, 'plate');
  if (safe !== undefined) {
    const pale = safe === 'red' || safe === 'amber' ? ', but not what is orange: the object beam keeps its dashes' : '';
    return `${LIT} By the ${safe} safelight its black print can be read${pale}; ${said(plates)}. Paper throws light about: keep it away from open plates, and out of the beams.`;
  }
  if (colour === undefined) return `${LIT} No safelight is written on the page, so count on none. ${HEART}`;
  if (colour === 'none') return `${LIT} There is no safelight. ${HEART}`;
  const fogged = safelights(r).find(s => s.sees === true);
  if (fogged) return `${LIT} The safelight that is written is ${colour}, and ${fogged.plate.id} takes ${fogged.to === 'all' ? 'all colours' : `${fogged.to} light`}: leave it off while plates are open. ${HEART}`;
  return `${LIT} Whether ${plates.length === 0 ? 'the plate' : listed(plates.map(p => p.id))} may lie in ${colour} light does not follow from the page: count on no light. ${HEART}`;
}

const said = (plates: readonly Thing[]): string => listed(plates.map(p => `${p.id} is written as sensitive to ${sensitiveTo(p)!} only`));
