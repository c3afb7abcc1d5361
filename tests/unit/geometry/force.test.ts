// Standard gravity, 9.80665 m/s2: 3rd general conference on weights and measures, 1901 (from memory).
import { expect, it } from 'vitest';
import { toNewton } from '../../../src/geometry/force.js';

it.each([
  [0, 0],
  [1, 0.00980665],
  [300, 2.941995],
  [1000, 9.80665],
])('%f gf are %f N', (gramForce, newton) => {
  expect(toNewton(gramForce)).toBe(newton);
});
