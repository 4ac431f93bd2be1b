/** Where the arms of a plate part. */
import type { Arm } from '../../model/arms.ts';
import type { Leg } from '../../model/model.ts';

/** How many legs all arms of a plate share at their beginning. */
export function sharedLegs(arms: readonly Arm[]): number {
  const first = arms[0]!.path;
  let shared = 0;
  if (arms.length > 1) while (shared < first.length && arms.every(a => a.path[shared] === first[shared])) shared++;
  return shared;
}

/** The legs of an arm behind the place where the arms of its plate part. */
export const ownLegs = (arm: Arm, arms: readonly Arm[]): readonly Leg[] => arm.path.slice(sharedLegs(arms.filter(a => a.plate === arm.plate)));
