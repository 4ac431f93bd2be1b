/** The share that a splitter reflects, for a ratio that was only read by meter: closed form, since all that such a meter says is how many times one beam is the other. */
import type { Snapshot } from '../../analysis.ts';
import type { Finding } from '../../checks/check.ts';
import type { Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { plain } from '../../model/show.ts';
import type { Results } from '../../results/plan.ts';
import type { Candidate } from './candidate.ts';
import { writtenOf } from './numbers.ts';
import { wantedFor } from './wanted.ts';

export function* splitFixes(finding: Finding, r: Results, { tree, uri }: Snapshot): Generator<Candidate> {
  const p = r.light.plates.find(x => x.name === finding.subject || x.ratio.name === finding.subject || `${x.name}.beam ratio` === r.goals.find(g => g.goal.at.line === finding.at.line && g.goal.result === finding.subject)?.cell?.name);
  if (!p) return;
  const now = r.graph.value(p.ratio);
  const wanted = wantedFor(finding, r).flatMap(w => w.conditions).filter(c => c.cell === p.ratio);
  // Of two limits the one counts that is missed.
  const to = wanted.find(c => now !== undefined && (c.sort === 'at most' ? now > c.value : c.sort === 'at least' ? now < c.value : true))?.value;
  if (now === undefined || to === undefined || !(now > 0) || !(to > 0)) return;
  const arms = r.arms.arms.filter(a => a.plate === p.plate && (!p.laser || a.laser === p.laser));
  const reference = arms.find(a => a.role === 'reference');
  const objects = arms.filter(a => a.role === 'object');
  for (const splitter of new Set(reference?.path.flatMap(l => l.beam.from ?? []) ?? [])) {
    const cell = splitter.kind.light === 'shares' ? r.graph.find(`${splitter.id}.reflects`) : undefined;
    const written = cell?.at?.uri === uri ? writtenOf(cell, tree) : undefined;
    const share = cell && r.graph.value(cell);
    const own = portOf(reference!, splitter);
    if (!written || share === undefined || !(share > 0 && share < 1) || objects.length === 0 || objects.some(a => portOf(a, splitter) === undefined || portOf(a, splitter) === own)) continue;
    const odds = (share / (1 - share)) * (own === 'reflected' ? to / now : now / to);
    // A whole percent on the side that is wanted.
    const exact = (odds / (1 + odds)) * 100;
    const percent = odds > share / (1 - share) ? Math.ceil(exact - 1e-9) : Math.floor(exact + 1e-9);
    if (!(percent > 0 && percent < 100)) continue;
    const edit = written.edit(percent / 100, Math.max(0, written.decimals));
    yield { things: [splitter.id], edits: [edit], title: () => `Set “reflects” of ${splitter.id} to ${edit.newText}${written.unitText} instead of ${written.text}${written.unitText}: from ${plain(now, 2)}:1, as it was read, to ${plain(to, 2)}:1` };
  }
}

const portOf = (arm: Arm, splitter: Thing): string | undefined => arm.path.find(l => l.beam.from === splitter)?.beam.port;
