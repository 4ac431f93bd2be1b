/** The results of a setup with all that its findings ask for. Who looks at them afterwards makes no cell. */
import type { Setup } from '../model/model.ts';
import type { Graph } from './graph.ts';
import { alignmentOf } from './alignment.ts';
import { plan, type Results } from './plan.ts';

/** `before`: the graph of the setup before an edit. */
export function complete(setup: Setup, before?: Graph): Results {
  const results = plan(setup, { before });
  alignmentOf(results);
  results.table.make();
  results.graph.settle();
  return results;
}
