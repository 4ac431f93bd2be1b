/** What may move while the shutter is open, the most delicate first. Every figure is a cell of the results. */
import type { Thing } from '../../model/model.ts';
import type { Cell } from '../../results/graph.ts';
import type { Delicate } from '../../results/movement/movement.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { LightPage, LightRow } from './light.ts';

/** One page, or none where no angle of light is known. */
export function movementPages(r: Results): LightPage[] {
  const things = r.movement.things();
  return things.length === 0 ? [] : [{ title: 'What may move during the exposure, for a tenth of a fringe', rows: [...things.map(d => row(d, r)), ...warmings(r).map(w => warmingRow(w, r))] }];
}

function row(d: Delicate, r: Results): LightRow {
  const why = loosened(d.thing, r) ?? (d.against && loosened(d.against, r));
  return { label: labelOf(d), text: showCell(r.graph, d.allowed).text, remark: d.along + (why === undefined ? '' : `; ${why}`) };
}

const labelOf = (d: Delicate): string => (d.against ? `${d.thing.id} against ${d.against.id}` : d.thing.id);

/** What is written of a thing that makes it creep. */
function loosened(thing: Thing, r: Results): string | undefined {
  const word = (phrase: string): string | undefined => (thing.facts.has(phrase) ? r.values.words(thing, phrase) : undefined);
  const [base, warmth] = [word('base'), word('warmth')];
  if (base?.startsWith('film')) return 'film creeps in its holder';
  return warmth === 'handled' || warmth === 'warm' ? 'it creeps while it cools' : undefined;
}

/** How much the table may warm, for each plate. Shown only where it is written how the laser drifts with warmth. */
export function warmings(r: Results): { readonly plate: string; readonly cell: Cell }[] {
  return r.plates.flatMap(({ plate, pairs }) => {
    const cell = pairs.some(p => p.arm.laser.facts.has('drift')) ? r.movement.warming(plate.id) : undefined;
    return cell && !cell.missing ? [{ plate: plate.id, cell }] : [];
  });
}

function warmingRow({ plate, cell }: ReturnType<typeof warmings>[number], r: Results): LightRow {
  const table = r.setup.facts.has('table material') ? '' : '; what the table is made of is not written';
  return { label: 'warming of the table', text: showCell(r.graph, cell).text, remark: `as the arms of ${plate} are not equally long${table}` };
}

/** A sentence for the hover of a thing. */
export function movementWords(thing: Thing, r: Results): string[] {
  return r.movement.things().filter(d => d.thing.id === thing.id || d.against?.id === thing.id)
    .map(d => `Delicate: ${showCell(r.graph, d.delicacy).text}. ${showCell(r.graph, d.allowed).text} ${d.along}${d.against ? `, ${labelOf(d)},` : ''} cost a tenth of a fringe.`);
}
