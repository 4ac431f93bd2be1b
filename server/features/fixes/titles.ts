/** What a computed fix is called: what is set, by how much, and what that does. */
import { plain, show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import type { Thing } from '../../model/model.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import type { Setting } from './computed.ts';

/** "Move M3 42 mm toward S1", "Set the focal length of R1 to 4.5 mm instead of 2.9 mm" */
export function settingWords({ knob, values }: Setting, r: Results): string {
  const { thing, kind, numbers } = knob;
  if (kind === 'place') {
    const at = (axis: string): [number, number] => { const i = numbers.findIndex(n => n.cell.name.endsWith(`.${axis}`)); const now = r.graph.value(r.graph.find(`${thing!.id}.${axis}`)!)!; return [now, i < 0 ? now : values[i]!.value]; };
    return movedWords(thing!, [at('x'), at('y')], r);
  }
  const [{ unknown, written, cell }] = numbers as [Setting['knob']['numbers'][number]];
  const change = `to ${written.edit(values[0]!.value, values[0]!.decimals).newText}${written.unitText} instead of ${written.text}${written.unitText}`;
  if (kind === 'direction') return `Turn ${thing!.id} ${change}`;
  if (kind === 'leg' || kind === 'distance') return `Set the ${unknown.words.replace(/ as planned$/, '')} ${change}`;
  return thing ? `Set “${cell.name.slice(thing.id.length + 1)}” of ${thing.id} ${change}` : `Set the ${cell.name.replace(/ as written$/, '')} ${change}`;
}

/** "Move M3 42 mm toward S1"; where it goes towards nothing, to where. */
export function movedWords(thing: Thing, [[x, x2], [y, y2]]: readonly [readonly [number, number], readonly [number, number]], r: Results): string {
  const [dx, dy] = [x2 - x, y2 - y];
  const by = show(Math.round(Math.hypot(dx, dy) * 1e4) / 1e4, LENGTH);
  const where = neighbours(thing, r).map(n => {
    const [nx, ny] = [n.at[0] - x, n.at[1] - y];
    return { id: n.id, along: (nx * dx + ny * dy) / ((Math.hypot(nx, ny) || 1) * Math.hypot(dx, dy)) };
  }).sort((a, b) => Math.abs(b.along) - Math.abs(a.along))[0];
  if (where && Math.abs(where.along) > NEARLY) return `Move ${thing.id} ${by} ${where.along > 0 ? 'toward' : 'away from'} ${where.id}`;
  return `Move ${thing.id} ${by} to (${plain(x2 * 1000, 5)}, ${plain(y2 * 1000, 5)}) mm`;
}
/** Cosine of 18°. */
const NEARLY = 0.95;

/** What its light comes from and goes on to. */
function neighbours(thing: Thing, { setup, places, graph }: Results): { id: string; at: readonly [number, number] }[] {
  const ids = new Set<string>();
  for (const beam of setup.beams.values()) {
    const way = [beam.from?.id, ...beam.legs.map(l => l.target?.id)];
    way.forEach((id, i) => { if (id === thing.id) for (const n of [way[i - 1], way[i + 1]]) if (n !== undefined && n !== thing.id) ids.add(n); });
  }
  return [...ids].flatMap(id => {
    const t = setup.things.get(id);
    const at = t && places.of(places.own(t));
    const [x, y] = at ? [graph.value(at[0]), graph.value(at[1])] : [];
    return x === undefined || y === undefined ? [] : [{ id, at: [x, y] as const }];
  });
}

/** "object beam 84 mm too long → matched", "beam ratio at P1 12:1 → 8:1" */
export function effectWords({ wanted, knob }: Setting, before: Results, after: Results | undefined): string {
  const cell = wanted.shown ?? wanted.conditions[0]!.cell;
  const then = after?.graph.find(cell.name);
  if (!then || then.missing || !after || knob.numbers.some(n => n.cell === cell)) return '';
  if (wanted.told === 'mismatch') {
    const beam = before.plates.flatMap(p => p.pairs).find(x => x.mismatch === cell)?.arm.name ?? 'object';
    const size = (v: number): string => (Math.abs(v) < 1e-3 ? 'matched' : `${Math.round(Math.abs(v) * 1000)} mm too ${v > 0 ? 'long' : 'short'}`);
    return `: ${beam === 'object' ? 'object beam' : `beam “${beam}”`} ${size(before.graph.value(cell)!)} → ${size(after.graph.value(then)!)}`;
  }
  return `: ${cell.words} ${told(cell, before)} → ${told(then, after)}`;
}

/** No more digits of what is exact than tell it apart. */
function told(cell: Cell, { graph }: Results): string {
  const value = graph.value(cell)!;
  return graph.uncertainty(cell) > 0 ? showCell(graph, cell).text : show(Number(value.toPrecision(3)), cell.dim);
}
