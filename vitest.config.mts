import { defineConfig } from 'vitest/config';

/** How fast something is, the bench tells; a busy machine is no failure. */
const patient = { testTimeout: 300_000, hookTimeout: 300_000 };
/** These start the command, or answer with its pages, each file from a program that is loaded afresh. */
const COMMAND = ['tests/cli/**/*.test.ts', 'tests/manual/**/*.test.ts'];

export default defineConfig({
  test: {
    maxWorkers: '100%',
    projects: [
      // The core keeps nothing between two analyses, so that the files of a worker share one copy of it: loading it takes longer than most tests.
      // tests/editor runs inside a real editor: npm run test:editors
      { test: { name: 'core', include: ['tests/**/*.test.ts'], exclude: ['tests/editor/**', ...COMMAND], isolate: false, ...patient } },
      { test: { name: 'command', include: COMMAND, globalSetup: 'tests/cli/build.ts', ...patient } },
    ],
  },
});
