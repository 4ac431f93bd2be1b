import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** How fast something is, the bench tells; a busy machine is no failure. */
const patient = { testTimeout: 300_000, hookTimeout: 300_000 };
/** These start the command as a process; the other tests of it run it in their own. */
const PROCESS = ['tests/cli/{ci,lsp,pipes,process}.test.ts', 'tests/cli/git/{driver,parts}.test.ts'];
const folders = 'tests/cli/folders.ts';
/** npm run coverage: counting makes long loops slow. What holds the program against itself takes most of the time and reaches little else; of what starts processes, or only looks at what was built, nothing would be counted. */
const COUNTED = process.argv.includes('--coverage');
const UNCOUNTED = ['tests/results/{incremental,incremental-work,symmetries,whole-core}.test.ts', 'tests/review/properties.test.ts', 'tests/examples/prefixes.test.ts', 'tests/lsp/stdio.test.ts', 'tests/client/offline.test.ts', 'tests/{architecture,packages,site}/**'];
/** Only an editor has its own module; of what tests read, nothing but words is asked of it. */
const resolve = { alias: { vscode: fileURLToPath(new URL('tests/client/vscode.ts', import.meta.url)) } };

export default defineConfig({
  test: {
    maxWorkers: '100%',
    // npm run coverage; what runs in an editor, in a browser or as a process of its own is not counted.
    coverage: { provider: 'v8', include: ['grammar/**/*.ts', 'server/**/*.ts', 'client/**/*.ts'], reporter: ['text', 'html', 'json-summary'], reportsDirectory: 'out/coverage', reportOnFailure: true },
    projects: [
      // The core keeps nothing between two analyses, so that the files of a worker share one copy of it: loading it takes longer than most tests.
      // tests/editor runs inside a real editor: npm run test:editors
      { resolve, test: { name: 'core', include: ['tests/**/*.test.ts'], exclude: ['tests/editor/**', ...PROCESS, ...(COUNTED ? UNCOUNTED : [])], globalSetup: folders, isolate: false, ...patient } },
      { test: { name: 'process', include: PROCESS, globalSetup: [folders, 'tests/cli/build.ts'], ...patient } },
    ],
  },
});
