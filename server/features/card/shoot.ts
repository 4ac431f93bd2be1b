/** The exposure: what is done in which order, how long, and the times of a test strip. */
import type { Thing } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { exposedAs } from '../report/exposures.ts';
import { stripTimes } from '../report/light.ts';
import { allWords, awayStep, beforeSteps, closeStep, darkSteps, exposures, handsOffStep, openStep, platesOf, timeOf } from '../shoot/steps.ts';
import { words, type Block, type Entry, type Section } from '../blocks/blocks.ts';
import { fact } from '../blocks/facts.ts';

export function shoot(r: Results): Section | undefined {
  if (r.plates.length === 0 && platesOf(r).length === 0) return undefined;
  const blocks: Block[] = [{ kind: 'steps', steps: [...beforeSteps(r), ...darkSteps(r), handsOffStep(r), awayStep, openStep(r), closeStep(r)] }];
  for (const { cell, plate } of exposures(r)) {
    const times = stripTimes(cell, r);
    if (times.length > 0) blocks.push(words(`Test strip${plate === '' ? '' : ` of ${plate}`}, in half stops, each with its own rest:`), { kind: 'strip', times });
  }
  for (const on of r.exposures.plates.filter(p => p.all.length > 1)) {
    blocks.push(words(`${on.plate.id} gets ${on.all.length} exposures, each with its own rest, and nothing of them is processed before the last:`), { kind: 'steps', steps: on.all.map(e => ({ text: `${e.thing.id}, ${exposedAs(e)}: ${e.time.missing ? 'a time that is not known yet' : showCell(r.graph, e.time).text}` })) });
  }
  return { name: 'shoot', title: 'Shoot', blocks };
}

/** What nobody can read any more when it counts. */
export function inTheDark(r: Results): Section | undefined {
  const all = platesOf(r);
  if (all.length === 0) return undefined;
  const [settle, open] = [timeOf(r, 'settle'), timeOf(r, 'exposure')];
  const [one] = exposures(r);
  const entry = (text: string, write: string): Entry => (text === '' ? { write } : { text });
  const stock = (p: Thing): string => [fact(p, 'stock') ?? '', fact(p, 'batch') === undefined ? '' : (fact(p, 'batch')!)].filter(Boolean).join(', ').replace(/"/g, '');
  return { name: 'dark', title: 'In the dark', blocks: [{ kind: 'large', rows: [
    ...all.map(p => ({ label: all.length > 1 ? p.id : 'plate', entry: entry([stock(p), fact(p, 'emulsion') === undefined ? '' : `emulsion ${fact(p, 'emulsion')!}`].filter(Boolean).join(', '), '') })),
    { label: 'settle', entry: entry(settle.text, 'min') },
    ...r.exposures.plates.flatMap(p => (p.all.length < 2 ? [] : p.all.map(e => ({ label: `open, ${e.thing.id}`, entry: entry(e.time.missing ? '' : showCell(r.graph, e.time).text, 's') })))),
    ...(r.exposures.plates.some(p => p.all.length > 1) ? [] : [{ label: 'open', entry: open.text !== '' ? { text: open.text } : one ? { text: allWords(r) } : { write: 's' } }]),
  ] }] };
}
