import type { Problem, Thing } from '../../model/model.ts';
import { millimetres, show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import type { Overlap } from '../../results/table/overlaps.ts';
import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';

export const thingsOverlap: Check = {
  code: 'things-overlap',
  severity: 'warning',
  title: 'Two things stand in one place',
  page: `**What you see.** The second one does not go where it is written: there is something already.

**Why.** By the places, two things reach into one another. Of a thing whose size is written its face counts, of any other its post, for nothing is thinner. How far mounts stand out beyond that is common practice, and what only that says is a note where it is more than 10 mm. What only touches
is left alone. Where the give of the written places is larger than what is said, it is undecided. Of legs that begin or end at one of the two nothing more is said.

**What to do.** Correct the place that is a slip, or the size. Where it is meant, as of two plates in one holder, place the second so that they touch.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  mirror M1 at (500, 0) mm
  mirror M2 at (504, 3) mm
  beam stop B1 at (500, 400) mm
  beam raw from red
    -> M1
    -> B1
}
`,
  severityOf: d => (d['sure'] === true && d['undecided'] !== true ? 'warning' : 'note'),
  message: d => {
    const names = `${capital(text(d, 'kind'))} ${text(d, 'thing')} and ${text(d, 'otherKind')} ${text(d, 'others')}`;
    const by = num(d, 'give') > 0 ? show(Math.abs(num(d, 'gap')), LENGTH, num(d, 'give') / 2) : millimetres(Math.abs(num(d, 'gap')));
    if (num(d, 'count') > 1) return `${capital(text(d, 'kind'))} ${text(d, 'thing')} takes up the places of ${text(d, 'others')}. Correct its size or its place.`;
    if (d['sure'] !== true) return `The mounts of ${text(d, 'thing')} and ${text(d, 'others')} reach ${by} into one another, if they are of the usual size: that is assumed. Put them that much farther apart, or take smaller mounts.`;
    if (d['undecided'] === true) return `${names} ${num(d, 'gap') < 0 ? `reach ${by} into one another` : `are ${by} apart`}: by the give of their places it is undecided whether there is room for both. Measure where they stand, or put them ${millimetres(num(d, 'give') - num(d, 'gap'))} farther apart.`;
    return `${names} stand in one place: one of them would have to be ${by} farther off. Correct the place that is a slip.`;
  },
  run: ({ table, setup }) => groups(table.look.overlaps).map((group): Problem => {
    const [first] = group;
    const { one, other, gap, give } = first;
    // The later one of two is more likely the slip; one that takes up many places is so itself.
    const [thing, others]: [Thing, Thing[]] = group.length > 1 ? [group.shared, group.map(o => (o.one === group.shared ? o.other : o.one))] : [other, [one]];
    return {
      code: 'things-overlap', at: thing.at, subject: group.length > 1 ? thing.id : `${thing.id} ${one.id}`, setup: setup.name,
      data: { thing: thing.id, kind: thing.kind.word, others: listed(others.map(t => t.id)), otherKind: others[0]!.kind.word, count: others.length, sure: group.some(o => o.sure), gap, give, undecided: group.every(o => o.sure && Math.abs(o.gap) < o.give) },
    };
  }),
};

const listed = (ids: readonly string[]): string => (ids.length === 1 ? ids[0]! : `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)!}`);

type Group = [Overlap, ...Overlap[]] & { shared: Thing };

/** What one thing does to several others is one slip. */
function groups(overlaps: readonly Overlap[]): Group[] {
  let left = [...overlaps];
  const found: Group[] = [];
  while (left.length > 0) {
    const counts = new Map<Thing, number>();
    for (const o of left) for (const t of [o.one, o.other]) counts.set(t, (counts.get(t) ?? 0) + 1);
    const [shared] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a));
    const own = left.filter(o => o.one === shared || o.other === shared);
    found.push(Object.assign([...own] as [Overlap, ...Overlap[]], { shared }));
    left = left.filter(o => !own.includes(o));
  }
  return found;
}
