// What the figures are held against: a limit that the product keeps on any machine that does the bench, and for ratios what they were when last accepted,
// so that one that grows worse within its limit is seen as well. A ratio is of two things measured in one run, so that it means the same on every machine.
// An engine compiles and clears away in its own way, so that what was accepted is kept by the Node that it was measured with; limits are for all.
import { readFileSync, writeFileSync } from 'node:fs';

const FILE = new URL('budget.json', import.meta.url);
/** A ratio of medians differs by so much between two runs of the same program on a machine that does other things too. */
const SLACK = 1.35;
const ENGINE = Number(process.versions.node.split('.')[0]);

/** Each figure with its verdict; of one whose limit is null it is only told how large it is. A figure that the budget does not name, and one that it names and nobody measured, are told too. */
export function holdAgainst(figures) {
  const budget = JSON.parse(readFileSync(FILE, 'utf8'));
  const names = new Set([...Object.keys(budget), ...figures.keys()]);
  return [...names].map((name) => {
    const value = figures.get(name);
    const { limit, accepted: byEngine } = budget[name] ?? {};
    const accepted = byEngine?.[ENGINE];
    return { name, value, limit, accepted, verdict: verdictOf(value, limit, accepted) };
  });
}

function verdictOf(value, limit, accepted) {
  if (limit === undefined) return 'no limit in the budget';
  if (!Number.isFinite(value)) return 'not measured';
  if (limit === null) return 'told';
  if (value > limit) return 'BROKEN';
  return accepted !== undefined && value > accepted * SLACK ? 'WORSE' : 'holds';
}

/** What does not hold, so that the bench fails. */
export const broken = ({ verdict }) => verdict !== 'holds' && verdict !== 'told';

export const told = ({ name, value, limit, accepted, verdict }) =>
  `  ${verdict.padEnd(6)}  ${name}: ${Number.isFinite(value) ? value.toPrecision(3) : '-'} (at most ${limit ?? '-'}${accepted === undefined ? '' : `; was ${accepted}`})`;

/** Writes the ratios as they are now with this Node; limits stay. */
export function accept(figures) {
  const budget = JSON.parse(readFileSync(FILE, 'utf8'));
  for (const [name, entry] of Object.entries(budget)) if (isRatio(name) && Number.isFinite(figures.get(name))) entry.accepted = { ...entry.accepted, [ENGINE]: Number(figures.get(name).toPrecision(3)) };
  writeFileSync(FILE, `${JSON.stringify(budget, null, 2)}\n`);
}

// What is asked is a ratio or milliseconds, whichever is less, and so is held to its limit alone.
const isRatio = (name) => name.includes(' / ') && !name.endsWith('or ms');
