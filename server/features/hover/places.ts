/** Where a thing stands, which way it faces, and how it meets its light, for hovers. */
import type { Thing } from '../../model/model.ts';
import { plain, show } from '../../model/show.ts';
import { LENGTH, ONE_DEGREE } from '../../model/units.ts';
import { fold, incidence } from '../../results/places/angles.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { blocks, escaped } from '../markdown.ts';

/** Nothing where the text doesn't place it, and no place around it says how it stands. */
export function placeWords(named: Thing, r: Results): string {
  const thing = r.places.own(named);
  return blocks(...[stands, faces, folds, arrives].map(words => escaped(words(thing, r))));
}

function stands(thing: Thing, { places, graph }: Results): string {
  const position = places.of(thing);
  if (!position) return '';
  const lost = position.find(c => c.missing);
  if (lost) return `Where it stands is unknown, because ${lost.missing!.why}.`;
  const sure = position.every(c => graph.uncertainty(c) === 0);
  const one = (c: Cell): string => show(Math.round(graph.value(c)! * 1e6) / 1e6, LENGTH, graph.uncertainty(c)).replace(/ mm$/, '');
  return sure ? `Stands at (${position.map(c => plain(Math.round(graph.value(c)! * 1e6) / 1e3, 6)).join(', ')}) mm.` : `Stands at x ${one(position[0])} mm, y ${one(position[1])} mm, height ${one(position[2])} mm.`;
}

/** `Heading 270°, counter-clockwise from the right in the plan, 5° upwards.` */
function faces(thing: Thing, { places, graph }: Results): string {
  const way = places.directions.facing(thing);
  if (!way || way.some(c => c.missing)) return '';
  const [x, y, z] = way.map(c => graph.value(c)!) as [number, number, number];
  const level = Math.hypot(x, y);
  const tilt = Math.atan2(z, level) / ONE_DEGREE;
  if (level < 1e-6) return `Heading straight ${z > 0 ? 'up' : 'down'}.`;
  const heading = Math.round(((Math.atan2(y, x) / ONE_DEGREE + 360) % 360) * 10) / 10 % 360;
  return `Heading ${plain(heading)}°, counter-clockwise from the right in the plan${Math.abs(tilt) < 0.05 ? '' : `, ${plain(Math.abs(tilt), 3)}° ${tilt > 0 ? 'upwards' : 'downwards'}`}.`;
}

function folds(thing: Thing, { places, values, graph }: Results): string {
  const cell = incidence(thing, places, values);
  if (!cell || cell.missing) return '';
  return `Light meets it at ${showCell(graph, cell).text} from its normal and is turned by ${showCell(graph, fold(thing, places, values)!).text}.`;
}

function arrives(thing: Thing, { plates, graph }: Results): string {
  const arms = plates.filter(p => p.plate === thing).flatMap(p => p.arms).flatMap(a => (a.angle && !a.angle.cell.missing ? [`${a.arm.name} arrives at ${showCell(graph, a.angle.cell).text}`] : []));
  return arms.length === 0 ? '' : `From its normal, ${arms.join(', ')}.`;
}
