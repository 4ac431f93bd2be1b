/** The tests that hold what is mutated, alone. */
import { relative } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** What failed last comes first, then what is soon done: most changes are noticed by many tests, and the first that fails is enough. */
class SoonDoneFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const known = ({ project, moduleId }: TestSpecification) => this.ctx.cache.getFileTestResults(`${project.name}:${relative(this.ctx.config.root, moduleId)}`);
    const rank = (file: TestSpecification): number => (known(file)?.failed ? -1 : (known(file)?.duration ?? 0));
    return Promise.resolve(files.toSorted((a, b) => rank(a) - rank(b)));
  }
}

const list = (name: string): string[] => process.env[name]?.split(',').map(path => (path.endsWith('.ts') ? path : `${path}/**/*.test.ts`)) ?? [];

export default defineConfig({
  test: {
    include: list('MUTATION_TESTS'),
    exclude: list('MUTATION_WITHOUT'),
    setupFiles: ['tests/mutation/setup.ts'],
    sequence: { sequencer: SoonDoneFirst },
    // Where each file has its own copy of the core, what is made once when a module is loaded is mutated too. Loading all of the core for each file takes most of the time.
    isolate: process.env['MUTATION_SHARED'] !== '1',
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
