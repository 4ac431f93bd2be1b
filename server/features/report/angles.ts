/** How mirrors and splitters are set: how light meets them, by how much it is turned, and which way their mounts face. Every figure is a cell of the results. */
import type { Thing } from '../../model/model.ts';
import { plain } from '../../model/show.ts';
import { fold, incidence } from '../../results/places/angles.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';

export interface MountAngles {
  readonly thing: Thing;
  readonly incidence: Cell;
  readonly fold: Cell;
  /** undefined where it faces straight up or down */
  readonly heading: Cell | undefined;
  readonly tilt: Cell;
}

/** Of the mirrors, and of the splitters that reflect, whose light is known by places; in the order of the text. */
export function mountAngles(r: Results): MountAngles[] {
  if (r.places.none) return [];
  return [...r.setup.things.values()].flatMap((thing): MountAngles[] => {
    if (thing.kind.word !== 'mirror' && thing.kind.light !== 'shares') return [];
    const [angle, turned, heading, tilt] = [incidence(thing, r.places, r.values), fold(thing, r.places, r.values), r.table.mountAngle(thing.id), r.table.mountTilt(thing.id)];
    if (!angle || angle.missing || !turned || !tilt || tilt.missing) return [];
    return [{ thing, incidence: angle, fold: turned, heading: heading?.missing ? undefined : heading, tilt }];
  });
}

/** One page, or none where no places tell. */
export function anglePages(r: Results): LightPage[] {
  const all = mountAngles(r);
  return all.length === 0 ? [] : [{ title: 'How mirrors and splitters are set', rows: all.map(a => row(a, r)) }];
}

/** Less than that is level: nobody sets a mount finer by eye, rad. */
const LEVEL = 0.0005;

function row({ thing, incidence: angle, fold: turned, heading, tilt }: MountAngles, r: Results): LightRow {
  const tipped = r.graph.value(tilt)!;
  const up = tipped > 0 ? 'up' : 'down';
  const faces = heading === undefined ? `faces straight ${up}` : `faces ${showCell(r.graph, heading).text}${Math.abs(tipped) < LEVEL ? '' : `, tipped ${up} by ${plain((Math.abs(tipped) * 180) / Math.PI, 3)}°`}`;
  return { label: thing.id, text: faces, remark: `incidence ${showCell(r.graph, angle).text}, turns the light by ${showCell(r.graph, turned).text}` };
}
