/** The figures of a thing, a beam, a leg, a goal or a setup, for hovers. */
import type { Beam, Leg, Thing } from '../../model/model.ts';
import { factText, overrideOf, type Override } from '../../model/overrides.ts';
import type { GoalResult } from '../../results/goals.ts';
import { legWords } from '../../results/legs/legs.ts';
import type { Pair } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { figureWords } from './chain.ts';
import { placeWords } from './places.ts';
import { polarizationWords } from './polarization.ts';
import { blocks, bullets, escaped, note, strong } from '../markdown.ts';
import { coherenceWords } from '../report/coherence.ts';
import { runsApart, runWords } from '../report/arms.ts';
import { fringeWords } from '../report/fringes.ts';
import { movementWords } from '../report/movement.ts';
import { exposureWords } from '../report/exposures.ts';
import { replayWords } from '../report/replay.ts';
import { comparison, partLines } from '../report/report.ts';
import { asWritten } from '../report/words.ts';

/** ` instead of lab.red-12’s 12 mW` */
export const insteadWords = (o: Override | undefined): string => (o ? `, instead of ${escaped(`${o.item}’s ${o.instead}`)}` : '');

/** A thing: what it is, its note, what is written about it and what is assumed, and the results that belong to it. */
export function thingWords(thing: Thing, r: Results | undefined): string {
  return blocks(
    `${strong(thing.id)}: ${thing.kind.article}${thing.item ? `, ${escaped(thing.item.id)} of the inventory` : ''}`, thing.doc !== undefined ? note(thing.doc) : '', thing.item?.doc !== undefined ? note(thing.item.doc) : '',
    r ? placeWords(thing, r) : '', r ? figures(thing, r) : '', r ? polarizationWords(thing, r) : '', facts(thing, r), thing.kind.doc,
  );
}

function facts(thing: Thing, r: Results | undefined): string {
  const written = [...thing.facts].map(([key, f]) => `${key}: ${escaped(factText(f))}${insteadWords(overrideOf(thing, key))}`);
  // What is assumed alike for the same reason, as width and height of a face are, is told in one breath.
  const alike = new Map<string, string[]>();
  for (const c of r?.graph.planned ?? []) if (c.origin === 'assumed' && c.name.startsWith(`${thing.id}.`)) {
    const words = `${escaped(showCell(r!.graph, c).text)} is assumed${c.reason !== undefined ? `: ${escaped(c.reason)}` : ''}`;
    alike.set(words, [...alike.get(words) ?? [], c.name.slice(thing.id.length + 1)]);
  }
  const assumed = [...alike].map(([words, names]) => `${names.join(', ')}: ${words}`);
  return bullets([...written, ...assumed]);
}

function figures(thing: Thing, r: Results): string {
  const pairs = r.plates.flatMap(p => (p.plate === thing ? p.pairs : p.pairs.filter(x => x.arm.object === thing)));
  const shone = r.plates.flatMap(p => p.pairs).find(x => x.arm.laser === thing);
  return blocks(...pairs.map(x => pairWords(x, r)), ...[...fringeWords(thing, r), ...movementWords(thing, r), ...replayWords(thing.id, r), ...exposureWords(thing.id, r)].map(escaped), shone ? escaped(coherenceWords(thing, shone.coherence, r)) : '');
}

/** How two arms compare, and how brightly the parts of the object record. */
const pairWords = (x: Pair, r: Results): string =>
  blocks(escaped(comparison(x, r)), bullets(partLines(x, r).map(p => `${p.label} of ${escaped(x.arm.object!.id)}: ${p.text}, ${p.word}`)));

/** A beam: the arms that it ends, leg by leg, and how they compare; or what it feeds. */
export function beamWordsOf(beam: Beam, r: Results): string {
  const arms = r.plates.flatMap(p => p.arms.filter(a => a.arm.beam === beam).map(a => ({ ...a, plate: p })));
  const fed = r.arms.arms.filter(a => a.beam !== beam && a.path.some(l => l.beam === beam)).map(a => `${a.name} at ${a.plate.id}`);
  const rows = (legs: readonly Leg[]): string => bullets(legs.map(l => `${escaped(legWords(l))}: ${escaped(showCell(r.graph, r.legs.get(l)!).text)}`));
  if (arms.length === 0) return blocks(`${strong(beam.id)}: a beam${fed.length > 0 ? ` that feeds ${escaped(fed.join(', '))}` : ' that reaches no plate'}`, beam.doc !== undefined ? note(beam.doc) : '', rows(beam.legs));
  return blocks(...arms.flatMap(a => [
    `${strong(showCell(r.graph, a.length).text)}: ${escaped(`${a.arm.name} at ${a.plate.plate.id}`)}${a.partsAt ? `, from ${escaped(a.partsAt.id)}` : ''}`,
    ...a.plate.pairs.filter(x => x.arm === a.arm || x.reference === a.arm).map(x => escaped(comparison(x, r))), rows(a.legs), bullets(runsApart(a, r).map(x => `${escaped(runWords(x))}: ${escaped(showCell(r.graph, x.length).text)}`)),
  ]), beam.doc !== undefined ? note(beam.doc) : '');
}

/** The length of a leg, and the arms that it is part of. */
export function legWordsOf(leg: Leg, r: Results): string | undefined {
  const cell = r.legs.get(leg);
  if (!cell) return undefined;
  const arms = r.plates.flatMap(p => p.arms.map(a => ({ a, p }))).filter(({ a }) => a.arm.path.includes(leg));
  const part = arms.filter(({ a }) => a.legs.includes(leg)).map(({ a, p }) => `Part of ${escaped(`${a.arm.name} at ${p.plate.id}`)}, ${showCell(r.graph, a.length).text}.`);
  const shared = arms.some(({ a }) => !a.legs.includes(leg)) ? 'All arms of the plate share it, so that it does not count in their mismatch.' : '';
  const own = leg.length?.kind === 'quantity' ? `Written as ${escaped(asWritten(leg.length.quantity))}.` : '';
  return blocks(figureWords(r.graph, cell), own, ...part, shared);
}

const OUTCOME: Readonly<Record<GoalResult['outcome'], string>> = {
  met: 'Met', 'not met': 'Not met', undecided: 'Undecided: the limit lies inside the uncertainty', 'not computed yet': 'Not computed yet', 'cannot be told': 'Cannot be told',
};

/** How a goal stands, and the chain of numbers of its result. */
export function goalWords({ goal, outcome, cell }: GoalResult, r: Results): string {
  const { text, comment } = goal.node.line;
  return blocks(`${strong(OUTCOME[outcome])}: ${escaped(text.slice(goal.at.start, comment?.start))}`, cell ? figureWords(r.graph, cell) : '');
}

/** The plates of a setup, each with how its arms compare. */
export function setupWords(r: Results): string {
  return blocks(strong(r.setup.name || 'A setup without a name'), r.setup.doc !== undefined ? note(r.setup.doc) : '', ...r.plates.flatMap(p => p.pairs.map(x => blocks(`At ${escaped(p.plate.id)}:`, pairWords(x, r)))));
}
