/** What has to be known before anything is switched on: what of the page is still wrong, and what can hurt an eye. */
import type { Snapshot } from '../../analysis.ts';
import { EYE_CHECKS } from '../../checks/eyes/index.ts';
import { DECIDES } from '../../checks/eye-limits.ts';
import type { Results } from '../../results/plan.ts';
import { findingsWithin } from '../report/report.ts';
import type { Block, Section } from './blocks.ts';
import { things } from './facts.ts';

/** More than that belongs on no card: the page has to be mended first. */
const MOST = 6;

/** Errors, warnings, and what is expected and not met. */
export function open(snapshot: Snapshot, r: Results): Section | undefined {
  const all = findingsWithin(snapshot, r).filter(f => f.accepted === undefined && (f.severity === 'error' || f.severity === 'warning'));
  if (all.length === 0) return undefined;
  const more = all.length - MOST;
  return { name: 'open', title: 'Not settled yet', blocks: [
    ...all.slice(0, MOST).map((f): Block => ({ kind: 'caution', text: f.message })),
    ...(more > 0 ? [{ kind: 'words', text: `And ${more} more ${more === 1 ? 'finding' : 'findings'} on the page.` } as const] : []),
  ] };
}

/** Cautions are told on each card, accepted or not: it hangs where others read it, too. */
export function eyes(r: Results): Section | undefined {
  if (things(r.setup, 'laser').length === 0) return undefined;
  const found = EYE_CHECKS.flatMap(c => c.run!(r).map(p => c.message(p.data)));
  const text = found.length > 0 ? found : [`No beam into an eye: keep beams level, below the height of eyes, and ended on stops; watches and rings off. What the label says goes first. ${DECIDES}`];
  return { name: 'eyes', title: 'Before the laser is on', blocks: text.map((t): Block => ({ kind: 'caution', text: t })) };
}
