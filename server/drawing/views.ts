/** The pictures that there are of a setup, in the order in which they are offered: a line each here, and panels, requests and the command line have it. */
import type { Results } from '../results/plan.ts';
import { drawingOf, isLevel, titleOf, type Drawing } from './drawing.ts';
import { armItemsOf, itemsOf, planItemsOf } from './items.ts';
import { hungView } from './hung/view.ts';
import { mapView } from './over-plate/over-plate.ts';
import { planOf } from './plan/plan.ts';
import { pairView, seenView } from './seen/seen.ts';
import { sideOf } from './side/side.ts';
import { stripsOf } from './unrolled/strips.ts';
import { unrolledOf } from './unrolled/unrolled.ts';
import type { Drawn, View } from './view.ts';

export const VIEWS: readonly View[] = [
  { name: 'plan', words: 'the table from above', drags: true, of: planView },
  { name: 'side', words: 'the table from its near side', of: sideView },
  { name: 'arms', words: 'the arms unrolled', of: armsView },
  { name: 'object', words: 'the object as the plate sees it', of: seenView },
  { name: 'pair', words: 'the object as two eyes see it', of: pairView },
  { name: 'light', words: 'the light over the plate', of: mapView('light') },
  { name: 'ratio', words: 'the beam ratio over the plate', of: mapView('ratio') },
  { name: 'brightness', words: 'the brightness over the plate', of: mapView('brightness') },
  { name: 'hung', words: 'the finished hologram as it hangs', of: hungView },
];

export const viewNamed = (name: string | undefined): View | undefined => VIEWS.find(v => v.name === name);

function planView(r: Results): (() => Drawn) | string {
  return drawnFrom(r, drawing => ({ sheet: planOf(drawing), items: planItemsOf(drawing) }));
}

/** A picture of the table; it is laid out when it is drawn, and not when somebody asks which pictures there are. */
function drawnFrom(r: Results, draw: (drawing: Drawing) => Drawn): (() => Drawn) | string {
  if (r.table.look.things.size === 0) return `Nothing in “${r.setup.name}” has a place, so that there is nothing to draw. Write where things stand, such as “mirror M1 at (350, 100) mm”.`;
  return () => draw(drawingOf(r)!);
}

function sideView(r: Results): (() => Drawn) | string {
  const drawn = drawnFrom(r, drawing => ({ sheet: sideOf(drawing), items: itemsOf(drawing) }));
  return typeof drawn !== 'string' && isLevel(r) ? `In “${r.setup.name}” all beams run at one height, so that there is nothing to see from the side.` : drawn;
}

function armsView(r: Results): (() => Drawn) | string {
  const plates = stripsOf(r);
  if (plates.length === 0) return `No two arms of a plate in “${r.setup.name}” have lengths on all of their legs. Write a length behind each leg, or where its ends stand.`;
  return () => ({ sheet: unrolledOf(titleOf(r), plates), items: armItemsOf(plates) });
}
