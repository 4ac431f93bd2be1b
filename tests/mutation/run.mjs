#!/usr/bin/env node
/**
 * npm run mutate -- PATH…: changes the code below each path (server/optics/light.ts, server/optics/beams, 'server/optics/*.ts' without the folders below) in one small way after the other, and counts the changes that no test notices.
 * Without a path: the optics, the units and the rules, which takes hours. STATIC=1 also changes what is made once when a module is loaded. SAMPLE=10 changes a tenth of the lines of each file only (sample.mjs),
 * SEED=2 another tenth. TESTS=tests/results/rules asks those tests alone, which is soon done. CONCURRENCY=1 leaves one of two cores alone. What was found stands in out/mutation/; what has not changed since is not tried again.
 */
import { readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { sampleOf } from './sample.mjs';

/**
 * Whose tests hold what: those of the same folder alone, so that a figure is not held by a test of something else that happens to rest on it. The first that fits counts.
 * What holds the program against itself (after an edit and anew, a setup and its mirror image) takes most of the time and knows no figure. What reads the code itself sees the changes.
 */
const HELD = [
  { code: 'server/optics', tests: 'tests/optics' },
  { code: 'server/model/units.ts', tests: 'tests/model/units.test.ts' },
  { code: 'server/model', tests: 'tests/model' },
  // What only pictures and the way back from the wall rest on.
  { code: 'server/results/rules/hang.ts', tests: 'tests/results/rules/every.test.ts,tests/features/hang.test.ts', shared: !process.env.STATIC },
  { code: 'server/results/rules/soft.ts', tests: 'tests/drawing/seen-through.test.ts,tests/drawing/seen.test.ts', shared: !process.env.STATIC },
  { code: 'server/results/rules/seen.ts', tests: 'tests/drawing/seen-through.test.ts,tests/drawing/seen.test.ts', shared: !process.env.STATIC },
  // What is first asked for by a picture, a page or a command is held by the tests of that.
  { code: 'server/results/hang', tests: 'tests/features/hang.test.ts,tests/drawing/hung.test.ts', shared: !process.env.STATIC },
  { code: 'server/results/layout', tests: 'tests/features/layout.test.ts', shared: !process.env.STATIC },
  { code: 'server/results/maps', tests: 'tests/drawing/seen.test.ts,tests/drawing/seen-through.test.ts,tests/drawing/over-plate.test.ts,tests/results/maps.test.ts', shared: !process.env.STATIC },
  { code: 'server/results/solve', tests: 'tests/results/solve.test.ts,tests/features/solve.test.ts', shared: !process.env.STATIC },
  { code: 'server/results/safelight.ts', tests: 'tests/checks/safelight-and-units.test.ts', shared: !process.env.STATIC },
  { code: 'server/results', tests: 'tests/results', without: ['incremental', 'incremental-work', 'whole-core', 'symmetries', 'rules/listed'], shared: !process.env.STATIC },
];

const paths = process.argv.slice(2);
for (const path of paths.length > 0 ? paths : ['server/optics', 'server/model/units.ts', 'server/results/rules']) {
  const held = HELD.find(({ code }) => path.startsWith(code));
  if (!held) throw new Error(`No tests are named for ${path} in tests/mutation/run.mjs.`);
  process.env.MUTATION_TESTS = process.env.TESTS ?? held.tests;
  process.env.MUTATION_WITHOUT = (held.without ?? []).map(name => `${held.tests}/${name}.test.ts`).join(',');
  process.env.MUTATION_SHARED = held.shared ? '1' : '';
  const files = filesOf(path);
  const share = Number(process.env.SAMPLE ?? 100);
  const out = `out/mutation/${path.replaceAll(/[^a-z0-9]+/gi, '-')}${share < 100 ? `-${share}` : ''}`;
  await new Stryker({
    mutate: share < 100 ? files.flatMap(file => sampleOf(file, share, Number(process.env.SEED ?? 1))) : files,
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'tests/mutation/vitest.config.mts', related: true },
    coverageAnalysis: 'perTest',
    // Of the words of a message no test of figures asks.
    mutator: { excludedMutations: ['StringLiteral'] },
    ignoreStatic: process.env.STATIC !== '1',
    ignorePatterns: ['/out', '/dist', '/client', '/.hosts', '/.bench', '/l10n'],
    tempDirName: `${out}.copy`,
    incremental: true,
    incrementalFile: `${out}.json`,
    reporters: ['progress-append-only', 'clear-text', 'html', 'json'],
    htmlReporter: { fileName: `${out}.html` },
    jsonReporter: { fileName: `${out}.report.json` },
    clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
    concurrency: Number(process.env.CONCURRENCY ?? 2),
    timeoutMS: 20_000,
    disableTypeChecks: false,
  }).runMutationTest();
}

function filesOf(path) {
  const all = path.endsWith('/*.ts');
  if (!all && !statSync(path).isDirectory()) return [path];
  const folder = all ? dirname(path) : path;
  return readdirSync(folder, { recursive: !all }).filter(name => name.endsWith('.ts')).map(name => join(folder, name));
}
