// Error budgets are roots of sums of squares of the shop's own figures.
import { describe, expect, it } from 'vitest';
import { listBudgets } from '../../../src/run/register-budget.js';

describe('listBudgets', () => {
  it('sets both ways side by side', () => {
    const budgets = listBudgets({ layMm: 0.3, marksMm: 0.03, headMm: 0.04 });
    const total = (pair: string, way: string) => budgets.find((b) => b.pair === pair && b.way === way)!.totalMm;
    expect(total('print to tool', 'lay')).toBeCloseTo(Math.sqrt(0.09 + 0.09 + 0.0016 + 0.0016), 12);
    expect(total('print to tool', 'marks')).toBeCloseTo(0.05, 12);
    expect(total('tool to tool', 'lay')).toBeCloseTo(Math.sqrt(2 * 0.09 + 2 * 0.0016), 12);
    expect(total('tool to tool', 'marks')).toBeCloseTo(0.05 * Math.SQRT2, 12);
  });

  it('makes nothing up where a figure is missing', () => {
    const budgets = listBudgets({ layMm: null, marksMm: 0.1, headMm: 0.1 });
    expect(budgets.map(({ way, totalMm }) => [way, totalMm === null])).toEqual([
      ['lay', true],
      ['marks', false],
      ['lay', true],
      ['marks', false],
    ]);
  });
});
