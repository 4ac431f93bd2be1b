/** What changes in the results, in words. */
import { percent } from '../model/show.ts';
import type { Effect } from '../results/discrepancies/effects.ts';
import { num, text, type Data } from './check.ts';
import { quoted } from './words.ts';

export const effectData = (e: Effect): Data => (e.kind === 'goal' ? { effect: 'goal', result: e.result, met: e.met } : { effect: 'brightness', object: e.object, part: e.part, from: e.from, to: e.to });

/** `by it “mismatch” is not met` */
export function effectWords(d: Data): string {
  if (d['effect'] === 'goal') return `what is expected of ${quoted(d, 'result')} is ${d['met'] === true ? 'met' : 'not met'} by it`;
  const part = { near: 'the nearest part', far: 'the farthest part', darkest: 'the darkest part' }[text(d, 'part')] ?? 'the middle';
  return `by it ${part} of ${text(d, 'object')} records at ${percent(num(d, 'to'))} of full brightness instead of ${percent(num(d, 'from'))}`;
}
