import type { Leg, Problem, Thing } from '../../model/model.ts';
import { millimetres } from '../../model/show.ts';
import type { Cell } from '../../results/graph.ts';
import { legStart, legWords } from '../../results/legs/legs.ts';
import { alignmentOf } from '../../results/alignment.ts';
import { num, text, type Check } from '../check.ts';

/** What a hand leaves between two ways of telling the same length, when neither says how sure it is. */
const SLACK = 0.001;

export const twoLengths: Check = {
  code: 'two-lengths',
  severity: 'warning',
  title: 'One leg has two different lengths',
  page: `**What you see.** The computed paths rest on one of two figures that contradict each other.

**Why.** The same leg is written twice with different lengths, or its written length differs from the distance of the two places by more than both are unsure. The written length is used, since string beats the plan.

**What to do.** Measure the leg again and correct the wrong figure, or the place.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm
  mirror M1 at (500, 0) mm
  beam stop B1 at (500, 400) mm
  beam raw from red
    -> M1: 520 mm
    -> B1
}
`,
  message: d => `The leg ${text(d, 'leg')} is ${millimetres(num(d, 'one'))} long here, but ${millimetres(num(d, 'other'))} ${d['places'] === true ? 'by the places of its ends' : `in line ${num(d, 'line')}`}. The length written here is used; measure it again and correct one of the two.`,
  run: r => {
    const { legs, graph, setup } = r;
    const { distances } = alignmentOf(r);
    const problems: Problem[] = [];
    const report = (leg: Leg, one: number, other: number, more: Problem['data']): void => {
      problems.push({ code: 'two-lengths', at: leg.lengthAt!, subject: leg.id, setup: setup.name, data: { leg: legWords(leg), one, other, ...more } });
    };
    // Most things are reached by one leg; only those that more lead to are looked at twice.
    const seen = new Map<Thing, Leg[]>();
    const seenAs = new Map<Leg, Cell>();
    for (const [leg, now] of legs) {
      // What is written is held against the places; a reading has findings of its own.
      const cell = (setup.readings.length > 0 && now.rule && leg.length ? graph.find(`${leg.id}.length.plan`) : undefined) ?? now;
      const value = graph.value(cell);
      const to = leg.target;
      if (value === undefined || !leg.length || !to) continue;
      const from = legStart(leg);
      if (to.reached > 1) {
        const all = seen.get(to) ?? [];
        seen.set(to, all);
        const before = all.find(l => legStart(l) === from);
        if (before) {
          const first = seenAs.get(before)!;
          const other = graph.value(first)!;
          if (differ(value, other, graph.uncertainty(cell), graph.uncertainty(first), 0)) report(leg, value, other, { line: before.at.line + 1, places: false });
        } else { all.push(leg); seenAs.set(leg, cell); }
      }
      const distance = distances.get(leg);
      if (distance && !distance.missing && differ(value, graph.value(distance)!, graph.uncertainty(cell), graph.uncertainty(distance), SLACK)) report(leg, value, graph.value(distance)!, { places: true });
    }
    return problems;
  },
};

const differ = (a: number, b: number, ua: number, ub: number, slack: number): boolean => Math.abs(a - b) > Math.max(3 * Math.hypot(ua, ub), slack);
