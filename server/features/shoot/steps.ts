/** What is done when a plate is shot, step by step, and the times that are waited. The bench card and the panel that counts them down both take it from here. */
import type { Thing } from '../../model/model.ts';
import { TIME } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import type { Step } from '../blocks/blocks.ts';
import { fact, things } from '../blocks/facts.ts';
import { safeColour } from '../blocks/light.ts';
import { showCell } from '../chain.ts';
import { asWritten } from '../report/words.ts';

/** While it is light. */
export function beforeSteps(r: Results): Step[] {
  const lasers = things(r.setup, 'laser');
  const delicate = r.movement.things()[0];
  const film = platesOf(r).filter(p => fact(p, 'base')?.startsWith('film'));
  return [
    ...lasers.map((l): Step => { const time = fact(l, 'warm-up'); return { text: `Laser ${l.id} is warm${time === undefined ? '' : `: ${time}`}. On since:`, write: '' }; }),
    { text: 'Nothing on the table can drop, swing or hum; heating and fans are off.', ...(delicate ? { small: `Most delicate is ${delicate.thing.id}${delicate.against ? ` against ${delicate.against.id}` : ''}: ${showCell(r.graph, delicate.allowed).text} ${delicate.along} cost a tenth of a fringe.` } : {}) },
    ...film.map((p): Step => ({ text: `${p.id} is film: it creeps in its holder for a while after it was put there.` })),
    { text: 'The shutter is closed, and a card stands in the bare beam.' },
  ];
}

/** In the dark, until the table is left alone. */
export function darkSteps(r: Results): Step[] {
  return [{ text: `Light out, ${safelight(r)}; then the box is opened.` }, ...platesOf(r).map((p): Step => ({ text: `${p.id} in its holder${facing(p)}.`, ...(facing(p) === '' ? { write: 'emulsion' } : {}) }))];
}

export function handsOffStep(r: Results): Step {
  const { text } = timeOf(r, 'settle');
  return text === '' ? { text: 'Hands off, out of the draught. Settle:', write: 'min' } : { text: `Hands off, out of the draught. Settle ${text}.` };
}

export const awayStep: Step = { text: 'The card away without a touch to the table; wait.' };

/** A time that is written for the setup: as it is written, or as it comes out, and in seconds where it is one. Empty where nothing is written. */
export interface Time { readonly text: string; readonly seconds?: number }

export function timeOf(r: Results, phrase: 'settle' | 'exposure'): Time {
  const bound = r.setup.facts.get(phrase)?.value;
  if (bound?.kind === 'quantity') return { text: asWritten(bound.quantity), ...(bound.quantity.dim === TIME ? { seconds: bound.quantity.value } : {}) };
  const cell = phrase === 'exposure' ? r.values.setupFact(phrase) : undefined;
  const seconds = cell && r.graph.value(cell);
  if (cell && seconds !== undefined) return { text: showCell(r.graph, cell).text, seconds };
  const said = fact(r.setup, phrase);
  return { text: said ?? '' };
}

function safelight(r: Results): string {
  const colour = safeColour(r);
  return colour === undefined ? 'no safelight' : `${colour} safelight on`;
}

export const platesOf = (r: Results): Thing[] => things(r.setup, 'plate');

/** How a plate stands in its holder. */
function facing(p: Thing): string {
  const [emulsion, up] = [fact(p, 'emulsion'), fact(p, 'up')];
  return [emulsion === undefined ? '' : `emulsion ${emulsion}`, up === undefined ? '' : `its top ${up === 'up' || up === 'down' ? up : `to the ${up}`}`].filter(Boolean).map(w => `, ${w}`).join('');
}

/** What each plate needs, as far as its light and its sensitivity tell. */
export function exposures(r: Results): { readonly cell: Cell; readonly of: Thing; readonly plate: string; readonly text: string }[] {
  for (const p of r.plates) r.ask(`${p.plate.id}.exposure`);
  // In the light of several lasers a plate has one exposure.
  return r.light.plates.filter((l, i, all) => all.findIndex(o => o.exposure === l.exposure) === i).flatMap(l => (l.exposure.missing ? [] : [{ cell: l.exposure, of: l.plate, plate: r.plates.length > 1 ? l.plate.id : '', text: showCell(r.graph, l.exposure).text }]));
}
