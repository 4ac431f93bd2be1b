/** What the cautions for eyes have in common. None of them says that a beam can do no harm. */
import type { Thing } from '../model/model.ts';
import type { Results } from '../results/plan.ts';

/** Classes above those that rely on an eye turning away (IEC 60825-1). */
const STRONG: readonly string[] = ['3R', '3B', '4'];

/** Whether the class on a laser's label or its written power passes the published limit for a glance, or of blue light that for a long look; undefined where neither tells. */
export function passesLimit(laser: Thing, r: Results): boolean | undefined {
  const known = r.eyes.find(e => e.laser === laser);
  if (!known) return undefined;
  const times = known.times && r.graph.value(known.times);
  if (known.class !== undefined && STRONG.includes(known.class)) return true;
  const long = known.long && r.graph.value(known.long.times);
  return times === undefined ? undefined : times > 1 || (long ?? 0) > 1;
}

/** Who decides. It ends every caution. */
export const DECIDES = 'Local rules and the person responsible for laser safety decide.';
