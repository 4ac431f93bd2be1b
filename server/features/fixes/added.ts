/** What is put on the table, or turned on it, so that a finding goes: a black card in the light that reaches the object, a wedge between the faces of a splitter, a plate that light runs along. */
import type { Snapshot } from '../../analysis.ts';
import { num, text } from '../../checks/check.ts';
import type { Finding } from '../../checks/check.ts';
import { within } from '../../model/place.ts';
import type { Results } from '../../results/plan.ts';
import { indentOf, intoBlock, linesBehind } from '../new-lines.ts';
import type { Candidate } from './candidate.ts';
import { writtenOf } from './numbers.ts';

export function* addedFixes(finding: Finding, r: Results, snapshot: Snapshot): Generator<Candidate> {
  if (finding.code === 'reference-on-object') yield* cards(finding, r, snapshot);
  if (finding.code === 'second-spot') yield* wedges(finding, r, snapshot);
  if (finding.code === 'no-light') yield* shares(finding, r, snapshot);
  if (finding.code === 'plate-missed') yield* turns(finding, r, snapshot);
}

/** As wide as a handy card is by itself, m. */
const HALF_CARD = 0.05;

/** Its edge stands where the finding says, the card beside it, away from the plate's light. */
function* cards({ subject }: Finding, { table, setup }: Results, { tree, uri, text: page }: Snapshot): Generator<Candidate> {
  const spill = table.look.spills.find(s => s.object.id === subject);
  const object = spill && table.look.things.get(spill.object.id);
  const last = [...setup.things.values()].filter(t => t.at.uri === uri && t.node.parent === setup.node).sort((a, b) => a.node.end - b.node.end).at(-1);
  if (!spill || !object || !last) return;
  const { ray: { from, to, start }, card, arm } = spill;
  const l = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const u = [(to[0] - from[0]) / l, (to[1] - from[1]) / l] as const;
  const along = (object.at[0] - from[0]) * u[0] + (object.at[1] - from[1]) * u[1];
  const side = [object.at[0] - from[0] - along * u[0], object.at[1] - from[1] - along * u[1]] as const;
  const off = Math.hypot(...side);
  if (!(l > 0) || !(off > 0)) return;
  const [x, y] = [0, 1].map(i => Math.round((card[i]! + (side[i]! / off) * HALF_CARD) * 1000));
  let n = 1;
  while (setup.things.has(`BC${n}`) || setup.beams.has(`BC${n}`)) n++;
  const line = `black card BC${n} at (${x!}, ${y!}) mm facing ${start.id}`;
  yield { edits: [linesBehind(tree, uri, page, last.node.end, [indentOf(last.node) + line])], title: () => `Put a black card at (${x!}, ${y!}) mm: it keeps “${arm.name}” off ${subject}, and leaves ${arm.plate.id} its light` };
}

/** Wedges that splitters are made with; common practice. */
const WEDGES = [0.5, 1, 2, 3];

function* wedges({ subject }: Finding, { setup }: Results, snapshot: Snapshot): Generator<Candidate> {
  const splitter = setup.things.get(subject);
  if (splitter?.at.uri !== snapshot.uri) return;
  const own = splitter.facts.get('wedge');
  if (own && own.at.uri !== snapshot.uri) return;
  for (const by of WEDGES) yield { edits: own ? [{ at: own.at, newText: `${by}°` }] : intoBlock(splitter.node, [`wedge: ${by}°`], snapshot), title: () => `Take a splitter with a wedge of ${by}° for ${subject}: its second spot misses what is lit` };
}

/** A part of its light for the way that gets none: little of what went all one way, so that the rest stays nearly as it was. */
const SOME = 0.1;

function* shares({ subject }: Finding, { graph, setup }: Results, { tree, uri }: Snapshot): Generator<Candidate> {
  const cell = graph.find(`${subject}.reflects`);
  const [written, now] = [cell?.at?.uri === uri ? writtenOf(cell, tree) : undefined, cell && graph.value(cell)];
  if (!written || !setup.things.has(subject) || (now !== 0 && now !== 1)) return;
  const edit = written.edit(now === 1 ? 1 - SOME : SOME, written.decimals);
  yield { things: [subject], edits: [edit], title: () => `Set “reflects” of ${subject} to ${edit.newText}${written.unitText} instead of ${written.text}${written.unitText}: a tenth of the light goes the other way` };
}

/** Angles at which a reference comes to its plate, the commonest first; common practice. */
const USUAL = [45, 60, 30];

function* turns({ data }: Finding, r: Results, snapshot: Snapshot): Generator<Candidate> {
  const plate = r.setup.things.get(text(data, 'plate'));
  const facing = plate && r.places.directions.facing(r.places.own(plate))?.map(c => r.graph.value(c));
  const { node, placement } = plate ?? {};
  if (!plate || !facing || node === undefined || placement?.facing === undefined || placement.facing === 'beam' || plate.at.uri !== snapshot.uri) return;
  const { name } = placement.facing;
  const clause = new RegExp(`\\bfacing\\s+${name.replace(/[^\w]/g, '\\$&')}(?![\\w-])`).exec(node.line.text);
  const light = r.arms.arms.find(a => a.plate === plate && (a.name === text(data, 'arm') || a.beam.id === text(data, 'arm')))?.path.at(-1);
  const [dx, dy] = (light && r.places.directions.of(light)?.map(c => r.graph.value(c))) ?? [];
  const [nx, ny] = facing as [number | undefined, number | undefined];
  if (!clause || nx === undefined || ny === undefined || dx === undefined || dy === undefined) return;
  // The reference of a reflection hologram comes to its back, of others to its front.
  const side = wordsOf(r.setup, 'hologram') === 'reflection' ? 1 : -1;
  for (const usual of USUAL) for (const sign of [1, -1]) {
    const by = ((Math.abs(num(data, 'angle')) * 180) / Math.PI - usual) * sign;
    const heading = (Math.round((Math.atan2(ny, nx) * 180) / Math.PI + by) + 720) % 360;
    if (side * (dx * Math.cos((heading * Math.PI) / 180) + dy * Math.sin((heading * Math.PI) / 180)) <= 0) continue;
    yield { edits: [{ at: within(plate.at, { start: clause.index, end: clause.index + clause[0].length }), newText: `heading ${heading}°` }], title: () => `Turn ${plate.id} by ${Math.round(Math.abs(by))}°, to a heading of ${heading}°: “${text(data, 'arm')}” then comes to it at ${usual}°` };
  }
}

const wordsOf = ({ facts }: Results['setup'], phrase: string): string | undefined => { const value = facts.get(phrase)?.value; return value?.kind === 'words' ? value.text : undefined; };
