/** The exposure: what is done in which order, how long, and the times of a test strip. */
import type { Thing } from '../../model/model.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { stripTimes } from '../report/light.ts';
import { asWritten } from '../report/words.ts';
import { words, type Block, type Entry, type Section, type Step } from './blocks.ts';
import { fact, things } from './facts.ts';
import { safeColour } from './light.ts';

export function shoot(r: Results): Section | undefined {
  if (r.plates.length === 0 && things(r.setup, 'plate').length === 0) return undefined;
  const blocks: Block[] = [{ kind: 'steps', steps: [...before(r), ...exposing(r)] }];
  for (const { cell, plate } of exposures(r)) {
    const times = stripTimes(cell, r);
    if (times.length > 0) blocks.push(words(`Test strip${plate === '' ? '' : ` of ${plate}`}, in half stops, each with its own rest:`), { kind: 'strip', times });
  }
  return { name: 'shoot', title: 'Shoot', blocks };
}

function before(r: Results): Step[] {
  const lasers = things(r.setup, 'laser');
  const delicate = r.movement.things()[0];
  const film = things(r.setup, 'plate').filter(p => fact(p, 'base')?.startsWith('film'));
  return [
    ...lasers.map((l): Step => { const time = fact(l, 'warm-up'); return { text: `Laser ${l.id} is warm${time === undefined ? '' : `: ${time}`}. On since:`, write: '' }; }),
    { text: 'Nothing on the table can drop, swing or hum; heating and fans are off.', ...(delicate ? { small: `Most delicate is ${delicate.thing.id}${delicate.against ? ` against ${delicate.against.id}` : ''}: ${showCell(r.graph, delicate.allowed).text} ${delicate.along} cost a tenth of a fringe.` } : {}) },
    ...film.map((p): Step => ({ text: `${p.id} is film: it creeps in its holder for a while after it was put there.` })),
    { text: 'The shutter is closed, and a card stands in the bare beam.' },
  ];
}

/** A time that is written for the setup, or a line. */
function written(r: Results, phrase: 'settle' | 'exposure'): Pick<Step, 'write'> & { readonly text: string } {
  const bound = r.setup.facts.get(phrase)?.value;
  if (bound?.kind === 'quantity') return { text: asWritten(bound.quantity) };
  const cell = phrase === 'exposure' ? r.values.setupFact(phrase) : undefined;
  if (cell && !cell.missing) return { text: showCell(r.graph, cell).text };
  const said = fact(r.setup, phrase);
  return said === undefined ? { text: '', write: 'min' } : { text: said };
}

function exposing(r: Results): Step[] {
  const settle = written(r, 'settle');
  const [one] = exposures(r);
  const open = written(r, 'exposure');
  return [
    { text: `Light out, ${safelight(r)}; then the box is opened.` },
    ...plates(r).map((p): Step => ({ text: `${p.id} in its holder${facing(p)}.`, ...(facing(p) === '' ? { write: 'emulsion' } : {}) })),
    settle.text === '' ? { text: 'Hands off, out of the draught. Settle:', write: 'min' } : { text: `Hands off, out of the draught. Settle ${settle.text}.` },
    { text: 'The card away without a touch to the table; wait.' },
    open.text !== '' ? { text: `Open for ${open.text}.`, ...(one ? { small: `By light and sensitivity: ${allWords(r)}.` } : {}) }
      : { text: one ? `Open: ${allWords(r)} by the page. Tonight:` : 'Open for:', write: 's' },
    { text: `Shutter closed; ${plates(r).length > 1 ? 'the plates' : 'the plate'} shut away before the light goes on.` },
  ];
}

function safelight(r: Results): string {
  const colour = safeColour(r);
  return colour === undefined ? 'no safelight' : `${colour} safelight on`;
}

const plates = (r: Results): Thing[] => things(r.setup, 'plate');

/** How a plate stands in its holder. */
function facing(p: Thing): string {
  const [emulsion, up] = [fact(p, 'emulsion'), fact(p, 'up')];
  return [emulsion === undefined ? '' : `emulsion ${emulsion}`, up === undefined ? '' : `its top ${up === 'up' || up === 'down' ? up : `to the ${up}`}`].filter(Boolean).map(w => `, ${w}`).join('');
}

/** What each plate needs, as far as its light and its sensitivity tell. */
function exposures(r: Results): { readonly cell: Cell; readonly plate: string; readonly text: string }[] {
  for (const p of r.plates) r.ask(`${p.plate.id}.exposure`);
  return r.light.plates.flatMap(l => (l.exposure.missing ? [] : [{ cell: l.exposure, plate: r.plates.length > 1 ? l.plate.id : '', text: showCell(r.graph, l.exposure).text }]));
}

/** `13 to 55 s`, of several plates each by its name. */
const allWords = (r: Results): string => exposures(r).map(e => `${e.plate === '' ? '' : `${e.plate} `}${e.text}`).join(', ');

/** What nobody can read any more when it counts. */
export function inTheDark(r: Results): Section | undefined {
  const all = plates(r);
  if (all.length === 0) return undefined;
  const [settle, open] = [written(r, 'settle'), written(r, 'exposure')];
  const [one] = exposures(r);
  const entry = (text: string, write: string): Entry => (text === '' ? { write } : { text });
  const stock = (p: Thing): string => [fact(p, 'stock') ?? '', fact(p, 'batch') === undefined ? '' : (fact(p, 'batch')!)].filter(Boolean).join(', ').replace(/"/g, '');
  return { name: 'dark', title: 'In the dark', blocks: [{ kind: 'large', rows: [
    ...all.map(p => ({ label: all.length > 1 ? p.id : 'plate', entry: entry([stock(p), fact(p, 'emulsion') === undefined ? '' : `emulsion ${fact(p, 'emulsion')!}`].filter(Boolean).join(', '), '') })),
    { label: 'settle', entry: entry(settle.text, 'min') },
    { label: 'open', entry: open.text !== '' ? { text: open.text } : one ? { text: allWords(r) } : { write: 's' } },
  ] }] };
}
