// Which tests judge the mutants of a room: its own, and those that hold it against the outside, if they are quick.
import { defineConfig } from 'vitest/config';

const TESTS: Readonly<Record<string, readonly string[]>> = {
  geometry: ['tests/unit/geometry/**/*.test.ts', 'tests/properties/geometry-*.test.ts'],
  source: ['tests/unit/source/**/*.test.ts', 'tests/properties/source*.test.ts'],
  verify: ['tests/unit/verify/**/*.test.ts'],
};

/** `no` leaves out the properties: a first look that a second one completes. */
const WITHOUT = process.env.PINBAR_PROPERTIES === 'no' ? ['tests/properties/**'] : [];

export default defineConfig({
  test: {
    include: [...(TESTS[process.env.PINBAR_ROOM ?? ''] ?? [])],
    exclude: WITHOUT,
    setupFiles: ['tests/mutation/shorten-properties.ts'],
    testTimeout: 30_000,
  },
});
