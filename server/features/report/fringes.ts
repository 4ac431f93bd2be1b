/** How fine the fringes on each plate are, and what its stock makes of them. Every figure is a cell of the results. */
import { spotWords } from '../../checks/recording/fringes-too-fine.ts';
import type { Thing } from '../../model/model.ts';
import type { PairFringes } from '../../results/fringes/fringes.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';

/** A page for each pair of beams of which enough is known; none on a page that names lengths only. */
export function fringePages(r: Results): LightPage[] {
  return r.fringes.pairs.filter(f => !f.finest.missing).map(f => ({ title: `Fringes on ${f.plate.id}${several(f, r) ? `, ${f.pair.arm.name}` : ''}`, rows: rows(f, r) }));
}

/** Of an object without a size only the light of its middle is looked at; that of its rim may make finer fringes. */
function sizeless({ from: { known }, pair, spot }: PairFringes, { places }: Results): string {
  const thing = pair.arm.object!;
  return known.object || spot.metres || !known.plate || places.ways.source(pair.arm.path.at(-1)!) !== thing ? '' : `; finer from the rim of ${thing.id}, whose “size” is not written`;
}

function rows(f: PairFringes, r: Results): LightRow[] {
  const text = (cell: Parameters<typeof showCell>[1]): string => showCell(r.graph, cell).text;
  const tilt = r.fringes.asked(f, 'fringe tilt');
  return [
    { label: 'finest', text: text(f.finest), remark: `${f.from.known.plate || f.from.known.object ? spotWords(f.spot, f.plate.id, f.pair.arm.object!.id) : 'between the middles: no size of plate or object is written'}${sizeless(f, r)}` },
    ...(f.rated && f.share ? [
      { label: 'the stock resolves', text: text(f.rated), remark: f.rated.origin === 'assumed' ? 'as its sort does' : 'as written' },
      { label: 'needed of that', text: text(f.share), remark: '' },
    ] : []),
    ...(tilt && !tilt.missing ? [{ label: 'fringe planes', text: text(tilt), remark: `from the surface of ${f.plate.id}, in the layer: ${f.way}, ${f.way === 'reflection' ? 'beams from opposite sides' : 'both beams from one side'}` }] : []),
  ];
}

const several = (f: PairFringes, r: Results): boolean => r.fringes.pairs.filter(o => o.plate === f.plate).length > 1;

/** One sentence for each pair of a plate, for its hover. */
export function fringeWords(plate: Thing, r: Results): string[] {
  return r.fringes.pairs.filter(f => f.plate.id === plate.id && !f.finest.missing).map(f => {
    const of = f.share && !f.share.missing ? `, ${showCell(r.graph, f.share).text} of what its stock resolves` : '';
    return `Fringes${several(f, r) ? ` by ${f.pair.arm.name}` : ''} up to ${showCell(r.graph, f.finest).text}${of}.`;
  });
}
