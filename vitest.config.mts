import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // these run inside a real editor: npm run test:editors
    exclude: ['tests/editor/**'],
    // How fast something is, the bench tells; a busy machine is no failure.
    testTimeout: 60_000,
  },
});
