/** How mirrors and splitters are set: how light meets them, by how much it is turned, and which way their mounts face. Every figure is a cell of the results. */
import type { Thing } from '../../model/model.ts';
import { plain, show } from '../../model/show.ts';
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
  /** of a splitter whose thickness is written */
  readonly secondSpot: SecondSpot | undefined;
}

/** What the back face of a splitter throws back. */
export interface SecondSpot {
  readonly offset: Cell;
  /** only where a wedge is written */
  readonly angle: Cell | undefined;
  readonly share: Cell | undefined;
}

/** Of the mirrors, and of the splitters that reflect, whose light is known by places; in the order of the text. */
export function mountAngles(r: Results): MountAngles[] {
  if (r.places.none) return [];
  return [...r.setup.things.values()].flatMap((thing): MountAngles[] => {
    if (thing.kind.word !== 'mirror' && thing.kind.light !== 'shares') return [];
    const [angle, turned, heading, tilt] = [incidence(thing, r.places, r.values), fold(thing, r.places, r.values), r.table.mountAngle(thing.id), r.table.mountTilt(thing.id)];
    if (!angle || angle.missing || !turned || !tilt || tilt.missing) return [];
    return [{ thing, incidence: angle, fold: turned, heading: heading?.missing ? undefined : heading, tilt, secondSpot: secondSpotOf(thing, r) }];
  });
}

/** One page, or none where no places tell. */
export function anglePages(r: Results): LightPage[] {
  const all = mountAngles(r);
  return all.length === 0 ? [] : [{ title: 'How mirrors and splitters are set', rows: all.flatMap(a => [row(a, r), ...spotRow(a, r)]) }];
}

function secondSpotOf(thing: Thing, { table: { spots } }: Results): SecondSpot | undefined {
  if (thing.kind.light !== 'shares' || !thing.facts.has('thickness')) return undefined;
  const [offset, angle, share] = [spots.offset(thing), thing.facts.has('wedge') ? spots.angle(thing) : undefined, spots.share(thing)];
  return offset.missing ? undefined : { offset, angle: angle?.missing ? undefined : angle, share: share.missing ? undefined : share };
}

function spotRow({ thing, secondSpot: spot }: MountAngles, { graph }: Results): LightRow[] {
  if (!spot) return [];
  const shown = (c: Cell): string => (graph.uncertainty(c) === 0 ? show(Number(graph.value(c)!.toPrecision(3)), c.dim) : showCell(graph, c).text);
  const light = spot.share ? `, ${showCell(graph, spot.share).text} of the light that is reflected if the back face is bare` : '';
  return [{ label: thing.id, text: 'second spot', remark: `${shown(spot.offset)} beside the first${spot.angle ? ` and ${shown(spot.angle)} off it` : ''}${light}` }];
}

/** Less than that is level: nobody sets a mount finer by eye, rad. */
const LEVEL = 0.0005;

function row({ thing, incidence: angle, fold: turned, heading, tilt }: MountAngles, r: Results): LightRow {
  const tipped = r.graph.value(tilt)!;
  const up = tipped > 0 ? 'up' : 'down';
  const faces = heading === undefined ? `faces straight ${up}` : `faces ${showCell(r.graph, heading).text}${Math.abs(tipped) < LEVEL ? '' : `, tipped ${up} by ${plain((Math.abs(tipped) * 180) / Math.PI, 3)}°`}`;
  return { label: thing.id, text: faces, remark: `incidence ${showCell(r.graph, angle).text}, turns the light by ${showCell(r.graph, turned).text}` };
}
