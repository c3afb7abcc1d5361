// Under mutation properties run fewer times, from one seed, and stop at the first counterexample: a mutant needs no small one.
import type fc from 'fast-check';
import { vi } from 'vitest';

const RUNS = 25;

vi.mock('fast-check', async (importOriginal) => {
  const original = await importOriginal<{ default: typeof fc }>();
  const assert = (property: fc.IRawProperty<unknown>, parameters?: fc.Parameters<unknown>): unknown =>
    original.default.assert(property, {
      ...parameters,
      seed: 1,
      endOnFailure: true,
      numRuns: Math.min(RUNS, parameters?.numRuns ?? RUNS),
    });
  return { ...original, assert, default: { ...original.default, assert } };
});
