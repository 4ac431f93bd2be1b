#!/usr/bin/env node
/**
 * npm run mutate -- PATH…: changes the code below each path (server/optics/light.ts, server/optics/beams) in one small way after the other, and counts the changes that no test notices.
 * Without a path: the optics, the units and the rules, which takes hours. STATIC=1 also changes what is made once when a module is loaded. What was found stands in out/mutation/.
 */
import { statSync } from 'node:fs';
import { Stryker } from '@stryker-mutator/core';

/** Whose tests hold what: those of the same folder alone, so that a figure is not held by a test of something else that happens to rest on it. The first that fits counts. */
const HELD = [
  ['server/optics', 'tests/optics'],
  ['server/model/units.ts', 'tests/model/units.test.ts'],
  ['server/model', 'tests/model'],
  ['server/results', 'tests/results'],
];

const paths = process.argv.slice(2);
for (const path of paths.length > 0 ? paths : ['server/optics', 'server/model/units.ts', 'server/results/rules']) {
  const held = HELD.find(([folder]) => path.startsWith(folder));
  if (!held) throw new Error(`No tests are named for ${path} in tests/mutation/run.mjs.`);
  process.env.MUTATION_TESTS = held[1];
  const out = `out/mutation/${path.replaceAll(/[^a-z0-9]+/gi, '-')}`;
  await new Stryker({
    mutate: [statSync(path).isDirectory() ? `${path}/**/*.ts` : path],
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'tests/mutation/vitest.config.mts', related: true },
    coverageAnalysis: 'perTest',
    // Of the words of a message no test of figures asks.
    mutator: { excludedMutations: ['StringLiteral'] },
    ignoreStatic: process.env.STATIC !== '1',
    ignorePatterns: ['/out', '/dist', '/client', '/.hosts', '/.bench', '/l10n'],
    tempDirName: 'out/mutation/copy',
    incremental: true,
    incrementalFile: `${out}.json`,
    reporters: ['clear-text', 'html', 'json'],
    htmlReporter: { fileName: `${out}.html` },
    jsonReporter: { fileName: `${out}.report.json` },
    clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
    concurrency: Number(process.env.CONCURRENCY ?? 2),
    timeoutMS: 20_000,
    disableTypeChecks: false,
  }).runMutationTest();
}
