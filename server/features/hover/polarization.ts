/** How the light is polarized where a thing stands, for hovers: at a plate, on an object. */
import type { Thing } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { bullets, escaped } from '../markdown.ts';
import { polarizationRows } from '../report/polarization.ts';

/** Nothing where the text says nothing of polarization. */
export function polarizationWords(thing: Thing, r: Results): string {
  const found = r.plates.find(p => p.plate === thing || p.pairs.some(x => x.arm.object === thing));
  const rows = found ? polarizationRows(found.plate, r).filter(row => found.plate === thing || row.label.startsWith(`light of ${thing.id} `)) : [];
  return bullets(rows.map(row => escaped(`${row.label}: ${row.text}${row.remark === '' ? '' : `, ${row.remark}`}`)));
}
