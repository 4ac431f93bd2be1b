/** The page of mistakes: each with the findings that catch it, or why text cannot. Written from the table that `why` uses, so that both say the same. */
import { MISTAKES } from './mistakes.ts';

export function mistakesPage(): string {
  const rows = MISTAKES.map((m, i) => `| ${i + 1} | ${m.outcomes.join('; ')} | ${m.cause} | ${[(m.codes ?? []).map(c => `[\`${c}\`](FINDINGS.md#${c})`).join(', '), m.untold ?? ''].filter(Boolean).join('; ')} |`);
  return [
    '# Mistakes', 'What goes wrong when a hologram is shot, what is seen of it, and which finding catches it; or why text cannot tell. `platewright why` asks the same table for suspects, by the figures of a setup. Common practice.',
    ['| | seen | cause | caught by |', '| --- | --- | --- | --- |', ...rows].join('\n'),
  ].join('\n\n') + '\n';
}
