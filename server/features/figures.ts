/** What somebody watches while a thing is moved: mismatch, beam ratio, what records worst, what stands in the way. As shown, without judging. */
import type { Results } from '../results/plan.ts';
import { showCell } from './chain.ts';
import { figures } from './summary.ts';

export interface Figure {
  readonly label: string;
  readonly text: string;
}

export function figuresOf(r: Results): Figure[] {
  const { plate, mismatch, brightness, part } = figures(r);
  const at = plate === undefined ? '' : ` at ${plate}`;
  const ratios = r.plates.flatMap(p => {
    r.ask(`${p.plate.id}.beam ratio`);
    return r.light.plates.filter(l => l.plate === p.plate && !l.ratio.missing).map(l => ({ label: `beam ratio${l.laser ? ` of ${l.laser.id}` : ''}${r.plates.length > 1 ? ` at ${p.plate.id}` : ''}`, text: showCell(r.graph, l.ratio).text }));
  });
  const blocked = [...new Set(r.table.look.blocked.map(b => b.thing.id))];
  return [
    ...(mismatch === undefined ? [] : [{ label: `mismatch${at}`, text: mismatch }]), ...ratios,
    ...(part === undefined || brightness === undefined ? [] : [{ label: part, text: brightness }]),
    ...(blocked.length > 0 ? [{ label: 'in the way', text: blocked.join(', ') }] : []),
  ];
}
