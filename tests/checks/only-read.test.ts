/** A check looks at what is computed, and makes nothing: the graph is complete when the checks begin. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { CHECKS } from '../../server/checks/registry.ts';
import { check } from '../../server/checks/run.ts';
import { complete } from '../../server/results/complete.ts';
import { plan } from '../../server/results/plan.ts';
import { disk, EXAMPLES, PUBLISHED } from '../examples/library.ts';
import { folder } from './library.ts';

const setupsOf = [
  ...[...EXAMPLES, ...PUBLISHED].map(({ name, uri, text }) => [name, (): ReturnType<typeof analyse> => analyse(uri, text, disk)] as const),
  ...CHECKS.filter(c => c.example.length < 100_000).map(c => [`the example of ${c.code}`, (): ReturnType<typeof analyse> => analyse('file:///saltmarsh/setups/setup.plate', c.example, folder(c.files))] as const),
];

describe('the checks make no cell', () => {
  it.each(setupsOf)('in %s', (_, snapshot) => {
    for (const setup of snapshot().model.setups) {
      const results = complete(setup);
      const before = results.graph.cells.length;
      check(results);
      expect(results.graph.cells.slice(before).map(c => c.name), setup.name).toEqual([]);
    }
  });
  it('which would be no test if nothing were asked for beyond the plan', () => {
    const [setup] = analyse('file:///saltmarsh/setups/setup.plate', CHECKS.find(c => c.code === 'mirror-turned')!.example).model.setups;
    expect(complete(setup!).graph.cells.length).toBeGreaterThan(plan(setup!).graph.cells.length);
  });
});
