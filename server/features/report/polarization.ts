/** How the light is polarized at each plate: what of the object light makes fringes, and the ghost fringes of the reference. Every figure is a cell of the results. */
import type { Thing } from '../../model/model.ts';
import type { Ghost, PairPolarization } from '../../results/polarization/polarization.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';

/** The pages of a setup; none where its text says nothing of polarization. */
export function polarizationPages(r: Results): LightPage[] {
  return r.plates.map(({ plate }) => ({ title: `Polarization at ${plate.id}`, rows: polarizationRows(plate, r) })).filter(p => p.rows.length > 0);
}

export function polarizationRows(plate: Thing, r: Results): LightRow[] {
  const pairs = r.polarization.pairs.filter(p => p.plate === plate && p.told);
  if (pairs.length === 0 && !r.polarization.ghosts.some(g => g.plate === plate)) return [];
  return [...pairs.map(p => shareRow(p, pairs.length > 1, r)), ...r.polarization.ghosts.filter(g => g.plate === plate).flatMap(g => ghostRows(g, r))];
}

function shareRow(p: PairPolarization, several: boolean, r: Results): LightRow {
  const shown = showCell(r.graph, p.share);
  return { label: `light of ${several ? p.pair.arm.name : p.pair.arm.object!.id} that makes fringes`, text: shown.text, remark: shown.missing ?? howWords(p) };
}

/** What a share was reckoned with, in a few words. */
export function howWords({ level, estimated }: PairPolarization): string {
  return [level ? 'all folds taken to lie in the table’s plane' : 'by the places', estimated ? 'an estimate: what the coatings of the mirrors do to it is not known' : ''].filter(Boolean).join('; ');
}

function ghostRows(g: Ghost, r: Results): LightRow[] {
  const [fringes, back] = [showCell(r.graph, g.fringes), showCell(r.graph, g.backFace)];
  if (fringes.missing !== undefined) return [];
  return [{ label: 'ghost fringes', text: fringes.text, remark: `contrast, of ${g.arm.name} bounced twice in the glass` }, { label: 'ghost off the back face', text: back.text, remark: 'contrast, of fringes as fine as those of a reflection hologram' }];
}
