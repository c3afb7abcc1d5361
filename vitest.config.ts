// How the tests run.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/house/property-seed.ts'],
    reporters: ['default', './tests/house/count-reporter.ts'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
