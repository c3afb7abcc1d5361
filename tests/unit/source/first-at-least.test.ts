// The place found is the one a look from the front would find.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { firstAtLeast } from '../../../src/source/first-at-least.js';

it('finds what a look from the front finds', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 20 })), fc.integer({ min: -1, max: 21 }), (numbers, value) => {
      const sorted = [...numbers].sort((a, b) => a - b);
      const slow = sorted.findIndex((number) => number >= value);
      expect(firstAtLeast(sorted, value)).toBe(slow < 0 ? sorted.length : slow);
    }),
  );
});
