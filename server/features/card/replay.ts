/** Where the finished plate will hang, for who processes, frames and hangs it. Nothing where no lamp is written. */
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import type { Shown } from '../../results/replay/shown.ts';
import { showCell } from '../chain.ts';
import { words, type Block, type Section } from '../blocks/blocks.ts';
import { sentence } from '../blocks/facts.ts';

export function hanging(r: Results): Section | undefined {
  return r.replay.all.length === 0 ? undefined : { name: 'hang', title: 'Where it will hang', blocks: r.replay.all.flatMap((s, i, all): Block[] => [words(`${sentence(s.lamp.id)} lights ${s.plate.id} ${lampWords(s, r)}. ${plateWords(s)}${viewerWords(s, r)}`), ...(all.findIndex(x => x.lamp === s.lamp) === i ? [{ kind: 'hung' as const, lamp: s.lamp.id }] : [])]) };
}

const text = (cell: Cell | undefined, { graph }: Results): string | undefined => (cell && !cell.missing ? showCell(graph, cell).text : undefined);

function lampWords({ way, light, hung }: Shown, r: Results): string {
  const [distance, angle] = [text(light.distance, r), text(light.angle, r)];
  const from = light.from ?? hung.from;
  return [way === 'reflection' ? 'from the front' : 'from behind', ...(from ? [`from ${from}`] : []), ...(angle === undefined ? [] : [`at ${angle} from its normal`]), ...(distance === undefined || light.beam === 'parallel' ? [] : [`${distance} away`])].join(', ');
}

function plateWords({ plate, hung }: Shown): string {
  const up = hung.up === undefined ? 'Mark what is up' : `Up is what ${hung.up === 'up' ? 'is up' : hung.up === 'down' ? 'is down' : `is on the ${hung.up}, seen from the object,`} in the holder: mark it`;
  const layer = hung.layerFront === undefined ? '' : ` The layer looks ${hung.layerFront ? 'at' : 'away from'} who looks at ${plate.id}.`;
  return `It hangs ${hung.order === 1 ? 'as it was recorded' : 'flipped'}. ${up}.${layer}`;
}

function viewerWords({ view }: Shown, r: Results): string {
  const distance = text(view.distance, r);
  return view.viewer && distance !== undefined ? ` ${sentence(view.viewer.id)} looks from ${distance}.` : '';
}
