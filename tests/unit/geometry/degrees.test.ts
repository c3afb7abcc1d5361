// Turns in degrees.
import { expect, it } from 'vitest';
import { turnOf } from '../../../src/geometry/degrees.js';

it('quarter turns are exact and hold no negative zero', () => {
  expect(turnOf(0)).toEqual([1, 0]);
  expect(turnOf(90)).toEqual([0, 1]);
  expect(turnOf(180)).toEqual([-1, 0]);
  expect(turnOf(270)).toEqual([0, -1]);
  expect(turnOf(360)).toEqual([1, 0]);
  expect(turnOf(-90)).toEqual([0, -1]);
  expect(turnOf(-360)).toEqual([1, 0]);
  expect(turnOf(-0)).toEqual([1, 0]);
});

it('halves are exact', () => {
  expect(turnOf(30)[1]).toBe(0.5);
  expect(turnOf(60)[0]).toBe(0.5);
  expect(turnOf(120)[0]).toBe(-0.5);
  expect(turnOf(330)[1]).toBe(-0.5);
});

it('other angles agree with the functions in radians', () => {
  for (let degrees = -725; degrees < 725; degrees += 3.7) {
    const [cos, sin] = turnOf(degrees);
    expect(cos).toBeCloseTo(Math.cos((degrees * Math.PI) / 180), 13);
    expect(sin).toBeCloseTo(Math.sin((degrees * Math.PI) / 180), 13);
  }
});
