/** The view of a finished hologram as it hangs, for whoever hangs it. */
import type { Results } from '../../results/plan.ts';
import type { Shown } from '../../results/replay/shown.ts';
import { titleOf } from '../drawing.ts';
import type { Sheet } from '../marks.ts';
import type { Drawn, Look } from '../view.ts';
import { hungOf } from './hung.ts';
import { hungSheet } from './sheet.ts';

/** Of one on which several lasers recorded. */
const inColour = ({ laser }: Shown): string => (laser ? `, in ${laser.id}` : '');
/** Of a plate with several lamps. */
export const underLamp = (plate: string, lamp: string): string => `${plate} under ${lamp}`;
/** The plate that is asked for, whatever lights it. */
export const plateOf = (asked: string | undefined): string | undefined => asked?.split(/ under |, in /)[0];

export function hungView(r: Results, look: Look): (() => Drawn) | string {
  const all = drawable(r);
  const lit = (s: Shown): string => (all.some(x => x.lamp !== s.lamp && x.plate === s.plate) ? underLamp(s.plate.id, s.lamp.id) : s.plate.id);
  const name = (s: Shown): string => `${lit(s)}${inColour(s)}`;
  const shown = all.find(s => name(s) === look.plate) ?? all.find(s => lit(s) === look.plate) ?? all.find(s => s.plate.id === plateOf(look.plate)) ?? all[0];
  if (!shown) return `Nothing in “${r.setup.name}” says how its hologram will hang. Write a “lamp” with its “distance: 1.5 m” and its “angle: 45°”, and a “viewer” with its “distance: 600 mm”.`;
  return () => {
    const hung = hungOf(shown, `${titleOf(r)}${inColour(shown)}`, r);
    return {
      sheet: hungSheet(hung), plate: name(shown), choices: [...new Set(all.map(name))],
      items: [{ id: hung.plate.name, words: `plate ${hung.plate.name}`, written: hung.plate.written }, { id: hung.lamp.name, words: `lamp ${hung.lamp.words}`, written: hung.lamp.written }, ...(hung.viewer ? [{ id: hung.viewer.name, words: `viewer ${hung.viewer.words}`, written: hung.viewer.written }] : [])],
    };
  };
}

/** Those whose lamp stands somewhere. */
const drawable = (r: Results): readonly Shown[] => r.replay.all.filter(s => s.trouble !== 'no angle' && s.trouble !== 'too steep');

/** Each of them, by the name of its lamp; of several lasers under one lamp the first. */
export const hungSheets = (r: Results): (readonly [string, Sheet])[] => drawable(r).filter((s, i, all) => all.findIndex(x => x.lamp === s.lamp) === i).map(s => [s.lamp.id, hungSheet(hungOf(s, titleOf(r), r))]);
