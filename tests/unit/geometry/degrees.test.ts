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

it('the smallest turn either way is none, and the one below a whole turn is nearly whole', () => {
  for (const degrees of [1.3e-14, 1e-30, 5e-324]) {
    for (const turn of [degrees, -degrees]) {
      const [cos, sin] = turnOf(turn);
      expect(cos).toBe(1);
      expect(sin).toBeCloseTo((turn * Math.PI) / 180, 15);
      expect(Math.sign(sin)).not.toBe(-Math.sign(turn));
    }
  }
  for (const quarter of [90, 180, 270, 360]) {
    for (const degrees of [quarter * (1 - 2 ** -52), quarter * (1 + 2 ** -52)]) {
      for (const turn of [degrees, -degrees]) {
        const [cos, sin] = turnOf(turn);
        expect(cos).toBeCloseTo(Math.cos((turn * Math.PI) / 180), 13);
        expect(sin).toBeCloseTo(Math.sin((turn * Math.PI) / 180), 13);
      }
    }
  }
});
