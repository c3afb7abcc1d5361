// Whole stretches of cut with ties between them.
import { describe, expect, it } from 'vitest';
import { planTies } from '../../../src/run/tie-pattern.js';

describe('planTies', () => {
  it.each([
    // length, closed, cuts, ties
    [54, false, 5, 4],
    [55, true, 5, 5],
    [10, false, 1, 0],
    [3, false, 1, 0],
    [8, true, 1, 0],
    [100, false, 9, 8],
  ] as const)('shares %d mm (closed: %s) into %d cuts and %d ties', (length, closed, cuts, ties) => {
    const plan = planTies(length, closed, 10, 1);
    expect([plan.cuts, plan.ties]).toEqual([cuts, ties]);
    expect(plan.cuts * plan.cutMm + plan.ties * plan.tieMm).toBeCloseTo(length, 9);
    expect(plan.cutMm / plan.tieMm).toBeCloseTo(10, 9);
  });

  it('says how much the pattern gives way', () => {
    expect(planTies(54, false, 10, 1).stretch).toBe(1);
    expect(planTies(100, false, 10, 1).stretch).toBeCloseTo(100 / 98, 12);
  });
});
