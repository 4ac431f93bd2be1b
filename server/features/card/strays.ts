/** Cards and stops: those that the page has, those that it asks for, and room for what is found by eye. */
import type { Thing } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { told, words, type Block, type Row, type Section } from '../blocks/blocks.ts';
import { fact, listed, things } from '../blocks/facts.ts';
import { placeWords } from './places.ts';

const BY_EYE = 2;

export function strays(r: Results): Section | undefined {
  if (r.setup.beams.size === 0) return undefined;
  const rows = [...onPage(r), ...wanted(r)];
  const found = Array.from({ length: BY_EYE }, (): Row => ({ tick: true, entries: [{ write: '' }, { write: '' }] }));
  const blocks: Block[] = [...edges(r), { kind: 'table', heads: ['where', 'what for'], widths: [36, 50], groups: [...(rows.length > 0 ? [{ rows }] : []), { title: 'Found by eye: look along each beam, behind each lens and on each wall', rows: found }] }];
  if (r.table.look.things.size === 0) blocks.unshift(words('Nothing on the page has a place, so that nobody has followed the stray light.'));
  return { name: 'cards', title: 'Cards and stops', blocks };
}

const row = (where: string, what: string): Row => ({ tick: true, entries: [told(where), told(what)] });

/** Cards, stops and screens that are written. */
function onPage(r: Results): Row[] {
  return things(r.setup, 'black card', 'beam stop', 'fill card').map(t => {
    const place = placeWords(t, r);
    const ends = [...r.setup.beams.values()].find(b => b.legs.some(l => l.target === t));
    const what = [t.kind.word === 'fill card' ? 'fill card' : '', ends ? `ends ${ends.id}` : '', t.doc?.replace(/\n+/g, ' ') ?? fact(t, 'note') ?? ''].filter(Boolean).join('; ');
    return row(`${t.id}${place === '' ? '' : ` at ${place}`}`, what === '' ? t.kind.word : what);
  });
}

/** Where the light of the page goes that nobody wants. */
function wanted(r: Results): Row[] {
  const { unused, spills, flashes } = r.table.look;
  return [
    ...unused.map(u => row(u.stop ? `about ${point(u.stop)}` : `behind ${u.thing.id}`, `ends what ${u.port === 'through' ? `goes straight through ${u.thing.id}` : `${u.thing.id} reflects`}, which no beam uses${u.on ? `, and which falls on ${u.on.id}` : ''}`)),
    ...spills.map(s => row(`edge at about ${point(s.card)}`, `keeps the light of ${s.arm.name} off ${s.object.id}`)),
    ...flashes.map(f => row(`${f.edge} edge, about ${point(f.at)}`, `ends what the glass of ${f.plate.id} throws back of ${f.arm.name}`)),
  ];
}

const point = (at: readonly number[]): string => `(${at.slice(0, 2).map(v => String(Math.round(v * 1000) + 0)).join(', ')}) mm`;

/** Light that enters a plate by its edge is kept out by a mask. */
function edges(r: Results): Block[] {
  const of = (edge: string): Thing[] => things(r.setup, 'plate').filter(t => fact(t, 'edges') === edge);
  const [masked, matched] = [of('masked'), of('index-matched')];
  const said = [masked.length > 0 ? `Mask the edges of ${listed(masked.map(t => t.id))}.` : '', matched.length > 0 ? `The edges of ${listed(matched.map(t => t.id))} lie in index-matching liquid.` : ''].filter(Boolean);
  return said.length === 0 ? [] : [words(said.join(' '))];
}
