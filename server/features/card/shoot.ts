/** The exposure: what is done in which order, how long, and the times of a test strip. */
import type { Thing } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { openings } from '../shoot/openings.ts';
import { awayStep, beforeSteps, darkSteps, handsOffStep, platesOf, timeOf } from '../shoot/steps.ts';
import { words, type Block, type Entry, type Section } from '../blocks/blocks.ts';
import { fact } from '../blocks/facts.ts';

export function shoot(r: Results): Section | undefined {
  if (r.plates.length === 0 && platesOf(r).length === 0) return undefined;
  const all = openings(r);
  const blocks: Block[] = [{ kind: 'steps', steps: [...beforeSteps(r), ...all.slice(0, 1).flatMap(o => o.change), ...darkSteps(r), ...all.flatMap((o, i) => [...(i > 0 ? o.change : []), handsOffStep(r), awayStep, o.open, o.close])] }];
  if (all.length > 1) blocks.push(words('Nothing is processed before the last exposure.'));
  for (const { name, strips } of all) for (const { of, times } of strips) blocks.push(words(`Test strip${[name, of].filter(Boolean).map((n, i) => `${i === 0 ? ' of' : ','} ${n!}`).join('')}, in half stops, each with its own rest:`), { kind: 'strip', times });
  return { name: 'shoot', title: 'Shoot', blocks };
}

/** What nobody can read any more when it counts. */
export function inTheDark(r: Results): Section | undefined {
  const all = platesOf(r);
  if (all.length === 0) return undefined;
  const settle = timeOf(r, 'settle');
  const entry = (text: string, write: string): Entry => (text === '' ? { write } : { text });
  const stock = (p: Thing): string => [fact(p, 'stock') ?? '', fact(p, 'batch') === undefined ? '' : (fact(p, 'batch')!)].filter(Boolean).join(', ').replace(/"/g, '');
  return { name: 'dark', title: 'In the dark', blocks: [{ kind: 'large', rows: [
    ...all.map(p => ({ label: all.length > 1 ? p.id : 'plate', entry: entry([stock(p), fact(p, 'emulsion') === undefined ? '' : `emulsion ${fact(p, 'emulsion')!}`].filter(Boolean).join(', '), '') })),
    { label: 'settle', entry: entry(settle.text, 'min') },
    ...openings(r).map(o => ({ label: o.name === undefined ? 'open' : `open, ${o.name}`, entry: o.written !== '' ? { text: o.written } : o.byPage !== '' ? { text: o.byPage } : { write: 's' } })),
  ] }] };
}
