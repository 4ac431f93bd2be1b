/** Plates that get several exposures: how long each lasts, what it leaves of the brightness of its image, and whether the images lie on each other. Every figure is a cell of the results. */
import { percent, plain } from '../../model/show.ts';
import type { Exposure, OnPlate } from '../../results/exposures/exposures.ts';
import type { Register } from '../../results/exposures/registers.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';

/** A page for each plate of which exposures are written. */
export function exposurePages(r: Results): LightPage[] {
  return r.exposures.plates.map(on => ({ title: `Exposures of ${on.plate.id}`, rows: [...on.all.map(e => exposureRow(e, r)), ...allRow(on, r), ...r.registers.filter(g => g.plate === on.plate).flatMap(g => registerRow(g, r))] }));
}

function exposureRow(e: Exposure, r: Results): LightRow {
  const time = showCell(r.graph, e.time);
  return { label: e.thing.id, text: time.missing ? 'unknown' : time.text, remark: `${exposedAs(e)}: ${showCell(r.graph, e.share).text} of what ${e.plate.id} needs${leftWords(e, r)}${time.missing ? `; ${time.missing}` : ''}` };
}

/** `as in “green”, with red open` */
export const exposedAs = ({ variant, laser }: Exposure): string => `${variant ? `as in “${variant.name}”` : 'as it is written'}${laser ? `, with ${laser.id} open` : ''}`;

function leftWords({ left }: Exposure, { graph }: Results): string {
  const value = graph.value(left);
  return value === undefined || value >= 1 || value <= 0 ? '' : `; its image is ${percent(value)} as bright as alone, ${plain(-Math.log2(value), 2)} stops less`;
}

function allRow({ all, time, sum }: OnPlate, r: Results): LightRow[] {
  return all.length < 2 || time.missing ? [] : [{ label: 'together', text: showCell(r.graph, time).text, remark: `${showCell(r.graph, sum).text} of what the plate needs, settling between them not counted` }];
}

function registerRow({ lamp, first, other, apart, unseen, oneColour }: Register, { graph }: Results): LightRow[] {
  const [off, sharp] = [apart, unseen].map(c => c && graph.value(c));
  if (off === undefined || sharp === undefined) return [];
  const [one, two] = [first.exposure.thing.id, other.exposure.thing.id];
  const label = `${two} under ${lamp.id}`;
  if (off < sharp / 100) return [{ label, text: 'in register', remark: `its image lies where that of ${one} does` }];
  return [{ label, text: `${showCell(graph, apart!).text} off`, remark: `from the image of ${one}, where they differ most${off <= sharp ? ': no eye sees it' : oneColour ? '' : `: ${plain(off / sharp, 2)} times what an eye tells apart`}` }];
}

/** One sentence for the hover of an exposure or of its plate. */
export function exposureWords(of: string, r: Results): string[] {
  return r.exposures.plates.flatMap(p => p.all.filter(e => e.thing.id === of || p.plate.id === of).map(e => {
    const row = exposureRow(e, r);
    return `Exposure ${row.label} ${row.text === 'unknown' ? 'takes a time that is not known' : `takes ${row.text}`}, ${row.remark}.`;
  }));
}
