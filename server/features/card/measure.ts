/** The next readings to take, each with what it should come to and how far off that may be. */
import type { Results } from '../../results/plan.ts';
import { wantedOf, type Wanted } from '../readings/wanted.ts';
import { told, type Row, type Section } from '../blocks/blocks.ts';

/** Legs, sums and wheels are read while the table is set up and balanced: they stand there. */
export function measure(r: Results): Section | undefined {
  if (r.plates.length === 0) return undefined;
  const all = wantedOf(r);
  const rows = (group: Wanted['group']): Row[] => all.filter(w => w.group === group && !w.each).map(row);
  const paths = rows('paths');
  return { name: 'measure', title: 'Measure', blocks: [{
    kind: 'table', heads: ['what', 'should come to', 'read'], widths: [28, 37, 20],
    groups: [...(paths.length > 0 ? [{ title: 'Paths, by one string', rows: paths }] : []), { title: 'Light, by one meter: at a plate flat where it will be, the other beams behind a card', rows: rows('light') }],
  }] };
}

const row = ({ what, how, expected, unit }: Wanted): Row => ({ tick: true, entries: [told(what, how), told(expected.text, expected.known), { write: expected.text === '' ? unit.replace(/^fringes/, '') : '' }] });
