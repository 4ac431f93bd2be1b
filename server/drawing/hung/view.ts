/** The view of a finished hologram as it hangs, for whoever hangs it. */
import type { Results } from '../../results/plan.ts';
import { titleOf } from '../drawing.ts';
import type { Drawn, Look } from '../view.ts';
import { hungOf } from './hung.ts';
import { hungSheet } from './sheet.ts';

export function hungView(r: Results, look: Look): (() => Drawn) | string {
  const all = r.replay.all.filter(s => s.trouble !== 'no angle' && s.trouble !== 'too steep');
  const among = all.filter(s => s.plate.id === look.plate);
  const shown = (among.length > 0 ? among : all)[0];
  if (!shown) return `Nothing in “${r.setup.name}” says how its hologram will hang. Write a “lamp” with its “distance: 1.5 m” and its “angle: 45°”, and a “viewer” with its “distance: 600 mm”.`;
  return () => {
    const hung = hungOf(shown, titleOf(r), r);
    return {
      sheet: hungSheet(hung), plate: shown.plate.id,
      items: [{ id: hung.plate.name, words: `plate ${hung.plate.name}`, written: hung.plate.written }, { id: hung.lamp.name, words: `lamp ${hung.lamp.words}`, written: hung.lamp.written }, ...(hung.viewer ? [{ id: hung.viewer.name, words: `viewer ${hung.viewer.words}`, written: hung.viewer.written }] : [])],
    };
  };
}
