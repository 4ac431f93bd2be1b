/** The tests that hold what is mutated, alone. Each file has its own copy of the core, so that what is made once when a module is loaded is mutated too. */
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: { include: (process.env['MUTATION_TESTS'] ?? 'tests/optics').split(',').map(path => (path.endsWith('.ts') ? path : `${path}/**/*.test.ts`)), testTimeout: 300_000, hookTimeout: 300_000 },
});
